using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Instructions;

/// <summary>Body and garment measurements, kept apart, with the ease between them.</summary>
internal static class SizesSection
{
    private static readonly ImmutableArray<(GarmentMeasure Measure, string Name)> Names =
    [
        (GarmentMeasure.Width, "Width"),
        (GarmentMeasure.Length, "Length"),
        (GarmentMeasure.ArmholeDepth, "Armhole depth"),
        (GarmentMeasure.NeckWidth, "Neck opening, flat"),
        (GarmentMeasure.SleeveWidth, "Sleeve, round"),
        (GarmentMeasure.SleeveLength, "Sleeve length"),
        (GarmentMeasure.Circumference, "Circumference"),
        (GarmentMeasure.Height, "Height"),
    ];

    public static Section Write(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        var girth = sizes.All(s => s.Body.ContainsKey("bust")) ? "bust" : "chest";
        if (sizes.All(s => s.Body.ContainsKey(girth)))
            rows.Add(Row($"To fit {girth}", s => s.Body[girth]));
        foreach (var (measure, name) in Names)
        {
            if (sizes.All(s => s.Finished.ContainsKey(measure)))
                rows.Add(Row(measure == GarmentMeasure.Width && sizes.All(s => s.Body.ContainsKey(girth)) ? $"Finished {girth}" : name, s => s.Finished[measure]));
        }
        if (sizes.All(s => s.Body.ContainsKey(girth) && s.Finished.ContainsKey(GarmentMeasure.Width)))
            rows.Add(Row($"Ease at the {girth}", s => s.Finished[GarmentMeasure.Width] - s.Body[girth]));
        return new Section("sizes", Phrase.Plain("Sizes"),
        [
            new Table(
                Phrase.Plain(sizes.All(s => s.Body.ContainsKey(girth)) ? "Measurements of the body and of the finished garment." : "Finished measurements."),
                [Phrase.Plain("Size"), .. sizes.Select(s => Phrase.Plain(s.Name))],
                rows.ToImmutable(),
                PerSizeColumns: true),
            .. SchematicFigure.Of(context),
        ]);

        ImmutableArray<Phrase> Row(string name, Func<SizePlan, Length> value) =>
            [Phrase.Of($"{name}, {new UnitNames()}"), .. sizes.Select(s => new Phrase([new Bare(new Measure(new([value(s)])))]))];
    }
}
