using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Adapting;

/// <summary>Why the answer is what it is, for a maker who knows no mathematics.</summary>
/// <param name="plan">Of the whole pattern.</param>
/// <param name="size">The reader's.</param>
/// <param name="document">With her materials.</param>
/// <param name="free">Her own document.</param>
/// <param name="measured">Her yarn with her own hook.</param>
internal sealed class AdaptWords(Plan plan, SizePlan size, OwnDocument document, Project free, MeasuredYarn measured)
{
    /// <summary>From counts that leave more of it unknown than this, the colours may come round sooner or later than is thought.</summary>
    private const double Unsure = 0.015;

    /// <summary>Nobody is asked to count more sequences than this.</summary>
    private const int MostCounted = 8;

    /// <summary>What is not said to have changed.</summary>
    private static readonly Length Noticed = Length.FromCentimetres(0.5);

    private readonly Units _units = plan.Project.Edition.Units;

    private readonly SequenceMatch? _order =
        SequenceMatch.OfOrder(plan, free.Yarn.Sections, [.. measured.Natural.Sections.Select(s => s.Value)]);

    private string Stitches => plan.Project.Fabric.Stitch.StitchesPerUnit == 1 ? "stitches" : "pairs of stitches";

    private string Stitch => plan.Project.Fabric.Stitch.StitchesPerUnit == 1 ? "stitch" : "pair of stitches";

    private double Own => measured.Natural.Total.Value;

    private double Pattern => plan.Sequence.Ring.SequenceUnits;

    private Length OwnLength => document.YarnPerStitch * Own;

    private Length PatternLength => document.PatternsYarnPerStitch * plan.Sequence.Measured.Natural.Total.Value * Times;

    /// <summary>Her sequence may be written as several of the pattern's.</summary>
    private int Times => _order is not null ? free.Yarn.Sections.Length / plan.Sequence.Ring.Sections.Length : 1;

    /// <summary>Whether yarn or hands differ from the pattern's.</summary>
    public AdaptCause Cause => !document.KnowsStitch ? AdaptCause.Untold
        : (IsSame(OwnLength, PatternLength), IsSame(document.YarnPerStitch, document.PatternsYarnPerStitch)) switch
        {
            (true, true) => AdaptCause.Neither,
            (false, true) => AdaptCause.Yarn,
            (true, false) => AdaptCause.Hands,
            _ => AdaptCause.Both,
        };

    private static bool IsSame(Length own, Length other) => Math.Abs(own / other - 1) <= AdaptLimits.SameYarn;

    /// <summary>All of her colours are one to the eye.</summary>
    public string OneColour() => free.Yarn.Sections.DistinctBy(s => s.Colour).Count() == 1
        ? "Not this yarn for this piece: it has one colour, and the picture is made by colours that follow each other. It will do for plain pieces and edgings."
        : "Not this yarn for this piece: its colours are so alike that no picture would be seen. It will do for plain pieces and edgings.";

    public string AsWritten(PublishedWork work) => Sentences(
        $"Make {Made(size.Name)} as the pattern has it.",
        Count(work.Sequence, work.Match.Stitches.Sum()),
        Hold(work), Begin(work), Said(Cause), Gauge(work), Sure());

    public string OtherHook(PublishedWork work)
    {
        var (own, hook) = (measured.Fabric.Swatch.HookMillimetres, work.Hook);
        return Sentences(
            $"Make {Made(size.Name)} as the pattern has it, with a {Mm(hook)} hook instead of your {Mm(own)}.",
            $"With the {Mm(own)} hook your colours come round once in {Number(Own)} {Stitches}, and the pattern counts on {Number(work.Match.Stitches.Sum())}; on the {(hook > own ? "larger" : "smaller")} hook each {Stitch} takes {(hook > own ? "more" : "less")} yarn, and they come round in about {Number(work.Sequence)}.",
            Hold(work), Begin(work), Said(Cause),
            $"The {Stitches} change size with the hook: {Finished(work.Plan.Sizes[0])}.",
            "Make a swatch with it first, and count the colours again.");
    }

    public string ReDerived(Plan own, Misfit misfit)
    {
        var (asked, made) = (plan.Project.Garment.Motif, own.Project.Garment.Motif);
        var first = own.Sizes[0].Pieces.First(p => p.Pooled);
        var counts = $"The {first.Name} has {OneSize.Widest(first)} stitches and {first.Rows} rows{(size.Find(first.Id) is { } was ? $", where the pattern has {OneSize.Widest(was)} and {was.Rows}" : "")}.";
        return Sentences(
            $"The pattern's stitches and rows are not for your yarn and gauge: here is {Made(size.Name, "the piece")} worked out anew for them.",
            Reason(misfit),
            Said(Cause),
            asked == made ? $"The colours draw {MotifWords.Of(made)}, as in the pattern."
                : $"The colours draw {MotifWords.Of(made)} and not {MotifWords.Of(asked)} as in the pattern: with your yarn no stitch count makes those in this size.",
            counts,
            $"{Wording.Capital(Finished(own.Sizes[0]))}.",
            Poor(own.Sizes[0]),
            Sure());
    }

