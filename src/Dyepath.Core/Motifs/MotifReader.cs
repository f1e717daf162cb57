using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Motifs;

/// <summary>
/// Says which motif a person sees in pieces of one ring, one way of working and one gauge, how clearly, and how much
/// tension error it forgives. Depends on period and lean alone, so it holds for whole and for real sequences: how a
/// boundary rounds to whole stitches differs from row to row there, and the blur averages it.
/// </summary>
public sealed class MotifReader
{
    /// <summary>
    /// Rows of one family that a line needs at least to travel one visible period; with fewer, the eye joins the
    /// colours along another line. The blur usually asks for more.
    /// </summary>
    private const double FewestFamilyRowsPerReturn = 2.5;

    /// <summary>Of the visible period: about where lines across a join no longer read as one.</summary>
    private const double LargestJoinJump = 0.25;

    /// <summary>Some micro-units, so that rounding to them does not fall off the edge of a motif.</summary>
    private const double Tolerance = 3e-6;

    /// <summary>Colour variance that is nothing but rounding.</summary>
    private const double LeastVariance = 1e-18;

    private readonly ColourPeriod? _period;
    private readonly Lazy<Clarity>? _clarity;
    private readonly MotifOptions _options;
    private readonly Gauge _gauge;
    private readonly int _stitchesPerUnit;
    private readonly double _travel;
    private readonly double _sigmaRows;

    /// <summary>m; 0 where no wave of the ring is two units long or longer, or the ring has no contrast.</summary>
    private readonly int _wave;

    private MotifReader(
        ColourRing ring, Working working, Gauge gauge, int stitchesPerUnit, Palette palette, MotifOptions options)
    {
        Ring = ring;
        Working = working;
        _gauge = gauge;
        _stitchesPerUnit = stitchesPerUnit;
        _options = options;
        _travel = IsTurned ? 0 : options.SidewaysTravel;
        _period = ColourPeriod.Of(ring, options.PeriodTolerance);
        _sigmaRows = options.BlurStitches * gauge.Rows / gauge.Stitches;
        if (_period is null)
            return;
        var spectrum = ColourSpectrum.Of(_period, palette);
        if (spectrum.Variance < LeastVariance)
            return;
        var sigmaUnits = options.BlurStitches / stitchesPerUnit;
        _wave = VisibleWave(spectrum, sigmaUnits);
        _clarity = new Lazy<Clarity>(() => new Clarity(spectrum, IsTurned ? 2 : 1, sigmaUnits, _sigmaRows));
    }

    /// <summary>The colours that it reads.</summary>
    public ColourRing Ring { get; }

    /// <summary>What one reading takes, as <see cref="Limits.Effort"/> counts it.</summary>
    internal long StepsOfReading => 200 + (_wave == 0 ? 0 : 10L * _clarity!.Value.Waves);

    /// <summary>The way of working that its readings are for.</summary>
    public Working Working { get; }

    private bool IsTurned => Working is Working.Turned or Working.RoundsTurned;

    /// <summary>Row height over the width of a unit: rise over run of a line that leans one unit a row.</summary>
    private double RowOverUnit => _gauge.Stitches / _gauge.Rows / _stitchesPerUnit;

    private double UnitsPerPeriod => ColourRing.ToUnits(_period!.Micro);

    private double VisiblePeriod => UnitsPerPeriod / _wave;

    /// <summary>Mean length of a colour in micro-units.</summary>
    private double MeanStretch => (double)_period!.Micro / _period.Stretches.Length;

    /// <param name="gauge">Stitches and rows within <see cref="Gauge.Counts"/>.</param>
    /// <param name="stitchesPerUnit">1, or 2 in linen stitch.</param>
    /// <param name="palette">Omitted, all sections of different colours are equally distinct.</param>
    /// <exception cref="ArgumentOutOfRangeException">A gauge, unit or option outside its range.</exception>
    public static MotifReader Create(
        ColourRing ring, Working working, Gauge gauge, int stitchesPerUnit = 1, Palette? palette = null, MotifOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(gauge);
        options ??= new MotifOptions();
        Gauge.Counts.Check(gauge.Stitches, nameof(gauge));
        Gauge.Counts.Check(gauge.Rows, nameof(gauge));
        Guard.InRange(stitchesPerUnit, 1, 2, "stitches");
        Guard.InRange(options.BlurStitches, 1.5, 20, "stitches", nameof(options));
        Guard.InRange(options.ColumnsDrift, 0, 0.5, "periods", nameof(options));
        Guard.InRange(options.TallestArgyle, 1, 100, "heights over widths", nameof(options));
        Guard.InRange(options.FlattestArgyle, 0.01, 1, "heights over widths", nameof(options));
        Guard.InRange(options.ScatteredBelow, 1e-6, 0.5, "of a column's contrast", nameof(options));
        Guard.InRange(options.SidewaysTravel, -5, 5, "units a round", nameof(options));
        return new MotifReader(ring, working, gauge, stitchesPerUnit, palette ?? Palette.Distinct(ring), options);
    }

