using Dyepath.Core.Making;

namespace Dyepath.Bench.Makers;

/// <summary>The yarn as it runs through the hands: sections of the planned lengths, each a little off as dyers leave them. In stitches.</summary>
internal sealed class YarnInHand
{
    private readonly (int Colour, double Length)[] _planned;
    private readonly List<(double Begins, double Plan)> _sections = [];
    private readonly double _dye;
    private readonly Random _random;
    private int _at;

    public YarnInHand(PlannedPiece piece, double dye, Random random)
    {
        (_dye, _random) = (dye, random);
        _planned = [.. piece.Ring.Stretches.Select(s => (s.Colour, s.Micro / PlannedPiece.Stitch))];
        // Before the first stitch lies the rest of the sequence, as planned.
        _sections.Add((-piece.Start / PlannedPiece.Stitch, -piece.Start / PlannedPiece.Stitch));
    }

    /// <summary>What has run through.</summary>
    public double Place { get; private set; }

    /// <summary>Takes one stitch's yarn.</summary>
    /// <returns>The colour that most of it has.</returns>
    public int Take(double yarn)
    {
        int colour = ColourAt(Place + yarn / 2);
        Pass(yarn);
        return colour;
    }

    /// <summary>Yarn that shows nowhere: a turn, or what is cut out.</summary>
    public void Pass(double yarn) => Place += yarn;

    /// <summary>Lets it back to where it was: ripped work gives the same yarn again.</summary>
    public void Return(double place) => Place = place;

    /// <summary>By how many stitches colours come early against a place of the plan.</summary>
    public double Early(double planned)
    {
        var (begins, plan) = _sections[SectionAt(Place)];
        return Place - begins + plan - planned;
    }

    private int ColourAt(double place) => _planned[SectionAt(place) % _planned.Length].Colour;

    private int SectionAt(double place)
    {
        while (_at > 0 && _sections[_at].Begins > place) _at--;
        while (true)
        {
            if (_at + 1 == _sections.Count)
            {
                var (begins, plan) = _sections[_at];
                double length = _planned[_at % _planned.Length].Length;
                _sections.Add((begins + length * Math.Max(0.2, 1 + _dye * Chance.Normal(_random)), plan + length));
            }
            if (_sections[_at + 1].Begins > place) return _at;
            _at++;
        }
    }
}

internal static class Chance
{
    /// <summary>By Box and Muller.</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
