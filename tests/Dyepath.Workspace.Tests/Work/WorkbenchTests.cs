using System.Diagnostics;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>What follows from a document comes when it comes; the document itself never waits for it.</summary>
public sealed class WorkbenchTests
{
    private readonly JobsInHand _jobs = new();
    private readonly Workbench _bench;

    public WorkbenchTests() => _bench = Documents.Workbench(_jobs);

    [Fact]
    public void TheDocumentIsOpenBeforeAnythingIsWorkedOut()
    {
        var document = Documents.Demo();
        document.Set("yarn.ball.length", "much");
        Assert.True(_bench.Open(document.Text));
        Assert.Equal("Tideline", _bench.Document!.Title);
        Assert.True(_bench.IsWorking || _bench.Outcome is not null);
        Assert.Contains(_bench.Outcome!.Findings, f => f.Place == "yarn.ball.length");
        Assert.True(_bench.Open(Documents.Demo().Text));
        Assert.True(_bench.IsWorking);
        Assert.Null(_bench.Plan);
        _jobs.Finish(0);
        Assert.False(_bench.IsWorking);
        Assert.Equal("M", _bench.Size!.Name);
    }

    /// <summary>By hand: the size that is looked at, and which one is looked at once others are in the pattern.</summary>
    [Theory]
    [InlineData("M", "XS S M L", "M")]
    [InlineData("L", "XS S M L", "L")]
    [InlineData("S", "S 1X", "S")]
    [InlineData("S", "M L", "M")]
    [InlineData("L", "S M", "M")]
    [InlineData("M", "S L", "S")]
    [InlineData("M", "XS 1X", "1X")]
    public async Task TheShownSizeKeepsItsNameOrIsTheNearest(string shown, string names, string then)
    {
        var document = Documents.Demo();
        document.Set("sizes.chart", "women");
        SetSizes(document, "S M L");
        Assert.True(_bench.Open(document.Text));
        _jobs.Finish(0);
        _bench.Show(_bench.Plan!.Sizes.ToList().FindIndex(s => s.Name == shown));
        _bench.Edit("sizes", d => SetSizes(d, names));
        await _jobs.AskedAsync(2);
        _jobs.Finish(1);
        Assert.Equal(names.Split(' '), _bench.Plan!.Sizes.Select(s => s.Name));
        Assert.Equal(then, _bench.Size!.Name);
    }

    private static void SetSizes(ProjectDocument document, string names)
    {
        document.Set("sizes.names", new System.Text.Json.Nodes.JsonArray([.. names.Split(' ').Select(n => System.Text.Json.Nodes.JsonValue.Create(n))]));
        document.Set("sizes.base", null);
    }

    [Fact]
    public void WhatComesBackIsThePlan()
    {
        Assert.True(_bench.Open(Documents.Demo().Text));
        _jobs.Finish(0);
        var here = Outcome.Of(Documents.Demo(), CancellationToken.None);
        Assert.Equal(PlanJson.Write(here.Plan!), PlanJson.Write(_bench.Plan!));
        Assert.Equal(here.Findings, _bench.Outcome!.Findings);
        Assert.Equal(here.Measured!.Natural.Total, _bench.Outcome.Measured!.Natural.Total);
    }

    [Fact]
    public void WhyThereIsNoPlanComesBackToo()
    {
        var document = Documents.Demo();
        document.Set("garment.motif", "bands");
        Assert.True(_bench.Open(document.Text));
        _jobs.Finish(0);
        Assert.Equal(PlanOutcome.Infeasible, _bench.Outcome!.Result!.Outcome);
        Assert.Equal(Outcome.Of(document, CancellationToken.None).Findings, _bench.Outcome.Findings);
        Assert.NotEmpty(_bench.Outcome.Result.Options[0].Ruler.Remedies);
    }

    /// <summary>What cannot be planned is shown as it was; but a garment never as another one was.</summary>
    [Fact]
    public async Task ThePlanOfOneGarmentIsNotShownForAnother()
    {
        await OpenAsync();
        _bench.Set("garment.belowWaist", "1 m 90 m", "length");
        await _jobs.AskedAsync(2);
        await FinishAsync(1);
        Assert.True(_bench.IsStale);
        Assert.NotNull(_bench.Plan);
        _bench.Set("garment.shape", "skirt", "garment");
        await _jobs.AskedAsync(3);
        await FinishAsync(2);
        Assert.NotEmpty(_bench.Outcome!.Findings);
        Assert.Null(_bench.Outcome.Plan);
        Assert.Null(_bench.Plan);
    }

