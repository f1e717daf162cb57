using System.CommandLine;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Drawing;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath pictures</c>: pictures to show the pattern with.</summary>
internal static class PicturesCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var folder = new Option<string>("--out") { Description = "Folder for the files; made when it is missing, files of the same names are replaced.", Required = true };
        var size = new Option<string?>("--size") { Description = "The size that is shown; without it, the sample." };
        var command = new Command("pictures", """
            Draws pictures to show the pattern with, as SVG of 1,080 pixels' width: the garment as worn from the front and behind
            (cover), its fabric (fabric) and both, each square (1:1), portrait (4:5) and tall (2:3); and beside each its alternative
            text.

            Example: dyepath pictures project.json --out posts
                     dyepath pictures --demo --out posts --size M
            """)
        {
            folder, size,
        };
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var project = file.Read(terminal, parsed);
            var json = parsed.GetValue(file.Json);
            var edition = project.Edition with { Size = parsed.GetValue(size) ?? project.Edition.Size };
            if (ProjectFile.TryPlan(terminal, project with { Edition = edition }, json, stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            if (edition.Size is { } only)
                ProjectFile.CheckSize("--size", plan, only);
            if (BookletSize.TooLarge(plan, edition) is { } tooLarge)
                throw new BadInputException(tooLarge.Place, tooLarge.Text);
            var booklet = PatternWriter.Write(plan, stop);
            var pictures = PostPictures.Of(booklet, edition, new Wording(booklet, edition).Say, stop);
            (string Name, Action<Stream> Write)[] files =
            [
                .. pictures.SelectMany(picture => new (string, Action<Stream>)[]
                {
                    ($"{picture.Name}.svg", stream => stream.Write(Encoding.UTF8.GetBytes(picture.Svg))),
                    ($"{picture.Name}.txt", stream => stream.Write(Encoding.UTF8.GetBytes(picture.Alternative + "\n"))),
                }),
            ];
            var to = parsed.GetRequiredValue(folder);
            OutputFolder.Write(to, files, null, stop);
            string[] written = [.. files.Select(f => Path.Combine(to, f.Name))];
            if (json)
            {
                terminal.WriteJson(writer =>
                {
                    writer.WriteStartObject();
                    writer.WriteList("files", written);
                    writer.WriteEndObject();
                });
            }
            else
            {
                foreach (var name in written)
                    terminal.Output.WriteLine(name);
            }
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }
}
