using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>
/// A piece of several parts, each worked on the last row of an earlier one: its yarn, its colours and the steps that shape it.
/// </summary>
public sealed class ShapedPiece
{
    /// <summary>Most parts of a piece.</summary>
    public const int MostParts = 64;

    private ShapedPiece(SteadyPanel panel, ImmutableArray<ShapedPart> parts, int bias)
    {
        (Panel, Parts, Bias) = (panel, parts, bias);
        (FirstColumn, LastColumn) = (parts.Min(p => p.Outline.FirstColumn), parts.Max(p => p.Outline.LastColumn));
        Steps = [.. ShapingSteps.Of(this)];
        Breaks = bias > 0 ? [] : [.. MotifBreaks.Of(this)];
        Strips = [.. SkippedStrips.Of(this)];
    }

    /// <summary>Units by which it moves with every two rows, so that no panel is what it is held against; 0: upright.</summary>
    public int Bias { get; }

    /// <summary>Lean of the lines that a row draws with the rows worked the same way, in units per row.</summary>
    /// <param name="row">Of the first part, from 0, two rows or more below its end.</param>
    public double LeanFrom(int row) => Lean.Of(Parts[0].Path.AdvanceAt(row), Panel.Period).UnitsPerRow;

    /// <summary>What it is held against.</summary>
    public SteadyPanel Panel { get; }

    /// <summary>In the order of work.</summary>
    public ImmutableArray<ShapedPart> Parts { get; }

    /// <summary>In the order of work.</summary>
    public ImmutableArray<ShapingStep> Steps { get; }

    /// <summary>Where the colours stop going on as in the panel, in the order of work; none where every stitch keeps its colour.</summary>
    public ImmutableArray<MotifBreak> Breaks { get; }

    /// <summary>
    /// Share of its stitches, 0 to 1, in rows whose lines of colour lean otherwise than the panel's: there the colours draw something else.
    /// </summary>
    public double LostShare => MotifBreaks.LostUnits(this) / (double)Parts.Sum(p => p.Outline.ByRow().Sum(r => r.Units));

    /// <summary>
    /// What short rows leave to a later row, in the order of work: there the picture jumps, though every stitch keeps its colour.
    /// </summary>
    public ImmutableArray<SkippedStrip> Strips { get; }

    /// <summary>Whether every stitch has the colour that it has in the steady panel.</summary>
    public bool KeepsMotif => Breaks.IsEmpty;

    /// <summary>From the first part's first row to the highest row of any part.</summary>
    public int Rows => Parts.Max(p => p.FirstRow + p.Rows);

    /// <summary>Units of the shortest row.</summary>
    public int ShortestRow => Parts.Min(p => p.Outline.Runs.Min(r => r.Units));

    /// <summary>Units of the longest row.</summary>
    public int WidestRow => Parts.Max(p => p.Outline.Runs.Max(r => r.Units));

    /// <summary>The rightmost column of all rows.</summary>
    public int FirstColumn { get; }

    /// <summary>The leftmost column of all rows.</summary>
    public int LastColumn { get; }

    /// <summary>
    /// Pooling units of variegated yarn in stitches, turns and slip stitches of all parts, without foundation, ends and what is cut away at
    /// restarts.
    /// </summary>
    public double Yarn => ColourRing.ToUnits(Parts.Sum(p => p.Yarn));

    /// <summary>Units that are worked over chains of companion yarn, without the foundation chain.</summary>
    public int CompanionChains => Parts.Sum(p => p.CompanionChains);

    /// <summary>Works a piece.</summary>
    /// <param name="parts">1 to 64, in the order of work; the first has the panel's columns in its first row.</param>
    /// <exception cref="ArgumentException">Parts that do not stand on each other, lie over each other, or grow where a row
    /// begins.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A row, column or start outside its range.</exception>
    /// <param name="bias">See <see cref="Bias"/>.</param>
    public static ShapedPiece Work(SteadyPanel panel, IReadOnlyList<PartOutline> parts, int bias = 0)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(parts);
        Guard.InRange(parts.Count, 1, MostParts, "parts", nameof(parts));
        var worked = new List<ShapedPart>();
        foreach (var asked in parts)
        {
            Check(panel, worked, asked);
            worked.Add(new ShapedPart(panel, worked.Count, asked, asked.Below is { } below ? worked[below] : null));
        }
        return new ShapedPiece(panel, [.. worked], bias);
    }

    /// <summary>A piece of one part.</summary>
    /// <inheritdoc cref="Work(SteadyPanel, IReadOnlyList{PartOutline}, int)"/>
    public static ShapedPiece Work(SteadyPanel panel, Outline outline) => Work(panel, [new PartOutline(0, outline)]);

    /// <summary>The section shown at a place of the piece; null beyond its outline.</summary>
    public int? SectionAt(int row, int column) =>
        Parts.FirstOrDefault(p => p.Outline.Has(row - p.FirstRow, column)) is { } part ? part.Fabric[row - part.FirstRow, column] : null;

    private static void Check(SteadyPanel panel, List<ShapedPart> worked, PartOutline asked)
    {
        var first = asked.Outline.At(0);
        Guard.InRange(asked.FirstRow + asked.Outline.Rows, 1, FabricPath.MostRows, "rows", nameof(asked));
        if (worked.Count == 0)
        {
            if (asked is not { FirstRow: 0, Below: null, Continues: false } || first.First != 0 || first.Units != panel.Units)
                throw new ArgumentException($"The first part begins the piece with the panel's {panel.Units} units.", nameof(asked));
            return;
        }
        if (asked.Below is not { } index || index < 0 || index >= worked.Count)
            throw new ArgumentException("A further part stands on an earlier one.", nameof(asked));
        var below = worked[index];
        var ground = below.Outline.At(below.Rows - 1);
        if (asked.FirstRow != below.FirstRow + below.Rows)
            throw new ArgumentException(
                $"A part on part {index} begins with row {below.FirstRow + below.Rows}, not {asked.FirstRow}.", nameof(asked));
        var from = asked.From ?? panel.BeginningOf(asked.FirstRow);
        if (asked.Continues && (index != worked.Count - 1 || from != below.BeginningOf(asked.FirstRow) || asked.Start is not null))
            throw new ArgumentException(
                "A part goes on without a cut only from the part worked just before, where that ended.", nameof(asked));
        var begins = from == RowEdge.Left ? first.Last : first.First;
        if (begins < ground.First || begins > ground.Last)
            throw new ArgumentException($"A part that begins at column {begins} has no stitch below.", nameof(asked));
        foreach (var other in worked)
        {
            if (Overlap(other, asked))
                throw new ArgumentException($"It lies over part {other.Index}.", nameof(asked));
        }
    }

    private static bool Overlap(ShapedPart one, PartOutline other)
    {
        var (from, to) = (Math.Max(one.FirstRow, other.FirstRow), Math.Min(one.FirstRow + one.Rows, other.FirstRow + other.Outline.Rows));
        return from < to && one.Outline.ByRow().Skip(from - one.FirstRow)
            .Zip(other.Outline.ByRow().Skip(from - other.FirstRow)).Take(to - from)
            .Any(rows => rows.First.First <= rows.Second.Last && rows.Second.First <= rows.First.Last);
    }
}
