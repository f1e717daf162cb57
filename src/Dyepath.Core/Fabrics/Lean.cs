using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>
/// How far the colour lines travel sideways from row to row, in units; positive when the lines on rows that run
/// forwards move towards the right-hand edge, going up. Exact.
/// </summary>
/// <remarks>
/// Turned rows: wrap(2(N + τ))/2, in (−P/4, P/4]. Unturned rounds: wrap(N + τ), in (−P/2, P/2], before the sideways
/// travel of the rounds themselves.
/// </remarks>
/// <param name="Micro">Travel over <paramref name="Rows"/> rows, in micro-units.</param>
/// <param name="Rows">Rows from one to the next that is worked the same way, 1 or 2.</param>
public readonly record struct Lean(long Micro, int Rows)
{
    /// <summary>Mean travel a row, positive as <see cref="Micro"/>.</summary>
    public double UnitsPerRow => ColourRing.ToUnits(Micro) / Rows;

    /// <param name="period">P or a visible part of it, in micro-units, over 0.</param>
    public static Lean Of(RowAdvance advance, long period) => new(Wrap(advance.Micro, period), advance.Rows);

    /// <summary>The representative of a position modulo a period in (−P/2, P/2].</summary>
    public static long Wrap(long position, long period)
    {
        var rest = ColourRing.Modulo(position, period);
        return 2 * rest > period ? rest - period : rest;
    }
}
