using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>Works rib rows as their words say: out from the edge and back to it, held to round 1 by slip stitches.</summary>
internal static partial class RibFollower
{
    /// <summary>Slip stitches in round 1 at the end of a row towards the edge.</summary>
    public static int Held(string row) =>
        Many().Match(row) is { Success: true } many ? int.Parse(many.Groups[1].Value, CultureInfo.InvariantCulture)
        : row.Contains("sl st in the next sc of round 1", StringComparison.Ordinal) ? 1
        : throw new ArgumentException(row);

    /// <summary>Stitches of round 1 left over when no further row fits.</summary>
    public static int Left(IReadOnlyList<string> steps, int pickUp)
    {
        var left = pickUp - Held(steps[1]);
        while (left >= Held(steps[3]))
            left -= Held(steps[3]);
        return left;
    }

    [GeneratedRegex(@"sl st in each of the next (\d+) sc of round 1")]
    private static partial Regex Many();
}
