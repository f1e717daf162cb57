using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>Starters of the repertoire, changed, planned and read.</summary>
internal static class GarmentTrials
{
    public static Project Of(string garment, string stitch = "sc")
    {
        var starter = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
        return starter with { Fabric = starter.Fabric with { Stitch = FabricStitch.All.First(s => s.Id == stitch) } };
    }

    /// <summary>With a companion yarn for everything that one is for.</summary>
    public static Project WithCompanion(Project project) => project with
    {
        Companion = new CompanionYarn(
            "Solid Cream", new Srgb(0xf4, 0xe9, 0xd8), project.Yarn.Ball,
            [CompanionUse.Foundation, CompanionUse.Seams, CompanionUse.Edgings, CompanionUse.PlainPieces]),
    };

    public static Project Edged(Project project, Direction direction, params EdgingPlace[] places) => project.With(g => g with
    {
        Direction = direction,
        Edgings = [.. places.Select(p => new EdgingChoice(p, p is EdgingPlace.Shoulder or EdgingPlace.Fronts ? "button-band" : IsOpen(g, p) ? "sc-rows" : "sc", null))],
    });

    private static bool IsOpen(GarmentSpec garment, EdgingPlace place) => garment.Shape.Construct(garment).Edgings.First(e => e.Place == place).IsOpen;

    /// <summary>The plan and its words agree with what other routes find.</summary>
    public static Plan Check(Project project) => Check(project.Planned());

    /// <inheritdoc cref="Check(Project)"/>
    public static Plan Check(Plan plan)
    {
        Assert.Empty(PlanCheck.Verify(plan, TestContext.Current.CancellationToken));
        Assert.Empty(PatternCheck.Run(plan));
        return plan;
    }

    /// <summary>Sentences in one line each.</summary>
    public static string Text(Plan plan) =>
        string.Join(' ', TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Us, Size = null }).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>What is said of a document with this garment.</summary>
    public static IEnumerable<string> Faults(string garment, bool companion = true)
    {
        var document = JsonNode.Parse(DemoProject.Utf8)!;
        if (!companion)
            document.AsObject().Remove("companion");
        document["garment"] = JsonNode.Parse($"{{ {garment} }}");
        return ProjectReader.Read(Encoding.UTF8.GetBytes(document.ToJsonString())).Faults.Select(f => f.ToString()!);
    }
}
