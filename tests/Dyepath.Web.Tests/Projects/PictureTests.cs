using System.Net;
using System.Text;
using System.Text.Json;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Projects;

public class PictureTests(Hosts hosts)
{
    private static readonly SwatchPicture Small = new(["#102030", "#AbCdEf"], 3, 2, [0, 1, SwatchPicture.Empty, 1, 1, 0]);

    [Fact]
    public async Task The_shelf_shows_the_picture_that_came_with_the_text_and_keeps_it_until_another_comes()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        using var created = await SendAsync(host, HttpMethod.Post, ApiPaths.Projects, "{}", Sent(Small));
        var one = await RunningHost.SummaryAsync(created);
        AssertSame(Small, one.Swatch);
        using var unpictured = await host.SaveAsync(one.Id, one.Etag, """{ "title": "two" }""");
        var two = await RunningHost.SummaryAsync(unpictured);
        AssertSame(Small, two.Swatch);
        var largest = new SwatchPicture(
            [.. Enumerable.Range(0, SwatchPicture.MostColours).Select(i => $"#0000{i:x2}")], SwatchPicture.MostStitches, SwatchPicture.MostRows,
            [.. Enumerable.Range(0, SwatchPicture.MostStitches * SwatchPicture.MostRows).Select(i => (byte)(i % SwatchPicture.MostColours))]);
        using var saved = await SendAsync(host, HttpMethod.Put, ApiPaths.Project(one.Id), """{ "title": "three" }""", Sent(largest), two.Etag);
        var three = await RunningHost.SummaryAsync(saved);
        AssertSame(largest, three.Swatch);
        // Drawn a little after its text was saved.
        using var late = await SendAsync(host, HttpMethod.Put, ApiPaths.Project(one.Id), """{ "title": "three" }""", Sent(Small), two.Etag);
        AssertSame(Small, (await RunningHost.SummaryAsync(late)).Swatch);
        using var copied = await host.Client.PostAsync(ApiPaths.Copy(one.Id), null);
        AssertSame(Small, (await RunningHost.SummaryAsync(copied)).Swatch);
        using var restored = await host.RestoreVersionAsync(one.Id, 2, three.Etag);
        AssertSame(Small, (await RunningHost.SummaryAsync(restored)).Swatch);
    }

    [Fact]
    public async Task A_picture_that_cannot_be_drawn_is_refused_and_nothing_is_stored()
    {
        var host = await hosts.OnAsync(DatabaseKind.Sqlite);
        var project = await host.CreateAsync("{}");
        string[] bad =
        [
            "", "?", "AAAA", Base64("null"), Base64("[]"), Base64("{}"), Base64("42"), Base64("{ \"colours\": "),
            Base64("""{"colours":null,"stitches":1,"rows":1,"cells":"AA=="}"""), Base64("""{"colours":[null],"stitches":1,"rows":1,"cells":"AA=="}"""),
            Base64("""{"colours":["#000000"],"stitches":1,"rows":1,"cells":null}"""),
            Sent(Small with { Stitches = 0, Cells = [] }), Sent(Small with { Stitches = 6, Rows = 0 }), Sent(Small with { Stitches = -3, Rows = -2 }),
            Sent(Small with { Stitches = 41, Rows = 1, Cells = new byte[41] }), Sent(Small with { Stitches = 1, Rows = 31, Cells = new byte[31] }),
            Sent(Small with { Cells = [0] }), Sent(Small with { Cells = [0, 1, 2, 0, 0, 0] }), Sent(Small with { Colours = [] }),
            Sent(Small with { Colours = ["#102030", "red"] }), Sent(Small with { Colours = ["#102030", "#12345g"] }),
            Sent(Small with { Colours = ["#102030", "#fff"] }), Sent(Small with { Colours = [.. Enumerable.Repeat("#000000", 65)] }),
            new string('A', ApiPaths.LongestPicture + 4),
        ];
        foreach (var picture in bad)
        {
            using var created = await SendAsync(host, HttpMethod.Post, ApiPaths.Projects, "{}", picture);
            await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, created);
            using var saved = await SendAsync(host, HttpMethod.Put, ApiPaths.Project(project.Id), "{ }", picture, project.Etag);
            await RunningHost.ProblemAsync(HttpStatusCode.BadRequest, saved);
        }
        Assert.Equal("{}", await host.Client.GetStringAsync(ApiPaths.Project(project.Id)));
    }

    private static string Sent(SwatchPicture picture) => Base64(JsonSerializer.Serialize(picture, ContractsJson.Default.SwatchPicture));

    private static string Base64(string json) => Convert.ToBase64String(Encoding.UTF8.GetBytes(json));

    private static void AssertSame(SwatchPicture expected, SwatchPicture? actual)
    {
        Assert.Equal((expected.Stitches, expected.Rows), (actual!.Stitches, actual.Rows));
        Assert.Equal(expected.Colours, actual.Colours);
        Assert.Equal(expected.Cells, actual.Cells);
    }

    private static async Task<HttpResponseMessage> SendAsync(
        RunningHost host, HttpMethod method, string path, string text, string picture, string? seen = null)
    {
        using var request = new HttpRequestMessage(method, path) { Content = RunningHost.Json(text) };
        request.Headers.TryAddWithoutValidation(ApiPaths.PictureHeader, picture);
        if (seen is not null)
            request.Headers.TryAddWithoutValidation("If-Match", seen);
        return await host.Client.SendAsync(request);
    }
}
