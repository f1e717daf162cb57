using System.CommandLine;
using Dyepath.Storage;

namespace Dyepath.Web.Serving;

/// <summary>The options by which every command finds the store.</summary>
internal sealed class DatabaseOptions
{
    private const string Variable = "DYEPATH_DATABASE";

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

    public void AddTo(Command command)
    {
        command.Options.Add(_folder);
        command.Options.Add(_connection);
    }

    /// <exception cref="BadSettingException">The connection string names no server.</exception>
    public DatabaseChoice Read(ParseResult parsed)
    {
        var connection = parsed.GetValue(_connection);
        if (connection is not null && !connection.Contains("Host=", StringComparison.OrdinalIgnoreCase))
            throw new BadSettingException("--database is a PostgreSQL connection string and names its server: Host=…");
        var folder = Path.GetFullPath(parsed.GetValue(_folder)!);
        DataFolder.Make(folder);
        return new DatabaseChoice(folder, connection);
    }
}
