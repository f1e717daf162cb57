using Bunit;
using Dyepath.Client.Shell;
using Dyepath.Client.Work;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Work;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Shell;

public sealed class GuardedTests : BunitContext
{
    private readonly Workbench _bench = Documents.OpenDemo();
    private Failing _failing = Failing.Nowhere;

    public GuardedTests() => Services.AddWork(_bench);

    [Theory]
    [InlineData(Failing.Rendering)]
    [InlineData(Failing.Beginning)]
    [InlineData(Failing.AfterRendering)]
    [InlineData(Failing.Later)]
    public void WhateverFailsInsideANoticeTakesItsPlaceAndTryingAgainBringsItBack(Failing failing)
    {
        _failing = failing;
        var page = Guard();
        page.WaitForAssertion(() => Assert.Contains("The thing could not be shown just now. Your document is kept as you wrote it.", page.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain("Undo the last change", page.Markup, StringComparison.Ordinal);
        _failing = Failing.Nowhere;
        page.FindAll("button").Single(b => b.TextContent == "Try again").Click();
        Assert.Contains("what was shown", page.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(".now")]
    [InlineData(".later")]
    public void WhatFailsWhenItIsTappedIsNoWorse(string button)
    {
        var page = Guard();
        page.Find(button).Click();
        page.WaitForElement(".trouble");
        page.FindAll("button").Single(b => b.TextContent == "Try again").Click();
        page.WaitForElement(button);
    }

    [Fact]
    public async Task UndoTakesTheChangeBackThatLedHere()
    {
        var before = _bench.Document!.Typed("garment.belowWaist");
        _bench.Set("garment.belowWaist", "30 cm", "length");
        _failing = Failing.Rendering;
        var page = Guard();
        _failing = Failing.Nowhere;
        // Found and pressed in one turn: the plan that is being made may draw the page anew in between.
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Undo the last change").ClickAsync());
        page.WaitForAssertion(() => Assert.Equal(before, _bench.Document!.Typed("garment.belowWaist")));
        page.WaitForAssertion(() => Assert.Contains("what was shown", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void ANewPlanIsWorthAnotherTry()
    {
        _failing = Failing.Rendering;
        var page = Guard();
        page.WaitForElement(".trouble");
        _failing = Failing.Nowhere;
        _bench.Set("garment.belowWaist", "30 cm", "length");
        page.WaitForAssertion(() => Assert.Contains("what was shown", page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(60));
    }

    [Fact]
    public void WhatFailsInDecidingWhetherToRenderIsShownThere()
    {
        var page = Render<Guarded>(p => p.Add(g => g.What, "The thing").AddChildContent<Undecided>());
        Assert.Contains("decided", page.Markup, StringComparison.Ordinal);
        _bench.Show(1);
        page.WaitForElement(".trouble");
        Assert.Null(Services.GetRequiredService<Faults>().Last);
    }

    private sealed class Undecided : WorkbenchComponent
    {
        protected override bool ShouldRender() => throw new InvalidOperationException("whether");

        protected override void BuildRenderTree(Microsoft.AspNetCore.Components.Rendering.RenderTreeBuilder builder) => builder.AddContent(0, "decided");
    }

    [Fact]
    public void WhereNothingElseIsLeftTheDocumentCanBeSaved()
    {
        _failing = Failing.Rendering;
        var page = Guard(whole: true);
        Assert.Contains("Save the document as a file", page.Find(".trouble").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<Guarded> Guard(bool whole = false)
    {
        Services.AddCascadingValue(_ => (Func<Failing>)(() => _failing));
        return Render<Guarded>(p => p.Add(g => g.What, "The thing").Add(g => g.Whole, whole).AddChildContent<Throws>());
    }
}
