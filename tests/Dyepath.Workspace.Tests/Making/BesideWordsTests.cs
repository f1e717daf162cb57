using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Making.Beside;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>What is read or heard beside the hook.</summary>
public sealed class BesideWordsTests
{
    private static readonly BesideView View = BesideView.TryOpen(MakingBench.Demo(), out _)!;
    private static readonly PlannedPiece Piece = View.Order.Parts.First(p => p.Planned is not null).Planned!;
    private static readonly (string, string) Stitches = ("stitch", "stitches");

    /// <summary>Looser stitches take more yarn, so that the colours come early.</summary>
    [Theory]
    [InlineData(0, 0, "Colours are on the count.")]
    [InlineData(0.2, 0, "Colours are on the count.")]
    [InlineData(0.5, 0, "Colours come about half a stitch early.")]
    [InlineData(-0.5, 0, "Colours come about half a stitch late.")]
    [InlineData(1, 0, "Colours come about one stitch early.")]
    [InlineData(-2.1, 0, "Colours come about 2 stitches late.")]
    [InlineData(2.5, 0, "Colours come about 2½ stitches early.")]
    [InlineData(3, 0.5, "Colours come about 3 stitches early, give or take one stitch.")]
    [InlineData(0, 1, "Colours are on the count, give or take 2 stitches.")]
    public void How_far_colours_are_off_is_said_to_the_half_stitch(double off, double doubt, string words) =>
        Assert.Equal(words, BesideWords.Drift(Track(m => m, off, doubt), Stitches));

    [Fact]
    public void In_linen_stitch_they_are_off_by_pairs() =>
        Assert.Equal("Colours come about half a pair late.", BesideWords.Drift(Track(m => m, -0.5, 0), ("pair", "pairs")));

    /// <summary>A whole sequence off looks like none.</summary>
    [Theory]
    [InlineData(22, "Colours come about one stitch early.")]
    [InlineData(-41, "Colours come about one stitch early.")]
    [InlineData(20, "Colours come about one stitch late.")]
    public void Whole_sequences_are_not_seen(double off, string words) =>
        Assert.Equal(words, BesideWords.Drift(Track(m => m with { Period = 21 }, off, 0), Stitches));

    [Theory]
    [InlineData(0.01, 21, "Left alone, your hands work looser than the pattern: a stitch in 5 sequences.")]
    [InlineData(-0.01, 21, "Left alone, your hands work tighter than the pattern: a stitch in 5 sequences.")]
    [InlineData(0.2, 21, "Left alone, your hands work looser than the pattern: a stitch in 1 sequence.")]
    [InlineData(-0.0009, 21, "Your hands keep the pattern's tension, as far as can be told.")]
    public void Hands_are_looser_or_tighter_by_a_stitch_in_so_many_sequences(double bias, double sequence, string words) =>
        Assert.Equal(words, BesideWords.Hands(Track(m => m with { Bias = bias, BiasSpread = 0.001 }, 0, 0), sequence));

    [Fact]
    public void A_row_is_spoken_with_its_first_runs_and_its_last_and_run_by_run_with_the_run_at_hand()
    {
        var state = AtRow();
        var row = state.Row!;
        var (label, runs) = (View.Say(row.Label), state.Runs);
        Assert.True(runs.Length > 3);
        var notes = string.Concat(row.Notes.Select(n => " " + View.Say(n)));
        Assert.Equal($"{label}.{notes} {Said(runs[0])}, {Said(runs[1])}, {Said(runs[2])}. Ends {Said(runs[^1])}.", BesideWords.Spoken(View, state, byRuns: false));
        Assert.Equal($"{label}.{notes} {Said(runs[0])}", BesideWords.Spoken(View, state, byRuns: true));
        var on = state.Apply(new Entry(EntryKind.Run, MakingBench.Now));
        Assert.Equal(Said(runs[1]), BesideWords.Spoken(View, on, byRuns: true));
        Assert.Equal($"{Said(runs[0])}, {Said(runs[1])}", BesideWords.Runs(runs.Take(2), View));

        static string Said(ColourRun run) => $"{run.Units} {View.Names[run.Section]}";
    }

