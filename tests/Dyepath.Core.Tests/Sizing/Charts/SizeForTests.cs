using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Tests.Sizing.Charts;

public sealed class SizeForTests
{
    [Theory]
    [InlineData(96.5, GapRule.NearestBand, "M", BandPlace.Inside, 0)]
    [InlineData(91.5, GapRule.LargerBand, "M", BandPlace.Inside, 0)]
    [InlineData(88, GapRule.NearestBand, "S", BandPlace.InGap, 2)]
    [InlineData(88, GapRule.LargerBand, "M", BandPlace.InGap, -3.5)]
    [InlineData(88.75, GapRule.NearestBand, "M", BandPlace.InGap, -2.75)]
    [InlineData(88.9, GapRule.NearestBand, "M", BandPlace.InGap, -2.6)]
    [InlineData(90, GapRule.SmallerBand, "S", BandPlace.InGap, 4)]
    [InlineData(60, GapRule.SmallerBand, "XS", BandPlace.BelowChart, -11)]
    [InlineData(170, GapRule.LargerBand, "5X", BandPlace.AboveChart, 12)]
    public void Womens_busts_find_their_size(double bustCm, GapRule rule, string size, BandPlace place, double misfitCm)
    {
        // Craft Yarn Council bands in cm: S 81 to 86, M 91.5 to 96.5. 88.75 is halfway, 88.9 the 35 in bust of no band.
        var choice = Choose(ShippedChartsTests.Chart("women"), BodyMeasure.Bust, bustCm, rule);
        Assert.Equal((size, place), (choice.Size.Name, choice.Place));
        Assert.Equal(misfitCm, choice.Misfit.Centimetres, 1e-9);
        Assert.Empty(choice.Skipped);
    }

    [Theory]
    [InlineData(GapRule.NearestBand, "M")]
    [InlineData(GapRule.LargerBand, "M")]
    [InlineData(GapRule.SmallerBand, "S")]
    public void On_a_common_edge_the_larger_serves_unless_the_smaller_is_asked_for(GapRule rule, string size)
    {
        var choice = Choose(ShippedChartsTests.Chart("en13402-3-women"), BodyMeasure.Bust, 90, rule);
        Assert.Equal((size, BandPlace.Inside), (choice.Size.Name, choice.Place));
    }

    [Fact]
    public void Sizes_without_the_measure_are_named()
    {
        var choice = Choose(ShippedChartsTests.Chart("men"), BodyMeasure.Hip, 135, GapRule.NearestBand);
        Assert.Equal(("XL", BandPlace.AboveChart), (choice.Size.Name, choice.Place));
        Assert.Equal(["2X"], choice.Skipped);
    }

    [Fact]
    public void A_measure_that_the_chart_lacks_is_said()
    {
        Assert.False(ShippedChartsTests.Chart("women").TrySizeFor(
            BodyMeasure.Head, Length.FromCentimetres(56), GapRule.NearestBand, out _, out var reason));
        Assert.StartsWith("The chart women has no head", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void The_nearest_band_is_the_one_that_trying_every_size_finds() =>
        Gen.Select(Gen.Int[0, SizeCharts.All.Length - 1], Gen.Int[300, 1800]).Holds(drawn =>
        {
            var chart = SizeCharts.All[drawn.Item1];
            var value = Length.FromMillimetres(drawn.Item2);
            var choice = Choose(chart, BodyMeasure.Bust, value.Centimetres, GapRule.NearestBand);
            var best = chart.Sizes.Reverse()
                .Select(size => (size.Name, ShippedChartsTests.Find(chart.Id, size.Name, BodyMeasure.Bust).Range))
                .Select(band => (band.Name, Distance: Math.Abs(band.Range.Misfit(value).Centimetres)))
                .MinBy(band => band.Distance);
            return choice.Size.Name == best.Name && Math.Abs(choice.Misfit.Centimetres) == best.Distance;
        }, seed: 21, cases: 1_000);

    [Fact]
    public void A_larger_body_never_gets_a_smaller_size() =>
        Gen.Select(Gen.Int[0, SizeCharts.All.Length - 1], Gen.Int[300, 1800], Gen.Int[0, 200], Gen.Int[0, 2]).Holds(
            drawn =>
            {
                var (chart, rule) = (SizeCharts.All[drawn.Item1], (GapRule)drawn.Item4);
                var smaller = Choose(chart, BodyMeasure.Bust, drawn.Item2 / 10.0, rule);
                var larger = Choose(chart, BodyMeasure.Bust, (drawn.Item2 + drawn.Item3) / 10.0, rule);
                return chart.Sizes.IndexOf(smaller.Size) <= chart.Sizes.IndexOf(larger.Size);
            },
            seed: 22, cases: 1_000);

    [Fact]
    public void Bands_out_of_order_are_compared_by_where_they_lie()
    {
        var chart = new SizeChart("own", "Own", Wearers.Adult, Source, [Size("wide", 100, 110), Size("narrow", 80, 90)]);
        Assert.Equal("wide", Choose(chart, BodyMeasure.Bust, 95, GapRule.NearestBand).Size.Name);
        Assert.Equal("narrow", Choose(chart, BodyMeasure.Bust, 70, GapRule.LargerBand).Size.Name);
    }

    [Fact]
    public void Charts_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Own([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Own([.. Enumerable.Range(0, 41).Select(i => Size($"s{i}", 80, 90))]));
        Assert.Throws<ArgumentException>(() => Own([Size("M", 80, 90), Size("M", 90, 100)]));
        Assert.Throws<ArgumentException>(() => Own([new BodySize("M", [Bust(80, 90), Bust(90, 100)])]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bust(0, 90));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bust(91, 90));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bust(90, 301));

        static SizeChart Own(ImmutableArray<BodySize> sizes) => new("own", "Own", Wearers.Adult, Source, sizes);
    }

    private static readonly Citation Source = new(Provenance.Designer, "test");

    private static BodySize Size(string name, double minimum, double maximum) => new(name, [Bust(minimum, maximum)]);

    private static BodyMeasurement Bust(double minimum, double maximum)
    {
        var range = BodyRange.Between(Length.FromCentimetres(minimum), Length.FromCentimetres(maximum));
        return new BodyMeasurement(BodyMeasure.Bust, range, range, Source);
    }

    private static SizeChoice Choose(SizeChart chart, BodyMeasure measure, double centimetres, GapRule rule)
    {
        Assert.True(chart.TrySizeFor(measure, Length.FromCentimetres(centimetres), rule, out var choice, out _));
        return choice;
    }
}
