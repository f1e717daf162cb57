using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>Every garment of the list: its construction holds together, its starter is planned, checked by other routes and read back.</summary>
public sealed class RepertoireTests
{
    public static TheoryData<string> Garments => [.. Repertoire.All.Select(k => k.Name)];

    /// <summary>Shaped rows are refused in linen stitch, with a fault that says so.</summary>
    public static TheoryData<string, string> GarmentsInStitches => [.. Extent.Half(from kind in Repertoire.All
        from stitch in new[] { "sc", "hdc", "linen" }
        let garment = Starter(kind.Name).Garment
        where stitch != "linen" || !garment.Shape.Construct(garment).Groups.Any(g => g.IsShaped) select (kind.Name, stitch))];

    [Theory]
    [MemberData(nameof(Garments))]
    public void Joins_steps_and_edgings_name_what_there_is(string name)
    {
        var garment = Starter(name).Garment;
        var construction = garment.Shape.Construct(garment);
        var pieces = construction.Groups.SelectMany(g => g.Pieces).Select(p => p.Id).ToArray();
        Assert.Equal(pieces.Distinct(), pieces);
        Assert.All(
            construction.Joins.SelectMany(j => j.First.Concat(j.Second)).Concat(construction.Edgings.SelectMany(e => e.Edges).Select(e => e.Edge)),
            edge =>
            {
                Assert.Contains(edge.Piece, pieces);
                if (edge.Stretch != Stretch.Whole)
                    Assert.Contains(construction.GroupOf(edge.Piece).OpeningsOf(edge.Piece), o => o.Id == edge.Opening && o.Sides.Contains(edge.Side));
            });
        // Every seam is sewn in one step and only one; a step sews what there is.
        var sewn = construction.Sewing.SelectMany(s => s.Seams).ToArray();
        Assert.Equal(construction.Joins.Where(j => j.Sewn).Select(j => j.Id).Order(), sewn.Order());
        Assert.All(construction.Edgings, e => Assert.True(e.Begins is not { } seam || construction.Joins.Any(j => j.Id == seam)));
        Assert.Contains(construction.Worn[0].Piece, pieces);
        Assert.Equal(
            Repertoire.All.First(k => k.Name == name).Edges.Order(),
            construction.Edgings.Select(e => e.Place).Concat(ByChoice(name)).Distinct().Order());
    }

    /// <summary>Edges that meet are as long as each other, but for what is eased: a tenth (common practice, no source), or one row or stitch.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void Edges_that_are_sewn_together_are_as_long_as_each_other(string name)
    {
        var plan = Plan(Starter(name));
        foreach (var seam in plan.Sizes.SelectMany(s => s.Seams).Where(s => s.IsSewn))
        {
            var (one, other) = (Centimetres(seam.First), Centimetres(seam.Second));
            Assert.True(Math.Abs(one - other) <= 0.1 * Math.Max(one, other) + 1.5, $"{seam.Where}: {one:0.0} against {other:0.0} cm");
        }

        double Centimetres(IEnumerable<EdgeRun> runs) =>
            runs.Sum(r => r.Count * (r.AlongStitches ? plan.StitchWidth : plan.RowHeight).Centimetres);
    }

    [Theory]
    [MemberData(nameof(GarmentsInStitches))]
    public void A_starter_is_planned_checked_and_read_back(string name, string stitch)
    {
        var starter = Starter(name);
        var project = starter with
        {
            Fabric = starter.Fabric with { Stitch = FabricStitch.All.First(s => s.Id == stitch), SectionStitches = stitch == "linen" ? [3, 2, 3, 3] : [5, 4, 6, 4] },
        };
        // Rounds of so short a sequence make no slant in linen stitch: turned, they make the argyle.
        if (stitch == "linen" && project.Garment.Working != Working.Turned)
            project = project with { Garment = project.Garment with { Working = Working.Turned, Motif = Core.Motifs.MotifKind.Argyle } };
        var plan = Plan(project);
        Assert.Empty(PlanCheck.Verify(plan, TestContext.Current.CancellationToken));
        Assert.Empty(PatternCheck.Run(plan));
        var words = PatternWriter.Write(plan);
        Assert.NotEmpty(words.Sections);
        Assert.Equal(project.Garment, ProjectReader.Read(ProjectWriter.WriteUtf8(project)).Project?.Garment, SameGarment);
    }

