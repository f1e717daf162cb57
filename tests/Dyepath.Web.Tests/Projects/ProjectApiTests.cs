using System.Net;
using System.Net.Http.Json;
using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Tests.Projects;

public abstract class ProjectApiTests(Hosts hosts, DatabaseKind kind) : IAsyncLifetime
{
    private RunningHost _host = null!;

    private HttpClient Client => _host.Client;

    public async ValueTask InitializeAsync() => _host = await hosts.OnAsync(kind);

    public ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_document_is_stored_and_given_back_byte_for_byte()
    {
        const string text = "\uFEFF{ // with a remark\r\n  \"title\": \"Maré 🧶\",\t\"x\": [1, 2,], }\n\n";
        using var created = await Client.PostAsync(ApiPaths.Projects, RunningHost.Json(text));
        var summary = await RunningHost.SummaryAsync(created);
        Assert.Equal($"/{ApiPaths.Project(summary.Id)}", created.Headers.Location!.OriginalString);
        Assert.Equal(summary.Etag, created.Headers.ETag!.ToString());
        Assert.Equal(("Maré 🧶", false), (summary.Name, summary.Archived));
        Assert.Null(summary.Swatch);
        Assert.InRange(summary.UpdatedAt, DateTimeOffset.UtcNow.AddMinutes(-5), DateTimeOffset.UtcNow.AddSeconds(1));

        using var read = await Client.GetAsync(created.Headers.Location);
        Assert.Equal("application/json", read.Content.Headers.ContentType!.ToString());
        Assert.Equal(summary.Etag, read.Headers.ETag!.ToString());
        Assert.Equal(Encoding.UTF8.GetBytes(text), await read.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task A_text_that_the_browser_has_is_not_sent_again()
    {
        var project = await _host.CreateAsync("{}");
        using var request = new HttpRequestMessage(HttpMethod.Get, ApiPaths.Project(project.Id));
        request.Headers.TryAddWithoutValidation("If-None-Match", project.Etag);
        using var answer = await Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.NotModified, answer.StatusCode);
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    [Theory]
    [InlineData("""{ "title": 3, "yarn": { "sections": [ { "length": "31." } ] } }""", ProjectSummary.Untitled)]
    [InlineData("""{ "yarn": { "title": "not this" }, "title": "Half a number", "rows": "1" }""", "Half a number")]
    [InlineData("""{ "title": "  two\nlines ", "title": "again" }""", "two lines")]
    [InlineData("""{ "title": "" }""", ProjectSummary.Untitled)]
    [InlineData("""{ "schemaVersion": 99, "title": "From a newer Dyepath" }""", "From a newer Dyepath")]
    [InlineData("""{ "title": "Tide\u202eline\u200b" }""", "Tideline")]
    public async Task A_document_with_faults_is_stored_all_the_same(string text, string name)
    {
        var project = await _host.CreateAsync(text);
        Assert.Equal(name, project.Name);
        Assert.Equal(text, await Client.GetStringAsync(ApiPaths.Project(project.Id)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ \"title\": ")]
    [InlineData("{} {}")]
    [InlineData("[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]")]
    [InlineData("42")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("\"title\"")]
    [InlineData("{ \"title\": \"half a character: \\ud83e\" }")]
    public async Task What_is_no_document_is_refused_in_words(string text)
    {
        using var answer = await Client.PostAsync(ApiPaths.Projects, RunningHost.Json(text));
        var problem = await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
        Assert.StartsWith("Line ", problem.Detail, StringComparison.Ordinal);
        var project = await _host.CreateAsync("{}");
        using var saved = await _host.SaveAsync(project.Id, project.Etag, text);
        Assert.Equal(problem, await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, saved));
        Assert.Equal("{}", await Client.GetStringAsync(ApiPaths.Project(project.Id)));
    }

    /// <summary>The limit of a name falls into the middle of what writes one character.</summary>
    [Theory]
    [InlineData("🧶")]
    [InlineData("👩‍👩‍👧‍👦")]
    public async Task A_title_that_is_too_long_is_shown_to_its_last_whole_character(string character)
    {
        foreach (var letters in new[] { 115, 118, 119, 120 })
        {
            var title = new string('x', letters) + character + character;
            var project = await _host.CreateAsync($$"""{ "title": "{{title}}" }""");
            Assert.Equal(new string('x', letters) + string.Concat(Enumerable.Repeat(character, Math.Min(2, 120 - letters))), project.Name);
            using var copied = await Client.PostAsync(ApiPaths.Copy(project.Id), null);
            Assert.EndsWith(", copy", (await RunningHost.SummaryAsync(copied)).Name, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_project_begun_offline_keeps_its_id_and_is_stored_once()
    {
        foreach (var id in new[] { Guid.NewGuid().ToString(), Guid.NewGuid().ToString("N")[..26].ToUpperInvariant() })
        {
            using var first = await Client.PostAsync(ApiPaths.NewProject(id), RunningHost.Json("{}"));
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);
            Assert.Equal(id, (await RunningHost.SummaryAsync(first)).Id);
            using var second = await Client.PostAsync(ApiPaths.NewProject(id), RunningHost.Json("{ }"));
            var problem = await RunningHost.ProblemAsync(HttpStatusCode.Conflict, second);
            Assert.Equal(first.Headers.ETag, second.Headers.ETag);
            Assert.Equal(first.Headers.ETag!.ToString(), problem.CurrentEtag);
            Assert.Equal("{}", await Client.GetStringAsync(ApiPaths.Project(id)));
        }
        foreach (var id in new[] { "", "a", "../etc", new string('x', 27), $"{Guid.NewGuid()}%0A" })
        {
            using var answer = await Client.PostAsync(ApiPaths.NewProject(id), RunningHost.Json("{}"));
            await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
        }
    }

    [Fact]
    public async Task A_save_needs_the_etag_of_the_text_that_was_changed()
    {
        var one = await _host.CreateAsync("""{ "title": "one" }""");
        using (var unsaid = await _host.SaveAsync(one.Id, null, """{ "title": "two" }"""))
            await RunningHost.ProblemAsync(HttpStatusCode.PreconditionRequired, unsaid);

        using var saved = await _host.SaveAsync(one.Id, one.Etag, """{ "title": "two" }""");
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        var two = await RunningHost.SummaryAsync(saved);
        Assert.Equal(("two", saved.Headers.ETag!.ToString()), (two.Name, two.Etag));
        Assert.NotEqual(one.Etag, two.Etag);

        using var late = await _host.SaveAsync(one.Id, one.Etag, """{ "title": "three" }""");
        var problem = await RunningHost.ProblemAsync(HttpStatusCode.PreconditionFailed, late);
        Assert.Equal((two.Etag, two.UpdatedAt), (problem.CurrentEtag, problem.UpdatedAt));

        using var again = await _host.SaveAsync(one.Id, one.Etag, """{ "title": "two" }""");
        Assert.Equal(two, await RunningHost.SummaryAsync(again));
        Assert.Single((await Client.GetFromJsonAsync(ApiPaths.Versions(one.Id), ContractsJson.Default.VersionSummaryArray))!);

        using var nowhere = await _host.SaveAsync(Guid.NewGuid().ToString(), one.Etag, "{}");
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, nowhere);
    }

    [Theory]
    [InlineData("{0}", HttpStatusCode.OK)]
    [InlineData("W/{0}", HttpStatusCode.OK)]
    [InlineData("bare", HttpStatusCode.OK)]
    [InlineData("*", HttpStatusCode.PreconditionRequired)]
    [InlineData("\"\"", HttpStatusCode.PreconditionRequired)]
    [InlineData("{0}, \"other\"", HttpStatusCode.PreconditionFailed)]
    public async Task An_etag_is_understood_as_browsers_and_proxies_write_it(string written, HttpStatusCode status)
    {
        var project = await _host.CreateAsync("{}");
        var tag = written == "bare" ? project.Etag.Trim('"') : written.Replace("{0}", project.Etag, StringComparison.Ordinal);
        using var request = new HttpRequestMessage(HttpMethod.Put, ApiPaths.Project(project.Id)) { Content = RunningHost.Json("{ }") };
        request.Headers.TryAddWithoutValidation("If-Match", tag);
        using var answer = await Client.SendAsync(request);
        Assert.Equal(status, answer.StatusCode);
    }

    [Fact]
    public async Task A_question_that_cannot_be_read_is_refused_in_words()
    {
        using var answer = await Client.GetAsync($"{ApiPaths.Projects}?archived=perhaps");
        await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
    }

    [Fact]
    public async Task Of_two_writers_with_the_same_etag_exactly_one_wins()
    {
        var project = await _host.CreateAsync("{}");
        for (var round = 0; round < 15; round++)
        {
            var texts = new[] { $$"""{ "x": [{{round}}, 1] }""", $$"""{ "x": [{{round}}, 2] }""" };
            var answers = await Task.WhenAll(texts.Select(text => _host.SaveAsync(project.Id, project.Etag, text)));
            var winner = Assert.Single(Enumerable.Range(0, 2), i => answers[i].StatusCode == HttpStatusCode.OK);
            await RunningHost.ProblemAsync(HttpStatusCode.PreconditionFailed, answers[1 - winner]);
            Assert.Equal(texts[winner], await Client.GetStringAsync(ApiPaths.Project(project.Id)));
            project = await RunningHost.SummaryAsync(answers[winner]);
        }
    }

    [Fact]
    public async Task A_copy_is_a_project_of_its_own_and_says_so()
    {
        var demo = await _host.CreateAsync(RunningHost.Demo);
        using var answer = await Client.PostAsync(ApiPaths.Copy(demo.Id), null);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var copy = await RunningHost.SummaryAsync(answer);
        Assert.Equal("Tideline, copy", copy.Name);
        Assert.Equal(
            RunningHost.Demo.Replace("\"Tideline\"", "\"Tideline, copy\"", StringComparison.Ordinal),
            await Client.GetStringAsync(ApiPaths.Project(copy.Id)));
        Assert.Equal(RunningHost.Demo, await Client.GetStringAsync(ApiPaths.Project(demo.Id)));
        Assert.Empty((await Client.GetFromJsonAsync(ApiPaths.Versions(copy.Id), ContractsJson.Default.VersionSummaryArray))!);
    }

    [Fact]
    public async Task A_project_goes_to_the_archive_and_back_and_only_from_there_for_ever()
    {
        var project = await _host.CreateAsync("{}");
        using (var early = await Client.DeleteAsync(ApiPaths.Project(project.Id)))
            await RunningHost.ProblemAsync(HttpStatusCode.Conflict, early);
        using (var archived = await Client.PostAsync(ApiPaths.Archive(project.Id), null))
            Assert.Equal(project with { Archived = true }, await RunningHost.SummaryAsync(archived));
        Assert.DoesNotContain(await ShelfAsync(archived: false), p => p.Id == project.Id);
        Assert.Contains(await ShelfAsync(archived: true), p => p.Id == project.Id);
        using (var restored = await Client.PostAsync(ApiPaths.Restore(project.Id), null))
            Assert.Equal(project, await RunningHost.SummaryAsync(restored));
        Assert.Contains(await ShelfAsync(archived: false), p => p.Id == project.Id);
        (await Client.PostAsync(ApiPaths.Archive(project.Id), null)).Dispose();
        using (var deleted = await Client.DeleteAsync(ApiPaths.Project(project.Id)))
            Assert.Equal(HttpStatusCode.NoContent, deleted.StatusCode);
        foreach (var attempt in new Func<Task<HttpResponseMessage>>[]
        {
            () => Client.GetAsync(ApiPaths.Project(project.Id)),
            () => Client.DeleteAsync(ApiPaths.Project(project.Id)),
            () => Client.PostAsync(ApiPaths.Archive(project.Id), null),
            () => Client.PostAsync(ApiPaths.Copy(project.Id), null),
            () => Client.GetAsync(ApiPaths.Versions(project.Id)),
        })
        {
            using var answer = await attempt();
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, answer);
        }
    }

    [Fact]
    public async Task A_document_may_have_two_megabytes_and_no_byte_more()
    {
        var most = string.Concat("{\"x\":\"", new string('x', 1_999_992), "\"}");
        var project = await _host.CreateAsync(most);
        Assert.Equal(most, await Client.GetStringAsync(ApiPaths.Project(project.Id)));
        using var saved = await _host.SaveAsync(project.Id, project.Etag, most + " ");
        await RunningHost.ProblemAsync(HttpStatusCode.RequestEntityTooLarge, saved);
        using var unsized = new HttpRequestMessage(HttpMethod.Post, ApiPaths.Projects) { Content = RunningHost.Json(most + " ") };
        unsized.Headers.TransferEncodingChunked = true;
        using var answer = await Client.SendAsync(unsized);
        await RunningHost.ProblemAsync(HttpStatusCode.RequestEntityTooLarge, answer);
    }

    /// <summary>What is published is a pattern that can be planned, under the number that it prints.</summary>
    [Fact]
    public async Task A_pattern_is_published_under_its_edition_number()
    {
        var project = await _host.CreateAsync("""{ "title": "one" }""");
        var demo = Encoding.UTF8.GetString(DemoProject.Utf8);
        var first = demo.Replace("\"edition\": {", "\"edition\": { \"number\": 3,", StringComparison.Ordinal);
        Assert.NotEqual(demo, first);
        using (var published = await PublishAsync(first))
            Assert.Equal(3, (await published.Content.ReadFromJsonAsync(ContractsJson.Default.VersionSummary, TestContext.Current.CancellationToken))!.Edition);
        using (var again = await PublishAsync(first))
            Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        using (var taken = await PublishAsync(first.Replace("Tideline", "Ebbline", StringComparison.Ordinal)))
            Assert.Equal("Another text is published as edition 3.", (await RunningHost.ProblemAsync(HttpStatusCode.Conflict, taken)).Title);
        using (var unnumbered = await PublishAsync(demo))
            Assert.Equal("The pattern has no edition number.", (await RunningHost.ProblemAsync(HttpStatusCode.UnprocessableEntity, unnumbered)).Title);
        using (var faulty = await PublishAsync("{}"))
            await RunningHost.ProblemAsync(HttpStatusCode.UnprocessableEntity, faulty);
        using (var none = await PublishAsync("[]"))
            await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, none);
        var version = Assert.Single(await VersionsAsync(project.Id));
        Assert.Equal(first, await Client.GetStringAsync(ApiPaths.Version(project.Id, version.Number)));
        using (var gone = await Client.DeleteAsync(ApiPaths.Edition(project.Id, 3)))
            Assert.Equal(HttpStatusCode.NoContent, gone.StatusCode);
        using (var late = await Client.DeleteAsync(ApiPaths.Edition(project.Id, 3)))
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, late);
        Assert.Null(Assert.Single(await VersionsAsync(project.Id)).Edition);

        Task<HttpResponseMessage> PublishAsync(string text) => Client.PostAsync(ApiPaths.Editions(project.Id), RunningHost.Json(text));
    }

