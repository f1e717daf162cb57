using System.CommandLine;
using Dyepath.Core.Booklets;
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
        var cells = new Option<string>("--cells")
        {
            Description = "With --json: adds the fabric of this size, cell by cell, as \"cells\".",
            HelpName = "SIZE",
        };
        var command = new Command("plan", """
            Plans the garment in every size: which way to work, which stitch counts serve which sizes, how far each measure is off, how
            much yarn to buy; then what else to buy, the edgings, where the pieces begin, how the seams meet, and what of the body fits.

            In JSON "options" has the counts that were chosen; a shaped piece's "stitches" is its first row, and "widestStitches" its
            widest one where that is another.

            Example: dyepath plan project.json
                     dyepath plan --demo --json
                     dyepath plan project.json --json --cells M
            """)
        {
            cells,
        };
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var json = parsed.GetValue(file.Json);
            var size = parsed.GetValue(cells);
            if (size is not null && !json)
                throw new BadInputException("--cells", "Cells are written as JSON alone: add --json, or leave --cells out.");
            if (ProjectFile.TryPlan(terminal, file.Read(terminal, parsed), json, stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            if (size is not null)
                ProjectFile.CheckSize("--cells", plan, size);
            if (json)
                terminal.WriteJson(writer => PlanJson.Write(writer, plan, size));
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
        console.WriteLine(DirectionWords.Why(plan));
        console.WriteLine();
        var table = new Spectre.Console.Table().Border(TableBorder.Simple);
        table.AddColumn("size");
        foreach (var measure in plan.Sizes[0].Finished.Keys)
            table.AddColumn(new TableColumn($"{GarmentMeasures.Words(measure)}\nfinished (off by), cm").RightAligned());
        foreach (var piece in plan.Sizes[0].Pieces)
            table.AddColumn(new TableColumn($"{piece.Name}\nstitches × rows").RightAligned());
        table.AddColumn(new TableColumn("yarn\nm").RightAligned());
        table.AddColumn(new TableColumn("balls for\n19 of 20").RightAligned());
        foreach (var size in plan.Sizes)
        {
            table.AddRow(
            [
                new Text(size.Name),
                .. size.Finished.Select(f => new Text(FormattableString.Invariant(
                    $"{f.Value.Centimetres:0.0} ({(f.Value - size.Target[f.Key]).Centimetres:+0.0;-0.0;0})"))),
                .. size.Pieces.Select(p => new Text(FormattableString.Invariant($"{(p.Shape is { } shape ? $"{shape.ShortestRow} to {shape.WidestRow}" : p.Taper is { } taper ? $"{taper.Stitches} to 1" : string.Join('/', p.RowStitches))} × {p.Rows}"))),
                new Text(Wording.WholeMetres(size.Yarn.Length)),
                new Text(FormattableString.Invariant($"{size.Yarn.BallsSafe}")),
            ]);
        }
        console.Write(table);
        foreach (var line in new PlanLines(plan).All)
            console.WriteLine(line);
        foreach (var finding in plan.Findings)
        {
            console.WriteLine($"{finding.Level.ToString().ToLowerInvariant()}: {finding.Place}: {finding.Text}");
            foreach (var remedy in finding.Remedies.Where(r => r.Place is not null))
                console.WriteLine($"    {remedy.Place}: {remedy.Value}");
        }
    }
}
