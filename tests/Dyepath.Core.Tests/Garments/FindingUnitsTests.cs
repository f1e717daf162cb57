using Dyepath.Bench;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Garments;

/// <summary>A designer who works in inches reads of inches, also where something is wrong.</summary>
public sealed class FindingUnitsTests
{
    private static IEnumerable<Starter> Starters => Repertoire.All.SelectMany(kind => Starter.Of(kind, kind.IsToBody ? "women" : null));

    /// <summary>In part, the smallest, one between and the largest, which lie far enough apart to be hard to fit with one count.</summary>
    private static Project InFewSizes(Starter starter) => starter.Chart is null || Extent.IsWhole ? starter.Project() : starter.Project("XS", "M", "5X");

    [Fact]
    public void Findings_speak_in_the_units_of_the_document()
    {
        var said = 0;
        foreach (var starter in Starters)
        {
            foreach (var findings in new[] { Findings(starter, Units.Centimetres), Findings(starter, Units.InchesThenCentimetres) })
                Assert.NotNull(findings);
            var (metric, imperial) = (Findings(starter, Units.CentimetresThenInches), Findings(starter, Units.Inches));
            Assert.Equal(metric.Length, imperial.Length);
            Assert.All(imperial, text => Assert.DoesNotMatch(@"\d cm\b", text));
            said += metric.Count(text => System.Text.RegularExpressions.Regex.IsMatch(text, @"\d cm\b"));
        }
        Assert.InRange(said, 20, int.MaxValue);
    }

    /// <summary>Rows may give way to a seam: what is said of the plan is what its sizes come to then.</summary>
    [Fact]
    public void What_is_furthest_off_is_read_off_the_sizes_that_are_made()
    {
        foreach (var starter in Starters)
        {
            if (GarmentPlanner.Plan(InFewSizes(starter), TestContext.Current.CancellationToken).Plan is not { } plan)
                continue;
            var off = plan.Sizes.SelectMany(s => plan.Chosen.Decides, (s, m) => Length.Abs(s.Finished[m] - s.Target[m])).Max();
            Assert.Equal((starter.Name, off), (starter.Name, plan.Chosen.Furthest!.Off));
            Assert.Contains($"{Wording.Fine(off, Units.Centimetres)} ", off == Length.Zero ? "0.0 cm " : DirectionWords.Why(plan), StringComparison.Ordinal);
        }
    }

    /// <summary>Texts and remedies of a document that is hard to fit, so that much is said of it, and why it was planned so.</summary>
    private static string[] Findings(Starter starter, Units units)
    {
        var begun = InFewSizes(starter);
        var project = begun with
        {
            Edition = begun.Edition with { Units = units },
            Garment = begun.Garment with { Grading = begun.Garment.Grading with { MostCounts = 1 } },
        };
        var result = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken);
        var findings = result.Plan?.Findings ?? result.Reasons;
        return
        [
            .. findings.Where(f => !f.Place.StartsWith("yarn", StringComparison.Ordinal)).SelectMany(f => f.Remedies.Select(r => r.Text).Prepend(f.Text)),
            .. result.Plan is { } plan ? [DirectionWords.Why(plan)] : Array.Empty<string>(),
        ];
    }
}