    [Fact]
    public void YarnIsMeasuredBeforeTheGarmentIsDescribed()
    {
        var document = Documents.Demo();
        document.Set("garment", null);
        Assert.True(_bench.Open(document.Text));
        _jobs.Finish(0);
        Assert.Null(_bench.Outcome!.Result);
        Assert.Equal(21, _bench.Outcome.Measured!.Ring.SequenceUnits);
    }

    [Fact]
    public void NoPhotoCrosses()
    {
        var document = Documents.Demo();
        document.Add("photos", new System.Text.Json.Nodes.JsonObject { ["place"] = "notes", ["alternative"] = "On a line.", ["jpeg"] = Pattern.SmallJpeg.Base64(400) });
        Assert.True(_bench.Open(document.Text));
        Assert.DoesNotContain("jpeg", _jobs.Inputs.Single(), StringComparison.Ordinal);
        _jobs.Finish(0);
        Assert.Single(_bench.Plan!.Project.Photos);
    }

    [Fact]
    public async Task ALaterChangeTakesThePlaceOfTheEarlier()
    {
        await OpenAsync();
        var first = _bench.Plan!;
        _bench.Set("garment.belowWaist", "30 cm", "length");
        await _jobs.AskedAsync(2);
        _bench.Set("garment.belowWaist", "34 cm", "length");
        Assert.True(_bench.IsStale);
        Assert.Same(first, _bench.Plan);
        await _jobs.AskedAsync(3);
        Assert.Equal(1, _jobs.Stopped);
        _jobs.Finish(2);
        Assert.False(_bench.IsStale);
        Assert.Equal("34 cm", _bench.Document!.Typed("garment.belowWaist"));
        Assert.Equal(34, ((BoxyTop)_bench.Plan!.Project.Garment.Shape).BelowWaist.Centimetres);
    }

    [Fact]
    public async Task ThePlanCanBeStoppedAndTakenUpAgain()
    {
        await OpenAsync();
        var first = _bench.Plan;
        _bench.Set("garment.belowWaist", "30 cm", "length");
        await _jobs.AskedAsync(2);
        _bench.Stop();
        Assert.Equal(1, _jobs.Stopped);
        Assert.True(_bench is { IsWorking: false, IsStopped: true, IsStale: true });
        Assert.Same(first, _bench.Plan);
        Assert.Equal("30 cm", _bench.Document!.Typed("garment.belowWaist"));
        _bench.Again();
        await _jobs.AskedAsync(3);
        _jobs.Finish(2);
        Assert.True(_bench is { IsWorking: false, IsStopped: false, IsStale: false });
        Assert.NotSame(first, _bench.Plan);
    }

    [Fact]
    public async Task APlanThatFailsLeavesTheDocumentOpenAndUndoMendsIt()
    {
        await OpenAsync();
        var first = _bench.Plan;
        var text = _bench.Document!.Text;
        _bench.Set("garment.belowWaist", "30 cm", "length");
        await _jobs.AskedAsync(2);
        _jobs.Fail(1);
        Assert.NotNull(_bench.Failed);
        Assert.True(_bench is { IsWorking: false, IsStale: true });
        Assert.Same(first, _bench.Plan);
        _bench.Undo();
        Assert.Null(_bench.Failed);
        // What stands there again was planned already.
        while (_bench.IsWorking)
            await Task.Delay(5, TestContext.Current.CancellationToken);
        Assert.Null(_bench.Failed);
        Assert.False(_bench.IsStale);
        Assert.Equal(text, _bench.Document!.Text);
    }

    [Fact]
    public void ADocumentWhosePlanFailsOpensEveryTime()
    {
        for (var time = 0; time < 2; time++)
        {
            Assert.True(_bench.Open(Documents.Demo().Text));
            _jobs.Fail(time);
            Assert.NotNull(_bench.Document);
            Assert.NotNull(_bench.Failed);
            Assert.False(_bench.IsWorking);
        }
    }

    [Fact]
    public async Task WithoutAWorkerItIsWorkedOutHereAndSaysSo()
    {
        Assert.True(_bench.Open(Documents.Demo().Text));
        var worked = new TaskCompletionSource();
        _bench.Changed += () =>
        {
            if (!_bench.IsWorking)
                worked.TrySetResult();
        };
        _jobs.Block(0);
        Assert.True(_bench.StandsStill);
        await worked.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        Assert.NotNull(_bench.Plan);
        Assert.Equal(1, _jobs.Asked);
    }

    [Fact]
    public async Task WhoFailsOnHearingOfAChangeKeepsNobodyElseFromIt()
    {
        await OpenAsync();
        var heard = 0;
        _bench.Changed += () => throw new InvalidOperationException("as a page would");
        _bench.Changed += () => heard++;
        _bench.Set("garment.belowWaist", "30 cm", "length");
        await _jobs.AskedAsync(2);
        _jobs.Finish(1);
        Assert.False(_bench.IsWorking);
        Assert.Equal(2, heard);
    }

