using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Motifs;

public sealed class MotifTests
{
    private static readonly Gauge Gauge = new(14, 16, Length.FromCentimetres(10));

    private static readonly ColourRing Ring = ColourRing.FromUnits([5, 4, 6, 7]);

    private static MotifReading Read(
        Working working, int stitches, int rows = 72, double turn = 0, ColourRing? ring = null, Gauge? gauge = null) =>
        MotifReader.Create(ring ?? Ring, working, gauge ?? Gauge)
            .Read(FabricPath.Constant(working, stitches, rows, new PathOptions { TurnCost = turn }));

    [Theory]
    [InlineData(66, 0.0, 0, MotifKind.Columns)]
    [InlineData(77, 0.0, 0, MotifKind.Columns)]
    [InlineData(66, 0.5, 0.5, MotifKind.Argyle)]
    [InlineData(67, 0.0, 1, MotifKind.Argyle)]
    [InlineData(65, 0.0, -1, MotifKind.Argyle)]
    [InlineData(76, 0.0, -1, MotifKind.Argyle)]
    [InlineData(66, 0.25, 0.25, MotifKind.Steep)]
    [InlineData(66, 1.75, 1.75, MotifKind.Argyle)]
    [InlineData(66, 1.76, 1.76, MotifKind.Shallow)]
    [InlineData(68, 0.0, 2, MotifKind.Shallow)]
    [InlineData(69, 0.0, 3, MotifKind.Shallow)]
    [InlineData(71, 0.0, 5, MotifKind.Scattered)]
    public void Turned_work_is_classed_by_its_diamonds(int stitches, double turn, double lean, MotifKind kind)
    {
        var reading = Read(Working.Turned, stitches, 72, turn);
        Assert.Equal(lean, reading.Lean!.Value.UnitsPerRow);
        Assert.Equal(kind, reading.Kind);
        Assert.Equal(22, reading.VisiblePeriodUnits);
    }

    [Theory]
    [InlineData(66, MotifKind.Columns)]
    [InlineData(67, MotifKind.EvenSlant)]
    [InlineData(64, MotifKind.Shallow)]
    [InlineData(77, MotifKind.Scattered)]
    public void Rounds_are_classed_by_their_slant(int stitches, MotifKind kind) => Assert.Equal(kind, Read(Working.Rounds, stitches).Kind);

    [Fact]
    public void Joined_and_turned_rounds_are_classed_as_turned_rows()
    {
        Assert.Equal(MotifKind.Argyle, Read(Working.RoundsTurned, 67).Kind);
        Assert.Equal(MotifKind.EvenSlant, Read(Working.Spiral, 67).Kind);
        Assert.Equal(MotifKind.Steep, Read(Working.Rounds, 66, 72, 0.25).Kind);
    }

    [Fact]
    public void Sections_longer_than_a_row_make_bands_and_one_colour_makes_nothing()
    {
        Assert.Equal(MotifKind.Bands, Read(Working.Turned, 20, ring: ColourRing.FromUnits([30, 25, 40])).Kind);
        var one = Read(Working.Turned, 20, ring: ColourRing.FromUnits([5, 6], ["sand", "sand"]));
        Assert.Equal((MotifKind.Scattered, null, null), (one.Kind, one.Lean, one.PeriodUnits));
        Assert.Equal([MotifFinding.OneColour], one.Findings);
    }

    [Fact]
    public void A_diamond_measures_a_period_by_the_rows_that_a_line_takes_across_it()
    {
        var reading = Read(Working.Turned, 67);
        Assert.Equal(22 * 10 / 14.0, reading.DiamondWidth!.Value.Centimetres, 1e-6);
        Assert.Equal(22 * 10 / 16.0, reading.DiamondHeight!.Value.Centimetres, 1e-6);
        Assert.Null(Read(Working.Turned, 66).DiamondHeight);
    }

    [Theory]
    [InlineData(67, 72, new MotifFinding[0])]
    [InlineData(21, 72, new[] { MotifFinding.TooNarrow })]
    [InlineData(67, 21, new[] { MotifFinding.TooShort })]
    [InlineData(21, 12, new[] { MotifFinding.TooNarrow, MotifFinding.TooShort })]
    public void A_piece_needs_a_period_of_stitches_and_a_diamond_of_rows(int stitches, int rows, MotifFinding[] findings) =>
        Assert.Equal(findings, Read(Working.Turned, stitches, rows).Findings);

    [Theory]
    [InlineData(Working.RoundsTurned, 65, false)]
    [InlineData(Working.RoundsTurned, 67, false)]
    [InlineData(Working.RoundsTurned, 76, true)]
    [InlineData(Working.RoundsTurned, 78, true)]
    [InlineData(Working.Turned, 76, false)]
    public void Half_repeats_jump_at_the_join_of_joined_and_turned_rounds(Working working, int stitches, bool jumps)
    {
        var reading = Read(working, stitches);
        Assert.Equal(MotifKind.Argyle, reading.Kind);
        Assert.Equal(jumps, reading.Findings.Contains(MotifFinding.JumpsAtJoin));
    }

