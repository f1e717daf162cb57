using System.Collections.Immutable;
using Dyepath.Core.Making;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Fabric;

/// <summary>The shown size as these hands are likely to make it: one order at a time, worked in the second runtime.</summary>
public sealed class Simulator(IJobs jobs) : IDisposable
{
    /// <summary>How often the page has each piece worked.</summary>
    public const int Trials = 500;

    private CancellationTokenSource? _running;
    private string? _made;

    /// <summary>An order is being worked.</summary>
    public bool IsRunning => _running is not null;

    /// <summary>Share done, in [0, 1].</summary>
    public double Progress { get; private set; }

    /// <summary>Of the last order that was done; missing before, and where a later one failed.</summary>
    public ImmutableArray<SimulatedTrials>? Result { get; private set; }

    /// <summary>What kept the last order from being done.</summary>
    public string? Fault { get; private set; }

    /// <summary>The result is of other pieces, hands or checks than this order's.</summary>
    public bool IsStale(SimulationOrder order) => _made != SimulationJob.Write(order);

    /// <summary>Works an order, in place of the one that is being worked.</summary>
    /// <param name="changed">Told whenever there is something new to show.</param>
    public async Task RunAsync(SimulationOrder order, Action changed)
    {
        ArgumentNullException.ThrowIfNull(order);
        Cancel();
        var running = _running = new CancellationTokenSource();
        (Progress, Fault) = (0, null);
        changed();
        try
        {
            var input = SimulationJob.Write(order);
            var result = await jobs.RunOrHereAsync(SimulationJob.Name, input, share => Tell(running, share, changed), running.Token);
            if (_running == running)
                (Result, _made) = (SimulationJob.Read(result), input);
        }
        catch (OperationCanceledException)
        {
            // The designer's wish, or a later order's.
        }
        catch (JobException)
        {
            Fault = "The pieces could not be worked out in this browser just now. Open the page again, or try with fewer programs open.";
        }
        finally
        {
            if (_running == running)
                _running = null;
            running.Dispose();
        }
        changed();
    }

    /// <summary>Stops the order that is being worked; the last result stays.</summary>
    public void Cancel()
    {
        _running?.Cancel();
        _running = null;
    }

    public void Dispose() => Cancel();

    private void Tell(CancellationTokenSource running, double share, Action changed)
    {
        if (_running != running)
            return;
        Progress = share;
        changed();
    }

    /// <summary>A habit of checking, as the page's choice has it.</summary>
    public static ImmutableArray<(CheckHabit Habit, string Words)> Habits { get; } =
    [
        (CheckHabit.Never, "never"),
        (CheckHabit.EveryRow, "after every row"),
        (CheckHabit.EverySequence, "after every whole sequence"),
        (CheckHabit.EverySection, "at every change of colour"),
    ];
}
