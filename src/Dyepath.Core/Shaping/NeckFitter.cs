using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>A neck: what the two sides of a cut keep, and what lies between.</summary>
/// <param name="Right">N′, units of the right-hand side.</param>
/// <param name="Left">N″, units of the left-hand side.</param>
/// <param name="Neck">Units between them.</param>
/// <param name="Away">Units by which the neck's two edges together lie off the wished-for ones.</param>
/// <param name="RightJump">
/// By how many units of yarn the colours jump across each turn at the right-hand side's neck edge, in (−P/2, P/2]; 0 keeps the motif.
/// </param>
/// <param name="LeftJump">The same for the left-hand side.</param>
public sealed record NeckChoice(int Right, int Left, int Neck, double Away, double RightJump, double LeftJump)
{
    /// <summary>No turn at the neck makes the colours jump.</summary>
    public bool KeepsMotif => RightJump == 0 && LeftJump == 0;
}

/// <summary>Chooses the counts of both sides of a neck.</summary>
public static class NeckFitter
{
    /// <summary>Most choices in one answer.</summary>
    public const int MostChoices = 100;

    /// <param name="below">The row below the cut.</param>
    /// <param name="neck">The wished-for width in units, over 0 and under the row's.</param>
    /// <param name="centre">
    /// Of the neck, in units from the right-hand edge of the piece's first row; where nothing is said, the middle of the row.
    /// </param>
    /// <param name="most">Choices at most, 1 to 100.</param>
    /// <returns>
    /// Those that keep the motif first, half of the answer at most, then those that break it, each kind from the nearest on. A count that
    /// breaks it is among them only where none that jumps as little or less is as near.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range.</exception>
    public static ImmutableArray<NeckChoice> Choices(SteadyPanel panel, OutlineRun below, double neck, double? centre = null, int most = 12)
    {
        ArgumentNullException.ThrowIfNull(panel);
        Guard.InRange(below.Units, 3, FabricPath.MostStitches, "units", nameof(below));
        Guard.InRange(neck, 0, below.Units, "units");
        Guard.InRange(most, 1, MostChoices, "choices");
        var middle = Guard.InRange(centre ?? (below.First + below.Last + 1) / 2.0, below.First, below.Last + 1, "units", nameof(centre));
        // The neck edge of the right-hand side is its left one, and the other way round.
        var right = Sides(
            below.Units, units => below.First + units - (middle - neck / 2), units => panel.Units - below.First - units, panel);
        var left = Sides(below.Units, units => below.Last + 1 - units - (middle + neck / 2), units => below.Last + 1 - units, panel);
        var choices = right.SelectMany(r => left.Select(l => (Right: r, Left: l)))
            .Where(c => c.Right.Units + c.Left.Units < below.Units)
            .Select(c => new NeckChoice(
                c.Right.Units, c.Left.Units, below.Units - c.Right.Units - c.Left.Units, c.Right.Away + c.Left.Away,
                ColourRing.ToUnits(c.Right.Jump), ColourRing.ToUnits(c.Left.Jump)))
            .OrderBy(c => c.Away).ThenBy(c => Math.Abs(c.RightJump) + Math.Abs(c.LeftJump)).ThenBy(c => c.Right).ThenBy(c => c.Left)
            .ToLookup(c => c.KeepsMotif);
        var keeping = choices[true].Take((most + 1) / 2).ToList();
        return [.. keeping, .. choices[false].Take(most - keeping.Count)];
    }

    /// <summary>
    /// Counts of one side: all that keep the motif, and of the others those that no count betters in both jump and nearness.
    /// </summary>
    private static List<(int Units, double Away, long Jump)> Sides(
        int units, Func<int, double> away, Func<int, int> shortfall, SteadyPanel panel)
    {
        var sides = new List<(int Units, double Away, long Jump)>();
        var nearest = double.PositiveInfinity;
        var all = Enumerable.Range(1, units - 2)
            .Select(n => (Units: n, Away: Math.Abs(away(n)), Jump: panel.JumpAtTurn(shortfall(n), shortfall(n))));
        foreach (var side in all.OrderBy(s => Math.Abs(s.Jump)).ThenBy(s => s.Away).ThenBy(s => s.Units))
        {
            if (side.Jump != 0 && side.Away >= nearest)
                continue;
            nearest = Math.Min(nearest, side.Away);
            sides.Add(side);
        }
        return sides;
    }
}
