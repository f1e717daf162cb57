using System.Text;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Store;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Making;

public sealed class HandingTests : IDisposable
{
    private const string Key = "abcdefghijklmnopqrstuvwxyz-ABCDEFGHIJ_01234";

    private readonly HostHere _host = new();

    public void Dispose() => _host.Dispose();

    [Fact]
    public async Task The_key_goes_in_the_header_and_in_no_address()
    {
        var shelf = new HandedShelf(_host.Client());
        _host.Answers["GET api/handed"] = Text(Demo());
        _host.Answers[$"PUT api/handed/logs/{Id}"] = "{}";
        Assert.Equal(ServerReply.Done, (await shelf.OpenAsync(Key)).Reply);
        Assert.Equal(Key, _host.Headers["Dyepath-Key"]);
        Assert.Equal(ServerReply.Done, await shelf.SendLogAsync(Key, Id, Demo(1, 2)));
        Assert.Equal(["GET api/handed", $"PUT api/handed/logs/{Id}"], _host.Asked);
        Assert.Equal(2, MakingReader.Read(Encoding.UTF8.GetBytes(_host.Bodies[1])).Making!.Log.Length);
        _host.IsAway = true;
        Assert.Equal(ServerReply.Away, await shelf.SendLogAsync(Key, Id, Demo()));
    }

    [Theory]
    [InlineData(Key, true)]
    [InlineData("", false)]
    [InlineData("abcdefghijklmnopqrstuvwxyz-ABCDEFGHIJ_0123", false)]
    [InlineData("abcdefghijklmnopqrstuvwxyz-ABCDEFGHIJ_0123\n", false)]
    [InlineData("abcdefghijklmnopqrstuvwxyz-ABCDEFGHIJ_0123é", false)]
    public void Only_what_has_the_form_of_a_key_is_asked_for(string text, bool can) => Assert.Equal(can, HandedShelf.CanBeKey(text));

    [Fact]
    public void A_tester_is_told_yarn_hook_gauge_and_the_patterns_cautions_in_her_size()
    {
        var piece = HandedPiece.TryOf(Text(Demo()))!;
        Assert.Contains(piece.Words.Materials, m => m.StartsWith("Ebbstone Light", StringComparison.Ordinal));
        Assert.Contains(piece.Words.Materials, m => m.StartsWith("Hook of", StringComparison.Ordinal));
        Assert.Contains(piece.Words.Gauge, g => g.StartsWith("As worked:", StringComparison.Ordinal));
        Assert.Contains(piece.Words.Cautions, c => c.StartsWith("Buy all balls of one dye lot", StringComparison.Ordinal));
        // One size: no list of numbers in parentheses.
        Assert.DoesNotContain(piece.Words.Materials, m => m.Contains("Balls to buy") && m.Contains('('));
        Assert.Null(HandedPiece.TryOf("{}"));
        Assert.Null(HandedPiece.TryOf(Text(Demo() with { Size = "17" })));
    }

    [Fact]
    public void A_summary_counts_rows_readings_and_rip_backs_that_were_not_taken_back()
    {
        List<Entry> log = [];
        void Add(EntryKind did, int? phase = null, int? to = null) => log.Add(new Entry(did, Now.AddSeconds(log.Count), phase, to));
        var begun = LogSummary.TryOf(Demo(), out _)!;
        Assert.All(begun.Parts, p => Assert.Equal(0, p.Worked));
        for (var i = 0; i < 5; i++)
            Add(EntryKind.Step);
        Add(EntryKind.At, to: 1);
        for (var i = 0; i < 6; i++)
            Add(EntryKind.Row, phase: i % 2 == 0 ? 1 : null);
        Add(EntryKind.At, to: 5);
        Add(EntryKind.Row, phase: 0);
        Add(EntryKind.At, to: 2);
        Add(EntryKind.Back);
        // Worked on untold is no rip-back.
        Add(EntryKind.At, to: 9);
        var summary = LogSummary.TryOf(Demo() with { Log = [.. log] }, out _)!;
        Assert.Equal(8, summary.Parts[0].Worked);
        Assert.True(summary.Parts[0].Rows > 8);
        Assert.All(summary.Parts.Skip(1), p => Assert.Equal(0, p.Worked));
        Assert.Equal(4, summary.Readings);
        Assert.Equal(1, summary.RipBacks);
    }

    [Fact]
    public void A_size_that_the_pattern_has_not_is_said()
    {
        Assert.Null(LogSummary.TryOf(Demo() with { Size = "17" }, out var why));
        Assert.Contains("17", why, StringComparison.Ordinal);
    }

    /// <summary>Counts without a stitch say nothing of her yarn; her log is looked at all the same.</summary>
    [Fact]
    public void Own_counts_of_nothing_but_zeros_stand_in_nobodys_way()
    {
        var none = Demo() with { Counted = [[0, 0, 0, 0, 0], [0, 0, 0, 0, 0]] };
        Assert.NotNull(LogSummary.TryOf(none, out _));
        Assert.Null(BesideView.TryOpen(none, out _)!.Own);
        var once = BesideView.TryOpen(Demo() with { Counted = [[0, 0, 0, 0, 0], [5, 4, 3, 5, 4]] }, out _)!;
        Assert.Equal(21, once.Own!.Sequence);
    }

    private static string Text(MakingDocument making) => Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making));
}
