using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>Yarn, hook, notions and gauge.</summary>
internal static class MaterialsSection
{
    public static Section Materials(PatternContext context)
    {
        var yarn = context.Project.Yarn;
        var category = yarn.Category is { } number ? $", weight category {number}" : "";
        var items = ImmutableArray.CreateBuilder<Phrase>();
        items.Add(Phrase.Of(
            $"{yarn.Name}: {yarn.Fibre}{category}; {OneYarn(yarn.Ball.Length)}, {OneMass(yarn.Ball.Mass)} a ball. {context.Each(s => s.Yarn.BallsSafe)} balls ({context.Each(s => s.Yarn.BallsTypical)} are used when joins fall as planned)."));
        if (context.Project.Companion is { } companion && context.Plan.Sizes.All(s => s.Yarn.Companion is not null))
        {
            items.Add(Phrase.Of(
                $"{companion.Name}, solid: {OneYarn(companion.Ball.Length)}, {OneMass(companion.Ball.Mass)} a ball. Balls: {context.Each(s => s.Yarn.Companion!.Balls)}."));
        }
        items.Add(Phrase.Of($"Hook of {Millimetres(context.Project.Fabric.Swatch.HookMillimetres)}, or the size that gives the {new Term("gauge")}."));
        items.Add(Phrase.Plain("Locking stitch markers, tapestry needle, tape measure, scrap yarn to mark rows."));
        return new Section("materials", Phrase.Plain("Materials"),
        [
            new Bullets(items.ToImmutable()),
            new Figure(
                new YarnRuler(context.Key, [.. context.Plan.Ring.Sections.Select(Yarns.ColourRing.ToUnits)]),
                Phrase.Plain("The colour sequence, in stitches."),
                SequenceInWords(context)),
            YarnTable(context),
            .. context.Own("materials"),
            new Caution(Phrase.Plain(
                "Buy all balls of one dye lot, and count one sequence from each before it is joined: hand-dyed sequences drift. Balls cannot be alternated row by row in pooled work.")),
        ]);
    }

    public static Section Gauge(PatternContext context)
    {
        var fabric = context.Project.Fabric;
        var rows = ImmutableArray.CreateBuilder<Phrase>();
        foreach (var (state, gauge) in new[] { ("As worked", fabric.Swatch.Worked), ("Washed and dried", fabric.Swatch.Blocked), ("After hanging", fabric.Swatch.Hung) })
        {
            if (gauge is not null)
                rows.Add(Phrase.Of($"{state}: {Number(gauge.Stitches)} stitches and {Number(gauge.Rows)} rows over {gauge.Over}."));
        }
        var unit = fabric.Stitch.StitchesPerUnit == 1 ? "stitch" : "pair of stitches";
        return new Section("gauge", Phrase.Of($"{new Term("Gauge")}"),
        [
            new Bullets(rows.ToImmutable()),
            new Paragraph(Phrase.Of(
                $"The size depends on these; the picture depends on the yarn in a {unit}: {Number(Math.Round(context.Plan.YarnPerUnit.Centimetres, 2))} cm. Check both before you begin.")),
            .. context.Own("gauge"),
        ]);
    }

    private static Table YarnTable(PatternContext context)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        Row(Phrase.Of($"Length, {new UnitNames(UnitsOf.YarnLength)}"), s => new Bare(new YarnLength(new([s.Yarn.Length]))));
        Row(Phrase.Of($"Weight, {new UnitNames(UnitsOf.YarnMass)}"), s => new Bare(new YarnMass(new([s.Yarn.Mass]))));
        Row(Phrase.Plain("Balls, typical"), s => new Count(new([s.Yarn.BallsTypical])));
        Row(Phrase.Plain("Balls, with reserve"), s => new Count(new([s.Yarn.BallsSafe])));
        if (context.Plan.Sizes.All(s => s.Yarn.Companion is not null))
        {
            Row(Phrase.Of($"Companion yarn, {new UnitNames(UnitsOf.YarnLength)}"), s => new Bare(new YarnLength(new([s.Yarn.Companion!.Length]))));
            Row(Phrase.Plain("Companion yarn, balls"), s => new Count(new([s.Yarn.Companion!.Balls])));
        }
        return new Table(
            Phrase.Plain("Yarn by size, with restarts, joins, edgings, seams, tails and swatch."),
            [Phrase.Plain("Size"), .. context.Plan.Sizes.Select(s => Phrase.Plain(s.Name))],
            rows.ToImmutable(),
            PerSizeColumns: true);

        void Row(Phrase name, Func<Garments.SizePlan, Inline> cell) =>
            rows.Add([name, .. context.Plan.Sizes.Select(s => new Phrase([cell(s)]))]);
    }

    private static Phrase SequenceInWords(PatternContext context)
    {
        var said = context.Key.Select((colour, i) =>
            $"{Number(Yarns.ColourRing.ToUnits(context.Plan.Ring.Sections[i]))} of {colour.Name} ({colour.Symbol})");
        return Phrase.Plain($"In the order in which the yarn runs: {string.Join(", ", said)}; then again from the first.");
    }

    private static Phrase OneYarn(Length length) => new([new YarnLength(new([length]))]);

    private static Phrase OneMass(Mass mass) => new([new YarnMass(new([mass]))]);

    internal static string Millimetres(double value) => value.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    internal static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
