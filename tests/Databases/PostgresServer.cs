using System.Diagnostics;

namespace Dyepath.Tests;

/// <summary>A PostgreSQL server of a test's own, which may be crashed; gone with it.</summary>
public sealed class PostgresServer : IDisposable
{
    private const string Script = "with-postgres";

    private readonly Process _process;

    private PostgresServer(Process process, string connection) => (_process, Connection) = (process, connection);

    public string Connection { get; }

    public static PostgresServer Open()
    {
        var (process, connection) = Start();
        return new PostgresServer(process, connection);
    }

    /// <summary>Every connection breaks in the middle of what it does; returns when the server takes connections again.</summary>
    public async Task CrashAsync()
    {
        var folder = new Npgsql.NpgsqlConnectionStringBuilder(Connection).Host!;
        using var crash = Process.Start(Command("--crash", folder))!;
        _ = crash.StandardOutput.ReadToEndAsync();
        await crash.WaitForExitAsync();
        if (crash.ExitCode != 0)
            throw new InvalidOperationException("PostgreSQL could not be started again; it says above why.");
    }

    public void Dispose() => Stop(_process);

    internal static (Process Process, string Connection) Start()
    {
        const string variable = "DYEPATH_TEST_POSTGRES";
        var process = Process.Start(Command("sh", "-c", $"echo \"${variable}\"; cat >/dev/null"))!;
        return (process, process.StandardOutput.ReadLine()
            ?? throw new InvalidOperationException("tests/with-postgres could not start PostgreSQL; it says above why."));
    }

    internal static void Stop(Process process)
    {
        process.StandardInput.Close();
        process.WaitForExit();
        process.Dispose();
    }

    private static ProcessStartInfo Command(params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(Root(), "tests", Script), arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        // Processes are killed here, never the machine: nothing has to be on the disk itself.
        start.Environment["DYEPATH_POSTGRES_OPTIONS"] = "-c fsync=off -c max_connections=400";
        return start;
    }

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Dyepath.slnx")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests run outside the repository.");
        return folder;
    }
}
