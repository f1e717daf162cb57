using System.Diagnostics;
using System.Text.Json.Nodes;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Work;

/// <summary>
/// The open project: its document, what was worked out from it, undo and redo. Every change is answered at once; what follows from
/// it is worked out off the page's thread as soon as the hands pause, and stopped by the next change.
/// </summary>
public sealed class Workbench(Planner planner, Faults faults) : IDisposable
{
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(15);
    private static readonly TimeSpan Longest = TimeSpan.FromMilliseconds(600);

    /// <summary>A plan that takes less than this is begun anew after the shortest pause: an earlier one is let end for as long.</summary>
    private static readonly TimeSpan Quick = OneAtATime.Grace;

    private readonly History _history = new();
    private readonly OneAtATime _plans = new();
    private TimeSpan _took;
    private int _turn;
    private bool _toBase;
    private string? _sampleWentWith;

    /// <summary>The document, or what follows from it, has changed.</summary>
    public event Action? Changed;

    /// <summary>The document has changed by the designer's hand, undo and redo included.</summary>
    public event Action? Edited;

    /// <summary>Missing until a project is open.</summary>
    public ProjectDocument? Document { get; private set; }

    /// <summary>Of the present document, or of the last one that was worked out; of a document just opened, its faults alone.</summary>
    public Outcome? Outcome { get; private set; }

    /// <summary>The last plan there was of the garment: it stays in view while a change cannot be planned.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>The view shows an earlier state of the document than what is written.</summary>
    public bool IsWorking { get; private set; }

    /// <summary>The designer stopped the plan of the present document.</summary>
    public bool IsStopped { get; private set; }

    /// <summary>Working out the present document failed; why is for a programmer.</summary>
    public Exception? Failed { get; private set; }

    /// <summary>The page cannot answer while it works the design out.</summary>
    public bool StandsStill => planner.StandsStill;

    /// <summary>The plan in view is not the document's.</summary>
    public bool IsStale => IsWorking || (Plan is not null && (IsStopped || Failed is not null || Outcome?.Plan is null));

    /// <summary>The outcome is of the document before its last changes.</summary>
    public bool IsOutcomeEarlier { get; private set; }

    /// <summary>What undoing would take back; null where there is nothing.</summary>
    public string? Undoing => _history.Undoing;

    /// <summary>What redoing would do again; null where there is nothing.</summary>
    public string? Redoing => _history.Redoing;

    /// <summary>Index of the size that pictures show.</summary>
    public int ShownSize { get; private set; }

    /// <summary>The size that pictures show; missing without a plan.</summary>
    public SizePlan? Size => Plan is { } plan ? plan.Sizes[Math.Min(ShownSize, plan.Sizes.Length - 1)] : null;

    /// <summary>Opens a document as it was stored; false where it is none. What follows from it comes later.</summary>
    public bool Open(string text)
    {
        if (ProjectDocument.TryParse(text) is not { } document)
            return false;
        Document = document;
        Plan = null;
        Outcome = null;
        IsOutcomeEarlier = false;
        _took = TimeSpan.Zero;
        (ShownSize, _toBase) = (0, true);
        _sampleWentWith = null;
        _history.Clear();
        Schedule(TimeSpan.Zero);
        return true;
    }

    /// <summary>Takes another text of the same project, such as one brought back or written by another tab; it can be undone.</summary>
    /// <param name="saved">Whoever calls sees to its being kept.</param>
    public bool Replace(string text, string what, bool saved = false)
    {
        if (Document is not { } document || ProjectDocument.TryParse(text, document.Shelf) is not { } other)
            return false;
        _history.Remember(document.Slim, what, null);
        Document = other;
        IsOutcomeEarlier = Outcome is not null;
        Schedule(Wait);
        if (!saved)
            Tell(Edited);
        return true;
    }

    /// <param name="what">Said when it is undone, such as <c>ball length</c>.</param>
    /// <param name="together">Changes one after another with the same text are undone as one.</param>
    public void Edit(string what, Action<ProjectDocument> change, string? together = null)
    {
        if (Document is not { } document)
            return;
        _history.Remember(document.Slim, what, together);
        var hadSample = SampleYarn.IsIn(document);
        change(document);
        if (hadSample && !SampleYarn.IsIn(document))
        {
            SampleYarn.TakeOut(document);
            // The sample's garment is no earlier state of hers.
            (_sampleWentWith, Plan) = (what, null);
        }
        IsOutcomeEarlier = Outcome is not null;
        Schedule(Wait);
        Tell(Edited);
    }

    /// <summary>Makes the change that a remedy is, as one step of undo; does nothing where it is none.</summary>
    public void Apply(Remedy remedy)
    {
        ArgumentNullException.ThrowIfNull(remedy);
        if (remedy is { Place: { } place, Value: { } value })
            Set(place, JsonNode.Parse(value), "what would help");
    }

