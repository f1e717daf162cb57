using System.CommandLine;
using Dyepath.Core.Constructions;
using Dyepath.Core.Projects;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath new</c>: a commented starter document.</summary>
internal static class NewCommand
{
    public static Command Create(Terminal terminal)
    {
        var json = new Option<bool>("--json") { Description = "Without comments." };
        string[] names = [.. Repertoire.All.Select(kind => kind.Name)];
        var garment = new Option<string>("--garment")
        {
            Description = $"What is made: {string.Join(", ", names)}.",
            DefaultValueFactory = _ => names[0],
            HelpName = "NAME",
        };
        var command = new Command("new", $"""
            Writes a starter document, with a comment on every field, to standard output.
            Garments: {string.Join(", ", names)}.

            Example: dyepath new > project.json
                     dyepath new --garment {names[^1]} > project.json
            """)
        {
            garment, json,
        };
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(garment);
            var kind = Repertoire.All.FirstOrDefault(k => k.Name == name)
                ?? throw new BadInputException("--garment", $"There is no garment {name}: choose one of {string.Join(", ", names)}.");
            terminal.Output.Write(parsed.GetValue(json) ? ProjectWriter.Write(StarterDocument.Of(kind)) : StarterDocument.Write(kind));
            return ExitCode.Success;
        });
        return command;
    }
}
