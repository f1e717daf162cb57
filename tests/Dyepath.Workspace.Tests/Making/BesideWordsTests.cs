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
    [InlineData(0, 0, "By now colours should be on the count.")]
    [InlineData(0.2, 0, "By now colours should be on the count.")]
    [InlineData(0.5, 0, "By now colours should come about half a stitch early.")]
    [InlineData(-0.5, 0, "By now colours should come about half a stitch late.")]
    [InlineData(1, 0, "By now colours should come about one stitch early.")]
    [InlineData(-2.1, 0, "By now colours should come about 2 stitches late.")]
    [InlineData(2.5, 0, "By now colours should come about 2½ stitches early.")]
    [InlineData(3, 0.5, "By now colours should come about 3 stitches early, give or take one stitch.")]
    [InlineData(0, 1, "By now colours should be on the count, give or take 2 stitches.")]
    public void How_far_colours_are_off_is_said_to_the_half_stitch(double off, double doubt, string words) =>
        Assert.Equal(words, BesideWords.Drift(Track(m => m, off, doubt), Stitches));

    [Fact]
    public void In_linen_stitch_they_are_off_by_pairs() =>
        Assert.Equal("By now colours should come about half a pair late.", BesideWords.Drift(Track(m => m, -0.5, 0), ("pair", "pairs")));

    /// <summary>A whole sequence off looks like none.</summary>
    [Theory]
    [InlineData(22, "By now colours should come about one stitch early.")]
    [InlineData(-41, "By now colours should come about one stitch early.")]
    [InlineData(20, "By now colours should come about one stitch late.")]
    public void Whole_sequences_are_not_seen(double off, string words) =>
        Assert.Equal(words, BesideWords.Drift(Track(m => m with { Period = 21 }, off, 0), Stitches));

    /// <summary>Anywhere within a sequence is nowhere that can be said.</summary>
    [Fact]
    public void After_a_knot_nothing_is_said_of_where_colours_lie() => Assert.Equal(
        "Where the colours lie is not known before you look.", BesideWords.Drift(AtRow().Apply(new Entry(EntryKind.Knot, MakingBench.Now)).Drift!, Stitches));

    [Theory]
    [InlineData(0.01, 21, "Over all your rows, your natural hands work looser than the pattern, by a stitch in 5 sequences; what is asked above counts with that.")]
    [InlineData(-0.01, 21, "Over all your rows, your natural hands work tighter than the pattern, by a stitch in 5 sequences; what is asked above counts with that.")]
    [InlineData(0.2, 21, "Over all your rows, your natural hands work looser than the pattern, by a stitch in 1 sequence; what is asked above counts with that.")]
    [InlineData(-0.0009, 21, "Whether your hands work looser or tighter than the pattern by themselves cannot be told yet: what is asked above is for these colours only.")]
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

    /// <summary>What is advised is heard in the words in which it is read, once: when it is given.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Advice_is_spoken_in_the_words_in_which_it_is_read(bool byRuns)
    {
        var state = AtRow().Apply(new Entry(EntryKind.Row, MakingBench.Now, Phase: 2));
        var sentence = AdviceWords.Say(state, View.Names)!;
        Assert.Contains($" {sentence} ", BesideWords.Spoken(View, state, byRuns), StringComparison.Ordinal);
        var looked = state.Apply(new Entry(EntryKind.Look, MakingBench.Now, Phase: 0, To: 9));
        Assert.StartsWith(AdviceWords.Say(looked, View.Names)!, BesideWords.Spoken(View, looked, byRuns), StringComparison.Ordinal);
        Assert.NotEqual(sentence, AdviceWords.Say(looked, View.Names));
        var on = state.Apply(new Entry(EntryKind.Run, MakingBench.Now));
        Assert.DoesNotContain(sentence, BesideWords.Spoken(View, on, byRuns: true), StringComparison.Ordinal);
    }

    /// <summary>Everything that the page asks for and notes is heard too.</summary>
    [Fact]
    public void What_is_asked_and_noted_is_spoken()
    {
        var state = AtRow().Apply(new Entry(EntryKind.Row, MakingBench.Now, Phase: 0));
        var look = BesideWords.LookAgain(View, state)!;
        Assert.Matches("^Look again where this [a-z ]+ begins, after [0-9]+ stitches$", look);
        Assert.Contains($"{look}.", BesideWords.Spoken(View, state, byRuns: false), StringComparison.Ordinal);
        Assert.Null(BesideWords.LookAgain(View, AtRow()));
        var knot = state.Apply(new Entry(EntryKind.Knot, MakingBench.Now));
        Assert.Contains("The knot is noted", BesideWords.Spoken(View, knot, byRuns: false), StringComparison.Ordinal);
        var bad = state.Apply(new Entry(EntryKind.Row, MakingBench.Now, Phase: 9));
        Assert.Equal("Row 2 should read: ", BesideWords.ShouldRead(View, bad)![..19]);
        Assert.Contains(BesideWords.ShouldRead(View, bad)!, BesideWords.Spoken(View, bad, byRuns: false), StringComparison.Ordinal);
        var on = bad.Apply(new Entry(EntryKind.Row, MakingBench.Now));
        Assert.Equal("You worked on, so row 2 stays as it is.", BesideWords.Lapsed(on));
        Assert.Null(BesideWords.Lapsed(bad));
    }

    /// <summary>5 deep water, 4 shallows, 3 foam, 5, 4 and so on: after 47 of the first row 42 are two whole sequences.</summary>
    [Fact]
    public void Where_she_stopped_is_said_in_the_colour_that_she_was_at()
    {
        var row = AtRow();
        string Stopped(int at) => BesideWords.Noted(View, row.Apply(new Entry(EntryKind.Stop, MakingBench.Now, To: at)))!;
        var (first, second) = (row.Runs[0], row.Runs[1]);
        Assert.Equal($"You stopped after 1 stitch of this row: 1 of the {first.Units} of {View.Names[first.Section]} are worked.", Stopped(1));
        Assert.Equal($"You stopped after {first.Units} stitches of this row: {View.Names[second.Section]} begins.", Stopped(first.Units));
        Assert.Equal($"You stopped after {first.Units + 2} stitches of this row: 2 of the {second.Units} of {View.Names[second.Section]} are worked.", Stopped(first.Units + 2));
        Assert.Null(BesideWords.Noted(View, row));
    }

    [Theory]
    [InlineData(0, 0, 0, null)]
    [InlineData(1, 0, 0, "This sitting: 1 row.")]
    [InlineData(1, 1, 1, "This sitting: 1 row, in its colours.")]
    [InlineData(1, 0, 1, "This sitting: 1 row, not in its colours.")]
    [InlineData(3, 1, 3, "This sitting: 3 rows, 1 of them in its colours.")]
    [InlineData(8, 7, 8, "This sitting: 8 rows, 7 of them in their colours.")]
    [InlineData(8, 3, 4, "This sitting: 8 rows; of the 4 whose colours you looked after, 3 are in their colours.")]
    public void A_sitting_is_counted_by_rows_and_by_those_in_their_colours(int rows, int held, int known, string? said) =>
        Assert.Equal(said, BesideWords.Sat(new Sitting(rows, held, known, TimeSpan.Zero), "row"));

    [Theory]
    [InlineData("The device is full.", true, "Your last tap stands on this page alone. The device is full. Leave the page open: it is tried again with your next tap.")]
    [InlineData("This piece was put away in another tab.", false, "Your last tap was not counted. This piece was put away in another tab.")]
    public void A_tap_that_is_not_kept_is_told_with_what_to_do(string why, bool counts, string said) => Assert.Equal(said, BesideWords.NotKept(why, counts));

    [Fact]
    public void A_grade_is_told_on_a_strip_of_her_own_yarn()
    {
        var strip = GradeStrip.Of(View.Sequence)[0];
        Assert.Equal($"“A touch tighter”: on a strip worked so from its first stitch, {View.Names[strip.Section]} in sequence {strip.Sequence} ends one stitch later than by your natural hands.", BesideWords.Strip(strip, View, looser: false));
        Assert.Contains("“A touch looser”: ", BesideWords.Strip(strip, View, looser: true), StringComparison.Ordinal);
        // Her own count comes before the pattern's.
        var own = BesideView.TryOpen(MakingBench.Demo() with { Counted = [[6, 5, 4, 6, 5]] }, out _)!;
        Assert.Equal(26, own.Sequence.Sum());
        Assert.Equal([6, 5, 4, 6, 5], own.Sequence);
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
