using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Pricing;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Making.Work;

/// <summary>What a log's times say of its rows.</summary>
public sealed class RowTimesTests
{
    private static readonly MakingOrder Tunic = MakingOrder.Of(GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!, "XS");

    private static int Stitches => Tunic.Size.Pieces[0].Stitches;

    private static Entry At(double minute, EntryKind kind, int? to = null, int? phase = null) =>
        new(kind, DateTimeOffset.UnixEpoch.AddDays(20_000).AddMinutes(minute), phase, to);

    private static RowTime[] Of(params IEnumerable<Entry> log) => [.. RowTimes.Of(MakingState.Begin(Tunic).Apply(log))];

    /// <summary>Two steps before row 1 (where to begin, the chain); its time runs from the chain's end. A row is its stitches and its turn.</summary>
    [Fact]
    public void A_row_takes_from_the_end_of_what_was_before_it()
    {
        var rows = Of(At(0, EntryKind.Step), At(5, EntryKind.Step), At(10, EntryKind.Row), At(14, EntryKind.Row, phase: 1));
        Assert.Equal([new RowTime(Stitches + 2, TimeSpan.FromMinutes(5)), new RowTime(Stitches + 2, TimeSpan.FromMinutes(4))], rows);
    }

    [Fact]
    public void Looking_and_changing_the_hook_do_not_begin_a_row() => Assert.Equal(
        [5.0, 7.0],
        Of(
            At(0, EntryKind.Step), At(5, EntryKind.Step), At(10, EntryKind.Row), At(12, EntryKind.Read, phase: 0), At(13, EntryKind.Hook, to: 1),
            At(14, EntryKind.Edge, to: -1), At(17, EntryKind.Row)).Select(r => r.Time.TotalMinutes));

    /// <summary>A row of several colours, told run by run, has the time of all of them.</summary>
    [Fact]
    public void Runs_make_a_row()
    {
        var state = MakingState.Begin(Tunic).Apply([At(0, EntryKind.Step), At(5, EntryKind.Step)]);
        var runs = state.Runs.Length;
        Assert.True(runs > 2);
        state = state.Apply(Enumerable.Range(1, runs).Select(i => At(5 + i, EntryKind.Run)));
        Assert.Equal([new RowTime(Stitches + 2, TimeSpan.FromMinutes(runs))], RowTimes.Of(state));
    }

    [Fact]
    public void What_is_taken_back_is_left_out() => Assert.Equal(
        [9.0],
        Of(At(0, EntryKind.Step), At(5, EntryKind.Step), At(6, EntryKind.Row), At(7, EntryKind.Back), At(14, EntryKind.Row)).Select(r => r.Time.TotalMinutes));

    /// <summary>Ripped back to row 1 at minute 20: the row that is worked again begins there.</summary>
    [Fact]
    public void A_row_after_ripping_back_begins_there() => Assert.Equal(
        [5.0, 4.0, 3.0],
        Of(
            At(0, EntryKind.Step), At(5, EntryKind.Step), At(10, EntryKind.Row), At(14, EntryKind.Row), At(20, EntryKind.At, to: 1), At(23, EntryKind.Row))
            .Select(r => r.Time.TotalMinutes));

    /// <summary>Plain sleeves are rows like others; making up and edgings are none.</summary>
    [Fact]
    public void Every_row_of_every_piece_counts_and_no_edging_does()
    {
        var (log, minute) = (new List<Entry>(), 0);
        for (var part = 0; part < Tunic.Parts.Length; part++)
        {
            if (part > 0)
                log.Add(At(minute++, EntryKind.Part, to: part + 1));
            log.AddRange(Tunic.Parts[part].Steps.Select(s => At(minute++, s is RowStep ? EntryKind.Row : EntryKind.Step)));
        }
        var rows = Of(log);
        Assert.Equal(Tunic.Size.Pieces.Sum(p => p.Copies * p.Rows), rows.Length);
        Assert.All(rows, r => Assert.Equal(1, r.Time.TotalMinutes));
        Assert.Equal(Tunic.Size.Pieces.Sum(p => p.Copies * p.Rows * (p.Stitches + 2.0)), rows.Sum(r => r.SingleCrochets), 1e-6);
        Assert.InRange(MakersPace.Of(rows)!.Pace.Median, 20, 100);
    }

    [Fact]
    public void An_empty_log_tells_nothing() => Assert.Empty(Of());
}
