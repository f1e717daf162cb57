using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Random projects that no check objects to.</summary>
internal static class ProjectGen
{
    private static readonly Gen<string> Name =
        Gen.OneOf(
            Gen.String[Gen.Char.AlphaNumeric, 1, 20],
            Pick("écume", "a \"quoted\" name", "back\\slash", "波", "½ tide 🌊", " x "));

    private static readonly Gen<double> Decimals = Gen.OneOf(Gen.Int[0, 40].Select(n => n / 4.0), Real(0, 10));

    private static readonly Gen<bool> Flag = Gen.Bool;

    private static readonly ImmutableArray<string> Measures = ["width", "length", "neckWidth"];

    private static readonly ImmutableArray<string> Counts = ["panelStitches", "panelRows", "sleeveRows"];

    /// <summary>Any double, but none so near to zero that twenty decimals cannot say it.</summary>
    private static Gen<double> Real(double from, double to) => Gen.Double[from, to].Select(d => Math.Abs(d) < 1e-3 ? 0 : d);

    /// <summary>Metric tenths, eighths of an inch, or any nanometre.</summary>
    private static Gen<Length> LengthIn(double fromCentimetres, double toCentimetres) => Gen.OneOf(
        Gen.Int[(int)(fromCentimetres * 10), (int)(toCentimetres * 10)].Select(n => Length.FromMillimetres(n)),
        Gen.Int[(int)Math.Ceiling(fromCentimetres / 2.54 * 8), (int)(toCentimetres / 2.54 * 8)].Select(n => Length.FromInches(n / 8.0)),
        Gen.Double[fromCentimetres, toCentimetres].Select(Length.FromCentimetres));

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : struct => Gen.OneOf(Gen.Const((T?)null), gen.Select(v => (T?)v));

    private static Gen<T?> MaybeObject<T>(Gen<T> gen)
        where T : class => Gen.OneOf(Gen.Const((T?)null), gen.Select(v => (T?)v));

    private static Gen<T> Pick<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Gen<ImmutableArray<T>> Each<T>(IEnumerable<Gen<T>> gens) =>
        gens.Aggregate(Gen.Const(ImmutableArray<T>.Empty), (all, gen) => Gen.Select(all, gen, (list, item) => list.Add(item)));

    private static Gen<ImmutableArray<T>> ListOf<T>(Gen<T> gen, int fewest, int most) =>
        gen.Array[fewest, most].Select(ImmutableArray.Create);

    private static Gen<Ball> BallOf { get; } =
        from length in Gen.OneOf(
            Gen.Int[70, 800].Select(m => Length.FromMetres(m)), Gen.Int[80, 800].Select(y => Length.FromInches(y * 36)),
            LengthIn(7_000, 80_000))
        from mass in Gen.OneOf(Gen.Int[20, 300].Select(g => Mass.FromGrams(g)), Gen.Int[4, 80].Select(o => Mass.FromOunces(o / 8.0)))
        select new Ball(length, mass);

    private static Gen<Srgb> Colour { get; } =
        from r in Gen.Byte
        from g in Gen.Byte
        from b in Gen.Byte
        select new Srgb(r, g, b);

    private static Gen<Yarn> YarnOf(double yarnPerStitch) =>
        from stitches in Gen.Int[3, 20].Array[1, 12]
        from measured in Flag
        from lengths in Each(stitches.Select(n => LengthIn(n * yarnPerStitch * 0.9, n * yarnPerStitch * 1.1)))
        from spreads in Maybe(LengthIn(0, 1)).Array[stitches.Length]
        from blends in Maybe(LengthIn(0, 2)).Array[stitches.Length]
        from colours in Colour.Array[stitches.Length]
        from name in Name
        from fibre in Gen.OneOf(Gen.Const(""), Name)
        from category in Maybe(Gen.Int[0, 7])
        from ball in BallOf
        from balls in Gen.Int[measured ? 0 : 1, 3]
        from counted in Gen.Int[3, 20].Array[stitches.Length].Array[1, 4].Array[balls]
        from otherEnd in Flag
        select new Yarn(
            name, fibre, category, ball,
            [.. stitches.Select((_, i) => measured
                ? new YarnSection($"section {i}", colours[i], lengths[i], spreads[i], blends[i])
                : new YarnSection($"section {i}", colours[i]))],
            [.. counted.Select((repeats, i) => new CountedBall($"ball {i}", [.. repeats.Select(ImmutableArray.Create)]))],
            otherEnd);