    /// <exception cref="ArgumentException">The path is worked another way or in other units than this reader's.</exception>
    public MotifReading Read(FabricPath path)
    {
        var (piece, uneven) = PieceOf(path);
        var reading = Read(piece);
        return uneven ? reading with { Lean = null, Findings = reading.Findings.Add(MotifFinding.Uneven) } : reading;
    }

    /// <summary>The window of yarn per stitch within which the piece keeps its motif.</summary>
    /// <returns>Null where there is no line to lose: one colour, or no contrast.</returns>
    /// <exception cref="ArgumentException">The path is worked another way or in other units than this reader's.</exception>
    public Forgiveness? Forgive(FabricPath path) => Forgive(PieceOf(path).Piece);

    internal MotifReading Read(Piece piece)
    {
        if (_wave == 0)
        {
            var findings = _clarity is null ? ImmutableArray.Create(MotifFinding.OneColour) : [];
            return new MotifReading(
                MotifKind.Scattered,
                _period is null ? null : Lean.Of(piece.Advance, _period.Micro),
                _period is null ? null : UnitsPerPeriod,
                null, null, null, null)
            {
                Clarity = 0,
                RelativeClarity = 0,
                Findings = findings,
            };
        }
        var kind = KindOf(piece);
        var lean = VisibleLean(piece);
        var unitWidth = _gauge.StitchWidth * _stitchesPerUnit;
        var rowsPerReturn = lean == 0 ? (double?)null : VisiblePeriod / Math.Abs(lean);
        var clarity = _clarity!.Value.Of(
            Lean.Of(piece.Advance, _period!.Micro).UnitsPerRow / UnitsPerPeriod,
            _travel / UnitsPerPeriod,
            piece.Mirror % (2 * _period.Micro) / (2.0 * _period.Micro),
            piece.Rows);
        return new MotifReading(
            kind,
            Lean.Of(piece.Advance, _period.Micro),
            UnitsPerPeriod,
            VisiblePeriod,
            lean,
            unitWidth * VisiblePeriod,
            rowsPerReturn is { } rows ? _gauge.RowHeight * rows : null)
        {
            Clarity = clarity,
            RelativeClarity = _clarity.Value.Best > 0 ? Math.Min(1, clarity / _clarity.Value.Best) : 0,
            Findings = Findings(piece, kind, rowsPerReturn),
        };
    }

    internal Forgiveness? Forgive(Piece piece)
    {
        if (_wave == 0)
            return null;
        var kind = KindOf(piece);
        var shortest = MeanStretch / piece.RowYarn;
        if (kind == MotifKind.Bands)
            return new Forgiveness(-1, Math.Min(shortest - 1, MotifWindow.MostLooser));
        var sign = VisibleLean(piece) < 0 ? -1 : 1;
        var (low, high) = Window(kind, piece).Interval(Slope(piece), Offset(piece, 0), sign) ?? (1, 1);
        return new Forgiveness(Math.Max(low, shortest) - 1, high - 1);
    }

    /// <summary>
    /// The smallest change of turn cost, in units, and of yarn per stitch, relative, that would give the piece a motif, both ending a
    /// hair inside it; null where none within reach would.
    /// </summary>
    internal (double? Turn, double? Yarn) Needs(MotifKind wanted, Piece piece)
    {
        if (_wave == 0 || wanted == MotifKind.Bands || wanted == (IsTurned ? MotifKind.EvenSlant : MotifKind.Argyle))
            return (null, null);
        var window = Window(wanted, piece);
        var here = VisibleLean(piece) / VisiblePeriod;
        var shortest = MeanStretch / piece.RowYarn;
        double? turn = null;
        double? yarn = null;
        foreach (var sign in (ReadOnlySpan<int>)[-1, 1])
        {
            for (var branch = -2; branch <= 2; branch++)
            {
                if (window.Interval(Slope(piece), Offset(piece, branch), sign) is { } z)
                    yarn = Nearer(yarn, Reach(1, Math.Max(z.Low, shortest), z.High, Tolerance));
                if (window.Lines() is { } lines && shortest <= 1)
                {
                    // The same lines, seen a whole turn of the wave further on.
                    var at = sign * (here - ((double)branch / piece.Advance.Rows));
                    var least = wanted == MotifKind.Columns ? -lines.Most : lines.Least;
                    turn = Nearer(turn, sign * VisiblePeriod * Reach(at, least, lines.Most, Tolerance / VisiblePeriod));
                }
            }
        }
        return (turn, yarn);
    }

