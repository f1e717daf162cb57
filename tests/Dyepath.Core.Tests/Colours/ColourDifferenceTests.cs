using CsCheck;
using Dyepath.Core.Colours;
using Dyepath.Core.Tests.Data;

namespace Dyepath.Core.Tests.Colours;

public sealed class ColourDifferenceTests
{
    private static readonly Gen<Lab> AnyLab = Gen.Select(
        Gen.Double[0, 100], Gen.Double[-128, 128], Gen.Double[-128, 128], Lab.FromComponents);

    [Fact]
    public void All_34_published_pairs_come_out_both_ways()
    {
        // Sharma, Wu, Dalal 2005, table 1, four decimals.
        var pairs = PublishedTable.Read("ciede2000_sharma2005");
        Assert.Equal(34, pairs.Count);
        foreach (var row in pairs)
        {
            var first = Lab.FromComponents(row.Number("L1"), row.Number("a1"), row.Number("b1"));
            var second = Lab.FromComponents(row.Number("L2"), row.Number("a2"), row.Number("b2"));
            Assert.Equal(row.Number("dE00"), ColourDifference.DeltaE2000(first, second), 1e-4);
            Assert.Equal(row.Number("dE00"), ColourDifference.DeltaE2000(second, first), 1e-4);
        }
    }

    [Fact]
    public void Difference_is_symmetric_and_zero_for_the_same_colour() =>
        Gen.Select(AnyLab, AnyLab).Holds(pair =>
        {
            var (first, second) = pair;
            var (there, back) = (ColourDifference.DeltaE2000(first, second), ColourDifference.DeltaE2000(second, first));
            return double.IsFinite(there) && there >= 0 && Math.Abs(there - back) < 1e-9
                && ColourDifference.DeltaE2000(first, first) == 0;
        }, seed: 3, cases: 1_000);

    [Fact]
    public void Between_greys_only_the_weighted_lightness_is_left() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100]).Holds(pair =>
        {
            var (first, second) = pair;
            var offset = Math.Pow((first + second) / 2 - 50, 2);
            var expected = Math.Abs(first - second) / (1 + 0.015 * offset / Math.Sqrt(20 + offset));
            var actual = ColourDifference.DeltaE2000(Lab.FromComponents(first, 0, 0), Lab.FromComponents(second, 0, 0));
            return Math.Abs(expected - actual) < 1e-9;
        }, seed: 4, cases: 1_000);

    [Fact]
    public void Far_corners_of_the_space_give_a_number()
    {
        double[] ends = [-200, 0, 200];
        foreach (var a in ends)
        {
            foreach (var b in ends)
                Assert.True(double.IsFinite(ColourDifference.DeltaE2000(Lab.FromComponents(0, a, b), Lab.FromComponents(100, -b, a))));
        }
    }
}
