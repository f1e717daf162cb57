using Dyepath.Core.Constructions;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Where the document leaves the direction open, no measure comes out poorly that the other direction would have had right.</summary>
public sealed class DirectionChoiceTests
{
    [Fact]
    public void Fewer_poor_measures_win_where_no_more_of_the_motif_is_lost()
    {
        var start = StarterDocument.Of(Repertoire.All.First(k => k.Name == "tunic"));
        var tunic = start.Top();
        var project = start.With(g => g with { Shape = tunic with { Neck = tunic.Neck with { Form = NeckForm.Round } }, Direction = null }) with
        {
            Sizes = new SizeSelection("child", ["2"], [], null, [], []),
        };
        var plan = project.Planned();
        Assert.DoesNotContain(plan.Findings, f => f.Level == FindingLevel.Warning);
        // The other direction is not as good: its neck is more than an inch off.
        var other = project.Directed(plan.Direction == Direction.Up ? Direction.Sideways : Direction.Up).Planned();
        Assert.Contains(other.Findings, f => f.Place == "garment.direction" && f.Level == FindingLevel.Warning);
    }
}