    private static Gen<Gauge> GaugeOf { get; } =
        from stitches in Gen.OneOf(Gen.Int[16, 160].Select(n => n / 4.0), Gen.Double[4, 40])
        from rows in Gen.OneOf(Gen.Int[16, 160].Select(n => n / 4.0), Gen.Double[4, 40])
        from over in Gen.OneOf(Gen.Const(Length.FromCentimetres(10)), LengthIn(5, 20))
        select new Gauge(stitches, rows, over);

    private static Gen<YarnUsed> YarnUsedOf(Yarn yarn, double yarnPerStitch) =>
        from stitches in Gen.Int[20, 2_000]
        from length in LengthIn(stitches * yarnPerStitch * 0.95, stitches * yarnPerStitch * 1.05)
        from which in Gen.Int[0, 2]
        let mass = yarn.Ball.Mass * (length / yarn.Ball.Length)
        select new YarnUsed(stitches, which == 1 ? null : length, which == 0 ? null : mass);

    private static Gen<Swatch> SwatchOf(Yarn yarn, double yarnPerStitch, double hook) =>
        from worked in GaugeOf
        from blocked in MaybeObject(GaugeOf)
        from hung in MaybeObject(GaugeOf)
        from used in ListOf(YarnUsedOf(yarn, yarnPerStitch), 0, 3)
        select new Swatch(hook, worked, blocked, hung, used);

    private static Gen<FabricChoice> FabricOf(Yarn yarn, double yarnPerStitch) =>
        from stitch in Pick([.. FabricStitch.All])
        from hook in Gen.OneOf(Pick(3.5, 5, 6.5), Gen.Double[1, 10])
        from swatch in SwatchOf(yarn, yarnPerStitch, hook)
        from other in MaybeObject(SwatchOf(yarn, yarnPerStitch, hook + 0.5))
        from sectionStitches in Maybe(Gen.Int[1, 30].Array[yarn.Sections.Length].Select(ImmutableArray.Create))
        from keeping in Pick(ColourKeeping.Counted, ColourKeeping.Free)
        from chainCounts in Maybe(Flag)
            // A chain that counts takes yarn.
        from turnCost in Maybe(Gen.OneOf(Pick(0, 0.45, -0.25), Real(chainCounts == false ? -2 : -0.9, 3)))
        from hands in MaybeObject(Gen.Select(Real(0, 0.5), Gen.Double[1, 500]).Select((s, m) => new HandSteadiness(s, m)))
        select new FabricChoice(
            stitch, swatch, other, sectionStitches is null ? keeping : ColourKeeping.Counted, sectionStitches, turnCost, chainCounts)
        {
            Hands = hands,
        };

    private static Gen<CompanionYarn?> Companion { get; } = MaybeObject(
        from name in Name
        from colour in Colour
        from ball in BallOf
        from uses in Pick<ImmutableArray<CompanionUse>>(
            [CompanionUse.PlainPieces], [CompanionUse.Edgings, CompanionUse.PlainPieces],
            [CompanionUse.Foundation, CompanionUse.Seams, CompanionUse.PlainPieces])
        select new CompanionYarn(name, colour, ball, uses));

    private static Gen<(GarmentSpec Garment, CompanionYarn? Companion)> GarmentAndCompanion { get; } =
        Companion.SelectMany(companion => Garment(companion is not null).Select(garment => (garment, companion)));

