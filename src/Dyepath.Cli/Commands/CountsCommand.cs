using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath counts</c>: every stitch count that makes a motif.</summary>
internal static class CountsCommand
{
    private const string Motifs = "columns, steep, argyle, shallow, bands, scattered, or even (the slant of a round)";

    public static Command Create(Terminal terminal)
    {
        var options = new SequenceOptions();
        var from = new Option<int>("--from") { CustomParser = NumberText.Read<int>, Description = "Fewest stitches, 1 to 1,000.", DefaultValueFactory = _ => 20 };
        var to = new Option<int>("--to") { CustomParser = NumberText.Read<int>, Description = "Most stitches, 1 to 1,000.", DefaultValueFactory = _ => 200 };
        var motif = new Option<string>("--motif") { Description = $"What the colours should draw: {Motifs}.", DefaultValueFactory = _ => "argyle" };
        var rows = new Option<int>("--rows") { CustomParser = NumberText.Read<int>, Description = "Rows of the piece; it decides how little drift still makes columns.", DefaultValueFactory = _ => 72 };
        var half = new Option<bool>("--half-turn") { Description = "Offer turns that take half a stitch of yarn as well." };
        var constant = new Option<bool>("--constant") { Description = "Offer no counts that alternate with one stitch more." };
        var order = new Option<string>("--order") { Description = "stitches, forgiveness or clarity.", DefaultValueFactory = _ => "stitches" };
        var command = new Command("counts", """
            Lists every stitch count in a range that makes the motif, with the lean, what it forgives and its width.
            Where there is none, it says which are nearest and what would help, and exits with 3.

            Example: dyepath counts --sections 5.2,4.1,6,7.3 --from 40 --to 120 --worked turned --motif argyle --gauge 14x16
            """)
        {
            from, to, motif, rows, half, constant, order,
        };
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            var ring = options.Ring(parsed);
            var working = options.Working(parsed);
            var least = SequenceOptions.InRange(parsed, from, 1, FabricPath.MostStitches, "stitches");
            var most = SequenceOptions.InRange(parsed, to, 1, FabricPath.MostStitches, "stitches");
            if (most < least)
                throw new BadInputException("--to", $"It is {most}, less than --from, {least}.");
            var path = options.Path(parsed, working);
            SequenceOptions.RequireYarn(least, path);
            var wanted = new CountOptions(options.ReadGauge(parsed), least, most)
            {
                Motif = ReadMotif(parsed.GetRequiredValue(motif)),
                Working = working,
                Rows = SequenceOptions.InRange(parsed, rows, 1, FabricPath.MostRows, "rows"),
                Path = path,
                Alternating = !parsed.GetValue(constant),
                HalfTurn = parsed.GetValue(half),
                Order = Order(parsed.GetRequiredValue(order)),
                Palette = options.LabPalette(parsed, ring),
            };
            var found = CountFinder.Find(ring, wanted);
            if (parsed.GetValue(options.Json))
                terminal.WriteJson(json => Write(json, found));
            else
                Print(terminal.Output, found);
            return found.Counts.IsEmpty ? ExitCode.NoFeasibleDesign : ExitCode.Success;
        });
        return command;
    }

    private static MotifKind ReadMotif(string name) =>
        Enum.GetValues<MotifKind>().Where(m => MotifNames.Of(m) == name).Select(m => (MotifKind?)m).FirstOrDefault()
        ?? throw new BadInputException("--motif", $"“{name}” is not a motif; use {Motifs}.");

    private static CountOrder Order(string name) => name switch
    {
        "stitches" => CountOrder.Stitches,
        "forgiveness" => CountOrder.Forgiveness,
        "clarity" => CountOrder.Clarity,
        _ => throw new BadInputException("--order", $"“{name}” is not an order; use stitches, forgiveness or clarity."),
    };

    private static void Write(Utf8JsonWriter json, CountSearch found)
    {
        json.WriteStartObject();
        json.WriteStartArray("counts");
        foreach (var count in found.Counts)
        {
            json.WriteStartObject();
            WriteCount(json, count);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        if (found.Counts.IsEmpty)
        {
            json.WriteStartArray("nearest");
            foreach (var near in found.Nearest)
            {
                json.WriteStartObject();
                WriteCount(json, near.Finding);
                if (near.TurnChange is { } turn)
                    json.WriteNumber("turnChange", Math.Round(turn, 6));
                if (near.YarnChange is { } yarn)
                    json.WriteNumber("yarnChange", Math.Round(yarn, 6));
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("advice");
            foreach (var advice in found.Advice)
                json.WriteStringValue(AdviceWords.Say(advice));
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }

    private static void WriteCount(Utf8JsonWriter json, CountFinding count)
    {
        json.WriteNumber("stitches", count.Stitches);
        json.WriteStartArray("rowStitches");
        foreach (var stitches in count.RowStitches)
            json.WriteNumberValue(stitches);
        json.WriteEndArray();
        json.WriteNumber("turnCost", count.TurnCost);
        if (count.Reading.Lean is { } lean)
            json.WriteNumber("lean", lean.UnitsPerRow);
        else
            json.WriteNull("lean");
        json.WriteString("motif", MotifNames.Of(count.Reading.Kind));
        if (count.Forgiveness is { } forgiveness)
        {
            json.WriteNumber("forgivesTighter", Math.Round(forgiveness.Tighter, 9));
            json.WriteNumber("forgivesLooser", Math.Round(forgiveness.Looser, 9));
        }
        json.WriteNumber("widthCm", Math.Round(count.Width.Centimetres, 4));
        json.WriteNumber("clarity", Math.Round(count.Reading.RelativeClarity, 6));
        json.WriteStartArray("asks");
        foreach (var task in Tasks(count.Task))
            json.WriteStringValue(task);
        json.WriteEndArray();
        json.WriteStartArray("notes");
        foreach (var finding in count.Reading.Findings)
            json.WriteStringValue(finding switch
            {
                MotifFinding.TooNarrow => "too narrow for one whole motif",
                MotifFinding.TooShort => "too few rows for one whole motif",
                MotifFinding.JumpsAtJoin => "the lines do not meet at the join",
                MotifFinding.Uneven => "counts change from row to row",
                MotifFinding.OneColour => "no contrast",
                _ => throw new InvalidOperationException($"No words for {finding}."),
            });
        json.WriteEndArray();
    }

    private static IEnumerable<string> Tasks(CountTask task)
    {
        if (task.HasFlag(CountTask.ExtraEdgeStitch))
            yield return "work one stitch more into the edge of every other row, and leave it out again in the next";
        if (task.HasFlag(CountTask.HalfStitchTurn))
            yield return "leave the turning chain loose, so that it takes half a stitch of yarn";
    }

    private static void Print(TextWriter output, CountSearch found)
    {
        if (found.Counts.IsEmpty)
        {
            output.WriteLine("No count in this range makes the motif.");
            foreach (var advice in found.Advice)
                output.WriteLine($"- {AdviceWords.Say(advice)}");
            return;
        }
        output.WriteLine($"{"stitches",12} {"lean",8} {"tighter",9} {"looser",9} {"width cm",9}");
        foreach (var count in found.Counts)
        {
            var stitches = string.Join(", ", count.RowStitches);
            var lean = count.Reading.Lean is { } l ? SequenceOptions.Said(l.UnitsPerRow) : "";
            var (tighter, looser) = count.Forgiveness is { } f ? (Percent(f.Tighter), Percent(f.Looser)) : ("", "");
            output.WriteLine($"{stitches,12} {lean,8} {tighter,9} {looser,9} {count.Width.Centimetres.ToString("0.0", CultureInfo.InvariantCulture),9}{(count.Task == CountTask.None ? "" : "  " + string.Join("; ", Tasks(count.Task)))}");
        }
        output.WriteLine("tighter and looser: how far yarn per stitch may change, the whole piece through, before the motif is another.");
    }

    private static string Percent(double share) => (100 * share).ToString("+0.00;-0.00", CultureInfo.InvariantCulture) + " %";
}
