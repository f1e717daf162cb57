using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects.Shapes;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects.Description;

/// <summary>The garment in the document: one object whose lengths depend on its shape.</summary>
internal static class GarmentDescription
{
    private static readonly ChoiceShape<Direction?> DirectionChoice = new(
        ("up", Direction.Up), ("sideways", Direction.Sideways), ("best", null));

    private const string MotifWhat = "What the colours shall draw.";

    private static readonly ChoiceShape<MotifKind> MotifChoice = new(
    [
        .. new[] { MotifKind.Argyle, MotifKind.Columns, MotifKind.Steep, MotifKind.EvenSlant, MotifKind.Shallow, MotifKind.Bands }
            .Select(motif => (MotifNames.Of(motif), motif)),
    ]);

    private static readonly ChoiceShape<Working> CowlWorking = new(
        [.. Enum.GetValues<Working>().Select(working => (MotifNames.Of(working), working))]);

    public static GradingChoice UsualGrading { get; } = new(null, false, false, false, false, 4, 4);

    public static SeamChoice UsualSeams { get; } = new(SeamExtension.Continued, 1, 1);

    private static readonly Shape<Ease> EaseShape = EaseDescription.Ease;

    private static readonly ObjectShape<GradingChoice> GradingShape = new(
        "grading", "How far the fit may be traded for few stitch counts, and which means are allowed.", o =>
    {
        var most = o.Optional(
            "mostCounts", "At most this many different stitch counts over all sizes.", new WholeShape(1, SizeChart.MostSizes),
            g => g.MostCounts,
            "as many as help noticeably");
        var alternating = o.Optional(
            "alternatingRows", "Rows of N and N + 1 stitches in turn.", new FlagShape(), g => g.AlternatingRows, false);
        var half = o.Optional(
            "halfStitchTurn", "A turn that takes up half a stitch of yarn, worked on purpose.", new FlagShape(), g => g.HalfStitchTurn,
            false);
        var bands = o.Optional("sideBands", "Plain bands of companion yarn at the sides.", new FlagShape(), g => g.SideBands, false);
        var unequal = o.Optional(
            "unequalPanels", "Front and back of different stitch counts.", new FlagShape(), g => g.UnequalPanels, false);
        var forgiveness = o.Optional(
            "forgiveness",
            "How much fit to give up for a count that forgives uneven tension: added to the squared error of a count that forgives nothing.",
            Measured.Forgiveness, g => g.ForgivenessWeight, UsualGrading.ForgivenessWeight);
        var clarity = o.Optional(
            "clarity",
            "How much fit to give up for a count whose motif shows clearly: added to the squared error of a count that shows nothing.",
            Measured.Forgiveness, g => g.ClarityWeight, UsualGrading.ClarityWeight);
        return v => new GradingChoice(
            most.From(v), alternating.From(v), half.From(v), bands.From(v), unequal.From(v), forgiveness.From(v), clarity.From(v));
    });

    private static readonly ObjectShape<SeamChoice> SeamsShape = new("seams", "What happens to the motif at a seam.", o =>
    {
        var extension = o.Optional(
            "extension",
            "How the motif goes on. continued: as if the fabric had never been cut; mirrored: as in a mirror that stands on the seam.",
            new ChoiceShape<SeamExtension>(("continued", SeamExtension.Continued), ("mirrored", SeamExtension.Mirrored)), s => s.Extension,
            UsualSeams.Extension);
        var stitches = o.Optional(
            "hiddenStitches", "Stitches that a seam along row ends takes from each edge.", new WholeShape(SeamChoice.Hidden), s => s.HiddenStitches,
            UsualSeams.HiddenStitches);
        var rows = o.Optional(
            "hiddenRows", "Rows that a seam along stitches takes from each edge.", new WholeShape(SeamChoice.Hidden), s => s.HiddenRows,
            UsualSeams.HiddenRows);
        return v => new SeamChoice(extension.From(v), stitches.From(v), rows.From(v));
    });

    private static readonly ObjectShape<SleeveSpec> SleevesShape = new("sleeves", "Rectangular sleeves along the armholes.", o =>
    {
        var pooled = o.Optional(
            "yarn", "Worked in the variegated yarn or in the companion yarn.",
            new ChoiceShape<bool>(("variegated", true), ("companion", false)),
            s => s.Pooled, true);
        var shorter = o.Optional("shorterBy", "Taken off a full-length sleeve.", Measured.Step, s => s.ShorterBy, Length.Zero);
        return v => new SleeveSpec(pooled.From(v), shorter.From(v));
    });

    private static readonly ChoiceShape<EdgingPlace> PlaceChoice = new(
        ("hem", EdgingPlace.Hem), ("neck", EdgingPlace.Neck), ("armholes", EdgingPlace.Armholes), ("cuffs", EdgingPlace.Cuffs),
        ("brims", EdgingPlace.Brims), ("border", EdgingPlace.Border));