    private static Gen<Ease> EaseOf { get; } = Gen.OneOf(
        LengthIn(0, 40).Select(l => new Ease(null, null, l)),
        Pick("very close", "close", "classic", "loose", "oversized").Select(c => new Ease(c, "newer", null)),
        Pick("very close", "close", "standard", "loose", "oversized").Select(c => new Ease(c, "older", null)));

    private static Gen<GarmentShape> Top(bool hasCompanion) =>
        from ease in EaseOf
        from hipEase in LengthIn(0, 20).Select(l => -l)
        from below in LengthIn(0, 60)
        from hip in LengthIn(0, 30)
        from neck in LengthIn(1, 40)
        from step in LengthIn(0, 3)
        from form in Pick([.. Enum.GetValues<NeckForm>().Where(f => hasCompanion || f != NeckForm.VInsert)])
        from depth in LengthIn(1, 20)
        from arm in LengthIn(0, 20)
        from sleeves in MaybeObject(Gen.Select(Flag, LengthIn(0, 50)).Select((p, l) => new SleeveSpec(p || !hasCompanion, l)))
        from tunic in Flag
        select (GarmentShape)new BoxyTop(ease, hipEase, below, hip, new Neck(form, neck) { Step = step, Depth = depth, BackDepth = depth, LetOff = step }, arm, sleeves) { IsTunic = tunic };

    private static Gen<GarmentShape> Rectangle { get; } =
        from a in LengthIn(1, 300)
        from b in LengthIn(1, 300)
        from which in Gen.Int[0, 2]
        select which switch { 0 => (GarmentShape)new Cowl(a, b), 1 => new Wrap(a, b), _ => new Wrap(a, b, IsBlanket: true) };

    private static Gen<GarmentSpec> Garment(bool hasCompanion) =>
        from shape in Gen.OneOf(Top(hasCompanion), Rectangle)
        from working in Pick(Working.Turned, Working.Rounds, Working.RoundsTurned, Working.Spiral)
        from direction in Pick<Direction?>(null, Direction.Up, Direction.Sideways)
        from motif in Pick([.. Enum.GetValues<MotifKind>().Except([MotifKind.Scattered])])
        from grading in Gen.Select(Maybe(Gen.Int[1, 40]), Flag, Flag, Flag, Flag, Decimals)
            .Select((most, alternating, half, bands, unequal, weight) =>
                new GradingChoice(most, alternating, half, bands && hasCompanion, unequal, weight, weight))
        from seams in Gen.Select(Gen.Int[0, 2].Select(e => e == 2 ? (SeamExtension?)null : (SeamExtension)e), Gen.Int[0, 3], Gen.Int[0, 3])
            .Select((extension, s, r) => new SeamChoice(extension, s, r))
        let places = shape switch
        {
            BoxyTop { Neck.Form: NeckForm.Buttoned } => new[] { EdgingPlace.Hem },
            BoxyTop { Sleeves: null } => new[] { EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes },
            BoxyTop => [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Cuffs],
            Cowl => [EdgingPlace.Brims],
            _ => [EdgingPlace.Border],
        }
        from edged in Gen.Int[0, places.Length]
        from rounds in Maybe(Gen.Int[1, 40]).Array[edged]
        from starts in Gen.Int[0, 4_095].Array[0, 3]
        let pieces = shape switch
        {
            BoxyTop => "front back sleeve".Split(' '),
            Cowl => ["cowl"],
            Wrap { IsBlanket: true } => ["blanket"],
            _ => ["wrap"],
        }
        let used = shape is Cowl ? working : Working.Turned
        select new GarmentSpec(
            shape, used, used != Working.Turned && direction == Direction.Sideways ? null : direction, motif, grading,
            shape is Wrap ? new SeamChoice(null, 1, 1) : seams,
            [.. rounds.Select((r, i) => new EdgingChoice(places[i], "picot", r))])
        {
            Starts = pieces.Zip(starts).ToImmutableSortedDictionary(p => p.First, p => p.Second),
        };

