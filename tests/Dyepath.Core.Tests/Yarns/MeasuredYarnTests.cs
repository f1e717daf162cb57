using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Yarns;

public class MeasuredYarnTests
{
    private static readonly string[] Names = ["sand", "foam", "slate", "deep"];
    private static readonly Srgb[] Colours = [new(230, 214, 180), new(235, 245, 242), new(96, 116, 128), new(16, 52, 84)];

    [Fact]
    public void Counts_make_the_ring_and_lengths_stand_beside()
    {
        var measured = Measure(YarnOf([36, 29, 43, 50], Record([5.1, 4.1, 6.1, 7.0], 16, 3)), FabricOf(Unravelled(100, 710)));

        Assert.Equal(SequenceSource.Counts, measured.Natural.Source);
        Assert.Equal([5, 4, 6, 7], measured.Stitches);
        Assert.Equal([5_000_000, 4_000_000, 6_000_000, 7_000_000], measured.Ring.Sections);
        Assert.Equal(YarnPerStitchSource.Unravelled, measured.YarnPerStitch.Source);
        Assert.Equal(7.1, measured.YarnPerStitch.Centimetres.Value, 9);
        Assert.Empty(measured.Findings);
        Assert.Equal(4, measured.Tension().Length);
        Assert.Single(measured.Balls);
    }

    [Fact]
    public void Free_work_keeps_the_natural_sequence()
    {
        var measured = Measure(
            YarnOf(null, Record([5.3, 4.4, 6.2, 7.1], 8, 1)), FabricOf(Unravelled(100, 710)) with { Keeping = ColourKeeping.Free });

        Assert.Equal(measured.Natural.Total.Value, measured.Ring.SequenceUnits, 5);
        Assert.NotEqual(0, measured.Ring.Total % ColourRing.Unit);
        Assert.True(measured.RingOf(ColourKeeping.Counted).IsWhole);
    }

    [Fact]
    public void Lengths_serve_where_nothing_was_counted()
    {
        var measured = Measure(YarnOf([36, 28, 43, 50]), FabricOf(Unravelled(100, 700)));

        Assert.Equal(SequenceSource.Lengths, measured.Natural.Source);
        Assert.Equal(36 / 7.0, measured.Natural.Sections[0].Value, 9);
        Assert.Equal(157 / 7.0, measured.Natural.Total.Value, 9);
        Assert.True(measured.Natural.Total.StandardError > 0.02 * measured.Natural.Total.Value);
        Assert.Empty(measured.CountingForCountedWork());
    }

    [Fact]
    public void A_linen_unit_takes_the_yarn_of_its_two_stitches()
    {
        var fabric = FabricOf(Unravelled(100, 500)) with { Stitch = FabricStitch.Linen };
        var measured = Measure(YarnOf([50, 40, 60, 70]), fabric);

        Assert.Equal(10, measured.YarnPerStitch.Centimetres.Value, 9);
        Assert.Equal(5, measured.Natural.Sections[0].Value, 9);
    }

    [Fact]
    public void Intended_stitches_serve_where_nothing_was_measured()
    {
        var measured = Measure(YarnOf(null), FabricOf() with { SectionStitches = [5, 4, 6, 7] });

        Assert.Equal(SequenceSource.Intended, measured.Natural.Source);
        Assert.Equal(22, measured.Ring.SequenceUnits);
        Assert.All(measured.Tension(), t => Assert.Equal(0, t.Change));
        Assert.Contains(measured.Findings, f => f.Kind == FindingKind.YarnPerStitchSupposed);
    }

    [Fact]
    public void Nothing_measured_is_a_reason_not_a_fault()
    {
        Assert.False(MeasuredYarn.TryMeasure(YarnOf(null), FabricOf(), out _, out var reasons));
        Assert.Equal("yarn.counted", Assert.Single(reasons, r => r.Kind == FindingKind.NothingMeasured).Place);
    }

    [Fact]
    public void A_sequence_too_long_to_plan_is_a_reason_not_a_fault()
    {
        Assert.False(MeasuredYarn.TryMeasure(YarnOf([36_000, 28, 43, 50]), FabricOf(Unravelled(100, 700)), out _, out var reasons));
        Assert.Contains(reasons, r => r.Kind == FindingKind.SequenceTooLong);
    }

    [Fact]
    public void The_other_end_of_the_ball_runs_backwards()
    {
        var yarn = YarnOf(null, Record([5.1, 4.1, 6.1, 7.0], 16, 3));
        var measured = Measure(yarn with { FromOtherEnd = true }, FabricOf());

        Assert.Equal([7_000_000, 6_000_000, 4_000_000, 5_000_000], measured.Ring.Sections);
        Assert.Equal([5, 4, 6, 7], measured.Stitches);
        Assert.Equal(measured.Ring.Reversed().Sections, Measure(yarn, FabricOf()).Ring.Sections);
    }

