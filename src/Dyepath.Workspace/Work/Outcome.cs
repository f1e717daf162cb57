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
    private const string SwatchPlace = "fabric.swatch";

    /// <summary>What a yarn can be counted without.</summary>
    private static readonly string[] ToCome = ["yarn.name", "yarn.ball", SwatchPlace];

    private readonly Lazy<Booklet?> _booklet;

    /// <summary>The reading's, and what it does not look for while there are others.</summary>
    private readonly ImmutableArray<Fault> _faults;

    private Outcome(ProjectReading reading, ImmutableArray<Fault> faults, PlanResult? result, MeasuredYarn? measured, byte[]? decisions)
    {
        (Reading, _faults, Result, Counted, Decisions) = (reading, faults, result, measured, decisions);
        Findings =
        [
            .. faults.OrderBy(FaultWords.Rank).Select(f => new Finding(FindingLevel.Fault, f.Path, FaultWords.Of(f))),
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

    /// <summary>What the yarn's counts say, also while swatch or label are still to come; missing where they say too little.</summary>
    public MeasuredYarn? Counted { get; }

    /// <summary>What yarn and swatch say together; missing where they say too little, or the document was only read.</summary>
    public MeasuredYarn? Measured => _faults.Any(f => IsIn(SwatchPlace, f)) ? null : Counted;

    /// <summary>What the plan's searches found, so that it can be made again elsewhere; missing where they were not told.</summary>
    public byte[]? Decisions { get; }

    /// <summary>Written when first asked for; missing where there is no plan.</summary>
    public Booklet? Booklet => _booklet.Value;

    /// <summary>Everything to be told, the worst first: faults of the document, reasons without a plan, findings of the plan.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Nothing is wrong: the design only waits for what its first findings ask for.</summary>
    public bool IsWanting => !_faults.IsEmpty && _faults.All(FaultWords.IsWanting);

    /// <summary>Whether a finding asks for what is not there yet.</summary>
    public bool IsWanted(Finding finding) =>
        finding.Level == FindingLevel.Fault && _faults.Any(f => f.Path == finding.Place && FaultWords.IsWanting(f));

    /// <summary>No design fulfils what the document asks for; the reasons are faults, each with what would help.</summary>
    public bool IsInfeasible => Result is { Outcome: PlanOutcome.Infeasible };

    /// <summary>What a document says by itself, before anything is worked out from it.</summary>
    public static Outcome Read(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(document.Slim), document.Shelf.Pictures);
        var unsaid = reading.IsGood || reading.Faults.Any(FaultWords.HasNoStitches) ? null : FaultWords.NotCounted(document);
        return new Outcome(reading, unsaid is null ? reading.Faults : reading.Faults.Add(unsaid), null, null, null);
    }

    /// <summary>All of it, worked out on the caller's thread; long where the document asks for much.</summary>
    public static Outcome Of(ProjectDocument document, CancellationToken cancel)
    {
        var read = Read(document);
        var (result, measured) = WorkOut(read.Project, YarnAlone(document.Slim, read.Reading), null, cancel);
        return new Outcome(read.Reading, read._faults, result, measured, null);
    }

    /// <summary>All of it at once, where it differs from an earlier document in nothing that planning reads; null elsewhere.</summary>
    /// <param name="earlier">Worked out before.</param>
    public Outcome? Reworded(Outcome earlier)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        return Project is { } project && earlier.Result?.Reworded(project) is { } result
            ? new Outcome(Reading, _faults, result, earlier.Counted, earlier.Decisions) : null;
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
        return new Outcome(Reading, _faults, result, measured, found);
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
    /// is shown before a garment is described. A label and a swatch that are not put in yet are no hindrance: nothing is counted by them.
    /// </summary>
    internal static Project? YarnAlone(string text, ProjectReading reading)
    {
        string[] parts = ["yarn", "fabric"];
        var faults = reading.Faults.Where(f => f.Path == "document" || parts.Any(part => IsIn(part, f))).ToArray();
        if (reading.Project is not null || faults.Any(f => !FaultWords.IsWanting(f) || !ToCome.Any(place => IsIn(place, f)))
            || ProjectDocument.TryParse(text) is not { } document
            || ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project)) is not { } other)
        {
            return null;
        }
        foreach (var part in parts)
        {
            var instead = ToCome.Where(place => place.StartsWith(part, StringComparison.Ordinal) && faults.Any(f => IsIn(place, f)))
                .Select(place => (place, other.Node(place)?.DeepClone())).ToArray();
            other.Set(part, document.Node(part)?.DeepClone());
            foreach (var (place, value) in instead)
                other.Set(place, value);
        }
        if (faults.Any(f => IsIn(SwatchPlace, f)))
            other.Set($"{SwatchPlace}.yarnUsed", null);
        return ProjectReader.Read(Encoding.UTF8.GetBytes(other.Text)).Project;
    }

    private static bool IsIn(string place, Fault fault) => fault.Path.StartsWith(place, StringComparison.Ordinal);
}
