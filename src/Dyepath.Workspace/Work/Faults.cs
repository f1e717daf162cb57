namespace Dyepath.Workspace.Work;

/// <summary>
/// Where work that nobody waits for ends up when it fails: told to the console, and to whoever shows it. Nothing in the client is
/// begun without being awaited except through here or a component's <c>Start</c>.
/// </summary>
public sealed class Faults
{
    /// <summary>Something failed that no part of the page has shown yet.</summary>
    public event Action? Happened;

    /// <summary>Missing where nothing failed, or it was put away.</summary>
    public Exception? Last { get; private set; }

    /// <summary>Tells of something that failed.</summary>
    public void Report(Exception fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        Last = fault;
        Log(fault);
        Happened?.Invoke();
    }

    /// <summary>
    /// For whoever mends it, in the browser's console; what goes to the error stream brings the notice of last resort up.
    /// </summary>
    public static void Log(Exception fault) => Console.WriteLine(fault);

    /// <summary>It was shown and put away.</summary>
    public void Clear()
    {
        Last = null;
        Happened?.Invoke();
    }

    /// <summary>Begins work without waiting for it. Being stopped is no fault.</summary>
    public async void Watch(Func<Task> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        try
        {
            await work();
        }
        catch (OperationCanceledException)
        {
            // Another order took its place, or the designer stopped it.
        }
#pragma warning disable CA1031 // Whatever it is: nobody else hears of it.
        catch (Exception fault)
        {
            Report(fault);
        }
#pragma warning restore CA1031
    }

    /// <summary>Does what a call from outside the page asks for.</summary>
    public void Watch(Action work) => Watch(() =>
    {
        work();
        return Task.CompletedTask;
    });
}
