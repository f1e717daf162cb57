using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Motifs;

public sealed class CountFinderTests
{
    private static readonly Gauge Gauge = new(14, 16, Length.FromCentimetres(10));

    private static readonly MotifKind[] Drawn = [MotifKind.Columns, MotifKind.Steep, MotifKind.Argyle, MotifKind.Shallow];

    private static readonly ColourRing Even = ColourRing.FromUnits([5, 4, 6, 7]);

    private static readonly ColourRing Real = ColourRing.FromUnits([5.2, 4.1, 6, 7.3]);

    [Fact]
    public void Whole_and_half_repeats_plus_or_minus_one_make_argyle()
    {
        var found = CountFinder.Find(Even, new CountOptions(Gauge, 40, 100) { Alternating = false });
        Assert.Equal([43, 45, 54, 56, 65, 67, 76, 78, 87, 89, 98, 100], found.Counts.Select(c => c.Stitches));
        Assert.Equal([4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9], found.Counts.Select(c => c.HalfRepeats));
        Assert.Empty(found.Nearest);
        Assert.Empty(found.Advice);
    }

    [Fact]
    public void Alternating_counts_and_half_turns_add_the_half_leans_and_say_what_to_do()
    {
        var found = CountFinder.Find(Even, new CountOptions(Gauge, 60, 70) { HalfTurn = true });
        Assert.Contains(
            found.Counts,
            c =>
                c is { Stitches: 66, Task: CountTask.ExtraEdgeStitch, TurnCost: 0 } && c.RowStitches is [66, 67]
                    && c.Reading.Lean!.Value.UnitsPerRow == 0.5);
        Assert.Contains(
            found.Counts,
            c =>
                c is { Stitches: 66, Task: CountTask.HalfStitchTurn, TurnCost: 0.5 } && c.RowStitches is [66]
                    && c.Reading.Lean!.Value.UnitsPerRow == 0.5);
        Assert.Contains(found.Counts, c => c.Task == (CountTask.ExtraEdgeStitch | CountTask.HalfStitchTurn));
        Assert.All(found.Counts, c => Assert.InRange(c.Stitches, 60, 70));
        Assert.DoesNotContain(found.Counts, c => c.RowStitches[^1] > 70);
    }

    [Theory]
    [InlineData(MotifKind.Argyle, Working.Turned)]
    [InlineData(MotifKind.Columns, Working.Turned)]
    [InlineData(MotifKind.Shallow, Working.Turned)]
    [InlineData(MotifKind.EvenSlant, Working.Rounds)]
    [InlineData(MotifKind.Steep, Working.Spiral)]
    [InlineData(MotifKind.Scattered, Working.RoundsTurned)]
    public void Every_count_that_makes_the_motif_is_found_and_no_other(MotifKind motif, Working working)
    {
        var found = CountFinder.Find(
            Real, new CountOptions(Gauge, 40, 120) { Motif = motif, Working = working, Alternating = false, Rows = 60 });
        var period = 22.6;
        var expected = Enumerable.Range(40, 81).Where(n =>
        {
            // The thresholds as stated, on the lean computed anew.
            var step = working is Working.Rounds or Working.Spiral ? 1 : 2;
            var lean = Math.Abs(Math.IEEERemainder(step * n, period) / step);
            var tall = 14.0 / 16 / lean;
            var kind = lean * 60 < period / 4 ? MotifKind.Columns
                : Math.Exp(-2 * Math.Pow(Math.PI * 2.5 * 16 / 14 * lean / period, 2)) < 0.01 ? MotifKind.Scattered
                : tall > 2 ? MotifKind.Steep
                : tall < 0.5 ? MotifKind.Shallow
                : step == 2 ? MotifKind.Argyle : MotifKind.EvenSlant;
            return kind == motif;
        });
        Assert.Equal(expected, found.Counts.Select(c => c.Stitches));
    }

    [Fact]
    public void Widths_and_readings_are_those_of_the_worked_piece()
    {
        foreach (var count in CountFinder.Find(Real, new CountOptions(Gauge, 40, 120)).Counts)
        {
            var path = count.RowStitches.Length == 1
                ? FabricPath.Constant(Working.Turned, count.Stitches, 72)
                : FabricPath.Alternating(Working.Turned, count.Stitches, 72);
            var reader = MotifReader.Create(Real, Working.Turned, Gauge);
            var reading = reader.Read(path);
            Assert.Equal(reading with { Findings = [] }, count.Reading with { Findings = [] });
            Assert.Equal(reader.Forgive(path), count.Forgiveness);
            Assert.Equal(count.Stitches * 10 / 14.0, count.Width.Centimetres, 1e-6);
        }
    }

