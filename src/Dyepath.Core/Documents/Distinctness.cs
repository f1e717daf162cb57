using System.Collections.Immutable;

namespace Dyepath.Core.Documents;

/// <summary>Lists whose items may each stand there once.</summary>
internal static class Distinctness
{
    /// <summary>No two of the names are equal; <paramref name="list"/> holds one item for each.</summary>
    public static void Check(Place list, ImmutableArray<string> names, FaultList faults)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < names.Length; i++)
        {
            if (!first.TryAdd(names[i], i))
                faults.Meaning(
                    list.Item(i), "each once", $"Keep one of [{first[names[i]]}] and [{i}].", $"{Shown.Text(names[i])} a second time");
        }
    }
}
