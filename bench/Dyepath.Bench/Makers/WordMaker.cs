using Dyepath.Core.Making;
using Dyepath.Core.Making.Log;

namespace Dyepath.Bench.Makers;

/// <summary>What a simulated maker goes by.</summary>
internal enum GoesBy
{
    /// <summary>She neither looks nor changes anything.</summary>
    Nothing,

    /// <summary>What she sees at a row's end she makes good over the next row.</summary>
    Feel,

    /// <summary>She does what the page's sentences say, as she understands them.</summary>
    Words,

    /// <summary>Her hands are told the engine's figures, which no hands are: what words could be worth at most.</summary>
    Numbers,
}

/// <summary>When she looks at her colours.</summary>
internal enum Looks
{
    RowEnds,

    /// <summary>And in mid-row, where the page asks for it.</summary>
    MidRow,

    EveryColour,
}

/// <summary>Makers of one kind. Each default is a value to use as it is.</summary>
internal sealed record MakerKind
{
    public double Spread { get; init; } = 0.015;

    public double Memory { get; init; } = 50;

    /// <summary>All of them work so much looser than planned.</summary>
    public double Bias { get; init; } = 0.01;

    /// <summary>Standard deviation of that between them.</summary>
    public double BiasSpread { get; init; }

    public double Dye { get; init; } = 0.02;

    public double Misreads { get; init; } = 0.03;

    public double Gain { get; init; } = 0.85;

    public double GainSpread { get; init; } = 0.15;

    /// <summary>Log-normal spread of what a grade means, from maker to maker, and again from grade to grade.</summary>
    public double MeaningSpread { get; init; } = 0.15;

    /// <summary>Sentences, and ends of stretches, that escape her.</summary>
    public double Forgets { get; init; } = 0.04;

    public GoesBy GoesBy { get; init; } = GoesBy.Words;

    public Looks Looks { get; init; }
}

/// <summary>What came of one maker's piece.</summary>
/// <param name="Share">Of the stitches, in planned colour.</param>
/// <param name="BadRows">Share of rows of which under half matches.</param>
/// <param name="Asked">Share of sentences that ask for something else than to carry on.</param>
/// <param name="Changed">Share of sentences that ask for anything else than the sentence before ended with.</param>
/// <param name="Ripped">Rows ripped back.</param>
/// <param name="Cuts">Times that the yarn was cut.</param>
internal sealed record WorkedPiece(double Share, double BadRows, double Asked, double Changed, int Ripped, int Cuts);

/// <summary>One maker at the page: hands, eyes and what she makes of words are her own.</summary>
internal sealed class WordMaker
{
    private const int MostRips = 2;

    /// <summary>What people take the words for, as parts of the yarn.</summary>
    private static readonly double[] Usual = [0, 0.01, 0.015, 0.03, 0.05];

    private readonly MakerKind _kind;
    private readonly PlannedPiece _piece;
    private readonly BesidePage _page;
    private readonly Random _random, _eyes;
    private readonly YarnInHand _yarn;
    private readonly double[] _meanings;
    private readonly double _gain, _centimetres;
    private readonly bool _goesByColour;
    private double _bias, _tension, _planned, _level;
    private int _sentences, _asked, _changed, _rippedRows, _cuts;
    private Feel _told = Feel.Natural;

    /// <param name="page">At its first row.</param>
    /// <param name="centimetres">Yarn of one stitch as planned.</param>
    /// <param name="seed">The same seed gives every kind the same hands.</param>
    public WordMaker(BesidePage page, MakerKind kind, double centimetres, int seed)
    {
        (_kind, _page, _piece, _centimetres) = (kind, page, page.Part.Planned!, centimetres);
        (_random, _eyes) = (new Random(seed), new Random(seed + 1_000_000));
        double common = Math.Exp(kind.MeaningSpread * Chance.Normal(_random));
        _meanings = [.. Usual.Select(part => part * common * Math.Exp(kind.MeaningSpread * Chance.Normal(_random)))];
        // Nobody takes "much" for less than "a little".
        Array.Sort(_meanings);
        _gain = kind.Gain + kind.GainSpread * Chance.Normal(_random);
        _bias = kind.Bias + kind.BiasSpread * Chance.Normal(_random);
        _goesByColour = _random.NextDouble() < 0.5;
        _tension = kind.Spread * Chance.Normal(_random);
        _yarn = new YarnInHand(_piece, kind.Dye, new Random(seed + 2_000_000));
    }

