using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;

namespace Dyepath.Core.Planning;

/// <summary>What a person sees in a piece of a plan.</summary>
public static class PieceMotif
{
    /// <exception cref="ArgumentException">The piece is plain.</exception>
    public static MotifReading Read(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        if (!piece.Pooled)
            throw new ArgumentException($"The {piece.Name} is worked in one colour.", nameof(piece));
        return ReaderOf(plan, piece).Read(PieceFabric.Of(plan, piece).Path);
    }

    /// <summary>
    /// What is seen in a piece, the most of it first, each with its share of the stitches: of a rectangle its motif, of a shaped piece what
    /// rows of each width make as far as they go on.
    /// </summary>
    /// <exception cref="ArgumentException">The piece is plain.</exception>
    public static ImmutableArray<(MotifKind Kind, double Share)> Seen(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (!piece.Pooled)
            throw new ArgumentException($"The {piece.Name} is worked in one colour.", nameof(piece));
        if (piece.Shape is not { Bias: 0 } shape)
            return [(piece.Motif, 1)];
        var widths = shape.Parts.SelectMany(p => p.Outline.Runs.Select(r => r.Units)).GroupBy(u => u)
            .Select(g => (Units: g.Key, All: (double)g.Key * g.Count())).ToArray();
        var (reader, all) = (new Lazy<MotifReader>(() => ReaderOf(plan, piece)), widths.Sum(w => w.All));
        return
        [
            .. widths.GroupBy(w => Of(plan, piece, w.Units, reader), w => w.All).Select(g => (Kind: g.Key, Share: g.Sum() / all))
                .OrderByDescending(s => s.Share).ThenBy(s => s.Kind),
        ];
    }

    /// <summary>What a person sees in a shaped piece where its rows are so wide, as far as that goes on.</summary>
    internal static MotifKind Of(Plan plan, PiecePlan shaped, int units, Lazy<MotifReader> reader)
    {
        if (Math.Abs(shaped.Shape!.Panel.LeanOf(units).UnitsPerRow - shaped.Lean) < 1e-6)
            return shaped.Motif;
        var fabric = plan.Project.Fabric;
        return reader.Value.Read(FabricPath.Constant(
            shaped.Working, units * fabric.Stitch.StitchesPerUnit, shaped.Rows, fabric.Path(shaped.TurnCost, shaped.Start))).Kind;
    }

    /// <summary>For pieces worked as this one.</summary>
    internal static MotifReader ReaderOf(Plan plan, PiecePlan piece)
    {
        var shared = SharedFabric.Of(plan);
        return MotifReader.Create(
            plan.Sequence.Ring, piece.Working, shared.GaugeFor(plan.Direction), shared.Stitch.StitchesPerUnit, shared.Palette);
    }
}
