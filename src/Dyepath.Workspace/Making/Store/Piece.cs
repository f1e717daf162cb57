using System.Collections.Immutable;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Making.Store;

/// <summary>A piece under way as it is kept.</summary>
/// <param name="Making">Design and log.</param>
/// <param name="ProjectId">The project that it was begun from; missing where it came from nobody's shelf.</param>
/// <param name="Key">Of the handover that it was begun from. Such a piece is never sent by itself.</param>
/// <param name="BegunAt">When the first entry was made, or the piece was put on the shelf.</param>
public sealed record Piece(MakingDocument Making, string? ProjectId, string? Key, DateTimeOffset BegunAt)
{
    private string? _design;

    /// <summary>The document with an empty log.</summary>
    public string Design => _design ??= Encoding.UTF8.GetString(MakingWriter.WriteUtf8(Making with { Log = [] }));

    /// <summary>In the order in which entries were made.</summary>
    public ImmutableArray<Entry> Log => Making.Log;

    /// <summary>Begun at the first entry of its log, or now where it has none.</summary>
    public static Piece Of(MakingDocument making, DateTimeOffset now, string? projectId = null, string? key = null) =>
        new(making, projectId, key, making.Log.IsEmpty ? now : making.Log[0].At);

    /// <summary>As the device had it; null where it cannot be read.</summary>
    public static Piece? Read(string? design, ImmutableArray<Entry> log, string? projectId, string? key, DateTimeOffset begunAt) =>
        design is not null && MakingReader.Read(Encoding.UTF8.GetBytes(design)).Making is { } making
            ? new Piece(making with { Log = log }, projectId, key, begunAt) { _design = design }
            : null;

    /// <summary>The same design goes on with another log, so that it need not be written or planned anew.</summary>
    public Piece With(ImmutableArray<Entry> log) => this with { Making = Making with { Log = log } };

    public Piece With(MakingDocument anew) => this with { Making = anew, _design = null };

    /// <summary>The documents differ in their logs at most.</summary>
    public bool IsSameDesign(Piece other) => ReferenceEquals(Making.Project, other.Making.Project)
        ? Making.Size == other.Making.Size && Making.Counted == other.Making.Counted
        : Design == other.Design;

    /// <summary>This log is the beginning of the other, or all of it.</summary>
    public bool Begins(Piece other)
    {
        if (Log.Length > other.Log.Length)
            return false;
        for (var i = Log.Length - 1; i >= 0; i--)
        {
            if (Log[i] != other.Log[i])
                return false;
        }
        return true;
    }
}

/// <summary>
/// Logs only grow, so that of two the longer one is right as long as it begins with the other; where it does not, the maker chooses.
/// </summary>
public sealed record PieceKeeping : KeepingRules<Piece>
{
    /// <summary>After the last entry, before the host is told.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(4);

    public override TimeSpan Quiet => Pause;

    public override bool KeepsFirst => true;

    public override bool OpensFromDevice => true;

    public override bool Same(Piece one, Piece other) =>
        ReferenceEquals(one, other) || (one.Log.Length == other.Log.Length && one.IsSameDesign(other) && one.Begins(other));

    public override Piece? Join(Piece one, Piece other) => !one.IsSameDesign(other) ? null
        : other.Begins(one) ? one
        // The same design is not read again.
        : one.Begins(other) ? one.With(other.Log)
        : null;

    /// <summary>An entry that was made to an unseen log is refused.</summary>
    public override bool WritesOver(Piece before, Piece shown, Piece now) => false;

    public override string EtagOf(Piece content) => Etags.Of(MakingWriter.WriteUtf8(content.Making));

    public override bool GoesToHost(Piece content) => content.Key is null;
}
