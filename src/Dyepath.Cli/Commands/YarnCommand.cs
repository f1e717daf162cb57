using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Dyepath.Core.Documents;
using Dyepath.Core.Measuring;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath yarn</c>: what the measurements of yarn and swatch say together.</summary>
internal static class YarnCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var stitches = new Option<int>("--stitches") { CustomParser = NumberText.Read<int>, Description = "A row's stitches (in linen stitch, its pairs), for how many repeats to count before trusting them.", DefaultValueFactory = _ => 80 };
        var taps = new Option<string?>("--taps") { Description = "A text with the colour of every stitch worked, to find the sequence from; - reads standard input.", HelpName = "FILE" };
        var command = new Command("yarn", """
            Says what the counts, lengths and swatch of a project tell of its yarn: stitches in each colour with 95 % intervals, yarn in a
            stitch, how much tighter or looser each colour is worked, which hook suits better, what to count next, what contradicts what.

            Example: dyepath yarn project.json
                     dyepath yarn --demo --stitches 96 --json

            With --taps it finds the sections, their order and the sequence from a swatch told stitch by stitch: a colour's word or letter
            for each stitch, 3 teal for three of them, | or an empty line at a row's end, # before a comment. A project beside it is
            held against them.

            Example: dyepath yarn --taps swatch.txt
                     dyepath yarn project.json --taps swatch.txt --json
            """)
        {
            stitches, taps,
        };
        file.AddTo(command);
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(taps) is { } tapped)
            {
                var listed = parsed.GetValue(file.File) is null && !parsed.GetValue(file.Demo) ? null : file.Read(terminal, parsed);
                TapReport.Write(terminal, tapped, listed, parsed.GetValue(file.Json));
                return ExitCode.Success;
            }
            var project = file.Read(terminal, parsed);
            var row = SequenceOptions.InRange(parsed, stitches, 1, Core.Fabrics.FabricPath.MostStitches, "stitches");
            if (!MeasuredYarn.TryMeasure(project.Yarn, project.Fabric, out var measured, out var reasons))
                throw new BadInputException([.. reasons.Select(r => new InputFault(r.Place, r.Text))]);
            var report = new Report(project, measured, measured.Tension(), Advice(measured), measured.CountingForFreeWork(row),
                measured.CountingForCountedWork(), row);
            if (parsed.GetValue(file.Json))
                terminal.WriteJson(report.Write);
            else
                report.Print(terminal.Output);
            return ExitCode.Success;
        });
        return command;
    }

    private static HookAdvice Advice(MeasuredYarn measured) =>
        measured.AdviseHook([.. HookSizes.All.Select(h => h.Diameter.Millimetres)]);

    internal sealed record Report(
        Project Project,
        MeasuredYarn Measured,
        IReadOnlyList<SectionTension> Tension,
        HookAdvice Hook,
        FreeCounting Free,
        IReadOnlyList<SectionCounting> Counted,
        int Row)
    {
        private bool InPairs => Project.Fabric.Stitch.StitchesPerUnit > 1;

        private string Unit => InPairs ? "pair of stitches" : "stitch";

        private string Units => InPairs ? "pairs" : "stitches";

        private IEnumerable<(string Level, string Place, string Text)> Findings =>
        [
            .. Measured.Findings.Select(f => ("warning", f.Place, f.Text)), .. ExampleValues.Findings(Project).Select(f => ("note", f.Place, f.Text)),
        ];

        public void Write(Utf8JsonWriter json)
        {
            json.WriteStartObject();
            json.WriteString("from", Measured.Natural.Source.ToString().ToLowerInvariant());
            json.WriteString("hands", Measured.Hands.Words);
            Interval(json, "sequenceStitches", Measured.Natural.Total);
            Interval(json, "yarnPerStitchCm", Measured.YarnPerStitch.Centimetres);
            json.WriteString("yarnPerStitchFrom", Camel(Measured.YarnPerStitch.Source.ToString()));
            json.WriteStartArray("sections");
            for (var j = 0; j < Project.Yarn.Sections.Length; j++)
            {
                json.WriteStartObject();
                json.WriteString("name", Project.Yarn.Sections[j].Name);
                Interval(json, "stitches", Measured.Natural.Sections[j]);
                json.WriteNumber("worked", Measured.Stitches[j]);
                json.WriteNumber("change", Math.Round(Tension[j].Change, 6));
                json.WriteString("hands", Tension[j].Words);
                if (j < Counted.Count)
                {
                    json.WriteNumber("probabilityRight", Math.Round(Counted[j].ProbabilityRight, 6));
                    json.WriteNumber("countMoreRepeats", Counted[j].MoreRepeats);
                }
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartObject("hook");
            json.WriteNumber("swatchMm", Measured.Fabric.Swatch.HookMillimetres);
            json.WriteNumber("advisedMm", Hook.Advised.Millimetres);
            json.WriteNumber("worstChangeNow", Math.Round(Hook.Now.Worst, 6));
            json.WriteNumber("worstChangeThen", Math.Round(Hook.Advised.Fit.Worst, 6));
            json.WriteString("words", Hook.Words);
            json.WriteEndObject();
            json.WriteStartObject("freeWork");
            json.WriteNumber("stitches", Row);
            json.WriteString("verdict", Camel(Free.Verdict.ToString()));
            json.WriteNumber("countMoreRepeats", Free.MoreRepeats);
            json.WriteNumber("leanError", Math.Round(Free.LeanError, 6));
            json.WriteString("words", Free.Words);
            json.WriteEndObject();
            json.WriteStartArray("findings");
            foreach (var finding in Findings)
                json.WriteStringValue($"{finding.Place}: {finding.Text}");
            json.WriteEndArray();
            json.WriteEndObject();
        }

        public void Print(TextWriter output)
        {
            output.WriteLine($"Sequence: {Said(Measured.Natural.Total)} {Units}, {Measured.Hands.Words}.");
            output.WriteLine($"Yarn in a {Unit}: {Said(Measured.YarnPerStitch.Centimetres)} cm.");
            for (var j = 0; j < Project.Yarn.Sections.Length; j++)
                output.WriteLine($"  {Tension[j].Words} {Said(Measured.Natural.Sections[j])} {Units} by itself, worked over {Measured.Stitches[j]}.");
            output.WriteLine(Hook.Words);
            output.WriteLine($"Worked freely over {Row} {Units}: {Free.Words}");
            foreach (var finding in Findings)
                output.WriteLine($"{finding.Level}: {finding.Place}: {finding.Text}");
        }

        internal static string Said(Estimate estimate)
        {
            var (low, high) = estimate.Interval();
            return string.Create(CultureInfo.InvariantCulture, $"{estimate.Value:0.00} ({low:0.00} to {high:0.00})");
        }

        internal static void Interval(Utf8JsonWriter json, string name, Estimate estimate)
        {
            var (low, high) = estimate.Interval();
            json.WriteStartObject(name);
            json.WriteNumber("estimate", Math.Round(estimate.Value, 6));
            json.WriteNumber("low", Math.Round(low, 6));
            json.WriteNumber("high", Math.Round(high, 6));
            json.WriteEndObject();
        }

        private static string Camel(string name) => JsonNamingPolicy.CamelCase.ConvertName(name);
    }
}
