using System.Collections.Immutable;
using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Workshops;

/// <summary>
/// How the end of a row is told by colours alone: a colour to begin with, and for half a sequence more the place that lies half of it on.
/// </summary>
/// <param name="Start">Section to begin with.</param>
/// <param name="Half">Section at half a sequence; missing where no colour tells it.</param>
/// <param name="InMiddle">It is that section's middle, and not its beginning.</param>
internal readonly record struct RoundByColour(int Start, int? Half, bool InMiddle)
{
    /// <summary>How far from half the sequence a colour's beginning, or middle, may lie, in stitches.</summary>
    private const double BeginningWithin = 0.3;
    private const double MiddleWithin = 0.3;

    /// <param name="sections">Stitches of each section, over 0.</param>
    /// <param name="names">Of each section; what comes twice tells no place.</param>
    public static RoundByColour Of(IReadOnlyList<double> sections, ImmutableArray<string> names)
    {
        var count = sections.Count;
        bool Tells(int j) => names.Count(n => n == names[j]) == 1;
        var starts = Enumerable.Range(0, count).Where(Tells).ToArray();
        var half = sections.Sum() / 2;
        foreach (var inMiddle in (bool[])[false, true])
        {
            foreach (var start in starts)
            {
                var at = 0.0;
                for (var k = 0; k < count; k++)
                {
                    var j = (start + k) % count;
                    var place = inMiddle ? at + sections[j] / 2 : at;
                    if (k > 0 && Tells(j) && Math.Abs(place - half) <= (inMiddle ? MiddleWithin : BeginningWithin))
                        return new(start, j, inMiddle);
                    at += sections[j];
                }
            }
        }
        return new(starts.Length > 0 ? starts[0] : 0, null, false);
    }
}
