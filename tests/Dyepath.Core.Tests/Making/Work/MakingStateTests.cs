using CsCheck;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Xunit;

namespace Dyepath.Core.Tests.Making.Work;

public sealed class MakingStateTests
{
    private static readonly MakingOrder Tunic =
        MakingOrder.Of(GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!, "XS");

    /// <summary>Any entry, most of them such as the page makes.</summary>
    private static readonly Gen<Entry> AnyEntry =
        from did in Gen.Frequency((6, Gen.Int[0, 2].Select(i => (EntryKind)i)), (1, Gen.Enum<EntryKind>()))
        from phase in Gen.Int[-3, 3].Nullable()
        from to in Gen.Int[-1, 90].Nullable()
        select new Entry(did, DateTimeOffset.UnixEpoch, phase, to);

    [Fact]
    public void Law_taking_back_leads_to_the_state_before()
    {
        AnyEntry.Array[1, 120].Holds(
            entries =>
            {
                var state = MakingState.Begin(Tunic);
                foreach (var entry in entries)
                {
                    var next = state.Apply(entry);
                    if (entry.Kind != EntryKind.Back && next != state)
                        Assert.Same(state, next.Apply(new Entry(EntryKind.Back, DateTimeOffset.UnixEpoch)));
                    state = next;
                }
                while (state.Before is { } before)
                    state = before;
                Assert.Equal((0, 0), (state.PartIndex, state.Here.Step));
            },
            seed: 11, cases: 60);
    }

    [Fact]
    public void Law_no_log_leads_out_of_the_piece()
    {
        AnyEntry.Array[1, 200].Holds(
            entries =>
            {
                var state = MakingState.Begin(Tunic).Apply(entries);
                Assert.All(state.Progress.Zip(Tunic.Parts), p =>
                {
                    Assert.InRange(p.First.Step, 0, p.Second.Steps.Length);
                    Assert.True(p.First.Drift is null || double.IsFinite(p.First.Drift.Filter.PhaseMean));
                });
                Assert.True(state.Runs.IsEmpty || state.Here.Run < state.Runs.Length);
                // Between two rows, as many stitches are worked as the plan has up to there.
                if (state is { Row.Row: var row, Here.Run: 0, Drift: { } drift })
                    Assert.Equal(state.Part.Planned!.StitchesBefore(row), drift.Worked);
            },
            seed: 12, cases: 60);
    }

    [Fact]
    public void The_whole_garment_takes_one_tap_a_step()
    {
        var state = MakingState.Begin(Tunic);
        for (var part = 0; part < Tunic.Parts.Length; part++)
        {
            state = state.Apply(new Entry(EntryKind.Part, DateTimeOffset.UnixEpoch, To: part + 1));
            for (var taps = 0; taps < Tunic.Parts[part].Steps.Length; taps++)
            {
                Assert.False(state.IsDone);
                Assert.NotNull(state.Step);
                state = state.Apply(new Entry(state.Row is null ? EntryKind.Step : EntryKind.Row, DateTimeOffset.UnixEpoch));
            }
            Assert.True(state.IsPartDone);
        }
        Assert.True(state.IsDone);
    }

    [Fact]
    public void Runs_lead_where_rows_lead()
    {
        var byRows = AtFirstRow();
        var byRuns = byRows;
        for (var row = 0; row < 12; row++)
        {
            byRows = byRows.Apply(new Entry(EntryKind.Row, DateTimeOffset.UnixEpoch));
            var runs = byRuns.Runs.Length;
            for (var run = 0; run < runs; run++)
                byRuns = byRuns.Apply(new Entry(EntryKind.Run, DateTimeOffset.UnixEpoch));
            Assert.Equal(byRows.Row!.Row, byRuns.Row!.Row);
            Assert.Equal(byRows.Drift!.Worked, byRuns.Drift!.Worked);
            Assert.Equal(byRows.Drift.Filter.PhaseSd, byRuns.Drift.Filter.PhaseSd, 1e-9);
        }
    }

    [Fact]
    public void Ripping_back_restores_the_place_and_keeps_what_was_learnt()
    {
        var state = AtFirstRow();
        for (var row = 0; row < 10; row++)
            state = state.Apply(new Entry(EntryKind.Row, DateTimeOffset.UnixEpoch, Phase: row < 5 ? 0 : row - 4));
        var back = state.Apply(new Entry(EntryKind.At, DateTimeOffset.UnixEpoch, To: 4));
        Assert.Equal(3, back.Row!.Row);
        Assert.Equal(state.AtRow(3)!.Drift!.Filter.PhaseMean, back.Drift!.Filter.PhaseMean, 1e-12);
        Assert.Equal(state.Drift!.Filter.BiasMean, back.Drift.Filter.BiasMean, 1e-12);
        Assert.True(back.Drift.Filter.BiasMean > 0);
    }

