using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>What the designer should know of a finished plan.</summary>
internal static class PlanFindings
{
    /// <summary>An inch: what a boxy garment is let off (common practice, no source).</summary>
    private static readonly Length PoorFit = Length.FromInches(1);

    /// <summary>A motif that forgives less than this is held only by counting.</summary>
    private const double HardToHold = 0.01;

    public static IEnumerable<Finding> Of(Fabrication fabrication, Direction direction, ImmutableArray<SizePlan> sizes)
    {
        var project = fabrication.Project;
        foreach (var size in sizes)
        {
            foreach (var (measure, target) in size.Target)
            {
                var error = size.Finished[measure] - target;
                if (error > PoorFit || error < -PoorFit)
                    yield return new Finding(FindingLevel.Warning, "garment.grading", FormattableString.Invariant(
                        $"Size {size.Name}: {GarmentMeasures.Key(measure)} comes out {Math.Abs(error.Centimetres):0.0} cm {(error > Length.Zero ? "over" : "under")} its target of {target.Centimetres:0.0} cm: {Remedy(fabrication, measure, error)}."));
            }
            foreach (var piece in size.Pieces.Where(p => p.Pooled && p.Motif != project.Garment.Motif))
                yield return new Finding(
                    FindingLevel.Warning, "sizes",
                    $"Size {size.Name}: the {piece.Name}'s {piece.Stitches} stitches, as fixed, make {MotifWords.Of(piece.Motif)}.");
        }
        foreach (var narrow in sizes.SelectMany(s => s.Pieces, (s, p) => (Size: s, Piece: p)).Where(n => IsNarrow(fabrication, n.Piece))
            .GroupBy(n => n.Piece.Name))
        {
            yield return new Finding(FindingLevel.Warning, "garment", FormattableString.Invariant(
                $"The {narrow.Key} is narrower than one repeat of the colours in {string.Join(", ", narrow.Select(n => n.Size.Name))}: the motif will not be seen whole there; plain companion yarn may look better."));
        }
        var least = sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled).Select(
            p => Math.Min(-p.ForgivesTighter, p.ForgivesLooser)).DefaultIfEmpty(1).Min();
        if (least < HardToHold && project.Fabric.Keeping == ColourKeeping.Free)
            yield return new Finding(FindingLevel.Warning, "fabric.keeping", FormattableString.Invariant(
                $"The widest pieces forgive only {least:0.0 %} of yarn per stitch: even tension alone will not hold the motif; work counted."));
        if (direction == Direction.Sideways && project.Fabric.Swatch.Hung is not null)
            yield return new Finding(
                FindingLevel.Note, "fabric.swatch.hung",
                "The swatch was hung with its rows across the pull, and this garment hangs the other way: sizes follow the blocked gauge. Hang a swatch by its side to see how far it drops.");
        if (project.Yarn.Ball.Length < 2 * fabrication.YarnPerUnit * fabrication.Ring.SequenceUnits)
            yield return new Finding(
                FindingLevel.Warning, "yarn.ball.length", "A ball holds less than two sequences: every join may waste half of it.");
        foreach (var pair in LookAlikes.Find([.. project.Yarn.Sections.Select(s => new NamedColour(s.Name, s.Colour))], LookAlikeLimits.Default))
            yield return new Finding(pair.Viewing == Viewing.Normal ? FindingLevel.Warning : FindingLevel.Note, "yarn.sections", Words(pair));
        if (project.Yarn.Name == StarterDocument.UnnamedYarn)
            yield return new Finding(
                FindingLevel.Note, "yarn.name", $"The yarn is still called “{StarterDocument.UnnamedYarn}”, and the pattern says so: give its name and colourway, so that makers find it.");
        if (fabrication.Period is null)
            yield return new Finding(FindingLevel.Warning, "yarn.sections", "All sections have one colour: there is nothing to pool.");
    }

    private static bool IsNarrow(Fabrication fabrication, PiecePlan piece) =>
        piece.Pooled && piece.Motif != MotifKind.Bands && fabrication.Period is { } period
        && piece.RowStitches.Min() * (ColourRing.Unit / fabrication.Stitch.StitchesPerUnit) < period.Micro;

    /// <summary>What can be done about a poor fit; a length that falls short can be made up by a deeper edging.</summary>
    private static string Remedy(Fabrication fabrication, GarmentMeasure measure, Length error)
    {
        const string counts = "allow more counts, side bands or unequal panels, or take the other direction";
        var edge = measure switch
        {
            GarmentMeasure.Length => "hem",
            GarmentMeasure.SleeveLength => "cuffs",
            GarmentMeasure.Height => "brims",
            _ => null,
        };
        if (edge is null)
            return counts;
        var rounds = Math.Max(1, (int)Math.Round(Math.Abs(error / fabrication.SingleCrochetHeight)));
        return FormattableString.Invariant(
            $"{counts}, or work {rounds} {(error > Length.Zero ? "fewer" : "more")} rounds of edging at the {edge}");
    }

    private static string Words(LookAlike pair)
    {
        var meet = pair.Adjacent ? "They meet along the yarn, so that their border is hard to count" : "The charts' symbols tell them apart";
        return string.Create(CultureInfo.InvariantCulture, $"{pair.First.Name} and {pair.Second.Name} look much alike to {pair.Viewing.Words()} (difference {pair.Difference:0.0}). {meet}.");
    }
}
