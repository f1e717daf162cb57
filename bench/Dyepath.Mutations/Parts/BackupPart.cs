using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;
using Dyepath.Storage;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Mutations.Parts;

/// <summary>Backups of a real store, restored into an empty one: whole and as they were, or not at all.</summary>
internal sealed class BackupPart : IPart
{
    private DirectoryInfo? _folder;
    private ServiceProvider? _services;
    private string[] _lines = [];

    public string Name => "backups";

    public async Task PrepareAsync(int seed)
    {
        _lines = (await TakenAsync(seed)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        _folder = Directory.CreateTempSubdirectory("dyepath-mutations-");
        _services = new ServiceCollection().AddStorage(new DatabaseChoice(_folder.FullName), Dyepath.Web.Stores.Forms).BuildServiceProvider();
        await using var scope = _services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<AppDb>().PrepareAsync(default);
    }

    /// <summary>
    /// A backup of a store that was filled as people fill it, under a clock that stands: but for ids and keys that the store draws itself,
    /// the same in every run, and of the same length.
    /// </summary>
    private static async Task<string> TakenAsync(int seed)
    {
        var folder = Directory.CreateTempSubdirectory("dyepath-mutations-");
        await using (var services = new ServiceCollection().AddSingleton<TimeProvider>(new Standing()).AddStorage(new DatabaseChoice(folder.FullName), Dyepath.Web.Stores.Forms).BuildServiceProvider())
        {
            await WithAsync<AppDb, int>(services, async db => { await db.PrepareAsync(default); return 0; });
            foreach (var (project, i) in Bases.Projects(seed, 4).Select((p, i) => (p, i)))
            {
                var id = new Guid(i + 1, 2, 3, new byte[8]).ToString();
                var making = MakingPart.Write(project, new Random(seed));
                var read = MakingReader.Read(Encoding.UTF8.GetBytes(making)).Making!;
                var text = new MakingText(Encoding.UTF8.GetBytes(making), read.Project.Title, read.Size, read.Log.Length);
                var draft = new Draft(Encoding.UTF8.GetBytes(project), read.Project.Title, null);
                await WithAsync<ProjectStore, object>(services, s => Boxed(s.CreateAsync(id, draft, default)));
                await WithAsync<ProjectStore, object>(services, s => Boxed(s.SaveAsync(id, draft.Etag, new Draft(Encoding.UTF8.GetBytes(project + " "), read.Project.Title, null), true, default)));
                await WithAsync<MakingStore, object>(services, s => Boxed(s.CreateAsync(new Guid(i + 1, 5, 6, new byte[8]).ToString(), id, text, default)));
                var handed = await WithAsync<HandoverStore, HandoverOutcome>(services, s => s.CreateAsync(id, text, default));
                var piece = await WithAsync<HandoverStore, HandedPiece?>(services, s => s.OpenAsync(((HandoverOutcome.Done)handed).Handover.Key, default));
                await WithAsync<MakerLogStore, object>(services, s => Boxed(s.ReceiveAsync(piece!, new Guid(i + 1, 7, 8, new byte[8]).ToString(), text, default)));
            }
            using var stream = new MemoryStream();
            await WithAsync<BackupStore, object>(services, s => Boxed(s.WriteAsync(stream, default)));
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            folder.Delete(recursive: true);
            return Encoding.UTF8.GetString(stream.ToArray());
        }
    }

    private static async Task<object> Boxed<T>(Task<T> task) => (await task)!;

    private static async Task<TResult> WithAsync<T, TResult>(ServiceProvider services, Func<T, Task<TResult>> work)
        where T : notnull
    {
        await using var scope = services.CreateAsyncScope();
        return await work(scope.ServiceProvider.GetRequiredService<T>());
    }

    private sealed class Standing : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 1, 9, 0, 0, 123, TimeSpan.Zero);
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
        // Every second time by someone who hashes too.
        if (random.Next(2) == 0)
            lines = Hashed(lines);
        return Encoding.UTF8.GetBytes(string.Join(random.Next(20) == 0 ? "\r\n" : "\n", lines) + (random.Next(10) == 0 ? "" : "\n"));
    }

    /// <summary>Each line behind the hash of the one before and itself (docs/running.md says how).</summary>
    private static List<string> Hashed(List<string> lines)
    {
        const int head = 75;
        byte[] last = [];
        return [.. lines.Select(line =>
        {
            var rest = line.StartsWith("{\"hash\":\"", StringComparison.Ordinal) && line.Length > head ? line[head..] : line;
            last = SHA256.HashData([.. last, .. Encoding.UTF8.GetBytes(rest)]);
            return $"{{\"hash\":\"{Convert.ToHexStringLower(last)}\",{rest}";
        })];
    }

    public async Task<string> TryAsync(byte[] input, int number, CancellationToken cancel)
    {
        try
        {
            await RestoreAsync(input, cancel);
        }
        catch (BadBackupException bad)
        {
            if (bad.Message.Length == 0 || bad.Message[^1] != '.' || !bad.Message.Contains("line", StringComparison.OrdinalIgnoreCase) && !bad.Message.Contains("backup", StringComparison.Ordinal))
                throw new Broken($"a backup is refused without a place: {bad.Message}");
            if (Lines(await TakeAsync(cancel)).Length != 2)
                throw new Broken("a backup was refused and something of it restored");
            return "refused";
        }
        try
        {
            var kept = Lines(await TakeAsync(cancel));
            var sent = Lines(input);
            // What stands below a whole backup's last line is not read.
            foreach (var line in sent[1..Array.FindIndex(sent, l => l.Contains("\"end\":{", StringComparison.Ordinal))])
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

    private static string[] Lines(byte[] backup) => Encoding.UTF8.GetString(backup).TrimStart('\ufeff', '\ufffe').Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool IsKept(string line, string other)
    {
        var (before, after) = (JsonDocument.Parse(line).RootElement, JsonDocument.Parse(other).RootElement);
        return Same(before, after, "");

        static bool Same(JsonElement one, JsonElement two, string member) => one.ValueKind == two.ValueKind && one.ValueKind switch
        {
            JsonValueKind.Object => one.EnumerateObject().All(m => m.Name == "hash" || m.Value.ValueKind == JsonValueKind.Null || two.EnumerateObject().Any(o => string.Equals(o.Name, m.Name, StringComparison.OrdinalIgnoreCase) && Same(m.Value, o.Value, m.Name))),
            JsonValueKind.Array => one.GetArrayLength() == two.GetArrayLength() && one.EnumerateArray().Zip(two.EnumerateArray()).All(p => Same(p.First, p.Second, member)),
            JsonValueKind.String => one.GetString() == two.GetString()
                // What lists show of a text is restored as lists show it; the text itself, letter by letter.
                || member is "name" or "title" or "size" && ShownName.Of(one.GetString()!) == two.GetString()
                || one.TryGetDateTimeOffset(out var a) && two.TryGetDateTimeOffset(out var b) && Math.Abs((a - b).TotalMilliseconds) < 1,
            JsonValueKind.Number => one.GetDouble().Equals(two.GetDouble()),
            _ => true,
        };
    }

    private async Task RestoreAsync(byte[] backup, CancellationToken cancel)
    {
        await using var scope = _services!.CreateAsyncScope();
        using var stream = new MemoryStream(backup);
        await scope.ServiceProvider.GetRequiredService<BackupStore>().RestoreAsync(stream, cancel);
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
