namespace Dyepath.Faults;

/// <summary>Chance that can be repeated.</summary>
internal static class Seeded
{
    /// <summary>The same order for the same seed and the same items.</summary>
    public static IReadOnlyList<T> Shuffled<T>(IEnumerable<T> items, int seed)
    {
        var shuffled = items.ToArray();
        new Random(seed).Shuffle(shuffled);
        return shuffled;
    }
}
