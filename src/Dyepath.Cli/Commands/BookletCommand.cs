using System.CommandLine;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath booklet</c>: the pattern as HTML, PDF, text and pictures.</summary>
internal static class BookletCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var folder = new Option<string>("--out") { Description = "Folder for the files; made when it is missing, files of the same names are replaced.", Required = true };
        var size = new Option<string?>("--size") { Description = "One size alone, without parentheses." };
        var files = new BookletFiles();
        var command = new Command("booklet", """
            Writes the pattern: index.html, booklet.pdf, booklet.txt and every picture as SVG; and what a buyer asks before
            she buys, listing.txt and listing.csv.

            Example: dyepath booklet project.json --out pattern
                     dyepath booklet --demo --out pattern --terms uk --size M
            """)
        {
            folder, size,
        };
        files.AddTo(command);
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var project = file.Read(terminal, parsed);
            var edition = files.Edition(parsed, project.Edition);
            project = project with { Edition = edition with { Size = parsed.GetValue(size) ?? edition.Size } };
            var print = files.Print(parsed);
            if (ProjectFile.TryPlan(terminal, project, parsed.GetValue(file.Json), stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            if (project.Edition.Size is { } one && plan.Sizes.All(s => s.Name != one))
                throw new BadInputException("--size", $"“{one}” is not a size of this pattern; it has {string.Join(", ", plan.Sizes.Select(s => s.Name))}.");
            var written = BookletFiles.Write(terminal, plan, parsed.GetRequiredValue(folder), print, stop);
            if (parsed.GetValue(file.Json))
            {
                terminal.WriteJson(json =>
                {
                    json.WriteStartObject();
                    written.Write(json);
                    json.WriteEndObject();
                });
            }
            else
            {
                written.Print(terminal.Output);
            }
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }
}
