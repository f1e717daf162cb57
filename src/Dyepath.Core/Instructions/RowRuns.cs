using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>Neighbouring units of one colour in a row.</summary>
/// <param name="Section">Index of the section that it shows, from 0.</param>
/// <param name="Units">1 or more.</param>
public readonly record struct ColourRun(int Section, int Units);

/// <summary>Rows as their maker meets them: run by run in the order of work.</summary>
public static class RowRuns
{
    /// <summary>The runs of one row, from 0, in the order of work.</summary>
    public static ImmutableArray<ColourRun> Of(Fabric fabric, int row)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        var cells = fabric.Row(row).ToArray();
        if (fabric.Path.RunsBackwards(row))
            Array.Reverse(cells);
        var runs = ImmutableArray.CreateBuilder<ColourRun>();
        foreach (var cell in cells)
        {
            if (runs.Count > 0 && fabric.Ring.Colours[runs[^1].Section] == fabric.Ring.Colours[cell])
                runs[^1] = runs[^1] with { Units = runs[^1].Units + 1 };
            else
                runs.Add(new ColourRun(cell, 1));
        }
        return runs.ToImmutable();
    }

    /// <summary>Fewer rows than this are hardly a picture: shorter repeats are taken several at a time.</summary>
    private const int LeastRows = 8;

    /// <summary>
    /// After how many rows the same rows come again, in linen stitch standing over the same columns; null where they do not within the
    /// piece, or change along it.
    /// </summary>
    public static int? Repeat(Fabric fabric)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        return Repeat(fabric.Path, fabric.Ring);
    }

    /// <inheritdoc cref="Repeat(Fabric)"/>
    public static int? Repeat(FabricPath path, ColourRing ring)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(ring);
        if (path.Advance is not { } advance)
            return null;
        for (var steps = 1; steps * advance.Rows <= path.Rows; steps++)
        {
            var rows = steps * advance.Rows;
            if (rows >= LeastRows && rows % path.StitchesPerUnit == 0 && steps * advance.Micro % ring.Total == 0)
                return rows;
        }
        return null;
    }
}
