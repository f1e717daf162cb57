namespace Dyepath.Core.Making.Drift;

/// <summary>Turns readings into corrections: one policy of a simulated maker.</summary>
internal interface ICorrecting
{
    /// <summary>The phase as estimated, in stitches.</summary>
    double Phase { get; }

    /// <summary>Whether she counts again after such a reading.</summary>
    bool AsksForRecount(int worked, int reading);

    /// <param name="worked">Stitches worked.</param>
    /// <param name="reading">Phase error in whole stitches.</param>
    /// <param name="until">Stitches worked at the next reading.</param>
    void Read(int worked, int reading, int until);

    /// <summary>The correction asked of the next stitch.</summary>
    double Correction(int worked);

    /// <summary>Marks a row's beginning, to which <see cref="RipBack"/> returns.</summary>
    void BeginRow(int worked);

    void RipBack();
}

internal sealed class CorrectingByFeel(double most, double period, bool learns) : ICorrecting
{
    /// <summary>What the hands do by themselves is averaged over the readings, and over no more than this many.</summary>
    private const int Remembered = 20;

    private double _level, _bias;
    private int _last, _readings;
    private (double Level, double Phase, int Last) _row;

    public double Phase { get; private set; }

    public bool AsksForRecount(int worked, int reading) => false;

    public void Read(int worked, int reading, int until)
    {
        if (learns && worked > _last)
        {
            _readings++;
            double change = reading - Phase;
            change -= Math.Round(change / period) * period;
            double byThemselves = change / (worked - _last) - _level;
            _bias += (byThemselves - _bias) / Math.Min(_readings + 1, Remembered);
        }
        (Phase, _last) = (reading, worked);
        _level = Math.Clamp(-(double)reading / (until - worked) - _bias, -most, most);
    }

    public double Correction(int worked) => _level;

    public void BeginRow(int worked) => _row = (_level, Phase, _last);

    public void RipBack() => (_level, Phase, _last) = _row;
}

internal sealed class CorrectingByAdvice(PlannedPiece piece, DriftModel model, MakerWorld world) : ICorrecting
{
    private DriftTrack _track = DriftTrack.Begin(piece, model);
    private DriftTrack _row = DriftTrack.Begin(piece, model);

    public double Phase => _track.Filter.PhaseMean;

    /// <summary>What she was last advised, and after how many stitches.</summary>
    public (DriftAdvice? Advice, int Given) Advised => (_track.Advice, _track.Given);

    public DriftFilter At(int worked)
    {
        if (worked > _track.Worked) _track = _track.WorkTo(worked);
        return _track.Filter;
    }

    public bool AsksForRecount(int worked, int reading) => At(worked).AsksForRecount(reading);

    public void Read(int worked, int reading, int until)
    {
        At(worked);
        _track = _track.Read(reading, _ => Place(worked));
    }

    public double Correction(int worked) => _track.CorrectionAt(worked);

    public void BeginRow(int worked)
    {
        At(worked);
        _row = _track;
    }

    public void RipBack() => _track = _track.RipBackTo(_row, Place(_row.Worked));

    /// <summary>Enters into the filter what was done at a row's beginning, and returns its advice then.</summary>
    /// <param name="before">Stitches worked when she did it.</param>
    /// <param name="after">Stitches worked then, one more for one that was skipped.</param>
    /// <param name="done">What it did.</param>
    public void Act(int before, int after, Func<DriftFilter, DriftFilter> done) =>
        _track = _track.Act(done(At(before)), Place(after, acted: true));

    private DriftPlace Place(int worked, bool acted = false)
    {
        bool edge = !acted && piece.RowEnds.AsSpan().BinarySearch(worked) >= 0;
        return new DriftPlace(piece, worked)
        {
            LargestCorrection = world.Hands.LargestCorrection,
            HookStep = acted ? 0 : world.HookStep,
            EdgeStitch = edge && world.EdgeStitch,
            Turn = edge ? world.Turn : 0,
        };
    }
}
