using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using Dyepath.Contracts;
using Dyepath.Storage;
using Npgsql;

namespace Dyepath.Web.Tests.Drills;

/// <summary>On a disk of a few megabytes that is full in truth; only root can make one, elsewhere the tests are skipped.</summary>
public class FullDiskTests(Hosts hosts)
{
    [Fact]
    public async Task A_full_disk_under_the_file_is_said_and_loses_nothing()
    {
        using var disk = SmallDisk.Make(megabytes: 24);
        await FillAsync(new DatabaseChoice(disk.Folder), makeRoom: () => File.Delete(Path.Combine(disk.Folder, "ballast")), ballast: () =>
            File.WriteAllBytes(Path.Combine(disk.Folder, "ballast"), new byte[new DriveInfo(disk.Folder).AvailableFreeSpace - 6_000_000]));
    }

    [Fact]
    public async Task A_full_disk_under_the_server_is_said_and_loses_nothing()
    {
        using var disk = SmallDisk.Make(megabytes: 40, owner: "postgres");
        var choice = hosts.Databases.NewDatabase(DatabaseKind.Postgres);
        var (space, database) = ($"small_{Environment.ProcessId}", new NpgsqlConnectionStringBuilder(choice.Connection).Database);
        var ballast = Path.Combine(disk.Folder, "ballast");
        Directory.CreateDirectory(Path.Combine(disk.Folder, "space"));
        SmallDisk.Run("chown", "postgres", Path.Combine(disk.Folder, "space"));
        await TestDatabases.TellAsync(choice, $"CREATE TABLESPACE {space} LOCATION '{disk.Folder}/space'");
        await TestDatabases.TellAsync(choice, $"ALTER DATABASE {database} SET default_tablespace = {space}");
        try
        {
            await FillAsync(choice, makeRoom: () => File.Delete(ballast), ballast: () => File.WriteAllBytes(ballast, new byte[30_000_000]));
        }
        finally
        {
            hosts.Databases.Drop(choice);
            NpgsqlConnection.ClearAllPools();
            await TestDatabases.TellAsync(hosts.Databases.NewDatabase(DatabaseKind.Postgres), $"DROP TABLESPACE {space}");
        }
    }

    private static async Task FillAsync(DatabaseChoice choice, Action makeRoom, Action ballast)
    {
        await using var host = await RunningHost.StartAsync(new(choice, 0));
        var project = await host.CreateAsync("""{ "title": "kept" }""");
        ballast();
        var stored = new Dictionary<string, string>();
        for (var i = 0; ; i++)
        {
            Assert.InRange(i, 0, 100);
            // Letters that no database packs into less.
            var text = $$"""{ "title": "{{i}}", "x": "{{Convert.ToHexString(System.Security.Cryptography.RandomNumberGenerator.GetBytes(150_000))}}" }""";
            using var answer = await host.Client.PostAsync(ApiPaths.Projects, RunningHost.Json(text));
            if (answer.StatusCode == HttpStatusCode.Created)
            {
                stored.Add((await RunningHost.SummaryAsync(answer)).Id, text);
                continue;
            }
            var problem = await RunningHost.ProblemAsync(HttpStatusCode.InsufficientStorage, answer);
            Assert.Contains("full", problem.Title, StringComparison.Ordinal);
            break;
        }
        var large = $$"""{ "title": "{{Convert.ToHexString(System.Security.Cryptography.RandomNumberGenerator.GetBytes(700_000))}}" }""";
        using (var saved = await host.SaveAsync(project.Id, project.Etag, large))
            await RunningHost.ProblemAsync(HttpStatusCode.InsufficientStorage, saved);
        foreach (var (id, text) in stored)
            Assert.Equal(text, await host.Client.GetStringAsync(ApiPaths.Project(id)));
        Assert.Equal("""{ "title": "kept" }""", await host.Client.GetStringAsync(ApiPaths.Project(project.Id)));
        var ready = (await host.Client.GetFromJsonAsync("health/ready", ContractsJson.Default.Readiness))!;
        Assert.Contains(ready.Troubles, trouble => trouble.Kind == "full");
        makeRoom();
        using var again = await host.SaveAsync(project.Id, project.Etag, large);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal(large, await host.Client.GetStringAsync(ApiPaths.Project(project.Id)));
    }

    /// <summary>A disk of its own, in memory.</summary>
    private sealed class SmallDisk : IDisposable
    {
        private SmallDisk(string folder) => Folder = folder;

        public string Folder { get; }

        public static SmallDisk Make(int megabytes, string? owner = null)
        {
            var folder = Directory.CreateTempSubdirectory("dyepath-small-").FullName;
            var mounted = OperatingSystem.IsLinux() && Run("mount", "-t", "tmpfs", "-o", $"size={megabytes}m", "none", folder);
            if (!mounted)
                Directory.Delete(folder);
            Assert.SkipUnless(mounted, "Only root can make a small disk.");
            if (owner is not null)
                Run("chown", owner, folder);
            return new SmallDisk(folder);
        }

        public static bool Run(string program, params string[] arguments)
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }

        public void Dispose()
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Run("umount", "-l", Folder);
            Directory.Delete(Folder);
        }
    }
}
