using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Checking;

/// <summary>Follows the written pick-up as a maker does, and holds it against the edges of the pieces.</summary>
internal static partial class EdgingCheck
{
    public static void Edging(Plan plan, SizePlan size, EdgingPlan edging, PlainFabric fabric, Disagreements notes)
    {
        if (!EdgingLibrary.TryFind(edging.Edging, out var made))
        {
            notes.Say("edging", $"There is no edging {edging.Edging}.");
            return;
        }
        var (stitches, places) = Follow(edging.Rule);
        notes.Same("pickUp", edging.PickUp, stitches);
        notes.Same("pickUp, over whole repeats", edging.PickUp % made.Multiple, 0);
        notes.Same("rule, places on the edge", places, Places(plan, size, edging.Where, fabric));
        notes.Same("depth", edging.Depth, PlainFabric.EdgingDepth(plan, edging.Where, fabric.EdgingRow), Length.FromMillimetres(0.1));
    }

    /// <summary>Stitches picked up, and places passed, by one who does what the sentence says.</summary>
    internal static (int Stitches, int Places) Follow(string rule)
    {
        var (stitches, places) = (0, 0);
        foreach (var part in rule[..rule.LastIndexOf(':')].Split("; "))
        {
            // Stretches that share a rule are named together: "front and back".
            var edges = part.Contains(':', StringComparison.Ordinal)
                ? part[..part.IndexOf(':', StringComparison.Ordinal)].Split(" and ").Length
                : 1;
            if (EachOf().Match(part) is { Success: true } each)
                (stitches, places) = (stitches + edges * Number(each, 1) * Number(each, 2), places + edges * Number(each, 2));
            if (Groups().Match(part) is { Success: true } groups)
                (stitches, places) = (
                    stitches + edges * Number(groups, 1) * Number(groups, 3), places + edges * Number(groups, 2) * Number(groups, 3));
            if (Rest().Match(part) is { Success: true } rest)
                (stitches, places) = (stitches + edges * Number(rest, 1), places + edges * Number(rest, 2));
            if (Corners().Match(part) is { Success: true } corners)
                stitches += Sign(corners) * Number(corners, 1) * Number(corners, 3);
            else if (Extra().Match(part) is { Success: true } extra)
                stitches += Sign(extra) * Number(extra, 1);
        }
        return (stitches, places);
    }

    private static int Places(Plan plan, SizePlan size, EdgingPlace where, PlainFabric fabric)
    {
        var up = plan.Direction == Direction.Up;
        int Across(PiecePlan piece) => up ? piece.Stitches - 2 * fabric.Seams.HiddenStitches : piece.Rows - 2 * fabric.Seams.HiddenRows;
        var first = size.Pieces[0];
        switch (where)
        {
            case EdgingPlace.Hem:
                var bands = first.SideBandRows == 0 ? 0 : 4 * (first.SideBandRows - fabric.Seams.HiddenRows);
                return Across(size[PieceId.Front]) + Across(size[PieceId.Back]) + bands;
            case EdgingPlace.Neck:
                return 2 * first.Opening(OpeningId.Neck).Length;
            case EdgingPlace.Armholes:
                var depth = first.Opening(OpeningId.Armhole).Length;
                return 2 * (depth - (up ? fabric.Seams.HiddenRows : fabric.Seams.HiddenStitches));
            case EdgingPlace.Cuffs:
                return Across(size[PieceId.Sleeve]);
            case EdgingPlace.Border:
                return 2 * (first.Stitches + first.Rows);
            default:
                return first.Working == Fabrics.Working.Turned ? Across(first) : first.Stitches;
        }
    }

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    private static int Sign(Match match) => match.Groups[2].Value == "extra" ? 1 : -1;

    [GeneratedRegex(@"pick up (\d+) in each of the (\d+)")]
    private static partial Regex EachOf();

    [GeneratedRegex(@"pick up (\d+) in every (\d+) (?:row ends|stitches) (\d+) times")]
    private static partial Regex Groups();

    [GeneratedRegex(@"then (\d+) in the last (\d+)")]
    private static partial Regex Rest();

    [GeneratedRegex(@"^(\d+) (extra|fewer) at each of the (\d+) corners")]
    private static partial Regex Corners();

    [GeneratedRegex(@"^(\d+) (extra|fewer)")]
    private static partial Regex Extra();
}
