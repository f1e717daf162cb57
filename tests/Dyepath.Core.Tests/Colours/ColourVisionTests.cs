using Dyepath.Core.Colours;
using Dyepath.Core.Tests.Data;

namespace Dyepath.Core.Tests.Colours;

public sealed class ColourVisionTests
{
    private static readonly ColourVision[] Kinds = Enum.GetValues<ColourVision>();

    [Fact]
    public void Simulated_colours_agree_with_the_table_in_linear_light()
    {
        // cvd_golden.csv: the published matrices applied to linear light, clipped, halves up.
        var rows = PublishedTable.Read("cvd_golden");
        Assert.Equal(18, rows.Count);
        foreach (var row in rows)
        {
            var light = Srgb.Parse(row["input"]).ToLinear();
            var kind = Enum.Parse<ColourVision>(row["type"], ignoreCase: true);
            Assert.Equal(row["machado_linear"], ColourVisionSimulation.Machado(light, kind, 1).ToSrgb().ToString());
            Assert.Equal(row["brettel_linear"], ColourVisionSimulation.Brettel(light, kind).ToSrgb().ToString());
            if (kind != ColourVision.Tritan)
                Assert.Equal(row["vienot_linear"], ColourVisionSimulation.Vienot(light, kind).ToSrgb().ToString());
        }
    }

    [Fact]
    public void Matrices_are_those_published()
    {
        foreach (var row in PublishedTable.Read("cvd_matrices"))
        {
            var kind = Enum.Parse<ColourVision>(row["type"], ignoreCase: true);
            if (row["model"] == "vienot1999" && kind == ColourVision.Tritan)
                continue;
            var planes = ColourVisionTables.Brettel(kind);
            var matrix = row["model"] switch
            {
                "machado2009" => ColourVisionTables.Machado(kind)[(int)Math.Round(row.Number("severity") * 10)],
                "brettel1997" => row["condition"].StartsWith("half-plane 1", StringComparison.Ordinal) ? planes.Positive : planes.Negative,
                _ => kind == ColourVision.Protan ? ColourVisionTables.VienotProtan : ColourVisionTables.VienotDeutan,
            };
            double[] entries =
                [.. new[] { matrix.Red, matrix.Green, matrix.Blue }.SelectMany(line => new[] { line.OfRed, line.OfGreen, line.OfBlue })];
            for (var i = 0; i < 9; i++)
                Assert.Equal(row.Number($"m{i / 3}{i % 3}"), entries[i]);
            // Rows sum to 1 within their printed digits, so that greys stay grey; this catches a slipped sign.
            for (var i = 0; i < 9; i += 3)
                Assert.Equal(1, entries[i] + entries[i + 1] + entries[i + 2], 2e-5);
        }
    }

    [Fact]
    public void Severity_zero_changes_nothing_and_published_severities_are_hit_exactly() =>
        SrgbTests.Any.Holds(colour =>
        {
            var light = colour.ToLinear();
            return Kinds.All(kind =>
                ColourVisionSimulation.Machado(light, kind, 0) == light
                && Enumerable.Range(0, 11).All(tenth => Close(
                    ColourVisionSimulation.Machado(light, kind, tenth / 10.0), ColourVisionTables.Machado(kind)[tenth].Apply(light))));
        }, seed: 6, cases: 200);

    [Fact]
    public void Between_published_severities_the_light_is_between()
    {
        var light = Srgb.Parse("#c86432").ToLinear();
        var (low, middle, high) = (At(0.3), At(0.35), At(0.4));
        Assert.Equal((low.Red + high.Red) / 2, middle.Red, 1e-12);
        Assert.Equal((low.Green + high.Green) / 2, middle.Green, 1e-12);
        Assert.Equal((low.Blue + high.Blue) / 2, middle.Blue, 1e-12);

        LinearRgb At(double severity) => ColourVisionSimulation.Machado(light, ColourVision.Deutan, severity);
    }

    [Fact]
    public void Greys_stay_grey_to_every_kind_of_eyes()
    {
        for (var code = 0; code < 256; code++)
        {
            var grey = new Srgb((byte)code, (byte)code, (byte)code);
            foreach (var kind in Kinds)
            {
                Assert.Equal(grey, ColourVisionSimulation.Brettel(grey.ToLinear(), kind).ToSrgb());
                Assert.Equal(grey, ColourVisionSimulation.Machado(grey.ToLinear(), kind, 0.55).ToSrgb());
            }
        }
    }

    [Fact]
    public void The_two_half_planes_meet_without_a_jump()
    {
        // On the plane both projections must agree, but for the five printed digits.
        foreach (var kind in Kinds)
        {
            var (normal, positive, negative) = ColourVisionTables.Brettel(kind);
            foreach (var (red, blue) in new[] { (0.2, 0.7), (0.9, 0.1), (0.5, 0.5) })
            {
                var green = -(normal.Red * red + normal.Blue * blue) / normal.Green;
                var light = new LinearRgb(red, green, blue);
                var (one, other) = (positive.Apply(light), negative.Apply(light));
                Assert.Equal(one.Red, other.Red, 2e-3);
                Assert.Equal(one.Green, other.Green, 2e-3);
                Assert.Equal(one.Blue, other.Blue, 2e-3);
            }
        }
    }

    [Fact]
    public void One_projection_is_refused_for_tritan() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ColourVisionSimulation.Vienot(Srgb.White.ToLinear(), ColourVision.Tritan));

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void Severity_outside_its_range_is_refused(double severity) => Assert.Throws<ArgumentOutOfRangeException>(
        () => ColourVisionSimulation.Machado(Srgb.White.ToLinear(), ColourVision.Protan, severity));

    private static bool Close(LinearRgb a, LinearRgb b) =>
        Math.Abs(a.Red - b.Red) < 1e-12 && Math.Abs(a.Green - b.Green) < 1e-12 && Math.Abs(a.Blue - b.Blue) < 1e-12;
}
