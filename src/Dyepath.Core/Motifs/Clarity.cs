using System.Collections.Immutable;
using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Motifs;

/// <summary>
/// Contrast that survives the blur, in closed form: every wave of the ring draws one plane wave per family of rows,
/// and a Gaussian blur scales a plane wave by its frequency. The alternation of two families from row to row is taken to
/// blur away wholly; edges of a piece are not modelled.
/// Derived in docs/mathematics.md.
/// </summary>
internal sealed class Clarity
{
    /// <summary>Start phases tried for the best columns, per unit of the period and at most.</summary>
    private const int PhasesPerUnit = 4;
    private const int MostPhases = 256;

    /// <summary>Waves that keep less than this share of their power along the row are left out.</summary>
    private const double Negligible = 1e-12;

    private readonly ImmutableArray<Harmonic> _harmonics;
    private readonly double[] _along;
    private readonly double _period;
    private readonly double _variance;
    private readonly double _sigmaRows;
    private readonly int _families;

    /// <param name="spectrum">The ring's waves.</param>
    /// <param name="families">2 where every other row runs backwards, else 1.</param>
    /// <param name="sigmaUnits">Blur along the row, in units.</param>
    /// <param name="sigmaRows">Blur up the fabric, in rows.</param>
    public Clarity(ColourSpectrum spectrum, int families, double sigmaUnits, double sigmaRows)
    {
        _harmonics = [.. spectrum.Harmonics.Where(h => Survival(h.Frequency, sigmaUnits) > Negligible)];
        _along = [.. _harmonics.Select(h => Survival(h.Frequency, sigmaUnits))];
        _period = spectrum.Period;
        _variance = spectrum.Variance;
        _sigmaRows = sigmaRows;
        _families = families;
        Best = FindBest();
    }

    /// <summary>How many waves every reading sums.</summary>
    public int Waves => _harmonics.Length;

    /// <summary>The best of any lean and start.</summary>
    public double Best { get; }

    /// <param name="periodsPerRow">
    /// How far a row's start moves through the period from row to row, in periods (lean over P, unwrapped).
    /// </param>
    /// <param name="travel">Sideways travel of unturned rounds in periods per row.</param>
    /// <param name="mirror">
    /// Turned: the sum of the yarn positions of column 0 in the first row and, taken back to it, in the backward rows, in periods.
    /// </param>
    /// <param name="rows">Rows of the piece.</param>
    public double Of(double periodsPerRow, double travel, double mirror, int rows)
    {
        if (_variance <= 0)
            return 0;
        var kept = 0.0;
        for (var i = 0; i < _harmonics.Length; i++)
        {
            var h = _harmonics[i];
            if (_families == 1)
            {
                kept += h.Power * _along[i] * Survival(Wrap(h.Number * (periodsPerRow + travel), 1), _sigmaRows);
                continue;
            }
            var perRow = Wrap(h.Number * periodsPerRow, 0.5);
            kept += 0.5 * _along[i] * (h.Power + Meeting(h, mirror, perRow, rows)) * Survival(perRow, _sigmaRows);
        }
        return Math.Sqrt(Math.Max(kept, 0) / _variance);
    }

    /// <summary>Power of what a wave's two families share where they meet, averaged over the rows.</summary>
    private static double Meeting(Harmonic h, double mirror, double perRow, int rows)
    {
        // The mean over rows of e^(4πi·perRow·r) is a Dirichlet kernel about the middle row.
        var step = 2 * Math.PI * perRow;
        var kernel = Math.Abs(Math.Sin(step)) < 1e-9 ? 1 : Math.Sin(rows * step) / (rows * Math.Sin(step));
        var phase = 2 * Math.PI * h.Number * mirror + step * (rows - 1);
        return kernel * (h.Square.Real * Math.Cos(phase) - h.Square.Imaginary * Math.Sin(phase));
    }

    private double FindBest()
    {
        if (_families == 1)
            return Of(0, 0, 0, 1);
        var phases = Math.Clamp((int)(_period * PhasesPerUnit), PhasesPerUnit, MostPhases);
        return Enumerable.Range(0, phases).Max(i => Of(0, 0, (double)i / phases, 1));
    }

    /// <summary>Share of a wave's power that a Gaussian blur leaves.</summary>
    private static double Survival(double frequency, double sigma) =>
        Math.Exp(-4 * Math.PI * Math.PI * sigma * sigma * frequency * frequency);

    private static double Wrap(double value, double period) => value - period * Math.Ceiling(value / period - 0.5);
}
