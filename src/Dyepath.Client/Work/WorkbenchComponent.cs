using Microsoft.AspNetCore.Components;

namespace Dyepath.Client.Work;

/// <summary>Renders again whenever the open project, or what follows from it, has changed.</summary>
public abstract class WorkbenchComponent : ComponentBase, IDisposable
{
    [Inject] protected Workbench Workbench { get; set; } = null!;

    protected ProjectDocument Document => Workbench.Document!;

    public virtual void Dispose()
    {
        Workbench.Changed -= Render;
        GC.SuppressFinalize(this);
    }

    protected override void OnInitialized() => Workbench.Changed += Render;

    private void Render() => InvokeAsync(StateHasChanged);
}
