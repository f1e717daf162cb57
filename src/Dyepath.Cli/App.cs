using System.CommandLine;
using System.CommandLine.Parsing;
using Dyepath.Cli.Commands;

namespace Dyepath.Cli;

/// <summary>The command line: a list of commands, and one place where their outcome becomes an exit code.</summary>
internal static class App
{
    private const string Description = """
        Dyepath plans garments in planned pooling: which stitch counts make a variegated yarn draw the
        motif, which of them fit which size, and the pattern to hand to a maker.

        Start here:
          dyepath new > project.json           a commented starter document; edit it
          dyepath verify project.json          what is wrong or missing in it
          dyepath yarn project.json            what the measurements say
          dyepath plan project.json            counts, sizes, yarn to buy
          dyepath booklet project.json --out pattern
          dyepath adapt project.json --size M --sections 5,4,3,5,4
                                               the pattern for a reader's own yarn
          dyepath errata published.json project.json
                                               what changed, and whom it touches
          dyepath price project.json --ball 9.50 --wage 15
          dyepath yarn --taps swatch.txt       the sequence of a yarn, from the colour of every stitch
          dyepath cards --new > workshop.json  a workshop's people; then dyepath cards workshop.json --out cards

        Exit codes: 0 success, 2 bad input or an output that cannot be written, 3 no feasible design,
        4 internal fault, 130 cancelled.
        """;

    private const string Hint = " See dyepath --help, or --help after a command's name.";

    /// <summary>How long after Ctrl-C a command may still tidy up; then it is left behind with the process.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.5);

    public static async Task<int> RunAsync(
        string[] args, TextReader input, TextWriter output, TextWriter errors, CancellationToken cancellation = default)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var terminal = new Terminal(input, output, errors, stop.Token);
        var root = new RootCommand(Description)
        {
            FabricCommand.Create(terminal),
            CountsCommand.Create(terminal),
            SimulateCommand.Create(terminal),
            NewCommand.Create(terminal),
            YarnCommand.Create(terminal),
            VerifyCommand.Create(terminal),
            PlanCommand.Create(terminal),
            BookletCommand.Create(terminal),
            AdaptCommand.Create(terminal),
            ErrataCommand.Create(terminal),
            PriceCommand.Create(terminal),
            PicturesCommand.Create(terminal),
            CardsCommand.Create(terminal),
        };
        var parsed = root.Parse(args);
        terminal.Json = args.Any(AsksForJson);
        if (parsed.Errors.Count > 0)
            return terminal.Fail([.. parsed.Errors.Select(AsInput)]);
        void Cancel(object? sender, ConsoleCancelEventArgs e)
        {
            e.Cancel = true;
            stop.Cancel();
        }
        Console.CancelKeyPress += Cancel;
        try
        {
            var configuration = new InvocationConfiguration
            {
                Output = output,
                Error = errors,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            };
            return await OrStopped(Task.Run(() => parsed.InvokeAsync(configuration, stop.Token)), stop.Token).ConfigureAwait(false);
        }
        catch (BadInputException bad)
        {
            return terminal.Fail(bad.Faults);
        }
        catch (OperationCanceledException)
        {
            return terminal.Stopped();
        }
        catch (IOException unwritable)
        {
            // Commands say themselves which file could not be read or written; only the output is left.
            await errors.WriteLineAsync($"standard output: It could not be written: {unwritable.Message}").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
#pragma warning disable CA1031 // The last resort: whatever else went wrong is ours, and says so.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return terminal.Broken(fault);
        }
        finally
        {
            Console.CancelKeyPress -= Cancel;
        }
    }

    /// <summary>Looked for in the words themselves, for faults are written as JSON even where the line could not be understood.</summary>
    private static bool AsksForJson(string arg) =>
        arg == "--json"
        || arg.Equals("--json=true", StringComparison.OrdinalIgnoreCase)
        || arg.Equals("--json:true", StringComparison.OrdinalIgnoreCase);

    private static InputFault AsInput(ParseError error) =>
        new((error.SymbolResult as OptionResult)?.Option.Name ?? "command line", error.Message + Hint);

    /// <summary>A command that waits for input, or is deep in one long step, cannot look at the token itself.</summary>
    private static async Task<int> OrStopped(Task<int> command, CancellationToken stop)
    {
        var stopped = Task.Delay(Timeout.Infinite, stop);
        if (await Task.WhenAny(command, stopped).ConfigureAwait(false) == stopped)
            await Task.WhenAny(command, Task.Delay(Patience, CancellationToken.None)).ConfigureAwait(false);
        return command.IsCompleted ? await command.ConfigureAwait(false) : throw new OperationCanceledException(stop);
    }
}
