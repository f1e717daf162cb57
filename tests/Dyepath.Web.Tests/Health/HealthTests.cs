using System.Net;
using Dyepath.Storage;

namespace Dyepath.Web.Tests.Health;

public class HealthTests(Hosts hosts)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_running_host_with_its_store_is_live_and_ready(DatabaseKind kind)
    {
        var host = await hosts.OnAsync(kind);
        Assert.Equal("Healthy", await host.Client.GetStringAsync("health/live"));
        Assert.Equal("Healthy", await host.Client.GetStringAsync("health/ready"));
    }

    [Fact]
    public async Task Without_its_store_it_is_live_but_not_ready()
    {
        var database = hosts.Databases.NewDatabase(DatabaseKind.Postgres);
        await using var host = await RunningHost.StartAsync(new(database, 0));
        hosts.Databases.Drop(database);
        Assert.Equal("Healthy", await host.Client.GetStringAsync("health/live"));
        using var ready = await host.Client.GetAsync("health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        using var shelf = await host.Client.GetAsync("api/projects");
        await RunningHost.ProblemAsync(HttpStatusCode.InternalServerError, shelf);
    }
}