    private static readonly ObjectShape<EdgingChoice> EdgingShape = new("edging", "An edging and where it goes.", o =>
    {
        var where = o.Required(
            "where", "Which edge: hem, neck, armholes or cuffs of a pullover or tunic, brims of a cowl, border of a wrap or blanket.",
            PlaceChoice,
            e => e.Where);
        var edging = o.Required("edging", "Which edging, by its id.", YarnDescription.Name, e => e.Edging);
        var rounds = o.Optional("rounds", "How many rounds.", new WholeShape(Edging.RoundCounts), e => e.Rounds, "as many as the edging has");
        o.Check((v, faults) =>
        {
            if (edging.TryFrom(v, out var id))
                GarmentChecks.EdgingIsKnown(v.Place.Member("edging"), id, faults);
        });
        return v => new EdgingChoice(where.From(v), edging.From(v), rounds.From(v));
    });

    public static Shape<GarmentSpec> Garment { get; } = new VariantShape<GarmentSpec>(
        "shape",
        NameOf,
        new VariantCase<GarmentSpec>(
            ["pullover"], Boxy("pullover", "A boxy pullover: two panels, a slit neck, perhaps sleeves.", false, 12)),
        new VariantCase<GarmentSpec>(["tunic"], Boxy("tunic", "A boxy tunic: a pullover that reaches over the hip.", true, 30)),
        new VariantCase<GarmentSpec>(["cowl"], CowlShape()),
        new VariantCase<GarmentSpec>(["wrap"], WrapShape("wrap", "A wrap or scarf: one rectangle.", false)),
        new VariantCase<GarmentSpec>(["blanket"], WrapShape("blanket", "A blanket: one rectangle.", true)));

    private static string NameOf(GarmentSpec garment) => garment.Shape switch
    {
        BoxyTop top => top.IsTunic ? "tunic" : "pullover",
        Cowl => "cowl",
        Wrap wrap => wrap.IsBlanket ? "blanket" : "wrap",
        _ => throw new ArgumentOutOfRangeException(nameof(garment), garment.Shape, "The document has no such shape."),
    };

    private static ObjectShape<GarmentSpec> Boxy(
        string name, string description, bool isTunic, double belowWaistCentimetres) => new(name, description, o =>
    {
        ShapeName(o, name);
        var ease = o.Optional(
            "ease", "Added to the bust: a length, or a published category with its revision.", EaseShape, g => Top(g).BustEase,
            new Ease("loose", "newer", null));
        var hipEase = o.Optional(
            "hipEase", "Added to the hip, where the garment reaches it.", Measured.Ease, g => Top(g).HipEase, Length.FromCentimetres(5));
        var below = o.Optional(
            "belowWaist", "How far it hangs below the waist.", Measured.Ease, g => Top(g).BelowWaist,
            Length.FromCentimetres(belowWaistCentimetres));
        var hip = o.Optional(
            "hipBelowWaist", "A garment that hangs this far below the waist, or farther, reaches the hip.", Measured.Step,
            g => Top(g).HipBelowWaist,
            Length.FromCentimetres(20));
        var neck = o.Optional(
            "neckWidth", "Slit neck of the base size, after its edging.", Measured.Body, g => Top(g).NeckWidth, Length.FromCentimetres(26));
        var step = o.Optional(
            "neckStep", "Added to the neck width per size above the base, taken off below it.", Measured.Step, g => Top(g).NeckStep,
            Length.FromCentimetres(0.5));
        var arm = o.Optional(
            "upperArmEase", "Armholes are at least half of upper arm plus this.", Measured.Ease, g => Top(g).UpperArmEase,
            Length.FromCentimetres(8));
        var sleeves = o.OptionalObject(
            "sleeves", "Rectangular sleeves.", SleevesShape, g => Top(g).Sleeves, "none, the armholes are edged");
        var direction = DirectionField(o);
        var motif = MotifField(o);
        var grading = GradingField(o);
        var seams = SeamsField(o);
        var starts = StartsField(o, "front", "back", "sleeve");
        var edgings = EdgingsField(o, EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes, EdgingPlace.Cuffs);
        o.Check((v, faults) =>
        {
            if (sleeves.TryFrom(v, out var s) && edgings.TryFrom(v, out var e))
                GarmentChecks.SleevesAndEdgings(v.Place, s, e, faults);
        });
        return v => new GarmentSpec(
            new BoxyTop(
                ease.From(v), hipEase.From(v), below.From(v), hip.From(v), neck.From(v), step.From(v), arm.From(v),
                sleeves.From(v), isTunic),
            Working.Turned, direction.From(v), motif.From(v), grading.From(v), seams.From(v), edgings.From(v))
        {
            Starts = starts.From(v),
        };
    });

