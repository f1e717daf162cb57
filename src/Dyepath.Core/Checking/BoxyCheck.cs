using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Checking;

/// <summary>Targets from the body and finished measures from the pieces of a boxy top.</summary>
internal static class BoxyCheck
{
    private static readonly Length Hair = Length.FromMillimetres(0.1);

    public static void Measures(Plan plan, BoxyTop top, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        Body(plan, size, notes);
        // Numbers that the designer fixed move the targets; the rules are then hers.
        if (plan.Project.Sizes is { Locked.IsEmpty: true, Overrides.IsEmpty: true })
            Targets(plan, top, size, notes);
        Finished(plan, size, fabric, notes);
    }

    private static void Body(Plan plan, SizePlan size, Disagreements notes)
    {
        var selection = plan.Project.Sizes;
        if (!selection.Own.IsEmpty || selection.Chart is null || !SizeCharts.TryFind(selection.Chart, out var chart)
            || !chart.TryFind(size.Name, out var row))
            return;
        foreach (var measurement in row.Measurements)
        {
            var middle = (measurement.InCentimetres.Minimum + measurement.InCentimetres.Maximum) / 2;
            notes.Same($"body.{measurement.Measure}", size.Body.GetValueOrDefault(BodyMeasures.Key(measurement.Measure)), middle, Hair);
        }
    }

    private static void Targets(Plan plan, BoxyTop top, SizePlan size, Disagreements notes)
    {
        var ease = top.BustEase.Own ?? PublishedEase.All
            .Where(r => string.Equals(r.Revision.ToString(), top.BustEase.Revision, StringComparison.OrdinalIgnoreCase)
                && r.Name.StartsWith(top.BustEase.Category!, StringComparison.Ordinal))
            .Select(r => r.Typical).First();
        var width = size.Body["bust"] + ease;
        if (top.BelowWaist >= top.HipBelowWaist && size.Body["hip"] + top.HipEase > width)
            width = size.Body["hip"] + top.HipEase;
        notes.Same("target.width", size.Target[GarmentMeasure.Width], width, Hair);
        notes.Same("target.length", size.Target[GarmentMeasure.Length], size.Body["backWaistLength"] + top.BelowWaist, Hair);
        var half = (size.Body["upperArm"] + top.UpperArmEase) / 2;
        notes.Same("target.armholeDepth", size.Target[GarmentMeasure.ArmholeDepth],
            half > size.Body["armholeDepth"] ? half : size.Body["armholeDepth"], Hair);
        var names = plan.Sizes.Select(s => s.Name).ToList();
        var baseAt = plan.Project.Sizes.Base is { } named ? names.IndexOf(named) : names.Count / 2;
        notes.Same("target.neckWidth", size.Target[GarmentMeasure.NeckWidth],
            top.NeckWidth + top.NeckStep * (names.IndexOf(size.Name) - baseAt), Hair);
    }

    private static void Finished(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        var up = plan.Direction == Direction.Up;
        var (front, back) = (size[PieceId.Front], size[PieceId.Back]);
        // Of a sewn edge along row ends, stitches are hidden; of one along stitches, rows.
        var (side, shoulder) = up
            ? (fabric.StitchWidth * fabric.Seams.HiddenStitches, fabric.RowHeight * fabric.Seams.HiddenRows)
            : (fabric.RowHeight * fabric.Seams.HiddenRows, fabric.StitchWidth * fabric.Seams.HiddenStitches);
        var width = front.Width + back.Width - 4 * side;
        if (front.SideBandRows > 0)
            width += 4 * fabric.EdgingRow * (front.SideBandRows - fabric.Seams.HiddenRows);
        notes.Same("finished.width", size.Finished[GarmentMeasure.Width], width, Hair);
        var hem = PlainFabric.EdgingDepth(plan, EdgingPlace.Hem, fabric.EdgingRow);
        notes.Same("finished.length", size.Finished[GarmentMeasure.Length], front.Height - shoulder + hem, Hair);
        var neck = front.Opening(OpeningId.Neck).Length;
        notes.Same(
            "finished.neckWidth", size.Finished[GarmentMeasure.NeckWidth],
            (up ? fabric.StitchWidth : fabric.RowHeight) * neck - 2 * PlainFabric.EdgingDepth(plan, EdgingPlace.Neck, fabric.EdgingRow),
            Hair);
        var opening = front.Opening(OpeningId.Armhole);
        var armhole = opening.Length;
        notes.Same("pieces.front.marks, the armhole's end", opening.Last, up ? front.Rows : front.Stitches);
        if (up && armhole % 2 != 0)
            notes.Say("pieces.front.marks", $"The armhole has {armhole} rows; it should have an even number.");
        notes.Same(
            "finished.armholeDepth", size.Finished[GarmentMeasure.ArmholeDepth],
            (up ? fabric.RowHeight : fabric.StitchWidth) * armhole - shoulder - PlainFabric.EdgingDepth(
                plan, EdgingPlace.Armholes, fabric.EdgingRow), Hair);
        if (size.Find(PieceId.Sleeve) is { } sleeve)
        {
            var cuff = PlainFabric.EdgingDepth(plan, EdgingPlace.Cuffs, fabric.EdgingRow);
            notes.Same("finished.sleeveWidth", size.Finished[GarmentMeasure.SleeveWidth], sleeve.Width - 2 * side, Hair);
            notes.Same("finished.sleeveLength", size.Finished[GarmentMeasure.SleeveLength], sleeve.Height - shoulder + cuff, Hair);
        }
    }
}

/// <summary>Finished measures of a cowl or wrap from its piece.</summary>
internal static class RectangleCheck
{
    private static readonly Length Hair = Length.FromMillimetres(0.1);

    public static void Measures(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        var piece = size.Pieces[0];
        if (plan.Project.Garment.Shape is Wrap)
        {
            var border = 2 * PlainFabric.EdgingDepth(plan, EdgingPlace.Border, fabric.EdgingRow);
            notes.Same("finished.width", size.Finished[GarmentMeasure.Width], piece.Width + border, Hair);
            notes.Same("finished.length", size.Finished[GarmentMeasure.Length], piece.Height + border, Hair);
            return;
        }
        var hidden = piece.Working != Fabrics.Working.Turned ? Length.Zero
            : plan.Direction == Direction.Up
                ? fabric.StitchWidth * (2 * fabric.Seams.HiddenStitches)
                : fabric.RowHeight * (2 * fabric.Seams.HiddenRows);
        notes.Same("finished.circumference", size.Finished[GarmentMeasure.Circumference], piece.Width - hidden, Hair);
        notes.Same(
            "finished.height", size.Finished[GarmentMeasure.Height],
            piece.Height + 2 * PlainFabric.EdgingDepth(plan, EdgingPlace.Brims, fabric.EdgingRow), Hair);
    }
}
