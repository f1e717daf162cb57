using System.CommandLine;
using System.Text.Json;
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

        Exit codes: 0 success, 2 bad input, 3 no feasible design, 4 internal fault, 130 cancelled.
        """;

    public static async Task<int> RunAsync(string[] args, TextReader input, TextWriter output, TextWriter errors)
    {
        var terminal = new Terminal(input, output, errors);
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
        };
        var parsed = root.Parse(args);
        terminal.Json = args.Contains("--json");
        if (parsed.Errors.Count > 0)
            return terminal.Fail([.. parsed.Errors.Select(e => new InputFault("command line", e.Message))]);
        using var stop = new CancellationTokenSource();
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
            return await parsed.InvokeAsync(configuration, stop.Token).ConfigureAwait(false);
        }
        catch (BadInputException bad)
        {
            return terminal.Fail(bad.Faults);
        }
        catch (OperationCanceledException)
        {
            await errors.WriteLineAsync("Stopped; nothing was left half-written.").ConfigureAwait(false);
            return ExitCode.Cancelled;
        }
#pragma warning disable CA1031 // The last resort: whatever else went wrong is ours, and says so.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            await errors.WriteLineAsync($"Something went wrong inside dyepath, not in what you gave it: {fault}").ConfigureAwait(false);
            return ExitCode.InternalFault;
        }
        finally
        {
            Console.CancelKeyPress -= Cancel;
        }
    }
}
