using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Replays;
using Dyepath.Core.Yarns;

namespace Dyepath.Workspace.Work;

/// <summary>What was worked out from one state of a document.</summary>
public sealed class Outcome
{
    private readonly Lazy<Booklet?> _booklet;

    private Outcome(ProjectReading reading, PlanResult? result, MeasuredYarn? measured, byte[]? decisions)
    {
        (Reading, Result, Measured, Decisions) = (reading, result, measured, decisions);
        Findings =
        [
            .. reading.Faults.Select(f => new Finding(FindingLevel.Fault, f.Path, $"{Sentence(f.Found)} {f.Next}".Trim())),
            .. result is { HasPlan: false } none ? none.Reasons : [],
            .. result?.Plan?.Findings ?? [],
        ];
        _booklet = new(() => Plan is { } plan ? PatternWriter.Write(plan) : null);
    }

    /// <summary>The project, or its faults.</summary>
    public ProjectReading Reading { get; }

    /// <summary>The plan, or why there is none; missing where the document has faults, or was only read.</summary>
    public PlanResult? Result { get; }

    /// <summary>Missing where there is none; <see cref="Result"/> may say why.</summary>
    public Plan? Plan => Result?.Plan;

    /// <summary>Missing where the document has faults.</summary>
    public Project? Project => Reading.Project;

    /// <summary>What yarn and swatch say together; missing where they say too little, or the document was only read.</summary>
    public MeasuredYarn? Measured { get; }

    /// <summary>What the plan's searches found, so that it can be made again elsewhere; missing where they were not told.</summary>
    public byte[]? Decisions { get; }

    /// <summary>Written when first asked for; missing where there is no plan.</summary>
    public Booklet? Booklet => _booklet.Value;

    /// <summary>Everything to be told, the worst first: faults of the document, reasons without a plan, findings of the plan.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>No design fulfils what the document asks for; the reasons are faults, each with what would help.</summary>
    public bool IsInfeasible => Result is { Outcome: PlanOutcome.Infeasible };

    /// <summary>What a document says by itself, before anything is worked out from it.</summary>
    public static Outcome Read(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return new Outcome(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Slim), document.Shelf.Pictures), null, null, null);
    }

    /// <summary>All of it, worked out on the caller's thread; long where the document asks for much.</summary>
    public static Outcome Of(ProjectDocument document, CancellationToken cancel)
    {
        var read = Read(document);
        var (result, measured) = WorkOut(read.Project, YarnAlone(document.Slim, read.Reading), null, cancel);
        return new Outcome(read.Reading, result, measured, null);
    }

    /// <summary>All of it at once, where it differs from an earlier document in nothing that planning reads; null elsewhere.</summary>
    /// <param name="earlier">Worked out before.</param>
    public Outcome? Reworded(Outcome earlier)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        return Project is { } project && earlier.Result?.Reworded(project) is { } result
            ? new Outcome(Reading, result, earlier.Measured, earlier.Decisions) : null;
    }

    /// <summary>All of it, the searches made elsewhere.</summary>
    /// <param name="search">Makes the searches of an order of <see cref="PlanJob"/>.</param>
    public async Task<Outcome> WorkedOutAsync(ProjectDocument document, Func<string, Task<byte[]>> search)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(search);
        var alone = YarnAlone(document.Slim, Reading);
        if (Project is null && alone is null)
            return this;
        var found = await search(PlanJob.Order(Project is not null, document.WithoutPhotos()));
        using var decisions = Core.Replays.Decisions.Replay(found);
        var (result, measured) = WorkOut(Project, alone, decisions, CancellationToken.None);
        return new Outcome(Reading, result, measured, found);
    }

    /// <param name="project">To be planned.</param>
    /// <param name="yarnAlone">To be measured where there is no project.</param>
    internal static (PlanResult? Result, MeasuredYarn? Measured) WorkOut(
        Project? project, Project? yarnAlone, Decisions? decisions, CancellationToken cancel)
    {
        if (project is not null)
        {
            var result = GarmentPlanner.Plan(project, decisions, cancel);
            return (result, result.Measured);
        }
        return (null, yarnAlone is not null && MeasuredYarn.TryMeasure(
            yarnAlone.Yarn, yarnAlone.Fabric, out var measured, out _, decisions: decisions)
            ? measured
            : null);
    }

    /// <summary>
    /// Yarn and fabric of a document whose other parts have faults, with a garment that nobody looks at: what is counted and measured
    /// is shown before a garment is described.
    /// </summary>
    internal static Project? YarnAlone(string text, ProjectReading reading)
    {
        string[] parts = ["yarn", "fabric"];
        if (reading.Project is not null
            || reading.Faults.Any(f => f.Path == "document" || parts.Any(part => f.Path.StartsWith(part, StringComparison.Ordinal)))
            || ProjectDocument.TryParse(text) is not { } document
            || ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project)) is not { } other)
        {
            return null;
        }
        foreach (var part in parts)
            other.Set(part, document.Node(part)?.DeepClone());
        return ProjectReader.Read(Encoding.UTF8.GetBytes(other.Text)).Project;
    }

    /// <summary>What is missing does not stand anywhere.</summary>
    private static string Sentence(string found) =>
        found.Length == 0 || found.StartsWith("no ", StringComparison.Ordinal) ? "" : $"Here stands {found}.";
}
