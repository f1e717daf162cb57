using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>Every measure of a piece has a letter in the drawing and a row in its table.</summary>
public sealed class SchematicFigureTests
{
    public static TheoryData<string, Direction> Ways => [.. from kind in Repertoire.All from way in new[] { Direction.Up, Direction.Sideways }
        where kind.Name != "cowl" || way == Direction.Up select (kind.Name, way)];

    [Theory]
    [MemberData(nameof(Ways))]
    public void Every_measure_of_a_piece_has_a_row(string kind, Direction direction)
    {
        var plan = PlanOf(kind, direction);
        var (_, table) = Drawn(plan);
        var rows = table.Select(r => Labelled(r[0])).ToArray();
        foreach (var group in plan.Construction.Groups)
        {
            foreach (var piece in group.Pieces)
            {
                string[] wanted =
                [
                    "width", "height", .. group.Openings.Select(o => Words(o.Measure)),
                    .. group.Openings.Where(o => o.Cut is not null).Select(o => Words(o.Cut!.Depths[piece.Id])),
                ];
                Assert.All(wanted, what => Assert.Single(rows, r => r.What == what && r.Pieces.Contains(PlaceNames.Of(piece.Id))));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Letters_and_rows_are_the_same_and_none_says_what_another_says(string kind, Direction direction)
    {
        var (schematic, table) = Drawn(PlanOf(kind, direction));
        var rows = table.Select(r => Labelled(r[0])).ToArray();
        Assert.Equal(rows.Select(r => r.Letter), rows.Select(r => r.Letter).Distinct());
        Assert.Equal(rows.Select(r => r.Letter).Order(), schematic.Pieces.SelectMany(p => p.Dimensions).Select(d => Letter(d.Label)).Distinct().Order());
        var said = table.Select(r => (Labelled(r[0]).What, string.Join('|', r.Skip(1)))).ToArray();
        Assert.Equal(said.Distinct(), said);
    }

    /// <summary>A lettered line has the length of its row in the base size.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Lines_are_as_long_as_their_rows_say(string kind, Direction direction)
    {
        var plan = PlanOf(kind, direction);
        var at = plan.Sizes.ToList().FindIndex(s => s.Name == plan.Project.Sizes.Base);
        var (schematic, table) = Drawn(plan);
        var lengths = table.ToDictionary(r => Labelled(r[0]).Letter, r => double.Parse(r[1 + (at < 0 ? plan.Sizes.Length / 2 : at)].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture));
        Assert.All(schematic.Pieces.SelectMany(p => p.Dimensions), d => Assert.True(
            Math.Abs(Math.Abs(d.To.X - d.From.X) + Math.Abs(d.To.Y - d.From.Y) - lengths[Letter(d.Label)]) <= 0.26, Letter(d.Label)));
    }

    /// <summary>
    /// Lines stand off the piece, on the side that they measure, by 3 cm or a sixteenth of its longer side, whichever is more, and the
    /// height a little farther out than what it runs beside; the depth of a neck is measured inside it.
    /// </summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Lines_stand_off_the_piece(string kind, Direction direction)
    {
        var (schematic, _) = Drawn(PlanOf(kind, direction));
        foreach (var piece in schematic.Pieces)
        {
            var (wide, high) = (piece.Outline.Max(p => p.X), piece.Outline.Max(p => p.Y));
            foreach (var line in piece.Dimensions)
            {
                // To the left as seen walking along it, y downwards: east goes north, south goes east.
                var length = Math.Abs(line.To.X - line.From.X) + Math.Abs(line.To.Y - line.From.Y);
                var (north, east) = ((line.To.X - line.From.X) / length * line.Offset, (line.To.Y - line.From.Y) / length * line.Offset);
                var (x, y) = ((line.From.X + line.To.X) / 2 + east, (line.From.Y + line.To.Y) / 2 - north);
                var off = Math.Max(Math.Max(-x, x - wide), Math.Max(-y, y - high));
                if (line.Offset == 0)
                    Assert.True(off < 0, $"{kind}, {direction}: a line across the piece lies {off} outside it.");
                else
                    Assert.InRange(off, Math.Max(3, 0.06 * Math.Max(wide, high)) - 1e-6, Math.Max(3, 0.06 * Math.Max(wide, high)) + 1 + 1e-6);
            }
        }
    }

    /// <summary>
    /// On the screen nothing has to be looked up: a line says what it measures, and how long it is in the size that is shown.
    /// </summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void In_words_a_line_says_what_it_measures_and_its_own_length(string kind, Direction direction)
    {
        var plan = PlanOf(kind, direction);
        var edition = plan.Project.Edition with { Units = Units.Centimetres };
        var say = new Wording([.. plan.Sizes.Select(s => s.Name)], edition);
        for (var size = 0; size < plan.Sizes.Length; size++)
        {
            var schematic = (Schematic)PatternWriter.Schematic(plan, size).Picture;
            Assert.All(schematic.Pieces.SelectMany(p => p.Dimensions), line =>
            {
                var words = string.Concat(say.Say(line.Label).Select(s => s.Text)).Split(' ');
                Assert.True(words.Length >= 3 && words[^1] == "cm" && words[0].Length > 2, string.Join(' ', words));
                var length = double.Parse(words[^2], System.Globalization.CultureInfo.InvariantCulture);
                Assert.InRange(Math.Abs(line.To.X - line.From.X) + Math.Abs(line.To.Y - line.From.Y), length - 0.26, length + 0.26);
            });
        }
    }

    /// <summary>
    /// Heavy lines lie on the outline and are as long as what they mark: a neck in the middle of the top, armholes and what is sewn on
    /// below them from the top down at both sides, vents from the hem up, and tabs halfway.
    /// </summary>
    [Theory]
    [InlineData("pullover", "neck", "armhole")]
    [InlineData("pet-tabard", "neck", "leg opening")]
    [InlineData("tabard", "neck", "tab")]
    [InlineData("off-shoulder-top", "sleeve join", "vent")]
    public void Openings_are_marked_where_they_lie(string kind, params string[] openings)
    {
        foreach (var direction in Enum.GetValues<Direction>())
        {
            var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind));
            var plan = (project with
            {
                Garment = project.Garment with
                {
                    Direction = direction,
                    Edgings = [],
                    Shape = project.Garment.Shape is OffShoulder top ? top with { Vent = TestProjects.Cm(10) } : project.Garment.Shape,
                    Grading = project.Garment.Grading with { UnevenWidths = true, SeveralLeans = true },
                },
            }).Planned();
            var named = plan.Sizes.ToList().FindIndex(s => s.Name == plan.Project.Sizes.Base);
            var at = named < 0 ? plan.Sizes.Length / 2 : named;
            var drawn = Drawn(plan).Picture.Pieces[0];
            var finished = plan.Sizes[at].Finished;
            var (wide, high) = (drawn.Outline.Max(p => p.X), drawn.Outline.Max(p => p.Y));
            foreach (var name in openings)
            {
                var marks = drawn.Marks.Where(m => Say(plan, m.Label).StartsWith(name, StringComparison.Ordinal)).ToArray();
                Assert.Equal((kind, name, name == "neck" ? 1 : 2), (kind, name, marks.Length));
                var (measure, from) = name switch
                {
                    "neck" => (GarmentMeasure.NeckWidth, (wide - finished[GarmentMeasure.NeckWidth].Centimetres) / 2),
                    "armhole" => (GarmentMeasure.ArmholeDepth, 0),
                    "leg opening" => (GarmentMeasure.LegOpening, 0),
                    "sleeve join" => (GarmentMeasure.SleeveJoin, 0),
                    "vent" => (GarmentMeasure.Vent, high - finished[GarmentMeasure.Vent].Centimetres),
                    _ => (GarmentMeasure.TabJoin, (high - finished[GarmentMeasure.TabJoin].Centimetres) / 2),
                };
                foreach (var mark in marks)
                {
                    var (first, last) = name == "neck" ? (mark.From.X, mark.To.X) : (mark.From.Y, mark.To.Y);
                    Assert.Equal((from, from + finished[measure].Centimetres), (first, last), new Millimetre());
                    Assert.True(name == "neck" ? mark.From.Y == 0 && mark.To.Y == 0 : mark.From.X == mark.To.X, $"{kind}: the {name} lies off the outline.");
                }
                if (name != "neck")
                    Assert.Equal([0, wide], marks.Select(m => m.From.X).Order());
            }
        }
    }

    /// <summary>
    /// The arrow points from the first row of what is drawn to its last: up where it is worked up, and sideways to the right, or to the
    /// left where the piece is seen from the wrong side of its rows and its sides are not alike.
    /// </summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Arrows_go_the_way_the_rows_grow(string kind, Direction direction)
    {
        var plan = PlanOf(kind, direction);
        for (var size = 0; size < plan.Sizes.Length; size++)
        {
            foreach (var drawn in ((Schematic)PatternWriter.Schematic(plan, size).Picture).Pieces)
            {
                var piece = plan.Sizes[size].Pieces.First(p => drawn.Name.Leaves.OfType<Dyepath.Core.Booklets.Words>().Any(w => w.Text == p.Name));
                var plain = plan.Construction.GroupOf(piece.Id).Fills is not null;
                var oneSided = plan.Construction.GroupOf(piece.Id).Openings
                    .Any(o => o.At != OpeningAt.Middle && o.Sides.Length == 1) && !piece.Openings.IsEmpty;
                (double, double) arrow = direction == Direction.Up || plain ? (0, -1) : oneSided && piece.WrongSideOut ? (-1, 0) : (1, 0);
                Assert.Equal((kind, piece.Name, arrow), (kind, piece.Name, (drawn.WorkedTowards.X, drawn.WorkedTowards.Y)));
            }
        }
    }

    /// <summary>
    /// Of two fronts worked alike one is turned over, so that both necks lie at the middle: their rows are drawn growing towards each
    /// other, or away.
    /// </summary>
    [Fact]
    public void Rows_of_a_front_that_is_turned_over_are_drawn_the_other_way()
    {
        var plan = PlanOf("cardigan", Direction.Sideways);
        var seen = new HashSet<(bool, double)>();
        for (var size = 0; size < plan.Sizes.Length; size++)
        {
            foreach (var drawn in ((Schematic)PatternWriter.Schematic(plan, size).Picture).Pieces)
            {
                var piece = plan.Sizes[size].Pieces.First(p => drawn.Name.Leaves.OfType<Dyepath.Core.Booklets.Words>().Any(w => w.Text == p.Name));
                if (piece.Id is PieceId.LeftFront or PieceId.RightFront)
                    seen.Add((piece.WrongSideOut, drawn.WorkedTowards.X));
            }
        }
        Assert.Contains((true, -1), seen);
    }

    private sealed class Millimetre : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) => Math.Abs(x.Item1 - y.Item1) < 0.1 && Math.Abs(x.Item2 - y.Item2) < 0.1;