    [Fact]
    public async Task AnotherProjectsChangesCannotBeUndoneHere()
    {
        await OpenAsync();
        _bench.Set("title", "First", "title");
        Assert.True(_bench.Open(Documents.Demo().Text));
        Assert.Null(_bench.Undoing);
    }

    [Fact]
    public void TheBookletAndTheCheckTakeTheSearchesFromThePlan()
    {
        Assert.True(_bench.Open(Documents.Demo().Text));
        _jobs.Finish(0);
        var (plan, decisions) = (_bench.Plan!, _bench.Outcome!.Decisions!);
        var with = Workspace.Pattern.PageJob.Run(Workspace.Pattern.PageJob.Order(plan, decisions), new Progress<double>());
        var without = Workspace.Pattern.PageJob.Run(Workspace.Pattern.PageJob.Order(plan, null), new Progress<double>());
        Assert.Equal(without, with);
        Assert.Contains("Tideline", System.Text.Encoding.UTF8.GetString(with), StringComparison.Ordinal);
        Assert.Empty(Workspace.Pattern.CheckJob.Read(Workspace.Pattern.CheckJob.Run(Workspace.Pattern.CheckJob.Order(plan, decisions), new Progress<double>())));
    }

    /// <summary>An answer that comes while the question is still being put is taken up a moment later.</summary>
    private async Task FinishAsync(int order)
    {
        _jobs.Finish(order);
        for (var begun = Stopwatch.GetTimestamp(); _bench.IsWorking; await Task.Delay(5, TestContext.Current.CancellationToken))
            Assert.True(Stopwatch.GetElapsedTime(begun) < TimeSpan.FromMinutes(1), "what was answered is still being worked out");
    }

    private async Task OpenAsync()
    {
        Assert.True(_bench.Open(Documents.Demo().Text));
        await _jobs.AskedAsync(1);
        _jobs.Finish(0);
    }

    /// <summary>Another project begins with nothing of the last: no plan, no earlier state in view, its base size first.</summary>
    [Fact]
    public async Task AnotherProjectBeginsAnew()
    {
        Assert.True(_bench.Open(Documents.Demo().Text));
        _jobs.Finish(0);
        _bench.Show(4);
        Assert.Equal("1X", _bench.Size!.Name);
        _bench.Set("garment.belowWaist", "30 cm", "length");
        Assert.True(_bench.IsOutcomeEarlier);
        await _jobs.AskedAsync(2);
        Assert.True(_bench.Open(Documents.Demo().Text));
        Assert.False(_bench.IsOutcomeEarlier);
        Assert.Equal((null, null), (_bench.Plan, _bench.Undoing));
        await _jobs.AskedAsync(3);
        _jobs.Finish(2);
        Assert.Equal(("Tideline", "M"), (_bench.Document!.Title, _bench.Size!.Name));
        Assert.False(_bench.Open("no document"));
        Assert.Equal("Tideline", _bench.Document.Title);
    }

    /// <summary>What is undone and done again is said by name, for who cannot see it.</summary>
    [Fact]
    public void UndoAndRedoSayWhatTheyDid()
    {
        Assert.True(_bench.Open(Documents.Demo().Text));
        _bench.Set("title", "Ebb", "title");
        _bench.Undo();
        Assert.Equal(("Undone: title.", "Tideline", "title"), (_bench.Said, _bench.Document!.Title, _bench.Redoing));
        _bench.Redo();
        Assert.Equal(("Done again: title.", "Ebb", "title"), (_bench.Said, _bench.Document.Title, _bench.Undoing));
        Assert.True(_bench.Replace(Documents.Demo().Text, "the change made in another place", saved: true));
        Assert.Equal("the change made in another place", _bench.Undoing);
        var edits = 0;
        _bench.Edited += () => edits++;
        _bench.Replace(Documents.Demo().Text, "again", saved: true);
        Assert.Equal(0, edits);
        _bench.Replace(Documents.Demo().Text, "again");
        Assert.Equal(1, edits);
    }

    /// <summary>A quick plan follows every key; a slow one waits until the hands pause for 0.6 s.</summary>
    [Theory]
    [InlineData(0, 15)]
    [InlineData(150, 15)]
    [InlineData(399, 15)]
    [InlineData(400, 600)]
    [InlineData(5_000, 600)]
    public void HandsPauseAsLongAsAPlanTakes(int took, int pause) =>
        Assert.Equal(TimeSpan.FromMilliseconds(pause), Workbench.PauseAfter(TimeSpan.FromMilliseconds(took)));
}
