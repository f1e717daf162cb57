using System.Collections.Immutable;
using System.Text.Json;
using Dyepath.Core.Measuring;
using Dyepath.Core.Measuring.Taps;
using Dyepath.Core.Projects;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath yarn --taps</c>: the sequence from a swatch told stitch by stitch.</summary>
internal static class TapReport
{
    /// <param name="listed">The project whose list of sections the taps are held against; missing, there is none.</param>
    /// <exception cref="BadInputException">Unreadable, or with faults; all of them are listed.</exception>
    public static void Write(Terminal terminal, string file, Project? listed, bool asJson)
    {
        var hands = listed is null ? HandsPrior.Default : HandsPrior.For(listed.Fabric.Hands);
        ImmutableArray<string> sections = listed is null ? []
            : [.. (listed.Yarn.FromOtherEnd ? listed.Yarn.Sections.Reverse() : listed.Yarn.Sections).Select(s => s.Name)];
        var taps = Taps(terminal, file);
        var reading = taps.Read(hands, sections);
        if (asJson)
            terminal.WriteJson(json => Write(json, taps, reading));
        else
            Print(terminal.Output, taps, reading);
    }

    /// <summary>The stitches that a text tells.</summary>
    /// <param name="file">Its path; - reads standard input.</param>
    /// <exception cref="BadInputException">Unreadable, or with faults; all of them are listed.</exception>
    public static TappedStitches Taps(Terminal terminal, string file)
    {
        var (taps, faults) = TapText.Read(terminal.ReadDocument(file, TapText.MostBytes));
        return faults.Length == 0 ? taps
            : throw new BadInputException([.. faults.Select(f => new InputFault($"{file} (line {f.Line}, column {f.Column})", f.Text))]);
    }

    private static void Print(TextWriter output, TappedStitches taps, TapReading reading)
    {
        output.WriteLine($"{taps.Count} stitches tapped{(taps.Rows > 0 ? $" in {taps.Rows} rows" : "")}. {reading.Words}");
        if (reading.Estimate is { } estimate)
        {
            output.WriteLine($"Sequence: {YarnCommand.Report.Said(estimate.Sequence)} stitches, {estimate.Hands.Words}.");
            for (var j = 0; j < reading.Sections.Length; j++)
            {
                var counts = reading.Balls.SelectMany(b => b.Repeats).Select(row => row[j]);
                output.WriteLine($"  {reading.Sections[j]}: {YarnCommand.Report.Said(estimate.Sections[j])}; counted {string.Join(", ", counts)}");
            }
        }
        foreach (var remark in reading.Remarks)
            output.WriteLine($"note: {remark.Text}");
    }

    private static void Write(Utf8JsonWriter json, TappedStitches taps, TapReading reading)
    {
        json.WriteStartObject();
        json.WriteNumber("taps", taps.Count);
        json.WriteNumber("rows", taps.Rows);
        json.WriteString("progress", JsonNamingPolicy.CamelCase.ConvertName(reading.Progress.ToString()));
        json.WriteString("words", reading.Words);
        json.WriteNumber("timesRound", reading.TimesRound);
        json.WriteNumber("moreStitches", reading.MoreStitches);
        json.WriteNumber("moreRows", reading.MoreRows);
        if (reading.Estimate is { } estimate)
        {
            json.WriteString("hands", estimate.Hands.Words);
            YarnCommand.Report.Interval(json, "sequenceStitches", estimate.Sequence);
        }
        json.WriteStartArray("sections");
        for (var j = 0; j < reading.Sections.Length; j++)
        {
            json.WriteStartObject();
            json.WriteString("name", reading.Sections[j]);
            if (reading.Estimate is { } known)
                YarnCommand.Report.Interval(json, "stitches", known.Sections[j]);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("counted");
        foreach (var ball in reading.Balls)
        {
            json.WriteStartObject();
            json.WriteString("name", ball.Name);
            json.WriteStartArray("repeats");
            foreach (var row in ball.Repeats)
            {
                json.WriteStartArray();
                foreach (var count in row)
                    json.WriteNumberValue(count);
                json.WriteEndArray();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("remarks");
        foreach (var remark in reading.Remarks)
        {
            json.WriteStartObject();
            json.WriteString("kind", JsonNamingPolicy.CamelCase.ConvertName(remark.Kind.ToString()));
            json.WriteNumber("tap", remark.Tap);
            json.WriteNumber("row", remark.Row);
            json.WriteString("text", remark.Text);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
