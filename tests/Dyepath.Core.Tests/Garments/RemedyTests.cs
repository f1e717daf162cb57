using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Bench;
using Dyepath.Core.Constructions;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What a finding says would help is a change that can be made, and does.</summary>
public sealed class RemedyTests
{
    public static TheoryData<string, string, string> Documents => new()
    {
        // As begun, and with counts, a hem or a sequence that fit badly.
        { "pullover", "round", "women" }, { "vest", "v", "child" }, { "vest", "round", "en13402-3-women" }, { "cardigan", "v", "baby" },
        { "tunic", "square", "men" }, { "pullover", "slit", "baby" },
    };

    [Theory]
    [MemberData(nameof(Documents))]
    public void What_it_sets_is_read_and_planned_and_the_fact_is_gone_or_less(string garment, string neck, string chart)
    {
        var seen = 0;
        foreach (var project in Changed(garment, neck, chart))
        {
            if (Result(project, null).Plan is not { } plan)
                continue;
            foreach (var finding in plan.Findings.Where(f => !f.Remedies.IsEmpty))
            {
                Assert.StartsWith(finding.Fact.TrimEnd('.'), finding.Text, StringComparison.Ordinal);
                Assert.DoesNotContain("garment.", finding.Text, StringComparison.Ordinal);
                foreach (var remedy in finding.Remedies.Where(r => r.Place is not null))
                {
                    seen++;
                    Assert.Contains(remedy.Text.TrimEnd('.')[1..], finding.Text, StringComparison.Ordinal);
                    var result = Result(project, remedy);
                    Assert.True(result.Plan is not null, $"{remedy}: {string.Join(" ", result.Reasons.Select(r => r.Text))}");
                    Assert.DoesNotContain(result.Plan.Findings, f => f.Text == finding.Text);
                    // Of what is planned anew from its beginning nothing is promised.
                    if (!remedy.Text.Contains("planned anew", StringComparison.Ordinal))
                        StillWorn(plan, result.Plan, remedy.Text);
                }
            }
        }
        Assert.True(seen > 0 || chart == "baby", "nothing was advised");
    }

    /// <summary>
    /// What a change moves besides is what the garment planned with it has: every measure by more than half a centimetre is named or
    /// counted, and by how much is right for those that are named.
    /// </summary>
    [Theory]
    [MemberData(nameof(Documents))]
    public void What_else_it_moves_is_told(string garment, string neck, string chart)
    {
        foreach (var project in Changed(garment, neck, chart))
        {
            if (Result(project, null).Plan is not { } plan)
                continue;
            foreach (var remedy in plan.Findings.SelectMany(f => f.Remedies).Where(r => r.Place is not null && r.Text.Contains("; it also moves ", StringComparison.Ordinal)))
            {
                var then = Result(project, remedy).Plan!;
                if (then.Direction != plan.Direction && remedy.Place != "garment.direction")
                    continue;
                foreach (System.Text.RegularExpressions.Match said in System.Text.RegularExpressions.Regex.Matches(
                    remedy.Text[remedy.Text.IndexOf("; it also moves ", StringComparison.Ordinal)..], @"(?:moves |, |and )([a-z' ]+?) by up to ([\d.]+) cm \(most in ([^)]+)\)"))
                {
                    var measure = plan.Sizes[0].Finished.Keys.Single(m => Core.Garments.GarmentMeasures.Words(m) == said.Groups[1].Value);
                    var at = plan.Sizes.ToList().FindIndex(s => s.Name == said.Groups[3].Value);
                    var moved = Math.Abs((then.Sizes[at].Finished[measure] - plan.Sizes[at].Finished[measure]).Centimetres);
                    Assert.True(Math.Abs(moved - double.Parse(said.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture)) < 0.051, $"{remedy.Text}: {moved:0.00}");
                }
            }
        }
    }

    private static readonly Dictionary<(string, string, string), Project[]> Projects = [];

    private static readonly Dictionary<(Project, string?, string?), PlanResult> Results = [];

    /// <summary>
    /// A document as begun and changed in five ways, the same objects each time; in part three of the six, other ones for each document,
    /// so that each is tried on three of them.
    /// </summary>
    private static Project[] Changed(string garment, string neck, string chart)
    {
        if (Projects.TryGetValue((garment, neck, chart), out var projects))
            return projects;
        var starter = Starter.Of(Repertoire.All.First(k => k.Name == garment), chart).First(s => s.Neck == neck);
        var begun = starter.Project();
        var which = Documents.ToList().FindIndex(d => (d.Data.Item1, d.Data.Item2, d.Data.Item3) == (garment, neck, chart));
        projects = [begun, (starter with { Bare = true }).Project(), Long(begun), Edged(begun), Edged(Uneven(begun)), Uneven(begun)];
        projects = [.. projects.Where((_, i) => Extent.IsWhole || (i + which) % 6 is 0 or 1 or 3)];
        Projects.Add((garment, neck, chart), projects);
        return projects;
    }

    /// <summary>Several findings advise the same, and both tests read the same plans; tests of one class run one after another.</summary>
    /// <param name="remedy">Missing: the document itself is planned.</param>
    private static PlanResult Result(Project project, Remedy? remedy)
    {
        var key = (project, remedy?.Place, remedy?.Value);
        if (!Results.TryGetValue(key, out var result))
        {
            var changed = remedy is null ? project : Set(project, remedy.Place!, remedy.Value!);
            Results.Add(key, result = GarmentPlanner.Plan(changed, TestContext.Current.CancellationToken));
        }
        return result;
    }