    [Fact]
    public void Where_she_is_is_said_of_rows_steps_finished_parts_and_the_end()
    {
        var begun = MakingState.Begin(View.Order);
        var part = View.Say(begun.Part.Title);
        Assert.Equal($"{part}: {View.Say(begun.Step!.Label)}", View.Where(begun));
        Assert.Equal($"{View.Say(begun.Step.Label)}. {View.Say(begun.Step.Text)}", BesideWords.Spoken(View, begun, false));
        var row = AtRow();
        Assert.Equal($"{part}: {View.Say(row.Row!.Label)} of {row.Part.Rows}", View.Where(row));
        var state = begun;
        for (var at = 0; at < View.Order.Parts.Length; at++)
        {
            if (at > 0)
            {
                Assert.Equal($"{View.Say(state.Part.Title)}: finished", View.Where(state));
                Assert.Equal(View.Where(state), BesideWords.Spoken(View, state, true));
                state = state.Apply(new Entry(EntryKind.Part, MakingBench.Now, To: at + 1));
            }
            state = state.Apply(View.Order.Parts[at].Steps.Select(s => new Entry(s is RowStep ? EntryKind.Row : EntryKind.Step, MakingBench.Now)));
        }
        Assert.Equal("Everything is done", View.Where(state));
    }

    [Fact]
    public void A_rows_end_says_how_many_of_which_colour() =>
        Assert.Equal("3 foam", BesideWords.End(new RowEnd(2, 3), View));

    [Fact]
    public void In_linen_stitch_pairs_are_counted()
    {
        Assert.Equal(("stitch", "stitches"), View.Unit);
        var document = Fabric.Demo.Document();
        document.Set("fabric.stitch", "linen");
        document.Set("fabric.sectionStitches", null);
        document.Set("fabric.keeping", "free");
        document.Set("garment", System.Text.Json.Nodes.JsonNode.Parse("""{ "shape": "wrap", "width": "45 cm", "length": "150 cm" }"""));
        document.Set("sizes", null);
        var project = Core.Projects.ProjectReader.Read(System.Text.Encoding.UTF8.GetBytes(document.Text)).Project!;
        var size = Core.Planning.GarmentPlanner.Plan(project).Plan!.Sizes[0].Name;
        Assert.Equal(("pair", "pairs"), BesideView.TryOpen(MakingDocument.Begin(project, size), out _)!.Unit);
    }

    private static MakingState AtRow()
    {
        var state = MakingState.Begin(View.Order);
        while (state.Row is null)
            state = state.Apply(new Entry(EntryKind.Step, MakingBench.Now));
        return state;
    }

    private static DriftTrack Track(Func<DriftModel, DriftModel> change, double off, double doubt)
    {
        var model = change(new DriftModel(0.02, 40));
        var track = DriftTrack.Begin(Piece, model);
        return track.Act(track.Filter.Shift(off, doubt), new DriftPlace(Piece, 0));
    }

    /// <summary>
    /// Whoever hears where she is, or reads it in the title of a window, is told when she has gone on: no step has the name of the one
    /// before it, in any garment.
    /// </summary>
    [Theory]
    [MemberData(nameof(EveryGarment))]
    public void No_two_steps_in_turn_have_one_name(string garment)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
        var plan = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken).Plan!;
        var view = BesideView.TryOpen(MakingBench.Demo() with { Project = project, Size = plan.Sizes[0].Name }, out _)!;
        foreach (var part in view.Order.Parts)
        {
            var names = Enumerable.Range(0, part.Steps.Length).Select(step => view.StepName(part, step)).ToArray();
            Assert.All(names.Zip(names.Skip(1)), pair => Assert.NotEqual(pair.First, pair.Second));
        }
    }

    public static TheoryData<string> EveryGarment => [.. Repertoire.All.Select(k => k.Name)];
}
