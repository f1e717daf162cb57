using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Instructions;

/// <summary>Body and garment measurements, kept apart, with the ease between them.</summary>
internal static class SizesSection
{
    private static readonly ImmutableArray<(GarmentMeasure Measure, string Name)> Names =
    [
        (GarmentMeasure.Width, "Width"),
        (GarmentMeasure.WristToWrist, "Wrist to wrist"),
        (GarmentMeasure.PanelWidth, "Front or back, across"),
        (GarmentMeasure.BackWidth, "Back, width"),
        (GarmentMeasure.HemWidth, "Hem, round"),
        (GarmentMeasure.Length, "Length"),
        (GarmentMeasure.ArmholeDepth, "Armhole depth"),
        (GarmentMeasure.ArmholeInset, "Armhole inset"),
        (GarmentMeasure.LegOpening, "Leg opening, depth"),
        (GarmentMeasure.NeckWidth, "Neck opening, flat"),
        (GarmentMeasure.FrontNeck, "Neck opening, each front"),
        (GarmentMeasure.NeckDepth, "Neck depth, front"),
        (GarmentMeasure.BackNeckDepth, "Neck depth, back"),
        (GarmentMeasure.SleeveWidth, "Sleeve, round"),
        (GarmentMeasure.SleeveLength, "Sleeve length"),
        (GarmentMeasure.SleeveJoin, "Sleeve join"),
        (GarmentMeasure.Vent, "Side vent"),
        (GarmentMeasure.Circumference, "Circumference"),
        (GarmentMeasure.CrownEdge, "Upper edge, round"),
        (GarmentMeasure.Height, "Height"),
        (GarmentMeasure.GussetDepth, "Gusset, depth"),
        (GarmentMeasure.StrapLength, "Strap with its ends"),
        (GarmentMeasure.TabLength, "Tab, front to back"),
        (GarmentMeasure.Wingspan, "Wingspan"),
        (GarmentMeasure.Depth, "Depth"),
    ];

    /// <summary>Finished measures that differ by less are taken for the same.</summary>
    private static readonly Length Seen = Length.FromCentimetres(0.5);

    /// <summary>What front and back have left beside the neck, between edgings.</summary>
    private static Length? ShoulderWidth(SizePlan size) =>
        size.Finished.TryGetValue(GarmentMeasure.Width, out var round) && size.Finished.TryGetValue(GarmentMeasure.NeckWidth, out var neck)
            ? (round / 2 - neck) / 2 - size.Finished.GetValueOrDefault(GarmentMeasure.ArmholeInset) : null;

    /// <summary>To half centimetres, whatever its size, so that all of a row are rounded alike.</summary>
    private static Length Halves(Length length) =>
        Length.FromCentimetres(Math.Round(length.Centimetres * 2, MidpointRounding.AwayFromZero) / 2);

    /// <summary>Of a parallelogram whose rows move on by whole stitches: its slanted edge, and how far the two lie apart.</summary>
    private static (Length Edge, Length Across) Slanted(PatternContext context, SizePlan size)
    {
        var group = context.Construction.Groups[0];
        var (row, rows) = (
            size.Finished[group.Along(context.Plan.Direction, stitches: true).Measure],
            size.Finished[group.Along(context.Plan.Direction, stitches: false).Measure]);
        var moved = size.Pieces[0].Rows * group.Bias / 2.0 * context.Plan.StitchWidth;
        var edge = Length.FromCentimetres(double.Hypot(rows.Centimetres, moved.Centimetres));
        return (edge, row * (rows / edge));
    }

    /// <summary>What is asked for alike in all sizes, as where the document gives a length of its own.</summary>
    private static Phrase Alike(ImmutableArray<SizePlan> sizes)
    {
        var alike = Names.Select(n => n.Measure).Where(m => sizes.Length > 1
            && sizes.All(s => s.Finished.TryGetValue(m, out var made) && made > Length.Zero
                && s.Target.TryGetValue(m, out var wanted) && wanted == sizes[0].Target[m])
            && sizes.Max(s => s.Finished[m]) - sizes.Min(s => s.Finished[m]) < Seen).Select(GarmentMeasures.Words).ToArray();
        return alike.Length == 0 ? Phrase.Empty : new([new InAllSizes(Phrase.Of($" The same in every size, as planned: {Phrase.List(alike.Select(Phrase.Plain))}."))]);
    }

