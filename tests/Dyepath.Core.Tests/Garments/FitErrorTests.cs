using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>How far sizes are off: in which words, how much of it is seen, and what it is to a child.</summary>
public sealed class FitErrorTests
{
    /// <summary>What lies down a body is too long, what goes into it too deep, what stands up too tall, and what goes round or across it too wide.</summary>
    [Theory]
    [InlineData("too long", "too short", GarmentMeasure.Length, GarmentMeasure.SleeveLength, GarmentMeasure.StrapLength, GarmentMeasure.TabLength,
        GarmentMeasure.GussetLength, GarmentMeasure.SleeveJoin, GarmentMeasure.TabJoin, GarmentMeasure.Vent)]
    [InlineData("too deep", "too shallow", GarmentMeasure.ArmholeDepth, GarmentMeasure.NeckDepth, GarmentMeasure.BackNeckDepth, GarmentMeasure.LegOpening,
        GarmentMeasure.GussetDepth, GarmentMeasure.Depth)]
    [InlineData("too tall", "too low", GarmentMeasure.Height, GarmentMeasure.TabHeight, GarmentMeasure.InsertHeight)]
    [InlineData("too wide", "too narrow", GarmentMeasure.Width, GarmentMeasure.NeckWidth, GarmentMeasure.SleeveWidth, GarmentMeasure.Circumference,
        GarmentMeasure.ArmholeInset, GarmentMeasure.WristToWrist, GarmentMeasure.StrapWidth, GarmentMeasure.PanelWidth, GarmentMeasure.BackWidth,
        GarmentMeasure.FrontNeck, GarmentMeasure.Wingspan, GarmentMeasure.HemWidth, GarmentMeasure.CrownEdge, GarmentMeasure.InsertWidth)]
    public void A_measure_is_off_in_its_own_way(string over, string under, params GarmentMeasure[] measures)
    {
        foreach (var measure in measures)
        {
            Assert.EndsWith($", 2.0 cm {over}", new FitError("M", measure, Cm(2)).Say(Units.Centimetres), StringComparison.Ordinal);
            Assert.EndsWith($", 2.0 cm {under}", new FitError("M", measure, Cm(-2)).Say(Units.Centimetres), StringComparison.Ordinal);
        }
    }

    /// <summary>An inch more or less than it is to grow is a leap; half a centimetre smaller where it is to grow, or to stay, a fall.</summary>
    [Theory]
    [InlineData(4, 6.5, false, false)]
    [InlineData(4, 6.6, true, false)]
    [InlineData(4, 1.4, true, false)]
    [InlineData(1, -0.4, false, false)]
    [InlineData(1, -0.6, false, true)]
    [InlineData(0, -0.6, false, true)]
    [InlineData(-1, -1.6, false, false)]
    [InlineData(2, -0.6, true, true)]
    public void Sizes_that_do_not_follow_each_other_leap_or_fall(double asked, double made, bool leaps, bool falls)
    {
        Assert.Equal(leaps, FitError.IsLeap(Cm(asked), Cm(made)));
        Assert.Equal(falls, FitError.IsFall(Cm(asked), Cm(made), Cm(0.5)));
    }

    /// <summary>The root of the mean of 1, 4 and 4 squared.</summary>
    [Fact]
    public void Usually_off_is_the_root_mean_square() => Assert.Equal(
        Math.Sqrt(11), FitError.Typical([new("S", GarmentMeasure.Width, Cm(1)), new("M", GarmentMeasure.Width, Cm(-4)), new("L", GarmentMeasure.Length, Cm(4))]).Centimetres, 1e-6);

    /// <summary>
    /// By the measures of an adult's garment: 100 cm round, half of that across, 60 long, 120 from wrist to wrist, sleeves 40 round and 45 long.
    /// </summary>
    [Theory]
    [InlineData(GarmentMeasure.Width, 100)]
    [InlineData(GarmentMeasure.BackWidth, 50)]
    [InlineData(GarmentMeasure.PanelWidth, 50)]
    [InlineData(GarmentMeasure.Length, 60)]
    [InlineData(GarmentMeasure.WristToWrist, 120)]
    [InlineData(GarmentMeasure.SleeveWidth, 40)]
    [InlineData(GarmentMeasure.SleeveLength, 45)]
    public void To_a_child_an_error_is_as_much_more_as_it_is_smaller(GarmentMeasure measure, double adult)
    {
        ImmutableArray<double> shares = [0.05, 0.1, 0.35, 0.8, 1, 1.3];
        var tolerances = Of("child").Tolerances;
        Assert.Equal(new[] { 0.1, 0.1, 0.35, 0.8, 1, 1 }, tolerances.Select(t => Math.Round(t, 6)));
        Assert.True(Of("women").Tolerances.IsDefault, "An adult's centimetre is a centimetre.");

        StitchMeasure Of(string chart)
        {
            Assert.True(BodySizes.TryRead(new SizeSelection(chart, [], [], null, [], []), [BodyMeasure.Bust], [], out var bodies, out _), chart);
            return new StitchMeasure(measure, default, 0, bodies, [], [.. shares.Select(s => Cm(s * adult))], []);
        }
    }

    /// <summary>A larger size that comes out smaller is told, though each is near its own target.</summary>
    [Fact]
    public void A_larger_size_that_is_shorter_is_told()
    {
        var up = Tideline.Directed(Direction.Up) with { Sizes = Tideline.Sizes with { Sizes = ["S", "M", "L"], Base = "M" } };
        up = up.With(g => g with { Edgings = [] });
        var plan = up.Planned();
        var asked = (plan.Sizes[2].Target[GarmentMeasure.Length] - plan.Sizes[1].Target[GarmentMeasure.Length]).Centimetres;
        var told = 0;
        for (var fewer = 0; fewer <= 6; fewer += 2)
        {
            var fixedRows = up.Fixed([], [new("M", "panelRows", null, plan.Sizes[1].Pieces[0].Rows, "as made"), new("L", "panelRows", null, plan.Sizes[1].Pieces[0].Rows - fewer, "as made")]).Planned();
            var (m, l) = (fixedRows.Sizes[1].Finished[GarmentMeasure.Length].Centimetres, fixedRows.Sizes[2].Finished[GarmentMeasure.Length].Centimetres);
            var said = fixedRows.Findings.Where(f => f.Text.Contains("L has ", StringComparison.Ordinal) && f.Text.Contains(" where M has ", StringComparison.Ordinal)).ToArray();
            var falls = asked - (l - m) <= 2.54 && l < m - 0.5;
            Assert.Equal((fewer, falls), (fewer, said.Length > 0));
            told += falls ? 1 : 0;
            if (falls)
                Assert.StartsWith(FormattableString.Invariant($"Length is not graded evenly: L has {l:0.0} cm where M has {m:0.0} cm"), said[0].Text, StringComparison.Ordinal);
        }
        Assert.True(told > 0, "No size was shorter by a little.");
    }
}
