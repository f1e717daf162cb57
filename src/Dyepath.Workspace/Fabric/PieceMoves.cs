using System.Globalization;
using System.Text.Json.Nodes;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Fabric;

/// <summary>Moves a piece along the yarn and gives it other rows than the planner chose: both are kept in the document.</summary>
public static class PieceMoves
{
    /// <summary>Where the document says where a piece begins.</summary>
    public static string StartPlace(PieceId piece) => $"garment.starts.{PlaceNames.Of(piece)}";

    /// <summary>The designer has said where the piece begins.</summary>
    public static bool IsStartChosen(ProjectDocument document, PieceId piece) => document.Has(StartPlace(piece));

    /// <summary>The start as it is planned, moved along the yarn; round the sequence's end it begins anew.</summary>
    public static void MoveStart(ProjectDocument document, Plan plan, PiecePlan piece, int later)
    {
        var units = (int)Math.Max(1, plan.Sequence.Ring.Total / ColourRing.Unit);
        document.Set(StartPlace(piece.Id), JsonValue.Create((((int)piece.Start + later) % units + units) % units));
    }

    /// <summary>Leaves it to the planner again where the piece begins.</summary>
    public static void BestStart(ProjectDocument document, PieceId piece)
    {
        document.Set(StartPlace(piece), null);
        if (document.Node("garment.starts") is JsonObject { Count: 0 })
            document.Set("garment.starts", null);
    }

    /// <summary>Pieces of one group share their rows.</summary>
    public static string RowsName(Plan plan, PieceId piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return FixedCounts.Rows(plan.Construction.GroupOf(piece));
    }

    /// <summary>Place of the override, or null where rows are the planner's own.</summary>
    public static string? RowsPlace(ProjectDocument document, Plan plan, string size, PieceId piece)
    {
        for (var i = 0; i < document.Count("sizes.overrides"); i++)
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"sizes.overrides[{i}]");
            if (document.Typed($"{place}.size") == size && document.Typed($"{place}.what") == RowsName(plan, piece))
                return place;
        }
        return null;
    }

    /// <summary>A fixed count needs a fixed direction, so the one that is planned is written down with it.</summary>
    public static void SetRows(ProjectDocument document, Plan plan, SizePlan size, PieceId piece, int rows)
    {
        if (plan.Project.Garment.Direction is null)
            document.Set("garment.direction", JsonValue.Create(plan.Direction == Direction.Up ? "up" : "sideways"));
        if (RowsPlace(document, plan, size.Name, piece) is { } place)
            document.Set($"{place}.count", JsonValue.Create(rows));
        else
        {
            document.Add("sizes.overrides", new JsonObject
            {
                ["size"] = size.Name,
                ["what"] = RowsName(plan, piece),
                ["count"] = rows,
                ["reason"] = "the motif at the seams",
            });
        }
    }

    /// <summary>Leaves the rows of the piece's group in this size to the planner again.</summary>
    public static void BestRows(ProjectDocument document, Plan plan, string size, PieceId piece)
    {
        if (RowsPlace(document, plan, size, piece) is { } place)
            document.Set(place, null);
        if (document.Has("sizes.overrides") && document.Count("sizes.overrides") == 0)
            document.Set("sizes.overrides", null);
    }
}
