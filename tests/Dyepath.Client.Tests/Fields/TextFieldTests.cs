using Bunit;
using Dyepath.Client.Fields;
using Dyepath.Workspace.Fields;
using Dyepath.Workspace.Work;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Fields;

/// <summary>What stands in a box while somebody types in it.</summary>
public sealed class TextFieldTests : BunitContext
{
    private const string Place = "yarn.ball.length";

    private readonly Workbench _workbench = Documents.OpenDemo();

    public TextFieldTests() => Services.AddSingleton(_workbench);

    [Fact]
    public async Task What_is_typed_stays_as_it_is_typed_and_the_document_has_the_unit()
    {
        var field = Field();
        await field.InvokeAsync(() => field.Find("input").InputAsync("212,50"));
        Assert.Equal("212,50", field.Find("input").GetAttribute("value"));
        Assert.Equal("212.5 m", _workbench.Document!.Typed(Place));
        await field.InvokeAsync(() => field.Find("input").BlurAsync());
        Assert.Equal("212.5 m", field.Find("input").GetAttribute("value"));
    }

    /// <summary>Another tab has changed another place: the text is replaced, and what is being typed stands.</summary>
    [Fact]
    public async Task A_change_made_elsewhere_leaves_what_is_being_typed()
    {
        var field = Field();
        await field.InvokeAsync(() => field.Find("input").InputAsync("212,"));
        await field.InvokeAsync(() => Elsewhere("yarn.name", "Ebbstone Heavy"));
        field.Render();
        Assert.Equal("212,", field.Find("input").GetAttribute("value"));
    }

    /// <summary>Another tab, or undo, has changed this very place: the box shows what holds, and not what was typed before.</summary>
    [Fact]
    public async Task A_change_made_elsewhere_to_this_place_is_shown()
    {
        var field = Field();
        await field.InvokeAsync(() => field.Find("input").InputAsync("212,"));
        await field.InvokeAsync(() => Elsewhere(Place, "300 m"));
        field.Render();
        Assert.Equal("300 m", field.Find("input").GetAttribute("value"));
        await field.InvokeAsync(() => field.Find("input").InputAsync("250"));
        await field.InvokeAsync(_workbench.Undo);
        field.Render();
        Assert.Equal("300 m", field.Find("input").GetAttribute("value"));
    }

    [Fact]
    public async Task An_emptied_box_leaves_the_document()
    {
        var field = Field();
        await field.InvokeAsync(() => field.Find("input").InputAsync(""));
        Assert.False(_workbench.Document!.Has(Place));
        await field.InvokeAsync(() => field.Find("input").InputAsync("about 200"));
        Assert.Equal("about 200", _workbench.Document.Typed(Place));
    }

    private void Elsewhere(string place, string value)
    {
        var other = ProjectDocument.TryParse(_workbench.Document!.Text)!;
        other.Set(place, value);
        _workbench.Replace(other.Text, "the change made in another place", saved: true);
    }

    private IRenderedComponent<TextField> Field() =>
        Render<TextField>(p => p.Add(f => f.Place, Place).Add(f => f.Label, "Length").Add(f => f.Unit, "m"));
}
