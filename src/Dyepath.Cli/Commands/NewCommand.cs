using System.CommandLine;
using Dyepath.Core.Projects;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath new</c>: a commented starter document.</summary>
internal static class NewCommand
{
    public static Command Create(Terminal terminal)
    {
        var json = new Option<bool>("--json") { Description = "Without comments." };
        var command = new Command("new", """
            Writes a starter document, with a comment on every field, to standard output.

            Example: dyepath new > project.json
            """)
        {
            json,
        };
        command.SetAction(parsed =>
        {
            terminal.Output.Write(parsed.GetValue(json)
                ? ProjectWriter.Write(StarterDocument.Project)
                : StarterDocument.Write());
            return ExitCode.Success;
        });
        return command;
    }
}
