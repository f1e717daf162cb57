using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Motifs;

/// <summary>A stretch of yarn per stitch over which a count draws one motif.</summary>
/// <param name="From">Change of the yarn per stitch at which it begins, relative; below zero: tighter.</param>
/// <param name="To">Where it ends; above <paramref name="From"/>.</param>
/// <param name="Kind">What a person sees.</param>
/// <param name="Clarity">In its middle, over the best that the ring reaches, 0 to 1.</param>
public readonly record struct MapStretch(double From, double To, MotifKind Kind, double Clarity)
{
    /// <summary>Whether a change of the yarn per stitch lies in it.</summary>
    public bool Has(double change) => change >= From && change <= To;
}

/// <summary>What a count draws, from the tightest yarn per stitch of the map to the loosest.</summary>
/// <param name="Stitches">N.</param>
/// <param name="Stretches">In order, without gaps.</param>
public sealed record MapColumn(int Stitches, ImmutableArray<MapStretch> Stretches)
{
    /// <summary>The stretch in which a change of the yarn per stitch lies; the nearest one outside of the map.</summary>
    public MapStretch At(double change)
    {
        foreach (var stretch in Stretches)
        {
            if (change <= stretch.To)
                return stretch;
        }
        return Stretches[^1];
    }
}

/// <summary>
/// What a yarn draws at every stitch count and every yarn per stitch within reach: the islands of a motif are the counts that forgive.
/// In closed form, from the bounds between motifs (docs/mathematics.md, forgiveness).
/// </summary>
public sealed class YarnMap
{
    /// <summary>The farthest change of yarn per stitch that a map may reach, relative, both ways.</summary>
    public const double Farthest = 0.25;

    /// <summary>Counts that a map has at most.</summary>
    public const int MostCounts = 400;

    /// <summary>Stretches thinner than this are of nobody's hands, relative yarn per stitch; they join the one before.</summary>
    private const double Thinnest = 1e-6;

    private YarnMap(double reach, ImmutableArray<MapColumn> columns) => (Reach, Columns) = (reach, columns);

    /// <summary>How far it goes from the plan's yarn per stitch, both ways, relative.</summary>
    public double Reach { get; }

    /// <summary>By count, one stitch apart.</summary>
    public ImmutableArray<MapColumn> Columns { get; }

    /// <param name="options">Counts, way of working, gauge, rows and turn; the motif is of no matter.</param>
    /// <param name="reach">Over 0, at most <see cref="Farthest"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its range, or more than <see cref="MostCounts"/> counts.</exception>
    public static YarnMap Of(ColourRing ring, CountOptions options, double reach, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(options);
        Guard.InRange(options.From, 1, FabricPath.MostStitches, "stitches", nameof(options));
        Guard.InRange(options.To, options.From, Math.Min(FabricPath.MostStitches, options.From + MostCounts - 1), "stitches", nameof(options));
        Guard.InRange(reach, Thinnest, Farthest, "of the yarn per stitch");
        var reader = MotifReader.Create(
            ring, options.Working, options.Gauge, options.Path.StitchesPerUnit, options.Palette, options.Thresholds);
        var counts = Enumerable.Range(options.From, options.To - options.From + 1);
        return new YarnMap(reach, [.. counts.Select(n => Column(reader, options, n, reach, effort))]);
    }

    private static MapColumn Column(MotifReader reader, CountOptions options, int stitches, double reach, Effort? effort)
    {
        effort?.Spend(reader.StepsOfReading);
        var path = FabricPath.Constant(options.Working, stitches, 2, options.Path);
        var piece = Piece.Of(path, path.Advance!.Value, options.Rows);
        double[] borders = [1 - reach, .. reader.Borders(piece, 1 - reach, 1 + reach).Order(), 1 + reach];
        var stretches = ImmutableArray.CreateBuilder<MapStretch>();
        var from = borders[0];
        for (var i = 1; i < borders.Length; i++)
        {
            if (borders[i] - from < Thinnest && i < borders.Length - 1)
                continue;
            var middle = (from + borders[i]) / 2;
            var kind = reader.KindAt(piece, middle);
            if (stretches.Count > 0 && stretches[^1].Kind == kind)
            {
                from = 1 + stretches[^1].From;
                stretches.RemoveAt(stretches.Count - 1);
                middle = (from + borders[i]) / 2;
            }
            stretches.Add(new MapStretch(from - 1, borders[i] - 1, kind, reader.ClarityAt(piece, middle)));
            from = borders[i];
        }
        return new MapColumn(stitches, stretches.ToImmutable());
    }
}
