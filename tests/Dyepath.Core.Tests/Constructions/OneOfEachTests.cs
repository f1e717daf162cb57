using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>One of each garment, with one of each neck, in two sizes and each direction, edged all round: quick, so that every run has them.</summary>
public sealed class OneOfEachTests
{
    /// <summary>By name and direction: several tests read the same plan, and tests of one class run one after another.</summary>
    private static readonly Dictionary<(string, Direction), Plan> Plans = [];

    public static TheoryData<string, Direction> Garments => [.. from name in new[]
        {
            "pullover, boat", "pullover, buttoned", "tunic, v", "vest, square", "vest, v-insert", "cardigan, round", "cardigan, v", "off-shoulder-dress", "tabard",
            "pet-tabard", "poncho", "skirt", "hat", "shawl", "bias-wrap", "cushion", "bag",
        }
        from direction in new[] { Direction.Up, Direction.Sideways } select (name, direction)];

    /// <summary>The plan by other routes, and its booklet read back.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void Plan_and_words_agree(string name, Direction direction) => GarmentTrials.Check(PlanOf(name, direction));

    /// <summary>Beside the hook every row of every piece and every round of every edging comes once, in order, under its own name.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void Beside_the_hook_rows_come_in_order(string name, Direction direction)
    {
        var plan = PlanOf(name, direction);
        var size = plan.Sizes[^1];
        var order = MakingOrder.Of(plan, size.Name);
        var say = new Wording([size.Name], plan.Project.Edition with { Terms = Terms.Us, Size = null });
        foreach (var part in order.Parts)
        {
            var rows = part.Steps.OfType<RowStep>().ToArray();
            Assert.Equal(Enumerable.Range(0, part.Rows), rows.Select(r => r.Row));
            var labels = rows.Select(r => Regex.Match(say.Text(r.Label), @"^(Row|Round) (\d+)")).ToArray();
            Assert.All(labels, l => Assert.True(l.Success, name));
            // Of a part that is joined on above another, rows are counted on from below.
            var first = rows.Length == 0 ? 1 : Number(labels[0]);
            Assert.Equal(Enumerable.Range(first, rows.Length), labels.Select(Number));
            if (part.Piece is { } piece)
                Assert.All(labels, l => Assert.Equal(piece.Working == Working.Turned ? "Row" : "Round", l.Groups[1].Value));
            else
                Assert.All(labels, l => Assert.Equal(part.InRows ? "Row" : "Round", l.Groups[1].Value));
        }
        foreach (var piece in size.Pieces)
        {
            var worked = order.Parts.Where(p => p.Piece?.Id == piece.Id).Sum(p => p.Rows);
            Assert.Equal(piece.Copies * (piece.Shape?.Parts.Sum(p => p.Rows) ?? piece.Rows), worked);
        }
        foreach (var edging in size.Edgings.Where(e => !EdgingLibrary.Find(e.Edging).Across))
        {
            var parts = order.Parts.Where(p => p.Piece is null && p.Rows > 0 && say.Text(p.Title).StartsWith(
                $"{Instructions(edging.Where)}: ", StringComparison.OrdinalIgnoreCase)).ToArray();
            Assert.Equal((edging.Where, edging.Copies), (edging.Where, parts.Length));
            Assert.All(parts, p => Assert.Equal((edging.Rounds, EdgingLibrary.Find(edging.Edging).InRows), (p.Rows, p.InRows)));
        }

        static int Number(Match label) => int.Parse(label.Groups[2].Value, CultureInfo.InvariantCulture);

        static string Instructions(EdgingPlace place) => EdgingPlaces.Words(place);
    }

