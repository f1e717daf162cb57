using System.CommandLine;
using System.Text.Json;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath fabric</c>: the colours that one stitch count draws.</summary>
internal static class FabricCommand
{
    private const int MostPrintedRows = 60;

    public static Command Create(Terminal terminal)
    {
        var options = new SequenceOptions();
        var stitches = new Option<int>("--stitches") { CustomParser = NumberText.Read<int>, Description = "Stitches in a row, 1 to 1,000.", Required = true };
        var rows = new Option<int>("--rows") { CustomParser = NumberText.Read<int>, Description = "Rows or rounds, 1 to 5,000.", Required = true };
        var start = new Option<double>("--start") { CustomParser = NumberText.Read<double>, Description = "Where in the sequence the first stitch lies, in stitches." };
        var extra = new Option<bool>("--alternating") { Description = "Work one stitch more in every other row." };
        var command = new Command("fabric", """
            Shows the fabric of one stitch count: which colour every stitch is, how far the lines lean, what a person sees.
            In linen stitch a cell is a pair of single crochet and chain 1; the pair worked last in a row of an odd count is
            half a pair. JSON has for each row its cells from the right-hand edge, and in linen stitch how many half pairs
            lie between that edge and the first whole pair (halfPairsRight).

            Example: dyepath fabric --sections 5,4,6,7 --stitches 67 --rows 24 --worked turned --json
            """)
        {
            stitches, rows, start, extra,
        };
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            var ring = options.Ring(parsed);
            var working = options.Working(parsed);
            var path = options.Path(parsed, working) with
            {
                Start = SequenceOptions.InRange(parsed, start, -PathOptions.FurthestStart, PathOptions.FurthestStart, "stitches"),
            };
            var alternating = parsed.GetValue(extra);
            var count = SequenceOptions.InRange(
                parsed, stitches, 1, alternating ? FabricPath.MostStitches - 1 : FabricPath.MostStitches, "stitches");
            SequenceOptions.RequireYarn(count, path);
            var rowCount = SequenceOptions.InRange(parsed, rows, 1, FabricPath.MostRows, "rows");
            var fabric = Fabric.Work(ring, alternating
                ? FabricPath.Alternating(working, count, rowCount, path)
                : FabricPath.Constant(working, count, rowCount, path));
            var reader = MotifReader.Create(
                ring, working, options.ReadGauge(parsed), path.StitchesPerUnit, options.LabPalette(parsed, ring));
            var reading = reader.Read(fabric.Path);
            if (parsed.GetValue(options.Json))
                terminal.WriteJson(json => Write(json, ring, fabric, reading));
            else
                Print(terminal.Output, ring, fabric, reading);
            return ExitCode.Success;
        });
        return command;
    }

    private static void Write(Utf8JsonWriter json, ColourRing ring, Fabric fabric, MotifReading reading)
    {
        json.WriteStartObject();
        json.WriteNumber("sequenceStitches", ring.SequenceUnits);
        WriteNumberOrNull(json, "period", reading.PeriodUnits);
        WriteNumberOrNull(json, "lean", reading.Lean?.UnitsPerRow);
        json.WriteString("motif", MotifNames.Of(reading.Kind));
        json.WriteNumber("clarity", Math.Round(reading.RelativeClarity, 6));
        json.WriteNumber("twoToned", fabric.TwoToned);
        json.WriteNumber("stitchesPerUnit", fabric.Path.StitchesPerUnit);
        if (fabric.Path.StitchesPerUnit > 1)
        {
            json.WriteStartArray("halfPairsRight");
            for (var row = 0; row < fabric.Rows; row++)
                json.WriteNumberValue(Math.Abs(fabric.Path.DrawnHalfUnitsLeft(row)));
            json.WriteEndArray();
        }
        json.WriteStartArray("rows");
        for (var row = 0; row < fabric.Rows; row++)
            json.WriteRawValue($"[{string.Join(',', fabric.Row(row).ToArray())}]");
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteNumberOrNull(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
            json.WriteNumber(name, number);
        else
            json.WriteNull(name);
    }

    private static void Print(TextWriter output, ColourRing ring, Fabric fabric, MotifReading reading)
    {
        var units = fabric.Path.StitchesPerUnit > 1 ? "pairs" : "stitches";
        var lean = reading.Lean is { } leans ? SequenceOptions.Said(leans.UnitsPerRow) : "none";
        output.WriteLine(
            $"Sequence {SequenceOptions.Said(ring.SequenceUnits)} {units}, {MotifNames.Of(reading.Kind)}, lean {lean} a row, {fabric.TwoToned} two-toned {units}.");
        foreach (var finding in reading.Findings)
            output.WriteLine(Words(finding));
        var shown = Math.Min(fabric.Rows, MostPrintedRows);
        for (var row = shown - 1; row >= 0; row--)
        {
            output.WriteLine($"{row + 1,5} {Drawn(fabric, row)}");
        }
        if (fabric.Path.StitchesPerUnit > 1)
            output.WriteLine("A letter is a stitch: two letters are a pair of single crochet and chain 1. Every other row lies half a pair over.");
        output.WriteLine(shown < fabric.Rows
            ? $"Row 1 is at the bottom, its first stitch at the right. Rows {shown + 1} to {fabric.Rows} are left out; --json has them."
            : "Row 1 is at the bottom, its first stitch at the right.");
    }

    /// <summary>A row from its left-hand edge, a letter a stitch, right-hand edges below each other.</summary>
    private static string Drawn(Fabric fabric, int row)
    {
        var (path, cells) = (fabric.Path, fabric.Row(row).ToArray());
        if (path.StitchesPerUnit == 1)
            return string.Concat(cells.Reverse().Select(Letter));
        // Of an odd count the pair worked last is half a pair: at the left, or at the right of a row that runs backwards.
        var half = path.RowStitches[row] % 2 == 0 ? -1 : path.RunsBackwards(row) ? 0 : cells.Length - 1;
        var letters = cells.Select((cell, at) => new string(Letter(cell), at == half ? 1 : 2)).Reverse();
        return string.Concat(letters) + (path.DrawnHalfUnitsLeft(row) > 0 ? " " : "");
    }

    private static char Letter(byte section) => section < 26 ? (char)('A' + section) : (char)('a' + (section - 26) % 26);

    private static string Words(MotifFinding finding) => finding switch
    {
        MotifFinding.OneColour => "These colours have no contrast: there is nothing to see.",
        MotifFinding.TooNarrow => "The row is shorter than one sequence: the motif is cut off at the sides.",
        MotifFinding.TooShort => "There are too few rows for one whole diamond or slant.",
        MotifFinding.Uneven => "The counts change from row to row; this is what most rows make.",
        MotifFinding.JumpsAtJoin => "The round's two ends lie far apart along the yarn: the lines do not meet at the join.",
        _ => throw new InvalidOperationException($"No words for {finding}."),
    };
}
