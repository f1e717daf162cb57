using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Projects;

/// <summary>
/// Designs whose numbers fit each other as a designer's do, so that most of them have a plan: every garment, stitch, way of working, size
/// chart and edging, ranges up to their edges, and names that a text or a page could mistake for its own marks.
/// </summary>
internal sealed class DesignGen
{
    /// <summary>The same seed gives the same design.</summary>
    public static Project Of(int seed) => new DesignGen(seed).Project();

    private static readonly string[] Names =
    [
        "Tide", "écume", "½ tide 🌊", "波", "שקיעה אדומה", "غروب", "a \"quoted\" name", "O'Neil's", "<b>bold</b>", "R&D", "&amp;", "&lt;i&gt;", "<!-- x -->",
        "rust (dark)", "sand (S)", "rust (dark, no. 3)", "[grey]", "red, blue", "No. 12", "3 of 4", "12", "x: y", "- dash", "## head", "-----", "=====",
        "a  b   c", " x ", "Sizes: 3", "Ch 3. Turn", "Row 1", "Mark: row 3 here", "100 g", "500 m of sock", "1,5", "a; b", "back\\slash", "A / B", "tab | bar", "50% wool",
        "{0} {name}", "$1", "4 (5, 6)", "X (Y)", "e\u0301clair", "a\u00a0b", "no\u2003space", "👩‍👩‍👧", "٣ ألوان", "12:30", "* rep from *", "ends with 3 of it (X)",
        "Easy: slip knot", "Balls to buy: 9.", "sock, the companion yarn for edgings", "5 of hearts (H), 3 of clubs (C)", "one a ball",
        "a name as long as it may be, so that a line of the text must be broken in it ok",
    ];

    private static readonly string[] SizeNames =
    [
        "S", "M", "L", "XL", "1", "12", "<S>", "A&B", "2–4 years", "size 3", "גדול", "波", "🌊", "36\"", "it's", "S/M", "1X-2X", "Petite M", "½", "-", "--", "---", "#", "[2]", "*", "4.5", "8 cm",
    ];

    private readonly Random _random;

    private DesignGen(int seed) => _random = new Random(seed);

    private bool Chance(double share) => _random.NextDouble() < share;

    private T Pick<T>(params ReadOnlySpan<T> values) => values[_random.Next(values.Length)];

    private double Real(double from, double to) => from + _random.NextDouble() * (to - from);

    private int Whole(int from, int to) => _random.Next(from, to + 1);

    private string Name() => Chance(0.5) ? Pick<string>("Tide", "Shore", "Dune", "Kelp", "Gull") : Pick<string>(Names);

    /// <summary>In centimetres, to the millimetre; in eighths of an inch; or anything between.</summary>
    private Length Cm(double from, double to) => Whole(0, 3) switch
    {
        0 => Length.FromCentimetres(Math.Round(Real(from, to), 1)),
        1 => Length.FromInches(Math.Round(Real(from, to) / 2.54 * 8) / 8),
        2 => Length.FromCentimetres(Math.Round(Real(from, to))),
        _ => Length.FromCentimetres(Math.Round(Real(from, to), 6)),
    };

    private Project Project()
    {
        var stitch = Pick<FabricStitch>([.. FabricStitch.All]);
        var counts = Counts();
        // Most hands use about four times a stitch's width of yarn in single crochet.
        var perTen = Math.Round(Real(7, 26) * 4) / 4;
        var yarnPerStitch = 10 / perTen * Real(3.4, 5.5) * stitch.YarnInSingleCrochet;
        var yarn = Yarn(counts, yarnPerStitch * stitch.StitchesPerUnit);
        var companion = Chance(0.5) ? Companion() : null;
        var garment = Garment(companion is not null && companion.Uses.Contains(CompanionUse.PlainPieces), counts.Sum());
        var sizes = Sizes(garment.Shape is BoxyTop);
        var known = yarn.Sections[0].Length is not null || !yarn.Counted.IsEmpty;
        return new Project(
            Name(), Chance(0.3) ? "" : Name(), yarn, Fabric(stitch, counts, perTen, yarnPerStitch, garment.Working, known), garment, sizes,
            new Edition(Pick(Terms.Us, Terms.Uk), Pick<Units>(Enum.GetValues<Units>()), Pick(Hand.Left, Hand.Right)))
        {
            Companion = companion,
            Words = Words(),
            Photos = [],
        };
    }

    private int[] Counts()
    {
        var counts = new int[Chance(0.05) ? 1 : Whole(2, Chance(0.1) ? 14 : 6)];
        for (var i = 0; i < counts.Length; i++)
            counts[i] = Whole(1, Chance(0.1) ? 30 : 9);
        return counts;
    }

