using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>
/// The panel that a shaped piece would be if it were never shaped: rows of one count with one turn cost. It says what "keeping the motif"
/// means: a stitch keeps its colour where it lies, along the yarn, a whole number of colour periods off the same stitch of this panel.
/// </summary>
public sealed class SteadyPanel
{
    private SteadyPanel(ColourRing ring, Working working, int units, PathOptions options)
    {
        (Ring, Units, Options) = (ring, units, options);
        // A steady path goes on beyond its rows, so that two rows stand for any number.
        Path = FabricPath.Constant(working, units * options.StitchesPerUnit, 2, options);
        Period = ColourPeriod.Of(ring)?.Micro ?? 1;
    }

    /// <summary>The colours that it is worked with.</summary>
    public ColourRing Ring { get; }

    /// <summary>N, in pooling units.</summary>
    public int Units { get; }

    /// <summary>How its yarn runs.</summary>
    public PathOptions Options { get; }

    /// <summary>Two of its rows; it goes on beyond them.</summary>
    public FabricPath Path { get; }

    /// <summary>P in micro-units. One colour adjoins itself anywhere, which a period of one micro-unit says.</summary>
    public long Period { get; }

    /// <summary>
    /// Yarn of a slip stitch back over one unit, in units, 0 to 1, rounded to micro-units. 0 says that it costs the sequence nothing: the
    /// yarn is fastened off and joined again at the same place of the sequence, or carried along.
    /// </summary>
    public double SlipStitchYarn => ColourRing.ToUnits(SlipMicro);

    /// <param name="units">N, 1 to 1,000 stitches' worth.</param>
    /// <param name="slipStitchYarn">See <see cref="SlipStitchYarn"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <exception cref="ArgumentException">As <see cref="FabricPath.Constant"/>.</exception>
    public static SteadyPanel Of(
        ColourRing ring, int units, PathOptions? options = null, Working working = Working.Turned, double slipStitchYarn = 0)
    {
        ArgumentNullException.ThrowIfNull(ring);
        return new SteadyPanel(ring, working, units, options ?? new PathOptions())
        {
            SlipMicro = ColourRing.ToMicro(Guard.InRange(slipStitchYarn, 0, 1, "units")),
        };
    }

    /// <summary>The edge at which a row begins; in rounds, the join, at the right.</summary>
    public RowEdge BeginningOf(int row) => Path.RunsBackwards(row) ? RowEdge.Left : RowEdge.Right;

    /// <summary>The edge at which a row ends.</summary>
    public RowEdge EndOf(int row) => BeginningOf(row) == RowEdge.Left ? RowEdge.Right : RowEdge.Left;

    /// <summary>Where along the yarn a unit of the panel lies; of rows and columns beyond it too, micro-units.</summary>
    public long PlaceAt(int row, int column) => Path.FromRight(row, column * ColourRing.Unit);

    /// <summary>
    /// The smallest number of units that can be left unworked at a row's end, or grown over chains, as often as wished, while
    /// every stitch keeps its colour: the least k with 2k ≡ 0 (mod P).
    /// </summary>
    /// <returns>Null where no k up to 1,000 does.</returns>
    public int? KeepingStep => Least(KeepsAtEnd);

    /// <summary>
    /// The smallest number of units that can be slip-stitched over at a row's beginning: the least k with 2k ≡ 0 and k − yarn ≡ 0 (mod P).
    /// </summary>
    /// <inheritdoc cref="KeepingStep" path="/returns"/>
    public int? KeepingSlip => Least(units => KeepsAtEnd(units) && (units * ColourRing.Unit - PulledOver(units)) % Period == 0);

    /// <summary>Lean of rows of another width, as <see cref="Lean"/> has it, exact.</summary>
    public Lean LeanOf(int units)
    {
        var row = units * ColourRing.Unit + Path.Turns[0];
        return Lean.Of(Path.IsTurned ? new RowAdvance(2 * row, 2) : new RowAdvance(row, 1), Period);
    }

    /// <summary>See <see cref="SlipStitchYarn"/>.</summary>
    internal long SlipMicro { get; private init; }

    /// <summary>Yarn that slip stitches over so many units take, in micro-units.</summary>
    internal long PulledOver(int units) => units * SlipMicro;

    /// <summary>How far the colours jump across a turn, in (−P/2, P/2]: the wrapped change of place against the panel's.</summary>
    /// <param name="before">Columns by which the row before ends short of the panel's edge; negative beyond it.</param>
    /// <param name="after">Columns by which the next row begins short of it.</param>
    internal long JumpAtTurn(int before, int after) =>
        Lean.Wrap(PulledOver(Math.Max(after - before, 0)) - (before + after) * ColourRing.Unit, Period);

    private bool KeepsAtEnd(int units) => 2 * units * ColourRing.Unit % Period == 0;

    private static int? Least(Func<int, bool> keeps)
    {
        for (var units = 1; units <= FabricPath.MostStitches; units++)
        {
            if (keeps(units))
                return units;
        }
        return null;
    }
}