    /// <summary>Whole periods that the yarn of the piece's advance goes round before its lean is left over; 0 for one colour.</summary>
    internal long PeriodsOf(Piece piece) => _period is null
        ? 0
        : (piece.Advance.Micro - Lean.Of(piece.Advance, _period.Micro).Micro) / _period.Micro;

    /// <summary>How far a value is from an interval less a hair at each end; null where that is empty.</summary>
    private static double? Reach(double from, double low, double high, double hair) =>
        low + hair <= high - hair ? Math.Clamp(from, low + hair, high - hair) - from : null;

    private static double? Nearer(double? one, double? other) =>
        one is null || Math.Abs(other ?? double.MaxValue) < Math.Abs(one.Value) ? other : one;

    /// <summary>
    /// |f| above which the blur leaves less than the stated share of contrast: e^(−2π²σ²f²) = share.
    /// </summary>
    private double Flattest(int rowsPerReturn) => Math.Min(
        Math.Sqrt(-Math.Log(_options.ScatteredBelow) / 2) / (Math.PI * _sigmaRows),
        1 / (FewestFamilyRowsPerReturn * rowsPerReturn));

    /// <summary>The wave of the ring that best survives the blur along the row.</summary>
    private static int VisibleWave(ColourSpectrum spectrum, double sigma)
    {
        var best = (Wave: 0, Score: double.NegativeInfinity);
        foreach (var h in spectrum.Harmonics)
        {
            var frequency = h.Number / spectrum.Period;
            var score = Math.Log(h.Power) - 4 * Math.PI * Math.PI * sigma * sigma * frequency * frequency;
            if (frequency <= 0.5 && h.Power > 1e-12 * spectrum.Variance && score > best.Score)
                best = (h.Number, score);
        }
        return best.Wave;
    }

    internal MotifKind KindOf(Piece piece)
    {
        if (_wave == 0)
            return MotifKind.Scattered;
        if (MeanStretch > piece.RowYarn)
            return MotifKind.Bands;
        var lean = Math.Abs(VisibleLean(piece));
        if (lean * piece.Rows < _options.ColumnsDrift * VisiblePeriod)
            return MotifKind.Columns;
        if (lean / VisiblePeriod > Flattest(piece.Advance.Rows))
            return MotifKind.Scattered;
        if (RowOverUnit > _options.TallestArgyle * lean)
            return MotifKind.Steep;
        if (RowOverUnit < _options.FlattestArgyle * lean)
            return MotifKind.Shallow;
        return IsTurned ? MotifKind.Argyle : MotifKind.EvenSlant;
    }

    /// <summary>The motif that a piece has with z times the yarn in every stitch and turn: z = 1 is <see cref="KindOf"/>.</summary>
    internal MotifKind KindAt(Piece piece, double z)
    {
        if (_wave == 0)
            return MotifKind.Scattered;
        if (MeanStretch > piece.RowYarn * z)
            return MotifKind.Bands;
        var waves = (double)_wave * piece.Advance.Micro / _period!.Micro * z;
        var lines = Math.Abs((waves - Math.Round(waves)) / piece.Advance.Rows + _travel / VisiblePeriod * z);
        var square = RowOverUnit / VisiblePeriod * z;
        return lines * piece.Rows < _options.ColumnsDrift ? MotifKind.Columns
            : lines > Flattest(piece.Advance.Rows) ? MotifKind.Scattered
            : square > _options.TallestArgyle * lines ? MotifKind.Steep
            : square < _options.FlattestArgyle * lines ? MotifKind.Shallow
            : IsTurned ? MotifKind.Argyle : MotifKind.EvenSlant;
    }

