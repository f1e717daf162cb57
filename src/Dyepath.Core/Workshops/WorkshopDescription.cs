using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Documents;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Workshops;

/// <summary>The document of a workshop: the one place where its form is said.</summary>
internal static class WorkshopDescription
{
    private const int LongestName = 40;

    private static readonly TextShape Name = new(LongestName);

    private static readonly ObjectShape<CardColour> Colour = new("workshopColour", "One colour of the sequence.", o =>
    {
        var name = o.Required("name", "What the card calls it.", new TextShape(20), c => c.Name);
        var colour = o.Required("colour", "As the card draws it, sRGB.", new ColourShape(), c => c.Colour);
        var stitches = o.Optional(
            "stitches", "Single crochet that it lasts, as dyepath yarn --taps tells.", new RealShape(5, new Bounds(0.5, 200, "stitches")), c => c.Stitches, "not counted");
        return v => new CardColour(name.From(v), colour.From(v), stitches.From(v));
    });

    private static readonly ObjectShape<WorkshopYarn> Yarn = new("workshopYarn", "A yarn by three looks at it.", o =>
    {
        var thickness = o.Required(
            "thickness", "Thin: half a matchstick. Medium: a matchstick. Thick: a pencil.",
            new ChoiceShape<YarnThickness>(("thin", YarnThickness.Thin), ("medium", YarnThickness.Medium), ("thick", YarnThickness.Thick)), y =>
                y.Thickness);
        var reach = o.Required(
            "sequence", "How much yarn lies from where one colour begins to where it begins again, held against the body.",
            new ChoiceShape<SequenceReach>(
                ("forearm", SequenceReach.Forearm), ("arm", SequenceReach.Arm), ("both arms", SequenceReach.BothArms), ("longer", SequenceReach.Longer)),
            y => y.Reach);
        var change = o.Required(
            "change", "How one colour becomes the next.",
            new ChoiceShape<ColourChange>(("sharp", ColourChange.Sharp), ("blended", ColourChange.Blended), ("speckled", ColourChange.Speckled)), y =>
                y.Change);
        var colours = o.Optional(
            "colours", "The colours in the order in which they come off the ball, one whole sequence. With the stitches of all of them the card is exact.",
            new ListShape<CardColour>("colours", Colour, 0, 12), y => y.Colours, [], "the card says first colour, second colour");
        var ball = o.Optional("ball", "Yarn in one ball.", Measured.BallLength, y => y.Ball, "400, 200 or 100 m, by its thickness");
        o.Check((v, faults) =>
        {
            if (!colours.TryFrom(v, out var c))
                return;
            if (c.Length == 1)
                faults.Meaning(v.Place.Member("colours"), "no colour, or two and more", "One colour has no sequence: add the others, or leave the list out.", "one colour");
            for (var j = 0; c.Length > 1 && j < c.Length; j++)
            {
                if (c[j].Name == c[(j + 1) % c.Length].Name)
                {
                    faults.Meaning(v.Place.Member("colours").Item(j), "another colour than the next one's",
                        "Neighbours of one name are one colour: write it once. The last one's neighbour is the first.");
                    break;
                }
            }
        });
        return v => new WorkshopYarn(thickness.From(v), reach.From(v), change.From(v), colours.From(v), ball.From(v));
    });

    private static readonly ObjectShape<WorkshopPerson> Person = new("workshopPerson", "One person, who gets one card.", o =>
    {
        var name = o.OptionalObject("name", "Heads her card.", Name, p => p.Name, "her number in the list");
        var yarn = o.Required("yarn", "Her yarn.", Yarn, p => p.Yarn);
        var piece = o.Required(
            "makes", "What she wants.",
            new ChoiceShape<WorkshopPiece>(
                ("hat", WorkshopPiece.Hat), ("cowl", WorkshopPiece.Cowl), ("scarf", WorkshopPiece.Scarf), ("bag", WorkshopPiece.Bag), ("square", WorkshopPiece.Square)),
            p => p.Piece);
        var width = o.Optional(
            "width", "Wanted across a row: of a hat and a cowl, which are worked sideways, their height; in rounds how far it goes round.",
            new QuantityShapeWithin(Length.FromCentimetres(5), Length.FromCentimetres(200)), p => p.Width,
            "hat 22 cm, cowl 25 cm, scarf 20 cm, bag 30 cm, square 20 cm; in rounds hat 54 cm, cowl 60 cm");
        var way = o.Optional(
            "worked", "In rows that are turned and sewn together, or in joined rounds (hat and cowl), where a miss shows sooner.",
            new ChoiceShape<WorkshopWay>(("rows", WorkshopWay.Rows), ("rounds", WorkshopWay.Rounds)), p => p.Way, WorkshopWay.Rows);
        var child = o.Optional("forChild", "It is for a child.", new FlagShape(), p => p.ForChild, false);
        o.Check((v, faults) =>
        {
            if (way.TryFrom(v, out var w) && piece.TryFrom(v, out var p) && w == WorkshopWay.Rounds && p is not (WorkshopPiece.Hat or
                WorkshopPiece.Cowl))
                faults.Meaning(v.Place.Member("worked"), "\"rows\" for a scarf, a bag and a square", "Work it in rows: they are no ring.");
        });
        return v => new WorkshopPerson(name.From(v), yarn.From(v), piece.From(v), width.From(v), way.From(v), child.From(v));
    });

    /// <summary>The whole document.</summary>
    public static ObjectShape<Workshop> Workshop { get; } = new("workshop", "A workshop's people, for cards that need no counting.", o =>
    {
        var title = o.Required("title", "Printed on every card.", new TextShape(60), w => w.Title);
        var minutes = o.Required("minutes", "Minutes there are for crochet.", new WholeShape(Workshops.Workshop.AllMinutes), w => w.Minutes);
        var people = o.Required(
            "people", "Who comes, one card each.", new ListShape<WorkshopPerson>("people", Person, 1, Workshops.Workshop.MostPeople), w => w.People);
        return v => new Workshop(title.From(v), minutes.From(v), people.From(v));
    });

    /// <summary>A length of the body within a narrower range.</summary>
    private sealed class QuantityShapeWithin(Length least, Length most) : Shape<Length>
    {
        public override string Allowed => FormattableString.Invariant($"a length from {least.Centimetres} to {most.Centimetres} cm, such as \"22 cm\" or \"9 in\"");

        public override DocumentNode Example => new TextNode("22 cm");

        public override IEnumerable<Shape> Parts => [Measured.Body];

        public override bool TryRead(Place place, FaultList faults, out Length value)
        {
            if (!Measured.Body.TryRead(place, faults, out value))
                return false;
            if (value >= least && value <= most)
                return true;
            faults.Meaning(place, Allowed, "Write what she wants across a row.");
            return false;
        }

        public override DocumentNode Write(Length value, Commentary? commentary = null) => Measured.Body.Write(value, commentary);

        public override ObjectNode Schema(SchemaDefinitions definitions) => Measured.Body.Schema(definitions);
    }
}
