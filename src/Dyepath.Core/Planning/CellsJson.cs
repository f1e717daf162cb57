using System.Text.Json;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>
/// The fabric of a size's pooled pieces, cell by cell. Rows and columns count from 0; columns from the right-hand edge of the piece's first
/// row, to the left. A cell is a pooling unit: a stitch, or in linen stitch a pair.
/// </summary>
internal static class CellsJson
{
    /// <summary>Writes <c>"cells"</c>, one entry for each pooled part of the size, into an open object.</summary>
    public static void Write(Utf8JsonWriter json, Plan plan, SizePlan size)
    {
        json.WriteStartArray("cells");
        foreach (var piece in size.Pieces.Where(p => p.Pooled))
        {
            if (piece.Shape is not { } shape)
            {
                Part(json, plan, piece, PieceFabric.Of(plan, piece), "whole", 0);
                continue;
            }
            foreach (var part in shape.Parts)
                Part(json, plan, piece, part.Fabric, PartNames.Of(part), part.FirstRow);
        }
        json.WriteEndArray();
    }

    /// <param name="fromRow">The piece's row that is the fabric's first.</param>
    private static void Part(Utf8JsonWriter json, Plan plan, PiecePlan piece, Fabric fabric, string name, int fromRow)
    {
        var path = fabric.Path;
        json.WriteStartObject();
        json.WriteString("piece", piece.Name);
        json.WriteString("part", name);
        json.WriteString("worked", MotifNames.Of(piece.Working));
        json.WriteStartArray("sections");
        foreach (var section in plan.Sequence.Ring.Sections)
            json.WriteNumberValue(ColourRing.ToUnits(section));
        json.WriteEndArray();
        json.WriteNumber("startUnits", fromRow == 0
            ? piece.Start : ColourRing.ToUnits(ColourRing.Modulo(path.RowStart(0), plan.Sequence.Ring.Total)));
        json.WriteNumber("turnCost", piece.TurnCost);
        json.WriteString("startsFrom", path.RunsBackwards(0) ? "left" : "right");
        json.WriteNumber("fromRow", fromRow);
        Outline(json, path, fromRow);
        json.WriteStartArray("rows");
        for (var row = 0; row < path.Rows; row++)
        {
            json.WriteStartArray();
            foreach (var section in fabric.Row(row))
                json.WriteNumberValue(section);
            json.WriteEndArray();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Stretches of rows with the same first and last column, both inclusive.</summary>
    private static void Outline(Utf8JsonWriter json, FabricPath path, int fromRow)
    {
        json.WriteStartArray("outline");
        (int First, int Last)? before = null;
        for (var row = 0; row < path.Rows; row++)
        {
            var ends = (First: path.FirstColumns[row], Last: path.FirstColumns[row] + path.Cells(row) - 1);
            if (ends == before)
                continue;
            json.WriteStartObject();
            json.WriteNumber("fromRow", fromRow + row);
            json.WriteNumber("first", ends.First);
            json.WriteNumber("last", ends.Last);
            json.WriteEndObject();
            before = ends;
        }
        json.WriteEndArray();
    }
}
