using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Projects.Description;

/// <summary>Sizes in the document.</summary>
internal static class SizeDescription
{
    private const int MostFixed = 400;

    public static TextShape SizeName { get; } = TextShape.InLists(24);

    private static readonly TextShape ReasonText = new(400);

    private static readonly ObjectShape<OwnSize> OwnSizeShape = new("ownSize", "A size of the designer's own.", o =>
    {
        var name = o.Required("name", "What the pattern calls it.", SizeName, s => s.Name);
        var measures = o.Required(
            "measures", "Measures of the body, as in a size chart.",
            new MapShape<Length>("body measures", FixedNames.Body, Measured.Body, 1), s => s.Measures);
        o.Check((v, faults) =>
        {
            if (measures.TryFrom(v, out var m) && m.ContainsKey(FixedNames.Bust) && m.ContainsKey(FixedNames.Chest))
                faults.Meaning(v.Place.Member("measures").Member(FixedNames.Chest), "either bust or chest", "Leave one of the two out.");
        });
        return v => new OwnSize(name.From(v), measures.From(v));
    });

    public static SizeSelection None { get; } = new(null, [], [], null, [], []);

    public static ObjectShape<SizeSelection> Sizes { get; } = new("sizes", "Which sizes the pattern is written for.", o =>
    {
        var chart = o.OptionalObject(
            "chart", "A shipped size chart.", new ChoiceShape<string>([.. SizeCharts.All.Select(c => (c.Id, c.Id))]), s => s.Chart,
            "the sizes under own, or one size");
        var names = o.Optional(
            "names", "Sizes of the chart, smallest first.", new ListShape<string>("sizes", SizeName, 0, SizeChart.MostSizes), s => s.Sizes,
            [],
            "all sizes of the chart");
        var own = o.Optional(
            "own", "The designer's own chart instead, smallest size first.",
            new ListShape<OwnSize>("sizes", OwnSizeShape, 0, SizeChart.MostSizes), s => s.Own, [],
            "none");
        var @base = o.OptionalObject("base", "The size that was made as the sample.", SizeName, s => s.Base, "the middle one");
        var locked = o.Optional(
            "locked", "Numbers of the base size as made; the other sizes follow them.", FixedList("locked", isOverride: false),
            s => s.Locked, [], "none");
        var overrides = o.Optional(
            "overrides", "Numbers that you set yourself; the rest follows.", FixedList("override", isOverride: true), s => s.Overrides, [],
            "none");
        o.Check((v, faults) =>
        {
            if (chart.TryFrom(v, out var c) && names.TryFrom(v, out var n) && own.TryFrom(v, out var w))
                SizeChecks.OneChart(v.Place, c, n, w, faults);
            if (@base.TryFrom(v, out var b) && locked.TryFrom(v, out var l))
                SizeChecks.LockedIsBase(v.Place, b, l, faults);
            if (overrides.TryFrom(v, out var fixedOnes))
                SizeChecks.FixedOnce(v.Place.Member("overrides"), fixedOnes, faults);
        });
        return v => new SizeSelection(chart.From(v), names.From(v), own.From(v), @base.From(v), locked.From(v), overrides.From(v));
    });

    private static ListShape<FixedNumber> FixedList(string name, bool isOverride)
    {
        var count = (string kind, ImmutableArray<string> names, int most) => new VariantCase<FixedNumber>(
            names, Fixed($"{name}{kind}", isOverride, names, "count", "The count.", new WholeShape(1, most), f => f.Count));
        return new ListShape<FixedNumber>(
            "numbers",
            new VariantShape<FixedNumber>(
                "what",
                f => f.What,
                new VariantCase<FixedNumber>(
                    FixedNames.Finished,
                    Fixed($"{name}Measure", isOverride, FixedNames.Finished, "length", "The finished measure.", Measured.Body,
                        f => f.Length)),
                count("Stitches", FixedCounts.OfStitches, FabricPath.MostStitches),
                count("Rows", FixedCounts.OfRows, FabricPath.MostRows)),
            0,
            MostFixed);
    }

    private static ObjectShape<FixedNumber> Fixed<TValue>(
        string name, bool isOverride, ImmutableArray<string> names, string valueName, string valueDescription, Shape<TValue> shape,
        Func<FixedNumber, TValue?> get)
        where TValue : struct => new(name, "A number that you set yourself.", o =>
    {
        var size = o.Required("size", "Name of the size.", SizeName, f => f.Size);
        var what = o.Required("what", "Which number.", new ChoiceShape<string>([.. names.Select(n => (n, n))]), f => f.What);
        var value = o.Required(valueName, valueDescription, shape, f => get(f)!.Value);
        var reason = isOverride
            ? o.Required<string?>("reason", "Why; printed in your notes.", ReasonText!, f => f.Reason)
            : o.OptionalObject("reason", "Why; printed in your notes.", ReasonText, f => f.Reason.Length == 0 ? null : f.Reason, "as made");
        return v => new FixedNumber(
            size.From(v), what.From(v), value.From(v) as Length?, value.From(v) as int?, reason.From(v) ?? "");
    });
}
