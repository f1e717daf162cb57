namespace Dyepath.Workspace.Work;

/// <summary>A document as it was, and what was done to it then.</summary>
/// <param name="Text">The document's slim text.</param>
/// <param name="What">Such as <c>ball length</c>.</param>
public sealed record Moment(string Text, string What);

/// <summary>Undo and redo, bounded by number and size; the oldest moments are forgotten first.</summary>
public sealed class History
{
    /// <summary>Moments that can be undone.</summary>
    public const int MostMoments = 1_000;

    /// <summary>Characters of all moments together.</summary>
    public const long MostCharacters = 20_000_000;

    private readonly LinkedList<Moment> _before = [];
    private readonly Stack<Moment> _after = new();
    private long _characters;
    private string? _together;

    /// <summary>What undoing would take back; null where there is nothing.</summary>
    public string? Undoing => _before.Last?.Value.What;

    /// <summary>What redoing would do again; null where there is nothing.</summary>
    public string? Redoing => _after.TryPeek(out var next) ? next.What : null;

    /// <summary>Remembers a document before it is changed.</summary>
    /// <param name="together">Changes one after another that share this are undone as one; null, each by itself.</param>
    public void Remember(string text, string what, string? together)
    {
        _after.Clear();
        if (together is not null && together == _together && _before.Count > 0)
            return;
        _together = together;
        _before.AddLast(new Moment(text, what));
        _characters += text.Length;
        while (_before.Count > MostMoments || (_characters > MostCharacters && _before.Count > 1))
        {
            _characters -= _before.First!.Value.Text.Length;
            _before.RemoveFirst();
        }
    }

    /// <summary>Ends a run of changes that would be undone together.</summary>
    public void Part() => _together = null;

    /// <summary>Forgets everything: another project is open.</summary>
    public void Clear()
    {
        _before.Clear();
        _after.Clear();
        _characters = 0;
        Part();
    }

    /// <returns>The document as it was, or null.</returns>
    public string? Undo(string now)
    {
        Part();
        if (_before.Last?.Value is not { } moment)
            return null;
        _before.RemoveLast();
        _characters -= moment.Text.Length;
        _after.Push(moment with { Text = now });
        return moment.Text;
    }

    /// <summary>The document as it was before it was undone, or null.</summary>
    public string? Redo(string now)
    {
        Part();
        if (!_after.TryPop(out var moment))
            return null;
        _before.AddLast(moment with { Text = now });
        _characters += now.Length;
        return moment.Text;
    }
}