    /// <summary>The girth that the garment is made to, and the finished measure around it.</summary>
    private static (BodyMeasure Girth, GarmentMeasure Around) Girth(Plan plan)
    {
        var needs = plan.Project.Garment.Shape.Needs;
        if (!needs.Contains(BodyMeasure.Bust))
        {
            if (needs.Contains(BodyMeasure.Hip))
                return (BodyMeasure.Hip, GarmentMeasure.Width);
            if (needs.Contains(BodyMeasure.Head) && plan.Sizes.All(s => s.Finished.ContainsKey(GarmentMeasure.Circumference)))
                return (BodyMeasure.Head, GarmentMeasure.Circumference);
        }
        return (BodyMeasure.Bust, GarmentMeasure.Width);
    }

    public static Section Write(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        var (girth, around) = Girth(context.Plan);
        var (key, word) = (BodyMeasures.Key(girth), context.Project.Sizes.Words(girth));
        var isToBody = sizes.All(s => s.Body.ContainsKey(key));
        var group = context.Construction.Groups[0];
        var isBoth = group.Across is { Pieces: 2 } across && across.Measure == around;
        var alongRow = group.Along(context.Plan.Direction, stitches: true).Measure;
        if (isToBody)
            rows.Add(Row(Phrase.Of($"To fit {word}"), s => s.Body[key]));
        // A head that has to pass is a measure to choose by, too.
        var head = BodyMeasures.Key(BodyMeasure.Head);
        if (girth != BodyMeasure.Head && sizes.All(s => s.Worn.Any(f => f.Body == BodyMeasure.Head) && s.Body.ContainsKey(head)))
            rows.Add(Row(Phrase.Of($"To fit {BodyMeasures.Words(BodyMeasure.Head)}"), s => s.Body[head]));
        if (context.Construction.Held is { } held && held.Girth != girth
            && sizes.All(s => s.Body.ContainsKey(BodyMeasures.Key(held.Girth))))
            rows.Add(Row(Phrase.Of($"To fit {BodyMeasures.Words(held.Girth)}"), s => s.Body[BodyMeasures.Key(held.Girth)]));
        foreach (var (measure, name) in Names)
        {
            if (sizes.All(s => s.Finished.ContainsKey(measure)))
                rows.Add(Row(Called(measure, name), s => s.Finished[measure]));
        }
        if (group.Bias > 0)
        {
            // Whoever wears it sees the slanted edges as the long ones.
            rows.Add(Row(Phrase.Plain("Slanted edge"), s => Slanted(context, s).Edge));
            rows.Add(Row(Phrase.Plain("Straight across, between the slanted edges"), s => Slanted(context, s).Across));
        }
        if (sizes.All(s => ShoulderWidth(s) is not null))
            rows.Add(Row(Phrase.Plain("Shoulder width"), s => ShoulderWidth(s)!.Value));
        if (isToBody && sizes.All(s => s.Finished.ContainsKey(around)))
            rows.Add(Row(Phrase.Of($"Ease at the {word}"), s => Halves(s.Finished[around]) - Halves(s.Body[key])));
        for (var i = 0; i < sizes[0].Edgings.Length; i++)
        {
            var (at, place) = (i, PlaceWords.Of(sizes[0].Edgings[i].Where));
            if (EdgingLibrary.Find(sizes[0].Edgings[at].Edging).Relaxed >= 1)
                continue;
            rows.Add(Row(Phrase.Of($"{place} at rest"), s => s.Edgings[at].RelaxedWidth));
            rows.Add(Row(Phrase.Of($"{place} stretched"), s => s.Edgings[at].StretchedWidth));
        }
        return new Section("sizes", Phrase.Plain("Sizes"),
        [
            new Table(
                Phrase.Plain(isToBody ? "Measurements of the body and of the finished garment." : "Finished measurements.") + Alike(sizes),
                context.Headed("Size"),
                rows.ToImmutable(),
                PerSizeColumns: true),
            .. SchematicFigure.Of(context),
        ]);

        Phrase Called(GarmentMeasure measure, string name) => (measure == around, measure == alongRow) switch
        {
            (_, true) when group.Bias > 0 => Phrase.Of($"{name}, along a row"),
            (_, false) when group.Bias > 0 => Phrase.Of($"{name}, from the first row to the last"),
            (true, _) when isToBody => Phrase.Of($"Finished {word}"),
            (true, _) when isBoth => Phrase.Of($"{name}, front and back together"),
            _ => Phrase.Plain(name),
        };

        ImmutableArray<Phrase> Row(Phrase name, Func<SizePlan, Length> value) =>
            [Phrase.Of($"{name}, {new UnitNames()}"), .. sizes.Select(s => new Phrase([new Bare(new Measure(new([value(s)])))]))];
    }
}
