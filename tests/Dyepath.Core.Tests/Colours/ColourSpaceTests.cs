using Dyepath.Core.Colours;
using Dyepath.Core.Tests.Data;
using MathNet.Numerics.LinearAlgebra;

namespace Dyepath.Core.Tests.Colours;

public sealed class ColourSpaceTests
{
    [Fact]
    public void Xyz_and_lab_agree_with_two_colour_libraries()
    {
        // srgb_golden.csv: computed by two independent open libraries. Lab differs by up to 0.004 between whites
        // X = 0.95046 and 0.95047, hence 0.01.
        foreach (var row in PublishedTable.Read("srgb_golden"))
        {
            var colour = Srgb.Parse(row["hex"]);
            var xyz = colour.ToLinear().ToXyz();
            Assert.Equal(row.Number("x_D65"), xyz.X, 1e-6);
            Assert.Equal(row.Number("y_D65"), xyz.Y, 1e-6);
            Assert.Equal(row.Number("z_D65"), xyz.Z, 1e-6);
            var lab = colour.ToLab();
            Assert.Equal(row.Number("lab65_L"), lab.Lightness, 0.01);
            Assert.Equal(row.Number("lab65_a"), lab.A, 0.01);
            Assert.Equal(row.Number("lab65_b"), lab.B, 0.01);
            var oklab = colour.ToLinear().ToOklab();
            Assert.Equal(row.Number("oklab_L"), oklab.Lightness, 1e-4);
            Assert.Equal(row.Number("oklab_a"), oklab.A, 1e-4);
            Assert.Equal(row.Number("oklab_b"), oklab.B, 1e-4);
            Assert.Equal(row.Number("rel_luminance_wcag"), Contrast.RelativeLuminance(colour), 1e-6);
        }
    }

    [Fact]
    public void Lab_is_not_the_one_under_d50()
    {
        var red = PublishedTable.Read("srgb_golden").Single(row => row["hex"] == "#ff0000");
        Assert.True(Math.Abs(red.Number("labD50_b") - Srgb.Parse("#ff0000").ToLab().B) > 2);
    }

    [Fact]
    public void The_matrix_to_xyz_follows_from_the_primaries_and_the_white_point()
    {
        // IEC 61966-2-1: chromaticities of red, green, blue and of D65.
        var primaries = Matrix<double>.Build.DenseOfColumnVectors(Column(0.64, 0.33), Column(0.30, 0.60), Column(0.15, 0.06));
        var scale = primaries.Solve(Column(0.3127, 0.3290));
        foreach (var (light, share) in new[] { (new LinearRgb(1, 0, 0), 0), (new LinearRgb(0, 1, 0), 1), (new LinearRgb(0, 0, 1), 2) })
        {
            var derived = primaries.Column(share) * scale[share];
            var xyz = light.ToXyz();
            Assert.Equal(derived[0], xyz.X, 1e-12);
            Assert.Equal(derived[1], xyz.Y, 1e-12);
            Assert.Equal(derived[2], xyz.Z, 1e-12);
        }

        static Vector<double> Column(double x, double y) => Vector<double>.Build.DenseOfArray([x / y, 1, (1 - x - y) / y]);
    }

    [Fact]
    public void Greys_have_no_chroma_and_rise_in_lightness()
    {
        var before = -1.0;
        for (var code = 0; code < 256; code++)
        {
            var lab = new Srgb((byte)code, (byte)code, (byte)code).ToLab();
            Assert.Equal(0, lab.Chroma, 1e-9);
            Assert.True(lab.Lightness > before);
            before = lab.Lightness;
        }
        Assert.Equal(100, before, 1e-9);
        Assert.Equal(default, Srgb.Black.ToLab());
    }

    [Fact]
    public void Every_colour_stays_in_the_range_that_the_factory_allows() =>
        SrgbTests.Any.Holds(colour =>
        {
            var lab = colour.ToLab();
            var hue = colour.ToLinear().ToOklab().HueDegrees;
            return Lab.FromComponents(Math.Min(lab.Lightness, 100), lab.A, lab.B).A == lab.A && hue is >= 0 and < 360;
        }, seed: 2, cases: 1_000);

    [Theory]
    [InlineData(-0.1, 0, 0)]
    [InlineData(100.1, 0, 0)]
    [InlineData(50, 201, 0)]
    [InlineData(50, 0, double.NaN)]
    public void Components_outside_their_range_are_refused(double lightness, double a, double b) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Lab.FromComponents(lightness, a, b));
}
