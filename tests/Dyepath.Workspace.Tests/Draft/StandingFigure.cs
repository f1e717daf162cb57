using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>
/// The figure that a garment hangs on, from its own landmarks: a head of 23 cm above the shoulders, girths seen as 0.37 of themselves, and
/// between landmarks a curve in Hermite's form, whose slope at each is half of the way from the one before to the one after.
/// </summary>
internal static class StandingFigure
{
    public static (double X, double Y)[] Of(Plan plan, SizePlan size, double middle, double hem)
    {
        double Of(string measure) => size.Body[measure].Centimetres;
        double Deep(EdgingPlace place) => size.Edgings.Where(e => e.Where == place).Sum(e => e.Depth.Centimetres);
        var (bust, back) = (Of("bust"), Of("backWaistLength"));
        // A bare shoulder's point is 4 cm below the neck, and the edge 5 cm below that; a skirt's casing lies above its waist.
        var neck = plan.Project.Garment.Shape.Name switch
        {
            "off-shoulder-top" or "off-shoulder-dress" => -9 - Deep(EdgingPlace.TopEdge),
            "skirt" => -back - Deep(EdgingPlace.Waist),
            _ => 0.0,
        };
        var end = Math.Max(hem + 4, back + 38 + neck);
        var shoulder = Math.Max(0.95 * 0.185 * bust, Of("crossBack") / 2 + 2);
        var hip = 0.185 * Of("hip");
        (double X, double Y)[] right =
        [
            (0, -23), (4.5, -22), (7.4, -16), (7, -9), (5, -4.5), (5, -1.5), (0.6 * shoulder, 1), (shoulder, 4), (1.02 * shoulder, 9),
            (0.185 * bust, 0.48 * back), (0.185 * Of("waist"), back), (hip, back + 20), (0.97 * hip, end - neck),
        ];
        var all = right.Skip(1).Reverse().Select(p => (X: -p.X, p.Y)).Concat(right).Select(p => (X: middle + p.X, Y: neck + p.Y)).ToArray();
        return [.. Enumerable.Range(0, all.Length - 1).SelectMany(i => Enumerable.Range(0, 6).Select(k => At(all, i, k / 6.0))), all[^1]];
    }

    private static (double X, double Y) At((double X, double Y)[] all, int i, double t)
    {
        var (before, from, to, after) = (all[Math.Max(0, i - 1)], all[i], all[i + 1], all[Math.Min(all.Length - 1, i + 2)]);
        double Along(double p0, double p1, double p2, double p3)
        {
            var (m1, m2) = ((p2 - p0) / 2, (p3 - p1) / 2);
            return (1 + 2 * t) * (1 - t) * (1 - t) * p1 + t * (1 - t) * (1 - t) * m1 + t * t * (3 - 2 * t) * p2 + t * t * (t - 1) * m2;
        }
        return (Along(before.X, from.X, to.X, after.X), Along(before.Y, from.Y, to.Y, after.Y));
    }
}
