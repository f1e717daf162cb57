using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Instructions;

/// <summary>Yarn, hook, notions and gauge.</summary>
internal static class MaterialsSection
{
    /// <summary>Enough that the tape's error is small beside the yarn.</summary>
    private const int Unravelled = 20;

    public static Section Materials(PatternContext context)
    {
        var yarn = context.Project.Yarn;
        var items = ImmutableArray.CreateBuilder<Phrase>();
        items.Add(Phrase.Of(
            $"{yarn.Name}: {Label(yarn)}{OneYarn(yarn.Ball.Length)}, {OneMass(yarn.Ball.Mass)} a ball. Balls to buy: {context.Each(s => s.Yarn.BallsSafe)}."));
        if (context.Project.Companion is { } companion && context.Plan.Sizes.All(s => s.Yarn.Companion is not null))
        {
            items.Add(Phrase.Of(
                $"{companion.Name}, the companion yarn for {Uses(companion)}: {OneYarn(companion.Ball.Length)}, {OneMass(companion.Ball.Mass)} a ball. Balls to buy: {context.Each(s => s.Yarn.Companion!.Balls)}."));
        }
        items.Add(Phrase.Of($"Hook of {Hook(context.Project.Fabric.Swatch.HookMillimetres)}, or the size that gives the {new Term("gauge")}."));
        items.Add(Phrase.Plain("Locking stitch markers, tapestry needle, tape measure."));
        return new Section("materials", Phrase.Plain("Materials"),
        [
            new Bullets(items.ToImmutable()),
            new Figure(
                new YarnRuler(context.Key, [.. context.Key.Select((_, i) => context.Plan.Sequence.UnitsIn(i))]),
                Phrase.Plain($"The colour sequence, in {context.UnitWord()}."),
                SequenceInWords(context)),
            YarnTable(context),
            .. context.Own("materials"),
            new Caution(Phrase.Plain(
                "Buy all balls of one dye lot, and count one sequence from each before it is joined: hand-dyed sequences drift. Balls cannot be alternated row by row in pooled work.")),
        ]);
    }

    /// <summary>What its label says beside the ball; nothing where the document is silent.</summary>
    internal static string Label(Yarns.Yarn yarn)
    {
        string[] said = [.. yarn.Fibre.Length > 0 ? [yarn.Fibre] : Array.Empty<string>(), .. yarn.Category is { } number ? [$"weight category {number}"] : Array.Empty<string>()];
        return said.Length == 0 ? "" : $"{string.Join(", ", said)}; ";
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
        return new Section("gauge", Phrase.Of($"{new Term("Gauge")}"),
        [
            new Bullets(rows.ToImmutable()),
            new Paragraph(Phrase.Of(
                $"The size depends on these, the picture on the yarn that a {(fabric.Stitch.StitchesPerUnit == 1 ? "stitch" : "pair of stitches")} takes. Check both: unravel {Unravelled} {context.UnitWord()} of the swatch, and measure the yarn without pulling it.")),
            new Bullets([Phrase.Of($"Yarn in {Unravelled} {context.UnitWord()}: {context.Plan.Sequence.YarnPerUnit * Unravelled}.")]),
            .. context.Own("gauge"),
        ]);
    }

    private static Table YarnTable(PatternContext context)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        Row(Phrase.Of($"Length, {new UnitNames(UnitsOf.YarnLength)}"), s => new Bare(new YarnLength(new([s.Yarn.Length]))));
        Row(Phrase.Of($"Weight, {new UnitNames(UnitsOf.YarnMass)}"), s => new Bare(new YarnMass(new([s.Yarn.Mass]))));
        Row(Phrase.Plain("Balls, if joins fall as planned"), s => new Count(new([s.Yarn.BallsTypical])));
        Row(Phrase.Plain("Balls to buy"), s => new Count(new([s.Yarn.BallsSafe])));
        if (context.Plan.Sizes.All(s => s.Yarn.Companion is not null))
        {
            Row(Phrase.Of($"Companion yarn, {new UnitNames(UnitsOf.YarnLength)}"), s => new Bare(new YarnLength(new([s.Yarn.Companion!.Length]))));
            Row(Phrase.Plain("Companion yarn, balls to buy"), s => new Count(new([s.Yarn.Companion!.Balls])));
        }
        return new Table(
            Phrase.Plain("Yarn by size, with restarts, joins, edgings, seams, tails and swatch."),
            [Phrase.Plain("Size"), .. context.Plan.Sizes.Select(s => Phrase.Plain(s.Name))],
            rows.ToImmutable(),
            PerSizeColumns: true);

        void Row(Phrase name, Func<SizePlan, Inline> cell) =>
            rows.Add([name, .. context.Plan.Sizes.Select(s => new Phrase([cell(s)]))]);
    }

    private static Phrase SequenceInWords(PatternContext context)
    {
        var said = context.Key.Select((colour, i) =>
            $"{Number(context.Plan.Sequence.UnitsIn(i))} of {colour.Name} ({colour.Symbol})");
        return Phrase.Plain($"In the order in which the yarn runs: {string.Join(", ", said)}; then from the first again.");
    }

    private static string Uses(Yarns.CompanionYarn companion)
    {
        var words = companion.Uses.Select(Use).ToArray();
        return words.Length < 2 ? string.Concat(words) : $"{string.Join(", ", words[..^1])} and {words[^1]}";
    }

    private static string Use(Yarns.CompanionUse use) => use switch
    {
        Yarns.CompanionUse.Foundation => "foundation chains",
        Yarns.CompanionUse.Seams => "seams",
        Yarns.CompanionUse.Edgings => "edgings",
        Yarns.CompanionUse.PlainPieces => "plain pieces",
        _ => throw new ArgumentOutOfRangeException(nameof(use), use, "No words for this use."),
    };

    /// <summary>With its letter where a hook of exactly this size has one; letters vary by maker, millimetres govern.</summary>
    private static string Hook(double millimetres)
    {
        var known = HookSizes.Nearest(Length.FromMillimetres(millimetres));
        var letter = Math.Abs(known.Diameter.Millimetres - millimetres) < 1e-6 && known.Us.Length > 0 ? $" (American {known.Us})" : "";
        return Millimetres(millimetres) + letter;
    }

    private static Phrase OneYarn(Length length) => new([new YarnLength(new([length]))]);

    private static Phrase OneMass(Mass mass) => new([new YarnMass(new([mass]))]);

    internal static string Millimetres(double value) => value.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    internal static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
