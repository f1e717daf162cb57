using System.CommandLine;
using System.Globalization;
using Dyepath.Core.Adapting;
using Dyepath.Core.Planning;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath adapt</c>: the pattern for a reader's own yarn, gauge and size.</summary>
internal static class AdaptCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var size = new Option<string>("--size") { Description = "Your size, one of the pattern's.", Required = true };
        var own = new OwnYarnOptions();
        var folder = new Option<string?>("--out") { Description = "Folder for your own booklet; made when it is missing, files of the same names are replaced." };
        var ranges = new Option<bool>("--ranges") { Description = "Say which other yarns and gauges the size accepts, instead of asking after one." };
        var files = new BookletFiles();
        var command = new Command("adapt", """
            Says what a pattern asks of your own yarn, whatever its colours are: make it as written, take another hook, work by numbers of
            your own, or take another yarn; why, and all that differs. With --out it writes your booklet.

            Count the stitches that each colour takes, without helping any of them, over two repeats or more. With your gauge and the yarn
            of a stitch it tells a longer sequence from tighter hands.

            Example: dyepath adapt project.json --size M --sections 5,4,3,5,4/5,4,3,5,4 --gauge 14x16
                     dyepath adapt --demo --size 2X --sections 6,5,4,6,5,2 --colours navy,teal,#e9efe9,tan,olive,rust=#a14a2a --out mine
                     dyepath adapt --demo --size M --taps swatch.txt
                     dyepath adapt --demo --size M --ranges --json

            Exits with 3 where the yarn does not suit the piece.
            """)
        {
            size, folder, ranges,
        };
        own.AddTo(command);
        files.AddTo(command);
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var json = parsed.GetValue(file.Json);
            var project = file.Read(terminal, parsed);
            var onlyRanges = parsed.GetValue(ranges);
            if (onlyRanges && (parsed.GetValue(folder) is null ? own.Given(parsed) : folder.Name) is { } given)
                throw new BadInputException(given, "Ranges are those of the pattern's own yarn: leave this out, or --ranges.");
            var materials = onlyRanges ? null : own.Read(terminal, parsed, project);
            project = project with { Edition = files.Edition(parsed, project.Edition) };
            var print = files.Print(parsed);
            if (ProjectFile.TryPlan(terminal, project, json, stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            var name = parsed.GetRequiredValue(size);
            ProjectFile.CheckSize(size.Name, plan, name);
            if (materials is null)
            {
                var accepted = terminal.Progress("Trying other yarns", _ => AcceptedRanges.Of(plan, name, stop));
                if (json)
                    terminal.WriteJson(accepted.Write);
                else
                    Print(terminal.Output, accepted);
                return Task.FromResult(ExitCode.Success);
            }
            var result = Adapter.Adapt(plan, name, materials, stop);
            if (result.Adaptation is not { } adaptation)
                throw new BadInputException([.. result.Faults.Select(f => new InputFault(OwnYarnOptions.OptionOf(f.Place), f.Text))]);
            var written = parsed.GetValue(folder) is { } path && adaptation.Plan is { } made
                ? BookletFiles.Write(terminal, made, path, print, stop) : null;
            if (json)
                terminal.WriteJson(writer => AdaptJson.Write(writer, adaptation));
            else
                Print(terminal.Output, adaptation, written);
            return Task.FromResult(adaptation.Verdict == AdaptVerdict.NotSuited ? ExitCode.NoFeasibleDesign : ExitCode.Success);
        });
        return command;
    }

    private static void Print(TextWriter output, Adaptation adaptation, WrittenBooklet? written)
    {
        output.WriteLine(adaptation.Why);
        if (adaptation.Plan is { } plan)
        {
            output.WriteLine();
            output.WriteLine(adaptation.Changes.IsEmpty ? "Nothing differs from the pattern." : "What differs from the pattern:");
            foreach (var change in adaptation.Changes)
                output.WriteLine($"- {change.What}: {change.From} -> {change.To}");
            foreach (var finding in plan.Findings.Where(f => f.Level == Core.Findings.FindingLevel.Warning))
                output.WriteLine($"warning: {finding.Text}");
        }
        written?.Print(output);
    }

    private static void Print(TextWriter output, AcceptedRanges accepted)
    {
        output.WriteLine($"Size {accepted.Size} accepts, one thing at a time and all else as in the pattern:");
        output.WriteLine($"- as written: colours that come round once in {Said(accepted.Sequence)} stitches");
        output.WriteLine($"- with another hook: in {Said(accepted.SequenceWithOtherHook)} stitches");
        output.WriteLine($"- gauge over 10 cm: {Said(accepted.Stitches)} stitches, {Said(accepted.Rows)} rows");
        output.WriteLine($"- {accepted.Balls} {(accepted.Balls == 1 ? "ball" : "balls")}: where a ball has {Said(accepted.BallMetres, "0")} m");
    }

    private static string Said(AcceptedRange range, string form = "0.0") => range.Least.ToString(form, CultureInfo.InvariantCulture)
        is var least && range.Most.ToString(form, CultureInfo.InvariantCulture) is var most && least == most ? least : $"{least} to {most}";
}
