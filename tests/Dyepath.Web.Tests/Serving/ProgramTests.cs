using System.Net.Http.Json;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Storage;
using Dyepath.Storage.Projects;
using Dyepath.Web.Tests.Makings;
using Microsoft.Data.Sqlite;

namespace Dyepath.Web.Tests.Serving;

/// <summary>The program itself, as a process.</summary>
public class ProgramTests(Hosts hosts)
{
    [Fact]
    public async Task Ctrl_C_ends_it_cleanly()
    {
        await using var program = await RunningProgram.StartAsync(hosts.Databases.NewDatabase(DatabaseKind.Sqlite).Folder);
        Assert.Equal(0, await program.InterruptAsync());
    }

    [Fact]
    public async Task What_it_cannot_follow_it_says_and_exits_with_2()
    {
        var folder = hosts.Databases.NewDatabase(DatabaseKind.Sqlite).Folder;
        var backup = Path.Combine(folder, "backup.jsonl");
        await File.WriteAllTextAsync(backup, """
            {"start":{"form":1,"takenAt":"2026-03-01T09:00:00+00:00"}}
            {"project":{"id":"01a213eb-a650-7c83-a879-5f4dba01ca42","name":"x","archived":false,"createdAt":"2026-03-01T09:00:00+00:00",
            """.TrimEnd() + """
            "updatedAt":"2026-03-01T09:00:00+00:00","lastVersion":0,"document":"{ no document"}}
            {"end":{"projects":1,"versions":0}}
            """);
        foreach (var (arguments, said) in new[]
        {
            ($"serve --data {folder} --listen 0.0.0.0", "--access-token"),
            ($"serve --data {folder} --database {folder}", "Host="),
            ($"serve --data {folder} --database Host=db;Prot=sesame", "--database"),
            ($"serve --data {folder} --most-projects 0", "--most-projects"),
            ($"serve --data {folder} --most-megabytes -1", "--most-megabytes"),
            ($"restore --data {folder} {folder}/nowhere.jsonl", "nowhere.jsonl"),
            ($"restore --data {folder} {backup}", "Line 2"),
        })
        {
            var (code, _, errors) = await RunningProgram.RunAsync(arguments);
            Assert.Equal(2, code);
            Assert.Contains(said, errors, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_backup_is_taken_while_the_host_serves_and_restored_elsewhere()
    {
        var (from, to) = (hosts.Databases.NewDatabase(DatabaseKind.Sqlite), hosts.Databases.NewDatabase(DatabaseKind.Sqlite));
        var file = Path.Combine(from.Folder, "projects.jsonl");
        const string making = "0123456789ABCDEFGHIJKLMNOP";
        var key = "";
        await using (var host = await RunningHost.StartAsync(new(from, 0)))
        {
            var project = (await host.Client.GetFromJsonAsync(ApiPaths.Projects, ContractsJson.Default.ProjectSummaryArray))!.Single().Id;
            using var given = await host.Client.PostAsync(ApiPaths.Handovers(project), RunningHost.Json("""{ "size": "M" }"""));
            key = (await given.Content.ReadFromJsonAsync(ContractsJson.Default.Handover))!.Key;
            (await host.SendLogAsync(key, making, Pieces.Text(rows: 2))).Dispose();
            using var begin = new HttpRequestMessage(HttpMethod.Put, ApiPaths.NewMaking(making, project))
            {
                Content = RunningHost.Json(Pieces.Text(rows: 5)),
                Headers = { { "If-None-Match", "*" } },
            };
            (await host.Client.SendAsync(begin)).Dispose();
            var (code, output, errors) = await RunningProgram.RunAsync($"backup --data {from.Folder} {file}");
            Assert.True(code == 0, errors);
            Assert.StartsWith(
                "1 projects and 0 earlier versions, 1 handovers and 1 makers' logs, and 1 makings", output, StringComparison.Ordinal);
        }
        var restored = await RunningProgram.RunAsync($"restore --data {to.Folder} {file}");
        Assert.True(restored.Code == 0, restored.Errors);
        await using var other = await RunningHost.StartAsync(new(to, 0));
        var shelf = await other.Client.GetFromJsonAsync(ApiPaths.Projects, ContractsJson.Default.ProjectSummaryArray);
        Assert.Equal("Tideline", Assert.Single(shelf!).Name);
        Assert.Equal(Pieces.Text(rows: 5), await other.Client.GetStringAsync(ApiPaths.Making(making)));
        using var opened = await other.OpenAsync(key);
        Assert.Equal(Pieces.Text(rows: 0), await opened.Content.ReadAsStringAsync());
        var log = Assert.Single((await other.Client.GetFromJsonAsync(ApiPaths.Logs(shelf![0].Id), ContractsJson.Default.ReceivedLogArray))!);
        Assert.Equal(Pieces.Text(rows: 2), await other.Client.GetStringAsync(ApiPaths.Log(shelf[0].Id, log.Id)));
    }

    [Fact]
    public async Task A_backup_of_a_folder_without_a_store_leaves_the_last_one_as_it_is()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Sqlite);
        var file = Path.Combine(database.Folder, "backup.jsonl");
        await File.WriteAllTextAsync(file, "the last one");
        var (code, _, errors) = await RunningProgram.RunAsync($"backup --data {Path.Combine(database.Folder, "elsewhere")} {file}");
        Assert.Equal(2, code);
        Assert.Contains("There is no store in", errors, StringComparison.Ordinal);
        Assert.Equal("the last one", await File.ReadAllTextAsync(file));
    }

    [Fact]
    public async Task A_backup_is_its_owner_s_alone_and_replaces_the_last_one_once_it_is_whole()
    {
        if (OperatingSystem.IsWindows())
            return; // It gives files the rights of their folder.
        var database = hosts.Databases.NewDatabase(DatabaseKind.Sqlite);
        await (await RunningHost.StartAsync(new(database, 0))).DisposeAsync();
        var file = Path.Combine(database.Folder, "backup.jsonl");
        const UnixFileMode owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        foreach (var left in new[] { file, $"{file}.unfinished" })
        {
            await File.WriteAllTextAsync(left, "left by an earlier run");
            File.SetUnixFileMode(left, owner | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        }
        var (code, _, errors) = await RunningProgram.RunAsync($"backup --data {database.Folder} {file}");
        Assert.True(code == 0, errors);
        Assert.Equal(owner, File.GetUnixFileMode(file));
        Assert.False(File.Exists($"{file}.unfinished"));
        var made = Path.Combine(database.Folder, "made");
        Assert.Equal(0, (await RunningProgram.RunAsync($"restore --data {made} {file}")).Code);
        Assert.Equal(owner | UnixFileMode.UserExecute, File.GetUnixFileMode(made));
        foreach (var stored in Directory.GetFiles(made))
            Assert.Equal(owner, File.GetUnixFileMode(stored));
    }

    [Fact]
    public async Task A_backup_of_a_damaged_store_says_so_and_a_restore_prints_no_name_raw()
    {
        var (from, to) = (hosts.Databases.NewDatabase(DatabaseKind.Sqlite), hosts.Databases.NewDatabase(DatabaseKind.Sqlite));
        var file = Path.Combine(from.Folder, "projects.jsonl");
        await using (var host = await RunningHost.StartAsync(new(from, 0)))
        {
            var project = await host.CreateAsync("{}");
            (await host.SaveAsync(project.Id, project.Etag, """{ "title": "Storm" }""")).Dispose();
            await host.SpoilAsync($"UPDATE projects SET document = {"{"u8.ToArray()}, name = {"Sto\u001b[2Jrm\u202e"} WHERE id = {project.Id}");
            await host.SpoilAsync($"UPDATE projects SET name = {"Tide\u001b[2Jline\u2028"} WHERE id <> {project.Id}");
        }
        var (code, output, errors) = await RunningProgram.RunAsync($"backup --data {from.Folder} {file}");
        Assert.Equal(3, code);
        Assert.StartsWith("2 projects and 1 earlier versions", output, StringComparison.Ordinal);
        Assert.Contains("“Sto [2Jrm”", errors, StringComparison.Ordinal);
        Assert.Contains("its version 1", errors, StringComparison.Ordinal);
        Assert.Equal(0, (await RunningProgram.RunAsync($"restore --data {to.Folder} {file}")).Code);
        var again = await RunningProgram.RunAsync($"restore --data {to.Folder} {file}");
        Assert.Contains("Tide [2Jline is in the store already", again.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', errors + again.Output);
    }

    [Fact]
    public async Task A_server_that_is_not_there_is_named_at_the_start()
    {
        var folder = hosts.Databases.NewDatabase(DatabaseKind.Sqlite).Folder;
        foreach (var command in new[] { "serve", $"backup {folder}/b.jsonl" })
        {
            var (code, _, errors) = await RunningProgram.RunAsync(
                $"{command} --data {folder} --database Host=127.0.0.1;Port=9;Database=patterns;Username=u;Password=sesame;Timeout=1");
            Assert.Equal(2, code);
            Assert.Contains("cannot be reached at 127.0.0.1:9, database patterns", errors, StringComparison.Ordinal);
            Assert.DoesNotContain("sesame", errors, StringComparison.Ordinal);
        }
    }

    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task Sessions_that_cannot_be_ended_at_the_start_are_said_and_it_exits_with_2(DatabaseKind kind)
    {
        var database = hosts.Databases.NewDatabase(kind);
        await using (var host = await RunningHost.StartAsync(new(database, 0)))
        {
            if (kind == DatabaseKind.Postgres)
            {
                await host.SpoilAsync($"CREATE FUNCTION fill() RETURNS trigger LANGUAGE plpgsql AS $f$ BEGIN RAISE 'full' USING ERRCODE = 'disk_full'; END $f$");
                await host.SpoilAsync($"CREATE TRIGGER fill BEFORE DELETE ON sessions EXECUTE FUNCTION fill()");
            }
        }
        if (kind == DatabaseKind.Sqlite)
            await DamageAsync(database.File, "sessions");
        var (code, _, errors) = await RunningProgram.RunAsync(
            $"serve --port 0 --data {database.Folder} --access-token correct-horse-battery {(database.Connection is { } server ? $"--database {server}" : "")}");
        Assert.Equal(2, code);
        Assert.Contains(kind == DatabaseKind.Sqlite ? "is damaged." : "is full.", errors, StringComparison.Ordinal);
    }

    /// <summary>What was answered with 200 is there after a kill in the middle of writing, and the project is whole.</summary>
    [Fact]
    public async Task A_save_that_was_answered_survives_kill_9()
    {
        var folder = await hosts.BegunFolderAsync();
        var random = new Random(7);
        string? id = null;
        var (answered, sent) = ("", "");
        for (var life = 0; life < 2; life++)
        {
            await using var program = await RunningProgram.StartAsync(folder);
            id ??= (await program.CreateAsync(answered = sent = "{}")).Id;
            var found = await program.Client.GetStringAsync(ApiPaths.Project(id));
            Assert.True(found == answered || found == sent, "The stored text is neither the last one answered nor the one under way.");
            var busy = new TaskCompletionSource();
            var saving = SaveAsync(program, found, busy);
            await busy.Task.WaitAsync(TimeSpan.FromMinutes(5));
            await Task.Delay(random.Next(30));
            program.Kill();
            await saving;
        }
        await using var last = await RunningHost.StartAsync(new(new DatabaseChoice(folder), 0));
        Assert.Contains(await last.Client.GetStringAsync(ApiPaths.Project(id!)), new[] { answered, sent });
        var versions = (await last.Client.GetFromJsonAsync(ApiPaths.Versions(id!), ContractsJson.Default.VersionSummaryArray))!;
        foreach (var version in versions)
            Assert.Equal(version.Bytes, (await last.Client.GetByteArrayAsync(ApiPaths.Version(id!, version.Number))).Length);

        async Task SaveAsync(RunningProgram program, string text, TaskCompletionSource busy)
        {
            try
            {
                answered = text;
                for (var saves = 0; ; answered = sent, saves++)
                {
                    if (saves == 5)
                        busy.SetResult();
                    // Large enough that a kill can fall into the middle of a write.
                    sent = $$"""{ "save": {{saves}}, "text": "{{Guid.NewGuid()}}{{new string('x', 200_000)}}" }""";
                    using var answer = await program.SaveAsync(id!, Etags.Of(Encoding.UTF8.GetBytes(answered)), sent);
                    answer.EnsureSuccessStatusCode();
                }
            }
            catch (HttpRequestException e) when (e.StatusCode is null)
            {
                // Killed.
            }
        }
    }

    /// <summary>The first page of the table is none of SQLite's any more.</summary>
    private static async Task DamageAsync(string file, string table)
    {
        long page, size;
        await using (var connection = new SqliteConnection($"Data Source={file};Pooling=False"))
        {
            await connection.OpenAsync();
            await using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
            await command.ExecuteNonQueryAsync();
            command.CommandText = "PRAGMA page_size";
            size = (long)(await command.ExecuteScalarAsync())!;
            command.CommandText = "SELECT rootpage FROM sqlite_master WHERE name = $table";
            command.Parameters.AddWithValue("$table", table);
            page = (long)(await command.ExecuteScalarAsync())!;
        }
        await using var bytes = File.OpenWrite(file);
        bytes.Position = (page - 1) * size;
        await bytes.WriteAsync(Enumerable.Repeat((byte)0xff, (int)size).ToArray());
    }
}
