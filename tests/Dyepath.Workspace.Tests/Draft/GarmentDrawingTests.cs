using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Draft;

public sealed class GarmentDrawingTests
{
    private static readonly string[] Shapes =
    [
        """{ "shape": "tunic" }""", """{ "shape": "pullover", "sleeves": {}, "direction": "up" }""",
        """{ "shape": "cowl", "circumference": "66 cm", "height": "28 cm" }""", """{ "shape": "wrap", "width": "45 cm", "length": "170 cm" }""",
        """{ "shape": "blanket", "width": "100 cm", "length": "120 cm" }""",
        """{ "shape": "cardigan", "sleeves": {}, "edgings": [{ "where": "fronts", "edging": "button-band" }] }""",
        """{ "shape": "skirt", "flare": "30 cm", "edgings": [{ "where": "waist", "edging": "elastic-casing" }] }""",
        """{ "shape": "tunic", "neck": "round" }""", """{ "shape": "pullover", "neck": "buttoned", "edgings": [{ "where": "shoulder", "edging": "button-band" }] }""",
    ];

    public static TheoryData<string> Garments => [.. Shapes];

    [Theory]
    [MemberData(nameof(Garments))]
    public void Everything_lies_within_the_view_and_no_cell_is_missing(string garment)
    {
        var plan = PlanOf(garment);
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            Assert.All(drawing.Patches, p => Assert.Equal(p.Columns * p.Rows, p.Cells.Length));
            Assert.All(drawing.Patches, p => Assert.True(
                p.X >= drawing.Left && p.Y >= drawing.Top && p.X + p.Width <= drawing.Left + drawing.Width && p.Y + p.Height <= drawing.Top + drawing.Height));
            Assert.All(drawing.Dimensions, d => Assert.True(
                Math.Min(d.X1, d.X2) >= drawing.Left && Math.Max(d.X1, d.X2) <= drawing.Left + drawing.Width
                && Math.Min(d.Y1, d.Y2) >= drawing.Top && Math.Max(d.Y1, d.Y2) <= drawing.Top + drawing.Height));
            Assert.Contains(size.Name, drawing.Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void It_is_to_scale_with_the_sleeves_at_either_side()
    {
        var plan = PlanOf(Shapes[1]);
        var size = plan.Sizes[1];
        var drawing = WornGarment.Front(plan, size);
        var (front, sleeve) = (size.Pieces[0], size.Pieces.Single(p => p.Name == "sleeve"));
        Assert.Equal((front.Width.Centimetres, front.Height.Centimetres), (drawing.Patches[0].Width, drawing.Patches[0].Height));
        Assert.Equal((1, 3), (drawing.Patches[1].Turns, drawing.Patches[2].Turns));
        Assert.Equal(-sleeve.Height.Centimetres, drawing.Patches[1].X, 9);
        Assert.Equal(front.Width.Centimetres, drawing.Patches[2].X, 9);
        Assert.Equal(sleeve.Width.Centimetres / 2, drawing.Patches[2].Height, 9);
        // Each sleeve shows the half that lies in front of the fold at the shoulder.
        Assert.All(drawing.Patches.Skip(1), p => Assert.Equal(sleeve.Stitches / 2, p.Columns));
    }

    /// <summary>Seen from the front the right one lies at the left, then one band, since they overlap, then the left one.</summary>
    [Fact]
    public void Fronts_lie_a_band_apart()
    {
        var plan = PlanOf(Shapes[5]);
        var size = plan.Sizes[1];
        var drawing = WornGarment.Front(plan, size);
        var (right, left) = (drawing.Patches[0], drawing.Patches[1]);
        Assert.Equal(size.Edgings[0].Depth.Centimetres, left.X - right.X - right.Width, 9);
        var band = Assert.Single(drawing.Outlines, o => o.Kind == "edging");
        Assert.Equal((right.X + right.Width, left.X), (band.Points.Min(p => p.X), Math.Round(band.Points.Max(p => p.X), 9)), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
        Assert.Contains(drawing.Dimensions, d => !d.IsUpright && Math.Abs(d.X1 + d.X2 - right.X - left.X - left.Width) < 1e-6 && d.Label.EndsWith("round", StringComparison.Ordinal));
    }

    /// <summary>Half of a flared tube is seen: its hem at full length, its waist and the casing above it as long as the rows that reach it.</summary>
    [Fact]
    public void A_flared_skirt_narrows_from_the_hem_to_the_waist()
    {
        var plan = PlanOf(Shapes[6]);
        var size = plan.Sizes[1];
        var drawing = WornGarment.Front(plan, size);
        var (patch, piece) = (Assert.Single(drawing.Patches), size.Pieces[0]);
        var edge = Assert.Single(drawing.Outlines, o => o.Kind == "edge").Points;
        double Wide(double y) => edge.Where(p => Math.Abs(p.Y - y) < 1e-6).Max(p => p.X) - edge.Where(p => Math.Abs(p.Y - y) < 1e-6).Min(p => p.X);
        var reach = piece.Shape!.Parts[0].Outline;
        var waist = Enumerable.Range(0, piece.Rows).Count(r => reach.At(r).Last == piece.Shape.LastColumn) * plan.RowHeight.Centimetres / 2;
        Assert.Equal(piece.Width.Centimetres / 2, Wide(piece.Height.Centimetres), 1e-6);
        Assert.Equal(waist, Wide(0), 1e-6);
        var casing = drawing.Outlines.Where(o => o.Kind == "edging").Select(o => o.Points).Single(points => points.All(p => p.Y < 1e-6));
        Assert.Equal(waist, casing.Max(p => p.X) - casing.Min(p => p.X), 1e-6);
        // The fabric of every line lies within the outline: stitches in its middle, nothing at either side.
        for (var y = 0; y < patch.Rows; y++)
        {
            var line = patch.Cells[(y * patch.Columns)..((y + 1) * patch.Columns)];
            var (first, last) = (Array.FindIndex(line, c => c != WornPiece.Empty), Array.FindLastIndex(line, c => c != WornPiece.Empty));
            Assert.InRange(first - (patch.Columns - 1 - last), -1, 1);
            Assert.DoesNotContain(WornPiece.Empty, line[first..(last + 1)]);
        }
        Assert.Contains(drawing.Dimensions, d => d.Y1 < 0 && d.Label.EndsWith("round", StringComparison.Ordinal));
    }

    public static TheoryData<string> Kinds => [.. Repertoire.All.Select(k => k.Name)];

    /// <summary>A line says its own length on the drawing's scale, or twice of it where it goes all the way round.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_line_is_as_long_as_its_number(string kind)
    {
        // What is worked in rounds goes up.
        foreach (var plan in new[] { Direction.Up, Direction.Sideways }.Where(way => kind != "cowl" || way == Direction.Up).Select(way => PlanOf(kind, way)))
        {
            foreach (var drawing in plan.Sizes.SelectMany(size => Sides(plan, size)))
            {
                Assert.True(drawing.Dimensions.Length >= 2);
                Assert.All(drawing.Dimensions, d =>
                {
                    var words = d.Label.Split(' ');
                    var said = double.Parse(words[0], CultureInfo.InvariantCulture) / (words is [_, _, "round"] ? 2 : 1);
                    Assert.Equal("cm", words[1]);
                    Assert.True(Math.Abs(said - Math.Abs(d.X2 - d.X1) - Math.Abs(d.Y2 - d.Y1)) <= 0.26, $"{d}");
                });
            }
        }
    }

    /// <summary>Fronts that open may be wider than the back, and a piece on the bias is wider than its rows: their lines lie in the middle.</summary>
    public static TheoryData<string> Straight => [.. Repertoire.All.Select(k => k.Name).Where(name => name is not ("cardigan" or "bias-wrap"))];

    /// <summary>A line lies against the part that it measures: seams and edgings are all that it may stand off by.</summary>
    [Theory]
    [MemberData(nameof(Straight))]
    public void Every_line_lies_along_a_part_of_its_length(string kind)
    {
        var plan = PlanOf(kind, Direction.Up);
        var drawing = WornGarment.Front(plan, plan.Sizes[0]);
        var edging = plan.Sizes[0].Edgings.Select(e => e.Depth.Centimetres).DefaultIfEmpty(0).Max();
        foreach (var part in drawing.Patches.Take(1).Concat(drawing.Patches.TakeLast(1)))
        {
            Assert.Contains(
                drawing.Dimensions, d => !d.IsUpright && Math.Abs(d.X1 - part.X) < 2 + edging && Math.Abs(d.X2 - part.X - part.Width) < 3 + edging);
            Assert.Contains(
                drawing.Dimensions, d => d.IsUpright && Math.Abs(d.Y1 - part.Y) < 3 + edging && Math.Abs(d.Y2 - part.Y - part.Height) < 3 + edging);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Nothing_runs_out_of_the_picture(string kind)
    {
        var plan = PlanOf(kind, Direction.Up);
        foreach (var drawing in plan.Sizes.SelectMany(size => Sides(plan, size)))
        {
            Assert.All(drawing.Outlines.SelectMany(o => o.Points, (o, p) => (o.Kind, X: p.X, Y: p.Y)).Concat(drawing.Dimensions.SelectMany(
                d => new[] { (Kind: "dimension", X: d.X1, Y: d.Y1), (Kind: "dimension", X: d.X2, Y: d.Y2) })), p => Assert.True(
                p.X >= drawing.Left && p.X <= drawing.Left + drawing.Width && p.Y >= drawing.Top && p.Y <= drawing.Top + drawing.Height, $"{p}"));
        }
    }

    [Theory]
    [InlineData("off-shoulder-top")]
    [InlineData("off-shoulder-dress")]
    public void A_bare_shoulder_is_above_the_top_edge(string kind)
    {
        var plan = PlanOf(kind, Direction.Up);
        foreach (var drawing in plan.Sizes.Select(size => WornGarment.Front(plan, size)))
        {
            var middle = drawing.Patches[0].X + drawing.Patches[0].Width / 2;
            var top = drawing.Outlines.Where(o => o.Kind is "edge" or "edging").SelectMany(o => o.Points).Min(p => p.Y);
            var figure = drawing.Outlines.Where(o => o.Kind == "body").SelectMany(o => o.Points);
            // The neck is at most 15 cm wide; whatever is wider, above, is shoulder.
            Assert.Contains(figure, p => Math.Abs(p.X - middle) > 15 && p.Y < top - 3);
        }
    }

    [Theory]
    [InlineData("pullover")]
    [InlineData("vest")]
    public void A_garment_that_hangs_from_the_shoulders_covers_them(string kind)
    {
        var drawing = WornGarment.Front(PlanOf(kind, Direction.Up), PlanOf(kind, Direction.Up).Sizes[0]);
        var middle = drawing.Patches[0].X + drawing.Patches[0].Width / 2;
        Assert.DoesNotContain(drawing.Outlines.Where(o => o.Kind == "body").SelectMany(o => o.Points), p => Math.Abs(p.X - middle) > 15 && p.Y < 0);
    }

    [Fact]
    public void A_skirt_hangs_from_the_waist_and_a_hat_from_no_shoulder()
    {
        var skirt = PlanOf("skirt", Direction.Up);
        var drawing = WornGarment.Front(skirt, skirt.Sizes[0]);
        var figure = drawing.Outlines.Where(o => o.Kind == "body").SelectMany(o => o.Points);
        var top = drawing.Outlines.Where(o => o.Kind is "edge" or "edging").SelectMany(o => o.Points).Min(p => p.Y);
        // The head is 23 cm above the shoulders, and the waist the back's length below them.
        Assert.Equal(top - 23 - skirt.Sizes[0].Body["backWaistLength"].Centimetres, figure.Min(p => p.Y), 0.1);
        var hat = PlanOf("hat", Direction.Up);
        Assert.DoesNotContain(WornGarment.Front(hat, hat.Sizes[0]).Outlines, o => o.Kind == "body");
    }

    /// <summary>Nobody sees through fabric: the figure ends where it goes behind a piece, and is seen beside it.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_figure_is_behind_the_garment(string kind)
    {
        var plan = PlanOf(kind, Direction.Up);
        foreach (var drawing in plan.Sizes.SelectMany(size => Sides(plan, size)))
        {
            var pieces = drawing.Outlines.Where(o => o.Kind == "edge").ToArray();
            var body = drawing.Outlines.Where(o => o.Kind == "body").ToArray();
            Assert.Equal(drawing.IsOnFigure, body.Length > 0);
            Assert.All(body.SelectMany(b => b.Points), p => Assert.True(
                pieces.All(o => !IsWithin(o, p) || Distance(o, p) < 0.01), $"{p} is within a piece"));
            if (drawing.IsOnFigure)
                Assert.True(body.SelectMany(b => b.Points).Min(p => p.Y) < pieces.SelectMany(o => o.Points).Min(p => p.Y));
        }
    }

    /// <summary>Inside of what is cut out, along all of it and as deep as planned.</summary>
    [Theory]
    [InlineData("""{ "shape": "vest", "edgings": [{ "where": "neck", "edging": "sc" }, { "where": "armholes", "edging": "sc" }] }""", 3)]
    [InlineData("""{ "shape": "pullover", "neck": "round", "edgings": [{ "where": "neck", "edging": "sc" }] }""", 1)]
    [InlineData("""{ "shape": "cardigan", "neck": "v", "edgings": [{ "where": "neck", "edging": "sc-rows" }] }""", 2)]
    public void Edgings_of_what_is_cut_out_lie_in_the_opening(string garment, int cuts)
    {
        var plan = PlanOf(garment);
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            var pieces = drawing.Outlines.Where(o => o.Kind == "edge").ToArray();
            var bands = drawing.Outlines.Where(o => o.Kind == "edging").ToArray();
            var edges = drawing.Outlines.Where(o => o.Kind == "opening").Where(o => o.Points.Length > 2).ToArray();
            Assert.Equal((cuts, cuts), (bands.Length, edges.Length));
            var depth = size.Edgings[0].Depth.Centimetres;
            Assert.All(bands.Zip(edges), pair =>
            {
                var (band, edge) = pair;
                Assert.All(band.Points, p => Assert.True(pieces.All(o => !IsWithin(o, p) || Distance(o, p) < 0.01) || Distance(edge, p) < 1.5 * depth));
                Assert.All(edge.Points, p => Assert.Contains(band.Points, b => Math.Abs(b.X - p.X) + Math.Abs(b.Y - p.Y) < 1e-6));
                Assert.All(band.Points.Except(edge.Points), p => Assert.Equal(depth, Distance(edge with { Closed = false }, p), 0.5 * depth));
            });
        }
    }

    /// <summary>Round a triangle or a slanted strip it follows the slopes.</summary>
    [Theory]
    [InlineData("shawl")]
    [InlineData("bias-wrap")]
    public void A_border_follows_the_slopes(string kind)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind));
        var plan = GarmentPlanner.Plan(project with { Garment = project.Garment with { Edgings = [new(Core.Edgings.EdgingPlace.Border, "sc", null)] } }).Plan!;
        var drawing = WornGarment.Front(plan, plan.Sizes[0]);
        var depth = plan.Sizes[0].Edgings[0].Depth.Centimetres;
        var piece = drawing.Outlines.Single(o => o.Kind == "edge");
        var border = drawing.Outlines.Single(o => o.Kind == "edging");
        Assert.All(border.Points, p => Assert.InRange(Distance(piece, p), 0, 3 * depth));
        Assert.All(border.Points, p => Assert.True(!IsWithin(piece, p) || Distance(piece, p) < 0.01));
        // Beside the middle of every side of some length it is as deep as planned.
        var sides = piece.Points.Zip(piece.Points.Skip(1).Append(piece.Points[0])).Where(s => Math.Abs(s.First.X - s.Second.X) + Math.Abs(s.First.Y - s.Second.Y) > 4 * depth).ToArray();
        Assert.NotEmpty(sides);
        Assert.All(sides, s =>
        {
            var (x, y) = ((s.First.X + s.Second.X) / 2, (s.First.Y + s.Second.Y) / 2);
            Assert.Equal(depth, Distance(border with { Points = [.. border.Points.Where(p => Distance(piece, p) > 0.01)] }, (x, y)), 0.01);
        });
    }

    /// <summary>What stays open at the top is edged as far as it is open, and no shoulder beside it.</summary>
    [Theory]
    [InlineData("""{ "shape": "tunic", "edgings": [{ "where": "neck", "edging": "sc" }] }""", "neck")]
    [InlineData("""{ "shape": "cardigan", "edgings": [{ "where": "neck", "edging": "sc-rows" }] }""", "neck")]
    [InlineData("""{ "shape": "pullover", "neck": "buttoned", "edgings": [{ "where": "shoulder", "edging": "button-band" }] }""", "shoulder")]
    public void A_slit_is_edged_as_far_as_it_is_open(string garment, string place)
    {
        var plan = PlanOf(garment);
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            var depth = size.Edgings[0].Depth.Centimetres;
            var slits = drawing.Outlines.Where(o => o.Kind == "opening" && o.Points.All(p => p.Y == 0)).ToArray();
            var bands = drawing.Outlines.Where(o => o.Kind == "edging").ToArray();
            Assert.Equal(slits.Length, bands.Length);
            foreach (var (slit, band) in slits.Zip(bands))
            {
                Assert.Equal((-depth, 0.0), (band.Points.Min(p => p.Y), band.Points.Max(p => p.Y)));
                var (left, right) = (slit.Points.Min(p => p.X), slit.Points.Max(p => p.X));
                // The band of the wearer's left shoulder lies at the viewer's right of the neck, out to the armhole.
                if (place == "shoulder")
                    (left, right) = (right, drawing.Patches[0].Width);
                Assert.InRange(band.Points.Min(p => p.X), left - depth - 0.01, left + 0.01);
                Assert.InRange(band.Points.Max(p => p.X), right - 0.01, right + depth + 0.01);
            }
        }
    }

