using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Making.Log;

/// <summary>Reads and writes making documents. A bad document never throws; it leads to located faults.</summary>
public static class MakingReader
{
    /// <summary>Largest document, in bytes: 2 MB.</summary>
    public const int MostBytes = DocumentParser.MostBytes;

    /// <param name="utf8">UTF-8 with or without byte order mark, at most <see cref="MostBytes"/>.</param>
    public static MakingReading Read(ReadOnlySpan<byte> utf8)
    {
        var faults = new FaultList();
        return DocumentParser.Parse(utf8, faults) is { } node && MakingDescription.Making.TryRead(Place.Root(node), faults, out var making)
            ? new MakingReading(making, [])
            : new MakingReading(null, faults.ToImmutable());
    }
}

/// <summary>What reading led to: a making, or every reason why there is none.</summary>
/// <param name="Making">Missing when there are faults.</param>
/// <param name="Faults">Empty when the document was read.</param>
public sealed record MakingReading(MakingDocument? Making, ImmutableArray<Fault> Faults)
{
    /// <summary>The document was read.</summary>
    [MemberNotNullWhen(true, nameof(Making))]
    public bool IsGood => Making is not null;
}
