using System.Net;
using System.Text;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Tests.Store;

/// <summary>What is asked of the host: method, address, body and headers; and what comes of each answer.</summary>
public sealed class HostPathsTests : IDisposable
{
    private readonly Answers _host = new();

    public void Dispose() => _host.Dispose();

    private ServerShelf Shelf => new(_host.Client);

    private HandedShelf Handed => new(_host.Client);

    [Fact]
    public async Task A_shelf_goes_on_to_its_next_page_until_there_is_none()
    {
        _host.Say("GET api/projects", Json([Summary("p1")], """<api/projects?after=p1>; rel="next" """.Trim()));
        _host.Say("GET api/projects?after=p1", Json([Summary("p2"), Summary("p3")], """<api/projects?after=p3>; rel="prev" """.Trim()));
        var answer = await Shelf.ListAsync(archived: false);
        Assert.Equal(["p1", "p2", "p3"], answer.Value!.Select(s => s.Id));
        Assert.Equal(["GET api/projects", "GET api/projects?after=p1"], _host.Asked);
        _host.Say("GET api/projects?archived=true", Json([]));
        Assert.Empty((await Shelf.ListAsync(archived: true)).Value!);
        // What breaks off in the middle is no list.
        _host.Say("GET api/projects?after=p1", () => new HttpResponseMessage(HttpStatusCode.ServiceUnavailable));
        Assert.Equal((ServerReply.Busy, null), ((await Shelf.ListAsync(archived: false)).Reply, (await Shelf.ListAsync(archived: false)).Value));
    }

    [Fact]
    public async Task A_shelf_without_end_is_cut_off_after_fifty_pages()
    {
        _host.Say("GET api/projects", Json([Summary("p1")], """<api/projects>; rel="next" """.Trim()));
        Assert.Equal(50, (await Shelf.ListAsync(archived: false)).Value!.Length);
        Assert.Equal(50, _host.Asked.Count);
    }

    [Fact]
    public async Task A_link_that_is_no_address_leads_nowhere()
    {
        foreach (var link in new[] { "api/projects?after=p1; rel=\"next\"", "<api/projects?after=p1>; rel=\"last\"" })
        {
            _host.Say("GET api/projects", Json([Summary("p1")], link));
            Assert.Single((await Shelf.ListAsync(archived: false)).Value!);
        }
        Assert.Equal(2, _host.Asked.Count);
    }

    /// <summary>A project is sent as a new one, or in place of the text that it follows; and what the host then has is what was sent.</summary>
    [Fact]
    public async Task A_text_is_sent_under_the_etag_that_it_follows()
    {
        var picture = new SwatchPicture(["#102030"], 1, 1, [0]);
        var text = new ProjectText("{}", "Tide", picture);
        var etag = Etags.Of("{}"u8.ToArray());
        _host.Say("POST api/projects?id=p1", Json(Summary("p1", etag)));
        Assert.Equal(new HostTook<ProjectText>(etag, "3"), await Shelf.WriteAsync("p1", text, null, leaving: false));
        Assert.False(_host.Headers.ContainsKey("If-Match"));
        Assert.Equal("{}", _host.Bodies[^1]);
        var sent = JsonSerializer.Deserialize(Convert.FromBase64String(_host.Headers[ApiPaths.PictureHeader]), ContractsJson.Default.SwatchPicture)!;
        Assert.Equal(["#102030"], sent.Colours);
        _host.Say("PUT api/projects/p1", Json(Summary("p1", "\"other\"")));
        Assert.IsType<HostHasAnother<ProjectText>>(await Shelf.WriteAsync("p1", text with { Swatch = null }, "\"before\"", leaving: false));
        Assert.Equal("\"before\"", _host.Headers["If-Match"]);
        Assert.False(_host.Headers.ContainsKey(ApiPaths.PictureHeader));
        _host.Say("PUT api/projects/p1", () => Problem(HttpStatusCode.BadRequest, """{ "title": "It cannot." }"""));
        Assert.Equal(new HostDidNot<ProjectText>(HostTrouble.Refused, "It cannot."), await Shelf.WriteAsync("p1", text, "\"before\"", leaving: false));
    }

