using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Constructions;

/// <summary>Fields of the document that many garments have.</summary>
internal static class GarmentFields
{
    /// <summary>Name of the field that says where pieces begin.</summary>
    public const string Starts = "starts";

    public const string MotifWhat = "What the colours shall draw.";

    public static GradingChoice UsualGrading { get; } = new(null, false, false, false, false, 4, 4);

    public static SeamChoice UsualSeams { get; } = new(null, 1, 1);

    private static readonly TextShape EdgingName = new(80);

    private static readonly ChoiceShape<Direction?> DirectionChoice = new(
        ("up", Direction.Up), ("sideways", Direction.Sideways), ("best", null));

    public static ChoiceShape<MotifKind> MotifChoice { get; } = new(
    [
        .. new[] { MotifKind.Argyle, MotifKind.Columns, MotifKind.Steep, MotifKind.EvenSlant, MotifKind.Shallow, MotifKind.Bands }
            .Select(motif => (MotifNames.Of(motif), motif)),
    ]);

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
        var leans = o.Optional(
            "severalLeans", "Pieces and sizes of one pattern may lean by different amounts.", new FlagShape(), g => g.SeveralLeans, false);
        var uneven = o.Optional(
            "unevenWidths",
            "Neighbouring sizes may come out equally wide, and a size may come out under the largest body of its range: for a sample or a test, "
            + "since no customer accepts it.",
            new FlagShape(), g => g.UnevenWidths, false);
        return v => new GradingChoice(
            most.From(v), alternating.From(v), half.From(v), bands.From(v), unequal.From(v), forgiveness.From(v), clarity.From(v))
        {
            SeveralLeans = leans.From(v),
            UnevenWidths = uneven.From(v),
        };
    });

    private static readonly ObjectShape<SeamChoice> SeamsShape = new("seams", "What happens to the motif at a seam.", o =>
    {
        var extension = o.Optional(
            "extension",
            "How the motif goes on. continued: as if the fabric had never been cut; mirrored: as in a mirror that stands on the seam; "
            + "best: both are tried in every size, and each seam is judged by the one that it comes nearest to.",
            new ChoiceShape<SeamExtension?>(("continued", SeamExtension.Continued), ("mirrored", SeamExtension.Mirrored), ("best", null)),
            s => s.Extension, UsualSeams.Extension, "\"best\"");
        var stitches = o.Optional(
            "hiddenStitches", "Stitches that a seam along row ends takes from each edge.", new WholeShape(SeamChoice.Hidden), s => s.HiddenStitches,
            UsualSeams.HiddenStitches);
        var rows = o.Optional(
            "hiddenRows", "Rows that a seam along stitches takes from each edge.", new WholeShape(SeamChoice.Hidden), s => s.HiddenRows,
            UsualSeams.HiddenRows);
        return v => new SeamChoice(extension.From(v), stitches.From(v), rows.From(v));
    });

    private static readonly ChoiceShape<EdgingPlace> PlaceChoice = new(
        ("hem", EdgingPlace.Hem), ("neck", EdgingPlace.Neck), ("armholes", EdgingPlace.Armholes), ("cuffs", EdgingPlace.Cuffs),
        ("brims", EdgingPlace.Brims), ("border", EdgingPlace.Border), ("topEdge", EdgingPlace.TopEdge), ("waist", EdgingPlace.Waist),
        ("brim", EdgingPlace.Brim), ("fronts", EdgingPlace.Fronts), ("legOpenings", EdgingPlace.LegOpenings),
        ("shoulder", EdgingPlace.Shoulder));

    private static readonly ObjectShape<EdgingChoice> EdgingShape = new("edging", "An edging and where it goes.", o =>
    {
        var where = o.Required(
            "where", "Which edge; each garment has its own.",
            PlaceChoice,
            e => e.Where);
        var edging = o.Required("edging", "Which edging, by its id; `edgings` says which may go where.", EdgingName, e => e.Edging);
        var rounds = o.Optional(
            "rounds", "How many rounds, in every size.", new WholeShape(Edging.RoundCounts), e => e.Rounds,
            "about as many as the edging has; where the size's measure runs along the stitches, as many as bring it nearest to its target");
        var fewest = o.Optional(
            "fewestRounds", "The fewest rounds that a size may have, where rounds is left out.", new WholeShape(Edging.RoundCounts), e => e.Fewest,
            "half of the edging's own");
        var most = o.Optional(
            "mostRounds", "The most rounds that a size may have, where rounds is left out.", new WholeShape(Edging.RoundCounts), e => e.Most,
            "two more than twice the edging's own");
        o.Check((v, faults) =>
        {
            if (edging.TryFrom(v, out var id))
                GarmentChecks.EdgingIsKnown(v.Place.Member("edging"), id, faults);
            if (fewest.TryFrom(v, out var least) && most.TryFrom(v, out var largest))
                GarmentChecks.RoundsAreInOrder(v.Place.Member("mostRounds"), least, largest, faults);
        });
        return v => new EdgingChoice(where.From(v), edging.From(v), rounds.From(v)) { Fewest = fewest.From(v), Most = most.From(v) };
    });

    public static void ShapeName(ObjectFields<GarmentSpec> o, string name) => o.Required(
        "shape", "What is made.", new ChoiceShape<string>((name, name)), g => g.Shape.Name);

    public static Field<GarmentSpec, Direction?> DirectionField(ObjectFields<GarmentSpec> o) => o.Optional<Direction?>(
        "direction",
        "Which way it is worked. up: its width lies along the stitches; sideways: its length lies along the stitches; "
        + "best: whichever fits the sizes better.",
        DirectionChoice, g => g.Direction, null, "\"best\"");

    public static Field<GarmentSpec, MotifKind> MotifField(ObjectFields<GarmentSpec> o) =>
        o.Optional("motif", MotifWhat, MotifChoice, g => g.Motif, UsualMotif(Working.Turned));

    /// <summary>Rows that all run one way draw one family of lines, so that argyle is out of their reach.</summary>
    public static MotifKind UsualMotif(Working working) =>
        working is Working.Rounds or Working.Spiral ? MotifKind.EvenSlant : MotifKind.Argyle;

    public static Field<GarmentSpec, GradingChoice> GradingField(ObjectFields<GarmentSpec> o) => o.Optional(
        "grading", "How sizes share stitch counts.", GradingShape, g => g.Grading, UsualGrading, "each of its fields left out");

    public static Field<GarmentSpec, SeamChoice> SeamsField(ObjectFields<GarmentSpec> o) => o.Optional(
        "seams", "How the motif goes on across seams.", SeamsShape, g => g.Seams, UsualSeams, "each of its fields left out");

    public static Field<GarmentSpec, ImmutableSortedDictionary<string, int>> StartsField(
        ObjectFields<GarmentSpec> o, params ImmutableArray<string> pieces) => o.Optional(
        Starts,
        "Where along the sequence a piece's first stitch begins: whole stitches from the beginning of the first section (in linen "
        + "stitch, pairs of single crochet and chain).",
        new MapShape<int>("pieces", pieces, new WholeShape(ColourRing.Starts), 0), g => g.Starts,
        MapShape<int>.Empty, "each piece begins where the motif jumps least across its seams");

    public static Field<GarmentSpec, ImmutableArray<EdgingChoice>> EdgingsField(
        ObjectFields<GarmentSpec> o, params ImmutableArray<EdgingPlace> places)
    {
        var edgings = o.Optional(
            "edgings", $"Edgings, each on an edge of its own. {EdgingsOf(places)}.",
            new ShownShape<ImmutableArray<EdgingChoice>>(
                new ListShape<EdgingChoice>("edgings", EdgingShape, 0, PlaceChoice.Names.Length),
                new ListNode([.. places.Take(1).Select(ExampleAt)])),
            g => g.Edgings, [], "no edgings");
        o.Check((v, faults) =>
        {
            if (edgings.TryFrom(v, out var e))
                GarmentChecks.EdgesAreThere(v.Place, e, places, PlaceChoice, faults);
        });
        return edgings;
    }

    /// <summary>Which edgings may go where, such as <c>hem: sc, corded</c>; what children wear allows some of them only.</summary>
    private static string EdgingsOf(ImmutableArray<EdgingPlace> places) => places.IsEmpty ? "This garment has no edge for one" : string.Join("; ", places
        .GroupBy(place => string.Join(", ", EdgingLibrary.At(place).Select(e => e.Id)))
        .Select(alike => $"{string.Join(", ", alike.Select(Word))}: {alike.Key}"));

    private static DocumentNode ExampleAt(EdgingPlace place) => ObjectNode.Of(
        ("where", PlaceChoice.Write(place)), ("edging", new TextNode(EdgingLibrary.At(place).First().Id)));

    private static string Word(EdgingPlace place) => ((TextNode)PlaceChoice.Write(place)).Text;

    /// <summary>What every garment that is worked in turned rows can say, and what it makes of it.</summary>
    /// <param name="sleeves">Of a garment that has either sleeves and cuffs or armholes that are edged.</param>
    /// <param name="further">What else its edgings must agree with.</param>
    public static Func<FieldValues, GarmentShape, GarmentSpec> Turned(
        ObjectFields<GarmentSpec> o, ImmutableArray<string> pieces, ImmutableArray<EdgingPlace> edges,
        Field<GarmentSpec, SleeveSpec?>? sleeves = null, Action<FieldValues, ImmutableArray<EdgingChoice>, FaultList>? further = null)
    {
        var direction = DirectionField(o);
        var motif = MotifField(o);
        var grading = GradingField(o);
        var seams = SeamsField(o);
        var starts = StartsField(o, pieces);
        var edgings = EdgingsField(o, edges);
        if (sleeves is not null)
        {
            o.Check((v, faults) =>
            {
                if (sleeves.TryFrom(v, out var s) && edgings.TryFrom(v, out var e))
                    GarmentChecks.SleevesAndEdgings(v.Place, s, e, faults);
            });
        }
        if (further is not null)
        {
            o.Check((v, faults) =>
            {
                if (edgings.TryFrom(v, out var e))
                    further(v, e, faults);
            });
        }
        return (v, shape) => new GarmentSpec(
            shape, Working.Turned, direction.From(v), motif.From(v), grading.From(v), seams.From(v), edgings.From(v))
        {
            Starts = starts.From(v),
        };
    }

    /// <summary>What a garment of one piece without seams can say, worked in turned rows with a border, and what it makes of it.</summary>
    public static Func<FieldValues, GarmentShape, GarmentSpec> Unsewn(ObjectFields<GarmentSpec> o, string piece)
    {
        var direction = DirectionField(o);
        var motif = MotifField(o);
        var grading = GradingField(o);
        var starts = StartsField(o, piece);
        var edgings = EdgingsField(o, EdgingPlace.Border);
        return (v, shape) => new GarmentSpec(
            shape, Working.Turned, direction.From(v), motif.From(v), grading.From(v), UsualSeams, edgings.From(v))
        {
            Starts = starts.From(v),
        };
    }
}
