using System.CommandLine;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Spectre.Console;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath plan</c>: counts, sizes, seams and yarn.</summary>
internal static class PlanCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var command = new Command("plan", """
            Plans the garment in every size: which way to work, which stitch counts serve which sizes, what fit error is left, where the
            pieces begin, how the seams meet, how much yarn to buy.

            Example: dyepath plan project.json
                     dyepath plan --demo --json
            """);
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var json = parsed.GetValue(file.Json);
            if (ProjectFile.TryPlan(terminal, file.Read(terminal, parsed), json, stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            if (json)
                terminal.WriteJson(writer => PlanJson.Write(writer, plan));
            else
                Print(terminal, plan);
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }

    private static void Print(Terminal terminal, Plan plan)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(terminal.Output) });
        if (Console.IsOutputRedirected)
            console.Profile.Width = 160;
        console.WriteLine(plan.Project.Title);
        console.WriteLine(plan.Why);
        console.WriteLine();
        var table = new Spectre.Console.Table().Border(TableBorder.Simple);
        table.AddColumn("size");
        foreach (var measure in plan.Sizes[0].Finished.Keys)
            table.AddColumn(new TableColumn($"{Words(measure)}\nfinished (off by), cm").RightAligned());
        foreach (var piece in plan.Sizes[0].Pieces)
            table.AddColumn(new TableColumn($"{piece.Name}\nstitches × rows").RightAligned());
        table.AddColumn(new TableColumn("yarn\nm").RightAligned());
        table.AddColumn(new TableColumn("balls\n(safe)").RightAligned());
        foreach (var size in plan.Sizes)
        {
            table.AddRow(
            [
                new Text(size.Name),
                .. size.Finished.Select(f => new Text(FormattableString.Invariant(
                    $"{f.Value.Centimetres:0.0} ({(f.Value - size.Target[f.Key]).Centimetres:+0.0;-0.0;0})"))),
                .. size.Pieces.Select(p => new Text(FormattableString.Invariant($"{string.Join('/', p.RowStitches)} × {p.Rows}"))),
                new Text(FormattableString.Invariant($"{size.Yarn.Length.Metres:0}")),
                new Text(FormattableString.Invariant($"{size.Yarn.BallsTypical} ({size.Yarn.BallsSafe})")),
            ]);
        }
        console.Write(table);
        foreach (var finding in plan.Findings)
            console.WriteLine($"{finding.Level.ToString().ToLowerInvariant()}: {finding.Place}: {finding.Text}");
    }

    private static string Words(GarmentMeasure measure) =>
        string.Concat(measure.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
