using System.Net;
using System.Text;
using Bunit;
using Dyepath.Client.Pattern;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Tests.Pattern;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Pattern;

public sealed class PatternPageTests : BunitContext
{
    private readonly Workbench _bench = Documents.Workbench();
    private readonly StubHost _host = new();

    public PatternPageTests()
    {
        Services.AddWork(_bench);
        Services.AddSingleton(_host.Client());
        Services.AddSingleton<ServerShelf>();
        Services.AddSingleton<IDeviceShelf, NoShelf>();
        Services.AddSingleton<IDeviceEvents, NoEvents>();
        Services.AddSingleton<Keeper>();
        Services.AddSingleton<BookletFiles>();
        Services.AddSingleton<IDevice>(new PhoneHere());
        _bench.Open(Encoding.UTF8.GetString(DemoProject.Utf8));
    }

    [Fact]
    public async Task Words_go_to_their_place_in_the_document()
    {
        var page = Render<PatternPage>();
        await page.InvokeAsync(() => page.Find("#at-words-pieces").InputAsync("Begin with the back."));
        Assert.Equal("Begin with the back.", _bench.Document!.Typed("words.pieces"));
        Assert.Equal("words", page.FindAll("details").Single(d => d.QuerySelector("#at-words-pieces") is not null).QuerySelector(".has")!.TextContent);
    }

    /// <summary>The booklet waits for a plan that cannot come: the box says so itself, and leads to what keeps it away.</summary>
    [Fact]
    public void A_blocked_design_has_no_booklet_and_the_box_says_what_to_mend_first()
    {
        _bench.Set("yarn.sections[0].length", "long", "length");
        var page = Render<PatternPage>();
        page.WaitForAssertion(() => Assert.Contains("No booklet before this is mended.", page.Find(".booklet-view").TextContent, StringComparison.Ordinal));
        var box = page.Find(".booklet-view");
        Assert.Contains(_bench.Outcome!.Findings.First(f => f.Level == Core.Findings.FindingLevel.Fault).Text, box.TextContent, StringComparison.Ordinal);
        Assert.Equal("Go to Yarn", box.QuerySelector("a")!.TextContent);
        Assert.DoesNotContain("Laying out", box.TextContent, StringComparison.Ordinal);
        Assert.True(box.QuerySelector("iframe")!.HasAttribute("hidden"));
    }