    /// <summary>Where inserts stand, the neck is edged along their slopes, as deep as the band, and outside the fabric.</summary>
    [Fact]
    public void A_V_of_inserts_is_edged_along_its_slopes()
    {
        var plan = WithInserts("""{ "shape": "vest", "neck": "v-insert", "edgings": [{ "where": "neck", "edging": "sc" }], "grading": { "unevenWidths": true, "severalLeans": true } }""");
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            var depth = size.Edgings.Single().Depth.Centimetres;
            var slopes = drawing.Outlines.Where(o => o.Kind == "opening" && o.Points is [var a, var b] && a.X != b.X && a.Y != b.Y).ToArray();
            Assert.Equal(2, slopes.Length);
            Assert.All(slopes, slope =>
            {
                var ((ax, ay), (bx, by)) = (slope.Points[0], slope.Points[1]);
                var band = drawing.Outlines.Single(o => o.Kind == "edging" && Distance(o, ((ax + bx) / 2, (ay + by) / 2)) < 1e-6 && o.Points.Length == 4);
                // Half of its depth from the middle of the slope there is the band, on the side of the neck's middle line.
                var along = Math.Sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
                var middle = drawing.Patches[0].Width / 2;
                var inwards = Math.Sign(middle - (ax + bx) / 2);
                var at = ((ax + bx) / 2 + inwards * depth / 2 * Math.Abs(by - ay) / along, (ay + by) / 2 - depth / 2 * Math.Abs(bx - ax) / along);
                Assert.True(IsWithin(band, at), $"{size.Name}: the band lies on the side of the neck");
                Assert.Equal(depth / 2, Distance(band, at), 6);
            });
        }
    }

    /// <summary>Whether a point is within an outline, by how often a line to the left crosses it.</summary>
    private static bool IsWithin(GarmentLine outline, (double X, double Y) at) => outline.Points.Zip(outline.Points.Skip(1).Append(outline.Points[0]))
        .Count(s => s.First.Y > at.Y != s.Second.Y > at.Y
            && s.First.X + (at.Y - s.First.Y) / (s.Second.Y - s.First.Y) * (s.Second.X - s.First.X) < at.X) % 2 == 1;

    private static double Distance(GarmentLine outline, (double X, double Y) at) =>
        outline.Points.Zip(outline.Closed ? outline.Points.Skip(1).Append(outline.Points[0]) : outline.Points.Skip(1)).Min(s =>
        {
            var (x, y) = (s.Second.X - s.First.X, s.Second.Y - s.First.Y);
            var length = x * x + y * y;
            var t = length == 0 ? 0 : Math.Clamp(((at.X - s.First.X) * x + (at.Y - s.First.Y) * y) / length, 0, 1);
            return Math.Sqrt(Math.Pow(s.First.X + t * x - at.X, 2) + Math.Pow(s.First.Y + t * y - at.Y, 2));
        });

    /// <summary>A front that opens has half of the neck: its line would else be read as all of it.</summary>
    [Fact]
    public void The_neck_of_one_front_says_that_there_is_another()
    {
        var plan = PlanOf("cardigan", Direction.Up);
        Assert.Single(WornGarment.Front(plan, plan.Sizes[0]).Dimensions, d => d.Label.EndsWith(" each side", StringComparison.Ordinal));
        Assert.DoesNotContain(WornGarment.Behind(plan, plan.Sizes[0])!.Dimensions, d => d.Label.EndsWith(" each side", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("pullover", """{ "shape": "pullover", "sleeves": {}, "direction": "up" }""")]
    [InlineData("cardigan", """{ "shape": "cardigan", "sleeves": {}, "edgings": [{ "where": "fronts", "edging": "button-band" }] }""")]
    public void From_behind_the_back_hangs_between_the_halves_of_the_sleeves_that_are_not_seen_in_front(string kind, string garment)
    {
        Assert.NotEmpty(kind);
        var plan = PlanOf(garment);
        var size = plan.Sizes[0];
        var (front, behind) = (WornGarment.Front(plan, size), WornGarment.Behind(plan, size)!);
        var back = WornPiece.Of(plan, size[PieceId.Back]);
        Assert.Equal(back.Cells.ToArray(), behind.Patches[0].Cells);
        Assert.Equal((1, 3), (behind.Patches[1].Turns, behind.Patches[2].Turns));
        Assert.Equal(-size[PieceId.Sleeve].Height.Centimetres, behind.Patches[1].X, 9);
        Assert.Equal(size[PieceId.Back].Width.Centimetres, behind.Patches[2].X, 9);
        // A sleeve's two halves are the wearer's front and back: at the left there is one, at the right the other, on either side.
        Assert.Equal(front.Patches[^2].Cells, behind.Patches[1].Cells);
        Assert.Equal(front.Patches[^1].Cells, behind.Patches[2].Cells);
        Assert.StartsWith("Seen from behind", behind.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tube_has_its_other_half_behind_and_a_wrap_has_no_other_side()
    {
        var skirt = PlanOf("skirt", Direction.Up);
        var whole = WornPiece.Of(skirt, skirt.Sizes[0].Pieces[0]);
        var (front, behind) = (WornGarment.Front(skirt, skirt.Sizes[0]).Patches[0], WornGarment.Behind(skirt, skirt.Sizes[0])!.Patches[0]);
        Assert.Equal(whole.Cells[..(whole.Columns / 2)].ToArray(), front.Cells[..front.Columns]);
        Assert.Equal(whole.Cells[(whole.Columns - behind.Columns)..whole.Columns].ToArray(), behind.Cells[..behind.Columns]);
        var wrap = PlanOf("wrap", Direction.Up);
        Assert.Null(WornGarment.Behind(wrap, wrap.Sizes[0]));
    }

    private static IEnumerable<GarmentDrawing> Sides(Plan plan, SizePlan size) =>
        WornGarment.Behind(plan, size) is { } behind ? [WornGarment.Front(plan, size), behind] : [WornGarment.Front(plan, size)];

    /// <summary>Triangles stand in the lower corners of the cut, in front only, and the neck is drawn along them.</summary>
    [Theory]
    [InlineData("vest", "up")]
    [InlineData("pullover", "sideways")]
    public void Inserts_fill_the_corners_of_the_neck(string garment, string direction)
    {
        var plan = WithInserts($$"""{ "shape": "{{garment}}", "neck": "v-insert", "direction": "{{direction}}", "grading": { "unevenWidths": true, "severalLeans": true } }""");
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            var (front, triangles) = (drawing.Patches[0], drawing.Patches[1..3]);
            var cut = WornOutline.Of(plan, size[PieceId.Front]).Cuts.Single(c => c.Opening == OpeningId.Neck).Points;
            var (left, right, bottom) = (cut.Min(p => p.X), cut.Max(p => p.X), cut.Max(p => p.Y));
            Assert.Equal([left, (left + right) / 2], triangles.Select(t => t.X), (a, b) => Math.Abs(a - b) < 1e-9);
            Assert.All(triangles, t => Assert.Equal((right - left) / 2, t.Width, 9));
            Assert.All(triangles, t => Assert.Equal((front.Y, bottom), (t.Y, t.Y + t.Height)));
            // The one at the left has its upright edge at the left.
            Assert.All(Enumerable.Range(0, triangles[0].Rows), y => Assert.Equal(WornPiece.Plain, triangles[0].Cells[y * triangles[0].Columns]));
            Assert.Equal(WornPiece.Empty, triangles[0].Cells[triangles[0].Columns - 1]);
            Assert.Equal(WornPiece.Empty, triangles[1].Cells[0]);
            var slopes = drawing.Outlines.Where(o => o is { Kind: "opening", Closed: false } && o.Points.Length == 2 && o.Points[0].X != o.Points[1].X && o.Points[0].Y != o.Points[1].Y);
            Assert.Equal(2, slopes.Count());
            Assert.All(slopes, s => Assert.Equal(((left + right) / 2, bottom), (Math.Round(s.Points[0].X, 9), s.Points[0].Y), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-6 && Math.Abs(a.Item2 - b.Item2) < 1e-6));
            Assert.DoesNotContain(WornGarment.Behind(plan, size)!.Patches, p => p.Cells.Contains(WornPiece.Plain));
        }
    }

    private static Plan PlanOf(string kind, Direction direction)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind));
        var result = GarmentPlanner.Plan(project with { Garment = project.Garment with { Direction = direction } });
        Assert.True(result.HasPlan, $"{kind} {direction}: {string.Join("; ", result.Reasons.Select(r => r.Text))}");
        return result.Plan;
    }

    private static Plan WithInserts(string garment)
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("companion", JsonNode.Parse("""{ "name": "Plain", "colour": "#d8c49a", "ball": { "length": "230 m", "mass": "100 g" }, "uses": ["plainPieces"] }"""));
        document.Set("garment", JsonNode.Parse(garment));
        return GarmentPlanner.Plan(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Project!).Plan!;
    }

    private static Plan PlanOf(string garment)
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("garment", JsonNode.Parse(garment));
        if (!Repertoire.All.First(k => k.Name == document.Typed("garment.shape")).IsToBody)
            document.Set("sizes", null);
        return GarmentPlanner.Plan(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Project!).Plan!;
    }

    /// <summary>A person is the same on both sides, and from the crown to the shoulders her outline runs outwards and down.</summary>
    [Theory]
    [InlineData("skirt")]
    [InlineData("off-shoulder-top")]
    public void The_figure_is_alike_on_both_sides_and_as_wide_as_its_measures(string kind)
    {
        var plan = PlanOf(kind, Direction.Up);
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            var points = drawing.Outlines.Where(o => o.Kind == "body").SelectMany(o => o.Points).ToArray();
            var middle = drawing.Patches.Where(p => p.Turns == 0).Min(p => p.X) + drawing.Patches.Where(p => p.Turns == 0).Max(p => p.X + p.Width);
            middle /= 2;
            var crown = points.Min(p => p.Y);
            // The head is 23 cm above the shoulders, and the bust's girth is seen as 0.37 of itself.
            var under = crown + 23 + 0.48 * size.Body["backWaistLength"].Centimetres;
            if (kind == "skirt")
                Assert.Contains(points, p => Math.Abs(p.Y - under) < 0.01 && Math.Abs(p.X - middle - 0.185 * size.Body["bust"].Centimetres) < 0.01);
            var upper = points.Where(p => p.Y < crown + 23 + 4).ToArray();
            Assert.All(upper, p => Assert.Contains(upper, o => Math.Abs(o.X + p.X - 2 * middle) < 0.02 && Math.Abs(o.Y - p.Y) < 0.02));
            var right = upper.Where(p => p.X >= middle - 1e-9).ToArray();
            Assert.All(right.Zip(right.Skip(1)), p => Assert.True(p.Second.Y > p.First.Y - 0.02, $"{p}"));
            // The neck is narrower than the head, and the shoulders are wider than both.
            double Wide(double from, double to) => right.Where(p => p.Y >= crown + from && p.Y <= crown + to).Max(p => p.X) - middle;
            Assert.True(Wide(18, 22) < Wide(4, 12) && Wide(4, 12) < Wide(24, 27));
        }
    }

    /// <summary>Cuffs are at the hands: the outer ends of the sleeves, on either side.</summary>
    [Fact]
    public void Cuffs_are_edged_at_the_outer_ends_of_the_sleeves()
    {
        var plan = PlanOf("""{ "shape": "pullover", "sleeves": {}, "direction": "up", "edgings": [{ "where": "cuffs", "edging": "sc" }] }""");
        foreach (var size in plan.Sizes)
        {
            foreach (var drawing in Sides(plan, size))
            {
                var depth = size.Edgings.Single().Depth.Centimetres;
                var (left, right) = (drawing.Patches[1], drawing.Patches[2]);
                var bands = drawing.Outlines.Where(o => o.Kind == "edging").Select(o => (o.Points.Min(p => p.X), o.Points.Max(p => p.X))).Order().ToArray();
                Assert.Equal(2, bands.Length);
                Assert.Equal((left.X - depth, left.X), bands[0], (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
                Assert.Equal((right.X + right.Width, right.X + right.Width + depth), bands[1], (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
            }
        }
    }

    /// <summary>A tab holds a tabard together in the middle of its height: the side above it is edged as an armhole, as long as that below.</summary>
    [Fact]
    public void A_tabards_armholes_are_edged_above_the_tabs()
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == "tabard"));
        var plan = GarmentPlanner.Plan(project with
        {
            Garment = project.Garment with { Direction = Direction.Up, Edgings = [new(Core.Edgings.EdgingPlace.Armholes, "sc-rows", null)] },
        }).Plan;
        plan ??= GarmentPlanner.Plan(project with
        {
            Garment = project.Garment with { Direction = Direction.Up, Edgings = [new(Core.Edgings.EdgingPlace.Armholes, "sc", null)] },
        }).Plan!;
        foreach (var size in plan.Sizes)
        {
            var drawing = WornGarment.Front(plan, size);
            var (front, depth) = (drawing.Patches[0], size.Edgings.Single().Depth.Centimetres);
            var beside = (front.Height - size.Finished[GarmentMeasure.TabJoin].Centimetres) / 2;
            var bands = drawing.Outlines.Where(o => o.Kind == "edging").Select(o => (
                X: o.Points.Min(p => p.X), Y: o.Points.Min(p => p.Y), W: o.Points.Max(p => p.X) - o.Points.Min(p => p.X), H: o.Points.Max(p => p.Y) - o.Points.Min(p => p.Y)))
                .OrderBy(b => b.X).ToArray();
            Assert.Equal(2, bands.Length);
            Assert.Equal([-depth, front.Width], bands.Select(b => b.X - front.X), (a, b) => Math.Abs(a - b) < 1e-6);
            Assert.All(bands, b => Assert.Equal((front.Y, depth, beside), (b.Y, b.W, b.H), (a, c) => Math.Abs(a.Item1 - c.Item1) + Math.Abs(a.Item2 - c.Item2) + Math.Abs(a.Item3 - c.Item3) < 1e-6));
        }
    }

    /// <summary>A border goes round the corners: its strips above and below are longer than the piece by its depth at either end.</summary>
    [Fact]
    public void A_border_frames_a_blanket_with_its_corners()
    {
        var plan = PlanOf("""{ "shape": "blanket", "width": "100 cm", "length": "120 cm", "edgings": [{ "where": "border", "edging": "sc" }] }""");
        var drawing = WornGarment.Front(plan, plan.Sizes[0]);
        var (patch, depth) = (Assert.Single(drawing.Patches), plan.Sizes[0].Edgings.Single().Depth.Centimetres);
        var strips = drawing.Outlines.Where(o => o.Kind == "edging").Select(o => (
            X: o.Points.Min(p => p.X), Y: o.Points.Min(p => p.Y), W: o.Points.Max(p => p.X) - o.Points.Min(p => p.X), H: o.Points.Max(p => p.Y) - o.Points.Min(p => p.Y))).ToArray();
        Assert.Equal(4, strips.Length);
        var across = strips.Where(s => s.W > s.H).OrderBy(s => s.Y).ToArray();
        Assert.Equal([-depth, patch.Height], across.Select(s => s.Y), (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.All(across, s => Assert.Equal((-depth, patch.Width + 2 * depth, depth), (s.X, s.W, s.H), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-6));
        var down = strips.Where(s => s.W < s.H).OrderBy(s => s.X).ToArray();
        Assert.Equal([-depth, patch.Width], down.Select(s => s.X), (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.All(down, s => Assert.Equal((depth, patch.Height), (s.W, s.H), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6));
    }

    /// <summary>In front the first half of every round is seen, behind the second half of it, each in the middle of its line.</summary>
    [Fact]
    public void A_flared_tube_shows_the_halves_of_every_round()
    {
        var plan = PlanOf(Shapes[6]);
        var size = plan.Sizes[1];
        var whole = WornPiece.Of(plan, size.Pieces[0]);
        var (front, behind) = (WornGarment.Front(plan, size).Patches[0], WornGarment.Behind(plan, size)!.Patches[0]);
        for (var y = 0; y < whole.Rows; y++)
        {
            byte[] Worked(IEnumerable<byte> line) => [.. line.Where(c => c != WornPiece.Empty)];
            var round = Worked(whole.Cells.Slice(y * whole.Columns, whole.Columns).ToArray());
            Assert.Equal(round[..(round.Length / 2)], Worked(front.Cells[(y * front.Columns)..((y + 1) * front.Columns)]));
            Assert.Equal(round[^(round.Length / 2)..], Worked(behind.Cells[(y * behind.Columns)..((y + 1) * behind.Columns)]));
        }
    }

    [Fact]
    public void A_drawing_is_given_to_a_page_in_centimetres_with_its_proportions()
    {
        var plan = PlanOf(Shapes[4]);
        var drawing = WornGarment.Front(plan, plan.Sizes[0]);
        Assert.Equal(string.Join(' ', new[] { drawing.Left, drawing.Top, drawing.Width, drawing.Height }.Select(n => n.ToString("0.###", CultureInfo.InvariantCulture))), drawing.ViewBox);
        Assert.Equal(
            FormattableString.Invariant($"aspect-ratio:{drawing.Width:0.##}/{drawing.Height:0.##};--ratio:{drawing.Width / drawing.Height:0.####}"), drawing.Proportions);
        Assert.Equal("M1 2L3.5 4Z", new GarmentLine("edge", [(1, 2), (3.5, 4)]).Path);
        Assert.Equal("M1 2L3.5 4", new GarmentLine("opening", [(1, 2), (3.5, 4)], false).Path);
        Assert.False(drawing.IsOnFigure);
    }
}