    private static Gen<FixedNumber> Fixed(string size, int index, bool needsReason) =>
        from measure in Flag
        from length in LengthIn(1, 300)
        from count in Gen.Int[1, 1_000]
        from reason in needsReason ? Name : Gen.OneOf(Gen.Const(""), Name)
        select measure
            ? new FixedNumber(size, Measures[index], length, null, reason)
            : new FixedNumber(size, Counts[index], null, count, reason);

    private static readonly string[] Women = ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"];

    private static readonly string[] Letters = ["XXS", "XS", "S", "M", "L", "XL", "XXL", "3XL", "4XL"];

    private static Gen<SizeSelection> Sizes(bool needsChart) =>
        from chart in Pick<string?>("women", "en13402-3-women", null)
        from count in Gen.Int[needsChart ? 1 : 0, 9]
        let names = chart switch
        {
            "women" => Women[..count],
            null => [.. Enumerable.Range(1, count).Select(i => $"size {i}")],
            _ => Letters[..count],
        }
        from measures in Gen.Select(LengthIn(60, 160), LengthIn(20, 50)).Array[count]
        from based in Flag
        from locked in Each(Enumerable.Range(0, based && count > 0 ? 2 : 0).Select(i => Fixed(names[^1], i, false)))
        from overrides in Each(Enumerable.Range(0, Math.Min(count, 3)).Select(i => Fixed(names[0], i, true)))
        select new SizeSelection(
            chart, chart is null ? [] : [.. names],
            chart is not null ? [] : [.. names.Select((n, i) => new OwnSize(n, ImmutableSortedDictionary<string, Length>.Empty
                .WithComparers(StringComparer.Ordinal).Add("bust", measures[i].Item1).Add("upperArm", measures[i].Item2)))],
            based && count > 0 ? names[^1] : null, locked, overrides);

    private static Gen<Edition> EditionOf(SizeSelection sizes) =>
        from terms in Pick(Terms.Us, Terms.Uk)
        from units in Pick(Enum.GetValues<Units>())
        from hand in Pick(Hand.Right, Hand.Left)
        from one in Flag
        from number in Gen.Int[0, Edition.MostNumber]
        from day in Gen.Int[-1, DateOnly.MaxValue.DayNumber]
        select new Edition(terms, units, hand, one && !sizes.Sizes.IsEmpty ? sizes.Sizes[0] : null)
        {
            Number = number == 0 ? null : number,
            Date = day < 0 ? null : DateOnly.FromDayNumber(day),
        };

    private static Gen<ImmutableSortedDictionary<string, string>> Words { get; } =
        from places in Gen.Int[0, WordPlaces.All.Length]
        from texts in Gen.OneOf(Name, Gen.Const("First line.\n\nSecond line.")).Array[places]
        select texts.Select((t, i) => KeyValuePair.Create(WordPlaces.All[i], t)).ToImmutableSortedDictionary(StringComparer.Ordinal);

    private static Gen<Photo> PhotoOfAny { get; } =
        from place in Pick(WordPlaces.All.ToArray())
        from alternative in Name
        from width in Gen.Int[1, JpegPicture.MostPixels]
        select new Photo(place, alternative, TestJpeg.Read(TestJpeg.Of(width, 40)));

    public static Gen<Project> Project { get; } =
        from yarnPerStitch in Gen.Double[2, 20]
        from yarn in YarnOf(yarnPerStitch)
        from fabric in FabricOf(yarn, yarnPerStitch)
        from parts in GarmentAndCompanion
        from sizes in Sizes(parts.Garment.Shape is BoxyTop)
        from edition in EditionOf(sizes)
        from title in Name
        from designer in Gen.OneOf(Gen.Const(""), Name)
        from words in Words
        from photos in PhotoOfAny.Array[0, 2]
        select new Project(title, designer, yarn, fabric, parts.Garment, sizes, edition)
        {
            Companion = parts.Companion,
            Words = words,
            Photos = [.. photos],
        };
}
