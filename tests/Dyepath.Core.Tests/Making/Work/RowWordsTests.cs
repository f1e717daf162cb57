using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Making.Work;

/// <summary>
/// What is read beside the hook. A row of n stitches over a sequence of C begins n further along the yarn than the one below; two rows,
/// 2n. Where that is one more than whole sequences, every colour has come one stitch too soon.
/// </summary>
public sealed class RowWordsTests
{
    private static readonly ColourRing Ring = ColourRing.FromUnits([5, 4, 3, 5, 4]);

    [Theory]
    [InlineData(Working.Turned, 32, "Each colour begins one stitch earlier than two rows below.")]
    [InlineData(Working.Turned, 31, "Each colour begins one stitch later than two rows below.")]
    [InlineData(Working.Turned, 22, "Each colour begins 2 stitches earlier than two rows below.")]
    [InlineData(Working.Turned, 20, "Each colour begins 2 stitches later than two rows below.")]
    [InlineData(Working.Turned, 21, "Every colour begins where it did two rows below.")]
    [InlineData(Working.RoundsTurned, 32, "Each colour begins one stitch earlier than two rounds below.")]
    [InlineData(Working.RoundsTurned, 21, "Every colour begins where it did two rounds below.")]
    [InlineData(Working.Rounds, 22, "Each colour begins one stitch earlier than in the round below.")]
    [InlineData(Working.Rounds, 20, "Each colour begins one stitch later than in the round below.")]
    [InlineData(Working.Spiral, 18, "Each colour begins 3 stitches later than in the round below.")]
    [InlineData(Working.Spiral, 21, "Every colour begins where it did in the round below.")]
    public void Colours_begin_earlier_where_the_row_is_too_long_for_the_sequence(Working working, int stitches, string said) =>
        Assert.Equal(said, RowWords.SayEarlier(Fabric(working, stitches), 4));

    /// <summary>Two rows of 21 are two sequences, and two turns come on top.</summary>
    [Theory]
    [InlineData(0.5, "Each colour begins one stitch earlier than two rows below.")]
    [InlineData(0.25, "Each colour begins half a stitch earlier than two rows below.")]
    [InlineData(-0.25, "Each colour begins half a stitch later than two rows below.")]
    [InlineData(0.15, "Each colour begins about 0.3 stitches earlier than two rows below.")]
    [InlineData(0.7, "Each colour begins about 1.4 stitches earlier than two rows below.")]
    [InlineData(0.05, "Every colour begins where it did two rows below.")]
    public void Parts_of_a_stitch_are_said_as_one_sees_them(double turn, string said) =>
        Assert.Equal(said, RowWords.SayEarlier(Fabric(Working.Turned, 21, turn: turn), 4));

    /// <summary>The first two rows have none below them that was worked the same way; of rounds, only the first.</summary>
    [Theory]
    [InlineData(Working.Turned, 2)]
    [InlineData(Working.RoundsTurned, 2)]
    [InlineData(Working.Rounds, 1)]
    [InlineData(Working.Spiral, 1)]
    public void Nothing_is_said_where_nothing_is_below(Working working, int first)
    {
        var fabric = Fabric(working, 32);
        Assert.All(Enumerable.Range(0, first), row => Assert.Equal("", RowWords.SayEarlier(fabric, row)));
        Assert.NotEqual("", RowWords.SayEarlier(fabric, first));
    }

    /// <summary>Linen is counted in pairs: 44 stitches are 22 of them.</summary>
    [Theory]
    [InlineData(44, "Each colour begins one pair earlier than in the round below.")]
    [InlineData(46, "Each colour begins 2 pairs earlier than in the round below.")]
    [InlineData(43, "Each colour begins half a pair earlier than in the round below.")]
    public void Linen_is_counted_in_pairs(int stitches, string said) =>
        Assert.Equal(said, RowWords.SayEarlier(Fabric(Working.Spiral, stitches, stitchesPerUnit: 2), 4));

    [Fact]
    public void A_row_is_read_as_counts_and_colours() => Assert.Equal(
        "3 deep water, 4 shallows, 2 foam",
        RowWords.Say([new ColourRun(0, 3), new ColourRun(1, 4), new ColourRun(2, 2)], ["deep water", "shallows", "foam"]));

    private static Core.Fabrics.Fabric Fabric(Working working, int stitches, double turn = 0, int stitchesPerUnit = 1)
    {
        var path = FabricPath.Constant(working, stitches, 6, new PathOptions { TurnCost = turn, StitchesPerUnit = stitchesPerUnit });
        return Core.Fabrics.Fabric.Work(Ring, path);
    }
}
