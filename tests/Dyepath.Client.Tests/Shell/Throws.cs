using Dyepath.Workspace.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Dyepath.Client.Tests.Shell;

/// <summary>Where a component fails.</summary>
public enum Failing
{
    Nowhere,
    Rendering,
    Beginning,
    AfterRendering,
    Later,
}

/// <summary>Stands for any component, and fails where the test says; clicked, too.</summary>
internal sealed class Throws : ComponentBase
{
    [Parameter(CaptureUnmatchedValues = true)] public Dictionary<string, object>? Anything { get; set; }

    /// <summary>Asked anew each time.</summary>
    [CascadingParameter] public Func<Failing>? Where { get; set; }

    private Failing At => Where?.Invoke() ?? Failing.Rendering;

    protected override async Task OnInitializedAsync()
    {
        Fail(Failing.Beginning);
        if (At == Failing.Later)
        {
            await Task.Yield();
            Fail(Failing.Later);
        }
    }

    protected override void OnAfterRender(bool firstRender) => Fail(Failing.AfterRendering);

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        Fail(Failing.Rendering);
        builder.OpenElement(0, "button");
        builder.AddAttribute(1, "class", "now");
        builder.AddAttribute(2, "onclick", EventCallback.Factory.Create(this, () => throw new InvalidOperationException("now")));
        builder.AddContent(3, "what was shown");
        builder.CloseElement();
        builder.OpenElement(4, "button");
        builder.AddAttribute(5, "class", "later");
        builder.AddAttribute(6, "onclick", EventCallback.Factory.Create(this, async () =>
        {
            await Task.Yield();
            throw new InvalidOperationException("later");
        }));
        builder.CloseElement();
    }

    private void Fail(Failing here)
    {
        if (At == here)
            throw new InvalidOperationException($"{here}");
    }
}