    [Fact]
    public void A_ring_whose_halves_look_alike_shows_half_its_period()
    {
        var ring = ColourRing.FromUnits([11, 11, 11, 12]);
        var palette = Palette.FromLab(ring, [(80, 0, 0), (20, 0, 0), (79, 1, 0), (21, 1, 0)]);
        var reading = MotifReader.Create(ring, Working.Turned, Gauge, palette: palette)
            .Read(FabricPath.Constant(Working.Turned, 101, 72, new PathOptions { TurnCost = 0.25 }));
        Assert.Equal((45.0, 22.5), (reading.PeriodUnits, reading.VisiblePeriodUnits));
        // 2 · 101.25 is four and a half periods: half way to the next for the ring, none for what is seen.
        Assert.Equal(22.5 / 2, Math.Abs(reading.Lean!.Value.UnitsPerRow));
        Assert.Equal((0.0, MotifKind.Columns), (reading.VisibleLean, reading.Kind));
    }

    [Fact]
    public void Rounds_that_travel_sideways_show_it_in_their_lines()
    {
        MotifReading With(double travel, Working working) =>
            MotifReader.Create(Ring, working, Gauge, options: new MotifOptions { SidewaysTravel = travel })
                .Read(FabricPath.Constant(working, 66, 72));
        Assert.Equal((0.2, MotifKind.Steep), (With(0.2, Working.Rounds).VisibleLean, With(0.2, Working.Rounds).Kind));
        Assert.Equal(0, With(0.2, Working.RoundsTurned).VisibleLean);
        Assert.Equal(0, With(0.2, Working.Rounds).Lean!.Value.Micro);
    }

    [Fact]
    public void Linen_stitch_counts_in_units_two_stitches_wide()
    {
        var linen = new PathOptions { StitchesPerUnit = 2 };
        var reader = MotifReader.Create(Ring, Working.Turned, Gauge, 2);
        // 133 stitches are 66½ units, half a unit over three periods: classic argyle there.
        var half = reader.Read(FabricPath.Constant(Working.Turned, 133, 72, linen));
        Assert.Equal((0.5, MotifKind.Argyle), (half.Lean!.Value.UnitsPerRow, half.Kind));
        Assert.Equal(22 * 2 * 10 / 14.0, half.DiamondWidth!.Value.Centimetres, 1e-6);
        Assert.Equal(MotifKind.Shallow, reader.Read(FabricPath.Constant(Working.Turned, 134, 72, linen)).Kind);
    }

    [Fact]
    public void Changing_counts_are_read_by_what_most_rows_make()
    {
        var path = FabricPath.RowByRow(Working.Turned, [.. Enumerable.Range(0, 72).Select(r => r < 60 ? 67 : 64)]);
        var reading = MotifReader.Create(Ring, Working.Turned, Gauge).Read(path);
        Assert.Equal(MotifKind.Argyle, reading.Kind);
        Assert.Null(reading.Lean);
        Assert.Contains(MotifFinding.Uneven, reading.Findings);
    }

    /// <summary>
    /// Free work: boundaries fall within stitches, differently in every row. The strongest plane wave of the fabric as
    /// worked is still the one that the reading is built on, for steep and for shallow lines.
    /// </summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(1.1)]
    [InlineData(2.3)]
    [InlineData(3.4)]
    public void The_strongest_wave_in_free_work_is_the_one_that_the_lean_says(double lean)
    {
        var ring = ColourRing.FromUnits([5.23, 4.11, 6.02, 7.31]);
        const double Period = 22.67;
        const int Columns = 227, Rows = 96;
        var turn = 8 * Period / 2 + lean - 230 + Period * 12.5;
        var path = FabricPath.Constant(
            Working.Turned, 230, Rows, new PathOptions { TurnCost = turn - Math.Floor(turn / (Period / 2)) * (Period / 2) });
        var seen = Lean.Of(path.Advance!.Value, ring.Total).UnitsPerRow;
        var fabric = Fabric.Work(ring, path);
        var best = (Power: 0.0, Lean: 0.0);
        for (var step = -40; step <= 40; step++)
        {
            var power = 0.0;
            var tried = step / 10.0;
            for (var colour = 0; colour < 4; colour++)
            {
                var (re, im) = (0.0, 0.0);
                for (var r = 0; r < Rows; r += 2)
                {
                    for (var c = 0; c < Columns; c++)
                    {
                        if (fabric[r, c] != colour)
                            continue;
                        var phase = 2 * Math.PI * (c + tried * r) / Period;
                        re += Math.Cos(phase);
                        im += Math.Sin(phase);
                    }
                }
                power += re * re + im * im;
            }
            if (power > best.Power)
                best = (power, tried);
        }
        Assert.Equal(lean, seen, 1e-5);
        Assert.Equal(seen, best.Lean, 0.051);
    }

    [Fact]
    public void Readers_refuse_other_paths_and_options_out_of_range()
    {
        var reader = MotifReader.Create(Ring, Working.Turned, Gauge);
        Assert.Throws<ArgumentException>(() => reader.Read(FabricPath.Constant(Working.Rounds, 20, 5)));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => MotifReader.Create(Ring, Working.Turned, Gauge, options: new MotifOptions { BlurStitches = double.NaN }));
        Assert.Throws<ArgumentOutOfRangeException>(() => MotifReader.Create(Ring, Working.Turned, Gauge with { Rows = 0 }));
        Assert.Throws<ArgumentException>(() => Palette.FromLab(Ring, [(0, 0, 0)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Palette.FromLab(Ring, [(0, 0, 0), (0, 0, 0), (0, 0, 0), (double.NaN, 0, 0)]));
    }
}