    /// <summary>Advice after which a body no longer gets in is none, nor one that spoils a measure that was well.</summary>
    private static void StillWorn(Plan plan, Plan then, string advice)
    {
        foreach (var (now, later) in plan.Sizes.Zip(then.Sizes))
        {
            foreach (var fit in now.Worn.Where(f => f.Holds))
                Assert.True(later.Worn.All(f => f.Part != fit.Part || f.Holds), $"{advice} In {now.Name} the {fit.Part} holds no more.");
        }
        if (plan.Direction == then.Direction)
            return;
        foreach (var measure in plan.Sizes[0].Target.Keys.Where(m => then.Sizes.All(s => s.Target.ContainsKey(m)) && plan.Sizes.All(s => s.Target.ContainsKey(m))))
        {
            var (was, comes) = (plan.Sizes.Max(s => Off(s, measure)), then.Sizes.Max(s => Off(s, measure)));
            Assert.True(comes <= Math.Max(2.54, was) + 0.01, $"{advice} {measure} comes out {comes:0.0} cm off, {was:0.0} before.");
        }

        static double Off(SizePlan size, GarmentMeasure measure) => Math.Abs((size.Finished[measure] - size.Target[measure]).Centimetres);
    }

    /// <summary>Neck and armholes edged as deep as edgings usually are.</summary>
    private static Project Edged(Project project) => project with
    {
        Garment = project.Garment with
        {
            Edgings =
            [
                .. project.Garment.Edgings,
                .. new[] { Core.Edgings.EdgingPlace.Neck, Core.Edgings.EdgingPlace.Armholes }
                    .Select(place => project.Garment.Shape.Construct(project.Garment).Edgings.FirstOrDefault(e => e.Place == place)).OfType<EdgingEdge>()
                    .Where(e => project.Garment.Edgings.All(own => own.Where != e.Place))
                    .Select(e => new EdgingChoice(e.Place, e.IsOpen ? "sc-rows" : "sc", 4)),
            ],
        },
    };

    /// <summary>A sequence of 18 stitches in colours of very different lengths, for fabric of 13.5 stitches and 15.25 rows to 4 inches.</summary>
    private static Project Uneven(Project project) => project with
    {
        Yarn = TestProjects.Tideline.Yarn with
        {
            Sections =
            [
                .. TestProjects.Tideline.Yarn.Sections.Zip([9.875, 6.5, 14.75, 7.5, 4.375], (s, inches) => s with
                {
                    Length = Core.Quantities.Length.FromInches(inches), Spread = Core.Quantities.Length.Zero,
                }),
            ],
            Counted = [project.Yarn.Counted[0] with { Repeats = [[4, 3, 6, 3, 2], [4, 3, 6, 3, 2], [4, 3, 6, 3, 2]] }],
        },
        Fabric = project.Fabric with
        {
            Swatch = project.Fabric.Swatch with { Worked = new Core.Swatches.Gauge(13.5, 15.25, Core.Quantities.Length.FromInches(4)), YarnUsed = [] },
        },
    };

    /// <summary>Colours that come round late: fewer counts make the motif, and fewer places keep it.</summary>
    private static Project Long(Project project) => project with
    {
        Yarn = project.Yarn with
        {
            Sections = [.. project.Yarn.Sections.Select(s => s with { Length = 2.5 * s.Length })],
            Counted = [project.Yarn.Counted[0] with { Repeats = [[10, 7, 10, 7], [10, 7, 10, 7]] }],
        },
    };

    private static Project Set(Project project, string place, string value)
    {
        var document = JsonNode.Parse(ProjectWriter.Write(project))!;
        JsonNode node = document;
        var steps = place.Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal).Split('.');
        for (var i = 0; i < steps.Length - 1; i++)
        {
            node = int.TryParse(steps[i], out var at) ? node[at]!
                : node[steps[i]] ??= int.TryParse(steps[i + 1], out _) ? new JsonArray() : new JsonObject();
        }
        if (int.TryParse(steps[^1], out var last) && node is JsonArray list && last == list.Count)
            list.Add(JsonNode.Parse(value));
        else
            node[steps[^1]] = JsonNode.Parse(value);
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(document.ToJsonString()));
        Assert.True(reading.Project is not null, $"{place}: {value}: {string.Join(" ", reading.Faults)}");
        return reading.Project;
    }

    /// <summary>Bands need a companion yarn, and rows that are shaped have none; advice that cannot be planned is no advice.</summary>
    [Theory]
    [InlineData("vest", false)]
    [InlineData("vest", true)]
    [InlineData("pullover", false)]
    public void Bands_and_unequal_panels_are_advised_only_where_they_can_be_planned(string garment, bool companion)
    {
        var begun = TestProjects.Begun(garment, "sc", true, Direction.Up);
        var project = begun with
        {
            Companion = companion ? TestProjects.Tideline.Companion : null,
            Garment = begun.Garment with { Grading = begun.Garment.Grading with { MostCounts = 1 } },
        };
        var result = project.Tried();
        var remedies = (result.Plan?.Findings ?? result.Reasons).SelectMany(f => f.Remedies).ToArray();
        Assert.DoesNotContain(remedies, r => r.Place == "garment.grading.sideBands" && (garment == "vest" || !companion));
        Assert.DoesNotContain(remedies, r => r.Place == "garment.grading.unequalPanels" && garment == "vest");
    }
}
