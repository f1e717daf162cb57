namespace Dyepath.Core.Documents;

/// <summary>Finds the name that was probably meant.</summary>
internal static class Nearest
{
    private const int LongestCompared = 64;

    /// <summary>"Did you mean …?", or the sentence <paramref name="otherwise"/> where no known name is near.</summary>
    public static string Suggest(string found, IEnumerable<string> known, string otherwise)
    {
        if (found.Length > LongestCompared)
            return otherwise;
        var near = known
            .Select(name => (Name: name, Distance: Distance(found.ToLowerInvariant(), name.ToLowerInvariant())))
            .Where(n => n.Distance <= Math.Max(2, n.Name.Length / 3) && n.Distance < n.Name.Length)
            .OrderBy(n => n.Distance)
            .FirstOrDefault();
        return near.Name is null ? otherwise : $"Did you mean \"{near.Name}\"?";
    }

    /// <summary>Insertions, deletions and substitutions between two words (Levenshtein, 1965).</summary>
    public static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var substituted = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(substituted, 1 + Math.Min(row[j], row[j - 1]));
            }
        }
        return row[^1];
    }
}
