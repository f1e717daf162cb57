using System.Net;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Shelf;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Work;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Store;

/// <summary>What is said where a project cannot be opened, sent, renamed or kept, word for word.</summary>
public sealed class KeeperWordsTests : IDisposable
{
    private const string Id = "0193b5c2-0d60-7000-8000-0000000000b1";
    private const string Away = "The host cannot be reached just now: try again once you are connected.";
    private const string NoDocument = "What is stored under this name is not a project document.";

    private readonly ProjectDevice _device = new();
    private readonly ProjectHost _host = new();
    private readonly HandClock _clock = new();

    public void Dispose() => _host.Dispose();

    [Fact]
    public Task What_is_no_document_is_neither_opened_nor_renamed_nor_copied() => InPage(async () =>
    {
        _host.Texts[Id] = "no document";
        var page = Page();
        Assert.Equal(ServerReply.Refused, await page.Keeper.OpenAsync(Id));
        Assert.Null(page.Keeper.Id);
        Assert.Equal(NoDocument, await page.Shelf.RenameAsync(Id, "Two"));
        Assert.Equal(NoDocument, await page.Shelf.CopyAsync(Id));
        Assert.Equal("no document", _host.Texts[Id]);
    });

    [Fact]
    public Task What_is_nowhere_is_said_to_be_no_more_or_out_of_reach() => InPage(async () =>
    {
        var page = Page();
        Assert.Equal(ServerReply.Missing, await page.Keeper.OpenAsync(Id));
        Assert.Equal("There is no such project any more.", await page.Shelf.RenameAsync(Id, "Two"));
        _host.IsAway = true;
        Assert.Equal(ServerReply.Away, await page.Keeper.OpenAsync(Id));
        Assert.Equal(Away, await page.Shelf.RenameAsync(Id, "Two"));
        Assert.Equal("It cannot be read: the host cannot be reached just now, or what it has is damaged. Open it to see which.", await page.Shelf.CopyAsync(Id));
        _host.IsAway = false;
        foreach (var (status, reply) in new[]
        {
            (HttpStatusCode.Unauthorized, ServerReply.SignIn), (HttpStatusCode.UnprocessableEntity, ServerReply.Damaged), (HttpStatusCode.BadRequest, ServerReply.Refused),
            (HttpStatusCode.ServiceUnavailable, ServerReply.Away),
        })
        {
            _host.Fails = (status, 1);
            Assert.Equal(reply, await page.Keeper.OpenAsync(Id));
        }
    });

    [Fact]
    public Task What_the_host_does_not_take_when_it_is_asked_to_is_said() => InPage(async () =>
    {
        var page = Page();
        _host.IsAway = true;
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Until(() => page.Keeper.Alone);
        Assert.Equal("The host cannot be reached just now. It is sent when it can.", await page.Keeper.SendAsync(id));
        _host.IsAway = false;
        _host.Fails = (HttpStatusCode.Unauthorized, 1);
        Assert.Equal("The host asks for its access token first.", await page.Keeper.SendAsync(id));
        Assert.True(page.Keeper.NeedsSignIn);
        _host.Fails = (HttpStatusCode.BadRequest, 1);
        Assert.Equal("It cannot. Try later.", await page.Keeper.SendAsync(id));
        Assert.False(page.Keeper.NeedsSignIn);
        Assert.Equal("It cannot. Try later.", page.Keeper.Why);
        Assert.Null(await page.Keeper.SendAsync(id));
        Assert.False(page.Keeper.Alone);
        Assert.Equal(("One", ""), (ProjectText.Of(_host.Texts[id]).Name, page.Keeper.Why));
        _host.IsAway = true;
        var other = await page.Keeper.AddAsync(ProjectText.Of(Text("Mine")));
        _host.IsAway = false;
        _host.Texts[other] = Text("Theirs");
        Assert.Equal("The host has another text of it: open it and choose.", await page.Keeper.SendAsync(other));
        Assert.Equal("Theirs", ProjectText.Of(_host.Texts[other]).Name);
        Assert.Equal("It was changed in another place too: open it and choose.", await page.Shelf.RenameAsync(other, "Both"));
    });

