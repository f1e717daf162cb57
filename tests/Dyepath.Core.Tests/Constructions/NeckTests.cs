using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Shaping;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>Every form of a neck, from its document to its words.</summary>
public sealed class NeckTests
{
    /// <summary>By form, none of a vest: several tests read the same plan, and tests of one class run one after another.</summary>
    private static readonly Dictionary<(NeckForm?, string, bool, Direction), Plan> Plans = [];

    private static IEnumerable<NeckForm> Forms => Enum.GetValues<NeckForm>();

    public static TheoryData<NeckForm, string, bool, Direction> Ways() => [.. Extent.Half(from form in Forms
        from way in new[] { ("sc", true, Direction.Up), ("sc", true, Direction.Sideways), ("sc", false, Direction.Up), ("hdc", true, Direction.Up), ("dc", true, Direction.Sideways) }
        select (form, way.Item1, way.Item2, way.Item3))];

    public static TheoryData<NeckForm, string> FormsAndCharts => [.. from form in Forms from chart in SizeCharts.All select (form, chart.Id)];

    /// <summary>The plan by other routes, and the booklet read back.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void The_plan_and_its_words_agree(NeckForm form, string stitch, bool even, Direction direction) => GarmentTrials.Check(PlanOf(form, stitch, even, direction));