        public int GetHashCode((double, double) obj) => 0;
    }

    /// <summary>What its Making up says is dried flat to the drawing: a vest is that by its cuts.</summary>
    [Fact]
    public void A_vest_has_the_ends_of_its_lines_on_its_outline()
    {
        var (schematic, _) = Drawn(PlanOf("vest", Direction.Sideways));
        foreach (var piece in schematic.Pieces)
        {
            foreach (var line in piece.Dimensions.Where(d => d.Offset == 0))
                Assert.Contains(piece.Outline, p => Math.Abs(p.Y - line.To.Y) < 0.01);
        }
        Assert.Equal(2, schematic.Pieces.Length);
    }

    private static (Schematic Picture, string[][] Rows) Drawn(Plan plan)
    {
        var blocks = SchematicFigure.Of(new PatternContext(plan));
        return ((Schematic)blocks.OfType<Figure>().Single().Picture, [.. blocks.OfType<Table>().Single().Rows.Select(r => r.Select(c => Say(plan, c)).ToArray())]);
    }

    private static string Say(Plan plan, Phrase phrase) => string.Concat(
        new Wording([.. plan.Sizes.Select(s => s.Name)], plan.Project.Edition with { Units = Units.Centimetres }).Say(phrase).Select(s => s.Text));

    private static string Letter(Phrase label) => string.Concat(new Wording(["one", "two"], StarterDocument.Project.Edition).Say(label).Select(s => s.Text)).Split(' ')[0];

    /// <summary>Of <c>e: front and back, neck width, cm</c>.</summary>
    private static (string Letter, string[] Pieces, string What) Labelled(string label)
    {
        var (colon, parts) = (label.IndexOf(':', StringComparison.Ordinal), label.Split(", "));
        return (label[..colon], parts[0][(colon + 2)..].Split(" and "), parts[1]);
    }

    /// <summary>The piece says whose neck it is.</summary>
    private static string Words(GarmentMeasure measure) =>
        measure is GarmentMeasure.NeckDepth or GarmentMeasure.BackNeckDepth ? "neck depth" : GarmentMeasures.Words(measure);

    private static Plan PlanOf(string kind, Direction direction)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind));
        return (project with { Garment = project.Garment with { Direction = direction } }).Planned();
    }
}
