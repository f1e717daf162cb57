using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>The panels of one size laid out as worn: which edge meets which (docs/seams.md has the drawing).</summary>
/// <param name="Neck">Stitches (rows, sideways) of the slit.</param>
/// <param name="Armhole">Rows (stitches, sideways) of the armhole.</param>
/// <param name="BackTurned">The back is sewn wrong side out.</param>
internal sealed record BoxyLayout(
    Direction Direction, FabricPath Front, FabricPath Back, int Rows, int Neck, int Armhole, bool BackTurned, SeamChoice Seams,
    int StitchesPerUnit)
{
    /// <summary>Units that a seam along row ends hides.</summary>
    private long Hidden => Seams.HiddenStitches * (ColourRing.Unit / StitchesPerUnit);

    private int HiddenUnits => Seams.HiddenStitches / StitchesPerUnit;

    private int LastRow => Rows - 1 - Seams.HiddenRows;

    /// <summary>Jumps from front to back along a seam, by the order left side, right side, left shoulder, right shoulder.</summary>
    public ImmutableArray<SeamMeter> Meters(long period)
    {
        SeamMeter left = new(period), right = new(period), leftShoulder = new(period), rightShoulder = new(period);
        if (Direction == Direction.Up)
        {
            var side = Rows - Armhole;
            Add(left, SeamEdge.Right(Front, 0, side, Hidden),
                BackTurned ? SeamEdge.Right(Back, 0, side, Hidden) : SeamEdge.Left(Back, 0, side, Hidden));
            Add(right, SeamEdge.Left(Front, 0, side, Hidden),
                BackTurned ? SeamEdge.Left(Back, 0, side, Hidden) : SeamEdge.Right(Back, 0, side, Hidden));
            var front = SeamEdge.Top(Front, LastRow, 0, Units(Front));
            var back = SeamEdge.Top(Back, LastRow, 0, Units(Back));
            var frontShoulder = ShoulderUnits(Front);
            var backShoulder = ShoulderUnits(Back);
            // Rightmost first: the wearer's left shoulder of the front begins at its right-hand edge.
            var turned = BackTurned ? back : back.Reversed();
            Add(leftShoulder, front.Slice(HiddenUnits, frontShoulder), turned.Slice(HiddenUnits, backShoulder));
            Add(rightShoulder, front.Reversed().Slice(HiddenUnits, frontShoulder), turned.Reversed().Slice(HiddenUnits, backShoulder));
        }
        else
        {
            var side = (int)((Front.RowYarn(0) - Armhole * (ColourRing.Unit / StitchesPerUnit)) / ColourRing.Unit);
            var (first, last) = (Seams.HiddenRows, LastRow);
            Add(left, SeamEdge.Top(Front, last, 0, side),
                BackTurned ? SeamEdge.Top(Back, last, 0, side) : SeamEdge.Bottom(Back, first, 0, side));
            Add(right, SeamEdge.Bottom(Front, first, 0, side),
                BackTurned ? SeamEdge.Bottom(Back, first, 0, side) : SeamEdge.Top(Back, last, 0, side));
            var rows = (Rows - Neck) / 2 - Seams.HiddenRows;
            var frontFirst = SeamEdge.Left(Front, first, rows, Hidden);
            var frontLast = SeamEdge.Left(Front, Rows - Seams.HiddenRows - rows, rows, Hidden);
            var backFirst = SeamEdge.Left(Back, first, rows, Hidden);
            var backLast = SeamEdge.Left(Back, Rows - Seams.HiddenRows - rows, rows, Hidden);
            Add(leftShoulder, frontLast, BackTurned ? backLast : backFirst.Reversed());
            Add(rightShoulder, frontFirst, BackTurned ? backFirst : backLast.Reversed());
        }
        return [left, right, leftShoulder, rightShoulder];
    }

    /// <summary>Jumps from body to sleeve round one armhole: up the one panel's edge to the shoulder and down the other's.</summary>
    public SeamMeter ArmholeMeter(long period, FabricPath sleeve, int sleeveStitches, int sleeveRows, bool left)
    {
        var meter = new SeamMeter(period);
        ImmutableArray<SeamStitch> front, back, sleeveEdge;
        if (Direction == Direction.Up)
        {
            var visible = Armhole - Seams.HiddenRows;
            var from = Rows - Armhole;
            front = left ? SeamEdge.Right(Front, from, visible, Hidden) : SeamEdge.Left(Front, from, visible, Hidden);
            back = left != BackTurned ? SeamEdge.Left(Back, from, visible, Hidden) : SeamEdge.Right(Back, from, visible, Hidden);
            sleeveEdge = SeamEdge.Top(
                sleeve, sleeveRows - 1 - Seams.HiddenRows, HiddenUnits, sleeveStitches / StitchesPerUnit - 2 * HiddenUnits);
        }
        else
        {
            var units = Armhole / StitchesPerUnit;
            var first = Units(Front) - units;
            var visible = units - HiddenUnits;
            front = left ? SeamEdge.Top(Front, LastRow, first, visible) : SeamEdge.Bottom(Front, Seams.HiddenRows, first, visible);
            back = left == BackTurned
                ? SeamEdge.Top(Back, LastRow, first, visible)
                : SeamEdge.Bottom(Back, Seams.HiddenRows, first, visible);
            sleeveEdge = SeamEdge.Left(sleeve, Seams.HiddenRows, sleeveRows - 2 * Seams.HiddenRows, Hidden).Reversed();
        }
        // Outside out and cuff down, a sleeve's right-hand side lies at the underarm of the back on the left arm, of the front on the
        // right one: column 0, or worked sideways the last row.
        var round = left ? back.AddRange(front.Reversed()) : front.AddRange(back.Reversed());
        meter.AddSeam(round, sleeveEdge, Seams.Extension);
        return meter;
    }

    /// <summary>A sleeve's own seam along the underarm.</summary>
    public SeamMeter UnderarmMeter(long period, FabricPath sleeve, int sleeveStitches, int sleeveRows)
    {
        var meter = new SeamMeter(period);
        if (Direction == Direction.Up)
            meter.AddSeam(SeamEdge.Right(sleeve, 0, sleeveRows, Hidden), SeamEdge.Left(sleeve, 0, sleeveRows, Hidden), Seams.Extension);
        else
        {
            var units = sleeveStitches / StitchesPerUnit;
            meter.AddSeam(
                SeamEdge.Top(sleeve, sleeveRows - 1 - Seams.HiddenRows, 0, units), SeamEdge.Bottom(sleeve, Seams.HiddenRows, 0, units),
                Seams.Extension);
        }
        return meter;
    }

    private void Add(SeamMeter meter, ImmutableArray<SeamStitch> front, ImmutableArray<SeamStitch> back) =>
        meter.AddSeam(front, back, Seams.Extension);

    private int Units(FabricPath path) => (int)(path.RowYarn(LastRow) / ColourRing.Unit);

    private int ShoulderUnits(FabricPath path) => Math.Max(0, (Units(path) - Neck / StitchesPerUnit) / 2 - HiddenUnits);
}
