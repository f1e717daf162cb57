using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Workspace.Fit;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Fit;

/// <summary>What a count that is fixed by hand is said to come to, before it is.</summary>
public sealed class HandCountTests
{
    public static TheoryData<string> Garments => [.. Repertoire.All.Select(kind => kind.Name)];

    /// <summary>Fixed as it was proposed, rows come to what was said: the planner is the second route.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void Rows_come_to_what_is_said_of_them(string garment)
    {
        var text = ProjectWriter.Write(StarterDocument.Of(Repertoire.All.Single(kind => kind.Name == garment)));
        var plan = FitBench.Plan(ProjectDocument.TryParse(text)!).Plan!;
        var counts = HandCount.Of(plan);
        foreach (var rows in counts.Where(c => !c.IsStitches))
        {
            var size = plan.Sizes[0];
            var proposal = rows.Propose(plan, size, rows.In(size) + 4);
            Assert.True(proposal.Finished > size.Finished[proposal.Measure]);
            Assert.Equal(size.Finished[proposal.Measure], rows.Propose(plan, size, rows.In(size)).Finished);
            var document = ProjectDocument.TryParse(text)!;
            FitEdits.Pin(document, plan.Direction, size.Name, rows.What, proposal.Count, "longer");
            // What cannot be planned is no wrong figure; that it can be written is held for all of them.
            if (FitBench.Plan(document).Plan is not { } pinned)
                continue;
            Assert.Equal(proposal.Count, rows.In(pinned.Sizes[0]));
            Assert.Equal(proposal.Finished.Centimetres, pinned.Sizes[0].Finished[proposal.Measure].Centimetres, 0.05);
        }
    }

    [Fact]
    public void A_garment_with_sleeves_has_their_counts_too()
    {
        var document = FitBench.Demo();
        document.Set("garment.sleeves", new JsonObject { ["yarn"] = "variegated" });
        var plan = FitBench.Plan(document).Plan!;
        Assert.Contains(HandCount.Of(plan), c => c.What == "sleeveStitches");
        Assert.Contains(HandCount.Of(plan), c => c.What == "sleeveRows");
    }

    [Theory]
    [InlineData(30, true)]
    [InlineData(31, false)]
    [InlineData(119, false)]
    [InlineData(120, true)]
    public void Half_of_what_is_asked_or_twice_as_much_is_far_off(double centimetres, bool far) => Assert.Equal(
        far, new PinProposal("M", "panelRows", 7, Core.Garments.GarmentMeasure.Length, Length.FromCentimetres(centimetres), Length.FromCentimetres(60)).IsFarOff);
}
