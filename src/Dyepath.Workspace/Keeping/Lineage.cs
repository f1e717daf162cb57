using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

/// <summary>
/// What a text goes on from: how many changes of each writer are in it (a version vector: Parker et al. 1983, "Detection of mutual
/// inconsistency in distributed systems"). Of two texts where neither follows the other, both were changed without the other's being
/// seen. wwwroot/js/store.js compares them by the same rule.
/// </summary>
/// <param name="Changes">
/// By writer, from 1; under @ and its ETag, each of the host's latest texts that is in it, the later the higher; and under ~ and its
/// name, the writer up to which all are in it.
/// </param>
public sealed record Lineage(ImmutableSortedDictionary<string, int> Changes)
{
    /// <summary>Writers that are told one by one; a text has one for each time that it was opened and changed.</summary>
    public const int MostWriters = 200;

    private const int MostHostTexts = 6;

    private const char Host = '@';
    private const char Floor = '~';

    /// <summary>Of a text that goes on from nothing known.</summary>
    public static Lineage None { get; } = new(ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal));

    /// <summary>More writers than are told one by one; see <see cref="Shortened"/>.</summary>
    public bool HasTooMany => Changes.Count > MostWriters;

    /// <summary>Names of writers begin with the time.</summary>
    private string UpTo => Changes.Keys.LastOrDefault(k => k[0] == Floor)?[1..] ?? "";

    /// <summary>Everything in the other is in this too.</summary>
    public bool Follows(Lineage other)
    {
        var upTo = UpTo;
        return other.Changes.All(change => Changes.GetValueOrDefault(change.Key) >= change.Value
            || (change.Key[0] != Host && string.CompareOrdinal(change.Key.TrimStart(Floor), upTo) <= 0));
    }

    /// <summary>So many changes of a writer are in it.</summary>
    public Lineage With(string writer, int changes) => new(Changes.SetItem(writer, changes));

    /// <summary>The host's text under an ETag is in it, and is later than those before.</summary>
    public Lineage WithHost(string etag)
    {
        var texts = Changes.Where(c => c.Key[0] == Host).OrderBy(c => c.Value).ToArray();
        var (key, latest) = ($"{Host}{etag}", texts.Length == 0 ? 0 : texts[^1].Value);
        if (texts.Length > 0 && texts[^1].Key == key)
            return this;
        return new(Changes.RemoveRange(texts.SkipLast(MostHostTexts - 1).Select(t => t.Key)).SetItem(key, latest + 1));
    }

    /// <summary>Everything that is in either.</summary>
    public Lineage And(Lineage other) => new(other.Changes.Aggregate(
        Changes, (both, change) => both.GetValueOrDefault(change.Key) >= change.Value ? both : both.SetItem(change.Key, change.Value)));

    /// <summary>
    /// The earlier half of the writers is told as one. Only where this device has no copy but this one: an unsent copy of an earlier
    /// writer would be taken for part of it.
    /// </summary>
    public Lineage Shortened()
    {
        var writers = Changes.Keys.Where(k => k[0] is not (Host or Floor)).ToArray();
        var told = writers[..(writers.Length / 2)];
        return told.Length == 0 ? this : new(Changes.RemoveRange(told.Concat(Changes.Keys.Where(k => k[0] == Floor))).SetItem($"{Floor}{told[^1]}", 1));
    }

    public bool Equals(Lineage? other) => other is not null && Changes.SequenceEqual(other.Changes);

    public override int GetHashCode() => Changes.Count;
}