    /// <summary>What is damaged is mended by its newest version that can be read.</summary>
    [Fact]
    public async Task What_is_damaged_is_restored_from_the_version_that_the_host_names()
    {
        const string none = "There is no version that can be read, or the host cannot be reached just now.";
        Assert.Equal(none, await Shelf.MendAsync("p1"));
        _host.Say("GET api/projects/p1", () => Problem(HttpStatusCode.UnprocessableEntity, """{ "title": "Damaged." }"""));
        Assert.Equal(none, await Shelf.MendAsync("p1"));
        _host.Say("GET api/projects/p1", Json(Summary("p1")));
        Assert.Equal(none, await Shelf.MendAsync("p1"));
        _host.Say("GET api/projects/p1", () => Problem(HttpStatusCode.UnprocessableEntity, """{ "title": "Damaged.", "goodVersion": 4, "currentEtag": "\"e\"" }"""));
        Assert.Equal("The host cannot be reached just now.", await Shelf.MendAsync("p1"));
        _host.Say("POST api/projects/p1/versions/4/restore", () => Problem(HttpStatusCode.BadRequest, """{ "title": "It cannot.", "detail": "It is full." }"""));
        Assert.Equal("It cannot. It is full.", await Shelf.MendAsync("p1"));
        _host.Say("POST api/projects/p1/versions/4/restore", Json(Summary("p1")));
        Assert.Null(await Shelf.MendAsync("p1"));
        Assert.Equal("\"e\"", _host.Headers["If-Match"]);
    }

    [Fact]
    public async Task Versions_are_listed_and_read_and_projects_deleted_or_copied()
    {
        _host.Say("GET api/projects/p1/versions", () => Text("[]"));
        Assert.Empty((await Shelf.VersionsAsync("p1")).Value!);
        _host.Say("GET api/projects/p1/versions/7", () => Text("{ }"));
        Assert.Equal("{ }", (await Shelf.VersionAsync("p1", 7)).Value!.Text);
        _host.Say("DELETE api/projects/p1", () => new HttpResponseMessage(HttpStatusCode.NoContent));
        Assert.Equal(ServerReply.Done, (await Shelf.DeleteAsync("p1")).Reply);
        _host.Say("POST api/projects/p1/copy", Json(Summary("p2")));
        Assert.Equal("p2", (await Shelf.PostAsync(ApiPaths.Copy("p1"))).Value!.Id);
        Assert.False(_host.Headers.ContainsKey("If-Match"));
        Assert.Equal("{}", _host.Bodies[^1]);
    }

    /// <summary>An answer that is cut off or no JSON is as good as none.</summary>
    [Fact]
    public async Task What_cannot_be_read_counts_as_no_connection()
    {
        _host.Say("POST api/projects/p1/copy", () => Text("no JSON"));
        Assert.Equal(ServerReply.Away, (await Shelf.PostAsync(ApiPaths.Copy("p1"))).Reply);
        _host.Say("GET api/projects/p1", () => new HttpResponseMessage(HttpStatusCode.OK) { Content = new CutOff() });
        Assert.Equal((ServerReply.Away, null), ((await Shelf.GetAsync("p1")).Reply, (await Shelf.GetAsync("p1")).Value));
    }

    [Fact]
    public async Task Handovers_and_logs_are_asked_for_by_project()
    {
        _host.Say("POST api/projects/p1/handovers", () => Problem(HttpStatusCode.BadRequest, "{}"));
        await Handed.HandOverAsync("p1", "M");
        Assert.Equal("M", JsonSerializer.Deserialize(_host.Bodies[^1], ContractsJson.Default.NewHandover)!.Size);
        await Handed.HandoversAsync("p1");
        await Handed.RevokeAsync("p1", "h1");
        await Handed.LogsAsync("p1");
        await Handed.LogAsync("p1", "m1");
        await Handed.DeleteLogAsync("p1", "m1");
        Assert.Equal(
            [
                $"POST {ApiPaths.Handovers("p1")}", $"GET {ApiPaths.Handovers("p1")}", $"DELETE {ApiPaths.Handover("p1", "h1")}", $"GET {ApiPaths.Logs("p1")}",
                $"GET {ApiPaths.Log("p1", "m1")}", $"DELETE {ApiPaths.Log("p1", "m1")}",
            ],
            _host.Asked);
    }

    /// <summary>A piece that is nowhere else is sent as a new one of its project; what the host then lists tells whose it is.</summary>
    [Fact]
    public async Task A_piece_is_sent_as_new_or_in_place_of_what_it_continues()
    {
        var making = Making.MakingBench.Demo();
        var piece = Piece.Of(making, Making.MakingBench.Now, "p1");
        var etag = new PieceKeeping().EtagOf(piece);
        var host = new MakingHost(_host.Client);
        _host.Say("PUT " + ApiPaths.NewMaking("m1", "p1"), () => Text(Written(etag)));
        Assert.Equal(new HostTook<Piece>(etag, "3"), await host.WriteAsync("m1", piece, null, leaving: false));
        Assert.Equal("*", _host.Headers["If-None-Match"]);
        Assert.False(_host.Headers.ContainsKey("If-Match"));
        _host.Say("PUT " + ApiPaths.Making("m1"), () => Text(Written("\"other\"")));
        Assert.IsType<HostHasAnother<Piece>>(await host.WriteAsync("m1", piece, "\"e\"", leaving: false));
        Assert.Equal("\"e\"", _host.Headers["If-Match"]);
        Assert.False(_host.Headers.ContainsKey("If-None-Match"));
        // Its project is known by now, and not asked for.
        _host.Say("GET " + ApiPaths.Making("m1"), () => Text(Encoding.UTF8.GetString(Core.Making.Log.MakingWriter.WriteUtf8(making))));
        var asked = _host.Asked.Count;
        Assert.Equal("p1", Assert.IsType<HostHas<Piece>>(await host.ReadAsync("m1")).Content.ProjectId);
        Assert.Equal(asked + 1, _host.Asked.Count);
        _host.Say("GET " + ApiPaths.Making("m1"), () => Text("{}"));
        Assert.IsType<HostIsUnreadable<Piece>>(await host.ReadAsync("m1"));

        static string Written(string etag) => JsonSerializer.Serialize(
            new MakingSummary("m1", "Tideline", "M", "p1", 0, DateTimeOffset.UnixEpoch, etag) { Made = "3" }, ContractsJson.Default.MakingSummary);
    }