    /// <summary>What is waited for stands above the frame, which is as tall as the window.</summary>
    [Fact]
    public void What_the_booklet_waits_for_is_said_above_it()
    {
        var page = Render<PatternPage>();
        page.WaitForAssertion(() => Assert.Contains("Laying out the booklet", page.Find(".booklet-view").FirstElementChild!.TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_usual_is_left_out_of_the_document()
    {
        var page = Render<PatternPage>();
        await page.InvokeAsync(() => page.Find("#at-edition-size").ChangeAsync("L"));
        Assert.Equal("L", _bench.Document!.Typed("edition.size"));
        await page.InvokeAsync(() => page.Find("#at-edition-size").ChangeAsync(""));
        Assert.False(_bench.Document!.Has("edition.size"));
    }

    [Fact]
    public void The_place_of_every_fault_of_this_page_has_its_box()
    {
        _bench.Document!.Add("photos", new System.Text.Json.Nodes.JsonObject { ["place"] = "notes", ["alternative"] = "", ["jpeg"] = SmallJpeg.Base64(400) });
        var page = Render<PatternPage>();
        string[] places = ["title", "designer", "edition-terms", "edition-units", "edition-size", "edition-hand", "edition-number", "edition-date", "photos-0-alternative", "photos-0-jpeg"];
        Assert.All(places, place => page.Find($"#at-{place}"));
        Assert.All(Core.Booklets.WordPlaces.All, place => page.Find($"#at-words-{place}"));
    }

    [Fact]
    public async Task The_check_says_that_everything_agrees_and_what_was_compared()
    {
        var check = Render<TechnicalCheck>();
        await check.InvokeAsync(() => check.Find("button").ClickAsync());
        check.WaitForAssertion(() => Assert.Contains("Nothing disagrees.", check.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        Assert.Contains("9 sizes", check.Markup, StringComparison.Ordinal);
        Assert.Contains("8 editions", check.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_version_can_be_looked_at_brought_back_and_that_be_undone()
    {
        var older = ProjectDocument.TryParse(_bench.Document!.Text)!;
        older.Set("title", "Ebbline");
        _host.Answers["api/projects//versions"] = """[{"number":3,"savedAt":"2026-03-01T12:00:00Z","bytes":4200}]""";
        _host.Answers["api/projects//versions/3"] = older.Text;
        var versions = Render<Editions>();
        await ShowAsync(versions);
        Assert.Contains("5 kB", versions.Markup, StringComparison.Ordinal);
        await versions.InvokeAsync(() => versions.Find("li button").ClickAsync());
        Assert.Equal("title Ebbline Tideline", string.Join(' ', versions.FindAll("tbody th, tbody td").Select(c => c.TextContent)));
        await versions.InvokeAsync(() => versions.FindAll("button").Single(b => b.TextContent == "Bring it back").ClickAsync());
        Assert.Equal("Ebbline", _bench.Document!.Title);
        _bench.Undo();
        Assert.Equal("Tideline", _bench.Document!.Title);
    }

    [Fact]
    public async Task Errata_since_a_version_are_made_or_it_is_said_why_not()
    {
        var older = ProjectDocument.TryParse(_bench.Document!.Text)!;
        older.Set("words.notes", "Deep water begins the back.");
        _host.Answers["api/projects//versions"] = """[{"number":3,"savedAt":"2026-03-01T12:00:00Z","bytes":4200},{"number":2,"savedAt":"2026-02-01T12:00:00Z","bytes":4200}]""";
        _host.Answers["api/projects//versions/3"] = older.Text;
        older.Set("title", "");
        _host.Answers["api/projects//versions/2"] = older.Text;
        var versions = Render<Editions>();
        await ShowAsync(versions);
        await versions.InvokeAsync(() => Errata(0).ClickAsync());
        versions.WaitForAssertion(() => Assert.Contains("tideline-errata.txt is made.", versions.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        await versions.InvokeAsync(() => Errata(1).ClickAsync());
        versions.WaitForAssertion(() => Assert.Contains("something to mend at title", versions.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        _host.Answers.Remove("api/projects//versions/3");
        await versions.InvokeAsync(() => Errata(0).ClickAsync());
        versions.WaitForAssertion(() => Assert.Contains("The host cannot be reached just now; no errata were made.", versions.Markup, StringComparison.Ordinal));

        AngleSharp.Dom.IElement Errata(int at) =>
            versions.FindAll("button").Where(b => b.TextContent.StartsWith("Errata since this version", StringComparison.Ordinal)).ElementAt(at);
    }

    [Fact]
    public async Task Without_a_connection_that_is_said()
    {
        var versions = Render<Editions>();
        versions.WaitForAssertion(() => Assert.Contains("cannot be reached", versions.Markup, StringComparison.Ordinal));
    }

    /// <summary>A pattern that is not what was published under its number says so, and by how much, before anybody gets it.</summary>
    [Fact]
    public async Task A_published_edition_and_what_became_of_it_are_told_apart()
    {
        _host.Answers["api/projects//versions"] = "[]";
        var editions = Render<Editions>();
        editions.WaitForAssertion(() => Assert.Contains("has no edition number", editions.Markup, StringComparison.Ordinal));
        await editions.InvokeAsync(() => Button("Make it edition 1, of today").ClickAsync());
        Assert.Equal(("1", DateTime.Now.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)), (_bench.Document!.Typed("edition.number"), _bench.Document.Typed("edition.date")));
        editions.WaitForAssertion(() => Assert.Contains("is edition 1, not published yet.", editions.Markup, StringComparison.Ordinal));
        const string Published = """{"number":4,"savedAt":"2026-03-01T12:00:00Z","bytes":4200,"edition":1}""";
        _host.Answers["api/projects//editions"] = Published;
        _host.Answers["api/projects//versions"] = $"[{Published}]";
        _host.Answers["api/projects//versions/4"] = _bench.Document.Text;
        editions.WaitForState(() => !Button("Publish edition 1").HasAttribute("disabled"), TimeSpan.FromSeconds(20));
        await editions.InvokeAsync(() => Button("Publish edition 1").ClickAsync());
        editions.WaitForAssertion(() => Assert.Contains("is edition 1 as it was published", editions.Markup, StringComparison.Ordinal));
        Assert.Contains("Edition 1, published", editions.Markup, StringComparison.Ordinal);
        Assert.Contains("Edition 1 is published: it is kept as it is.", editions.Markup, StringComparison.Ordinal);
        _bench.Edit("title", d => d.Set("title", "Ebbline"));
        editions.WaitForAssertion(() => Assert.Contains("differs from what was published as edition 1 in one place.", editions.Markup, StringComparison.Ordinal));
        // What was done with the text before is no news of this one.
        editions.WaitForAssertion(() => Assert.DoesNotContain("it is kept as it is", editions.Markup, StringComparison.Ordinal));
        await editions.InvokeAsync(() => Button("Make it edition 2, of today").ClickAsync());
        editions.WaitForAssertion(() => Assert.Contains("is edition 2, not published yet.", editions.Markup, StringComparison.Ordinal));
        // Taking a publishing back is asked about first.
        await editions.InvokeAsync(() => Button("Take the publishing back… of edition 1").ClickAsync());
        Assert.Contains("Its text stays among the earlier ones", editions.Markup, StringComparison.Ordinal);
        await editions.InvokeAsync(() => Button("Leave it published").ClickAsync());
        Assert.Contains("Edition 1, published", editions.Markup, StringComparison.Ordinal);
        await editions.InvokeAsync(() => Button("Take the publishing back… of edition 1").ClickAsync());
        _host.Answers["api/projects//editions/1"] = """{"number":4,"savedAt":"2026-03-01T12:00:00Z","bytes":4200}""";
        _host.Answers["api/projects//versions"] = "[]";
        await editions.InvokeAsync(() => Button("Take edition 1 back").ClickAsync());
        editions.WaitForAssertion(() => Assert.Contains("Edition 1 is no longer published", editions.Markup, StringComparison.Ordinal));

        AngleSharp.Dom.IElement Button(string words) => editions.FindAll("button").Single(b => b.TextContent == words);
    }

    private static async Task ShowAsync(IRenderedComponent<Editions> editions)
    {
        editions.WaitForState(() => editions.FindAll("button").Any(b => b.TextContent == "Show them"));
        await editions.InvokeAsync(() => editions.FindAll("button").Single(b => b.TextContent == "Show them").ClickAsync());
    }

    /// <summary>Answers what it was told, and otherwise is not there.</summary>
    private sealed class StubHost : HttpMessageHandler
    {
        public Dictionary<string, string> Answers { get; } = [];

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken) =>
            Answers.TryGetValue(request.RequestUri!.AbsolutePath[1..], out var json)
                ? Task.FromResult(new HttpResponseMessage(HttpStatusCode.OK) { Content = new StringContent(json, Encoding.UTF8, "application/json") })
                : throw new HttpRequestException("No connection.");
    }
}
