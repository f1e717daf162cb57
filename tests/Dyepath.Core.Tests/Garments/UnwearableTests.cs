using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What a document may ask for and nobody can wear or make is said, with what to write instead.</summary>
public sealed class UnwearableTests
{
    /// <summary>The newer published list has no ease under −10 cm.</summary>
    [Theory]
    [InlineData("pullover", -20, true)]
    [InlineData("vest", -20, true)]
    [InlineData("pullover", 0, false)]
    [InlineData("vest", 0, false)]
    public void A_body_that_crochet_does_not_stretch_round_is_said(string garment, double ease, bool said)
    {
        var project = Begun(garment, "sc", true, Direction.Sideways).With(g => g with { Shape = Eased(g.Shape, new Ease(null, null, Cm(ease))) });
        var plan = project.Planned();
        Assert.Equal(said, plan.Findings.Any(f => f is { Level: FindingLevel.Warning, Place: "garment.ease" }
            && f.Text.Contains(" bust it must be ", StringComparison.Ordinal)));
        Assert.All(plan.Sizes, s => Assert.Contains(s.Worn, w => w.Body == BodyMeasure.Bust && w.Part == FitPart.Body));
    }

    [Theory]
    [InlineData(40, true)]
    [InlineData(4, false)]
    public void An_edging_that_leaves_little_of_the_motif_is_said(int rounds, bool said)
    {
        var project = Begun("vest", "sc", true, Direction.Up).With(g => g with
        {
            Edgings = [new EdgingChoice(EdgingPlace.Hem, "sc", rounds)],
        });
        var finding = project.Planned().Findings.SingleOrDefault(f => f.Place == "garment.edgings[0].rounds");
        Assert.Equal(said, finding is not null);
        if (finding is null)
            return;
        // As many rounds as it says are no longer said.
        var fewer = int.Parse(System.Text.RegularExpressions.Regex.Match(finding.Text, @"Work (\d+) rounds or fewer\.$").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(fewer, 5, 39);
    }

    /// <summary>Counted at 6, 5, 7 and 4.</summary>
    [Theory]
    [InlineData(new[] { 6, 9, 7, 4 }, "colour is to take 9 where its yarn makes 5.0", "tighter")]
    [InlineData(new[] { 6, 5, 7, 2 }, "colour is to take 2 where its yarn makes 4.0", "looser")]
    [InlineData(new[] { 6, 5, 7, 5 }, null, null)]
    public void Stitches_that_no_hand_makes_of_a_colour_are_said(int[] stitches, string? said, string? way)
    {
        var project = Begun("wrap", "sc", true, Direction.Up);
        var plan = (project with { Fabric = project.Fabric with { SectionStitches = [.. stitches] } }).Planned();
        var finding = plan.Findings.SingleOrDefault(f => f is { Level: FindingLevel.Warning, Place: "fabric.sectionStitches" });
        Assert.Equal(said is not null, finding is not null);
        Assert.Equal(said is not null, plan.IsDoubtful);
        if (finding is null)
            return;
        Assert.Contains(said!, finding.Text, StringComparison.Ordinal);
        Assert.Contains($"so much {way}: write the nearest whole stitches (6, 5, 7, 4)", finding.Text, StringComparison.Ordinal);
    }

    private static GarmentShape Eased(GarmentShape shape, Ease ease) => shape switch
    {
        Vest vest => vest with { BustEase = ease },
        BoxyTop top => top with { BustEase = ease },
        _ => throw new ArgumentException("Not to the bust.", nameof(shape)),
    };
}