    [Fact]
    public void Counts_come_in_the_order_that_is_asked_for()
    {
        var options = new CountOptions(Gauge, 40, 120);
        var byStitches = CountFinder.Find(Real, options).Counts;
        var byForgiveness = CountFinder.Find(Real, options with { Order = CountOrder.Forgiveness }).Counts;
        var byClarity = CountFinder.Find(Real, options with { Order = CountOrder.Clarity }).Counts;
        Assert.Equal(byStitches.OrderBy(c => c.Stitches).Select(c => c.Stitches), byStitches.Select(c => c.Stitches));
        Assert.Equal(
            byForgiveness.Select(c => c.Forgiveness!.Value.Least).OrderDescending(), byForgiveness.Select(c => c.Forgiveness!.Value.Least));
        Assert.Equal(byClarity.Select(c => c.Reading.Clarity).OrderDescending(), byClarity.Select(c => c.Reading.Clarity));
        Assert.Equal(byStitches.Length, byForgiveness.Length);
    }

    [Fact]
    public void Where_no_count_serves_the_nearest_and_what_would_help_are_named()
    {
        var options = new CountOptions(Gauge, 57, 63) { Alternating = false };
        var found = CountFinder.Find(Even, options);
        Assert.Empty(found.Counts);
        Assert.Equal(57, found.Nearest[0].Finding.Stitches);
        Assert.Equal(-0.25, found.Nearest[0].TurnChange!.Value, 1e-5);
        var turn = Assert.Single(found.Advice.OfType<CountAdvice.Turn>());
        // A quarter of a stitch less than nothing, which is nearest, no turn takes: what is advised takes some, in hundredths that make it.
        Assert.True(turn.TurnCost > 0 && Math.Abs(turn.TurnCost * 100 - Math.Round(turn.TurnCost * 100)) < 1e-9, $"{turn.TurnCost}");
        Assert.InRange(turn.Stitches, 57, 63);
        Assert.Equal(56, Assert.Single(found.Advice.OfType<CountAdvice.Range>()).Stitches);
        Assert.Contains(found.Advice.OfType<CountAdvice.Motif>(), m => m.Kind == MotifKind.Shallow);
        Assert.DoesNotContain(found.Advice.OfType<CountAdvice.Way>(), w => w.Working is Working.Rounds or Working.Spiral);
        // The advice, followed, makes the motif.
        Assert.NotEmpty(CountFinder.Find(Even, options with { Path = new PathOptions { TurnCost = turn.TurnCost } }).Counts);
        var hook = Assert.Single(found.Advice.OfType<CountAdvice.Hook>());
        Assert.Equal(22 / (1 + hook.YarnChange), hook.SequenceUnits, 1e-9);
        var changed = ColourRing.FromUnits([.. new[] { 5.0, 4, 6, 7 }.Select(u => u / (1 + hook.YarnChange))]);
        Assert.Contains(CountFinder.Find(changed, options).Counts, c => c.Stitches == hook.Stitches);
    }

    [Fact]
    public void Argyle_in_unturned_rounds_is_answered_by_another_way_of_working()
    {
        var found = CountFinder.Find(Even, new CountOptions(Gauge, 40, 80) { Working = Working.Spiral });
        Assert.Empty(found.Counts);
        Assert.Equal([Working.Turned, Working.RoundsTurned], found.Advice.OfType<CountAdvice.Way>().Select(w => w.Working));
        Assert.Empty(found.Advice.OfType<CountAdvice.Turn>());
        Assert.Empty(found.Advice.OfType<CountAdvice.Hook>());
        Assert.All(found.Nearest, n => Assert.Null(n.TurnChange));
    }