    /// <summary>With sleeves and every edging.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void So_do_those_of_a_tunic_with_sleeves_and_edgings(NeckForm form, string stitch, bool even, Direction direction)
    {
        var project = Of(form, stitch, even, direction, "tunic").With(g => g with { Shape = (BoxyTop)g.Shape with { Sleeves = new SleeveSpec(true, Cm(4)) } });
        var plan = GarmentTrials.Check(GarmentTrials.Edged(project, direction, [EdgingPlace.Hem, EdgingPlace.Neck, .. form == NeckForm.Buttoned ? [EdgingPlace.Shoulder] : Array.Empty<EdgingPlace>(), EdgingPlace.Cuffs]));
        Assert.All(plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{s.Name}: {fit}")));
    }

    /// <summary>Edges that are sewn to each other have as many row ends or stitches, or the longer one would hang loose.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Shoulders_of_front_and_back_are_as_long_as_each_other(NeckForm form, string stitch, bool even, Direction direction)
    {
        foreach (var plan in new[] { PlanOf(form, stitch, even, direction), PlanOf(null, stitch, even, direction) })
        {
            foreach (var size in plan.Sizes)
            {
                Assert.All(size.Seams.Where(s => s.Id is SeamId.LeftShoulder or SeamId.RightShoulder), seam => Assert.True(
                    seam.First.Sum(r => r.Count) == seam.Second.Sum(r => r.Count),
                    $"{plan.Project.Title}, size {size.Name}, {seam.Where}: {seam.First.Sum(r => r.Count)} against {seam.Second.Sum(r => r.Count)}"));
            }
        }
    }

    [Theory]
    [InlineData(NeckForm.Slit)]
    [InlineData(NeckForm.Square)]
    [InlineData(NeckForm.Round)]
    public void A_neck_that_leaves_no_shoulders_is_refused(NeckForm form)
    {
        foreach (var direction in Enum.GetValues<Direction>())
        {
            var pullover = Of(form, "sc", true, direction).With(g => g with { Shape = (BoxyTop)g.Shape with { Neck = ((BoxyTop)g.Shape).Neck with { Width = Cm(60) } } });
            var vest = Begun("vest", "sc", true, direction).With(g => g with { Shape = (Vest)g.Shape with { Neck = ((Vest)g.Shape).Neck with { Width = Cm(60) } } });
            foreach (var project in new[] { pullover, vest })
            {
                var result = GarmentPlanner.Plan(project);
                Assert.Null(result.Plan);
                Assert.Contains(result.Reasons, f => f.Text.Contains("leaves no shoulders: make it narrower", StringComparison.Ordinal));
            }
        }
    }

    /// <summary>Where the motif is kept, what cut and uncut piece share has the same colours, stitch by stitch along the yarn.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void What_cut_and_uncut_pieces_share_is_one_fabric(NeckForm form, string stitch, bool even, Direction direction)
    {
        var plan = PlanOf(form, stitch, even, direction);
        var ring = plan.Sequence.Ring;
        foreach (var piece in plan.Sizes.SelectMany(s => s.Pieces).Where(p => p.Shape is not null))
        {
            var brute = new BruteShape([.. ring.Sections.Select(s => (int)(s / ColourRing.Unit))], ColourRing.ToMicro(piece.TurnCost));
            var uncut = brute.Uncut(piece.Stitches, ColourRing.ToMicro(piece.Start));
            foreach (var part in piece.Shape!.Parts.Where(_ => piece.Shape.KeepsMotif))
            {
                for (var row = 0; row < part.Rows; row++)
                {
                    for (var column = part.Outline.At(row).First; column <= part.Outline.At(row).Last; column++)
                        Assert.Equal(ring.Colours[uncut(part.FirstRow + row, column)], ring.Colours[part.Fabric[row, column]]);
                }
            }
        }
    }

    /// <summary>In every size of every chart, with nothing said but the form, whichever way it is worked; in part, one way each in turn, in the smallest size, the largest and one between in turn.</summary>
    [Theory]
    [MemberData(nameof(FormsAndCharts))]
    public void The_head_enters(NeckForm form, string chart)
    {
        var turn = (int)form + SizeCharts.All.ToList().FindIndex(c => c.Id == chart);
        foreach (var direction in Enum.GetValues<Direction>().Where((_, i) => Extent.IsWhole || i == turn % 2))
        {
            var project = Of(form, "sc", true, direction) with { Sizes = new SizeSelection(chart, Extent.IsWhole ? [] : Sample(chart, turn), [], null, [], []) };
            var plan = project.With(g => g with { Shape = (BoxyTop)g.Shape with { BustEase = new Ease("loose", "newer", null) } }).Planned();
            Assert.All(plan.Sizes, s => Assert.Contains(s.Worn, fit => fit.Body == BodyMeasure.Head));
            Assert.All(plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{direction}, {s.Name}: {fit}")));
        }
    }

    private static ImmutableArray<string> Sample(string chart, int turn)
    {
        ImmutableArray<string> names = [.. SizeCharts.All.First(c => c.Id == chart).Sizes.Select(s => s.Name)];
        return [.. new[] { 0, turn % names.Length, names.Length - 1 }.Distinct().Order().Select(i => names[i])];
    }

    /// <summary>0.72 of the cross back of 36.25 to 47 cm; 30 cm and 0.5 a size where a size of the designer's own has none.</summary>
    [Fact]
    public void A_boat_neck_follows_the_shoulders()
    {
        var project = Of(NeckForm.Boat, "sc", true, Direction.Sideways) with { Sizes = new SizeSelection("women", ["XS", "M", "5X"], [], null, [], []) };
        var plan = project.Planned();
        Assert.Equal([26.1, 29.7, 33.84], plan.Sizes.Select(s => Math.Round(s.Target[GarmentMeasure.NeckWidth].Centimetres, 2)));
        Assert.All(plan.Sizes, s => Assert.Contains(s.Worn, f => f is { Part: FitPart.ShouldersBesideBoatNeck, Holds: true }));
        var wide = project.With(g => g with { Shape = (BoxyTop)g.Shape with { Neck = new Neck(NeckForm.Boat, Cm(38)) { Step = Length.Zero } } }).Planned();
        Assert.Contains(wide.Findings, f => f.Place == "garment.neckWidth" && f.Text.Contains("XS", StringComparison.Ordinal) && f.Text.Contains("make the neck narrower", StringComparison.Ordinal));
    }

    /// <summary>A small neck and an open shoulder beside it: one seam, one band, its buttonholes in front, nothing round the neck.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_shoulder_is_buttoned(Direction direction)
    {
        var project = GarmentTrials.Edged(Of(NeckForm.Buttoned, "sc", true, direction) with { Sizes = new SizeSelection("baby", [], [], null, [], []) }, direction, EdgingPlace.Shoulder);
        var plan = GarmentTrials.Check(project);
        Assert.DoesNotContain(plan.Findings, f => f.Place == "garment.edgings");
        foreach (var size in plan.Sizes)
        {
            Assert.False(size.Seams.Single(s => s.Id == SeamId.LeftShoulder).IsSewn);
            Assert.True(size.Seams.Single(s => s.Id == SeamId.RightShoulder).IsSewn);
            // The head needs more than the neck alone.
            Assert.True(2.2 * size.Finished[GarmentMeasure.NeckWidth] < size.Body["head"]);
            Assert.Contains(size.Worn, f => f is { Body: BodyMeasure.Head, Holds: true });
            var shoulder = size[PieceId.Front].Openings.Single(o => o.Id == OpeningId.Neck);
            var band = size.Edgings.Single();
            Assert.Equal((EdgingPlace.Shoulder, 1), (band.Where, band.Copies));
            // All that lies between the neck and the side but what the side seam hides.
            var all = direction == Direction.Up ? size[PieceId.Front].Stitches : size[PieceId.Front].Rows;
            Assert.Equal(all - shoulder.Last - 1, band.Spread.Stretches.Sum(s => s.Stretch.Places));
        }
        var text = GarmentTrials.Text(plan);
        Assert.Contains("at the armhole end of the wearer's left shoulder of the front, ", text, StringComparison.Ordinal);
        // The neck's last row is marked; all of the shoulder's rows but the one in the armhole's seam lie beyond it.
        foreach (var size in plan.Sizes.Where(_ => direction == Direction.Sideways))
        {
            var alone = Regex.Replace(TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = size.Name }), @"\s+", " ");
            var along = Regex.Match(alone, "of the front, along its rows ([0-9]+) to ([0-9]+)\\.");
            var ends = Regex.Match(alone, "Mark: row ([0-9]+) at the top edge, where odd-numbered rows end: neck opening ends here");
            Assert.Equal(int.Parse(ends.Groups[1].Value, CultureInfo.InvariantCulture) + 1, int.Parse(along.Groups[1].Value, CultureInfo.InvariantCulture));
            Assert.Equal(size[PieceId.Front].Rows - 1, int.Parse(along.Groups[2].Value, CultureInfo.InvariantCulture));
        }
        // The right shoulder, the band, its lap, the sleeves: in this order.
        Assert.Matches(
            "Sew the right shoulder .* [0-9]: Wearer's left shoulder: work the shoulder's band now, as under Edgings\\. Lay it on the outside of the back, and at the armhole sew its end down through both layers for 1 cm\\. [0-9]: (Sleeves: .*, on the left at the edge of the band that is lapped there, and sew|Sides: )", text);
        Assert.Matches("Row 1: Ch 1, .* Row 2: Ch 1, .* Row 3: Ch 1, sc in each of the first .* Rows 4 to 5: Ch 1, ", text);
        Assert.Matches("Buttons: 1, (8|9|[0-9]{2}) mm across, so that they pass a buttonhole of 2 stitches; sewing thread", text);
        Assert.Matches(
            @"Buttonholes: 1 in the band of the front, in row 3(\. It begins [^.]*(\.[0-9][^.]*)* from the armhole end|, about .* from middle to middle)\.", text);
        Assert.Contains("The band lies on the back, which takes the buttons.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("On the band for the buttons", text, StringComparison.Ordinal);
        Assert.Contains("Sew the right shoulder from its outer edge to the mark of the neck opening", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"Colours [^.]*the left shoulder", text);
        var open = project.With(g => g with { Edgings = [] }).Planned();
        Assert.Contains(open.Findings, f => f.Place == "garment.edgings" && f.Text.StartsWith("Nothing closes the left shoulder of the front", StringComparison.Ordinal));
    }

    /// <summary>Beside it the neck is edged first, in rows from the open shoulder round to it again; the band's inner end is sewn to them.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void The_neck_beside_a_buttoned_shoulder_is_edged_in_rows(Direction direction)
    {
        var project = GarmentTrials.Edged(Of(NeckForm.Buttoned, "sc", true, direction), direction, EdgingPlace.Neck, EdgingPlace.Shoulder);
        var plan = GarmentTrials.Check(project);
        Assert.All(plan.Sizes, s => Assert.Equal([EdgingPlace.Neck, EdgingPlace.Shoulder], s.Edgings.Select(e => e.Where)));
        foreach (var size in plan.Sizes)
        {
            var neck = size[PieceId.Front].Opening(OpeningId.Neck).Length + size[PieceId.Back].Opening(OpeningId.Neck).Length;
            Assert.Equal(neck, size.Edgings[0].Spread.Stretches.Sum(s => s.Stretch.Places));
        }
        var text = GarmentTrials.Text(plan);
        Assert.Contains("facing at the left shoulder's end of the front neck.", text, StringComparison.Ordinal);
        Assert.Contains("which takes the buttons; sew its inner end to the end of the neck edging.", text, StringComparison.Ordinal);
        Assert.Contains(
            project.With(g => g with { Edgings = [new(EdgingPlace.Neck, "sc", null)] }).Tried().Reasons, r => r.Text.Contains("the ends of this edge do not meet: choose sc-rows.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("slit", "shoulder", "button-band")]
    public void An_edge_that_the_form_has_not_is_not_edged(string form, string where, string edging) => Assert.Contains(
        GarmentTrials.Faults($$"""  "shape": "pullover", "neck": "{{form}}", "edgings": [{ "where": "{{where}}", "edging": "{{edging}}" }]  """),
        f => f.Contains("edgings[0].where", StringComparison.Ordinal));

    /// <summary>A V has a wide top and a narrow bottom, a round neck is wider below than a V, and neither side is more than a step off the other.</summary>
    [Theory]
    [InlineData(NeckForm.Round)]
    [InlineData(NeckForm.V)]
    public void A_neck_that_is_not_square_narrows_downwards(NeckForm form)
    {
        foreach (var size in Of(form, "sc", true, Direction.Up).Planned().Sizes)
        {
            var parts = size[PieceId.Front].Shape!.Parts;
            var (body, sides) = (parts[0], parts[1..]);
            var widths = Enumerable.Range(0, sides.Min(s => s.Rows)).Select(row => body.Outline.At(body.Rows - 1).Units - sides.Sum(s => s.Outline.At(row).Units)).ToArray();
            Assert.True(widths[0] < widths[^1], string.Join(" ", widths));
            Assert.Equal(widths.Order(), widths);
        }
    }

    [Theory]
    [InlineData("square", null)]
    [InlineData("square", "15 cm")]
    [InlineData("boat", null)]
    [InlineData("buttoned", null)]
    [InlineData("round", "15 cm")]
    [InlineData("v", null)]
    public void A_form_is_read_and_written(string form, string? depth)
    {
        var document = $$"""{ "shape": "pullover", "neck": "{{form}}"{{(depth is null ? "" : $", \"neckDepth\": \"{depth}\"")}} }""";
        var garment = Read(document);
        var neck = ((BoxyTop)garment.Shape).Neck;
        Assert.Equal(form, neck.Form.ToString().ToLowerInvariant());
        Assert.Equal(depth is null ? null : Cm(15), neck.Depth);
    }

    /// <summary>A document that says nothing of a form has the slit that it always had.</summary>
    [Fact]
    public void Without_a_form_it_is_a_slit()
    {
        var neck = ((BoxyTop)Read("""{ "shape": "tunic", "neckWidth": "24 cm", "neckStep": "1 cm" }""").Shape).Neck;
        Assert.Equal(new Neck(NeckForm.Slit, Cm(24)) { Step = Cm(1) }, neck);
    }

    private static GarmentSpec Read(string garment)
    {
        var document = System.Text.Json.Nodes.JsonNode.Parse(ProjectWriter.Write(StarterDocument.Project))!;
        document["garment"] = System.Text.Json.Nodes.JsonNode.Parse(garment);
        var reading = ProjectReader.Read(System.Text.Encoding.UTF8.GetBytes(document.ToJsonString()));
        Assert.Empty(reading.Faults);
        var read = reading.Project!;
        Assert.Equal(read.Garment.Shape, ProjectReader.Read(ProjectWriter.WriteUtf8(read)).Project!.Garment.Shape);
        return read.Garment;
    }

    private static Plan PlanOf(NeckForm? form, string stitch, bool even, Direction direction)
    {
        if (!Plans.TryGetValue((form, stitch, even, direction), out var plan))
        {
            var project = form is { } neck ? Of(neck, stitch, even, direction) : Begun("vest", stitch, even, direction);
            Plans.Add((form, stitch, even, direction), plan = project.Planned());
        }
        return plan;
    }

    internal static Project Of(NeckForm form, string stitch, bool even, Direction direction, string garment = "pullover")
    {
        var project = Begun(garment, stitch, even, direction);
        return (form == NeckForm.VInsert ? GarmentTrials.WithCompanion(project) : project) with
        {
            Garment = project.Garment with
            {
                Shape = (BoxyTop)project.Garment.Shape with { Neck = new Neck(form, null) },
                Grading = project.Garment.Grading with { UnevenWidths = true, SeveralLeans = true },
            },
        };
    }
}