    [Fact]
    public void Intended_stitches_ask_for_tighter_and_looser_hands()
    {
        var measured = Measure(
            YarnOf(null, Record([5.5, 4.0, 6.0, 7.0], 20, 2)), FabricOf(Unravelled(100, 710)) with { SectionStitches = [5, 4, 6, 8] });

        var tension = measured.Tension();
        Assert.StartsWith("sand: ", tension[0].Words, StringComparison.Ordinal);
        Assert.Contains("looser; it will show", tension[0].Words, StringComparison.Ordinal);
        Assert.Contains("tighter; it will show", tension[3].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_colours_share_their_number_in_the_ring()
    {
        var yarn = YarnOf(null, Record([5, 4, 6, 7], 3, 3));
        var sections = yarn.Sections.SetItem(2, yarn.Sections[2] with { Colour = Colours[0] });

        Assert.Equal([0, 1, 0, 3], Measure(yarn with { Sections = sections }, FabricOf()).Ring.Colours);
    }

    [Fact]
    public void Each_ball_keeps_its_own_estimate()
    {
        var measured = Measure(
            YarnOf(null, Record([5, 4, 6, 7], 6, 3), Record([5, 4, 6, 7], 3, 8)), FabricOf());

        Assert.Equal([6, 3], measured.Balls.Select(b => b.Estimate.Repeats));
        Assert.Equal(9, measured.Natural.Counted!.Repeats);
        Assert.True(measured.Natural.Total.StandardError < measured.Balls[0].Estimate.Sequence.StandardError);
    }

    [Fact]
    public void Another_hook_moves_sequence_yarn_and_gauge_together()
    {
        var measured = Measure(YarnOf(null, Record([5, 4, 6, 7], 8, 3)), FabricOf(Unravelled(100, 710)));
        var larger = measured.AtHook(6);
        var factor = HookResponse.For(measured.Fabric).YarnFactor(6);

        Assert.Same(measured, measured.AtHook(5));
        Assert.Equal(measured.Natural.Total.Value / factor, larger.Natural.Total.Value, 1e-9);
        Assert.Equal(measured.YarnPerStitch.Centimetres.Value * factor, larger.YarnPerStitch.Centimetres.Value, 1e-9);
        // The yarn of one sequence is what it was.
        Assert.Equal(
            measured.Natural.Total.Value * measured.YarnPerStitch.Centimetres.Value,
            larger.Natural.Total.Value * larger.YarnPerStitch.Centimetres.Value, 1e-9);
        Assert.True(larger.Fabric.Swatch.Worked.Stitches < measured.Fabric.Swatch.Worked.Stitches);
        Assert.True(larger.Natural.Total.StandardError > measured.Natural.Total.StandardError / factor);
        Assert.Equal(larger.Stitches.Sum(), larger.Ring.SequenceUnits);
    }

    [Fact]
    public void Whatever_was_counted_and_measured_is_answered() =>
        Gen.Select(
            Gen.Int[0, 14].Array[4].Array[0, 7],
            Gen.Int[0, 9].Array[0, 9].Array[0, 5],
            Gen.Double[0.5, 300].Array[4],
            Gen.Bool,
            Gen.Double[0, 0.3],
            Gen.Double[0.1, 1_000]).Holds(
            (first, second, lengths, measuredLengths, spread, memory) =>
            {
                var yarn = YarnOf(
                    measuredLengths ? lengths : null,
                    [.. first.Select(r => r.ToImmutableArray())],
                    [.. second.Select(r => r.ToImmutableArray())]);
                var fabric = FabricOf(Unravelled(100, 710)) with { Hands = new HandSteadiness(spread, memory) };
                if (!MeasuredYarn.TryMeasure(yarn, fabric, out var measured, out var reasons))
                {
                    Assert.NotEmpty(reasons);
                    return;
                }
                Assert.Empty(reasons);
                Assert.All(
                    measured.Natural.Sections, s => Assert.True(s.Value > 0 && s.StandardError >= 0 && double.IsFinite(s.StandardError)));
                Assert.All(measured.Stitches, n => Assert.True(n >= 1));
                Assert.True(measured.RingOf(ColourKeeping.Free).Total > 0);
                Assert.Equal(4, measured.Tension().Length);
                Assert.NotEmpty(measured.AdviseHook([4, 4.5, 5, 5.5]).Words);
                Assert.NotEmpty(measured.CountingForFreeWork(83).Words);
                Assert.All(measured.CountingForCountedWork(), s => Assert.InRange(s.ProbabilityRight, 0, 1));
            },
            seed: 58, cases: 400);

    internal static Yarn YarnOf(double[]? centimetres, params ImmutableArray<ImmutableArray<int>>[] balls) => new(
        "Tideline", "wool", 4, new Ball(Length.FromMetres(200), Mass.FromGrams(100)),
        [.. Names.Select((name, j) => new YarnSection(
            name, Colours[j], centimetres is null ? null : Length.FromCentimetres(centimetres[j])))],
        [.. balls.Select((rows, b) => new CountedBall($"ball {(char)('A' + b)}", rows))]);

    internal static ImmutableArray<ImmutableArray<int>> Record(double[] ring, int repeats, ulong seed) =>
        new SimulatedMaker(0.02, 50, 0.02, seed).Count(ring, repeats);

    internal static YarnUsed Unravelled(int stitches, double centimetres) =>
        new(stitches, Length.FromCentimetres(centimetres));

    internal static FabricChoice FabricOf(params YarnUsed[] used) => new(
        FabricStitch.SingleCrochet,
        new Swatch(5, new Gauge(14, 16, Length.FromCentimetres(10)), null, null, [.. used]));

    internal static MeasuredYarn Measure(Yarn yarn, FabricChoice fabric)
    {
        Assert.True(MeasuredYarn.TryMeasure(yarn, fabric, out var measured, out var reasons), string.Join("\n", reasons));
        return measured;
    }
}
