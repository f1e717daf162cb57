using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using Dyepath.Client.Making.Beside;
using Dyepath.Client.Making.Handing;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Work;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Making;

public sealed class MakePageTests : BunitContext
{
    private readonly DeviceHere _device = new();
    private readonly HostHere _host = new();
    private readonly PhoneHere _phone = new();

    public MakePageTests()
    {
        Services.AddMaking(Documents.Workbench(), _device, _host, _phone);
    }

    private IEnumerable<Entry> Log => _device.Kept[MakingBench.Id].Content.Log;

    [Fact]
    public async Task The_own_yarn_comes_before_the_first_stitch_and_the_cautions_with_it()
    {
        var page = Open(MakingBench.Demo());
        page.WaitForElement(".make-count");
        Assert.Contains("Hands: pause every 30 to 60 minutes", page.Markup, StringComparison.Ordinal);
        var boxes = page.FindAll(".make-count input").Count;
        for (var i = 0; i < boxes; i++)
        {
            var (box, count) = (i, ((int[])[5, 5, 4, 4, 3, 3, 5, 5, 4, 4])[i].ToString(CultureInfo.InvariantCulture));
            await page.InvokeAsync(() => page.FindAll(".make-count input")[box].InputAsync(count));
        }
        Assert.Contains("Your yarn works up as the pattern's.", page.Markup, StringComparison.Ordinal);
        await Click(page, () => Button(page, "Begin as the pattern says"));
        page.WaitForElement(".make-done");
        Assert.Contains("[5,4,3,5,4]", _device.Kept[MakingBench.Id].Content.Design.Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_second_runtime_everything_is_worked_out_on_the_page()
    {
        Services.AddSingleton<IJobs>(new JobsThatFail());
        var page = Open(MakingBench.Demo());
        page.WaitForElement(".make-count", TimeSpan.FromSeconds(10));
        page.WaitForAssertion(() => Assert.Contains("Hands: pause every 30 to 60 minutes", page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(10));
    }

    [Fact]
    public void A_piece_that_fails_to_be_laid_out_says_so()
    {
        Services.AddSingleton<IJobs>(new JobsThatFail(new InvalidOperationException("divided by nothing")));
        var page = Open(MakingBench.Demo());
        page.WaitForAssertion(() => Assert.Contains("This piece cannot be laid out", page.Markup, StringComparison.Ordinal));
        Assert.Contains("It could not be laid out just now.", page.Markup, StringComparison.Ordinal);
        page.WaitForAssertion(() => Assert.Equal("divided by nothing", Services.GetRequiredService<Faults>().Last?.Message));
    }

    [Fact]
    public async Task The_screen_sleeps_once_the_page_is_left_also_while_the_piece_is_laid_out()
    {
        var jobs = new JobsInHand();
        Services.AddSingleton<IJobs>(jobs);
        var page = Open(MakingBench.Demo(1));
        await MakingBench.Until(() => jobs.Asked == 1);
        await DisposeComponentsAsync();
        await Renderer.Dispatcher.InvokeAsync(() => jobs.Finish(0));
        await Renderer.Dispatcher.InvokeAsync(() => { });
        Assert.False(_phone.IsAwake);
    }

    [Fact]
    public async Task A_page_that_is_left_before_the_piece_is_open_begins_nothing()
    {
        var jobs = new JobsInHand();
        Services.AddSingleton<IJobs>(jobs);
        var keeper = Services.GetRequiredService<MakingKeeper>();
        Open(MakingBench.Demo(1));
        await DisposeComponentsAsync();
        await MakingBench.Until(() => keeper.Piece is not null);
        await Renderer.Dispatcher.InvokeAsync(() => { });
        Assert.Equal(0, jobs.Asked);
    }

    [Fact]
    public void A_piece_that_is_damaged_on_the_host_says_where_it_may_still_be()
    {
        (_host.Texts[MakingBench.Id], _host.IsDamaged) = ("?", true);
        var page = Render<MakePage>(p => p.Add(m => m.Id, MakingBench.Id));
        page.WaitForAssertion(() => Assert.Contains("What the host has stored of it is damaged.", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_tap_is_kept_before_it_is_shown_and_can_be_taken_back()
    {
        var page = AtRow(1);
        await Click(page, () => page.Find(".make-three .on"));
        page.WaitForAssertion(() => Assert.StartsWith("Row 2 (WS)", page.Find("h1").TextContent, StringComparison.Ordinal));
        Assert.Equal((EntryKind.Row, 0), (Log.Last().Kind, Log.Last().Phase));
        Assert.Equal([true], _phone.Buzzed);
        await Click(page, () => page.Find(".make-back"));
        page.WaitForAssertion(() => Assert.StartsWith("Row 1 (RS)", page.Find("h1").TextContent, StringComparison.Ordinal));
        Assert.Equal(EntryKind.Back, Log.Last().Kind);
    }

    [Fact]
    public async Task A_tap_that_the_device_did_not_keep_says_so()
    {
        var page = AtRow(1);
        (_device.IsFull, _host.IsAway) = (true, true);
        await Click(page, () => page.Find(".make-done"));
        page.WaitForAssertion(() => Assert.Contains("Not saved", page.Find(".save").TextContent, StringComparison.Ordinal));
        Assert.Contains("Your last tap stands on this page alone. This device did not keep it", page.Find(".make-main [role=alert]").TextContent, StringComparison.Ordinal);
        (_device.IsFull, _host.IsAway) = (false, false);
        await Click(page, () => page.Find(".make-done"));
        page.WaitForAssertion(() => Assert.StartsWith("Row 3", page.Find("h1").TextContent, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.Equal(2, Log.Count(e => e.Kind == EntryKind.Row)));
    }

    [Fact]
    public void Keys_do_what_taps_do()
    {
        var page = AtRow(1);
        foreach (var (key, row) in (IEnumerable<(string, int)>)[("done", 2), ("on", 3), ("back", 2), ("late", 3)])
        {
            page.InvokeAsync(() => _phone.Pressed!(key));
            page.WaitForAssertion(() => Assert.StartsWith($"Row {row} ", page.Find("h1").TextContent, StringComparison.Ordinal));
        }
        Assert.Equal([null, 0, null, -1], Log.TakeLast(4).Select(e => e.Phase));
    }

    [Fact]
    public async Task What_is_far_off_is_counted_once_more()
    {
        var page = AtRow(6, phase: 0);
        await EndsFarOff(page, row: 6);
        page.WaitForElement(".make-doubt");
        var before = Log.Count();
        await Click(page, () => Button(page, "I miscounted"));
        Assert.Equal(before, Log.Count());
        Assert.Empty(page.FindAll(".make-doubt"));
    }

    [Fact]
    public async Task Run_by_run_it_says_the_colour_that_comes()
    {
        _phone.Texts[BesideSettings.Name] = new BesideSettings { ByRuns = true, Speaks = true }.Write();
        var page = AtRow(1);
        var next = page.FindAll(".make-runs li")[1].TextContent;
        await Click(page, () => page.Find(".make-done"));
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".make-runs .past")));
        Assert.EndsWith(" 4 shallows", _phone.Said.Last(), StringComparison.Ordinal);
        Assert.StartsWith("This deep water is on the count; ", _phone.Said.Last(), StringComparison.Ordinal);
        Assert.StartsWith("4", next, StringComparison.Ordinal);
        await Click(page, () => Button(page, "One late"));
        page.WaitForAssertion(() => Assert.Equal([0, -1], Log.TakeLast(2).Select(e => e.Phase!.Value)));
    }

    [Fact]
    public void Rows_run_away_from_the_hooks_hand()
    {
        Assert.Contains("worked from right to left", AtRow(1).Find(".make-way").TextContent, StringComparison.Ordinal);
        _phone.Texts[BesideSettings.Name] = new BesideSettings { LeftHook = true }.Write();
        Assert.Contains("worked from left to right", Render<MakePage>(p => p.Add(m => m.Id, MakingBench.Id)).WaitForElement(".make-way").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_row_that_is_not_worth_keeping_says_what_it_should_read()
    {
        var page = AtRow(3, phase: 0);
        await EndsFarOff(page, row: 3);
        page.WaitForElement(".make-doubt");
        await Click(page, () => Button(page, "It is so"));
        page.WaitForAssertion(() => Assert.StartsWith("Row 4", page.Find("h1").TextContent, StringComparison.Ordinal));
        Assert.Contains("rip back", page.Find(".make-advice").TextContent, StringComparison.Ordinal);
        Assert.Contains("Row 3 should read: ", page.Markup, StringComparison.Ordinal);
        // Within reach, whatever else is to be tapped.
        Assert.NotNull(page.Find(".make-foot .make-act button"));
        await Click(page, () => page.Find(".make-done"));
        page.WaitForAssertion(() => Assert.Contains("You worked on, so row 3 stays as it is.", page.Markup, StringComparison.Ordinal));
        Assert.Equal("I ripped row 3 back after all", page.Find(".make-foot .make-act button").TextContent);
        await Click(page, () => page.Find(".make-back"));
        await Click(page, () => Button(page, "I ripped back to the beginning of row 3"));
        page.WaitForAssertion(() => Assert.Equal((EntryKind.At, 3), (Log.Last().Kind, Log.Last().To)));
    }

    /// <summary>Two stitches early: one sentence, and one tile marked, that where the sentence's stitches end.</summary>
    [Fact]
    public async Task Advice_marks_the_tile_up_to_which_it_goes()
    {
        var page = AtRow(2, phase: 2);
        await Click(page, () => Button(page, "I see"));
        var sentence = page.Find(".make-advice").TextContent;
        Assert.Contains(", up to the mark, then ", sentence, StringComparison.Ordinal);
        var stitches = sentence.Split(' ').Select(word => int.TryParse(word, CultureInfo.InvariantCulture, out var n) ? n : 0).Sum();
        var tiles = page.FindAll(".make-runs li").ToList();
        var marked = tiles.FindIndex(t => t.ClassList.Contains("mark"));
        Assert.Equal(stitches, tiles.Take(marked).Sum(t => int.Parse(t.QuerySelector(".number")!.TextContent, CultureInfo.InvariantCulture)));
        Assert.Contains("up to here", tiles[marked].TextContent, StringComparison.Ordinal);
        Assert.Single(page.FindAll(".make-runs .mark"));
        await Click(page, () => page.Find("#make-to-colours"));
        Assert.Equal(sentence, page.Find(".make-advice").TextContent);
        // Right where she looked, nothing else says how far off colours are.
        Assert.DoesNotContain("give or take", page.Markup, StringComparison.Ordinal);
        Assert.Contains("“A touch tighter”: on a strip worked so", page.Find(".make-how").TextContent, StringComparison.Ordinal);
    }

    /// <summary>What a word comes to is shown once, on her own colours, and stays to be found.</summary>
    [Fact]
    public async Task The_first_word_is_taught_on_a_strip()
    {
        var page = AtRow(2, phase: 2);
        Assert.Contains("on a strip worked so", page.Find(".make-lesson").TextContent, StringComparison.Ordinal);
        await Click(page, () => Button(page, "I see"));
        Assert.Empty(page.FindAll(".make-lesson"));
        Assert.True(BesideSettings.Read(_phone.Texts[BesideSettings.Name]).Taught);
        Assert.Empty(AtRow(3, phase: 2).FindAll(".make-lesson"));
        await Click(page, () => page.Find("#make-to-colours"));
        Assert.Equal(4, page.FindAll(".make-how .make-strip").Count);
    }

    /// <summary>Each of them one tap from the row, in mid-row too, and the page says that it was noted.</summary>
    [Fact]
    public async Task What_comes_between_is_one_tap()
    {
        var page = AtRow(2, phase: 0);
        await Click(page, () => page.Find(".make-looks button"));
        foreach (var (name, kind) in (IEnumerable<(string, EntryKind)>)[("New ball", EntryKind.Ball), ("Knot in the yarn", EntryKind.Knot), ("Cut and joined", EntryKind.Join), ("Smaller hook", EntryKind.Hook), ("Larger hook", EntryKind.Hook)])
        {
            await Click(page, () => Button(page, name));
            page.WaitForAssertion(() => Assert.Equal(kind, Log.Last().Kind));
            page.WaitForAssertion(() => Assert.Contains("noted", page.Find(".make-noted").TextContent, StringComparison.Ordinal));
        }
        await page.InvokeAsync(() => page.Find("#make-stopped").InputAsync("47"));
        await page.InvokeAsync(() => page.Find(".make-between form").SubmitAsync());
        page.WaitForAssertion(() => Assert.StartsWith("You stopped after 47 stitches of this row: ", page.Find(".make-noted").TextContent, StringComparison.Ordinal));
        Assert.Equal((EntryKind.Stop, 47), (Log.Last().Kind, Log.Last().To));
        Assert.StartsWith("Row 2", page.Find("h1").TextContent, StringComparison.Ordinal);
    }

    /// <summary>Where to look, and where she looked, is seen among the tiles; nothing looks chosen that is not.</summary>
    [Fact]
    public async Task The_place_of_a_look_is_marked_among_the_tiles()
    {
        var page = AtRow(2, phase: 0);
        var tiles = page.FindAll(".make-runs li").ToList();
        var at = tiles.FindIndex(t => t.ClassList.Contains("look"));
        Assert.Contains($"after {tiles.Take(at).Sum(t => int.Parse(t.QuerySelector(".number")!.TextContent, CultureInfo.InvariantCulture))} stitches", page.Find("#look-title").TextContent, StringComparison.Ordinal);
        await Click(page, () => page.Find(".make-looks .on"));
        page.WaitForAssertion(() => Assert.Equal(at, page.FindAll(".make-runs .past").Count));
        Assert.Contains("you looked", page.FindAll(".make-runs li")[at].TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".make-runs .look"));
    }

    [Fact]
    public async Task A_second_look_in_mid_row_is_one_tap()
    {
        // These hands are thought to wander by 2 %: over 94 stitches that matters.
        var page = AtRow(2, phase: 0);
        await Click(page, () => page.Find(".make-looks .on"));
        page.WaitForAssertion(() => Assert.Equal((EntryKind.Look, 0), (Log.Last().Kind, Log.Last().Phase)));
        var runs = Log.Last().To!.Value;
        Assert.InRange(runs, 8, 16);
        Assert.StartsWith("Row 2", page.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".make-looks"));
        Assert.Contains("is on the count", page.Find(".make-advice").TextContent, StringComparison.Ordinal);
        await Click(page, () => page.Find(".make-three .on"));
        page.WaitForAssertion(() => Assert.StartsWith("Row 3", page.Find("h1").TextContent, StringComparison.Ordinal));
    }

    /// <summary>Too far for hands, and ripping back was no choice of hers: the yarn is cut, and she says so where she is told to.</summary>
    [Fact]
    public async Task What_is_cut_is_reported_where_it_is_advised()
    {
        var page = AtRow(2, phase: 8);
        Assert.Contains("rip back to the beginning of row 1", page.Find(".make-advice").TextContent, StringComparison.Ordinal);
        var on = AtRow(3, phase: 8);
        Assert.Matches("cut the yarn, leave out [0-9]+ cm of it, and join it again", on.Find(".make-advice").TextContent);
        await Click(on, () => Button(on, "I cut and joined it"));
        on.WaitForAssertion(() => Assert.StartsWith("Carry on", on.Find(".make-advice").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public void A_finished_part_goes_on_with_the_next_and_the_screen_sleeps_at_the_end()
    {
        var log = new List<Entry>();
        var view = BesideView.TryOpen(MakingBench.Demo(), out _)!;
        for (var part = 0; part < view.Order.Parts.Length; part++)
        {
            if (part > 0)
                log.Add(new Entry(EntryKind.Part, MakingBench.Now, To: part + 1));
            log.AddRange(view.Order.Parts[part].Steps.Select(s => new Entry(s is Core.Making.Order.RowStep ? EntryKind.Row : EntryKind.Step, MakingBench.Now)));
        }
        var page = Open(MakingBench.Demo() with { Log = [.. log] });
        page.WaitForAssertion(() => Assert.Contains("Everything is done.", page.Markup, StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".make-done"));

        var front = view.Order.Parts[0].Steps.Length;
        var half = Open(MakingBench.Demo() with { Log = [.. log.Take(front)] });
        half.WaitForAssertion(() => Assert.True(half.FindAll(".make-done").Count == 1, half.Markup));
        Assert.Contains("with Back", half.Find(".make-done").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Few_looks_give_no_figures()
    {
        var page = AtRow(5, phase: 0);
        await Click(page, () => page.Find("#make-to-pieces"));
        await Click(page, () => Button(page, "What does the log say of my hands?"));
        page.WaitForAssertion(() => Assert.Contains("Too few rows are read yet to know your hands.", page.Markup, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"rate":1e300,"voice":null}""")]
    public void Settings_that_cannot_be_read_are_the_usual_ones(string? kept)
    {
        var settings = BesideSettings.Read(kept);
        Assert.True(settings is { Buzzes: true, StaysAwake: true, ByRuns: false, Voice: "" });
        Assert.InRange(settings.Rate, 0.5, 2);
    }

    [Theory]
    [InlineData("""{"from":"Tideline, M","spread":0.012,"memory":40}""", "1.2 %")]
    [InlineData("""{"from":"Tideline, M","spread":7,"memory":40}""", null)]
    [InlineData("""{"spread":0.01,"memory":40}""", null)]
    [InlineData("x", null)]
    public void Hands_that_are_kept_fit_a_design(string kept, string? spread) => Assert.Equal(spread, KeptHands.Read(kept)?.SpreadText);

    /// <summary>Says that the row ended half a sequence off.</summary>
    private static async Task EndsFarOff(IRenderedComponent<MakePage> page, int row)
    {
        var view = BesideView.TryOpen(MakingBench.Demo(), out _)!;
        var end = Core.Making.Drift.RowEnd.Looks(view.Order.Parts[0].Planned!, row - 1, 10);
        await Click(page, () => page.FindAll(".make-three button")[^1]);
        await Click(page, () => page.FindAll(".make-other .make-colour").Single(b => b.TextContent.EndsWith(view.Names[end.Colour], StringComparison.Ordinal)));
        for (var more = 1; more < end.Count; more++)
            await Click(page, () => page.Find("[aria-label='One more']"));
        await Click(page, () => Button(page, "The row ended so"));
    }

    private IRenderedComponent<MakePage> AtRow(int row, int? phase = null)
    {
        var view = BesideView.TryOpen(MakingBench.Demo(), out _)!;
        var before = view.Order.Parts[0].StepOf(0);
        var page = Open(MakingBench.Demo() with
        {
            Log =
            [
                .. Enumerable.Repeat(new Entry(EntryKind.Step, MakingBench.Now), before),
                .. Enumerable.Repeat(new Entry(EntryKind.Row, MakingBench.Now, phase), row - 1),
            ],
        });
        page.WaitForElement(".make-done");
        return page;
    }

    private IRenderedComponent<MakePage> Open(MakingDocument making)
    {
        var id = _device.Kept.Count == 0 ? MakingBench.Id : $"{MakingBench.Id[..^1]}{_device.Kept.Count + 1}";
        _device.Put(id, Piece.Of(making, MakingBench.Now));
        return Render<MakePage>(p => p.Add(m => m.Id, id));
    }

    /// <summary>Found and clicked in one go, whatever is drawn meanwhile.</summary>
    private static Task Click(IRenderedComponent<MakePage> page, Func<IElement> what) => page.InvokeAsync(() => what().ClickAsync());

    private static IElement Button(IRenderedComponent<MakePage> page, string name) =>
        page.FindAll("button").Single(b => b.TextContent.Trim() == name);
}