    private Yarn Yarn(int[] counts, double yarnPerUnit)
    {
        var measured = Chance(0.6);
        var names = Enumerable.Range(0, counts.Length).Select(i => Name()).ToArray();
        var colours = new Dictionary<string, Srgb>();
        var sections = counts.Select((n, i) =>
        {
            // Equal names are equal colours; some colours come again under another name.
            if (!colours.TryGetValue(names[i], out var colour))
                colours.Add(names[i], colour = Chance(0.1) && i > 0 ? colours[names[0]] : new Srgb((byte)Whole(0, 255), (byte)Whole(0, 255), (byte)Whole(0, 255)));
            var length = Length.FromCentimetres(Math.Round(Math.Max(0.2, n * yarnPerUnit * Real(0.96, 1.04)), 1));
            return measured
                ? new YarnSection(names[i], colour, length, Chance(0.3) ? length * 0.05 : null, Chance(0.3) ? length * 0.1 : null)
                : new YarnSection(names[i], colour);
        }).ToImmutableArray();
        var balls = Chance(measured ? 0.4 : 0.9) ? Whole(1, 2) : 0;
        return new Yarn(
            Name(), Chance(0.3) ? "" : Name(), Chance(0.5) ? Whole(0, 7) : null, Ball(), sections,
            [.. Enumerable.Range(0, balls).Select(b => new CountedBall($"ball {b}", [.. Enumerable.Range(0, Whole(1, 5)).Select(_ => counts.Select(n => Math.Max(1, n + Whole(-1, 1) * Whole(0, 1))).ToImmutableArray())]))],
            Chance(0.3));
    }

    private Ball Ball() => new(
        Chance(0.3) ? Length.FromInches(36 * Whole(120, 900)) : Length.FromMetres(Math.Round(Real(110, 800), Whole(0, 2))),
        Chance(0.3) ? Mass.FromOunces(Whole(8, 40) / 4.0) : Mass.FromGrams(Math.Round(Real(50, 250), Whole(0, 1))));

    private CompanionYarn Companion() => new(
        Name(), new Srgb((byte)Whole(0, 255), (byte)Whole(0, 255), (byte)Whole(0, 255)), Ball(),
        [.. Enum.GetValues<CompanionUse>().Where(_ => Chance(0.6)).DefaultIfEmpty(CompanionUse.PlainPieces)]);

    private FabricChoice Fabric(FabricStitch stitch, int[] counts, double perTen, double yarnPerStitch, Working working, bool known)
    {
        var rows = Math.Round(perTen / stitch.HeightOverWidth * Real(0.9, 1.1) * 4) / 4;
        Gauge Near(double share) => new(perTen * share, rows * share, Chance(0.8) ? Length.FromCentimetres(10) : Length.FromInches(4));
        var free = known && Chance(0.35);
        var used = Whole(20, 400);
        var length = Length.FromCentimetres(Math.Round(used * yarnPerStitch, 1));
        var swatch = new Swatch(
            Pick(3.5, 4, 5, 5.5, 6.5, 9, 0.5, 40), Near(1), Chance(0.5) ? Near(Math.Round(Real(0.95, 1.05), 2)) : null,
            Chance(0.2) ? Near(Math.Round(Real(0.95, 1.05), 2)) : null, Chance(0.85) || !free ? [new YarnUsed(used, length, null)] : []);
        double? turn = Whole(0, 5) switch { 0 => 0.45, 1 => -0.25, 2 => Math.Round(Real(-0.9, 2), 2), 3 => 0, _ => null };
        return new FabricChoice(
            stitch, swatch, null, free ? ColourKeeping.Free : ColourKeeping.Counted, !free && (!known || Chance(0.7)) ? [.. counts] : null,
            working == Working.Spiral && turn is not null ? 0 : turn, Chance(0.3) ? Chance(0.5) : null)
        {
            Hands = Chance(0.2) ? new HandSteadiness(Math.Round(Real(0, 0.1), 3), Whole(1, 200)) : null,
        };
    }

