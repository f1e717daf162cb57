using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>The copies of one text on one device, as a store keeps them.</summary>
internal sealed class CopiesHere<T>
    where T : class
{
    private readonly SortedDictionary<string, Copy<T>> _copies = new(StringComparer.Ordinal);

    public IReadOnlyCollection<Copy<T>> All => _copies.Values;

    public void Clear() => _copies.Clear();

    public void Add(Copy<T> copy) => _copies[copy.Writer] = copy;

    public DeviceWriting<T> Put(WriteDevice<T> write)
    {
        var others = _copies.Values.Where(c => c.Writer != write.Copy.Writer).ToArray();
        var ahead = others.Any(c => !write.Copy.Lineage.Follows(c.Lineage));
        if (ahead && write.Yields)
            return new(null, true);
        var copy = write.Copy;
        foreach (var old in others.Where(c => write.Copy.Lineage.Follows(c.Lineage)))
        {
            _copies.Remove(old.Writer);
            if (!copy.IsSent)
                copy = copy with { Includes = [.. copy.Includes.Concat(old.Includes).Append(old.Etag!).Where(e => e is not null && e != copy.Etag).Distinct()] };
        }
        // The same text, of which another tab knows that the host has it.
        if (!copy.IsSent && others.FirstOrDefault(c => c.IsSent && c.Lineage.Equals(copy.Lineage)) is { } sent)
            copy = copy with { Etag = sent.Etag, Made = sent.Made, IsSent = true, Includes = [] };
        _copies[copy.Writer] = copy;
        return new(copy, ahead);
    }
}
