using System.CommandLine;
using Dyepath.Storage;
using Dyepath.Storage.Database;

namespace Dyepath.Web.Serving;

/// <summary>The options by which every command finds the store.</summary>
internal sealed class DatabaseOptions
{
    private const string Variable = "DYEPATH_DATABASE";

    private const long Megabyte = 1_000_000;

    private const long MostMegabytes = 1_000_000_000;

    private readonly Option<string> _folder = new("--data")
    {
        Description = "Folder of the store.",
        DefaultValueFactory = _ => DataFolder.Usual,
    };

    private readonly Option<string?> _connection = new("--database")
    {
        Description = "Connection string of a PostgreSQL server, such as Host=db;Database=dyepath;Username=dyepath; "
            + $"or the variable {Variable}. Missing: a file in the data folder.",
        DefaultValueFactory = _ => Environment.GetEnvironmentVariable(Variable),
    };

    private readonly Option<int> _projects = new("--most-projects")
    {
        Description = "How many projects the store takes.",
        DefaultValueFactory = _ => StoreLimits.UsualProjects,
    };

    private readonly Option<long> _megabytes = new("--most-megabytes")
    {
        Description = "How much the store takes in all: documents, their versions, handovers, logs and makings.",
        DefaultValueFactory = _ => StoreLimits.UsualBytes / Megabyte,
    };

    private bool _hasLimits;

    /// <summary>For the command that stores what is sent.</summary>
    public void AddLimitsTo(Command command)
    {
        _hasLimits = true;
        command.Options.Add(_projects);
        command.Options.Add(_megabytes);
    }

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Options.Add(_folder);
        command.Options.Add(_connection);
    }

    /// <exception cref="BadSettingException">The connection string names no server, or the store would take nothing.</exception>
    public DatabaseChoice Read(ParseResult parsed)
    {
        var connection = parsed.GetValue(_connection);
        if (connection is not null && !connection.Contains("Host=", StringComparison.OrdinalIgnoreCase))
            throw new BadSettingException("--database is a PostgreSQL connection string and names its server: Host=…");
        if (connection is not null && !CanBeRead(connection))
            throw new BadSettingException("--database cannot be read as a connection string: write Host=db;Database=dyepath;Username=dyepath;Password=…");
        var limits = _hasLimits ? Limits(parsed.GetValue(_projects), parsed.GetValue(_megabytes)) : null;
        var folder = Path.GetFullPath(parsed.GetValue(_folder)!);
        DataFolder.Make(folder);
        return new DatabaseChoice(folder, connection, limits);
    }

    private static StoreLimits Limits(int projects, long megabytes) => projects >= 1 && megabytes is >= 1 and <= MostMegabytes
        ? new StoreLimits(projects, megabytes * Megabyte)
        : throw new BadSettingException($"--most-projects is 1 or more, --most-megabytes from 1 to {MostMegabytes}.");

    /// <summary>What is wrong with it is not said: it may be the password.</summary>
    private static bool CanBeRead(string connection)
    {
        try
        {
            return PostgresDb.Completed(connection).Length > 0;
        }
        catch (Exception e) when (e is ArgumentException or FormatException or InvalidCastException)
        {
            return false;
        }
    }
}
