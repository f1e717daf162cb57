using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Motifs;

public sealed class ClarityTests
{
    private static readonly Gauge Square = new(16, 16, Length.FromCentimetres(10));

    private static readonly (double L, double A, double B)[] Lab = [(80, 5, 20), (40, -30, 10), (60, 40, -20), (20, 0, -40)];

    private static double[][] Points((double L, double A, double B)[] lab) => [.. lab.Select(c => new[] { c.L, c.A, c.B })];

    [Theory]
    [InlineData(Working.Turned, 154, 0.0, 0, 24)]
    [InlineData(Working.Turned, 154, 0.0, 3, 24)]
    [InlineData(Working.Turned, 154, 1.0, 3, 24)]
    [InlineData(Working.Turned, 155, 0.0, 0, 44)]
    [InlineData(Working.Turned, 155, 0.5, 2, 10)]
    [InlineData(Working.Turned, 156, 0.0, 0, 5)]
    [InlineData(Working.Turned, 157, 0.0, 5, 44)]
    [InlineData(Working.Turned, 159, 0.0, 0, 44)]
    [InlineData(Working.Rounds, 154, 0.0, 0, 24)]
    [InlineData(Working.Rounds, 155, 0.0, 0, 24)]
    [InlineData(Working.Rounds, 157, 0.0, 0, 24)]
    [InlineData(Working.Spiral, 151, 0.0, 0, 24)]
    public void Closed_form_agrees_with_a_blurred_fabric_of_whole_sections(Working working, int stitches, double turn, int start, int rows)
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        var options = new PathOptions { TurnCost = turn, Start = start };
        var reading = MotifReader.Create(ring, working, Square, palette: Palette.FromLab(ring, Lab))
            .Read(FabricPath.Constant(working, stitches, rows, options));
        // Half turns put stitches astride the boundaries, which the closed form rounds otherwise than the fabric does.
        var within = turn % 1 == 0 ? 1e-6 : 0.02;
        Assert.Equal(BruteBlur.Clarity(ring, working, stitches, options, Points(Lab), 2.5, 2.5, rows, 88), reading.Clarity, within);
    }

    [Fact]
    public void Closed_form_agrees_with_a_blurred_fabric_of_real_sections_and_a_gauge_that_is_not_square()
    {
        var ring = ColourRing.FromUnits([5.2, 4.1, 6, 7.3]);
        var gauge = new Gauge(14, 16, Length.FromCentimetres(10));
        foreach (var stitches in (int[])[180, 181, 182, 183])
        {
            var reading = MotifReader.Create(ring, Working.Turned, gauge, palette: Palette.FromLab(ring, Lab))
                .Read(FabricPath.Constant(Working.Turned, stitches, 60));
            var brute = BruteBlur.Clarity(ring, Working.Turned, stitches, new PathOptions(), Points(Lab), 2.5, 2.5 * 16 / 14, 60, 113);
            Assert.Equal(brute, reading.Clarity, 0.02);
        }
    }

    // Throwaway prototype with a period of 22 in turned work, to about a third: lean 0, 1, 2 and 3.
    [Theory]
    [InlineData(154, 0.4)]
    [InlineData(155, 0.3)]
    [InlineData(156, 0.16)]
    [InlineData(157, 0.05)]
    public void Clarity_falls_with_the_lean_about_as_the_prototype_found(int stitches, double expected)
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        var reader = MotifReader.Create(ring, Working.Turned, Square);
        var mean = Enumerable.Range(0, 22)
            .Average(s => reader.Read(FabricPath.Constant(Working.Turned, stitches, 80, new PathOptions { Start = s })).Clarity);
        Assert.InRange(mean, expected * 0.65, expected * 1.5);
    }

    [Fact]
    public void Relative_clarity_is_one_for_columns_from_the_best_start_and_for_upright_lines_in_rounds()
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        var turned = MotifReader.Create(ring, Working.Turned, Square);
        var best = Enumerable.Range(0, 44).Max(s => turned.Read(
            FabricPath.Constant(Working.Turned, 66, 72, new PathOptions { Start = s / 2.0 })).RelativeClarity);
        Assert.InRange(best, 0.99, 1);
        var rounds = MotifReader.Create(ring, Working.Rounds, Square).Read(FabricPath.Constant(Working.Rounds, 66, 72));
        Assert.Equal(1, rounds.RelativeClarity, 1e-9);
    }

    [Fact]
    public void Columns_in_turned_work_depend_on_the_start_and_rounds_do_not()
    {
        var ring = ColourRing.FromUnits([11, 11]);
        double At(Working working, int start) => MotifReader.Create(ring, working, Square)
            .Read(FabricPath.Constant(working, 66, 72, new PathOptions { Start = start })).Clarity;
        var turned = Enumerable.Range(0, 22).Select(s => At(Working.Turned, s)).ToArray();
        Assert.True(turned.Min() < 0.1 * turned.Max());
        Assert.All(Enumerable.Range(0, 22), s => Assert.Equal(At(Working.Rounds, 0), At(Working.Rounds, s), 1e-12));
    }

    [Fact]
    public void Colours_without_contrast_have_no_clarity_and_no_motif()
    {
        var ring = ColourRing.FromUnits([5, 6]);
        var reading = MotifReader.Create(ring, Working.Turned, Square, palette: Palette.FromLab(ring, [(50, 0, 0), (50, 0, 0)]))
            .Read(FabricPath.Constant(Working.Turned, 54, 40));
        Assert.Equal((MotifKind.Scattered, 0.0, 0.0), (reading.Kind, reading.Clarity, reading.RelativeClarity));
        Assert.Equal([MotifFinding.OneColour], reading.Findings);
    }
}
