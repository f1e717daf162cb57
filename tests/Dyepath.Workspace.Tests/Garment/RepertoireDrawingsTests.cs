using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests.Garment;

public sealed class RepertoireDrawingsTests
{
    public static TheoryData<string> Kinds => [.. Repertoire.All.Select(kind => kind.Name)];

    private static GarmentKind Kind(string name) => Repertoire.All.Single(kind => kind.Name == name);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_garment_is_drawn_in_a_size_of_the_chart(string name)
    {
        var drawing = Draw(Kind(name), """{ "chart": "women", "names": ["S", "M", "L"] }""", "M");
        Assert.NotNull(drawing);
        Assert.All(drawing.Front.Lines, line => Assert.StartsWith("M", line.Path, StringComparison.Ordinal));
        Assert.True(drawing.Front is { Width: > 0, Height: > 0 });
        Assert.Contains(" cm", drawing.Measures, StringComparison.Ordinal);
        // What is made to more of the body than the head hangs on it.
        Assert.Equal(Kind(name).First.Shape.Needs.Any(n => n != BodyMeasure.Head), drawing.OnFigure);
    }

    /// <summary>A child's figure is smaller, in the proportion of the two charts' measures.</summary>
    [Fact]
    public void A_child_s_cardigan_hangs_on_a_child()
    {
        var grown = Draw(Kind("cardigan"), """{ "chart": "women" }""", "M")!;
        var child = Draw(Kind("cardigan"), """{ "chart": "child" }""", Core.Sizing.SizeCharts.TryFind("child", out var chart) ? chart.Sizes[0].Name : "")!;
        Assert.True(child.OnFigure);
        Assert.True(child.Front.Width < 0.8 * grown.Front.Width, $"{child.Front.Width} and {grown.Front.Width}");
    }

    /// <summary>A document without a plan shows no size, and has a chart all the same.</summary>
    [Theory]
    [InlineData("""{ "chart": "child" }""")]
    [InlineData("""{ "chart": "child", "names": ["4", "6", "8"] }""")]
    public void Without_a_size_it_is_drawn_in_the_document_s_own_chart(string sizes)
    {
        var grown = Draw(Kind("pullover"), """{ "chart": "women" }""", "M")!;
        var child = Draw(Kind("pullover"), sizes, null)!;
        Assert.True(child.Front.Width < 0.8 * grown.Front.Width, $"{child.Measures} and {grown.Measures}");
        Assert.Null(Draw(Kind("pullover"), """{ "chart": "nobody's" }""", null));
    }

    [Fact]
    public void A_chart_without_a_measure_that_it_needs_has_no_drawing() =>
        Assert.Null(Draw(Kind("cardigan"), """{ "own": [{ "name": "One", "measures": { "bust": "90 cm" } }] }""", "One"));

    [Fact]
    public async Task They_are_made_one_by_one_and_kept_for_chart_and_size()
    {
        var jobs = new Counted();
        var drawings = new RepertoireDrawings(jobs);
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        var told = 0;
        await drawings.DrawAsync(document, "M", () => told++, CancellationToken.None);
        Assert.Equal((Repertoire.All.Length, Repertoire.All.Length), (jobs.Count, told));
        Assert.All(Repertoire.All, kind => Assert.NotNull(drawings.Find(kind, document, "M")));
        await drawings.DrawAsync(document, "M", () => told++, CancellationToken.None);
        Assert.Equal(Repertoire.All.Length, jobs.Count);
        // What is not made to the body is the same in every size.
        await drawings.DrawAsync(document, "L", () => told++, CancellationToken.None);
        Assert.Equal(Repertoire.All.Length + Repertoire.All.Count(kind => kind.IsToBody), jobs.Count);
    }

    [Fact]
    public async Task Without_a_second_runtime_the_page_does_not_stand_still_for_them()
    {
        var drawings = new RepertoireDrawings(new Counted { None = true });
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        await drawings.DrawAsync(document, "M", () => Assert.Fail("Nothing is drawn."), CancellationToken.None);
        Assert.Null(drawings.Find(Repertoire.All[0], document, "M"));
    }

    [Fact]
    public async Task A_page_that_is_left_at_once_draws_nothing()
    {
        var jobs = new Counted();
        var drawings = new RepertoireDrawings(jobs) { Pause = TimeSpan.FromHours(1) };
        using var left = new CancellationTokenSource();
        var drawing = drawings.DrawAsync(ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!, "M", () => { }, left.Token);
        await left.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => drawing);
        Assert.Equal(0, jobs.Count);
    }

    private static KindDrawing? Draw(GarmentKind kind, string sizes, string? size) =>
        RepertoireJob.Read(RepertoireJob.Run(RepertoireJob.Order(kind, JsonNode.Parse(sizes), size), new Progress<double>()));

    private sealed class Counted : IJobs
    {
        public int Count { get; private set; }

        public bool None { get; init; }

        public Task WarmAsync() => Task.CompletedTask;

        public Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies)
        {
            Count++;
            return None
                ? Task.FromException<byte[]>(new NoWorkerException("There is none."))
                : new JobsHere().RunAsync(job, input, progress, cancel, assemblies);
        }
    }

    /// <summary>A designer who works in inches reads of inches beside every garment.</summary>
    [Fact]
    public void Measures_are_said_in_the_units_of_the_document()
    {
        var kind = Core.Constructions.Repertoire.All.First(k => k.Name == "vest");
        var drawn = RepertoireJob.Read(RepertoireJob.Run(RepertoireJob.Order(kind, null, null, JsonValue.Create("in")), new Progress<double>()));
        Assert.Matches(@"^[\d¼½¾⅛⅜⅝⅞]+ in round", drawn!.Measures);
    }
}
