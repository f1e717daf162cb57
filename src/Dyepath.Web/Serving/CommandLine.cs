using System.CommandLine;
using Dyepath.Storage;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Faults;
using Dyepath.Web.Protection;

namespace Dyepath.Web.Serving;

/// <summary>The one place where a command's outcome becomes an exit code.</summary>
internal static class CommandLine
{
    private const int BadInput = 2;
    private const int InternalFault = 4;

    /// <summary>The exit code.</summary>
    public static async Task<int> RunAsync(RootCommand root, string[] args)
    {
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            const string hint = "See dyepath-web --help, or --help after a command's name.";
            foreach (var error in parsed.Errors)
                await Terminal.ComplainAsync($"{error.Message} {hint}");
            return BadInput;
        }
        try
        {
            // The server itself listens for Ctrl-C and finishes what it is doing.
            var configuration = new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
            return await parsed.InvokeAsync(configuration);
        }
        catch (Exception bad)
            when (bad is BadSettingException or BadBackupException or StoreNotReadyException or IOException or UnauthorizedAccessException)
        {
            await Terminal.ComplainAsync(bad.Message);
            return BadInput;
        }
        catch (StoreException store)
        {
            var words = new StoreTroubles(new StoreLimits()).Of(store.Fault).Words;
            await Terminal.ComplainAsync($"{words.Title} {words.Detail} ({store.GetBaseException().Message})");
            return BadInput;
        }
#pragma warning disable CA1031 // The last resort: whatever else went wrong is ours or the database's, and says so.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            await Terminal.ComplainAsync($"Dyepath could not go on: {fault.GetType().Name}: {fault.Message}");
            return InternalFault;
        }
    }
}

/// <summary>An option that cannot be followed; the message says what to do.</summary>
internal sealed class BadSettingException(string message) : Exception(message);
