using System.CommandLine;
using Dyepath.Storage;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Backup;

/// <summary><c>dyepath-web backup</c>: the whole store in one file, while the host goes on serving.</summary>
internal static class BackupCommand
{
    /// <summary>Exit code where something that is stored could not be backed up as it is.</summary>
    private const int Damaged = 3;

    /// <summary>With its options.</summary>
    public static Command Create()
    {
        var database = new DatabaseOptions();
        var file = new Argument<string>("FILE")
        {
            Description = "Where to write; an older backup of that name is replaced once the new one is whole.",
        };
        var command = new Command("backup", "Writes everything that is stored into one file, as lines of JSON.") { file };
        database.AddTo(command);
        command.SetAction(async (parsed, stop) =>
        {
            var target = parsed.GetValue(file)!;
            var choice = database.Read(parsed);
            // An empty backup in the place of a good one is worse than none.
            if (choice.Connection is null && !File.Exists(choice.File))
                throw new StoreNotReadyException($"There is no store in {choice.Folder}. Name the folder that the host was started with: --data FOLDER. No backup was written, and an earlier one is as it was.");
            await using var store = await OpenStore.OpenAsync(choice, stop);
            var written = await WriteAsync(store.Backup, target, stop);
            await Terminal.SayAsync($"{Counted(written.Counts)} are in {target}.");
            foreach (var part in written.Damaged)
                await Terminal.ComplainAsync(Words(part));
            return written.Damaged.Count == 0 ? 0 : Damaged;
        });
        return command;
    }

    /// <summary>In words, such as those that the command ends with.</summary>
    public static string Counted(BackupCounts counts) =>
        $"{counts.Projects} projects and {counts.Versions} earlier versions, {counts.Handovers} handovers and {counts.Logs} makers' logs, "
        + $"and {counts.Makings} makings";

    /// <summary>Whoever reads it finds the last whole backup under its name, whatever happens meanwhile.</summary>
    private static async Task<WrittenBackup> WriteAsync(BackupStore store, string target, CancellationToken stop)
    {
        var unfinished = target + ".unfinished";
        // One that an earlier run left may have other rights.
        File.Delete(unfinished);
        try
        {
            WrittenBackup written;
            await using (var stream = OwnersFile.Open(unfinished, FileMode.CreateNew))
            {
                written = await store.WriteAsync(stream, stop);
                stream.Flush(flushToDisk: true);
            }
            File.Move(unfinished, target, overwrite: true);
            return written;
        }
        catch
        {
            File.Delete(unfinished);
            throw;
        }
    }

    private static string Words(DamagedPart part) => part.Part switch
    {
        StoredPart.Project when part.Instead is { } number =>
            $"The text of “{part.Name}” ({part.Id}) is damaged: its version {number}, the newest that can be read, is in the backup instead.",
        StoredPart.Project =>
            $"The text of “{part.Name}” ({part.Id}) is damaged and so is every version of it: it is not in the backup, nor are its handovers and logs.",
        StoredPart.Version => $"Version {part.Id} of “{part.Name}” is damaged and not in the backup.",
        StoredPart.Handover => $"A handover of “{part.Name}” ({part.Id}) is damaged and not in the backup.",
        StoredPart.Log => $"A maker's log of “{part.Name}” ({part.Id}) is damaged and not in the backup.",
        _ => $"The making of “{part.Name}” ({part.Id}) is damaged and not in the backup; the device on which it is made has it still.",
    };
}

/// <summary><c>dyepath-web restore</c>: adds what is in a backup to the store.</summary>
internal static class RestoreCommand
{
    /// <summary>With its options.</summary>
    public static Command Create()
    {
        var database = new DatabaseOptions();
        var file = new Argument<string>("FILE") { Description = "A backup." };
        var command = new Command("restore", "Adds what is in a backup; a project or making that is there already stays as it is.") { file };
        database.AddTo(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var stream = File.OpenRead(parsed.GetValue(file)!);
            await using var store = await OpenStore.OpenAsync(database.Read(parsed), stop);
            var restored = await store.Backup.RestoreAsync(stream, stop);
            await Terminal.SayAsync($"{BackupCommand.Counted(restored.Counts)} were restored.");
            foreach (var name in restored.LeftAlone)
                await Terminal.SayAsync($"{name} is in the store already and was left as it is.");
            if (!restored.HasHashes)
            {
                await Terminal.ComplainAsync(
                    "An earlier Dyepath wrote this backup, without hashes: whether a letter of it changed since cannot be told. Look through what was restored.");
            }
            return 0;
        });
        return command;
    }
}

/// <summary>A store without a host around it.</summary>
internal sealed class OpenStore(ServiceProvider services, AsyncServiceScope scope) : IAsyncDisposable
{
    /// <summary>Of this store.</summary>
    public BackupStore Backup => scope.ServiceProvider.GetRequiredService<BackupStore>();

    /// <summary>Opens the store, made or brought up to date where need be.</summary>
    public static async Task<OpenStore> OpenAsync(DatabaseChoice choice, CancellationToken stop)
    {
        var services = new ServiceCollection().AddStorage(choice, Stores.Forms).BuildServiceProvider();
        var scope = services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<AppDb>().PrepareAsync(stop);
        return new OpenStore(services, scope);
    }

    public async ValueTask DisposeAsync()
    {
        await scope.DisposeAsync();
        await services.DisposeAsync();
    }
}
