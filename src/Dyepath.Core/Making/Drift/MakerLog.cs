using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>What a maker did and read while she worked a piece, in order. Immutable.</summary>
public sealed record MakerLog
{
    /// <summary>Of one piece.</summary>
    public const int MostEntries = 100_000;

    /// <param name="model">
    /// Yarn, gain, misreads and slips as the filter was told; spread, memory and bias are what <see cref="MakerFit"/> finds.
    /// </param>
    /// <param name="entries">At most 100,000.</param>
    public MakerLog(DriftModel model, ImmutableArray<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(model);
        Guard.InRange(entries.Length, 0, MostEntries, "entries");
        (Model, Entries) = (model, entries);
    }

    /// <summary>What the filter was told.</summary>
    public DriftModel Model { get; }

    /// <summary>In the order in which they were made.</summary>
    public ImmutableArray<Entry> Entries { get; }

    /// <summary>One of the records within.</summary>
    public abstract record Entry
    {
        private protected Entry()
        {
        }
    }

    /// <summary>A row begins here, to which <see cref="RippedBack"/> returns. The piece's beginning needs none.</summary>
    public sealed record RowBegun : Entry;

    /// <param name="Stitches">As for <see cref="DriftFilter.Predict"/>.</param>
    /// <param name="Correction">As for <see cref="DriftFilter.Predict"/>.</param>
    public sealed record Worked(int Stitches, double Correction) : Entry;

    /// <param name="Phase">The phase error read, in whole stitches, positive: early; where it was read twice, the second time.</param>
    public sealed record Read(int Phase) : Entry;

    /// <summary>The work since the row began is undone.</summary>
    public sealed record RippedBack : Entry;

    /// <param name="Stitches">As for <see cref="DriftFilter.Shift"/>.</param>
    /// <param name="Error">As for <see cref="DriftFilter.Shift"/>.</param>
    public sealed record Shifted(double Stitches, double Error) : Entry;

    /// <summary>The fit's bias is that of the first hook.</summary>
    /// <param name="Step">As for <see cref="DriftFilter.ChangeHook"/>.</param>
    /// <param name="Error">As for <see cref="DriftFilter.ChangeHook"/>.</param>
    public sealed record HookChanged(double Step, double Error) : Entry;
}