    /// <summary>Of hands that nobody has measured, the bias lies evenly within 2 % either way: that over the root of three in the mean square.</summary>
    [Fact]
    public void Unknown_hands_may_lean_two_per_cent_either_way()
    {
        var filter = MakingState.Begin(Tunic).Drift!.Filter;
        Assert.Equal(0, filter.BiasMean);
        Assert.Equal(0.011547, filter.BiasSd, 1e-6);
    }

    /// <summary>The first and the last row can be gone to, and none before or after them.</summary>
    [Fact]
    public void Every_row_of_the_piece_can_be_gone_to()
    {
        var state = AtFirstRow();
        MakingState At(int row) => state.Apply(new Entry(EntryKind.At, DateTimeOffset.UnixEpoch, To: row));
        Assert.Equal(0, At(1).Row!.Row);
        Assert.Equal(Tunic.Parts[0].Rows - 1, At(Tunic.Parts[0].Rows).Row!.Row);
        Assert.Same(state, At(0));
        Assert.Same(state, At(Tunic.Parts[0].Rows + 1));
    }

    /// <summary>The last part can be gone to, too.</summary>
    [Fact]
    public void Every_part_of_the_garment_can_be_gone_to()
    {
        var state = MakingState.Begin(Tunic);
        MakingState Part(int part) => state.Apply(new Entry(EntryKind.Part, DateTimeOffset.UnixEpoch, To: part));
        Assert.Equal(Tunic.Parts.Length - 1, Part(Tunic.Parts.Length).PartIndex);
        Assert.Equal(1, Part(2).PartIndex);
        Assert.Same(state, Part(1));
        Assert.Same(state, Part(0));
        Assert.Same(state, Part(Tunic.Parts.Length + 1));
    }

    [Fact]
    public void A_row_far_from_what_is_expected_is_to_be_counted_again()
    {
        var state = AtFirstRow();
        for (var row = 0; row < 6; row++)
            state = state.Apply(new Entry(EntryKind.Row, DateTimeOffset.UnixEpoch, Phase: 0));
        Assert.False(state.AsksForRecount(EntryKind.Row, 1));
        Assert.True(state.AsksForRecount(EntryKind.Row, 9));
    }

    [Fact]
    public void What_was_learnt_at_the_front_is_known_at_the_back()
    {
        var state = AtFirstRow();
        for (var row = 0; row < 20; row++)
            state = state.Apply(new Entry(EntryKind.Row, DateTimeOffset.UnixEpoch, Phase: Math.Min(row, 3)));
        var back = state.Apply(new Entry(EntryKind.Part, DateTimeOffset.UnixEpoch, To: 2));
        Assert.Equal(state.Drift!.Filter.BiasMean, back.Drift!.Filter.BiasMean, 1e-12);
        Assert.Equal(0, back.Drift.Filter.PhaseMean);
    }

    [Fact]
    public void Law_the_row_that_is_looked_at_is_among_those_found()
    {
        var fabric = Tunic.Parts[0].Fabric!;
        Gen.Select(Gen.Int[0, fabric.Rows - 1], Gen.Int[1, 6], Gen.Int[-1, 1].Array[6]).Holds(
            (row, runs, off) =>
            {
                var begins = RowRuns.Of(fabric, row).Take(runs).ToArray();
                var found = RowFinder.Find(fabric, [.. begins]);
                Assert.Contains(new RowMatchFound(row, 0), found);
                Assert.All(found, f => Assert.Equal(begins, RowRuns.Of(fabric, f.Row).Take(begins.Length).Select((r, i) => r with { Section = begins[i].Section })));
                // A stitch miscounted here and there: found still, unless another row fits better.
                var miscounted = begins.Select((r, i) => r with { Units = Math.Max(1, r.Units + off[i]) }).ToArray();
                found = RowFinder.Find(fabric, [.. miscounted]);
                Assert.True(found.Any(f => f.Row == row) || found.Any(f => f.Off == 0));
            },
            seed: 13, cases: 200);
    }

    /// <summary>By the boundaries themselves, against the path's arithmetic.</summary>
    [Fact]
    public void Colours_begin_earlier_by_what_the_row_below_shows()
    {
        var fabric = Tunic.Parts[0].Fabric!;
        for (var row = 2; row < 40; row++)
        {
            var earlier = RowWords.Earlier(fabric, row)!.Value;
            var here = Worked(fabric, row);
            var below = Worked(fabric, row - 2);
            int Alike(int shift) => Enumerable.Range(0, here.Length).Count(i => i + shift >= 0 && i + shift < below.Length && here[i] == below[i + shift]);
            var best = Enumerable.Range(-10, 21).MaxBy(Alike);
            Assert.InRange(best - earlier, -0.75, 0.75);
        }
    }

    private static byte[] Worked(Core.Fabrics.Fabric fabric, int row)
    {
        var cells = fabric.Row(row).ToArray();
        if (fabric.Path.RunsBackwards(row))
            Array.Reverse(cells);
        return cells;
    }

    private static MakingState AtFirstRow()
    {
        var state = MakingState.Begin(Tunic);
        while (state.Row is null)
            state = state.Apply(new Entry(EntryKind.Step, DateTimeOffset.UnixEpoch));
        return state;
    }
}
