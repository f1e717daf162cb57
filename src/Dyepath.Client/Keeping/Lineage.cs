using System.Collections.Immutable;

namespace Dyepath.Client.Keeping;

/// <summary>
/// What a text goes on from: how many changes of each writer are in it (a version vector: Parker et al. 1983, "Detection of mutual
/// inconsistency in distributed systems"). Of two texts of which neither follows the other, both were changed without the other's being seen.
/// </summary>
/// <param name="Changes">By writer, from 1; and, under @ and its ETag, each of the host's latest texts that is in it, the later the higher.</param>
public sealed record Lineage(ImmutableSortedDictionary<string, int> Changes)
{
    /// <summary>Writers whose texts are gone are remembered up to this number; names begin with the time, so the oldest are forgotten.</summary>
    public const int MostWriters = 64;

    private const int MostHostTexts = 6;

    public static Lineage None { get; } = new(ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal));

    /// <summary>Everything in the other is in this too.</summary>
    public bool Follows(Lineage other) => other.Changes.All(change => Changes.GetValueOrDefault(change.Key) >= change.Value);

    public Lineage With(string writer, int changes)
    {
        var grown = Changes.SetItem(writer, changes);
        while (grown.Count > MostWriters)
            grown = grown.Remove(grown.Keys.First(w => w != writer && !IsHost(w)));
        return new(grown);
    }

    /// <summary>The host's text under an ETag is in it, and is later than those before.</summary>
    public Lineage WithHost(string etag)
    {
        var texts = Changes.Where(c => IsHost(c.Key)).OrderBy(c => c.Value).ToArray();
        var (key, latest) = ($"@{etag}", texts.Length == 0 ? 0 : texts[^1].Value);
        if (texts.Length > 0 && texts[^1].Key == key)
            return this;
        return new(Changes.RemoveRange(texts.SkipLast(MostHostTexts - 1).Select(t => t.Key)).SetItem(key, latest + 1));
    }

    private static bool IsHost(string key) => key[0] == '@';

    public Lineage And(Lineage other) => other.Changes.Aggregate(
        this, (both, change) => both.Changes.GetValueOrDefault(change.Key) >= change.Value ? both : both.With(change.Key, change.Value));

    public bool Equals(Lineage? other) => other is not null && Changes.SequenceEqual(other.Changes);

    public override int GetHashCode() => Changes.Count;
}