    [Fact]
    public async Task An_earlier_text_is_read_and_restored_and_the_restore_undone()
    {
        var one = await _host.CreateAsync("""{ "title": "one" }""");
        using var saved = await _host.SaveAsync(one.Id, one.Etag, """{ "title": "two" }""");
        var two = await RunningHost.SummaryAsync(saved);
        var version = Assert.Single(await VersionsAsync(one.Id));
        Assert.Equal(new VersionSummary(1, one.UpdatedAt, 18), version);
        Assert.Equal("""{ "title": "one" }""", await Client.GetStringAsync(ApiPaths.Version(one.Id, 1)));

        using (var late = await _host.RestoreVersionAsync(one.Id, 1, "\"0123456789abcdef\""))
            Assert.Equal(two.Etag, (await RunningHost.ProblemAsync(HttpStatusCode.PreconditionFailed, late)).CurrentEtag);
        using (var unsaid = await Client.PostAsync(ApiPaths.RestoreVersion(one.Id, 1), null))
            await RunningHost.ProblemAsync(HttpStatusCode.PreconditionRequired, unsaid);
        using (var nowhere = await _host.RestoreVersionAsync(one.Id, 9, two.Etag))
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, nowhere);

        using var restored = await _host.RestoreVersionAsync(one.Id, 1, two.Etag);
        Assert.Equal(("one", one.Etag), ((await RunningHost.SummaryAsync(restored)).Name, restored.Headers.ETag!.ToString()));
        using var undone = await _host.RestoreVersionAsync(one.Id, 2, one.Etag);
        Assert.Equal(two.Etag, (await RunningHost.SummaryAsync(undone)).Etag);
        using var gone = await Client.GetAsync(ApiPaths.Version(one.Id, 9));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, gone);
    }

    [Fact]
    public async Task The_shelf_has_the_demo_from_the_first_start_with_a_picture()
    {
        var shelf = await ShelfAsync(archived: false);
        var demo = shelf[^1];
        Assert.Equal("Tideline", demo.Name);
        Assert.Equal(RunningHost.Demo, await Client.GetStringAsync(ApiPaths.Project(demo.Id)));
        Assert.Equal(RunningHost.Demo, await Client.GetStringAsync(ApiPaths.Demo));
        Assert.Equal(SwatchPicture.MostStitches * SwatchPicture.MostRows, demo.Swatch!.Cells.Length);
    }

    private async Task<ProjectSummary[]> ShelfAsync(bool archived) =>
        (await Client.GetFromJsonAsync(ApiPaths.Shelf(archived), ContractsJson.Default.ProjectSummaryArray))!;

    private async Task<VersionSummary[]> VersionsAsync(string id) =>
        (await Client.GetFromJsonAsync(ApiPaths.Versions(id), ContractsJson.Default.VersionSummaryArray))!;
}

public class SqliteProjectApiTests(Hosts hosts) : ProjectApiTests(hosts, DatabaseKind.Sqlite);

public class PostgresProjectApiTests(Hosts hosts) : ProjectApiTests(hosts, DatabaseKind.Postgres);