    [Fact]
    public void The_changes_named_are_the_least_that_reach_the_motif() =>
        Gen.Select(Gen.Int[20, 95].Select(t => t / 10.0).Array[3, 5], Gen.Int[40, 120], Gen.Int[0, 3].Select(i => Drawn[i]))
            .Holds((units, n, motif) =>
            {
                var ring = ColourRing.FromUnits(units);
                var options = new CountOptions(Gauge, n, n) { Motif = motif, Alternating = false };
                var found = CountFinder.Find(ring, options);
                if (!found.Counts.IsEmpty)
                    return true;
                bool Makes(double turn, double change) => CountFinder.Find(
                    ColourRing.FromUnits([.. units.Select(u => u / (1 + change))]),
                    options with { Path = new PathOptions { TurnCost = turn } }).Counts.Length > 0;
                var near = found.Nearest[0];
                var (turn, yarn) = (near.TurnChange!.Value, near.YarnChange!.Value);
                // The changes end a hair inside the motif.
                var (less, lessYarn) = (Math.Max(0, Math.Abs(turn) - 1e-5), Math.Max(0, Math.Abs(yarn) - 1e-5));
                return Makes(turn, 0) && !Makes(less, 0) && !Makes(-less, 0)
                    && Makes(0, yarn) && !Makes(0, lessYarn) && !Makes(0, -lessYarn);
            }, seed: 117, cases: 60);

    [Fact]
    public void Bands_become_columns_only_once_a_row_holds_a_section_whatever_the_turn()
    {
        var options = new CountOptions(Gauge, 21, 21) { Motif = MotifKind.Columns };
        var near = Assert.Single(CountFinder.Find(ColourRing.FromUnits([22, 22]), options).Nearest);
        Assert.Equal(MotifKind.Bands, near.Finding.Reading.Kind);
        Assert.Null(near.TurnChange);
        Assert.Equal(22.0 / 21 - 1, near.YarnChange!.Value, 1e-5);
        var looser = 1 + near.YarnChange.Value;
        Assert.Single(CountFinder.Find(ColourRing.FromUnits([22 / looser, 22 / looser]), options).Counts);
    }

    [Fact]
    public void Linen_stitch_counts_whole_stitches_and_leans_in_units()
    {
        var options = new CountOptions(Gauge, 120, 140) { Path = new PathOptions { StitchesPerUnit = 2 }, Alternating = false };
        var found = CountFinder.Find(Even, options);
        // 132 stitches are 66 units, three periods; one stitch either way is half a unit.
        Assert.Equal([131, 133], found.Counts.Select(c => c.Stitches));
        Assert.Equal([-0.5, 0.5], found.Counts.Select(c => c.Reading.Lean!.Value.UnitsPerRow));
        Assert.Equal(131 * 10 / 14.0, found.Counts[0].Width.Centimetres, 1e-6);
    }

    [Theory]
    [InlineData(0.0001)]
    [InlineData(0.7)]
    [InlineData(63)]
    public void Shortest_and_longest_sequences_are_answered(double section)
    {
        double[] units = section < 1 ? [section, section * 1.3] : [.. Enumerable.Range(0, 64).Select(i => section + i * 0.015)];
        foreach (var motif in Enum.GetValues<MotifKind>())
        {
            var found = CountFinder.Find(ColourRing.FromUnits(units), new CountOptions(Gauge, 1, 12) { Motif = motif, HalfTurn = true });
            Assert.All(found.Counts.Concat(found.Nearest.Select(n => n.Finding)), c =>
            {
                Assert.InRange(c.Reading.Clarity, 0, 1);
                Assert.InRange(c.Reading.RelativeClarity, 0, 1);
                Assert.InRange(c.Forgiveness?.Tighter ?? -1, -1, 1e-9);
                Assert.InRange(c.Forgiveness?.Looser ?? 1, -1e-9, 9);
            });
        }
    }

    [Fact]
    public void One_colour_finds_nothing_and_says_so_without_fail()
    {
        var found = CountFinder.Find(ColourRing.FromUnits([9]), new CountOptions(Gauge, 40, 42));
        Assert.Empty(found.Counts);
        Assert.Empty(found.Advice);
        Assert.Equal(5, found.Nearest.Length);
        Assert.All(found.Nearest, n => Assert.Contains(MotifFinding.OneColour, n.Finding.Reading.Findings));
    }

    [Fact]
    public void Options_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CountFinder.Find(Even, new CountOptions(Gauge, 0, 10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => CountFinder.Find(Even, new CountOptions(Gauge, 20, 10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => CountFinder.Find(Even, new CountOptions(Gauge, 20, 1001)));
        Assert.Throws<ArgumentOutOfRangeException>(() => CountFinder.Find(Even, new CountOptions(Gauge, 20, 30) { Rows = 0 }));
    }
}
