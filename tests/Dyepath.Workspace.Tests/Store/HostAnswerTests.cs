using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Tests.Store;

/// <summary>What a host's answer means to whoever asked: done, away, busy, refused with its reason.</summary>
public sealed class HostAnswerTests
{
    private const string Problem = "application/problem+json";

    [Theory]
    [InlineData(200, "application/json", ServerReply.Done, "")]
    [InlineData(200, "text/html", ServerReply.Away, "")]
    [InlineData(429, Problem, ServerReply.Busy, "It cannot. Try later.")]
    [InlineData(500, Problem, ServerReply.Busy, "It cannot. Try later.")]
    [InlineData(502, "text/html", ServerReply.Busy, "")]
    [InlineData(503, Problem, ServerReply.Busy, "It cannot. Try later.")]
    [InlineData(504, "text/html", ServerReply.Busy, "")]
    [InlineData(404, "text/html", ServerReply.Away, "")]
    [InlineData(404, Problem, ServerReply.Missing, "It cannot. Try later.")]
    [InlineData(401, Problem, ServerReply.SignIn, "It cannot. Try later.")]
    [InlineData(422, Problem, ServerReply.Damaged, "It cannot. Try later.")]
    [InlineData(412, Problem, ServerReply.ChangedElsewhere, "It cannot. Try later.")]
    [InlineData(409, Problem, ServerReply.ChangedElsewhere, "It cannot. Try later.")]
    [InlineData(413, Problem, ServerReply.Refused, "It cannot. Try later.")]
    [InlineData(400, Problem, ServerReply.Refused, "It cannot. Try later.")]
    public async Task A_status_and_its_reason_are_told(int status, string type, ServerReply reply, string why)
    {
        using var host = new Host((HttpStatusCode)status, type, """{ "title": "It cannot.", "detail": "Try later." }""");
        var answer = await new ServerShelf(host.Client).GetAsync("p1");
        Assert.Equal((reply, why), (answer.Reply, answer.Why));
        Assert.Equal(reply == ServerReply.Done, answer.Value is not null);
        Assert.Equal(status is 429 or >= 500 ? TimeSpan.FromSeconds(7) : answer.After, answer.After);
        var asked = await new HandedShelf(host.Client).RevokeAsync("p1", "h1");
        Assert.Equal(reply, asked.Reply);
    }

    [Fact]
    public async Task A_reason_that_cannot_be_read_is_said_to_be_missing()
    {
        using var host = new Host(HttpStatusCode.BadRequest, Problem, "?");
        Assert.Equal("The host did not say why.", (await new ServerShelf(host.Client).GetAsync("p1")).Why);
    }

    [Fact]
    public async Task A_text_is_named_by_its_bytes_whatever_stands_in_the_header()
    {
        using var host = new Host(HttpStatusCode.OK, "application/json", "{}");
        var stored = (await new ServerShelf(host.Client).GetAsync("p1")).Value!;
        Assert.Equal(("{}", Contracts.Etags.Of("{}"u8.ToArray()), "3"), (stored.Text, stored.Etag, stored.Made));
        Assert.IsType<HostHas<ProjectText>>(await new ServerShelf(host.Client).ReadAsync("p1"));
    }

    public static TheoryData<ServerReply, HostTrouble?> Troubles => new()
    {
        { ServerReply.Missing, HostTrouble.Missing },
        { ServerReply.SignIn, HostTrouble.SignIn },
        { ServerReply.Refused, HostTrouble.Refused },
        { ServerReply.Damaged, HostTrouble.Damaged },
        { ServerReply.Busy, HostTrouble.Busy },
        { ServerReply.Away, HostTrouble.Away },
        { ServerReply.ChangedElsewhere, null },
    };

    [Theory]
    [MemberData(nameof(Troubles))]
    public void An_answer_is_the_same_to_what_is_kept(ServerReply reply, HostTrouble? trouble)
    {
        var said = new ServerAnswer<string>(reply, null, "why", TimeSpan.FromSeconds(7)).Said<ProjectText>();
        if (trouble is null)
            Assert.IsType<HostHasAnother<ProjectText>>(said);
        else
        {
            var not = Assert.IsType<HostDidNot<ProjectText>>(said);
            Assert.Equal(trouble, not.Trouble);
            Assert.Equal(trouble is HostTrouble.Refused or HostTrouble.Damaged or HostTrouble.Busy ? "why" : "", not.Why);
            Assert.Equal(trouble == HostTrouble.Busy ? TimeSpan.FromSeconds(7) : null, not.After);
            Assert.Equal(trouble == HostTrouble.Busy ? ServerReply.Away : reply, trouble.Value.Reply());
        }
    }

