using System.Collections.Immutable;
using System.CommandLine;
using Dyepath.Core.Documents;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;

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
        return Good(demo ? ProjectReader.Read(DemoProject.Utf8) : ProjectReader.Read(terminal.ReadDocument(file!, MostBytes)));
    }

    /// <summary>One of several documents; each fault says in which.</summary>
    /// <exception cref="BadInputException">Unreadable, or with faults; all of them are listed.</exception>
    public static Project Read(Terminal terminal, string file) => Good(ProjectReader.Read(terminal.ReadDocument(file, MostBytes)), file);

    private static Project Good(ProjectReading reading, string? of = null) =>
        reading.Project ?? throw new BadInputException([.. reading.Faults.Select(fault => In(of, AsInput(fault)))]);

    private static InputFault In(string? of, InputFault fault) => of is null ? fault : fault with { Place = $"{of}: {fault.Place}" };

    /// <summary>Plans the project; null after saying why no design is feasible.</summary>
    /// <exception cref="BadInputException">The document contradicts itself or lacks a number.</exception>
    /// <param name="of">Which of several documents, said with every reason; missing, there is one.</param>
    public static Plan? TryPlan(Terminal terminal, Project project, bool json, CancellationToken stop, string? of = null)
    {
        var result = GarmentPlanner.Plan(project, stop);
        if (result.Plan is { } plan)
            return plan;
        if (result.Outcome == PlanOutcome.BadInput)
            throw new BadInputException([.. result.Reasons.Select(r => In(of, new InputFault(r.Place, r.Text)))]);
        if (json)
            terminal.WriteJson(writer => PlanJson.WriteReasons(writer, result));
        else
        {
            terminal.Output.WriteLine($"No design is feasible as {of ?? "the document"} stands.");
            foreach (var reason in result.Reasons)
                terminal.Output.WriteLine($"- {reason.Place}: {reason.Text}");
        }
        return null;
    }

    /// <summary>Refuses a size that the pattern has not.</summary>
    /// <exception cref="BadInputException">It has none of this name.</exception>
    public static void CheckSize(string option, Plan plan, string name)
    {
        if (plan.Sizes.All(s => s.Name != name))
            throw new BadInputException(option, $"There is no size {name} in this pattern: {SizeSelection.SayChoice(plan.Sizes.Select(s => s.Name))}.");
    }

    /// <summary>A document's fault as the terminal lists it.</summary>
    public static InputFault AsInput(Fault fault) =>
        new(fault.Line > 0 ? $"{fault.Path} (line {fault.Line})" : fault.Path, $"found {fault.Found}; allowed: {fault.Allowed}. {fault.Next}");
}
