using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Constructions;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What is wrong with a document is said with what to write instead.</summary>
public sealed class FindingWordsTests
{
    [Fact]
    public void An_edging_that_a_neck_has_no_edge_for_says_which_to_write()
    {
        Assert.Contains(GarmentTrials.Faults("""
            "shape": "pullover", "edgings": [{ "where": "shoulder", "edging": "button-band" }]
            """), f => f.Contains(
            "allowed: neck, where the shoulder is sewn. Write \"where\": \"neck\".", StringComparison.Ordinal));
    }

    [Fact]
    public void The_starter_document_lists_the_edgings()
    {
        var starter = StarterDocument.Write();
        Assert.All(
            Core.Edgings.EdgingLibrary.All.Where(e => e.Objection(Core.Edgings.EdgingPlace.Hem, children: false) is null && !e.InRows),
            e => Assert.Contains(e.Id, starter, StringComparison.Ordinal));
    }
}