    private static ObjectShape<GarmentSpec> CowlShape() => new("cowl", "A cowl: a tube.", o =>
    {
        ShapeName(o, "cowl");
        var round = o.Required("circumference", "Finished circumference.", Measured.Body, g => ((Cowl)g.Shape).Circumference);
        var height = o.Required("height", "Finished height.", Measured.Body, g => ((Cowl)g.Shape).Height);
        var working = o.Optional(
            "working",
            "How rows follow each other. turned: rows, sewn into a tube; rounds: joined rounds; "
            + "rounds-turned: joined rounds, turned at each join; spiral: one round without joins.",
            CowlWorking, g => g.Working, Working.Rounds);
        var direction = DirectionField(o);
        var motif = o.Optional(
            "motif",
            $"{MotifWhat} Left out, it is argyle where rows or rounds are turned, and even in rounds and a spiral, whose lines all run one way.",
            MotifChoice, g => g.Motif == UsualMotif(g.Working) ? null : g.Motif, "\"argyle\" or \"even\", by the way of working");
        var grading = GradingField(o);
        var seams = SeamsField(o);
        var starts = StartsField(o, "cowl");
        var edgings = EdgingsField(o, EdgingPlace.Brims);
        o.Check((v, faults) =>
        {
            if (working.TryFrom(v, out var w) && direction.TryFrom(v, out var d))
                GarmentChecks.RoundsRunUp(v.Place, w, d, faults);
        });
        return v => new GarmentSpec(
            new Cowl(round.From(v), height.From(v)), working.From(v), direction.From(v), motif.From(v) ?? UsualMotif(working.From(v)),
            grading.From(v), seams.From(v), edgings.From(v))
        {
            Starts = starts.From(v),
        };
    });

    private static ObjectShape<GarmentSpec> WrapShape(string name, string description, bool isBlanket) => new(name, description, o =>
    {
        ShapeName(o, name);
        var width = o.Required("width", "Finished width.", Measured.Body, g => ((Wrap)g.Shape).Width);
        var length = o.Required("length", "Finished length.", Measured.Body, g => ((Wrap)g.Shape).Length);
        var direction = DirectionField(o);
        var motif = MotifField(o);
        var grading = GradingField(o);
        var starts = StartsField(o, name);
        var edgings = EdgingsField(o, EdgingPlace.Border);
        return v => new GarmentSpec(
            new Wrap(width.From(v), length.From(v), isBlanket), Working.Turned, direction.From(v), motif.From(v), grading.From(v),
            UsualSeams,
            edgings.From(v))
        {
            Starts = starts.From(v),
        };
    });

    private static BoxyTop Top(GarmentSpec garment) => (BoxyTop)garment.Shape;

    private static void ShapeName(ObjectFields<GarmentSpec> o, string name) =>
        o.Required("shape", "What is made: pullover, tunic, cowl, wrap or blanket.", new ChoiceShape<string>((name, name)), NameOf);

    private static Field<GarmentSpec, Direction?> DirectionField(ObjectFields<GarmentSpec> o) => o.Optional<Direction?>(
        "direction",
        "Which way it is worked. up: circumference along the stitches; sideways: length along the stitches; "
        + "best: whichever fits the sizes better.",
        DirectionChoice, g => g.Direction, null, "\"best\"");

    private static Field<GarmentSpec, MotifKind> MotifField(ObjectFields<GarmentSpec> o) =>
        o.Optional("motif", MotifWhat, MotifChoice, g => g.Motif, UsualMotif(Working.Turned));

    /// <summary>Rows that all run one way draw one family of lines, so that argyle is out of their reach.</summary>
    private static MotifKind UsualMotif(Working working) =>
        working is Working.Rounds or Working.Spiral ? MotifKind.EvenSlant : MotifKind.Argyle;

    private static Field<GarmentSpec, GradingChoice> GradingField(ObjectFields<GarmentSpec> o) => o.Optional(
        "grading", "How sizes share stitch counts.", GradingShape, g => g.Grading, UsualGrading, "each of its fields left out");

    private static Field<GarmentSpec, SeamChoice> SeamsField(ObjectFields<GarmentSpec> o) => o.Optional(
        "seams", "How the motif goes on across seams.", SeamsShape, g => g.Seams, UsualSeams, "each of its fields left out");

    private static Field<GarmentSpec, ImmutableSortedDictionary<string, int>> StartsField(
        ObjectFields<GarmentSpec> o, params ImmutableArray<string> pieces) => o.Optional(
        "starts",
        "Where along the sequence a piece's first stitch begins: whole stitches from the beginning of the first section (in linen "
        + "stitch, pairs of single crochet and chain).",
        new MapShape<int>("pieces", pieces, new WholeShape(ColourRing.Starts), 0), g => g.Starts,
        MapShape<int>.Empty, "each piece begins where the motif jumps least across its seams");

    private static Field<GarmentSpec, ImmutableArray<EdgingChoice>> EdgingsField(
        ObjectFields<GarmentSpec> o, params ImmutableArray<EdgingPlace> places)
    {
        var edgings = o.Optional(
            "edgings", "Edgings, each on an edge of its own.",
            new ListShape<EdgingChoice>("edgings", EdgingShape, 0, PlaceChoice.Names.Length),
            g => g.Edgings, [], "no edgings");
        o.Check((v, faults) =>
        {
            if (edgings.TryFrom(v, out var e))
                GarmentChecks.EdgesAreThere(v.Place, e, places, PlaceChoice, faults);
        });
        return edgings;
    }
}
