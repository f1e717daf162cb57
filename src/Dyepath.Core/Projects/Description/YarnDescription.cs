using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects.Description;

/// <summary>The yarn and its solid companion in the document.</summary>
internal static class YarnDescription
{
    private const int LongestName = 80;

    public static TextShape Name { get; } = new(LongestName);

    public static ColourShape Colour { get; } = new();

    private static readonly ObjectShape<Ball> BallShape = new("ball", "What one ball, skein or cake holds, as its label says.", o =>
    {
        var length = o.Required("length", "Yarn in one ball.", Measured.BallLength, b => b.Length);
        var mass = o.Required("mass", "Weight of one ball.", Measured.Weight, b => b.Mass);
        o.Check((v, faults) =>
        {
            if (length.TryFrom(v, out var l) && mass.TryFrom(v, out var m))
                YarnChecks.Grist(v.Place, l, m, faults);
        });
        return v => new Ball(length.From(v), mass.From(v));
    });

    private static readonly ObjectShape<YarnSection> SectionShape = new(
        "section", "One colour of the sequence as it lies along the yarn.", o =>
    {
        var name = o.Required("name", "What the pattern calls the colour.", Name, s => s.Name);
        var colour = o.Required("colour", "The colour on screen and in print, sRGB.", Colour, s => s.Colour);
        var length = o.Optional(
            "length", "Length along the relaxed yarn, the mean of several repeats.", Measured.Section, s => s.Length,
            "only the counted stitches are known");
        var spread = o.Optional(
            "spread", "Standard deviation of that length from repeat to repeat.", Measured.AlongSection, s => s.Spread, "not measured");
        var blend = o.Optional(
            "blend", "Length over which the colour runs into the next one, half of it on each side of the boundary.",
            Measured.AlongSection, s => s.Blend, "a sharp change");
        o.Check((v, faults) =>
        {
            if (length.TryFrom(v, out var l) && spread.TryFrom(v, out var s))
                YarnChecks.Within(v.Place, "spread", s, l, faults);
            if (length.TryFrom(v, out l) && blend.TryFrom(v, out var b))
                YarnChecks.Within(v.Place, "blend", b, l, faults);
        });
        return v => new YarnSection(name.From(v), colour.From(v), length.From(v), spread.From(v), blend.From(v));
    });

    private static readonly ObjectShape<CountedBall> CountedShape = new(
        "countedBall", "Stitches counted in each colour, repeat after repeat, in work made from one ball.", o =>
    {
        var name = o.Required("name", "Which ball.", Name, b => b.Name);
        var repeats = o.Required(
            "repeats",
            "One list a repeat: stitches counted in each section, in the order of the sections "
            + "(in linen stitch: pairs of single crochet and chain). The last repeat may be begun and not finished.",
            new ListShape<ImmutableArray<int>>(
                "repeats", new ListShape<int>("stitch counts", new WholeShape(CountedBall.Counts), 1, ColourRing.MostSections), 1, 200),
            b => b.Repeats);
        return v => new CountedBall(name.From(v), repeats.From(v));
    });

    public static ObjectShape<Yarn> Yarn { get; } = new("yarn", "The variegated yarn, whose colours repeat in one sequence.", o =>
    {
        var name = o.Required("name", "What the pattern calls the yarn.", Name, y => y.Name);
        var fibre = o.OptionalObject(
            "fibre", "What it is made of, as its label says.", Name, y => y.Fibre.Length == 0 ? null : y.Fibre, "not said");
        var category = o.Optional(
            "category", "Yarn weight category, 0 (lace) to 7 (jumbo).", new WholeShape(0, 7), y => y.Category, "not said");
        var ball = o.Required("ball", "What one ball holds.", BallShape, y => y.Ball);
        var sections = o.Required(
            "sections", "The colours in the order in which the yarn runs, one whole sequence.",
            new ListShape<YarnSection>("sections", SectionShape, 1, ColourRing.MostSections), y => y.Sections);
        var counted = o.Optional(
            "counted", "Stitches counted over several repeats, ball by ball; they decide how many stitches the sequence takes.",
            new ListShape<CountedBall>("balls", CountedShape, 0, 40), y => y.Counted, [], "nothing counted yet");
        var fromOtherEnd = o.Optional(
            "fromOtherEnd", "The balls are pulled from their other end, so that the sequence runs backwards.", new FlagShape(),
            y => y.FromOtherEnd, false);
        o.Check((v, faults) =>
        {
            if (!sections.TryFrom(v, out var s))
                return;
            YarnChecks.Sections(v.Place, s, faults);
            if (ball.TryFrom(v, out var b))
                YarnChecks.BallHoldsSequence(v.Place, s, b, faults);
            if (counted.TryFrom(v, out var c))
                YarnChecks.Counted(v.Place, s, c, faults);
        });
        return v => new Yarn(
            name.From(v), fibre.From(v) ?? "", category.From(v), ball.From(v), sections.From(v), counted.From(v), fromOtherEnd.From(v));
    });

    public static ObjectShape<CompanionYarn> Companion { get; } = new("companion", "A solid yarn beside the variegated one.", o =>
    {
        var use = new ChoiceShape<CompanionUse>(
            ("foundation", CompanionUse.Foundation), ("seams", CompanionUse.Seams), ("edgings", CompanionUse.Edgings),
            ("plainPieces", CompanionUse.PlainPieces));
        var name = o.Required("name", "What the pattern calls it.", Name, y => y.Name);
        var colour = o.Required("colour", "The colour on screen and in print, sRGB.", Colour, y => y.Colour);
        var ball = o.Required("ball", "What one ball holds.", BallShape, y => y.Ball);
        var uses = o.Required(
            "uses", "What it is used for.", new ListShape<CompanionUse>("uses", use, 1, use.Names.Length), y => y.Uses);
        o.Check((v, faults) =>
        {
            if (uses.TryFrom(v, out var u))
                Distinctness.Check(v.Place.Member("uses"), [.. u.Select(x => x.ToString())], faults);
        });
        return v => new CompanionYarn(name.From(v), colour.From(v), ball.From(v), uses.From(v));
    });
}
