using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using CsCheck;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Tests.Sizing.Charts;

public sealed class OwnSizeChartTests
{
    [Fact]
    public void Figures_in_either_unit_become_a_chart_of_the_common_type()
    {
        var inInches = new EnteredSize("2", [new(BodyMeasure.Bust, 36, 38, ChartUnit.Inch)]);
        Assert.True(Build([Size("1", (BodyMeasure.Bust, 80, 85)), inInches], out var chart, out var remarks));
        Assert.Empty(remarks);
        Assert.Equal(91.44, chart.Sizes[1].Measurements[0].Range.Minimum.Centimetres, 1e-9);
        Assert.Equal(80 / 2.54, chart.Sizes[0].Measurements[0].InInches.Minimum.Inches, 1e-7);
        Assert.Equal(Provenance.Designer, chart.Sizes[0].Measurements[0].Source.Provenance);
    }

    [Fact]
    public void Falling_series_and_missing_measures_are_warnings_with_their_place()
    {
        Assert.True(Build(
            [
                Size("S", (BodyMeasure.Bust, 80, 85), (BodyMeasure.UpperArm, 30, 30)),
                Size("M", (BodyMeasure.Bust, 90, 95), (BodyMeasure.UpperArm, 28, 31)),
                Size("L", (BodyMeasure.Bust, 100, 105)),
            ],
            out _, out var remarks));
        Assert.Equal(["sizes[1].upperArm", "sizes[2].upperArm"], remarks.Select(remark => remark.Place));
        Assert.All(remarks, remark => Assert.False(remark.IsFault));
        Assert.StartsWith("M has a smaller upper arm than S before it", remarks[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 10, "sizes[0].bust", "is 0 cm: give 0.1 to 300 cm.")]
    [InlineData(-5, 10, "sizes[0].bust", "is -5 cm: give 0.1 to 300 cm.")]
    [InlineData(80, double.NaN, "sizes[0].bust", "is NaN cm: give 0.1 to 300 cm.")]
    [InlineData(80, double.PositiveInfinity, "sizes[0].bust", "is Infinity cm: give 0.1 to 300 cm.")]
    [InlineData(90, 80, "sizes[0].bust", "runs from 90 to 80 cm: put the smaller first.")]
    public void Figures_that_cannot_be_are_faults_with_their_place(double minimum, double maximum, string place, string message)
    {
        Assert.False(Build([Size("M", (BodyMeasure.Bust, minimum, maximum))], out _, out var remarks));
        Assert.Equal(new ChartRemark(place, message, IsFault: true), Assert.Single(remarks));
    }

    [Fact]
    public void Every_fault_is_listed_at_once()
    {
        Assert.False(Build(
            [
                Size(" ", (BodyMeasure.Bust, 80, 85)),
                Size("M", (BodyMeasure.Bust, 80, 85), (BodyMeasure.Bust, 80, 85)),
                Size("M"),
            ],
            out _, out var remarks));
        Assert.Equal(["sizes[0].name", "sizes[1].bust", "sizes[2].name", "sizes[2]"], remarks.Select(remark => remark.Place));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(41)]
    public void The_number_of_sizes_is_bounded(int count)
    {
        var sizes = Enumerable.Range(0, count).Select(i => Size($"s{i}", (BodyMeasure.Bust, 80 + i, 80 + i))).ToImmutableArray();
        Assert.False(Build(sizes, out _, out var remarks));
        Assert.Equal("sizes", Assert.Single(remarks).Place);
    }

    [Fact]
    public void Any_figures_give_a_chart_or_faults_and_never_an_exception()
    {
        var figure = Gen.OneOf(Gen.Double, Gen.Double[1, 200]);
        var measure = Gen.Select(
            Gen.Int[-1, 17], figure, figure, Gen.Int[0, 1],
            (kind, minimum, maximum, unit) => new OwnMeasure((BodyMeasure)kind, minimum, maximum, (ChartUnit)unit));
        var size = Gen.Select(
            Gen.OneOf(Gen.Const(""), Gen.Const("S"), Gen.Const("M")), measure.Array[0, 3],
            (name, measures) => new EnteredSize(name, [.. measures]));
        size.Array[0, 4].Holds(sizes =>
        {
            var built = Build([.. sizes], out var chart, out var remarks);
            return built == remarks.All(remark => !remark.IsFault) && built == chart is not null;
        }, seed: 31, cases: 5_000);
    }

    private static EnteredSize Size(string name, params (BodyMeasure Measure, double Minimum, double Maximum)[] measures) =>
        new(name, [.. measures.Select(measure => new OwnMeasure(measure.Measure, measure.Minimum, measure.Maximum, ChartUnit.Centimetre))]);

    private static bool Build(
        ImmutableArray<EnteredSize> sizes, [NotNullWhen(true)] out SizeChart? chart, out ImmutableArray<ChartRemark> remarks) =>
        OwnSizeChart.TryBuild("own", "Own", Wearers.Adult, sizes, out chart, out remarks);
}