    public WorkedPiece Work()
    {
        int rows = _piece.RowStitches.Length;
        var right = new int[rows];
        var begun = new (double Place, double Planned)[rows];
        var rips = new int[rows];
        while (_page.Row is { } row)
        {
            begun[row] = (_yarn.Place, _planned);
            right[row] = WorkRow(row);
            double turn = _piece.Turns[row] / PlannedPiece.Stitch;
            _planned += turn;
            _yarn.Pass(turn);
            if (_kind.GoesBy is GoesBy.Nothing or GoesBy.Feel || _page.Sentence is not { } sentence || _page.Row is null) continue;
            var asked = SentenceReader.Read(sentence);
            int back = (asked.RipsTo ?? row + 1) - 1;
            if (asked.Rips && rips[back] < MostRips)
            {
                rips[back]++;
                _rippedRows += row - back + 1;
                _yarn.Return(begun[back].Place);
                _planned = begun[back].Planned;
                _page.Ripped(back);
            }
            else Act(asked, right, row);
        }
        return new WorkedPiece(
            (double)right.Sum() / _piece.Stitches,
            right.Zip(_piece.RowStitches).Count(r => r.First < 0.5 * r.Second) / (double)rows,
            _sentences == 0 ? 0 : (double)_asked / _sentences, _sentences == 0 ? 0 : (double)_changed / _sentences,
            _rippedRows, _cuts);
    }

    /// <summary>What is done between two rows.</summary>
    private void Act(Understood asked, int[] right, int row)
    {
        if (asked.Edge != 0)
        {
            if (asked.Edge < 0)
            {
                _planned++;
                right[row]--;
            }
            else _yarn.Pass(1);
            _page.Did(EntryKind.Edge, asked.Edge);
        }
        if (asked.Turn != 0)
        {
            _yarn.Pass(asked.Turn * 0.3 * Math.Max(0, 1 + Chance.Normal(_random) / 3));
            _page.Did(EntryKind.Turn, asked.Turn);
        }
        if (asked.CutCentimetres is { } cut)
        {
            _cuts++;
            _yarn.Pass(cut / _centimetres + 0.3 * Chance.Normal(_random));
            _page.Did(EntryKind.Join);
        }
        if (asked.Hook != 0)
        {
            _bias = (1 + _bias) * (1 + asked.Hook * 0.04 * Math.Max(0, 1 + Chance.Normal(_random) / 2)) - 1;
            _page.Did(EntryKind.Hook, asked.Hook);
        }
    }