    public string NotSuited(OwnPiece piece, ImmutableArray<OtherGarment> others) => Sentences(
        "Not this yarn for this piece:",
        piece.Obstacle switch
        {
            Obstacle.OffSize => $"whatever its colours draw, the nearest stitch count brings {GarmentMeasures.Words(piece.Furthest!.Measure)} {Say(piece.Furthest.Off)} {(piece.Furthest.IsOver ? "over" : "under")} what size {size.Name} asks for.",
            Obstacle.NotWorn => $"the stitch counts that its colours allow make {Made(size.Name)} too small to be put on.",
            Obstacle.Unreadable => "its colours come in stretches too long or too short for this piece: no picture would be seen.",
            Obstacle.FewMakers =>
                $"its colours come round once in {Number(Own)} {Stitches}, and in this size {Few(piece.Makers)} would keep them in their places.",
            _ => $"its colours come round once in {Number(Own)} {Stitches}, and no stitch count makes a picture of that in {Made(size.Name, "this piece")}.",
        },
        others.IsEmpty
            ? "Of the other garments that were tried, none comes out well with it."
            : $"It would make {Wording.List(others.Select(o => $"{One(o.Title.ToLowerInvariant())} ({o.Motif})"))}.");

    private static string One(string thing) => $"{(thing[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an" : "a")} {thing}";

    private static string Few(double share) => Math.Round(10 * share) switch
    {
        0 => "hardly anybody",
        1 => "only about one maker of 10",
        var makers => string.Create(CultureInfo.InvariantCulture, $"only about {makers:0} makers of 10"),
    };

    /// <summary>Why the pattern's own numbers will not do.</summary>
    private string Reason(Misfit misfit)
    {
        switch (misfit.Kind)
        {
            case MisfitKind.Order:
                var (own, patterns) = (free.Yarn.Sections.Length, plan.Sequence.Ring.Sections.Length);
                return own == patterns
                    ? $"Your colours follow each other in another order than the pattern's. They come round once in {Number(Own)} {Stitches}; the pattern counts on {Number(Pattern)}."
                    : $"Your yarn changes colour {own} times before it begins again, and the pattern's {patterns} times. Your colours come round once in {Number(Own)} {Stitches}; the pattern counts on {Number(Pattern)}.";
            case MisfitKind.Sequence:
                return $"Your colours come round once in {Number(Own)} {Stitches}, and the pattern counts on {Number(Pattern * Times)}: that is too far apart to be made up by working looser or tighter, or by another hook.";
            case MisfitKind.Share:
                var place = misfit.Section % plan.Sequence.Ring.Sections.Length;
                var hers = misfit.Match!.InPatternsOrder(free.Yarn.Sections)[misfit.Section].Name;
                var takes = misfit.Match.InPatternsOrder([.. measured.Natural.Sections.Select(s => s.Value)])[misfit.Section];
                return $"Your colours come round once in {Number(Own)} {Stitches}, and the pattern counts on {Number(Pattern * Times)}; but of those {hers} takes {Number(takes)}, where the pattern gives {Number(misfit.Match.Stitches[misfit.Section])} to {plan.Sequence.Colours[place].Name}.";
            case MisfitKind.Hands:
                return $"Your colours come round once in {Number(Own)} {Stitches}, and the pattern counts on {Number(Pattern * Times)}: you would have to work so much {(misfit.Sequence > Pattern * Times ? "looser" : "tighter")} all through that few keep it up.";
            default:
                var with = misfit.Hook == measured.Fabric.Swatch.HookMillimetres ? "" : $" with a {Mm(misfit.Hook)} hook";
                return misfit.Off is { } off
                    ? $"Your colours would serve{with}, but worked by the pattern's numbers {GarmentMeasures.Words(off.Measure)} would come out {Say(off.Made)} where the pattern has {Say(size.Finished.GetValueOrDefault(off.Measure))}."
                    : $"Your colours would serve{with}, but the pattern's numbers give another size with your stitches.";
        }
    }

    /// <summary>How her count and the pattern's agree.</summary>
    private string Count(double own, double pattern) => Math.Abs(own / pattern - 1) < 0.005
        ? $"Your colours come round once in {Number(own)} {Stitches}, which is what the pattern counts on."
        : $"Your colours come round once in {Number(own)} {Stitches}, and the pattern counts on {Number(pattern)}: near enough for hands.";

    /// <summary>What she is to do with her hands; empty where nothing is noticed.</summary>
    private string Hold(PublishedWork work) => Math.Abs(work.Departure) <= AdaptLimits.Usual ? ""
        : $"Work a little {(work.Departure > 0 ? "tighter" : "looser")} than you do by yourself, so that every colour takes the {Stitches} that the pattern gives it.";

    private string Begin(PublishedWork work)
    {
        if (work.Match is { First: 0, Backwards: false })
            return "";
        var (hers, patterns) = (work.Match.InPatternsOrder(free.Yarn.Sections)[0].Name, plan.Sequence.Colours[0].Name);
        return $"{(work.Match.Backwards ? "Pull the yarn from the other end of the ball, and let" : "Let")} {hers} take the place of the pattern's {patterns}; the others follow in turn.";
    }

    private string Said(AdaptCause cause)
    {
        var guess = document.IsSupposed ? ", as far as your gauge tells" : "";
        return cause switch
        {
            AdaptCause.Yarn => $"It is the yarn that differs and not your hands: its colours come round after {Say(OwnLength)}, the pattern's after {Say(PatternLength)}, and a {Stitch} takes as much yarn as the pattern's{guess}.",
            AdaptCause.Hands => $"It is your hands or your hook that differ and not the yarn: the colours come round after about as much yarn as the pattern's, {Say(OwnLength)}, and a {Stitch} of yours takes {Say(document.YarnPerStitch)} of it where the pattern's takes {Say(document.PatternsYarnPerStitch)}{guess}.",
            AdaptCause.Both => $"Both differ: a {Stitch} of yours takes {Say(document.YarnPerStitch)} of yarn and the pattern's {Say(document.PatternsYarnPerStitch)}; the colours come round after {Say(OwnLength)} and the pattern's after {Say(PatternLength)}{guess}.",
            AdaptCause.Untold when _order is not null
                && Math.Abs(Own / (Pattern * Times) - 1) is > AdaptLimits.Usual and < AdaptLimits.HandsApart =>
                $"Whether that is the yarn or your hands cannot be told from counts alone: unravel 20 {Stitches} of a swatch and measure their yarn.",
            _ => "",
        };
    }

    private string Gauge(PublishedWork work)
    {
        if (!document.KnowsGauge)
        {
            var gauge = FormattableString.Invariant($"{10 / plan.StitchWidth.Centimetres:0.##} stitches and {10 / plan.RowHeight.Centimetres:0.##} rows over 10 cm");
            return $"It comes out in the pattern's size if your swatch has the pattern's gauge, {gauge}.";
        }
        return $"At your gauge {Finished(work.Plan.Sizes[0])}.";
    }

    /// <summary>The measures that a maker asks after first, beside the pattern's.</summary>
    private string Finished(SizePlan own)
    {
        var moved = own.Finished.Where(f => size.Finished.TryGetValue(f.Key, out var was) && Length.Abs(was - f.Value) >= Noticed)
            .OrderByDescending(f => Length.Abs(f.Value - size.Finished[f.Key])).Take(3).ToArray();
        return moved.Length == 0 ? "it comes out in the pattern's size"
            : $"it comes out with {Wording.List(moved.Select(f => $"{GarmentMeasures.Words(f.Key)} {Say(f.Value)} instead of {Say(size.Finished[f.Key])}"))}";
    }

    /// <summary>What is off by more than is usual.</summary>
    private string Poor(SizePlan own) => OwnFit.Beyond(size, own, AdaptLimits.SameSize) is not { } poor ? ""
        : $"Mind that {GarmentMeasures.Words(poor.Measure)} is {Say(poor.Off)} {(poor.IsOver ? "over" : "under")} what the size asks for: no other stitch count that makes the picture is nearer.";

    /// <summary>What is to be counted before she begins; empty where enough was.</summary>
    private string Sure()
    {
        if (measured.Natural.Total.StandardError <= Unsure * Own)
            return "";
        var enough = Enumerable.Range(2, MostCounted - 1).FirstOrDefault(m => measured.SequenceErrorAfter(m) <= Unsure * Own, MostCounted);
        return measured.Natural.Source == SequenceSource.Counts
            ? $"Count {enough} sequences in all before you begin: from fewer it is not sure how many stitches your colours take."
            : $"Count the stitches of each colour over {enough} sequences before you begin: lengths alone do not make it sure how many they take.";
    }

    private string Say(Length length) => Wording.Fine(length, _units);

    private static string Mm(double hook) => string.Create(CultureInfo.InvariantCulture, $"{hook:0.###} mm");

    /// <summary>To a tenth of a stitch.</summary>
    private static string Number(double stitches) => Math.Round(stitches, 1).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Sentences(params string[] sentences) => string.Join(' ', sentences.Where(s => s.Length > 0));

    /// <summary>A piece of one size alone has no name for it.</summary>
    private static string Made(string size, string alone = "it") => size == SizeSelection.OnlySize ? alone : $"size {size}";
}
