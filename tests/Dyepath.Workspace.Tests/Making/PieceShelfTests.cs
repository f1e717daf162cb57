using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>
/// In a page, whose thread is one: what a device and a host answer at the same moment on two threads, a keeper may miss.
/// </summary>
public sealed class PieceShelfTests : IDisposable
{
    private const string Other = "0193b5c2-0d60-7000-8000-0000000000a2";

    private readonly DeviceHere _device = new();
    private readonly HostHere _host = new();
    private readonly MakingKeeper _keeper;
    private readonly PieceShelf _pieces;

    public PieceShelfTests()
    {
        var host = new MakingHost(_host.Client());
        var tab = _device.Tab();
        _keeper = new MakingKeeper(tab, host, tab, new HandClock());
        _pieces = new PieceShelf(host, tab, _keeper);
    }

    public void Dispose() => _host.Dispose();

    [Fact]
    public Task What_is_here_and_what_is_there_is_one_list_the_latest_worked_on_first() => InPage(async () =>
    {
        _device.Put(Id, Piece.Of(Demo(5_000), Now));
        _host.Put(Id, Demo(5_000, 5_001));
        _host.Projects[Id] = "p1";
        _host.Put(Other, Demo());
        var list = await _pieces.ListAsync();
        Assert.Equal([Id, Other], list.Select(p => p.Id));
        Assert.Equal(("p1", 2, true), (list[0].ProjectId, list[0].Entries, list[0].IsHere));
        Assert.Equal(("Tideline", "M", 0, false), (list[1].Title, list[1].Size, list[1].Entries, list[1].IsHere));
        Assert.False(_pieces.Away);
        _host.IsAway = true;
        Assert.Equal(Id, Assert.Single(await _pieces.ListAsync()).Id);
        Assert.True(_pieces.Away);
    });

    [Fact]
    public Task A_device_that_keeps_nothing_begins_on_the_host_but_never_with_a_key() => InPage(async () =>
    {
        _device.IsFull = true;
        var (id, _) = await _pieces.BeginAsync(Demo(), "p1");
        Assert.Equal("p1", _host.Projects[id!]);
        var (none, why) = await _pieces.BeginAsync(Demo(), key: "k");
        Assert.Null(none);
        Assert.Contains("The disk is full.", why, StringComparison.Ordinal);
        Assert.Single(_host.Texts);
    });

    [Fact]
    public Task A_key_finds_the_piece_that_was_begun_from_it() => InPage(async () =>
    {
        var (id, _) = await _pieces.BeginAsync(Demo(), key: "k");
        Assert.Equal(id, await _pieces.BegunFromAsync("k"));
        Assert.Null(await _pieces.BegunFromAsync("other"));
        Assert.Empty(_host.Asked);
    });

    [Fact]
    public Task What_is_put_away_is_gone_here_and_there_and_stays_so() => InPage(async () =>
    {
        _device.Put(Id, Piece.Of(Demo(), Now));
        await _keeper.OpenAsync(Id);
        await Until(() => _keeper.State == SaveState.Saved);
        await _keeper.AppendAsync(Row(1));
        Assert.Null(await _pieces.PutAwayAsync((await _pieces.ListAsync())[0]));
        await Task.Delay(20, TestContext.Current.CancellationToken);
        Assert.Empty(_device.Kept);
        Assert.Empty(_host.Texts);
        Assert.Null(_keeper.Id);
        Assert.False(await _keeper.AppendAsync(Row(2)));
    });

    [Fact]
    public Task Away_from_the_host_only_what_it_never_had_is_put_away() => InPage(async () =>
    {
        _device.Put(Id, Piece.Of(Demo(1), Now));
        _device.Put(Other, Piece.Of(Demo(2), Now), etag: "\"e\"");
        _host.IsAway = true;
        var list = await _pieces.ListAsync();
        Assert.Null(await _pieces.PutAwayAsync(list.Single(p => p.Id == Id)));
        Assert.Contains("The host has a copy", await _pieces.PutAwayAsync(list.Single(p => p.Id == Other)), StringComparison.Ordinal);
        Assert.Equal([Other], _device.Kept.Keys);
    });

    [Fact]
    public Task A_piece_that_was_handed_over_is_put_away_without_asking_the_host() => InPage(async () =>
    {
        await _pieces.BeginAsync(Demo(), key: "k");
        var piece = Assert.Single(await _pieces.ListAsync());
        _host.Asked.Clear();
        Assert.Null(await _pieces.PutAwayAsync(piece));
        Assert.Empty(_host.Asked);
        Assert.Empty(_device.Kept);
    });
}