    private int WorkRow(int row)
    {
        int first = _piece.StitchesBefore(row), stitches = _piece.RowStitches[row], right = 0;
        int[] begins = Begins();
        var plan = Listen(0);
        for (int i = 0; i < stitches;)
        {
            double asked = _kind.GoesBy == GoesBy.Numbers ? _page.Meant(first + i) : plan(i);
            _tension = _tension * Math.Exp(-1 / _kind.Memory)
                + _kind.Spread * Math.Sqrt(1 - Math.Exp(-2 / _kind.Memory)) * Chance.Normal(_random);
            if (_yarn.Take(Math.Max(0, 1 + _bias + _tension + _gain * asked)) == _piece.ColourAt(first + i)) right++;
            _planned++;
            i++;
            if (_kind.GoesBy is GoesBy.Nothing or GoesBy.Feel || i == stitches || !begins.Contains(i)) continue;
            switch (_kind.Looks)
            {
                case Looks.EveryColour:
                    _page.RunDone(Look(phase => _page.Doubts(EntryKind.Run, phase)));
                    plan = Listen(i);
                    break;
                case Looks.MidRow when _page.AsksToLookAt is { } tile && begins[tile] == i:
                    _page.Looked(tile, Look(phase => _page.DoubtsLook(tile, phase)));
                    plan = Listen(i);
                    break;
            }
        }
        if (_kind.GoesBy == GoesBy.Feel) _level = Math.Clamp(-Math.Round(Early()) / stitches, -0.06, 0.06);
        _page.RowDone(_kind.GoesBy is GoesBy.Nothing or GoesBy.Feel ? null : Look(phase => _page.Doubts(EntryKind.Row, phase)));
        return right;
    }

    /// <summary>Where in the row its tiles begin.</summary>
    private int[] Begins()
    {
        List<int> begins = [0];
        foreach (var (_, stitches) in _page.Tiles) begins.Add(begins[^1] + stitches);
        return [.. begins];
    }

    /// <summary>How she works the stitches of the row from here on, by their numbers in the row.</summary>
    private Func<int, double> Listen(int from)
    {
        if (_kind.GoesBy != GoesBy.Words || _page.Sentence is not { } sentence) return _ => _level;
        var asked = SentenceReader.Read(sentence);
        _sentences++;
        if (!asked.CarriesOn) _asked++;
        if (!asked.CarriesOn || asked.After != _told) _changed++;
        _told = asked.After ?? _told;
        // What escapes her leaves her at what she did before.
        if (_random.NextDouble() < _kind.Forgets) return _ => _level;
        // A sentence that says no hold leaves her at the one that was said last; one that says neither is an act.
        if (asked.After is { } feel) _level = Meant(feel);
        if (asked.Stretches.Count == 0) return _ => _level;
        var stretch = asked.Stretches[0];
        double level = Meant(stretch.Feel) + (asked.FromNatural ? 0 : _level), after = _level;
        int end = from + Length(stretch, from);
        if (_random.NextDouble() < _kind.Forgets) end = int.MaxValue;
        return i => i < end ? level : after;
    }

    private int Length(Stretch stretch, int from)
    {
        double early = Early();
        var (tiles, marked) = (_page.Tiles.ToArray(), _page.Marked);
        int begins = 0;
        for (int i = 0; i < tiles.Length; i++)
        {
            // A colour that comes early begins so much before its tile.
            bool here = stretch.ToMark ? i == marked
                : _goesByColour && stretch.Until == tiles[i].Colour && begins > from;
            if (here) return Math.Max(0, (int)Math.Round(begins - early + Chance.Normal(_random) / 2) - from);
            begins += tiles[i].Stitches;
        }
        if (stretch.ToMark && stretch.Stitches is null) throw new FormatException("Nothing is marked.");
        return stretch.Stitches is { } counted ? (int)Math.Round(counted * (1 + 0.03 * Chance.Normal(_random))) : int.MaxValue / 2;
    }

    private double Meant(Feel feel) => feel.Way * _meanings[(int)feel.Grade];

    private double Early()
    {
        double early = _yarn.Early(_planned), period = _piece.Period / PlannedPiece.Stitch;
        return early - Math.Round(early / period) * period;
    }

    /// <summary>Whole stitches, now and then one off; a second time where the page doubts it.</summary>
    private int Look(Func<int, bool> doubted)
    {
        int seen = Glance();
        return doubted(seen) ? Glance() : seen;

        int Glance()
        {
            double chance = _eyes.NextDouble();
            return (int)Math.Round(Early()) + (chance < _kind.Misreads / 2 ? -1 : chance < _kind.Misreads ? 1 : 0);
        }
    }
}
