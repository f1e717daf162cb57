using System.Text;
using Bunit;
using Dyepath.Client.Making.Beside;
using Dyepath.Client.Making.Handing;
using Dyepath.Client.Shelf;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Shelf;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Making;

public sealed class BeginPageTests : BunitContext
{
    private readonly DeviceHere _device = new();
    private readonly HostHere _host = new();
    private readonly Workbench _bench = Documents.Workbench();

    public BeginPageTests()
    {
        Services.AddMaking(_bench, _device, _host, new PhoneHere());
    }

    private string Address => Services.GetRequiredService<NavigationManager>().Uri;

    [Fact]
    public async Task The_base_size_is_offered_and_begun_from_the_design_as_it_is()
    {
        var project = await OpenProject();
        var page = Render<BeginPage>();
        page.WaitForAssertion(() => Assert.Contains("Nothing of this design is on the hook.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(_bench.Plan!.Sizes.Select(s => s.Name), page.FindAll("#begin-size option").Select(o => o.TextContent));
        Assert.Equal(_bench.Plan.Project.Sizes.Base, page.Find("#begin-size").GetAttribute("value"));
        await page.InvokeAsync(() => page.Find("#begin-size").ChangeAsync("L"));
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Begin this size").ClickAsync());
        page.WaitForAssertion(() => Assert.Single(_device.Kept));
        var kept = _device.Kept.Values.Single();
        page.WaitForAssertion(() => Assert.EndsWith($"/make/{_device.Kept.Keys.Single()}", Address, StringComparison.Ordinal));
        Assert.Equal(("L", project), (kept.Content.Making.Size, kept.Content.ProjectId));
        Assert.Empty(kept.Content.Log);
    }

    [Fact]
    public async Task A_design_without_a_plan_is_not_begun_and_what_to_mend_is_a_link_away()
    {
        var project = await OpenProject(d => d.Set("yarn.ball.mass", "much"));
        var page = Render<BeginPage>();
        Assert.Contains("cannot be begun as it stands", page.Markup, StringComparison.Ordinal);
        Assert.Equal($"/p/{project}/make#findings-title", page.Find("p.fault a").GetAttribute("href"));
        // What is only not there yet is no fault.
        await page.InvokeAsync(() => _bench.Set("yarn.ball", null, "ball"));
        page.WaitForAssertion(() => Assert.Contains("it waits for yarn and swatch", page.Find("p.said.note").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll("p.fault"));
        Assert.DoesNotContain(page.FindAll("button"), b => b.TextContent is "Begin this size" or "Make an address" or "Save a file for this size");
    }

    [Fact]
    public async Task Only_pieces_of_this_design_stand_on_its_page()
    {
        var project = await OpenProject();
        _device.Put("a", Piece.Of(MakingBench.Demo(1), MakingBench.Now, project));
        _device.Put("b", Piece.Of(MakingBench.Demo(), MakingBench.Now, "another"));
        var page = Render<BeginPage>();
        page.WaitForAssertion(() => Assert.Equal("/make/a", page.Find(".pieces .name").GetAttribute("href")));
        Assert.Single(page.FindAll(".pieces .name"));
        Assert.Contains("1 entry", page.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Tideline", true)]
    [InlineData("Other", false)]
    public async Task A_file_becomes_a_piece_with_its_log_of_this_design_if_it_is_one(string title, bool ours)
    {
        var project = await OpenProject();
        var making = MakingBench.Demo(1, 2) is var demo ? demo with { Project = demo.Project with { Title = title } } : null!;
        var page = Render<BeginPage>();
        page.FindComponents<InputFile>()[0].UploadFiles(File(Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making))));
        page.WaitForAssertion(() => Assert.Single(_device.Kept));
        var kept = _device.Kept.Values.Single();
        Assert.Equal([1, 2], MakingBench.Numbers(kept.Content.Log));
        Assert.Equal(ours ? project : null, kept.Content.ProjectId);
        page.WaitForAssertion(() => Assert.EndsWith($"/make/{_device.Kept.Keys.Single()}", Address, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Of_a_file_that_is_no_piece_the_place_and_the_fault_are_said()
    {
        await OpenProject();
        var text = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingBench.Demo(1)));
        var page = Render<BeginPage>();
        page.FindComponents<InputFile>()[0].UploadFiles(File(text.Replace("\"row\"", "\"knit\"", StringComparison.Ordinal)));
        page.WaitForAssertion(() => Assert.Contains("log[0].did, line", page.Find(".making-file [role=alert]").TextContent, StringComparison.Ordinal));
        page.FindComponents<InputFile>()[0].UploadFiles(File(new string(' ', MakingReader.MostBytes + 1)));
        page.WaitForAssertion(() => Assert.Contains("larger than 2 MB", page.Find(".making-file [role=alert]").TextContent, StringComparison.Ordinal));
        Assert.Empty(_device.Kept);
    }

    [Fact]
    public async Task What_testers_have_and_sent_is_listed_and_a_log_opens_into_its_figures()
    {
        var project = await OpenProject();
        _host.Answers[$"GET api/projects/{project}/handovers"] = """[{"id":"h1","size":"M","createdAt":"2026-03-01T12:00:00Z","logs":2}]""";
        _host.Answers[$"GET api/projects/{project}/logs"] = """[{"id":"l1","size":"M","receivedAt":"2026-03-02T12:00:00Z","entries":7}]""";
        _host.Answers[$"GET api/projects/{project}/logs/l1"] = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingBench.Demo()));
        var page = Render<BeginPage>();
        page.WaitForAssertion(() => Assert.Contains("2 logs have come back", page.Markup, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.Contains("7 entries", page.Markup, StringComparison.Ordinal));
        await page.InvokeAsync(
            () => page.FindAll("button").Single(b => b.TextContent.StartsWith("Look at it", StringComparison.Ordinal)).ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("She looked where the colours were never, and ripped back never.", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void The_shelf_shows_what_is_being_made_only_where_there_is_something()
    {
        var empty = Render<BeingMade>();
        Assert.Empty(empty.FindAll("h2"));
        _device.Put("a", Piece.Of(MakingBench.Demo(1, 2), MakingBench.Now, key: "k"));
        var shelf = Render<BeingMade>();
        shelf.WaitForAssertion(() => Assert.Equal("Tideline, size M", shelf.Find(".pieces .name").TextContent));
        Assert.Contains("handed to you by its designer", shelf.Markup, StringComparison.Ordinal);
    }

    private async Task<string> OpenProject(Action<ProjectDocument>? change = null)
    {
        var document = Documents.Demo();
        change?.Invoke(document);
        return await Services.GetRequiredService<Keeper>().CreateAsync(document.Text);
    }

    private static InputFileContent File(string text) => InputFileContent.CreateFromText(text, "piece.json");
}
