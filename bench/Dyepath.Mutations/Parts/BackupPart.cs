using System.Text;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;
using Dyepath.Storage;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Web;
using Dyepath.Web.Projects;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Mutations.Parts;

/// <summary>Backups of a real store, restored into an empty one: whole and as they were, or not at all.</summary>
internal sealed class BackupPart : IPart
{
    private static readonly BackupRules Rules = new(
        DocumentId.IsValid, document => DocumentText.Read(document).Text is not null, document => MakingReader.Read(document).IsGood);

    private DirectoryInfo? _folder;
    private ServiceProvider? _services;
    private string[] _lines = [];

    public string Name => "backups";

    public async Task PrepareAsync(int seed)
    {
        _lines = (await TakenAsync(seed)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        _folder = Directory.CreateTempSubdirectory("dyepath-mutations-");
        _services = new ServiceCollection().AddStorage(new DatabaseChoice(_folder.FullName)).BuildServiceProvider();
        await using var scope = _services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<AppDb>().PrepareAsync(default);
    }

    /// <summary>A backup of a store that was filled as people fill it.</summary>
    private static async Task<string> TakenAsync(int seed)
    {
        await using var host = await OwnHost.StartAsync();
        var projects = Bases.Projects(seed, 4);
        foreach (var project in projects)
        {
            var id = Guid.NewGuid().ToString();
            var making = MakingPart.Write(project, new Random(seed));
            var (_, _, etag, _) = await SendAsync(HttpMethod.Post, ApiPaths.NewProject(id), project);
            await SendAsync(HttpMethod.Put, ApiPaths.Project(id), project + " ", ("If-Match", etag!));
            await SendAsync(HttpMethod.Put, ApiPaths.NewMaking(Guid.NewGuid().ToString(), id), making, ("If-None-Match", "*"));
            var size = JsonDocument.Parse(making).RootElement.GetProperty("size").GetString()!;
            var handed = await SendAsync(HttpMethod.Post, ApiPaths.Handovers(id), JsonSerializer.Serialize(new NewHandover(size), ContractsJson.Default.NewHandover));
            var key = JsonSerializer.Deserialize(handed.Body, ContractsJson.Default.Handover)!.Key;
            await SendAsync(HttpMethod.Put, ApiPaths.HandedLog(Guid.NewGuid().ToString()), making, (ApiPaths.HandedKeyHeader, key));
        }
        await using var scope = host.App.Services.CreateAsyncScope();
        using var stream = new MemoryStream();
        await scope.ServiceProvider.GetRequiredService<BackupStore>().WriteAsync(stream, default);
        return Encoding.UTF8.GetString(stream.ToArray());

        async Task<(System.Net.HttpStatusCode Status, byte[] Body, string? Etag, string? Type)> SendAsync(HttpMethod method, string path, string body, params (string, string)[] headers)
        {
            var answer = await host.SendAsync(method, path, Encoding.UTF8.GetBytes(body), default, headers);
            return (int)answer.Status < 300 ? answer : throw new InvalidOperationException($"{method} {path}: {answer.Status} {Encoding.UTF8.GetString(answer.Body)}");
        }
    }

    public byte[] Input(int seed, int number)
    {
        var random = new Random(unchecked(seed * 1_000_003 + number));
        var lines = _lines.ToList();
        var at = random.Next(lines.Count);
        switch (random.Next(12))
        {
            case 0:
                lines.RemoveAt(at);
                break;
            case 1:
                lines.Insert(random.Next(lines.Count), lines[at]);
                break;
            case 2:
                var with = random.Next(lines.Count);
                (lines[at], lines[with]) = (lines[with], lines[at]);
                break;
            case 3:
                return Mutator.DamageBytes(Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"), random);
            default:
                lines[at] = Encoding.UTF8.GetString(Mutator.Damage(lines[at], random));
                break;
        }
        return Encoding.UTF8.GetBytes(string.Join(random.Next(20) == 0 ? "\r\n" : "\n", lines) + (random.Next(10) == 0 ? "" : "\n"));
    }

    public async Task<string> TryAsync(byte[] input, int number, CancellationToken cancel)
    {
        try
        {
            await RestoreAsync(input, cancel);
        }
        catch (BadBackupException bad)
        {
            if (bad.Message.Length == 0 || bad.Message[^1] != '.' || !bad.Message.Contains("line", StringComparison.OrdinalIgnoreCase))
                throw new Broken($"a backup is refused without a place: {bad.Message}");
            if (Lines(await TakeAsync(cancel)).Length != 2)
                throw new Broken("a backup was refused and something of it restored");
            return "refused";
        }
        try
        {
            var kept = Lines(await TakeAsync(cancel));
            foreach (var line in Lines(input)[1..^1])
            {
                if (!kept.Any(other => IsKept(line, other)))
                    throw new Broken($"a line was restored as something else: {line[..Math.Min(line.Length, 300)]}");
            }
        }
        finally
        {
            await EmptyAsync(cancel);
        }
        return "restored";
    }

    private static string[] Lines(byte[] backup) => Encoding.UTF8.GetString(backup).TrimStart('\ufeff').Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool IsKept(string line, string other)
    {
        var (before, after) = (JsonDocument.Parse(line).RootElement, JsonDocument.Parse(other).RootElement);
        return Same(before, after);

        static bool Same(JsonElement one, JsonElement two) => one.ValueKind == two.ValueKind && one.ValueKind switch
        {
            JsonValueKind.Object => one.EnumerateObject().All(m => m.Value.ValueKind == JsonValueKind.Null || two.TryGetProperty(m.Name, out var value) && Same(m.Value, value)),
            JsonValueKind.Array => one.GetArrayLength() == two.GetArrayLength() && one.EnumerateArray().Zip(two.EnumerateArray()).All(p => Same(p.First, p.Second)),
            JsonValueKind.String => one.GetString() == two.GetString()
                || one.TryGetDateTimeOffset(out var a) && two.TryGetDateTimeOffset(out var b) && Math.Abs((a - b).TotalMilliseconds) < 1,
            JsonValueKind.Number => one.GetDouble().Equals(two.GetDouble()),
            _ => true,
        };
    }

    private async Task RestoreAsync(byte[] backup, CancellationToken cancel)
    {
        await using var scope = _services!.CreateAsyncScope();
        using var stream = new MemoryStream(backup);
        await scope.ServiceProvider.GetRequiredService<BackupStore>().RestoreAsync(stream, Rules, cancel);
    }

    private async Task<byte[]> TakeAsync(CancellationToken cancel)
    {
        await using var scope = _services!.CreateAsyncScope();
        using var stream = new MemoryStream();
        await scope.ServiceProvider.GetRequiredService<BackupStore>().WriteAsync(stream, cancel);
        return stream.ToArray();
    }

    private async Task EmptyAsync(CancellationToken cancel)
    {
        await using var scope = _services!.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        foreach (var table in db.Model.GetEntityTypes().Select(t => t.GetTableName()!).Distinct().OrderByDescending(t => t == "versions" || t == "maker_logs" || t == "logs").ToArray())
        {
#pragma warning disable EF1002, EF1003 // The names are the model's own.
            await db.Database.ExecuteSqlRawAsync($"PRAGMA foreign_keys = OFF; DELETE FROM \"{table}\"; PRAGMA foreign_keys = ON", cancel);
#pragma warning restore EF1002, EF1003
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_services is not null)
            await _services.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        _folder?.Delete(recursive: true);
    }
}
