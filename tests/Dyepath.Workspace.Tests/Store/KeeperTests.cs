using System.Net;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Shelf;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Work;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Store;

/// <summary>What a page says of where a project is, and where it is.</summary>
public sealed class KeeperTests : IDisposable
{
    private readonly ProjectDevice _device = new();
    private readonly ProjectHost _host = new();
    private readonly HandClock _clock = new();

    public void Dispose() => _host.Dispose();

    [Fact]
    public Task What_is_typed_is_on_the_device_at_once_and_on_the_host_when_the_hands_pause() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        Type(page, "Two");
        await Until(() => Kept(id) == "Two");
        Assert.Equal(SaveState.Saving, page.Keeper.State);
        Assert.Equal("One", Stored(id));
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Saved(page);
        Assert.Equal("Two", Stored(id));
    });

    [Fact]
    public Task A_store_that_is_cleared_is_written_again_and_nothing_else_is_said_meanwhile() => InPage(async () =>
    {
        _host.IsAway = true;
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("Here"));
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        _device.Clear();
        Assert.NotEqual(SaveState.OnDevice, page.Keeper.State);
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        Assert.Equal("Here", Kept(id));
    });

    [Fact]
    public Task A_store_that_was_cleared_by_signing_out_stays_empty() => InPage(async () =>
    {
        var page = Page();
        await page.Keeper.CreateAsync(Text("Mine"));
        await Saved(page);
        await Until(() => _device.All.Any());
        var asked = _host.Asked.Count;
        _host.Fails = (HttpStatusCode.Unauthorized, 1_000);
        _device.Clear();
        await Until(() => _host.Asked.Count > asked);
        Type(page, "Mine, still");
        _clock.Pass(TimeSpan.FromSeconds(30));
        await Until(() => page.Keeper.NeedsSignIn);
        Assert.Empty(_device.All);
    });

    [Fact]
    public Task A_project_that_was_deleted_in_another_tab_is_not_made_anew() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("Gone"));
        await Saved(page);
        await Until(() => _device.All.Any(c => c.Copy.IsSent));
        var other = Page();
        _host.Texts.Clear();
        Assert.Null(await other.Shelf.RemoveHereAsync(id));
        Assert.Equal(SaveState.Failed, page.Keeper.State);
        Assert.Contains("deleted in another tab", page.Keeper.Why, StringComparison.Ordinal);
        Type(page, "Gone?");
        _clock.Pass(TimeSpan.FromSeconds(60));
        await Task.Delay(20, TestContext.Current.CancellationToken);
        Assert.Empty(_device.All);
        Assert.Empty(_host.Texts);
    });

    [Fact]
    public Task What_is_damaged_on_the_host_is_mended_from_the_device_that_has_it_whole() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("Whole"));
        await Saved(page);
        await Until(() => _device.All.Any(c => c.Copy.IsSent));
        _host.Texts[id] = Text("Whole");
        var saves = _host.Asked.Count(a => a.StartsWith("PUT", StringComparison.Ordinal));
        _host.Fails = (HttpStatusCode.UnprocessableEntity, 1);
        var again = Page();
        await again.Keeper.OpenAsync(id);
        await Saved(again);
        Assert.Equal("Whole", again.Title);
        Assert.True(saves + 1 == _host.Asked.Count(a => a.StartsWith("PUT", StringComparison.Ordinal)), string.Join("; ", _host.Asked.Append(again.Keeper.State.ToString())));
    });

    [Fact]
    public Task Trying_again_in_the_background_changes_no_word() => InPage(async () =>
    {
        var page = Page();
        await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        _host.IsAway = true;
        Type(page, "Two");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        List<SaveState> said = [];
        page.Keeper.Changed += () => said.Add(page.Keeper.State);
        for (var tries = 0; tries < 4; tries++)
        {
            var asked = _host.Asked.Count;
            _clock.Pass(TimeSpan.FromSeconds(31));
            await Until(() => _host.Asked.Count > asked);
            // The answer comes, and the next alarm is set.
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
        Assert.DoesNotContain(SaveState.Saving, said);
    });

    [Fact]
    public Task Who_only_looked_is_not_asked() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        await Until(() => _device.All.Any(c => c.Copy.IsSent));
        // As another device has it, the picture that came with the plan is not on the host yet.
        _host.Texts[id] = Text("Two, from elsewhere");
        var again = Page();
        await again.Keeper.OpenAsync(id);
        Assert.Equal("Two, from elsewhere", again.Title);
        Assert.Equal(SaveState.Saved, again.Keeper.State);
    });

    [Fact]
    public Task A_device_that_refuses_is_said_and_tried_again_and_the_host_takes_it_meanwhile() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        (_device.Refuses, _host.IsAway) = (true, true);
        Type(page, "Two");
        await Until(() => page.Keeper.State == SaveState.Failed);
        Assert.Contains("The disk is full.", page.Keeper.Why, StringComparison.Ordinal);
        _host.IsAway = false;
        _clock.Pass(TimeSpan.FromSeconds(3));
        await Saved(page);
        Assert.Equal("Two", Stored(id));
        _device.Refuses = false;
        _clock.Pass(TimeSpan.FromSeconds(11));
        await Until(() => Kept(id) == "Two");
    });

    [Theory]
    [InlineData(HttpStatusCode.InternalServerError)]
    [InlineData(HttpStatusCode.ServiceUnavailable)]
    [InlineData(HttpStatusCode.TooManyRequests)]
    public Task A_host_that_cannot_just_now_is_asked_again(HttpStatusCode status) => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        _host.Fails = (status, 2);
        Type(page, "Two");
        await Until(() => Kept(id) == "Two");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        _clock.Pass(TimeSpan.FromSeconds(2.1));
        await Until(() => _host.Fails.Times == 0);
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        _clock.Pass(TimeSpan.FromSeconds(5.1));
        await Saved(page);
        Assert.Equal("Two", Stored(id));
    });

    [Fact]
    public Task What_the_host_will_not_take_is_said_and_kept_here_and_sent_with_the_next_change() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        _host.Fails = (HttpStatusCode.InsufficientStorage, 1);
        Type(page, "Two");
        await Until(() => Kept(id) == "Two");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        Assert.Equal("It cannot. Try later.", page.Keeper.Why);
        Type(page, "Three");
        await Until(() => Kept(id) == "Three");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Saved(page);
        Assert.Equal("", page.Keeper.Why);
    });

    [Fact]
    public Task An_answer_that_was_lost_is_no_conflict_not_even_after_a_kill() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        _host.LosesAnswers = true;
        Type(page, "Two");
        await Until(() => Kept(id) == "Two");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Until(() => Stored(id) == "Two");
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        Type(page, "Three");
        await Until(() => Kept(id) == "Three");
        _host.LosesAnswers = false;
        var again = Page();
        Assert.Equal(ServerReply.Done, await again.Keeper.OpenAsync(id));
        await Saved(again);
        Assert.Equal("Three", Stored(id));
        Assert.Null(again.Keeper.Theirs);
    });

    [Theory]
    [InlineData("mine")]
    [InlineData("theirs")]
    [InlineData("both")]
    public Task Two_tabs_that_type_at_once_keep_both_until_she_chooses_also_over_a_reload(string choice) => InPage(async () =>
    {
        var first = Page();
        var id = await first.Keeper.CreateAsync(Text("One"));
        await Saved(first);
        var second = Page();
        await second.Keeper.OpenAsync(id);
        _host.IsAway = true;
        Type(first, "First");
        Type(second, "Second");
        await Until(() => first.Keeper.State == SaveState.Conflict || second.Keeper.State == SaveState.Conflict);
        var asked = first.Keeper.State == SaveState.Conflict ? first : second;
        Type(asked, "Typed in the conflict");
        await Until(() => asked.Keeper.IsOnDevice && Kept(id, "Typed in the conflict"));
        _host.IsAway = false;
        var again = Page();
        await again.Keeper.OpenAsync(id);
        await Until(() => again.Keeper.State == SaveState.Conflict);
        string[] both = [again.Title, ProjectDocument.TryParse(again.Keeper.Theirs!.Text)!.Title];
        Assert.Contains("Typed in the conflict", both);
        Assert.Contains(asked == first ? "Second" : "First", both);
        var mine = again.Title;
        if (choice == "mine")
            again.Keeper.KeepMine();
        else if (choice == "theirs")
            again.Keeper.TakeTheirs();
        else
            await again.Keeper.KeepBoth();
        await Saved(again);
        if (choice == "both")
        {
            await Until(() => _host.Texts.Count == 2 && Stored(id) == both[1]);
            Assert.Contains(_host.Texts.Keys, k => Stored(k) == $"{mine} (my copy)");
        }
        else
            Assert.Equal(choice == "mine" ? both[0] : both[1], Stored(id));
    });

    [Fact]
    public Task The_other_is_what_the_other_tab_wrote_last_and_one_choice_ends_it_in_both() => InPage(async () =>
    {
        var (first, second, id) = await Asked("First", "Sec");
        Type(second, "Second");
        await Until(() => ProjectDocument.TryParse(first.Keeper.Theirs!.Text)!.Title == "Second");
        first.Keeper.TakeTheirs();
        Type(second, "Second, gone on");
        await Until(() => first.Title == "Second, gone on" && first.Keeper.Theirs is null && second.Keeper.Theirs is null);
        Assert.Equal("Second, gone on", second.Title);
        _host.IsAway = false;
        _clock.Pass(TimeSpan.FromSeconds(31));
        await Saved(first);
        await Saved(second);
        Assert.Equal("Second, gone on", Stored(id));
    });

    [Fact]
    public Task Hers_stays_hers_over_a_reload_and_a_new_tab_calls_neither_so() => InPage(async () =>
    {
        var (first, second, id) = await Asked("First", "Second");
        Type(second, "Second, later");
        await Until(() => Kept(id, "Second, later"));
        first.Close();
        var again = Page(reloaded: first);
        await again.Keeper.OpenAsync(id);
        await Until(() => again.Keeper.State == SaveState.Conflict);
        Assert.Equal("First", again.Title);
        Assert.True(again.Keeper.IsOwn);
        Assert.Equal("Second, later", ProjectDocument.TryParse(again.Keeper.Theirs!.Text)!.Title);
        var stranger = Page();
        await stranger.Keeper.OpenAsync(id);
        await Until(() => stranger.Keeper.State == SaveState.Conflict);
        Assert.False(stranger.Keeper.IsOwn);
        Assert.Equal((Now, Now), stranger.Keeper.ChangedAt);
    });

    [Theory]
    [InlineData(0, "title", true)]
    [InlineData(0, "story", false)]
    [InlineData(1, "title", false)]
    public Task What_is_written_over_a_text_that_could_not_be_seen_yet_is_a_conflict(int seconds, string place, bool asks) => InPage(async () =>
    {
        _host.IsAway = true;
        var first = Page();
        var id = await first.Keeper.CreateAsync(Text("One"));
        await Until(() => first.Keeper.State == SaveState.OnDevice);
        var second = Page();
        await second.Keeper.OpenAsync(id);
        Type(first, "A-rose");
        await Until(() => second.Title == "A-rose");
        _clock.Pass(TimeSpan.FromSeconds(seconds));
        second.Workbench.Set(place, "B-clay", place);
        Assert.Equal(asks, second.Keeper.Theirs is not null);
        if (asks)
        {
            await Until(() => first.Keeper.State == SaveState.Conflict && Kept(id, "A-rose") && Kept(id, "B-clay"));
            Assert.Equal("A-rose", first.Title);
            Assert.Equal("A-rose", ProjectDocument.TryParse(second.Keeper.Theirs!.Text)!.Title);
            Assert.Equal(("title", "A-rose", "B-clay"), second.Keeper.Differences.Select(d => (d.Place, d.Then, d.Now)).Single());
        }
        else
            await Until(() => first.Workbench.Document!.Typed(place) == "B-clay" && first.Keeper.Theirs is null);
    });

    /// <summary>Two tabs that changed the same title before either heard of the other.</summary>
    private async Task<(Tab First, Tab Second, string Id)> Asked(string one, string other)
    {
        var first = Page();
        var id = await first.Keeper.CreateAsync(Text("One"));
        await Saved(first);
        var second = Page();
        await second.Keeper.OpenAsync(id);
        _host.IsAway = true;
        Type(first, one);
        Type(second, other);
        await Until(() => first.Keeper.State == SaveState.Conflict && second.Keeper.State == SaveState.Conflict && Kept(id, one) && Kept(id, other));
        return (first, second, id);
    }

    [Fact]
    public Task A_host_that_does_not_answer_keeps_nobody_from_what_the_device_has() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        await Until(() => Kept(id) == "One");
        _host.Hangs = true;
        var again = Page();
        var opening = again.Keeper.OpenAsync(id);
        await Until(() => _host.Asked.Any(a => a.StartsWith("GET", StringComparison.Ordinal)));
        Assert.False(opening.IsCompleted);
        _clock.Pass(TimeSpan.FromSeconds(3.1));
        Assert.Equal(ServerReply.Done, await opening);
        Assert.Equal("One", again.Title);
    });

    [Fact]
    public Task A_device_that_does_not_answer_keeps_nobody_from_what_the_host_has() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        _device.Hangs = true;
        var again = Page();
        var opening = again.Keeper.OpenAsync(id);
        await Task.Delay(20, TestContext.Current.CancellationToken);
        Assert.False(opening.IsCompleted);
        Assert.Contains("This device's store has not answered yet", again.Keeper.WaitsFor, StringComparison.Ordinal);
        _clock.Pass(TimeSpan.FromSeconds(3.1));
        Assert.Equal(ServerReply.Done, await opening);
        Assert.Equal("One", again.Title);
        Assert.Empty(again.Keeper.WaitsFor);
    });

    [Fact]
    public Task What_a_slow_device_alone_has_is_in_view_once_it_answers() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        _host.IsAway = true;
        Type(page, "Two");
        await Until(() => Kept(id) == "Two");
        page.Keeper.Forget(id);
        page.Close();
        _host.IsAway = false;
        _device.Hangs = true;
        var again = Page();
        var opening = again.Keeper.OpenAsync(id);
        _clock.Pass(TimeSpan.FromSeconds(3.1));
        Assert.Equal(ServerReply.Done, await opening);
        Assert.Equal("One", again.Title);
        _device.Hangs = false;
        await Until(() => again.Title == "Two");
        Assert.Null(again.Keeper.Theirs);
    });

    [Fact]
    public Task A_host_that_lost_its_database_shows_what_only_this_device_has_and_gets_it_back() => InPage(async () =>
    {
        var page = Page();
        var sent = await page.Keeper.CreateAsync(Text("Sent"));
        await Saved(page);
        await Until(() => _device.All.Any(c => c.Id == sent && c.Copy.IsSent));
        _host.IsAway = true;
        var unsent = await page.Keeper.CreateAsync(Text("Unsent"));
        await Until(() => page.Keeper.State == SaveState.OnDevice);
        _host.IsAway = false;
        _host.LoseEverything();
        var again = Page();
        var list = await again.Shelf.ListAsync(archived: false);
        Assert.Equal(Whereabouts.OnlyHere, list.Single(e => e.Id == sent).Where);
        Assert.Equal(Whereabouts.Waiting, list.Single(e => e.Id == unsent).Where);
        await Until(() => _host.Texts.ContainsKey(unsent));
        Assert.Null(await again.Shelf.PutBackAsync(sent));
        Assert.Equal("Sent", Stored(sent));
        Assert.All(await again.Shelf.ListAsync(archived: false), e => Assert.Equal(Whereabouts.OnHost, e.Where));
    });

    [Fact]
    public Task A_host_that_got_an_older_text_back_takes_nothing_newer_away() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("Older"));
        await Saved(page);
        var older = _host.Texts[id];
        Type(page, "Newer");
        await Until(() => Kept(id) == "Newer");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Saved(page);
        await Until(() => _device.All.Any(c => c.Copy.IsSent && c.Copy.Content.Name == "Newer"));
        _host.LoseEverything();
        _host.Texts[id] = older;
        var again = Page();
        await again.Keeper.OpenAsync(id);
        await Until(() => again.Keeper.State == SaveState.Conflict);
        Assert.Equal("Newer", again.Title);
    });

    [Fact]
    public Task A_project_that_is_opened_and_changed_day_after_day_is_sent_each_time() => InPage(async () =>
    {
        var id = await Page().Keeper.CreateAsync(Text("Day 0"));
        for (var day = 1; day <= 450; day++)
        {
            var page = Page();
            await page.Keeper.OpenAsync(id);
            Assert.Equal($"Day {day - 1}", page.Title);
            Type(page, $"Day {day}");
            await Until(() => Kept(id) == $"Day {day}");
            _clock.Pass(TimeSpan.FromSeconds(0.8));
            await Saved(page);
            await Until(() => _device.All.Single(c => c.Id == id).Copy.IsSent);
            page.Close();
        }
        Assert.InRange(_device.All.Single().Copy.Lineage.Changes.Count, 1, 300);
    });

    [Fact]
    public Task Without_a_store_of_its_own_a_browser_works_with_the_host_alone() => InPage(async () =>
    {
        _device.Refuses = true;
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        Type(page, "Two");
        _clock.Pass(TimeSpan.FromSeconds(0.8));
        await Until(() => Stored(id) == "Two");
        var again = Page();
        Assert.Equal(ServerReply.Done, await again.Keeper.OpenAsync(id));
        Assert.Equal("Two", again.Title);
        Assert.Single(await again.Shelf.ListAsync(archived: false));
        Assert.NotNull(again.Shelf.DeviceWhy);
    });

    [Fact]
    public Task What_is_done_on_the_shelf_is_kept_as_what_is_typed_is() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        var shelf = Page().Shelf;
        _host.IsAway = true;
        Assert.Null(await shelf.RenameAsync(id, "Two"));
        Assert.Equal("Two", Kept(id));
        await Until(() => page.Title == "Two");
        _host.IsAway = false;
        Assert.Null(await shelf.CopyAsync(id));
        await Until(() => _host.Texts.Keys.Any(k => Stored(k) == "Two (copy)"));
    });

    [Fact]
    public Task What_is_deleted_where_the_device_keeps_nothing_is_not_made_anew() => InPage(async () =>
    {
        _device.Refuses = true;
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        Assert.Null(await page.Shelf.DeleteAsync(id));
        Assert.Null(page.Keeper.Id);
        page.Device.Online!();
        for (var turns = 0; turns < 20; turns++)
            await Task.Yield();
        Assert.Empty(_host.Texts);
    });

    [Fact]
    public Task A_change_of_what_is_put_away_meanwhile_comes_to_an_end() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Saved(page);
        await Until(() => _device.All.Any(c => c.Copy.IsSent));
        (_device.Refuses, _host.Hangs) = (true, true);
        var renaming = page.Shelf.RenameAsync(id, "Two");
        await Until(() => page.Keeper.Why.Length > 0);
        Assert.False(renaming.IsCompleted);
        page.Device.Removed!(id);
        await Until(() => renaming.IsCompleted);
        Assert.Equal("There is no such project any more.", await renaming);
    });

    [Fact]
    public Task The_picture_on_the_shelf_is_made_once_a_plan() => InPage(async () =>
    {
        var jobs = new JobsInHand();
        var page = Page(jobs);
        var id = await page.Keeper.CreateAsync(Documents.Demo().Text);
        await Until(() => jobs.Asked == 1);
        jobs.Finish(0);
        Assert.NotNull(page.Workbench.Plan);
        Type(page, "Two");
        await Until(() => Kept(id, "Two"));
        var picture = _device.All.Single().Copy.Content.Swatch;
        Type(page, "Three");
        await Until(() => Kept(id, "Three"));
        Assert.NotNull(picture);
        Assert.Same(picture, _device.All.Single().Copy.Content.Swatch);
    });

    private static string Text(string title) => $$"""{ "title": "{{title}}" }""";

    private static void Type(Tab page, string title) => page.Workbench.Set("title", title, "title");

    private static Task Saved(Tab page) => Until(() => page.Keeper.State == SaveState.Saved);

    private string? Stored(string id) => _host.Texts.TryGetValue(id, out var text) ? ProjectText.Of(text).Name : null;

    private string? Kept(string id) => _device.All.Where(c => c.Id == id).Select(c => c.Copy.Content.Name).SingleOrDefault();

    private bool Kept(string id, string title) => _device.All.Any(c => c.Id == id && c.Copy.Content.Name == title);

    private Tab Page(IJobs? jobs = null, Tab? reloaded = null)
    {
        var (workbench, tab, server) = (Documents.Workbench(jobs), _device.Tab(reloaded?.Device), new ServerShelf(_host.Client));
        var keeper = new Keeper(workbench, tab, server, tab, _clock);
        return new Tab(workbench, keeper, new ProjectShelf(server, tab, keeper), tab);
    }

    private sealed record Tab(Workbench Workbench, Keeper Keeper, ProjectShelf Shelf, ProjectDevice.ProjectTab Device)
    {
        public void Close() => Device.Close();

        public string Title => Workbench.Document!.Title;
    }
}