    /// <summary>
    /// On the ruler two counts are as far apart for every size as for any other, whatever rounds of edging a size has; its own count lies
    /// where the size came out.
    /// </summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void On_the_ruler_a_sizes_rounds_move_every_count_alike(string name, Direction direction)
    {
        foreach (var ruler in PlanOf(name, direction).Options.Where(o => o.Feasible).Select(o => o.Ruler))
        {
            foreach (var size in ruler.Sizes)
            {
                var choice = size.Choice!;
                if (choice.Front != choice.Back || choice.SideBandRows > 0 || ruler.Counts.FirstOrDefault(choice.IsOn) is not { } own)
                    continue;
                Assert.Equal(choice.Finished, ruler.Finished(size, own));
                Assert.All(ruler.Counts, count => Assert.Equal(
                    (count.Finished - own.Finished).Centimetres, (ruler.Finished(size, count) - choice.Finished).Centimetres, 1e-6));
            }
        }
    }

    /// <summary>
    /// The outline that is drawn of a piece has its area: of a rectangle its width by its height, of a shaped one the share of it that is
    /// worked, and of a triangle half of it and half of its tip's.
    /// </summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void An_outline_has_the_area_of_its_stitches(string name, Direction direction)
    {
        var plan = PlanOf(name, direction);
        foreach (var piece in plan.Sizes.SelectMany(s => s.Pieces).Where(p => plan.Construction.GroupOf(p.Id).Gores is null))
        {
            var points = WornOutline.Of(plan, piece).Points;
            var area = Math.Abs(points.Zip(points.Skip(1).Append(points[0]), (a, b) => a.X * b.Y - b.X * a.Y).Sum()) / 2;
            var all = piece.Width.Centimetres * piece.Height.Centimetres;
            var worked = piece.Taper is { } taper ? (1 + 1.0 / taper.Stitches) / 2
                : piece.Shape is not { } shape ? 1
                : shape.Parts.Sum(p => Enumerable.Range(0, p.Outline.Rows).Sum(r => p.Outline.At(r).Units))
                    / ((double)piece.Rows * (shape.LastColumn - shape.FirstColumn + 1));
            Assert.Equal(all * worked, area, 0.01 * all);
            Assert.Equal((0.0, 0.0), (Math.Round(points.Min(p => p.X), 6), Math.Round(points.Min(p => p.Y), 6)));
            Assert.Equal(piece.Width.Centimetres, points.Max(p => p.X), 1e-6);
            Assert.Equal(piece.Height.Centimetres, points.Max(p => p.Y), 1e-6);
        }
    }

    private static Plan PlanOf(string name, Direction direction)
    {
        if (!Plans.TryGetValue((name, direction), out var plan))
            Plans.Add((name, direction), plan = Of(name, direction).Planned());
        return plan;
    }

    private static Project Of(string name, Direction direction)
    {
        var (garment, form) = name.Split(", ") is [var kind, var word] ? (kind, Neck.Forms.First(f => f.Word == word).Form) : (name, NeckForm.Slit);
        var project = GarmentTrials.WithCompanion(Begun(garment, "sc", even: true, direction));
        project = project.With(g => g with
        {
            Shape = g.Shape switch
            {
                BoxyTop top => top with { Neck = top.Neck with { Form = form } },
                Vest vest => vest with { Neck = vest.Neck with { Form = form } },
                Cardigan cardigan => cardigan with { Neck = cardigan.Neck with { Form = form } },
                Skirt skirt when direction == Direction.Sideways => skirt with { Flare = Cm(24) },
                Hat hat when direction == Direction.Sideways => hat with { Gored = true },
                var other => other,
            },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        var construction = project.Garment.Shape.Construct(project.Garment);
        EdgingPlace[] places = [.. construction.Edgings.Select(e => e.Place).Where(p => construction.Held?.Place != p).Distinct()];
        var held = project.Garment.Edgings.Where(e => construction.Held?.Place == e.Where).ToArray();
        project = GarmentTrials.Edged(project, direction, places).With(g => g with { Edgings = [.. held, .. g.Edgings] });
        return project.Garment.Shape.IsToBody
            ? project with { Sizes = project.Sizes with { Sizes = [.. project.Sizes.Names(toBody: true).Take(2)], Base = null } } : project;
    }
}
