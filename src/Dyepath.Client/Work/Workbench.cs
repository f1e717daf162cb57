using System.Text.Json.Nodes;
using Dyepath.Core.Garments;

namespace Dyepath.Client.Work;

/// <summary>
/// The open project: its document, what was worked out from it, undo and redo. Every change is answered at once; what follows from
/// it is worked out as soon as the hands pause, longer where working it out takes long, so that typing never stutters.
/// </summary>
public sealed class Workbench : IDisposable
{
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(15);
    private static readonly TimeSpan Longest = TimeSpan.FromMilliseconds(600);

    private readonly History _history = new();
    private CancellationTokenSource _work = new();

    /// <summary>The document, or what follows from it, has changed.</summary>
    public event Action? Changed;

    /// <summary>The document has changed by the designer's hand, undo and redo included.</summary>
    public event Action? Edited;

    /// <summary>Missing until a project is open.</summary>
    public ProjectDocument? Document { get; private set; }

    /// <summary>Of the present document, or of the last one that was worked out.</summary>
    public Outcome? Outcome { get; private set; }

    /// <summary>The last plan there was: it stays in view while a change cannot be planned.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>The view shows an earlier state of the document than what is written.</summary>
    public bool IsWorking { get; private set; }

    /// <summary>The plan in view is not the document's.</summary>
    public bool IsStale => IsWorking || (Outcome is { } outcome && outcome.Plan is null && Plan is not null);

    public string? Undoing => _history.Undoing;

    public string? Redoing => _history.Redoing;

    /// <summary>Index of the size that pictures show.</summary>
    public int ShownSize { get; private set; }

    public SizePlan? Size => Plan is { } plan ? plan.Sizes[Math.Min(ShownSize, plan.Sizes.Length - 1)] : null;

    /// <summary>Opens a document as it was stored; false where it is none.</summary>
    public bool Open(string text)
    {
        if (ProjectDocument.TryParse(text) is not { } document)
            return false;
        Document = document;
        Plan = null;
        Work();
        ShowBase();
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
        Schedule();
        if (!saved)
            Edited?.Invoke();
        return true;
    }

    /// <param name="what">Said when it is undone, such as <c>ball length</c>.</param>
    /// <param name="together">Changes one after another with the same text are undone as one.</param>
    public void Edit(string what, Action<ProjectDocument> change, string? together = null)
    {
        if (Document is not { } document)
            return;
        _history.Remember(document.Slim, what, together);
        change(document);
        Schedule();
        Edited?.Invoke();
    }

    public void Set(string place, JsonNode? value, string what) => Edit(what, d => d.Set(place, value), place);

    public void Undo() => Return(_history.Undo, "Undone");

    public void Redo() => Return(_history.Redo, "Done again");

    /// <summary>What was last undone or redone, for the screen reader.</summary>
    public string Said { get; private set; } = "";

    public void Show(int size)
    {
        ShownSize = size;
        Changed?.Invoke();
    }

    /// <summary>Ends a run of typing: the next change is undone by itself.</summary>
    public void Pause() => _history.Part();

    public void Dispose() => _work.Dispose();

    private void Return(Func<string, string?> move, string said)
    {
        if (Document is not { } document)
            return;
        var what = said == "Undone" ? Undoing : Redoing;
        if (move(document.Slim) is not { } text || ProjectDocument.TryParse(text, document.Shelf) is not { } other)
            return;
        Said = $"{said}: {what}.";
        Document = other;
        Schedule();
        Edited?.Invoke();
    }

    private async void Schedule()
    {
        IsWorking = true;
        Changed?.Invoke();
        _work.Cancel();
        _work.Dispose();
        _work = new CancellationTokenSource();
        var cancel = _work.Token;
        var took = Outcome?.Took ?? TimeSpan.Zero;
        var pause = took < Shortest ? Shortest : took < TimeSpan.FromMilliseconds(120) ? Shortest : took * 2 < Longest ? took * 2 : Longest;
        try
        {
            await Task.Delay(pause, cancel);
        }
        catch (OperationCanceledException)
        {
            return;
        }
        Work();
        Changed?.Invoke();
    }

    private void Work()
    {
        Outcome = Outcome.Of(Document!, CancellationToken.None);
        Plan = Outcome.Plan ?? Plan;
        IsWorking = false;
    }

    private void ShowBase()
    {
        var sizes = Plan?.Sizes ?? [];
        var named = sizes.ToList().FindIndex(s => s.Name == Plan!.Project.Sizes.Base);
        ShownSize = named >= 0 ? named : sizes.Length / 2;
    }
}
