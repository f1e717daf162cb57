using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Shelf;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Store;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Shelf;

/// <summary>What can be done to projects without opening them.</summary>
public sealed class ProjectShelfTests : IDisposable
{
    private readonly ProjectDevice _device = new();
    private readonly ProjectHost _host = new();
    private readonly HandClock _clock = new();

    public void Dispose() => _host.Dispose();

    [Fact]
    public Task What_the_host_has_is_listed_and_what_waits_here_says_so() => InPage(async () =>
    {
        var shelf = Shelf();
        var one = await shelf.AddAsync(Titled("One"));
        await Until(() => _host.Texts.Count == 1);
        _host.IsAway = true;
        var two = await shelf.AddAsync(Titled("Two"));
        await Until(() => _device.All.Any(c => c.Id == two));
        var away = await shelf.ListAsync(archived: false);
        Assert.True(shelf.Away);
        Assert.False(shelf.NeedsSignIn);
        Assert.Equal(["One", "Two"], away.Select(e => e.Name).Order());
        Assert.Empty(await shelf.ListAsync(archived: true));
        _host.IsAway = false;
        shelf = Shelf();
        var back = await shelf.ListAsync(archived: false);
        Assert.False(shelf.Away);
        Assert.Equal((Whereabouts.OnHost, Whereabouts.Waiting), (back.Single(e => e.Id == one).Where, back.Single(e => e.Id == two).Where));
        Assert.Equal(back.OrderByDescending(e => e.UpdatedAt), back);
        // What waited is sent by listing it.
        await Until(() => _host.Texts.ContainsKey(two));
    });

    [Fact]
    public Task A_host_that_asks_for_its_key_is_not_away() => InPage(async () =>
    {
        _host.Fails = (System.Net.HttpStatusCode.Unauthorized, 9);
        var shelf = Shelf();
        await shelf.ListAsync(archived: false);
        Assert.Equal((false, true, null), (shelf.Away, shelf.NeedsSignIn, shelf.DeviceWhy));
        _device.Refuses = true;
        await shelf.ListAsync(archived: false);
        Assert.Equal("The disk is full.", shelf.DeviceWhy);
    });

    [Fact]
    public Task A_copy_is_called_one_and_a_name_is_changed_where_the_text_is() => InPage(async () =>
    {
        var shelf = Shelf();
        var id = await shelf.AddAsync(Titled("Tide"));
        await Until(() => _host.Texts.ContainsKey(id));
        Assert.Null(await shelf.CopyAsync(id));
        await Until(() => _host.Texts.Count == 2);
        Assert.Equal(["Tide", "Tide (copy)"], (await shelf.ListAsync(false)).Select(e => e.Name).Order());
        Assert.Null(await shelf.RenameAsync(id, "Ebb"));
        await Until(() =>
        {
            _clock.Pass(TimeSpan.FromSeconds(1));
            return ProjectText.Of(_host.Texts[id]).Name == "Ebb";
        });
        Assert.Contains("\"title\": \"Ebb\"", await shelf.TextAsync(id), StringComparison.Ordinal);
        Assert.Null(await shelf.TextAsync("0193b5c2-0d60-7000-8000-0000000000ff"));
        Assert.Equal(
            "It cannot be read: the host cannot be reached just now, or what it has is damaged. Open it to see which.",
            await shelf.CopyAsync("0193b5c2-0d60-7000-8000-0000000000ff"));
    });

    [Fact]
    public Task What_is_deleted_is_nowhere_and_what_the_host_keeps_stays() => InPage(async () =>
    {
        var shelf = Shelf();
        var id = await shelf.AddAsync(Titled("Tide"));
        await Until(() => _host.Texts.ContainsKey(id) && _device.All.Any(c => c.Copy.IsSent));
        _host.IsAway = true;
        Assert.NotNull(await shelf.DeleteAsync(id));
        Assert.Contains(_device.All, c => c.Id == id);
        _host.IsAway = false;
        Assert.Null(await shelf.DeleteAsync(id));
        Assert.Empty(_device.All);
        Assert.Empty(_host.Texts);
    });

    [Fact]
    public Task What_was_never_sent_is_archived_on_this_device_and_what_the_host_has_needs_it() => InPage(async () =>
    {
        var shelf = Shelf();
        var sent = await shelf.AddAsync(Titled("Sent"));
        await Until(() => _host.Texts.ContainsKey(sent) && _device.All.Any(c => c.Copy.IsSent));
        _host.IsAway = true;
        var here = await shelf.AddAsync(Titled("Here"));
        await Until(() => _device.All.Any(c => c.Id == here));
        Assert.Null(await shelf.ArchiveAsync(here, archived: true));
        Assert.Equal("Here", Assert.Single(await shelf.ListAsync(archived: true)).Name);
        Assert.Equal("Sent", Assert.Single(await shelf.ListAsync(archived: false)).Name);
        Assert.Equal(
            "The host cannot be reached just now: try again once you are connected.", await shelf.ArchiveAsync(sent, archived: true));
        _device.Refuses = true;
        Assert.NotNull(await shelf.ArchiveAsync(here, archived: false));
    });

    /// <summary>Two of one title are told apart by garment and yarn, and only they are read for it.</summary>
    [Fact]
    public Task Projects_of_one_title_are_told_apart() => InPage(async () =>
    {
        var shelf = Shelf();
        var tunic = await shelf.AddAsync(Titled("Tide"));
        var other = Titled("Tide");
        other.Set("garment.shape", "cardigan");
        other.Set("yarn.name", "");
        var cardigan = await shelf.AddAsync(other);
        await shelf.AddAsync(Titled("Ebb"));
        await Until(() => _host.Texts.Count == 3);
        var told = await shelf.TellApartAsync(await shelf.ListAsync(archived: false));
        Assert.Equal(2, told.Count);
        Assert.Equal("Tunic in Ebbstone Light, colourway Tidemark", told[tunic]);
        Assert.Equal("Cardigan", told[cardigan]);
        other.Set("garment", null);
        Assert.Equal("No garment yet", ProjectShelf.Apart(other));
    });

    [Theory]
    [InlineData("Tide", "Tide")]
    [InlineData("Tide", "Tide 2", "Tide")]
    [InlineData("Tide", "Tide 2", "tide")]
    [InlineData("Tide", "Tide 3", "Tide", "Tide 2", "Ebb")]
    [InlineData("Tide", "Tide 2", "Tide", "Tide 3")]
    public void A_title_that_is_taken_gets_the_next_number_that_is_free(string title, string free, params string[] taken) =>
        Assert.Equal(free, ProjectShelf.FreeTitle(title, taken));

    private static Dyepath.Workspace.Work.ProjectDocument Titled(string title)
    {
        var document = Documents.Demo();
        document.Set("title", title);
        return document;
    }

    private ProjectShelf Shelf()
    {
        var (workbench, tab, server) = (Documents.Workbench(), _device.Tab(), new ServerShelf(_host.Client));
        return new ProjectShelf(server, tab, new Keeper(workbench, tab, server, tab, _clock));
    }
}
