using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>
/// Rows of a shaped piece that are worked one after another without cutting the yarn, and where their stitches lie along it.
/// </summary>
public sealed class ShapedPart
{
    private readonly SteadyPanel _panel;
    private readonly Lazy<Fabric> _fabric;

    /// <param name="below">The part below, already worked; none for the first.</param>
    internal ShapedPart(SteadyPanel panel, int index, PartOutline asked, ShapedPart? below)
    {
        (_panel, Index, Below, Continues) = (panel, index, asked.Below, asked.Continues);
        (FirstRow, Outline, From) = (asked.FirstRow, asked.Outline, asked.From ?? panel.BeginningOf(asked.FirstRow));
        Ground = below?.Outline.At(below.Rows - 1);
        var rows = Outline.ByRow().ToImmutableArray();
        Changes = FindChanges(rows);
        var pulled = new double[rows.Length];
        foreach (var change in Changes.Where(c => c.AtBeginning))
        {
            if (change.Row == FirstRow)
                PulledBefore = panel.PulledOver(change.Shorter);
            else
                pulled[change.Row - FirstRow] = ColourRing.ToUnits(panel.PulledOver(change.Shorter));
        }
        var start = Continues ? below!.Path.RowStart(below.Rows) + PulledBefore
            : asked.Start is { } units ? ColourRing.ToMicro(units)
            : panel.PlaceAt(FirstRow, BeginsAt(FirstRow));
        var options = panel.Options with
        {
            Start = ColourRing.ToUnits(ColourRing.Modulo(start, panel.Ring.Total)),
            FirstRowBackwards = From == RowEdge.Left,
        };
        Path = FabricPath.RowByRow(
            panel.Path.Working, [.. rows.Select(r => r.Units * panel.Options.StitchesPerUnit)], options, [.. rows.Select(r => r.First)],
            pulled: [.. pulled]);
        _fabric = new Lazy<Fabric>(() => Fabric.Work(panel.Ring, Path));
    }

    /// <summary>Among the piece's parts, from 0.</summary>
    public int Index { get; }

    /// <summary>Index of the part that it is worked on; none for the first.</summary>
    public int? Below { get; }

    /// <summary>Whether the yarn comes from the part below without a cut.</summary>
    public bool Continues { get; }

    /// <summary>Of the piece.</summary>
    public int FirstRow { get; }

    /// <summary>Of the part.</summary>
    public int Rows => Outline.Rows;

    /// <summary>Its rows are counted from the part's first; columns are the piece's.</summary>
    public Outline Outline { get; }

    /// <summary>The edge from which the first row is worked; every further row begins where the one before ended.</summary>
    public RowEdge From { get; }

    /// <summary>
    /// Where its stitches lie along the yarn; rows are counted from the part's first, columns are the piece's, the start lies within the
    /// first sequence.
    /// </summary>
    public FabricPath Path { get; }

    /// <summary>What its stitches show, rows and columns as in <see cref="Path"/>.</summary>
    public Fabric Fabric => _fabric.Value;

    /// <summary>
    /// Micro-units from the first stitch to the last one's end, turns and slip stitches among them, and before the first what comes between
    /// the parts where the yarn is not cut.
    /// </summary>
    public long Yarn => Path.Yarn + (Continues ? _panel.Path.Turns[0] + PulledBefore : 0);

    /// <summary>Units that are worked over chains of companion yarn.</summary>
    public int CompanionChains => Changes.Where(c => c.Shorter < 0 && !c.OverStanding).Sum(c => -c.Shorter);

    /// <summary>The last row of the part below; none for the first part.</summary>
    internal OutlineRun? Ground { get; }

    /// <summary>Where rows begin or end elsewhere than the row before at that edge, in the order of work.</summary>
    internal ImmutableArray<RowChange> Changes { get; }

    private long PulledBefore { get; }

    /// <summary>The edge at which a row begins.</summary>
    /// <param name="row">Of the piece.</param>
    public RowEdge BeginningOf(int row) =>
        _panel.Path.IsTurned && ((row - FirstRow) & 1) == (From == RowEdge.Left ? 0 : 1) ? RowEdge.Left : RowEdge.Right;

    /// <summary>The edge at which a row ends.</summary>
    /// <inheritdoc cref="BeginningOf"/>
    public RowEdge EndOf(int row) => Other(BeginningOf(row));

    /// <summary>The column that a row begins with.</summary>
    /// <inheritdoc cref="BeginningOf"/>
    public int BeginsAt(int row) => ColumnAt(row, BeginningOf(row));

    /// <summary>The column that a row ends with.</summary>
    /// <inheritdoc cref="BeginningOf"/>
    public int EndsAt(int row) => ColumnAt(row, EndOf(row));

    /// <summary>
    /// How far along the yarn the row's stitches lie off those of the steady panel, in micro-units in (−P/2, P/2]: 0 where every stitch
    /// has the panel's colour.
    /// </summary>
    /// <returns>Null for a row worked the other way than the panel's.</returns>
    /// <inheritdoc cref="BeginningOf"/>
    public long? OffsetAt(int row)
    {
        if (BeginningOf(row) != _panel.BeginningOf(row))
            return null;
        return Lean.Wrap(Path.RowStart(row - FirstRow) - _panel.PlaceAt(row, BeginsAt(row)), _panel.Period);
    }

    private static RowEdge Other(RowEdge edge) => edge == RowEdge.Left ? RowEdge.Right : RowEdge.Left;

    private int ColumnAt(int row, RowEdge edge) => Outline.At(row - FirstRow) is var run && edge == RowEdge.Left ? run.Last : run.First;

    private ImmutableArray<RowChange> FindChanges(ImmutableArray<OutlineRun> rows)
    {
        var changes = ImmutableArray.CreateBuilder<RowChange>();
        for (var i = 0; i < rows.Length; i++)
        {
            if ((i == 0 ? Ground : rows[i - 1]) is not { } before)
                continue;
            var row = FirstRow + i;
            var begins = BeginningOf(row);
            // A row of a part that is joined on begins wherever the yarn is joined.
            foreach (var edge in (ReadOnlySpan<RowEdge>)(i > 0 || Continues ? [begins, Other(begins)] : [Other(begins)]))
            {
                var shorter = edge == RowEdge.Left ? before.Last - rows[i].Last : rows[i].First - before.First;
                if (shorter == 0)
                    continue;
                if (!_panel.Path.IsTurned)
                    throw new ArgumentException($"Row {row} is shaped, and only turned rows are.");
                if (edge == begins && shorter < 0)
                    throw new ArgumentException($"Row {row} begins beyond the row before it; a piece grows at the end of a row.");
                changes.Add(new RowChange(row, edge, edge == begins, shorter, rows[i].OverStanding && shorter < 0));
            }
        }
        return changes.ToImmutable();
    }
}

/// <summary>A row that begins or ends elsewhere than the row before at that edge.</summary>
/// <param name="Row">Of the piece.</param>
/// <param name="Shorter">Units; negative where the row goes further.</param>
internal readonly record struct RowChange(int Row, RowEdge Edge, bool AtBeginning, int Shorter, bool OverStanding);
