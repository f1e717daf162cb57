using Dyepath.Workspace.Work;
using Microsoft.AspNetCore.Components;

namespace Dyepath.Client.Work;

/// <summary>Renders again whenever the open project, or what follows from it, has changed.</summary>
public abstract class WorkbenchComponent : ComponentBase, IDisposable
{
    [Inject] protected Workbench Workbench { get; set; } = null!;

    protected ProjectDocument Document => Workbench.Document!;

    /// <summary>For <c>aria-busy</c> of what shows figures of a plan: they are of the design before the last changes.</summary>
    protected string? Busy => Workbench.IsStale ? "true" : null;

    /// <summary>For <c>aria-busy</c> of what is said of the document: it is of its state before the last changes.</summary>
    protected string? Earlier => Workbench.IsOutcomeEarlier ? "true" : null;

    public virtual void Dispose()
    {
        Workbench.Changed -= Render;
        GC.SuppressFinalize(this);
    }

    protected override void OnInitialized() => Workbench.Changed += Render;

    /// <summary>Begins work without waiting for it; what fails is shown where this component stands.</summary>
    protected void Start(Func<Task> work) => InvokeAsync(async () =>
    {
        try
        {
            await work();
        }
        catch (OperationCanceledException)
        {
            // Another order took its place, or the designer stopped it.
        }
#pragma warning disable CA1031 // Whatever it is: the boundary around this component shows it.
        catch (Exception fault)
        {
            await DispatchExceptionAsync(fault);
        }
#pragma warning restore CA1031
    });

    /// <summary>
    /// Through <see cref="Start"/>, since what decides whether to render may fail as well, and that is nobody else's trouble.
    /// </summary>
    private void Render() => Start(() =>
    {
        StateHasChanged();
        return Task.CompletedTask;
    });
}
