using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Instructions.Reading;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Client.Work;

/// <summary>
/// What was worked out from one state of a document. What only some pages show is worked out when it is first asked for, so that a
/// change is answered as fast as may be.
/// </summary>
public sealed class Outcome
{
    private readonly Lazy<Booklet?> _booklet;
    private readonly Lazy<MeasuredYarn?> _measured;

    private Outcome(ProjectReading reading, string text, PlanResult? result, TimeSpan took)
    {
        (Reading, Result, Took) = (reading, result, took);
        Findings =
        [
            .. reading.Faults.Select(f => new Finding(FindingLevel.Fault, f.Path, $"{Sentence(f.Found)} {f.Next}")),
            .. result is { HasPlan: false } none ? none.Reasons : [],
            .. result?.Plan?.Findings ?? [],
        ];
        _booklet = new(() => Plan is { } plan ? PatternWriter.Write(plan) : null);
        _measured = new(() => (Project ?? MeasuredAlone(text, reading)) is { } known
            && MeasuredYarn.TryMeasure(known.Yarn, known.Fabric, out var measured, out _) ? measured : null);
    }

    /// <summary>The project, or its faults.</summary>
    public ProjectReading Reading { get; }

    /// <summary>The plan, or why there is none; missing where the document has faults.</summary>
    public PlanResult? Result { get; }

    /// <summary>How long the plan took.</summary>
    public TimeSpan Took { get; }

    public Plan? Plan => Result?.Plan;

    public Project? Project => Reading.Project;

    public Booklet? Booklet => _booklet.Value;

    /// <summary>What yarn and swatch say together; missing where they say too little.</summary>
    public MeasuredYarn? Measured => _measured.Value;

    /// <summary>Everything to be told, the worst first: faults of the document, reasons without a plan, findings of the plan.</summary>
    public ImmutableArray<Finding> Findings { get; }

    public static Outcome Of(ProjectDocument document, CancellationToken cancel)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var text = document.Slim;
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(text), document.Shelf.Pictures);
        var result = reading.Project is { } project ? GarmentPlanner.Plan(project, cancel) : null;
        return new Outcome(reading, text, result, watch.Elapsed);
    }

    /// <summary>
    /// Yarn and fabric of a document whose other parts have faults, with a garment that nobody looks at: what is counted and measured
    /// is shown before a garment is described.
    /// </summary>
    private static Project? MeasuredAlone(string text, ProjectReading reading)
    {
        string[] parts = ["yarn", "fabric"];
        if (reading.Faults.Any(f => f.Path == "document" || parts.Any(part => f.Path.StartsWith(part, StringComparison.Ordinal)))
            || ProjectDocument.TryParse(text) is not { } document
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