    /// <summary>Puts a value at a place; changes of one place one after another are undone as one.</summary>
    public void Set(string place, JsonNode? value, string what) => Edit(what, d => d.Set(place, value), place);

    /// <summary>Takes back the last change; does nothing where there is none.</summary>
    public void Undo() => Return(_history.Undo, "Undone");

    /// <summary>Does again what was last taken back; does nothing where there is nothing.</summary>
    public void Redo() => Return(_history.Redo, "Done again");

    /// <summary>What was last undone or redone, for the screen reader.</summary>
    public string Said { get; private set; } = "";

    /// <summary>The sample yarn went with the designer's last change, the first of her own; undoing that brings it back.</summary>
    public bool IsSampleGone => _sampleWentWith is { } what && what == Undoing;

    /// <summary>Shows another size, by its index.</summary>
    public void Show(int size)
    {
        ShownSize = size;
        Tell(Changed);
    }

    /// <summary>Ends a run of typing: the next change is undone by itself.</summary>
    public void Pause() => _history.Part();

    /// <summary>Stops the plan that is being made; the earlier one stays in view.</summary>
    public void Stop()
    {
        if (!IsWorking)
            return;
        _turn++;
        _plans.Stop();
        (IsWorking, IsStopped) = (false, true);
        Tell(Changed);
    }

    public void Dispose() => _plans.Dispose();

    /// <summary>Works the document out again, after it was stopped or failed.</summary>
    public void Again() => Schedule(TimeSpan.Zero);

    private void Return(Func<string, string?> move, string said)
    {
        if (Document is not { } document)
            return;
        var what = said == "Undone" ? Undoing : Redoing;
        if (move(document.Slim) is not { } text || ProjectDocument.TryParse(text, document.Shelf) is not { } other)
            return;
        Said = $"{said}: {what}.";
        Document = other;
        IsOutcomeEarlier = Outcome is not null;
        Schedule(Wait);
        Tell(Edited);
    }

    private TimeSpan Wait => PauseAfter(_took);

    /// <summary>How long hands have to pause before a plan is begun, by how long the last one took.</summary>
    internal static TimeSpan PauseAfter(TimeSpan took) => took < Quick ? Shortest : Longest;

    private void Schedule(TimeSpan pause)
    {
        if (Document is null)
            return;
        (IsWorking, IsStopped, Failed) = (true, false, null);
        var turn = ++_turn;
        Tell(Changed);
        faults.Watch(() => WorkAsync(turn, pause));
    }

    private async Task WorkAsync(int turn, TimeSpan pause)
    {
        if (pause > TimeSpan.Zero)
            await Task.Delay(pause);
        if (turn != _turn)
            return;
        var watch = Stopwatch.StartNew();
        try
        {
            var outcome = await _plans.RunAsync(cancel =>
            {
                var read = Outcome.Read(Document!);
                if (Outcome is null)
                {
                    Outcome = read;
                    Tell(Changed);
                }
                return read.Reworded(Outcome) is { } reworded ? Task.FromResult(reworded) : planner.WorkOutAsync(Document!, read, cancel);
            });
            if (turn != _turn)
                return;
            Outcome = outcome;
            IsOutcomeEarlier = false;
            Take(outcome.Plan);
        }
        catch (OperationCanceledException)
        {
            // A later change, or the designer's wish: whoever it was has said so.
            return;
        }
#pragma warning disable CA1031 // Whatever it is: the document must stay open, so that the change can be taken back.
        catch (Exception fault)
        {
            if (turn != _turn)
                return;
            Faults.Log(fault);
            Failed = fault;
        }
#pragma warning restore CA1031
        _took = watch.Elapsed;
        IsWorking = false;
        Tell(Changed);
    }

    /// <summary>One who fails keeps nobody else from hearing it.</summary>
    private void Tell(Action? who)
    {
        foreach (var one in who?.GetInvocationList() ?? [])
            faults.Watch((Action)one);
    }

    /// <summary>
    /// The shown size keeps its name; where the new plan has none of that name, the nearest of the sizes that it was among is shown.
    /// </summary>
    private void Take(Plan? plan)
    {
        if (plan is null)
        {
            // Another garment's plan is no earlier state of this one.
            if (Plan is not null && Plan.Project.Garment.Shape.Name != Document!.Typed("garment.shape"))
                Plan = null;
            return;
        }
        IEnumerable<string> wanted = _toBase || Plan is null
            ? [plan.Project.Sizes.Base ?? ""]
            : Plan.Sizes.Select((size, at) => (size.Name, Away: Math.Abs(at - ShownSize))).OrderBy(s => s.Away).Select(s => s.Name);
        var found = wanted.Select(name => plan.Sizes.ToList().FindIndex(s => s.Name == name))
            .FirstOrDefault(at => at >= 0, plan.Sizes.Length / 2);
        (Plan, ShownSize, _toBase) = (plan, found, false);
    }
}
