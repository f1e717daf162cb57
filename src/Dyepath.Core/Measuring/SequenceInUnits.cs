using System.Collections.Immutable;

namespace Dyepath.Core.Measuring;

/// <summary>What a sequence in stitches rests on.</summary>
public enum SequenceSource
{
    /// <summary>Counted stitches: the authority.</summary>
    Counts,

    /// <summary>Measured lengths over yarn per stitch, where nothing was counted.</summary>
    Lengths,

    /// <summary>The whole stitches that the pattern intends, where nothing was measured.</summary>
    Intended,
}

/// <summary>The colour sequence at natural tension, in pooling units, in the order of the yarn's sections.</summary>
/// <param name="Sections">What each section takes; from lengths, all share the error of the yarn per stitch.</param>
/// <param name="Total">C.</param>
/// <param name="Source">What the figures rest on.</param>
/// <param name="Counted">The estimate from counts, where there is one.</param>
public sealed record SequenceInUnits(
    ImmutableArray<Estimate> Sections, Estimate Total, SequenceSource Source, SequenceEstimate? Counted)
{
    /// <summary>A section too short to be counted is taken for this many units.</summary>
    internal const double ShortestSection = 0.05;

    /// <summary>The nearest whole units of each section, ties away from zero, 1 or more.</summary>
    public ImmutableArray<int> Nearest() =>
        [.. Sections.Select(s => Math.Max(1, (int)Math.Round(s.Value, MidpointRounding.AwayFromZero)))];
}
