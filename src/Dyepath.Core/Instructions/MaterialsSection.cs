using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

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
            $"{Phrase.Named(yarn.Name)}: {Label(yarn)}{OneYarn(yarn.Ball.Length)}, {OneMass(yarn.Ball.Mass)} a ball. Balls to buy: {context.Each(s => s.Yarn.BallsSafe)}, which serve 19 makers of 20."));
        if (context.Project.Companion is { } companion && context.Plan.Sizes.All(s => s.Yarn.Companion is not null))
        {
            items.Add(Phrase.Of(
                $"{Phrase.Named(companion.Name)}, the companion yarn for {Uses(context, companion)}: {OneYarn(companion.Ball.Length)}, {OneMass(companion.Ball.Mass)} a ball. Balls to buy: {context.Each(s => s.Yarn.Companion!.Balls)}, which serve 19 makers of 20."));
        }
        else if (context.HasChains)
        {
            items.Add(Phrase.Of(
                $"Smooth yarn of similar thickness, for chains that rows are worked on over: {new YarnLength(context.Each(s => s.Yarn.CompanionLength))}."));
        }
        items.Add(Phrase.Of($"Hook of {Hook(context.Project.Fabric.Swatch.HookMillimetres)}, or the size that gives the {new Term("gauge")}."));
        for (var i = 0; i < context.Plan.Sizes[0].Edgings.Length; i++)
        {
            var buttons = new ButtonWords(context, i);
            if (buttons.Holes is { } holes)
                items.Add(Phrase.Of($"Buttons: {holes}, {buttons.Diameter} mm across, so that they pass a buttonhole of {ButtonBand.Hole} stitches; sewing thread."));
            items.AddRange(DrawnThrough(context, i));
        }
        items.Add(Phrase.Plain("Locking stitch markers, tapestry needle, tape measure."));
        return new Section("materials", Phrase.Plain("Materials"),
        [
            .. Unmeasured(context),
            new Bullets(items.ToImmutable()),
            new Figure(
                new YarnRuler(context.Key, [.. context.Key.Select((_, i) => context.Plan.Sequence.UnitsIn(i))]),
                Phrase.Of($"The colour sequence, in {context.UnitWord()}."),
                SequenceInWords(context)),
            YarnTable(context),
            .. BallMap(context),
            .. context.Own("materials"),
            .. context.Plan.Sizes.All(s => s.Yarn.BallsSafe == 1) ? [] : (Block[])
            [
                new Caution(Phrase.Plain(
                    "Buy all balls of one dye lot, and count one sequence from each before it is joined: hand-dyed sequences drift. Balls cannot be alternated row by row in pooled work.")),
            ],
        ]);
    }

    /// <summary>What runs in a casing, and what it is drawn through with.</summary>
    /// <param name="at">Index of the edging in every size.</param>
    private static IEnumerable<Phrase> DrawnThrough(PatternContext context, int at)
    {
        var plan = context.Plan.Sizes[0].Edgings[at];
        var edging = EdgingLibrary.Find(plan.Edging);
        var place = PlaceWords.Within(plan.Where);
        if (edging.ElasticShare is not null)
        {
            var wide = context.Plan.Sizes.All(s => Edging.ElasticMillimetres(s.Edgings[at].Depth) is not null)
                ? Phrase.Of($"{context.Each(s => Edging.ElasticMillimetres(s.Edgings[at].Depth)!.Value)} mm wide")
                : Phrase.Plain("2 mm narrower than the casing");
            var cut = Notions.Elastic(context.Plan, at) is { } elastic ? Phrase.Of($"{elastic} long") : Phrase.Plain("as long as said there");
            yield return Phrase.Of($"Elastic for the {place}, {wide}, {cut}; a safety pin or bodkin to draw it through; sewing thread.");
        }
        else if (edging.Hazards.HasFlag(EdgingHazards.Cords))
        {
            yield return Phrase.Of(
                $"Cord for the {place}, chained from {Phrase.Named(context.YarnFor(CompanionUse.Edgings))}, {context.Each(s => s.Edgings[at].Edge + Edging.CordBeyond)} long; a safety pin or bodkin to thread it.");
        }
    }

    /// <summary>What was not measured is not printed as if it had been.</summary>
    private static IEnumerable<Block> Unmeasured(PatternContext context)
    {
        if (ExampleValues.Of(context.Project) is { IsEmpty: false } left)
            yield return new Caution(Phrase.Of(
                $"This yarn is not measured yet: {Phrase.List(left.Select(l => Phrase.Plain(l.Words)))} are those of an example, and all counts and amounts of yarn follow from them. Do not buy or work by this pattern."));
    }

    /// <summary>What its label says beside the ball; nothing where the document is silent.</summary>
    internal static Phrase Label(Yarn yarn)
    {
        ImmutableArray<Phrase> said = [.. yarn.Fibre.Length > 0 ? [Phrase.Named(yarn.Fibre)] : ImmutableArray<Phrase>.Empty,
            .. yarn.Category is { } number ? [Phrase.Of($"weight category {number}")] : ImmutableArray<Phrase>.Empty];
        return said.IsEmpty ? Phrase.Empty : Phrase.Of($"{Phrase.Join(", ", said)}; ");
    }

    public static Section Gauge(PatternContext context)
    {
        var fabric = context.Project.Fabric;
        var rows = ImmutableArray.CreateBuilder<Phrase>();
        foreach (var (state, gauge) in new[] { ("As worked", fabric.Swatch.Worked), ("Washed and dried", fabric.Swatch.Blocked), ("After hanging", fabric.Swatch.Hung) })
        {
            if (gauge is not null)
                rows.Add(Phrase.Of($"{state}: {gauge.Stitches} stitches and {gauge.Rows} rows over {gauge.Over}."));
        }
        return new Section("gauge", Phrase.Of($"{new Term("Gauge")}"),
        [
            new Paragraph(SwatchWords(fabric.Swatch, context.Plan.Direction)),
            new Bullets(rows.ToImmutable()),
            new Paragraph(fabric.Stitch.StitchesPerUnit == 1
                ? Phrase.Of($"The size depends on the {new Term("gauge")} {SizedBy(context)}, the picture on the yarn that a stitch takes. Check both: unravel {Unravelled} stitches of the swatch, and measure the yarn without pulling it.")
                : Phrase.Of($"The size depends on the {new Term("gauge")} {SizedBy(context)}, the picture on the yarn that a pair of stitches takes. Check both: unravel {Unravelled} pairs of the swatch, and measure the yarn without pulling it.")),
            new Bullets([Phrase.Of($"Yarn in {Unravelled} {context.UnitWord()}: {context.Plan.Sequence.YarnPerUnit * Unravelled}.")]),
            .. context.Own("gauge"),
        ]);
    }

    /// <summary>Half as wide and as tall again as what is counted, so that its edges are left out.</summary>
    private static Phrase SwatchWords(Swatch swatch, Direction direction)
    {
        var (stitches, rows) = ((int)Math.Ceiling(1.5 * swatch.Worked.Stitches), (int)Math.Ceiling(1.5 * swatch.Worked.Rows));
        var washed = swatch.Blocked is null ? "Measure it as worked, then wash it and dry it flat as you will the garment: if it changes, so will the garment." : "Measure it as worked, then wash it, dry it flat and measure it again.";
        // It hangs as it is worn: sideways the rows run down.
        var hung = swatch.Hung is null ? ""
            : direction == Direction.Sideways ? " Then clip one of its sides, where its rows end, to a hanger, let it hang for a day and measure it hanging."
            : " Then clip its upper edge to a hanger, let it hang for a day and measure it hanging.";
        return Phrase.Of($"Make a swatch of {stitches} stitches and {rows} rows, and count in its middle. {washed}{hung}");
    }

    /// <summary>A swatch is hung with its rows across the pull, which says nothing of a garment that is worked sideways.</summary>
    private static string SizedBy(PatternContext context)
    {
        var swatch = context.Project.Fabric.Swatch;
        return swatch.Hung is not null && context.Plan.Direction == Direction.Up ? "after hanging" : swatch.Blocked is not null ? "washed and dried" : "as worked";
    }

    private static Table YarnTable(PatternContext context)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        Row(Phrase.Of($"Length, {new UnitNames(UnitsOf.YarnLength)}"), s => new Bare(new YarnLength(new([s.Yarn.Length]))));
        Row(Phrase.Of($"Weight, {new UnitNames(UnitsOf.YarnMass)}"), s => new Bare(new YarnMass(new([s.Yarn.Mass]))));
        Row(Phrase.Plain("Balls to buy"), s => new Count(new([s.Yarn.BallsSafe])));
        Row(Phrase.Plain("Makers of 20 whom one ball fewer serves"), s => new Count(new([(int)Math.Floor(20 * s.Yarn.ShareWithOneFewer + 1e-9)])));
        Row(Phrase.Plain("Balls that serve 99 makers of 100"), s => new Count(new([s.Yarn.Odds[^1].Balls])));
        if (context.Plan.Sizes.All(s => s.Yarn.Companion is not null))
        {
            Row(Phrase.Of($"Companion yarn, {new UnitNames(UnitsOf.YarnLength)}"), s => new Bare(new YarnLength(new([s.Yarn.Companion!.Length]))));
            Row(Phrase.Plain("Companion yarn, balls to buy"), s => new Count(new([s.Yarn.Companion!.Balls])));
        }
        return new Table(
            Phrase.Of(
                $"Yarn by size, with restarts, joins, edgings, seams, tails and swatch. The balls allow for a ball that begins anywhere in the sequence, and for makers who take more or less yarn than the plan: two in three within {(int)Math.Round(100 * BallOdds.UseSpread)} % of it."),
            context.Headed("Size"),
            rows.ToImmutable(),
            PerSizeColumns: true);

        void Row(Phrase name, Func<SizePlan, Inline> cell) =>
            rows.Add([name, .. context.Plan.Sizes.Select(s => new Phrase([cell(s)]))]);
    }

    /// <summary>Where each ball ends where joins fall as planned.</summary>
    private static IEnumerable<Block> BallMap(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        if (sizes.All(s => s.Yarn.Joins.IsEmpty))
            yield break;
        var first = Phrase.Of($"{Place(context, 0, 1)} is the first {context.UnitWord(one: true)} of {Phrase.Named(context.Key[0].Name)}");
        var besides = context.YarnFor(CompanionUse.Edgings) == context.Project.Yarn.Name && !sizes[0].Edgings.IsEmpty
            ? "The swatch, edgings and what is kept in reserve come from the balls to buy besides."
            : "The swatch and what is kept in reserve come from the balls to buy besides.";
        var shorter = sizes.Select(s => s.Yarn.Joins.Length).Distinct().Count() > 1 ? " –: the pieces of the size end before that." : "";
        yield return new Table(
            context.InRounds
                ? Phrase.Of($"Where each ball is expected to end while the pieces are worked: the piece, its round, and the place of the colours ({first}). {besides} Yours may end some rounds from there: join the next ball at the same place of the colours at which the old one ends.{shorter}")
                : Phrase.Of($"Where each ball is expected to end while the pieces are worked: the piece, its row, and the place of the colours ({first}). {besides} Yours may end some rows from there: join the next ball at the same place of the colours at which the old one ends.{shorter}"),
            context.Headed("Ball"),
            [
                .. Enumerable.Range(1, sizes.Max(s => s.Yarn.Joins.Length)).Select(ball => ImmutableArray.CreateRange(
                    [Phrase.Of($"Ball {ball}"), .. sizes.Select(s => EndOf(context, s, ball))])),
            ],
            PerSizeColumns: true);
    }

    private static Phrase EndOf(PatternContext context, SizePlan size, int ball)
    {
        if (size.Yarn.Joins.FirstOrDefault(j => j.Ball == ball) is not { } join)
            return Phrase.Plain("–");
        var (section, into) = join.ColourIn(context.Plan.Sequence);
        var row = join.Row == 0 ? Phrase.Plain("foundation") : context.InRounds ? Phrase.Of($"round {join.Row}") : Phrase.Of($"row {join.Row}");
        return Phrase.Of($"{Words(join.Run)}, {row}: {Place(context, section, ColourSequence.Nth(into))}");
    }

    /// <summary>As it is named, such as <c>sleeve 2</c> or <c>front, second side</c>.</summary>
    private static Phrase Words(PieceRun run)
    {
        var piece = PlaceNames.Of(run.Piece);
        var said = run.Copy is { } copy ? Phrase.Of($"{piece} {copy}") : Phrase.Plain(piece);
        return run.Side is { } side ? Phrase.Of($"{said}, {PartNames.Side(side)}") : said;
    }

    /// <param name="nth">Which unit of its colour, from 1.</param>
    private static Phrase Place(PatternContext context, int section, int nth) =>
        Phrase.Named(FormattableString.Invariant($"{context.Key[section].Symbol}{nth}"));

    private static Phrase SequenceInWords(PatternContext context)
    {
        var said = context.Key.Select((_, i) => Phrase.Of($"{context.Plan.Sequence.UnitsIn(i)} of {context.Colour(i)}"));
        return Phrase.Of($"In the order in which the yarn runs: {Phrase.Join(", ", said)}; then from the first again.");
    }

    private static Phrase Uses(PatternContext context, CompanionYarn companion)
    {
        var size = context.Plan.Sizes[0];
        string[] uses =
        [
            .. companion.Uses.Where(Has).Select(Use),
            .. context.HasChains ? ["chains that rows are worked on over"] : Array.Empty<string>(),
        ];
        return Phrase.List(uses.Select(Phrase.Plain));

        bool Has(CompanionUse use) => use switch
        {
            CompanionUse.Seams => size.Seams.Any(s => s.IsSewn),
            CompanionUse.Edgings => !size.Edgings.IsEmpty,
            CompanionUse.PlainPieces => size.Pieces.Any(p => !p.Pooled),
            _ => true,
        };
    }

    private static string Use(CompanionUse use) => use switch
    {
        CompanionUse.Foundation => "foundation chains",
        CompanionUse.Seams => "seams",
        CompanionUse.Edgings => "edgings",
        CompanionUse.PlainPieces => "plain pieces",
        _ => throw new ArgumentOutOfRangeException(nameof(use), use, "No words for this use."),
    };

    /// <summary>With its letter where a hook of exactly this size has one; letters vary by maker, millimetres govern.</summary>
    private static Phrase Hook(double millimetres)
    {
        var known = HookSizes.Nearest(Length.FromMillimetres(millimetres));
        return Math.Abs(known.Diameter.Millimetres - millimetres) < 1e-6 && known.Us.Length > 0
            ? Phrase.Of($"{millimetres} mm (American {Phrase.Named(known.Us)})")
            : Phrase.Of($"{millimetres} mm");
    }

    private static YarnLength OneYarn(Length length) => new(new([length]));

    private static YarnMass OneMass(Mass mass) => new(new([mass]));

    internal static string Millimetres(double value) => value.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    /// <summary>To hundredths at most.</summary>
    internal static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
