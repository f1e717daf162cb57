using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>What the check reads from the document for itself.</summary>
internal sealed class PlainFabric
{
    public PlainFabric(Plan plan)
    {
        var fabric = plan.Project.Fabric;
        var swatch = fabric.Swatch;
        var gauge = (plan.Direction == Direction.Up ? swatch.Hung : null) ?? swatch.Blocked ?? swatch.Worked;
        var whole = swatch.Hung ?? swatch.Blocked ?? swatch.Worked;
        StitchWidth = gauge.Over / gauge.Stitches;
        RowHeight = gauge.Over / gauge.Rows;
        TriangleStitch = whole.Over / whole.Stitches;
        EdgingRow = fabric.Stitch.Id == "sc" ? whole.Over / whole.Rows : whole.Over / whole.Stitches * 0.9;
        (EdgingHeight, EdgingWidth) = fabric.Edging is { } own
            ? (own.Over / own.Rows, own.Over / own.Stitches)
            : (EdgingRow, StitchWidth * 0.85);
        AlongStitches = fabric.Edging is null ? 1 : StitchWidth / EdgingWidth;
        var band = fabric.Edging is { } sample ? sample.Over / sample.Stitches : whole.Over / whole.Stitches * 0.85;
        BandRatios = (fabric.Edging is null ? 1 : whole.Over / whole.Stitches / band, whole.Over / whole.Rows / band);
        Stitch = fabric.Stitch;
        PerUnit = fabric.Stitch.StitchesPerUnit;
        Unit = plan.Sequence.YarnPerUnit;
        Period = PlainPeriod.Of(plan.Sequence.Ring);
        Seams = plan.Project.Garment.Seams;
        TurningChainCounts = fabric.ChainCountsAsStitch;
    }

    /// <summary>Along the slanted edge of a triangle once its other two are sewn.</summary>
    public Length Slope(PiecePlan piece)
    {
        var wide = (TriangleStitch * (piece.Stitches - Seams.HiddenStitches)).Centimetres;
        var tall = (EdgingRow * (piece.Rows - Seams.HiddenRows)).Centimetres;
        return Length.FromCentimetres(Math.Sqrt(wide * wide + tall * tall));
    }

    /// <summary>Width of a stitch of what is worked up in single crochet whatever the garment is.</summary>
    public Length TriangleStitch { get; }

    public FabricStitch Stitch { get; }

    public int PerUnit { get; }

    public bool TurningChainCounts { get; }

    public Length StitchWidth { get; }

    public Length RowHeight { get; }

    /// <summary>Height of a side band's single crochet row.</summary>
    public Length EdgingRow { get; }

    /// <summary>Height of an edging's single crochet row.</summary>
    public Length EdgingHeight { get; }

    /// <summary>Width of an edging's single crochet.</summary>
    public Length EdgingWidth { get; }

    /// <summary>Edging stitches that a stitch of the edge takes.</summary>
    public double AlongStitches { get; }

    /// <summary>Stitches of a side band that lie flat along a stitch and along a row end of a panel.</summary>
    public (double Stitch, double RowEnd) BandRatios { get; }

    /// <summary>Yarn of a pooling unit: the plan's, which is held to <see cref="PlainYarn"/>.</summary>
    public Length Unit { get; }

    /// <summary>In units; missing for one colour.</summary>
    public double? Period { get; }

    public SeamChoice Seams { get; }

    /// <summary>Of the rounds that the size has; a rule says elsewhere which it may have.</summary>
    public static Length EdgingDepth(Plan plan, SizePlan size, EdgingPlace place, Length row)
    {
        var depth = Length.Zero;
        if (plan.Project.Garment.Edgings.FirstOrDefault(e => e.Where == place) is { } choice
            && EdgingLibrary.TryFind(choice.Edging, out var edging))
        {
            var rounds = size.Edgings.FirstOrDefault(e => e.Where == place)?.Rounds ?? 0;
            for (var round = 1; round <= rounds; round++)
                depth += row * (round == rounds ? edging.LastDepth : edging.RoundDepth);
        }
        return depth;
    }
}
