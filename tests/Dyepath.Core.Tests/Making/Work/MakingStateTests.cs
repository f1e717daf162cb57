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
        from said in Gen.Frequency((5, Gen.Const((Said?)null)), (1, AnySaid.Select(s => (Said?)s)))
        select new Entry(did, DateTimeOffset.UnixEpoch, phase, to, said);

    /// <summary>Whatever the form of the log lets stand, fitting or not.</summary>
    private static Gen<Said> AnySaid =>
        from hold in Gen.Int[-4, 4]
        from work in Gen.Int[-4, 4].Nullable()
        from stitches in Gen.Int[1, 200].Nullable()
        from look in Gen.Int[1, 200].Nullable()
        from act in Gen.Enum<SaidAct>().Nullable()
        from rip in Gen.Int[1, 200].Nullable()
        from cut in Gen.Double[0, 10_000].Nullable()
        select new Said(hold, work, stitches, look) { Act = act, Rip = rip, Out = cut };

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
                // Whatever a log says that she was told, it can be said again, of rows and stitches that there are.
                Assert.NotEqual("", AdviceWords.Say(state, [.. Tunic.Plan.Sequence.Colours.Select(c => c.Name)]));
                Assert.True(AdviceWords.RipTo(state) is not { } rip || (rip >= 0 && rip < state.Part.Rows));
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

    /// <summary>Asked of a colour, she is answered of it: where one ended, of that; where one begins, of that one; of all, of all.</summary>
    [Fact]
    public void The_answer_names_the_colour_of_the_question()
    {
        var (state, names) = (AtFirstRow(), Tunic.Plan.Sequence.Colours.Select(c => c.Name).ToArray());
        var row = state.Apply(new Entry(EntryKind.Row, Then, Phase: 1));
        var ended = Core.Making.Drift.RowEnd.Looks(state.Part.Planned!, 0, 1).Colour;
        Assert.StartsWith($"This {names[ended]} comes early; ", AdviceWords.Say(row, [.. names]), StringComparison.Ordinal);
        var looked = row.Apply(new Entry(EntryKind.Look, Then, Phase: -1, To: 8));
        Assert.StartsWith($"This {names[row.Runs[8].Section]} comes late; ", AdviceWords.Say(looked, [.. names]), StringComparison.Ordinal);
        var run = row.Apply(new Entry(EntryKind.Run, Then, Phase: 0));
        Assert.StartsWith($"This {names[row.Runs[0].Section]} is on the count; ", AdviceWords.Say(run, [.. names]), StringComparison.Ordinal);
        var right = row.Apply(new Entry(EntryKind.Read, Then, Phase: 2));
        Assert.StartsWith("Colours come early; ", AdviceWords.Say(right, [.. names]), StringComparison.Ordinal);
    }

    /// <summary>Of a log that says what she was told, every sentence and every belief is as it was, whatever would be advised today.</summary>
    [Fact]
    public void A_log_is_gone_through_by_what_she_was_told()
    {
        string[] names = [.. Tunic.Plan.Sequence.Colours.Select(c => c.Name)];
        var random = new Random(3);
        var log = new List<Entry>();
        var state = AtFirstRow();
        var (answered, otherwise) = (0, 0);
        for (var row = 0; row < 40; row++)
        {
            foreach (var did in row % 3 == 0 ? (Entry[])[new(EntryKind.Look, Then, random.Next(-2, 3), 9), new(EntryKind.Row, Then, random.Next(-2, 3))] : [new(EntryKind.Row, Then, random.Next(-1, 2))])
            {
                var entry = state.Answered(did);
                answered += entry.Said is null ? 0 : 1;
                Assert.Equal(AdviceWords.Say(state.Apply(did), [.. names]), AdviceWords.Say(state.Apply(entry), [.. names]));
                // Told something else, as by another version of the advice, that is what her hands did.
                if (entry.Said is { } said && row % 4 == 1)
                    entry = entry with { Said = new Said(said.Hold == 4 ? 3 : said.Hold + 1) };
                log.Add(entry);
                state = state.Apply(entry);
                if (entry.Said is { Work: null, For: null, Act: null } other)
                {
                    otherwise++;
                    Assert.Equal(Core.Making.Drift.TensionGrades.LevelOf(other.Hold), state.Drift!.CorrectionAt(state.Drift.Worked));
                }
            }
        }
        Assert.True(answered > 40 && otherwise > 5);
        var read = MakingReader.Read(MakingWriter.WriteUtf8(
            MakingDocument.Begin(ProjectReader.Read(DemoProject.Utf8).Project!, "XS") with { Log = [.. log] })).Making!;
        var again = AtFirstRow().Apply(read.Log);
        Assert.Equal(state.Drift!.Filter.PhaseMean, again.Drift!.Filter.PhaseMean);
        Assert.Equal(AdviceWords.Say(state, [.. names]), AdviceWords.Say(again, [.. names]));
        // The same without what she was told is believed otherwise.
        Assert.NotEqual(state.Drift.Filter.PhaseMean, AtFirstRow().Apply(log.Select(e => e with { Said = null })).Drift!.Filter.PhaseMean);
    }

    /// <summary>A row longer than there is, a row to rip that is not worked: she is advised anew.</summary>
    [Theory]
    [MemberData(nameof(NotSaid))]
    public void What_cannot_have_been_said_there_is_advised_anew(Said said)
    {
        var entry = new Entry(EntryKind.Row, Then, Phase: 1);
        Assert.Equal(AtFirstRow().Apply(entry).Drift!.Advice, AtFirstRow().Apply(entry with { Said = said }).Drift!.Advice);
    }

    public static TheoryData<Said> NotSaid =>
    [
        new Said(0, -1, 10_000), new Said(0, Look: 9_999), new Said(0) { Act = SaidAct.Rip, Rip = 2 }, new Said(0) { Act = SaidAct.Rip },
        new Said(0) { Act = SaidAct.Join }, new Said(0) { Rip = 1 }, new Said(0, -1, 20) { Act = SaidAct.Skip },
    ];

    /// <summary>She was advised to rip back and went on: that is said until the advice after, and can still be done.</summary>
    [Fact]
    public void Advice_to_rip_that_she_did_not_take_lapses_aloud()
    {
        var state = AtFirstRow().Apply(new Entry(EntryKind.Row, Then, Phase: 0)).Apply(new Entry(EntryKind.Row, Then, Phase: 0))
            .Apply(new Entry(EntryKind.Row, Then, Phase: 9));
        Assert.NotNull(AdviceWords.RipTo(state));
        var row = AdviceWords.RipTo(state);
        // Run by run it stands as long as no other is given.
        var run = state.Apply(new Entry(EntryKind.Run, Then));
        Assert.Equal((row, null), (AdviceWords.RipTo(run), run.Drift!.Lapsed));
        var on = state.Apply(new Entry(EntryKind.Row, Then));
        Assert.Equal((null, row), (AdviceWords.RipTo(on), on.Drift!.Lapsed));
        Assert.Null(on.Apply(new Entry(EntryKind.Row, Then)).Drift!.Lapsed);
        // Ripped, nothing has lapsed.
        Assert.Null(state.Apply(new Entry(EntryKind.At, Then, To: row + 1)).Drift!.Lapsed);
    }

    /// <summary>A knot loses the colours within the sequence; a new ball only what is known of the yarn; a stop nothing at all.</summary>
    [Fact]
    public void What_comes_between_two_stitches_changes_what_is_known_and_not_the_place()
    {
        var state = AtFirstRow();
        for (var row = 0; row < 8; row++)
            state = state.Apply(new Entry(EntryKind.Row, Then, Phase: 0));
        MakingState After(EntryKind kind, int? to = null) => state.Apply(new Entry(kind, Then, To: to));
        var known = state.Drift!.Filter;
        var period = known.Model.Period;
        Assert.Equal(period / Math.Sqrt(12), After(EntryKind.Knot).Drift!.Filter.PhaseSd, 1e-9);
        Assert.Equal(known.BiasSd, After(EntryKind.Knot).Drift!.Filter.BiasSd, 1e-12);
        Assert.Equal((MakerRemedies.JoinError, Math.Sqrt(known.BiasSd * known.BiasSd + 0.0001)), (After(EntryKind.Ball).Drift!.Filter.PhaseSd, After(EntryKind.Ball).Drift!.Filter.BiasSd));
        Assert.Equal(47, After(EntryKind.Stop, 47).Here.Stopped);
        Assert.Same(state.Drift, After(EntryKind.Stop, 47).Drift);
        Assert.Equal(0, After(EntryKind.Stop, 47).Apply(new Entry(EntryKind.Row, Then)).Here.Stopped);
        Assert.All((int?[])[null, 0, state.Part.Planned!.RowStitches[8]], to => Assert.Same(state, After(EntryKind.Stop, to)));
        Assert.All((MakingState[])[After(EntryKind.Knot), After(EntryKind.Ball), After(EntryKind.Stop, 5)], after => Assert.Equal((8, state.Drift.Worked), (after.Row!.Row, after.Drift!.Worked)));
        // In mid-row too, and each can be taken back.
        var looked = state.Apply(new Entry(EntryKind.Look, Then, 0, 9));
        Assert.Equal(looked.Drift!.Worked, looked.Apply(new Entry(EntryKind.Knot, Then)).Drift!.Worked);
    }

    /// <summary>After the last row nothing is advised for a row that does not come.</summary>
    [Fact]
    public void After_the_last_row_no_advice_stands()
    {
        string[] names = [.. Tunic.Plan.Sequence.Colours.Select(c => c.Name)];
        var state = AtFirstRow();
        while (state.Row is not null)
            state = state.Apply(new Entry(EntryKind.Row, Then, Phase: 1));
        Assert.False(state.HasRowAhead);
        Assert.Null(AdviceWords.Say(state, [.. names]));
    }

    private static readonly DateTimeOffset Then = DateTimeOffset.UnixEpoch;

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