    /// <summary>Every z between two at which a piece's motif changes, unordered; z as in <see cref="KindAt"/>.</summary>
    internal IEnumerable<double> Borders(Piece piece, double from, double to)
    {
        if (_wave == 0)
            yield break;
        if (MeanStretch / piece.RowYarn is var shortest && shortest > from && shortest < to)
            yield return shortest;
        var (slope, reach) = (Slope(piece), (int)Math.Ceiling((double)_wave * piece.Advance.Micro / _period!.Micro * (to - from)) + 1);
        for (var kind = MotifKind.Columns; kind <= MotifKind.Shallow; kind++)
        {
            if (kind == (IsTurned ? MotifKind.EvenSlant : MotifKind.Argyle))
                continue;
            var window = Window(kind, piece);
            for (var branch = -reach; branch <= reach; branch++)
            {
                foreach (var sign in (int[])[-1, 1])
                {
                    if (window.Interval(slope, Offset(piece, branch), sign) is not var (low, high))
                        continue;
                    if (low > from && low < to)
                        yield return low;
                    if (high > from && high < to)
                        yield return high;
                }
            }
        }
    }

    /// <summary>
    /// How clear a piece is with z times the yarn, over the best that the ring reaches, 0 to 1: its lines as they lean then, the blur
    /// along the row as it is at z = 1.
    /// </summary>
    internal double ClarityAt(Piece piece, double z)
    {
        if (_wave == 0 || _clarity!.Value.Best <= 0)
            return 0;
        var turns = (double)piece.Advance.Micro / _period!.Micro * z;
        var mirror = piece.Mirror * z / (2.0 * _period.Micro) % 1;
        var clarity = _clarity.Value.Of(
            (turns - Math.Round(turns)) / piece.Advance.Rows, _travel / UnitsPerPeriod * z, mirror, piece.Rows);
        return Math.Min(1, clarity / _clarity.Value.Best);
    }

    /// <summary>Units per row modulo the visible period, wrapped in whole micro-units of the period.</summary>
    private double VisibleLean(Piece piece) =>
        ColourRing.ToUnits(Lean.Wrap(_wave * piece.Advance.Micro, _period!.Micro)) / (_wave * piece.Advance.Rows) + _travel;

    /// <summary>A stretch of yarn in visible periods, wrapped into (−½, ½].</summary>
    private double PartOfWave(long micro) => (double)Lean.Wrap(_wave * micro, _period!.Micro) / _period.Micro;

    private MotifWindow Window(MotifKind kind, Piece piece) => MotifWindow.Of(
        kind, _options, Flattest(piece.Advance.Rows), RowOverUnit / VisiblePeriod, piece.Rows, piece.Advance.Rows);

    /// <summary>a in f = a·z − b.</summary>
    private double Slope(Piece piece) =>
        ((double)piece.Advance.Micro / (piece.Advance.Rows * _period!.Micro) + _travel / UnitsPerPeriod) * _wave;

    /// <summary>b in f = a·z − b, for the whole periods that the piece's rows take now and some more.</summary>
    private double Offset(Piece piece, int more)
    {
        var waves = _wave * piece.Advance.Micro;
        return ((double)((waves - Lean.Wrap(waves, _period!.Micro)) / _period.Micro) + more) / piece.Advance.Rows;
    }

    private ImmutableArray<MotifFinding> Findings(Piece piece, MotifKind kind, double? rowsPerReturn)
    {
        var findings = ImmutableArray.CreateBuilder<MotifFinding>();
        if (kind != MotifKind.Bands && ColourRing.ToUnits(piece.RowYarn) < VisiblePeriod)
            findings.Add(MotifFinding.TooNarrow);
        if (kind is not (MotifKind.Bands or MotifKind.Columns or MotifKind.Scattered) && piece.Rows < rowsPerReturn)
            findings.Add(MotifFinding.TooShort);
        if (Working == Working.RoundsTurned && Math.Abs(PartOfWave(piece.RowYarn)) > LargestJoinJump)
            findings.Add(MotifFinding.JumpsAtJoin);
        return findings.ToImmutable();
    }

    /// <summary>The piece itself where its rows are steady; else as if all rows advanced as most of them do.</summary>
    private (Piece Piece, bool Uneven) PieceOf(FabricPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Working != Working || path.StitchesPerUnit != _stitchesPerUnit)
        {
            throw new ArgumentException(
                $"The path is worked {path.Working}, {path.StitchesPerUnit} stitches a unit; the reader {Working}, {_stitchesPerUnit}.",
                nameof(path));
        }
        if (path.Advance is { } steady)
            return (Piece.Of(path, steady, path.Rows), false);
        var step = IsTurned ? 2 : 1;
        var pieces = Enumerable.Range(0, path.Rows - step)
            .Select(row => Piece.Of(path, path.AdvanceAt(row), path.Rows))
            .ToArray();
        return (pieces.GroupBy(KindOf).MaxBy(g => g.Count())!.First(), true);
    }
}
