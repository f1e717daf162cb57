using System.Text;
using Bunit;
using Dyepath.Client.Pattern;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Work;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Pattern;

public sealed class TimeAndPriceTests : BunitContext
{
    private readonly DeviceHere _device = new();
    private readonly HostHere _host = new();
    private readonly PhoneHere _phone = new();
    private readonly Workbench _bench = Documents.Workbench();

    public TimeAndPriceTests()
    {
        Services.AddMaking(_bench, _device, _host, _phone);
    }

    [Fact]
    public async Task It_is_folded_and_says_that_no_buyer_gets_it()
    {
        await Services.GetRequiredService<Keeper>().CreateAsync(Documents.Demo().Text);
        var part = Render<TimeAndPrice>();
        Assert.Empty(part.FindAll("input, table"));
        Assert.Contains("it is in no file that a buyer gets", part.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_typed_is_priced_and_kept_on_this_device_alone()
    {
        var (project, part) = await Open();
        var before = _bench.Document!.Text;
        Assert.Contains("No figure for what the yarn costs without the price of a ball and the price of a ball of the companion yarn.", part.Markup, StringComparison.Ordinal);
        await Type(part, "ball", "9.50");
        await Type(part, "companionball", "6");
        await Type(part, "wage", "15");
        await Type(part, "currency", "EUR");
        Assert.Equal("69.00 EUR", Cell(part, "Yarn costs", "M"));
        Assert.DoesNotContain("No figure for what the yarn costs", part.Markup, StringComparison.Ordinal);
        Assert.Equal(before, _bench.Document.Text);
        Assert.Equal("9.50", PriceNotes.Read(_phone.Texts[PriceNotes.NameFor(project)]).Ball);
        Assert.Equal("9.50", (await Unfolded()).Find("#price-ball").GetAttribute("value"));
    }

    [Fact]
    public async Task What_is_no_amount_is_told_at_its_field()
    {
        var (_, part) = await Open();
        await Type(part, "ball", "nine");
        Assert.Equal("true", part.Find("#price-ball").GetAttribute("aria-invalid"));
        Assert.Contains("Write an amount from 0 to 1,000,000", part.Find("#price-ball-said").TextContent, StringComparison.Ordinal);
        Assert.Equal("–", Cell(part, "Yarn costs", "M"));
        await Type(part, "ball", "9");
        Assert.Equal("false", part.Find("#price-ball").GetAttribute("aria-invalid"));
        Assert.True(part.Find("#price-ball-said").HasAttribute("hidden"));
    }

    /// <summary>Thirty rows of four minutes each, in a log of this project.</summary>
    [Fact]
    public async Task A_log_of_this_project_gives_the_maker_s_own_pace()
    {
        var project = await Services.GetRequiredService<Keeper>().CreateAsync(Documents.Demo().Text);
        var making = MakingDocument.Begin(ProjectReader.Read(Encoding.UTF8.GetBytes(_bench.Document!.Text)).Project!, "M") with
        {
            Log =
            [
                new(EntryKind.Step, MakingBench.Now), new(EntryKind.Step, MakingBench.Now.AddMinutes(1)),
                .. Enumerable.Range(1, 30).Select(i => new Entry(EntryKind.Row, MakingBench.Now.AddMinutes(1 + 4 * i))),
            ],
        };
        await Services.GetRequiredService<PieceShelf>().BeginAsync(making, project);
        var part = await Unfolded();
        part.WaitForAssertion(() => Assert.Contains("Pace of your size M, 32 entries", part.Markup, StringComparison.Ordinal));
        var before = Cell(part, "Hours", "M");
        await part.InvokeAsync(() => part.FindAll("button").Single(b => b.TextContent.StartsWith("Pace of your size M", StringComparison.Ordinal)).ClickAsync());
        part.WaitForAssertion(() => Assert.Contains("over 30 rows of the log of size M", part.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        Assert.NotEqual(before, Cell(part, "Hours", "M"));
        Assert.Empty(part.FindAll("#price-slow"));
        await part.InvokeAsync(() => part.FindAll("button").Single(b => b.TextContent == "Take numbers of your own instead").ClickAsync());
        Assert.Equal(before, Cell(part, "Hours", "M"));
    }

    private async Task<(string Project, IRenderedComponent<TimeAndPrice> Part)> Open() =>
        (await Services.GetRequiredService<Keeper>().CreateAsync(Documents.Demo().Text), await Unfolded());

    private async Task<IRenderedComponent<TimeAndPrice>> Unfolded()
    {
        var part = Render<TimeAndPrice>();
        await part.InvokeAsync(() => part.Find("details").TriggerEventAsync("ontoggle", EventArgs.Empty));
        return part;
    }

    private static Task Type(IRenderedComponent<TimeAndPrice> part, string field, string text) =>
        part.InvokeAsync(() => part.Find($"#price-{field}").InputAsync(text));

    private static string Cell(IRenderedComponent<TimeAndPrice> part, string row, string size)
    {
        var at = part.FindAll("thead th").Select(h => h.TextContent).ToList().IndexOf(size);
        return part.FindAll("tbody tr").Single(r => r.FirstElementChild!.TextContent == row).Children[at].TextContent;
    }
}
