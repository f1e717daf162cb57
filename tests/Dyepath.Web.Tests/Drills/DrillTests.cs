using Npgsql;

namespace Dyepath.Web.Tests.Drills;

/// <summary>
/// Hosts and databases die and come back under load; see docs/reliability.md. The long ones run by command:
/// <c>-explicit only -class "*Drill*" -showLiveOutput</c>.
/// </summary>
public class DrillTests(Hosts hosts, ITestOutputHelper output)
{
    [Fact]
    public async Task A_host_that_is_killed_and_one_that_is_replaced_lose_nothing()
    {
        await using var studio = await Studio.OpenAsync(hosts.Databases.NewDatabase(DatabaseKind.Postgres).Connection!, hosts: 3, writers: 6);
        await studio.SavesAsync(60);
        await Task.WhenAll(studio.KillAsync(0), studio.SavesAsync(40));
        await Task.WhenAll(studio.UpgradeAsync(1), studio.SavesAsync(40));
        output.WriteLine(await studio.CheckAsync());
    }

    [Fact]
    public async Task A_database_that_crashes_loses_nothing_that_was_acknowledged()
    {
        using var server = PostgresServer.Open();
        await using var studio = await Studio.OpenAsync(Database(server), hosts: 1, writers: 6);
        await studio.SavesAsync(60);
        await server.CrashAsync();
        await studio.SavesAsync(60);
        output.WriteLine(await studio.CheckAsync());
    }

    [Fact(Explicit = true)]
    public async Task Long_every_host_is_killed_and_replaced_in_turn()
    {
        await using var studio = await Studio.OpenAsync(hosts.Databases.NewDatabase(DatabaseKind.Postgres).Connection!, hosts: 3, writers: 12);
        for (var round = 0; round < 4; round++)
        {
            for (var host = 0; host < studio.Hosts; host++)
            {
                await studio.SavesAsync(100);
                await studio.KillAsync(host);
                await studio.SavesAsync(100);
                await studio.UpgradeAsync(host);
            }
        }
        output.WriteLine($"12 kills and 12 replacements. {await studio.CheckAsync()}");
    }

    [Fact(Explicit = true)]
    public async Task Long_the_database_crashes_again_and_again()
    {
        using var server = PostgresServer.Open();
        await using var studio = await Studio.OpenAsync(Database(server), hosts: 2, writers: 12);
        for (var crash = 0; crash < 10; crash++)
        {
            await studio.SavesAsync(150);
            await server.CrashAsync();
        }
        await studio.SavesAsync(150);
        output.WriteLine($"10 crashes. {await studio.CheckAsync()}");
    }

    private static string Database(PostgresServer server) =>
        new NpgsqlConnectionStringBuilder(server.Connection) { Database = "drill" }.ToString();
}