    /// <summary>A device that went ahead has written nothing; one that wrote tells what it now knows of the host.</summary>
    [Fact]
    public void What_came_of_writing_a_copy_is_the_copy_as_the_device_holds_it()
    {
        var copy = new Copy<string>("a", 3, Lineage.None.With("a", 2), "text", default) { IsSent = false, Includes = ["\"f\""] };
        Assert.Equal(new DeviceWriting<string>(null, true), new CopyWritten(true, false, null, null, false, []).Of(copy));
        var held = new CopyWritten(false, true, "\"e\"", "4", true, []).Of(copy);
        Assert.True(held.Others);
        Assert.Equal(("\"e\"", "4", true, 0, "text", 3), (held.Held!.Etag, held.Held.Made, held.Held.IsSent, held.Held.Includes.Length, held.Held.Content, held.Held.Stamp));
        Assert.False(new CopyWritten(false, false, null, null, false, []).Of(copy).Others);
    }

    /// <summary>A project's picture is a corner of its fabric, at most 40 stitches by 30 rows.</summary>
    [Fact]
    public void The_picture_of_a_shelf_is_a_corner_of_the_fabric()
    {
        var plan = Fabric.Demo.Plan();
        var picture = ShelfPicture.Of(plan)!;
        Assert.Equal((SwatchPicture.MostStitches, SwatchPicture.MostRows, SwatchPicture.MostStitches * SwatchPicture.MostRows), (picture.Stitches, picture.Rows, picture.Cells.Length));
        Assert.All(picture.Colours, c => Assert.Contains(c, plan.Sequence.Colours.Select(s => s.Colour.ToString())));
    }

    private static ProjectSummary Summary(string id, string? etag = null) => new(id, "Tide", false, DateTimeOffset.UnixEpoch, etag ?? "\"e\"", null, "3");

    private static Func<HttpResponseMessage> Json(ProjectSummary[] list, string? link = null) => () =>
    {
        var answer = Text(JsonSerializer.Serialize(list, ContractsJson.Default.ProjectSummaryArray));
        if (link is not null)
            answer.Headers.TryAddWithoutValidation("Link", link);
        return answer;
    };

    private static Func<HttpResponseMessage> Json(ProjectSummary one) => () => Text(JsonSerializer.Serialize(one, ContractsJson.Default.ProjectSummary));

    private static HttpResponseMessage Text(string text) => new(HttpStatusCode.OK) { Content = new StringContent(text, Encoding.UTF8, "application/json") };

    private static HttpResponseMessage Problem(HttpStatusCode status, string text) => new(status) { Content = new StringContent(text, Encoding.UTF8, "application/problem+json") };

    /// <summary>A text of which the connection brings only the beginning.</summary>
    private sealed class CutOff : HttpContent
    {
        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => throw new HttpRequestException("Cut off.");

        protected override bool TryComputeLength(out long length)
        {
            length = 9;
            return true;
        }
    }

    /// <summary>Answers as it is told, by method and address; without an answer there is no connection.</summary>
    private sealed class Answers : HttpMessageHandler
    {
        private readonly Dictionary<string, Func<HttpResponseMessage>> _said = [];

        public List<string> Asked { get; } = [];

        public List<string> Bodies { get; } = [];

        /// <summary>Of the last question.</summary>
        public Dictionary<string, string> Headers { get; } = [];

        public HttpClient Client => new(this, disposeHandler: false) { BaseAddress = new Uri("http://host.test/") };

        public void Say(string asked, Func<HttpResponseMessage> answer) => _said[asked] = answer;

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var asked = $"{request.Method} {request.RequestUri!.PathAndQuery[1..]}";
            Asked.Add(asked);
            Bodies.Add(request.Content is { } content ? await content.ReadAsStringAsync(cancellationToken) : "");
            Headers.Clear();
            foreach (var header in request.Headers)
                Headers[header.Key] = header.Value.First();
            return _said.TryGetValue(asked, out var answer) ? answer() : throw new HttpRequestException("No connection.");
        }
    }
}