    /// <summary>What does not hang from the shoulders begins with an edge that is drawn in; without it the plan says what is missing.</summary>
    [Theory]
    [InlineData("off-shoulder-top", "topEdge", "top edge")]
    [InlineData("off-shoulder-dress", "topEdge", "top edge")]
    [InlineData("skirt", "waist", "waist")]
    public void What_hangs_from_no_shoulder_is_held_by_an_edge(string name, string place, string what)
    {
        var starter = Starter(name);
        Assert.Contains($"\"{place}\"", ProjectWriter.Write(starter), StringComparison.Ordinal);
        Assert.DoesNotContain(Plan(starter).Findings, f => f.Text.Contains("Nothing holds it up", StringComparison.Ordinal));
        var bare = Assert.Single(Plan(starter with { Garment = starter.Garment with { Edgings = [] } }).Findings, f => f.Place == "garment.edgings" && !f.Text.StartsWith("Size", StringComparison.Ordinal));
        Assert.Equal(Core.Findings.FindingLevel.Warning, bare.Level);
        Assert.Contains("Nothing holds it up", bare.Text, StringComparison.Ordinal);
        Assert.Contains($"Edge the {what} with a casing", bare.Text, StringComparison.Ordinal);
        // A flat band does not draw it in.
        var band = starter with { Garment = starter.Garment with { Edgings = [starter.Garment.Edgings[0] with { Edging = "sc" }] } };
        Assert.Contains(Plan(band).Findings, f => f.Place == "garment.edgings");
    }

    [Theory]
    [MemberData(nameof(Garments))]
    public void Only_what_has_no_other_hold_needs_such_an_edge(string name) =>
        Assert.Equal(
            name is "off-shoulder-top" or "off-shoulder-dress" or "skirt",
            Repertoire.All.First(k => k.Name == name).NeededEdgings.Any(e => e.Where != EdgingPlace.Fronts));

    /// <summary>A designer seldom leaves a hem as it is worked, and its rounds bring sizes nearer: a garment begins with a plain one.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void Hem_cuffs_and_brim_are_begun_edged(string name)
    {
        var garment = Starter(name).Garment;
        var edges = garment.Shape.Construct(garment).Edgings;
        foreach (var place in new[] { EdgingPlace.Hem, EdgingPlace.Cuffs, EdgingPlace.Brim })
            Assert.Equal(edges.Any(e => e.Place == place), garment.Edgings.Any(e => e.Where == place));
        Assert.Equal(garment.Edgings.Length, garment.Edgings.Select(e => e.Where).Distinct().Count());
    }

    /// <summary>The elastic is cut to the share of the shoulders that the document gives, and 2.5 cm for its overlap.</summary>
    [Fact]
    public void An_elastic_on_the_shoulders_follows_their_girth()
    {
        var starter = Starter("off-shoulder-top");
        var project = starter with { Garment = starter.Garment with { Shape = (OffShoulder)starter.Garment.Shape with { BandShare = 0.8 } } };
        var plan = Plan(project);
        var only = plan.Sizes[0];
        var text = TextBooklet.Write(PatternWriter.Write(plan), project.Edition with { Size = only.Name });
        var cut = 0.8 * only.Body["shoulders"].Centimetres + 2.5;
        Assert.Contains($"Elastic to cut: About {(Math.Round(cut * 2) / 2).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)} cm", text, StringComparison.Ordinal);
        Assert.Empty(PatternCheck.Run(plan));
    }

    private static bool SameGarment(GarmentSpec? one, GarmentSpec? other) => one?.Shape == other?.Shape && one?.Working == other?.Working;

    private static EdgingPlace[] ByChoice(string name) => name switch
    {
        "pullover" or "tunic" => [EdgingPlace.Cuffs, EdgingPlace.Shoulder],
        "cardigan" => [EdgingPlace.Armholes],
        _ => [],
    };

    private static Project Starter(string name) => StarterDocument.Of(Repertoire.All.First(k => k.Name == name));

    private static Plan Plan(Project project)
    {
        var result = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken);
        Assert.True(result.HasPlan, string.Join("\n", result.Reasons.Select(r => r.Text)));
        return result.Plan;
    }
}
