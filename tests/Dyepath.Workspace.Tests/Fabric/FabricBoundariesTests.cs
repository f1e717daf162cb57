using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Workspace.Tests.Fabric;

/// <summary>Words of seams and stitches on both sides of every bound between them.</summary>
public sealed class FabricBoundariesTests
{
    private static readonly FabricStitch Single = FabricStitch.SingleCrochet;

    [Theory]
    [InlineData(0.995, "for nearly every maker")]
    [InlineData(0.9949, "for 99 makers of 100")]
    [InlineData(0.02, "for 2 makers of 100")]
    [InlineData(0.015, "for 2 makers of 100")]
    [InlineData(0.0149, "for 1 maker of 100")]
    [InlineData(0.005, "for 1 maker of 100")]
    [InlineData(0.0049, "for hardly any maker")]
    [InlineData(0.0, "for hardly any maker")]
    public void Makers_of_a_hundred(double chance, string words) => Assert.Equal(words, FabricWords.MadeWell(chance));

    [Theory]
    [InlineData(0.995, "all stitches lie at their place")]
    [InlineData(0.994, "99 % of the stitches lie at their place")]
    [InlineData(0.005, "0 % of the stitches lie at their place")]
    [InlineData(0.0049, "no stitch lies at its place")]
    public void Stitches_at_their_place(double match, string words) => Assert.Equal(words, FabricWords.Match(match));

    [Theory]
    [InlineData(1.06, " The nearest change of colour is 1.1 stitches of yarn away.")]
    [InlineData(1.05, " The nearest change of colour is 1.1 stitches of yarn away.")]
    [InlineData(1.04, " The next change of colour is 1 stitch of yarn away.")]
    [InlineData(0.96, " The next change of colour is 1 stitch of yarn away.")]
    [InlineData(0.94, " The nearest change of colour is 0.9 stitches of yarn away.")]
    [InlineData(0.5, " The nearest change of colour is 0.5 stitches of yarn away.")]
    public void The_next_change_of_colour(double away, string words)
    {
        var plan = Demo.Plan();
        var front = plan.Sizes[2].Pieces[0];
        var read = StitchReading.At(plan, WornPiece.Of(plan, front), 0, 0)! with { TwoToned = false, ToChange = away };
        Assert.EndsWith(words, FabricWords.Stitch(front, read, ("foam", "F"), [null], true, Single, Units.Centimetres), StringComparison.Ordinal);
        Assert.Contains($", row {read.Row} ", FabricWords.Stitch(front, read, ("foam", "F"), [null], true, Single, Units.Centimetres), StringComparison.Ordinal);
        // In linen stitch, worked in rounds: pairs, and no side of a row.
        var linen = FabricWords.Stitch(front, read, ("foam", "F"), [3], false, FabricStitch.Linen, Units.Centimetres);
        Assert.StartsWith($"Front, round {read.Row}, pair {read.Column} from the right: foam (F). ", linen, StringComparison.Ordinal);
        Assert.Contains(" from the piece's first stitch, ball 3.", linen, StringComparison.Ordinal);
        Assert.EndsWith(words.Replace("stitches", "pairs", StringComparison.Ordinal).Replace("stitch ", "pair ", StringComparison.Ordinal), linen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5.25, "By chance the colours would jump 5.5 stitches on average")]
    [InlineData(5.24, "By chance the colours would jump 5 stitches on average")]
    [InlineData(2, "By chance the colours would jump 2 stitches on average")]
    public void What_chance_would_give(double chance, string words) => Assert.Equal(words, FabricWords.Chance(chance, Single));

    [Theory]
    [InlineData(0.75, "the colours jump 1 stitch of yarn here")]
    [InlineData(0.74, "the colours jump 0.5 stitches of yarn here")]
    [InlineData(1.25, "the colours jump 1.5 stitches of yarn here")]
    public void Jumps_to_the_half_stitch(double jump, string words) => Assert.Equal(words, FabricWords.Jump(jump, Single));

    [Fact]
    public void A_triangle_narrows_to_one_stitch_and_a_sleeve_is_sewn_under_it()
    {
        var front = Demo.Plan().Sizes[2].Pieces[0];
        var taper = front with { Shape = null, Taper = new(19, 12, Core.Garments.PieceSide.Left) };
        Assert.Equal("19 to 1", FabricWords.Stitches(taper));
        Assert.Equal("under the right sleeve", FabricWords.Seam(Core.Garments.SeamId.RightSleeve));
        Assert.Equal(("pair", "pairs", "stitch", "stitches"), (FabricWords.Unit(FabricStitch.Linen), FabricWords.Many(FabricStitch.Linen), FabricWords.Unit(Single), FabricWords.Many(Single)));
    }
}
