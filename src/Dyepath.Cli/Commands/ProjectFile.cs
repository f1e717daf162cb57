using System.Collections.Immutable;
using System.CommandLine;
using Dyepath.Core.Documents;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Cli.Commands;

/// <summary>The project that a command works on: a file, standard input, or the demo.</summary>
internal sealed class ProjectFile
{
    private const int MostBytes = 2_000_000;

    public Argument<string?> File { get; } = new("FILE")
    {
        Description = "The project document; - reads standard input.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    public Option<bool> Demo { get; } = new("--demo") { Description = "Use the demo project, the tunic Tideline, instead of a file." };

    public Option<bool> Json { get; } = new("--json") { Description = "Write the result as JSON." };

    public void AddTo(Command command)
    {
        command.Arguments.Add(File);
        command.Options.Add(Demo);
        command.Options.Add(Json);
    }

    /// <exception cref="BadInputException">No file, not both, unreadable, or with faults; all of them are listed.</exception>
    public Project Read(Terminal terminal, ParseResult parsed)
    {
        var file = parsed.GetValue(File);
        var demo = parsed.GetValue(Demo);
        if (file is { Length: > 1 } && file[0] == '-')
            throw new BadInputException(file, $"It is not an option of this command; see --help. A file of that name is written ./{file}.");
        if (file is null == !demo)
            throw new BadInputException("command line", "Name one project document, or - for standard input, or use --demo.");
        var reading = demo ? ProjectReader.Read(DemoProject.Utf8) : ProjectReader.Read(terminal.ReadDocument(file!, MostBytes));
        return reading.Project ?? throw new BadInputException([.. reading.Faults.Select(AsInput)]);
    }

    /// <summary>One of several documents; each fault says in which.</summary>
    /// <exception cref="BadInputException">Unreadable, or with faults; all of them are listed.</exception>
    public static Project Read(Terminal terminal, string file)
    {
        var reading = ProjectReader.Read(terminal.ReadDocument(file, MostBytes));
        return reading.Project ?? throw new BadInputException([.. reading.Faults.Select(AsInput).Select(f => f with { Place = $"{file}: {f.Place}" })]);
    }

    /// <summary>Plans the project; null after saying why no design is feasible.</summary>
    /// <exception cref="BadInputException">The document contradicts itself or lacks a number.</exception>
    public static Plan? TryPlan(Terminal terminal, Project project, bool json, CancellationToken stop)
    {
        var result = GarmentPlanner.Plan(project, stop);
        if (result.Plan is { } plan)
            return plan;
        if (result.Outcome == PlanOutcome.BadInput)
            throw new BadInputException([.. result.Reasons.Select(r => new InputFault(r.Place, r.Text))]);
        if (json)
            terminal.WriteJson(writer => PlanJson.WriteReasons(writer, result));
        else
        {
            terminal.Output.WriteLine("No design is feasible as the document stands.");
            foreach (var reason in result.Reasons)
                terminal.Output.WriteLine($"- {reason.Place}: {reason.Text}");
        }
        return null;
    }

    private static InputFault AsInput(Fault fault) =>
        new(fault.Line > 0 ? $"{fault.Path} (line {fault.Line})" : fault.Path, $"found {fault.Found}; allowed: {fault.Allowed}. {fault.Next}");
}