    [Theory]
    [InlineData(ServerReply.Done, true, null)]
    [InlineData(ServerReply.Missing, true, null)]
    [InlineData(ServerReply.Away, false, null)]
    [InlineData(ServerReply.Busy, false, null)]
    [InlineData(ServerReply.Away, true, "The host has a copy and cannot be reached just now: try again once you are connected.")]
    [InlineData(ServerReply.Busy, true, "The host has a copy and cannot be reached just now: try again once you are connected.")]
    [InlineData(ServerReply.SignIn, false, "The host asks for its access token first.")]
    [InlineData(ServerReply.Refused, true, "why")]
    public void What_was_to_be_deleted_says_why_it_is_still_there(ServerReply reply, bool wasSent, string? words) =>
        Assert.Equal(words, new ServerAnswer<string>(reply, null, "why").WhyStillThere(wasSent));

    /// <summary>What the browser's database holds comes back as it was.</summary>
    [Fact]
    public void A_copy_comes_back_from_the_device_as_it_was()
    {
        var copy = new Copy<ProjectText>("a", 3, Lineage.None.With("a", 2), new ProjectText("{}", "Tide", null), DateTimeOffset.UnixEpoch)
        {
            Etag = "\"e\"",
            Made = "4",
            IsSent = true,
            Includes = ["\"f\""],
        };
        var row = ProjectCopy.Of("p1", copy);
        Assert.Equal(("p1", "Tide", "{}", false), (row.Id, row.Name, row.Text, row.Archived));
        var back = row.Read();
        Assert.Equal((copy.Writer, copy.Stamp, copy.Content, copy.At, copy.Etag, copy.Made, copy.IsSent), (back.Writer, back.Stamp, back.Content, back.At, back.Etag, back.Made, back.IsSent));
        Assert.Equal(["\"f\""], back.Includes);
        Assert.True(back.Lineage.Follows(copy.Lineage) && copy.Lineage.Follows(back.Lineage));
        Assert.Empty((row with { Includes = default, Text = null }).Read().Includes);
        Assert.Equal(("Untitled", "Tide"), (ProjectText.Of("{}").Name, ProjectText.Of("""{ "title": "Tide" }""").Name));
    }

    /// <summary>A browser carries no more than 60,000 bytes to their end once the page is gone.</summary>
    [Theory]
    [InlineData(true, 60_000, true)]
    [InlineData(true, 60_001, false)]
    [InlineData(false, 10, false)]
    public void What_is_sent_by_a_page_that_is_left_goes_on_without_it_where_it_is_short(bool leaving, int bytes, bool goesOn)
    {
        using var request = HostApi.Sending(HttpMethod.Put, "api/projects/p1", "{}");
        HostApi.LeavePage(request, leaving, bytes);
        Assert.Equal(goesOn, request.Options.TryGetValue(HostApi.FetchOptions, out var options) && options["keepalive"] is true);
    }

    private sealed class Host(HttpStatusCode status, string type, string text) : HttpMessageHandler
    {
        public HttpClient Client => new(this, disposeHandler: false) { BaseAddress = new Uri("http://host.test/") };

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var answer = new HttpResponseMessage(status) { Content = new StringContent(text, Encoding.UTF8, type) };
            answer.Headers.RetryAfter = new RetryConditionHeaderValue(TimeSpan.FromSeconds(7));
            answer.Headers.TryAddWithoutValidation("ETag", "W/\"other\"");
            answer.Headers.TryAddWithoutValidation(Contracts.ApiPaths.MadeHeader, "3");
            return Task.FromResult(answer);
        }
    }

    /// <summary>By hand, in the same place as another tab's: what stands there now was written over what she could not see.</summary>
    [Theory]
    [InlineData("""{ "title": "One", "n": 1 }""", """{ "title": "Two", "n": 2 }""", """{ "title": "Three", "n": 2 }""", true)]
    [InlineData("""{ "title": "One", "n": 1, "m": 1 }""", """{ "title": "Two", "n": 1, "m": 1 }""", """{ "title": "Three", "n": 1, "m": 2 }""", true)]
    [InlineData("""{ "title": "One", "n": 1 }""", """{ "title": "Two", "n": 1 }""", """{ "title": "Two", "n": 2 }""", false)]
    [InlineData("""{ "title": "One", "n": 1 }""", """{ "title": "Two", "n": 1 }""", """{ "title": "Two", "n": 1 }""", false)]
    public void A_change_to_a_place_that_another_tab_changed_writes_over_it(string before, string shown, string now, bool over) =>
        Assert.Equal(over, new ProjectKeeping().WritesOver(ProjectText.Of(before), ProjectText.Of(shown), ProjectText.Of(now)));
}
