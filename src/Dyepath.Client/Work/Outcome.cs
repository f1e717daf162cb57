using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Instructions.Reading;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Client.Work;

/// <summary>What was worked out from one state of a document.</summary>
/// <param name="Reading">The project, or its faults.</param>
/// <param name="Measured">What yarn and swatch say together; missing where they say too little.</param>
/// <param name="Result">The plan, or why there is none; missing where the document has faults.</param>
/// <param name="Took">How long working it out took.</param>
public sealed record Outcome(ProjectReading Reading, MeasuredYarn? Measured, PlanResult? Result, TimeSpan Took)
{
    private Booklet? _booklet;

    public Plan? Plan => Result?.Plan;

    public Project? Project => Reading.Project;

    /// <summary>Written when first asked for.</summary>
    public Booklet? Booklet => _booklet ??= Plan is { } plan ? PatternWriter.Write(plan) : null;

    /// <summary>Everything to be told, the worst first: faults of the document, reasons without a plan, findings of the plan.</summary>
    public ImmutableArray<Finding> Findings { get; } =
    [
        .. Reading.Faults.Select(f => new Finding(FindingLevel.Fault, f.Path, $"{Sentence(f.Found)} {f.Next}")),
        .. Result is { HasPlan: false } none ? none.Reasons : [],
        .. Result?.Plan?.Findings ?? [],
    ];

    public static Outcome Of(ProjectDocument document, CancellationToken cancel)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(document.Slim), document.Shelf.Pictures);
        MeasuredYarn? measured = null;
        PlanResult? result = null;
        if ((reading.Project ?? MeasuredAlone(document, reading)) is { } known)
            MeasuredYarn.TryMeasure(known.Yarn, known.Fabric, out measured, out _);
        if (reading.Project is { } project)
            result = GarmentPlanner.Plan(project, cancel);
        return new Outcome(reading, measured, result, watch.Elapsed);
    }

    /// <summary>
    /// Yarn and fabric of a document whose other parts have faults, with a garment that nobody looks at: what is counted and measured
    /// is shown before a garment is described.
    /// </summary>
    private static Project? MeasuredAlone(ProjectDocument document, ProjectReading reading)
    {
        string[] parts = ["yarn", "fabric"];
        if (reading.Faults.Any(f => f.Path == "document" || parts.Any(part => f.Path.StartsWith(part, StringComparison.Ordinal)))
            || ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project)) is not { } other)
        {
            return null;
        }
        foreach (var part in parts)
            other.Set(part, document.Node(part)?.DeepClone());
        return ProjectReader.Read(Encoding.UTF8.GetBytes(other.Text)).Project;
    }

    private static string Sentence(string found) => found.Length == 0 ? "" : $"Here stands {found}.";
}
