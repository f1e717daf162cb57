using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>Finished targets of a boxy top by the trade's rules, as worn, edgings and all.</summary>
/// <param name="Fixed">What the designer fixed.</param>
internal sealed record BoxyTargets(
    BodySizes Sizes,
    FixedNumbers Fixed,
    ImmutableArray<Length> Width,
    ImmutableArray<Length> Length,
    ImmutableArray<Length> Armhole,
    ImmutableArray<Length> Neck)
{
    public static ImmutableArray<PlanRule> Rules { get; } =
    [
        new("body", "A size is planned for the middle of each body measure's range; a body at either end of the range has half the range less or more ease."),
        new("width", "Finished width is the larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease."),
        new("length", "Length is the chart's back waist length plus what the garment hangs below the waist, hem edging included."),
        new("armholeDepth", "Armhole depth is the larger of the chart's armhole depth and half of upper arm plus ease, on whole even rows, or whole stitches."),
        new("neckWidth", "The slit neck keeps the base size's width, a small step wider per size above it and narrower below; its edging is inside that width."),
        new("sleeveWidth", "A rectangular sleeve is twice the armhole depth round; worked up in the variegated yarn its count is limited, and the armhole follows it."),
        new("sleeveLength", "Sleeve length is centre back neck to cuff, less half of the panel's finished width, less what the sleeve is shorter by: the wider the dropped shoulder, the shorter the sleeve."),
        new("locked", "The base size keeps the numbers it was made with, and every other size is moved by as much as the base was; an override moves its own size alone."),
        new("gauge", "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one, since the swatch was hung the other way. The worked gauge is for the hook."),
        new("seam", "Hidden stitches and rows of each sewn edge, and the depth of edgings, are taken off before counts are chosen."),
    ];

    public static bool TryFind(
        BoxyTop shape, SizeSelection selection, [NotNullWhen(true)] out BoxyTargets? targets, out ImmutableArray<Finding> faults)
    {
        targets = null;
        var reachesHip = shape.BelowWaist >= shape.HipBelowWaist;
        BodyMeasure[] needed =
        [
            BodyMeasure.Bust, BodyMeasure.BackWaistLength, BodyMeasure.ArmholeDepth, BodyMeasure.UpperArm,
            .. reachesHip ? [BodyMeasure.Hip] : Array.Empty<BodyMeasure>(),
            .. shape.Sleeves is null ? Array.Empty<BodyMeasure>() : [BodyMeasure.CentreBackNeckToCuff],
        ];
        if (!BodySizes.TryRead(selection, needed, out var sizes, out faults))
            return false;
        var names = sizes.Sizes.Select(s => s.Name).ToArray();
        var fixedNumbers = new FixedNumbers(selection, names[sizes.Base]);
        faults = [.. fixedNumbers.Faults(names, Measures(shape), Counts(shape)), .. EaseOf(shape.BustEase, out var ease)];
        if (!faults.IsEmpty)
            return false;
        targets = new BoxyTargets(
            sizes,
            fixedNumbers,
            [.. sizes.Sizes.Select(s => reachesHip
                ? Quantities.Length.Max(s[BodyMeasure.Bust] + ease, s[BodyMeasure.Hip] + shape.HipEase)
                : s[BodyMeasure.Bust] + ease)],
            fixedNumbers.Apply(GarmentMeasure.Length, sizes,
                [.. sizes.Sizes.Select(s => s[BodyMeasure.BackWaistLength] + shape.BelowWaist)]),
            fixedNumbers.Apply(GarmentMeasure.ArmholeDepth, sizes, [.. sizes.Sizes.Select(s => Quantities.Length.Max(
                s[BodyMeasure.ArmholeDepth], (s[BodyMeasure.UpperArm] + shape.UpperArmEase) / 2))]),
            fixedNumbers.Apply(GarmentMeasure.NeckWidth, sizes,
                [.. sizes.Sizes.Select((_, i) => shape.NeckWidth + shape.NeckStep * (i - sizes.Base))]));
        return true;
    }

    /// <summary>The widths after what was made and overridden; kept apart since a locked count makes a width only at a gauge.</summary>
    /// <param name="made">The base's width by its locked count.</param>
    public ImmutableArray<Length> WidthAsMade(Length? made) => Fixed.Apply(GarmentMeasure.Width, Sizes, Width, made);

    /// <inheritdoc cref="WidthAsMade"/>
    public ImmutableArray<Length> LengthAsMade(Length? made) =>
        made is { } length && Fixed.Made(GarmentMeasure.Length) is null
            ? [.. Length.Select((l, i) => Fixed.Override(Sizes.Sizes[i].Name, GarmentMeasure.Length) ?? l + length - Length[Sizes.Base])]
            : Length;

    /// <summary>Sleeve length by rule, once the panel's finished width is known.</summary>
    public Length SleeveLengthByRule(SleeveSpec sleeves, int size, Length finishedWidth) =>
        Sizes.Sizes[size][BodyMeasure.CentreBackNeckToCuff] - finishedWidth / 4 - sleeves.ShorterBy;

    private static IReadOnlyList<GarmentMeasure> Measures(BoxyTop shape) =>
        shape.Sleeves is null
            ? [GarmentMeasure.Width, GarmentMeasure.Length, GarmentMeasure.ArmholeDepth, GarmentMeasure.NeckWidth]
            :
            [
                GarmentMeasure.Width, GarmentMeasure.Length, GarmentMeasure.ArmholeDepth, GarmentMeasure.NeckWidth, GarmentMeasure.SleeveWidth,
                GarmentMeasure.SleeveLength,
            ];

    private static IReadOnlyList<string> Counts(BoxyTop shape) => shape.Sleeves is null
        ? [FixedCounts.PanelStitches, FixedCounts.PanelRows]
        : [FixedCounts.PanelStitches, FixedCounts.PanelRows, FixedCounts.SleeveStitches, FixedCounts.SleeveRows];

    private static ImmutableArray<Finding> EaseOf(Ease ease, out Length length)
    {
        length = ease.Own ?? Quantities.Length.Zero;
        if (ease.Category is not { } category)
            return ease.Own is null
                ? [new Finding(FindingLevel.Fault, "garment.ease", "Give an ease: a length, or a category with its revision.")]
                : [];
        var published = PublishedEase.All.FirstOrDefault(range =>
            range.Revision.ToString().Equals(ease.Revision, StringComparison.OrdinalIgnoreCase)
            && (range.Name == category || range.Name == category + " fit"));
        if (published is null)
            return [new Finding(FindingLevel.Fault, "garment.ease",
                $"There is no ease {category} in the {ease.Revision ?? "unnamed"} revision: choose one of {string.Join(", ", PublishedEase.All.Select(r => $"{r.Name} ({r.Revision})"))}.")];
        length = published.Typical;
        return [];
    }
}
