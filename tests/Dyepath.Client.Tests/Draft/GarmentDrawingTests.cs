using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Client.Draft;
using Dyepath.Client.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Client.Tests.Draft;

public sealed class GarmentDrawingTests
{
    private static readonly string[] Shapes =
    [
        """{ "shape": "tunic" }""", """{ "shape": "pullover", "sleeves": {}, "direction": "up" }""",
        """{ "shape": "cowl", "circumference": "66 cm", "height": "28 cm" }""", """{ "shape": "wrap", "width": "45 cm", "length": "170 cm" }""",
        """{ "shape": "blanket", "width": "100 cm", "length": "120 cm" }""",
    ];

    public static TheoryData<string> Garments => [.. Shapes];

    [Theory]
    [MemberData(nameof(Garments))]
    public void Everything_lies_within_the_view_and_no_cell_is_missing(string garment)
    {
        var plan = PlanOf(garment);
        foreach (var size in plan.Sizes)
        {
            var drawing = GarmentDrawing.Of(plan, size);
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
        var drawing = GarmentDrawing.Of(plan, size);
        var (front, sleeve) = (size.Pieces[0], size.Pieces.Single(p => p.Name == "sleeve"));
        Assert.Equal((front.Width.Centimetres, front.Height.Centimetres), (drawing.Patches[0].Width, drawing.Patches[0].Height));
        Assert.Equal((1, 3), (drawing.Patches[1].Turns, drawing.Patches[2].Turns));
        Assert.Equal(-sleeve.Height.Centimetres, drawing.Patches[1].X, 9);
        Assert.Equal(front.Width.Centimetres, drawing.Patches[2].X, 9);
        Assert.Equal(sleeve.Width.Centimetres / 2, drawing.Patches[2].Height, 9);
        // Each sleeve shows the half that lies in front of the fold at the shoulder.
        Assert.All(drawing.Patches.Skip(1), p => Assert.Equal(sleeve.Stitches / 2, p.Columns));
    }

    private static Plan PlanOf(string garment)
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("garment", JsonNode.Parse(garment));
        if (!garment.Contains("tunic", StringComparison.Ordinal) && !garment.Contains("pullover", StringComparison.Ordinal))
            document.Set("sizes", null);
        return GarmentPlanner.Plan(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Project!).Plan!;
    }
}