    private GarmentSpec Garment(bool plain, int sequence)
    {
        var which = Whole(0, 5);
        GarmentShape shape = which switch
        {
            0 or 1 => new BoxyTop(
                Chance(0.5) ? new Ease(null, null, Cm(-5, 45)) : Chance(0.5) ? new Ease(Pick("close", "classic", "loose", "oversized"), "newer", null) : new Ease("standard", "older", null),
                Cm(-5, 25), Cm(-10, 50), Cm(0, 30), new Neck(NeckForm.Slit, Cm(14, 36)) { Step = Cm(0, 2) }, Cm(-4, 20),
                Chance(0.5) ? new SleeveSpec(!plain || Chance(0.5), Cm(0, 40)) : null)
            {
                IsTunic = Chance(0.5),
            },
            2 => new Cowl(Cm(24, 180), Cm(3, 70)),
            3 => new Cowl(Cm(40, 120), Cm(12, 40)),
            4 => new Wrap(Cm(10, 90), Cm(30, 220)),
            _ => new Wrap(Cm(40, 180), Cm(40, 240), IsBlanket: true),
        };
        var working = shape is Cowl ? Pick(Working.Turned, Working.Rounds, Working.RoundsTurned, Working.Spiral) : Working.Turned;
        var (places, pieces) = shape switch
        {
            BoxyTop { Sleeves: null } => (new[] { EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes }, new[] { "front", "back" }),
            BoxyTop => ([EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Cuffs], ["front", "back", "sleeve"]),
            Cowl => ([EdgingPlace.Brims], ["cowl"]),
            Wrap { IsBlanket: true } => ([EdgingPlace.Border], ["blanket"]),
            _ => ([EdgingPlace.Border], ["wrap"]),
        };
        var way = working is Working.Rounds or Working.Spiral
            ? Pick(MotifKind.EvenSlant, MotifKind.Columns, MotifKind.Steep, MotifKind.Shallow, MotifKind.Bands)
            : Pick(MotifKind.Argyle, MotifKind.Argyle, MotifKind.Columns, MotifKind.Steep, MotifKind.Shallow, MotifKind.Bands);
        return new GarmentSpec(
            shape, working, working == Working.Turned ? Pick<Direction?>(null, Direction.Up, Direction.Sideways) : null, way,
            new GradingChoice(
                Chance(0.3) ? Whole(1, 6) : null, Chance(0.25), Chance(0.25), plain && Chance(0.4), Chance(0.2), Pick(0, 4, Math.Round(Real(0, 1_000), 2)),
                Pick(0, 4, Math.Round(Real(0, 1_000), 2))),
            shape is Wrap ? new SeamChoice(null, 1, 1) : new SeamChoice(Pick<SeamExtension?>(SeamExtension.Mirrored, SeamExtension.Continued, null), Whole(0, 2), Whole(0, 2)),
            [.. places.Where(_ => Chance(0.6)).Select(p => new EdgingChoice(p, Pick<Edging>([.. EdgingLibrary.All.Where(e => !e.InRows && e.Places.Contains(p))]).Id, Chance(0.5) ? null : Whole(1, Chance(0.1) ? 40 : 5)))])
        {
            Starts = pieces.Where(_ => Chance(0.15)).ToImmutableSortedDictionary(p => p, _ => Whole(0, Math.Max(0, sequence - 1)), StringComparer.Ordinal),
        };
    }

    private SizeSelection Sizes(bool needed)
    {
        if (!needed && Chance(0.7))
            return new SizeSelection(null, [], [], null, [], []);
        if (Chance(0.5))
        {
            var chart = Pick<SizeChart>([.. SizeCharts.All.Where(c => c.Id is "women" or "men" or "youth" or "child" or "baby")]);
            var from = Whole(0, chart.Sizes.Length - 1);
            var some = Chance(0.2) ? [] : chart.Sizes[from..Math.Min(chart.Sizes.Length, from + Whole(1, 4))].Select(s => s.Name).ToImmutableArray();
            return new SizeSelection(chart.Id, some, [], null, [], []);
        }
        var names = Chance(0.5) ? ["S", "M", "L"] : Enumerable.Range(0, Whole(1, 4)).Select(_ => Pick<string>(SizeNames)).Distinct().ToArray();
        var bust = Real(60, 110);
        var own = names.Select((n, i) => new OwnSize(n, ImmutableSortedDictionary<string, Length>.Empty.WithComparers(StringComparer.Ordinal)
            .Add(bust > 85 ? "bust" : "chest", Length.FromCentimetres(Math.Round(bust + 6 * i, 1)))
            .Add("hip", Length.FromCentimetres(Math.Round(bust + 4 + 6 * i, 1))).Add("upperArm", Length.FromCentimetres(Math.Round(bust * 0.32 + i, 1)))
            .Add("armholeDepth", Length.FromCentimetres(Math.Round(bust * 0.2 + 0.8 * i, 1))).Add("backWaistLength", Length.FromCentimetres(Math.Round(bust * 0.45, 1)))
            .Add("centreBackNeckToCuff", Length.FromCentimetres(Math.Round(bust * 0.8 + i, 1)))
            .Add("neckWidth", Length.FromCentimetres(14)).Add("headCircumference", Length.FromCentimetres(56)))).ToImmutableArray();
        return new SizeSelection(null, [], own, Chance(0.3) ? names[^1] : null, [], []);
    }

    private ImmutableSortedDictionary<string, string> Words() => WordPlaces.All.Where(_ => Chance(0.15)).ToImmutableSortedDictionary(
        p => p, _ => string.Join(Chance(0.5) ? "\n" : " ", Enumerable.Range(0, Whole(1, 4)).Select(_ => Pick<string>(Names))), StringComparer.Ordinal);
}
