using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Edgings;

/// <summary>A stitch of a charted round.</summary>
/// <param name="At">Stitches from the round's beginning, from 0.</param>
/// <param name="Up">Row heights above the round's foot.</param>
internal readonly record struct ChartStitch(StitchSymbol Symbol, double At, double Up = 0);

/// <summary>Builds the chart of an edging round by round, over a piece of edge; rounds run from right to left.</summary>
/// <param name="stitches">Stitches picked up along that piece of edge.</param>
internal sealed class EdgingChart(int stitches)
{
    /// <summary>Room of a row of single crochet, in row heights.</summary>
    private const double Single = 1;

    private readonly List<PlacedSymbol> _symbols = [];
    private readonly List<PlacedLabel> _labels = [];
    private readonly List<ChartRow> _rows = [];
    private readonly List<ChartLine> _lines = [new(-0.6, -0.1, stitches - 0.4, -0.1)];
    private double _foot;

    /// <summary>A joined round: chains, stitches, and the slip stitch that closes it.</summary>
    public EdgingChart Round(IEnumerable<ChartStitch> worked, int chains = 1, double height = Single)
    {
        Worked(worked, chains, backwards: false, height);
        _symbols.Add(new PlacedSymbol(StitchSymbol.SlipStitch, Math.Min(0, _symbols[^1].X) - 1, _foot + 0.25));
        return Up(height);
    }

    /// <summary>A joined round that goes back the way that the others came.</summary>
    public EdgingChart RoundBack(IEnumerable<ChartStitch> worked)
    {
        Worked(worked, 1, backwards: true, Single);
        _symbols.Add(new PlacedSymbol(StitchSymbol.SlipStitch, stitches, _foot + 0.25));
        return Up(Single);
    }

    /// <summary>A turned row; every other one runs from left to right.</summary>
    public EdgingChart Row(IEnumerable<ChartStitch> worked)
    {
        Worked(worked, 1, backwards: _rows.Count % 2 == 1, Single);
        return Up(Single);
    }

    /// <summary>Marks that belong to no round of their own, upon what is there.</summary>
    public EdgingChart Upon(IEnumerable<ChartStitch> worked)
    {
        _symbols.AddRange(worked.Select(s => new PlacedSymbol(s.Symbol, stitches - 1 - s.At, _foot + s.Up)));
        return this;
    }

    /// <summary>A fold at the height reached.</summary>
    public EdgingChart Fold()
    {
        _lines.Add(new ChartLine(-1.5, _foot - 0.1, stitches + 0.4, _foot - 0.1, Dashed: true));
        _labels.Add(new PlacedLabel("fold", -2.1, _foot - 0.2));
        return this;
    }

    /// <param name="multiple">Stitches of a repeat; the second one is marked, or the first where there is no other.</param>
    public SymbolChart Repeating(int multiple)
    {
        var before = stitches >= 2 * multiple ? multiple : 0;
        var to = stitches - 0.5 - before;
        return new SymbolChart([.. _symbols], [.. _labels])
        {
            Rows = [.. _rows],
            Lines = [.. _lines],
            Repeat = new ChartRepeat(to - multiple, to, -0.35, multiple),
        };
    }

    /// <summary>The same stitch in every place.</summary>
    public static IEnumerable<ChartStitch> Each(StitchSymbol symbol, int stitches, double up = 0) =>
        Enumerable.Range(0, stitches).Select(i => new ChartStitch(symbol, i, up));

    private void Worked(IEnumerable<ChartStitch> worked, int chains, bool backwards, double height)
    {
        double X(double at) => backwards ? at : stitches - 1 - at;
        _rows.Add(new ChartRow(
            _rows.Count + 1, X(-2.3), _foot + Math.Min(height, Single) / 2 - 0.1, backwards ? ChartWay.Right : ChartWay.Left));
        _symbols.AddRange(Enumerable.Range(0, chains).Select(i => new PlacedSymbol(StitchSymbol.Chain, X(-1), _foot + 0.1 + i * 0.38)));
        _symbols.AddRange(worked.Select(s => new PlacedSymbol(s.Symbol, X(s.At), _foot + s.Up)));
    }

    private EdgingChart Up(double height)
    {
        _foot += height;
        return this;
    }
}