    [Fact]
    public Task What_neither_the_device_nor_the_host_keeps_is_said_with_the_devices_reason() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Until(() => page.Keeper.State == SaveState.Saved);
        Assert.False(page.Keeper.IsNowhere);
        (_device.Refuses, _host.IsAway) = (true, true);
        Assert.Equal("This device did not keep it: The disk is full..", await page.Shelf.RenameAsync(id, "Two"));
        Assert.Equal(("Two", "This device did not keep it: The disk is full..", true, false), (page.Title, page.Keeper.Why, page.Keeper.IsNowhere, page.Keeper.IsOnDevice));
        Assert.Equal("the new name", page.Workbench.Undoing);
    });

    [Fact]
    public Task A_device_that_hangs_is_waited_for_half_a_minute() => InPage(async () =>
    {
        var page = Page();
        await page.Keeper.CreateAsync(Text("One"));
        await Until(() => page.Keeper.State == SaveState.Saved);
        (_device.Hangs, _host.IsAway) = (true, true);
        page.Workbench.Set("title", "Two", "title");
        await Task.Delay(20, TestContext.Current.CancellationToken);
        _clock.Pass(TimeSpan.FromSeconds(29.9));
        Assert.Equal(SaveState.Saving, page.Keeper.State);
        _clock.Pass(TimeSpan.FromSeconds(0.2));
        await Until(() => page.Keeper.State == SaveState.Failed);
        Assert.Equal("This device did not keep it: it does not answer.", page.Keeper.Why);
        _device.Hangs = false;
    });

    [Fact]
    public Task What_a_project_waits_for_is_said_while_it_is_opened() => InPage(async () =>
    {
        var page = Page();
        Assert.Equal("", page.Keeper.WaitsFor);
        (_device.Hangs, _host.Hangs) = (true, true);
        var opening = page.Keeper.OpenAsync(Id);
        Assert.Equal("This device's store has not answered yet", page.Keeper.WaitsFor);
        _clock.Pass(TimeSpan.FromSeconds(3.1));
        await Until(() => _host.Asked.Count > 0);
        Assert.Equal("Neither this device's store nor the host has answered yet", page.Keeper.WaitsFor);
        _device.Hangs = false;
        await Until(() => page.Keeper.WaitsFor == "The host has not answered yet");
        Assert.False(opening.IsCompleted);
        // Another one is wanted meanwhile: what the first comes to opens nothing.
        _host.Hangs = false;
        _host.Texts[Other] = Text("Other");
        Assert.Equal(ServerReply.Done, await page.Keeper.OpenAsync(Other));
        Assert.Equal(("", Other, "Other"), (page.Keeper.WaitsFor, page.Keeper.Id, page.Title));
    });

    private const string Other = "0193b5c2-0d60-7000-8000-0000000000b2";

    [Fact]
    public Task Of_two_that_are_opened_one_after_the_other_the_last_is_open() => InPage(async () =>
    {
        (_host.Texts[Id], _host.Texts[Other]) = (Text("One"), Text("Other"));
        var page = Page();
        var (first, second) = (page.Keeper.OpenAsync(Id), page.Keeper.OpenAsync(Other));
        Assert.Equal((ServerReply.Done, ServerReply.Done), (await first, await second));
        Assert.Equal((Other, "Other"), (page.Keeper.Id, page.Title));
        // Opened again it is as it is, and nothing is asked.
        var asked = _host.Asked.Count;
        page.Workbench.Set("title", "Typed", "title");
        Assert.Equal(ServerReply.Done, await page.Keeper.OpenAsync(Other));
        Assert.Equal(("Typed", asked), (page.Title, _host.Asked.Count));
    });

    [Fact]
    public Task What_was_deleted_elsewhere_says_so_and_both_is_a_copy_of_ones_own() => InPage(async () =>
    {
        var page = Page();
        Assert.Equal((SaveState.Saved, "", null), (page.Keeper.State, page.Keeper.Why, page.Keeper.Id));
        Assert.Empty(page.Keeper.Differences);
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Until(() => page.Keeper.State == SaveState.Saved);
        Assert.Equal((Now, null), page.Keeper.ChangedAt);
        page.Device.Removed!(id);
        Assert.Equal("This project was deleted in another tab. Copy what you still need from this page.", page.Keeper.Why);
        Assert.Equal(SaveState.Failed, page.Keeper.State);
        page.Keeper.Forget("another");
        Assert.Equal(id, page.Keeper.Id);
        page.Keeper.Forget(id);
        Assert.Null(page.Keeper.Id);
    });

    [Fact]
    public Task What_the_shelf_cannot_do_is_said() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Until(() => page.Keeper.State == SaveState.Saved && _device.All.Any(c => c.Copy.IsSent));
        _host.Fails = (HttpStatusCode.ServiceUnavailable, 1);
        Assert.Equal(Away, await page.Shelf.ArchiveAsync(id, archived: true));
        _host.Fails = (HttpStatusCode.BadRequest, 1);
        Assert.Equal("It cannot. Try later.", await page.Shelf.ArchiveAsync(id, archived: true));
        _device.Refuses = true;
        Assert.Equal("This device did not do it: The disk is full..", await page.Shelf.RemoveHereAsync(id));
    });

    /// <summary>Sending a project is a look at it, not a farewell: the host's text is asked for, and nothing is sent as by a page that is left.</summary>
    [Fact]
    public Task What_is_sent_again_is_looked_at_first() => InPage(async () =>
    {
        var page = Page();
        var id = await page.Keeper.CreateAsync(Text("One"));
        await Until(() => page.Keeper.State == SaveState.Saved);
        var asked = _host.Asked.Count;
        Assert.Null(await page.Keeper.SendAsync(id));
        Assert.Equal([$"GET api/projects/{id}"], _host.Asked.Skip(asked));
    });

    private static string Text(string title) => $$"""{ "title": "{{title}}" }""";

    private Tab Page()
    {
        var (workbench, tab, server) = (Documents.Workbench(), _device.Tab(), new ServerShelf(_host.Client));
        var keeper = new Keeper(workbench, tab, server, tab, _clock);
        return new Tab(workbench, keeper, new ProjectShelf(server, tab, keeper), tab);
    }

    private sealed record Tab(Workbench Workbench, Keeper Keeper, ProjectShelf Shelf, ProjectDevice.ProjectTab Device)
    {
        public string Title => Workbench.Document!.Title;
    }
}
