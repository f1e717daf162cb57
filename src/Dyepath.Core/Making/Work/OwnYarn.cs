using System.Collections.Immutable;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Measuring;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making.Work;

/// <summary>What a maker's own yarn, worked by her own hands, asks of the pattern.</summary>
public enum OwnYarnVerdict
{
    /// <summary>It works up as the pattern's.</summary>
    Fits,

    /// <summary>Adjusted tension makes up for the difference; the advice says by how much.</summary>
    WithinHands,

    /// <summary>Each stitch takes too much yarn for tight hands to make good.</summary>
    HookDown,

    /// <summary>Each stitch takes too little yarn for loose hands to make good.</summary>
    HookUp,
}

/// <summary>A few sequences that the maker counted at natural tension, beside the pattern's.</summary>
/// <param name="Sequence">Stitches that her sequence takes.</param>
/// <param name="Planned">Stitches that the pattern's takes.</param>
/// <param name="Sections">Her stitches of each section, in the order of the yarn's sections; the mean of the repeats.</param>
/// <param name="Bias">Her yarn per stitch beyond the plan's, relative.</param>
/// <param name="BiasSd">Its standard deviation.</param>
/// <param name="Verdict">What to do about the difference.</param>
public sealed record OwnYarn(
    double Sequence, double Planned, ImmutableArray<double> Sections, double Bias, double BiasSd, OwnYarnVerdict Verdict)
{
    /// <summary>A bias under this is what hands differ by from one day to the next.</summary>
    public const double Usual = 0.02;

    /// <param name="repeats">Whole repeats: stitches of each section, in the order of the yarn's sections; 1 or more.</param>
    /// <exception cref="ArgumentException">No repeat, one of another number of sections, or no stitch at all.</exception>
    public static OwnYarn Of(Project project, ColourRing ring, ImmutableArray<ImmutableArray<int>> repeats)
    {
        ArgumentNullException.ThrowIfNull(project);
        ArgumentNullException.ThrowIfNull(ring);
        var sections = project.Yarn.Sections.Length;
        if (repeats.IsEmpty || repeats.Any(r => r.Length != sections || r.Sum() == 0))
            throw new ArgumentException($"Count every one of the {sections} colours.", nameof(repeats));
        double planned = ring.SequenceUnits, sequence = repeats.Average(r => (double)r.Sum());
        var bias = planned / sequence - 1;
        // What whole stitches hide at both ends of the count, and how far hands wander in so few stitches.
        var hands = HandsPrior.For(project.Fabric.Hands);
        var counted = repeats.Sum(r => (double)r.Sum());
        var sd = Math.Sqrt(1.0 / 6 + hands.WanderVariance(counted)) / counted;
        return new OwnYarn(
            sequence, planned, [.. Enumerable.Range(0, sections).Select(i => repeats.Average(r => (double)r[i]))],
            Guard.InRange(bias, -1, 1e6, "of the yarn per stitch"), sd, VerdictOf(bias, sd));
    }

    /// <summary>The design worked out for her counts: her yarn measured, her stitches in every section.</summary>
    public static Project Rederive(Project project, ImmutableArray<ImmutableArray<int>> repeats)
    {
        ArgumentNullException.ThrowIfNull(project);
        return project with
        {
            Yarn = project.Yarn with { Counted = [new CountedBall(CountedBall.MakersOwn, repeats)] },
            Fabric = project.Fabric with { SectionStitches = null },
        };
    }

    private static OwnYarnVerdict VerdictOf(double bias, double sd)
    {
        const double reach = DriftAdvice.Held * MakerRemedies.LargestCorrection;
        var size = Math.Abs(bias);
        return size - sd <= Usual ? OwnYarnVerdict.Fits
            : size <= reach ? OwnYarnVerdict.WithinHands
            : bias > 0 ? OwnYarnVerdict.HookDown : OwnYarnVerdict.HookUp;
    }
}
