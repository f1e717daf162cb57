using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Measuring;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Planning;

/// <summary>Whether there is a plan, and who can do something about it where there is none.</summary>
public enum PlanOutcome
{
    /// <summary>There is a plan.</summary>
    Planned,

    /// <summary>The document asks for something that contradicts itself or lacks a number.</summary>
    BadInput,

    /// <summary>No design fulfils the wish; the reasons say what is nearest and what would help.</summary>
    Infeasible,
}

/// <summary>A plan, or every reason why there is none.</summary>
public sealed class PlanResult
{
    private PlanResult(PlanOutcome outcome, Plan? plan, ImmutableArray<Finding> reasons, ImmutableArray<DirectionOption> options) =>
        (Outcome, Plan, Reasons, Options, Measured) = (outcome, plan, reasons, options, plan?.Sequence.Measured);

    /// <summary>Whether there is a plan.</summary>
    public PlanOutcome Outcome { get; }

    /// <summary>Missing where there is none.</summary>
    public Plan? Plan { get; }

    /// <summary>Empty when there is a plan.</summary>
    public ImmutableArray<Finding> Reasons { get; }

    /// <summary>What each direction gives, also where none serves; empty where the document has faults.</summary>
    public ImmutableArray<DirectionOption> Options { get; }

    /// <summary>What yarn and swatch say together; missing where they say too little.</summary>
    public MeasuredYarn? Measured { get; private init; }

    /// <summary>There is a plan; it may have warnings.</summary>
    [MemberNotNullWhen(true, nameof(Plan))]
    public bool HasPlan => Plan is not null;

    /// <summary>
    /// What planning it anew would give, where the project differs from the planned one in title, words, photos and edition alone, but not
    /// in the units; null elsewhere, and where there is no plan.
    /// </summary>
    public PlanResult? Reworded(Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        return Plan is { } plan && Planned(plan.Project) == Planned(project) ? Of(plan with { Project = project }) : null;
    }

    /// <summary>All of a project that planning reads.</summary>
    private static string Planned(Project project) => ProjectWriter.Write(project with
    {
        Title = "",
        Designer = "",
        Words = ImmutableSortedDictionary<string, string>.Empty,
        Photos = [],
        // Findings say lengths in its units.
        Edition = new Edition(Terms.Us, project.Edition.Units, Hand.Right),
    });

    internal static PlanResult Of(Plan plan) => new(PlanOutcome.Planned, plan, [], plan.Options);

    internal static PlanResult Bad(IEnumerable<Finding> reasons) => new(PlanOutcome.BadInput, null, [.. reasons], []);

    internal PlanResult From(MeasuredYarn measured) => new(Outcome, Plan, Reasons, Options) { Measured = measured };

    /// <summary>The same with reasons before its own.</summary>
    internal PlanResult Because(IEnumerable<Finding> first) => new(Outcome, Plan, [.. first, .. Reasons], Options) { Measured = Measured };

    internal static PlanResult None(IEnumerable<Finding> reasons, IEnumerable<DirectionOption> options) =>
        new(PlanOutcome.Infeasible, null, [.. reasons], [.. options]);
}
