namespace Dyepath.Core.Making.Drift;

/// <summary>Turns readings into corrections: one maker's steering, whatever it knows.</summary>
internal interface ICorrecting
{
    /// <summary>The phase as she believes it, in stitches.</summary>
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

internal sealed class CorrectingByAdvice(PlannedPiece piece, DriftModel model, double hands) : ICorrecting
{
    /// <summary>What is known at <see cref="_at"/> stitches.</summary>
    private DriftFilter _filter = DriftFilter.Begin(model);
    private int _at;
    private DriftAdvice? _advice;
    private int _given;
    private (DriftFilter Filter, int Worked) _row = (DriftFilter.Begin(model), 0);

    public double Phase => _filter.PhaseMean;

    public DriftFilter At(int worked)
    {
        int turn = Math.Clamp(_given + (_advice?.Stitches ?? 0), _at, worked);
        _filter = _filter.Predict(turn - _at, Correction(_at)).Predict(worked - turn, _advice?.Hold ?? 0);
        _at = worked;
        return _filter;
    }

    public bool AsksForRecount(int worked, int reading) => At(worked).AsksForRecount(reading);

    public void Read(int worked, int reading, int until)
    {
        _filter = At(worked).Observe(reading);
        Advise();
    }

    public double Correction(int worked) =>
        _advice is null ? 0 : worked < _given + _advice.Stitches ? _advice.Correction : _advice.Hold;

    public void BeginRow(int worked) => _row = (At(worked), worked);

    public void RipBack()
    {
        (_filter, _at) = (_filter.RipBackTo(_row.Filter), _row.Worked);
        Advise();
    }

    private void Advise() => (_advice, _given) = (DriftAdvice.For(_filter, new DriftPlace(piece, _at) { Hands = hands }), _at);
}
