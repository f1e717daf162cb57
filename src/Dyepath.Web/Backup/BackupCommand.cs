using System.CommandLine;
using Dyepath.Core.Making.Log;
using Dyepath.Storage;
using Dyepath.Storage.Backup;
using Dyepath.Storage.Database;
using Dyepath.Web.Projects;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Backup;

/// <summary><c>dyepath-web backup</c>: the whole store in one file, while the host goes on serving.</summary>
internal static class BackupCommand
{
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
            var unfinished = target + ".unfinished";
            await using var store = await OpenStore.OpenAsync(database.Read(parsed), stop);
            BackupTally tally;
            await using (var stream = new FileStream(unfinished, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                tally = await store.Backup.WriteAsync(stream, stop);
                stream.Flush(flushToDisk: true);
            }
            File.Move(unfinished, target, overwrite: true);
            await Console.Out.WriteLineAsync($"{Counted(tally)} are in {target}.");
            return 0;
        });
        return command;
    }

    public static string Counted(BackupTally tally) =>
        $"{tally.Projects} projects and {tally.Versions} earlier versions, {tally.Handovers} handovers and {tally.Logs} makers' logs, "
        + $"and {tally.Makings} makings";
}

/// <summary><c>dyepath-web restore</c>: adds what is in a backup to the store.</summary>
internal static class RestoreCommand
{
    private static readonly BackupRules Rules = new(
        DocumentId.IsValid, document => DocumentText.Read(document).Text is not null, document => MakingReader.Read(document).IsGood);

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
            var tally = await store.Backup.RestoreAsync(stream, Rules, stop);
            await Console.Out.WriteLineAsync($"{BackupCommand.Counted(tally)} were restored.");
            foreach (var name in tally.LeftAlone)
                await Console.Out.WriteLineAsync($"{name} is in the store already and was left as it is.");
            return 0;
        });
        return command;
    }
}

/// <summary>A store without a host around it.</summary>
internal sealed class OpenStore(ServiceProvider services, AsyncServiceScope scope) : IAsyncDisposable
{
    public BackupStore Backup => scope.ServiceProvider.GetRequiredService<BackupStore>();

    public static async Task<OpenStore> OpenAsync(DatabaseChoice choice, CancellationToken stop)
    {
        var services = new ServiceCollection().AddStorage(choice).BuildServiceProvider();
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
