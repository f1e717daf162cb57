using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Projects;

/// <summary>A device tells by it whether a store lost what it once had.</summary>
public class MadeTests(Hosts hosts)
{
    [Theory, MemberData(nameof(TestDatabases.Both), MemberType = typeof(TestDatabases))]
    public async Task A_project_keeps_its_name_in_the_store_until_it_is_made_anew(DatabaseKind kind)
    {
        var host = await hosts.OnAsync(kind);
        var made = await host.CreateAsync("""{ "title": "one" }""");
        Assert.Equal(32, made.Made!.Length);
        using (var saved = await host.SaveAsync(made.Id, made.Etag, """{ "title": "two" }"""))
            Assert.Equal(made.Made, (await RunningHost.SummaryAsync(saved)).Made);
        using (var read = await host.Client.GetAsync(ApiPaths.Project(made.Id)))
            Assert.Equal(made.Made, Assert.Single(read.Headers.GetValues(ApiPaths.MadeHeader)));
        using (var archived = await host.Client.PostAsync(ApiPaths.Archive(made.Id), null))
            archived.EnsureSuccessStatusCode();
        using (var deleted = await host.Client.DeleteAsync(ApiPaths.Project(made.Id)))
            deleted.EnsureSuccessStatusCode();
        using var anew = await host.Client.PostAsync(ApiPaths.NewProject(made.Id), RunningHost.Json("""{ "title": "one" }"""));
        Assert.NotEqual(made.Made, (await RunningHost.SummaryAsync(anew)).Made);
    }
}
