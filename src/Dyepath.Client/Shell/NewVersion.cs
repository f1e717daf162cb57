using System.Runtime.InteropServices.JavaScript;
using Dyepath.Client.Making.Store;
using Dyepath.Client.Store;
using Dyepath.Client.Work;
using Dyepath.Client.Worker;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.AspNetCore.Components;

namespace Dyepath.Client.Shell;

/// <summary>How this page stands to a newer version of the program.</summary>
internal enum VersionState
{
    /// <summary>Nothing newer is known.</summary>
    Only,

    /// <summary>A newer one is on this device, and is taken at the next pause.</summary>
    Waits,

    /// <summary>It is taken as soon as every tab has kept and finished what is under way.</summary>
    Wanted,

    /// <summary>What this page still needs of its own version is no longer to be had.</summary>
    Gone,
}

/// <summary>
/// Tells the browser's side (wwwroot/js/versions.js) when nothing is under way, so that a newer version is taken only then, and hears
/// from it whether there is one.
/// </summary>
internal sealed partial class NewVersion : IDisposable
{
    public const string Module = "dyepath/versions";

    private readonly Keeper _projects;
    private readonly MakingKeeper _pieces;
    private readonly Workbench _workbench;
    private readonly Jobs _jobs;
    private readonly NavigationManager _navigation;
    private (bool Saved, bool Undoable)? _said;

    public NewVersion(Keeper projects, MakingKeeper pieces, Workbench workbench, Jobs jobs, NavigationManager navigation)
    {
        (_projects, _pieces, _workbench, _jobs, _navigation) = (projects, pieces, workbench, jobs, navigation);
        projects.Changed += Weigh;
        pieces.Changed += Weigh;
        workbench.Edited += Weigh;
        jobs.Changed += Weigh;
        jobs.Failed += Failed;
        navigation.LocationChanged += Moved;
    }

    public event Action? Changed;

    public VersionState State { get; private set; }

    /// <summary>Undo lives in the page and ends with it.</summary>
    public bool IsUndoable => _workbench is { Undoing: not null } or { Redoing: not null }
        && _navigation.ToBaseRelativePath(_navigation.Uri).StartsWith("p/", StringComparison.Ordinal);

    private bool IsSaved => IsAtRest(_projects.State) && IsAtRest(_pieces.State) && _jobs.Running == 0;

    public void Begin() => Listen(Engine.Id, said =>
    {
        State = said switch { "waits" => VersionState.Waits, "wanted" => VersionState.Wanted, "gone" => VersionState.Gone, _ => VersionState.Only };
        Changed?.Invoke();
    });

    [JSImport("take", Module)]
    public static partial void Take();

    public void Dispose()
    {
        _projects.Changed -= Weigh;
        _pieces.Changed -= Weigh;
        _workbench.Edited -= Weigh;
        _jobs.Changed -= Weigh;
        _jobs.Failed -= Failed;
        _navigation.LocationChanged -= Moved;
    }

    /// <summary>A conflict is not: whoever is asked should find the question where she left it.</summary>
    private static bool IsAtRest(SaveState state) => state is SaveState.Saved or SaveState.OnDevice;

    private void Weigh()
    {
        var now = (IsSaved, IsUndoable);
        if (_said == now)
            return;
        _said = now;
        Rest(now.IsSaved, now.IsUndoable);
        Changed?.Invoke();
    }

    private void Moved(object? sender, EventArgs e)
    {
        Weigh();
        Pause();
    }

    private static void Failed(bool isOther)
    {
        if (isOther)
            Mix();
        else
            Check();
    }

    [JSImport("listen", Module)]
    private static partial void Listen(string engine, [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> told);

    [JSImport("rest", Module)]
    private static partial void Rest(bool saved, bool undoable);

    [JSImport("pause", Module)]
    private static partial void Pause();

    [JSImport("mix", Module)]
    private static partial void Mix();

    [JSImport("check", Module)]
    private static partial void Check();
}
