using System.Collections.Immutable;
using Dyepath.Client.Work;
using Dyepath.Core.Findings;
using Dyepath.Core.Measuring;
using Dyepath.Workspace.Fields;
using Dyepath.Workspace.Work;
using Microsoft.AspNetCore.Components;

namespace Dyepath.Client.Fields;

/// <summary>One value of the document, with what is to be said about it beside it.</summary>
public abstract class Field : WorkbenchComponent
{
    /// <summary>Where in the document.</summary>
    [Parameter, EditorRequired]
    public string Place { get; set; } = "";

    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>Whose value it is, where many stand in one table: said, and not shown.</summary>
    [Parameter]
    public string? Of { get; set; }

    /// <summary>What it means, or what holds while it is left out.</summary>
    [Parameter]
    public string? Hint { get; set; }

    /// <summary>What stands in the box while nothing does.</summary>
    [Parameter]
    public string? Usual { get; set; }

    protected string What => char.ToLowerInvariant(Label[0]) + Label[1..] + (Of is null ? "" : $" of {Of}");

    protected string Id => IdOf(Place);

    /// <summary>What is said of exactly this value.</summary>
    protected ImmutableArray<Finding> Said => Workbench.Outcome is { } outcome ? [.. outcome.Findings.Where(f => f.Place == Place)] : [];

    protected bool IsFaulty => Said.Any(f => f.Level == FindingLevel.Fault && !Workbench.Outcome!.IsWanted(f));

    /// <summary>The element that shows a place of the document, so that a finding can lead to it.</summary>
    public static string IdOf(string place) => "at-" + place.Replace('.', '-').Replace('[', '-').Replace("]", "", StringComparison.Ordinal);
}
