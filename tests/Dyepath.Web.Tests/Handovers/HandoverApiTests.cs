using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using Dyepath.Contracts;
using Dyepath.Core.Booklets;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Storage.Database;
using Dyepath.Storage.Handovers;
using Dyepath.Web.Tests.Makings;

namespace Dyepath.Web.Tests.Handovers;

/// <summary>Every test has a project and an address of its own: wrong keys are counted by address.</summary>
public abstract class HandoverApiTests(Hosts hosts, DatabaseKind kind) : IAsyncLifetime
{
    private const string AnyPiece = "0123456789ABCDEFGHIJKLMNOP";

    private RunningHost _host = null!;
    private string _project = "";
    private string _etag = "";

    private HttpClient Client => _host.Client;

    public async ValueTask InitializeAsync()
    {
        _host = (await hosts.OnAsync(kind)).FromElsewhere();
        var project = await _host.CreateAsync(RunningHost.Demo);
        (_project, _etag) = (project.Id, project.Etag);
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task A_key_opens_the_piece_as_it_was_handed_over()
    {
        var handover = await HandOverAsync("M");
        (await _host.SaveAsync(_project, _etag, "{}")).Dispose();

        using var answer = await _host.OpenAsync(handover.Key);
        Assert.Equal((HttpStatusCode.OK, true), (answer.StatusCode, answer.Headers.CacheControl!.NoStore));
        var making = MakingReader.Read(await answer.Content.ReadAsByteArrayAsync()).Making!;
        Assert.Equal("M", making.Size);
        Assert.Empty(making.Log);
        Assert.Equal(ProjectWriter.Write(Pieces.Project), ProjectWriter.Write(making.Project));

        var listed = Assert.Single(await HandoversAsync());
        Assert.Equal(new HandoverSummary(handover.Id, "M", handover.CreatedAt, 0), listed);
        Assert.DoesNotContain(handover.Key, await Client.GetStringAsync(ApiPaths.Handovers(_project)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_stays_with_the_designer()
    {
        // The least that is a JPEG (ITU-T T.81, annex B).
        byte[] jpeg =
        [
            0xff, 0xd8, 0xff, 0xe0, 0, 16, .. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0, 0xff, 0xc0, 0, 11, 8, 0, 40, 0, 60, 1, 1, 0x11, 0,
            0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0, 0, 0xff, 0xd9,
        ];
        Assert.True(JpegPicture.TryRead(Convert.ToBase64String(jpeg), out var picture, out var fault), fault);
        var withPhoto = ProjectWriter.Write(Pieces.Project with { Photos = [new Photo("notes", "The sample on the shore", picture)] });
        Assert.Contains("jpeg", withPhoto, StringComparison.Ordinal);
        _project = (await _host.CreateAsync(withPhoto)).Id;
        using var answer = await _host.OpenAsync((await HandOverAsync("M")).Key);
        Assert.DoesNotContain("jpeg", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "title": 3 }""", "M", "faults")]
    [InlineData("{}", "M", "faults")]
    [InlineData(null, "m", "no such size")]
    [InlineData(null, "", "no such size")]
    [InlineData("no plan", "M", "no plan")]
    public async Task What_cannot_be_made_is_not_handed_over(string? document, string size, string why)
    {
        // No count of this yarn makes bands.
        if (document == "no plan")
            document = ProjectWriter.Write(Pieces.Project with { Garment = Pieces.Project.Garment with { Motif = MotifKind.Bands } });
        if (document is not null)
            _project = (await _host.CreateAsync(document)).Id;
        using var answer = await Client.PostAsync(ApiPaths.Handovers(_project), Asked(size));
        var problem = await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
        Assert.Contains(why, problem.Title, StringComparison.Ordinal);
        Assert.Empty(await HandoversAsync());
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{")]
    [InlineData("{}")]
    [InlineData("""{ "size": 3 }""")]
    [InlineData("""{ "size": null }""")]
    public async Task A_size_is_named(string body)
    {
        using var answer = await Client.PostAsync(ApiPaths.Handovers(_project), RunningHost.Json(body));
        await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
    }

    [Fact]
    public async Task Wrong_keys_open_nothing_and_write_nothing()
    {
        var handover = await HandOverAsync("M");
        foreach (var wrong in new[] { null, "", handover.Id, handover.Key[1..] })
        {
            using var read = await _host.OpenAsync(wrong);
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, read);
            using var sent = await _host.SendLogAsync(wrong, AnyPiece, Pieces.Text(rows: 1));
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, sent);
        }
        Assert.Empty(await LogsAsync());
    }

    [Fact]
    public async Task A_key_is_sent_in_the_header_only()
    {
        var handover = await HandOverAsync("M");
        using var inAddress = await Client.GetAsync($"{ApiPaths.Handed}?{ApiPaths.HandedKeyHeader}={handover.Key}&key={handover.Key}");
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, inAddress);
    }

    [Fact]
    public async Task After_ten_wrong_keys_none_is_looked_at_for_a_while()
    {
        var handover = await HandOverAsync("M");
        for (var guess = 0; guess < 10; guess++)
        {
            using var right = await _host.OpenAsync(handover.Key);
            Assert.Equal(HttpStatusCode.OK, right.StatusCode);
            using var wrong = await _host.OpenAsync(SecretKey.New());
            Assert.Equal(HttpStatusCode.NotFound, wrong.StatusCode);
        }
        using var stopped = await _host.OpenAsync(handover.Key);
        await RunningHost.ProblemAsync(HttpStatusCode.TooManyRequests, stopped);
        Assert.NotNull(stopped.Headers.RetryAfter);
        using var write = await _host.SendLogAsync(handover.Key, AnyPiece, Pieces.Text(rows: 1));
        await RunningHost.ProblemAsync(HttpStatusCode.TooManyRequests, write);
        Assert.Single(await HandoversAsync());
    }

    [Fact]
    public async Task A_tester_s_log_comes_to_the_designer_and_grows()
    {
        var (one, two) = (await HandOverAsync("M"), await HandOverAsync("M"));
        var (hers, other) = (Guid.NewGuid().ToString(), Guid.NewGuid().ToString());
        await SentAsync(one.Key, hers, Pieces.Text(rows: 1));
        await SentAsync(one.Key, other, Pieces.Text(rows: 2));
        await SentAsync(two.Key, hers, Pieces.Text(rows: 7));
        await Task.Delay(2);
        var grown = "// remark\n" + Pieces.Text(rows: 3);
        await SentAsync(one.Key, hers, grown);

        var logs = await LogsAsync();
        Assert.Equal((3, "M"), (logs[0].Entries, logs[0].Size));
        Assert.Equal([2, 7], logs[1..].Select(l => l.Entries).Order());
        using var read = await Client.GetAsync(ApiPaths.Log(_project, logs[0].Id));
        Assert.Equal("application/json", read.Content.Headers.ContentType!.ToString());
        Assert.Equal(grown, await read.Content.ReadAsStringAsync());
        Assert.Equal([2, 1], (await HandoversAsync()).OrderByDescending(h => h.Logs).Select(h => h.Logs));

        using (var deleted = await Client.DeleteAsync(ApiPaths.Log(_project, logs[0].Id)))
            Assert.Equal(HttpStatusCode.NoContent, deleted.StatusCode);
        using var again = await Client.DeleteAsync(ApiPaths.Log(_project, logs[0].Id));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, again);
        using var gone = await Client.GetAsync(ApiPaths.Log(_project, logs[0].Id));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, gone);
        var elsewhere = await _host.CreateAsync(RunningHost.Demo);
        using var stranger = await Client.GetAsync(ApiPaths.Log(elsewhere.Id, logs[1].Id));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, stranger);
    }

    [Fact]
    public async Task A_log_belongs_to_the_piece_that_was_handed_over()
    {
        var handover = await HandOverAsync("M");
        var project = Pieces.Project;
        var yarn = project.Yarn;
        foreach (var (text, why) in new[]
        {
            (Pieces.Text(rows: 1, project: project with { Title = "Another" }), "another piece"),
            (Pieces.Text(rows: 1, project: project with { Designer = "Another" }), "another piece"),
            (Pieces.Text(rows: 1, project: project with { Sizes = project.Sizes with { Sizes = [.. project.Sizes.Sizes.Skip(1)] } }), "another piece"),
            (Pieces.Text(rows: 1, project: project with { Yarn = yarn with { Sections = [.. yarn.Sections.Reverse()] } }), "another piece"),
            (Pieces.Text(rows: 1, project: project with { Garment = project.Garment with { Motif = MotifKind.Bands } }), "another piece"),
            (Pieces.Text(rows: 1, project: project with { Words = project.Words.SetItem("notes", "Quite another story.") }), "another piece"),
            (Pieces.Text(rows: 1, size: "L"), "another piece"),
            (RunningHost.Demo, "no making"),
            ("{ \"makingVersion\": 1, ", "no making"),
            ("", "no making"),
        })
        {
            using var answer = await _host.SendLogAsync(handover.Key, AnyPiece, text);
            var problem = await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
            Assert.Contains(why, problem.Title, StringComparison.Ordinal);
        }
        using var badId = await _host.SendLogAsync(handover.Key, "not-an-id", Pieces.Text(rows: 1));
        await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, badId);
        using var large = await _host.SendLogAsync(handover.Key, AnyPiece, Pieces.Text(rows: 1) + new string(' ', ProjectReader.MostBytes));
        await RunningHost.ProblemAsync(HttpStatusCode.RequestEntityTooLarge, large);
        Assert.Empty(await LogsAsync());
    }

    /// <summary>Her counts alone, or the design worked out for exactly these counts.</summary>
    [Fact]
    public async Task A_maker_may_have_counted_her_own_yarn()
    {
        var handover = await HandOverAsync("M");
        var project = Pieces.Project;
        ImmutableArray<ImmutableArray<int>> Counts(int more) => [[.. project.Yarn.Sections.Select((_, i) => 5 + i + more)]];
        await SentAsync(handover.Key, AnyPiece, Pieces.Text(rows: 1, counted: Counts(0)));
        await SentAsync(handover.Key, AnyPiece, Pieces.Text(rows: 2, project: OwnYarn.Rederive(project, Counts(0)), counted: Counts(0)));
        foreach (var text in new[]
        {
            Pieces.Text(rows: 3, project: OwnYarn.Rederive(project, Counts(0)), counted: Counts(1)),
            Pieces.Text(rows: 3, project: OwnYarn.Rederive(project, Counts(0))),
            Pieces.Text(rows: 3, project: OwnYarn.Rederive(project with { Designer = "Another" }, Counts(0)), counted: Counts(0)),
        })
        {
            using var answer = await _host.SendLogAsync(handover.Key, AnyPiece, text);
            var problem = await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, answer);
            Assert.Contains("another piece", problem.Title, StringComparison.Ordinal);
        }
        Assert.Equal(2, Assert.Single(await LogsAsync()).Entries);
    }

    [Fact]
    public async Task A_handover_holds_so_many_logs()
    {
        var handover = await HandOverAsync("M");
        for (var i = 0; i < MakerLogStore.MostOfHandover; i++)
            await SentAsync(handover.Key, Guid.NewGuid().ToString(), Pieces.Text(rows: 1));
        using var answer = await _host.SendLogAsync(handover.Key, AnyPiece, Pieces.Text(rows: 1));
        await RunningHost.ProblemAsync(HttpStatusCode.InsufficientStorage, answer);
    }

    [Fact]
    public async Task A_revoked_key_opens_nothing_and_its_logs_stay()
    {
        var handover = await HandOverAsync("M");
        await SentAsync(handover.Key, AnyPiece, Pieces.Text(rows: 1));
        using (var revoked = await Client.DeleteAsync(ApiPaths.Handover(_project, handover.Id)))
            Assert.Equal(HttpStatusCode.NoContent, revoked.StatusCode);
        using var again = await Client.DeleteAsync(ApiPaths.Handover(_project, handover.Id));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, again);
        using var read = await _host.OpenAsync(handover.Key);
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, read);
        using var sent = await _host.SendLogAsync(handover.Key, AnyPiece, Pieces.Text(rows: 2));
        await RunningHost.ProblemAsync(HttpStatusCode.NotFound, sent);
        Assert.Empty(await HandoversAsync());
        Assert.Equal(1, Assert.Single(await LogsAsync()).Entries);
    }

    [Fact]
    public async Task With_its_project_a_handover_goes_for_ever()
    {
        var handover = await HandOverAsync("M");
        await SentAsync(handover.Key, AnyPiece, Pieces.Text(rows: 1));
        (await Client.PostAsync(ApiPaths.Archive(_project), null)).Dispose();
        (await Client.DeleteAsync(ApiPaths.Project(_project))).Dispose();
        foreach (var attempt in new Func<Task<HttpResponseMessage>>[]
        {
            () => _host.OpenAsync(handover.Key),
            () => Client.GetAsync(ApiPaths.Handovers(_project)),
            () => Client.GetAsync(ApiPaths.Logs(_project)),
            () => Client.PostAsync(ApiPaths.Handovers(_project), Asked("M")),
        })
        {
            using var answer = await attempt();
            await RunningHost.ProblemAsync(HttpStatusCode.NotFound, answer);
        }
    }

    private static StringContent Asked(string size) => RunningHost.Json($$"""{ "size": "{{size}}" }""");

    private async Task<Handover> HandOverAsync(string size)
    {
        using var answer = await Client.PostAsync(ApiPaths.Handovers(_project), Asked(size));
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync(ContractsJson.Default.Handover))!;
    }

    private async Task SentAsync(string key, string making, string text)
    {
        using var answer = await _host.SendLogAsync(key, making, text);
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
    }

    private async Task<HandoverSummary[]> HandoversAsync() =>
        (await Client.GetFromJsonAsync(ApiPaths.Handovers(_project), ContractsJson.Default.HandoverSummaryArray))!;

    private async Task<ReceivedLog[]> LogsAsync() =>
        (await Client.GetFromJsonAsync(ApiPaths.Logs(_project), ContractsJson.Default.ReceivedLogArray))!;
}

public class SqliteHandoverApiTests(Hosts hosts) : HandoverApiTests(hosts, DatabaseKind.Sqlite);

public class PostgresHandoverApiTests(Hosts hosts) : HandoverApiTests(hosts, DatabaseKind.Postgres);
