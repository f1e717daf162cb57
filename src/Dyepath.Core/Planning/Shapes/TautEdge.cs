using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>A part of an edge along which a band lies straight.</summary>
/// <param name="Runs">One, or several in steps that the band smooths.</param>
/// <param name="Length">From its beginning to its end.</param>
internal sealed record TautPart(ImmutableArray<EdgeRun> Runs, Length Length);

/// <summary>
/// An edge in steps as a band lies along it: steps no farther off a straight line than a band gives are gone along by that line (the line
/// is simplified as by Douglas and Peucker, 1973).
/// </summary>
internal static class TautEdge
{
    /// <summary>What a band gives across its edge (an assumption without a source).</summary>
    private static readonly Length Gives = Length.FromCentimetres(1.2);

    /// <param name="runs">Each begins where the one before it ends.</param>
    /// <param name="across">Length of a place of a side that lies across.</param>
    /// <param name="upright">The same of an upright one.</param>
    public static ImmutableArray<TautPart> Of(ImmutableArray<EdgeRun> runs, Length across, Length upright)
    {
        var corners = new List<(double X, double Y)> { (0, 0) };
        foreach (var run in runs)
        {
            var length = (run.Backwards ? -1 : 1) * run.Count * (run.Side.IsUpright() ? upright : across).Centimetres;
            var (x, y) = corners[^1];
            corners.Add(run.Side.IsUpright() ? (x, y + length) : (x + length, y));
        }
        var parts = ImmutableArray.CreateBuilder<TautPart>();
        Split(0, runs.Length);
        return parts.ToImmutable();

        void Split(int from, int to)
        {
            if (to - from > 1 && Furthest(from, to) is var (at, off) && off > Gives.Centimetres)
            {
                Split(from, at);
                Split(at, to);
            }
            else if (to > from)
                parts.Add(new TautPart(runs[from..to], Length.FromCentimetres(Distance(corners[from], corners[to]))));
        }

        (int At, double Off) Furthest(int from, int to)
        {
            var (at, off) = (from + 1, -1.0);
            for (var i = from + 1; i < to; i++)
            {
                var away = Away(corners[i], corners[from], corners[to]);
                if (away > off)
                    (at, off) = (i, away);
            }
            return (at, off);
        }
    }

    private static double Distance((double X, double Y) a, (double X, double Y) b) => double.Hypot(b.X - a.X, b.Y - a.Y);

    /// <summary>From the line through two places; where they are one, from it.</summary>
    private static double Away((double X, double Y) place, (double X, double Y) a, (double X, double Y) b)
    {
        var length = Distance(a, b);
        return length < 1e-9 ? Distance(place, a) : Math.Abs((b.X - a.X) * (a.Y - place.Y) - (a.X - place.X) * (b.Y - a.Y)) / length;
    }
}
