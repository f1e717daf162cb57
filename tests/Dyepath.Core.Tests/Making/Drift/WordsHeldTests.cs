using Dyepath.Bench.Makers;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>
/// Makers who read the page's sentences, in miniature: the table of docs/making.md with twelve makers of size M. The words as they stood
/// before they had one baseline and one mark gave such makers a median of 0.34, and the worst of them 0.09.
/// </summary>
public sealed class WordsHeldTests
{
    private static readonly MakingOrder Tunic = MakingOrder.Of(GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!, "M");

    [Fact]
    public void Makers_who_read_the_sentences_hold_their_colours()
    {
        var words = Work(new MakerKind());
        Assert.InRange(words.Median(w => w.Share), 0.79, 1);
        Assert.InRange(words.Min(w => w.Share), 0.70, 1);
        // Half of the rows ask for nothing, and what is bad is not left so.
        Assert.InRange(words.Average(w => w.Asked), 0, 0.55);
        Assert.InRange(words.Average(w => w.BadRows), 0, 0.04);
        var feel = Work(new MakerKind { GoesBy = GoesBy.Feel });
        Assert.True(words.Min(w => w.Share) > feel.Median(w => w.Share));
    }

    [Fact]
    public void A_second_look_where_it_is_asked_for_is_worth_more() =>
        Assert.InRange(Work(new MakerKind { Looks = Looks.MidRow }).Median(w => w.Share), 0.84, 1);

    [Theory]
    [InlineData(0.005, 0.87)]
    [InlineData(0.03, 0.62)]
    public void Steady_and_unsteady_hands_do_better_by_words_than_by_feel(double spread, double least)
    {
        var kind = new MakerKind { Spread = spread };
        var (words, feel) = (Work(kind), Work(kind with { GoesBy = GoesBy.Feel }));
        Assert.InRange(words.Median(w => w.Share), least, 1);
        Assert.True(words.Median(w => w.Share) > feel.Median(w => w.Share));
        Assert.True(words.Min(w => w.Share) > feel.Min(w => w.Share));
    }

    /// <summary>What stands on the page is one thing: no colour and no mark that is not in the row, and nothing that no maker understands.</summary>
    [Fact]
    public void Every_sentence_is_understood_and_its_mark_is_in_the_row()
    {
        var random = new Random(5);
        var state = MakingState.Begin(Tunic);
        string[] names = [.. Tunic.Plan.Sequence.Colours.Select(c => c.Name)];
        var (said, marked) = (new HashSet<string>(), 0);
        for (var taps = 0; taps < 600 && !state.IsPartDone; taps++)
        {
            var did = state.Row is null ? EntryKind.Step : EntryKind.Row;
            int? phase = did == EntryKind.Row && random.Next(4) > 0 ? random.Next(-3, 4) * random.Next(1, 4) / 2 : null;
            state = state.Apply(new Entry(did, DateTimeOffset.UnixEpoch, phase));
            if (AdviceWords.Say(state, [.. names]) is not { } sentence || state.Row is not { } row) continue;
            said.Add(sentence);
            var asked = SentenceReader.Read(sentence);
            var advice = state.Drift!.Advice!;
            Assert.Equal(sentence.Contains("the mark", StringComparison.Ordinal), AdviceWords.Mark(state) is not null);
            if (AdviceWords.Mark(state) is { } mark)
            {
                marked++;
                var begins = state.Runs.Take(mark).Sum(run => run.Units);
                Assert.Equal(advice.Stitches, begins);
                Assert.Equal(asked.Stretches[0].Stitches, begins);
                Assert.InRange(mark, 1, state.Runs.Length - 1);
            }
            if (AdviceWords.Look(state) is { } look)
                Assert.Equal(advice.LookAfter, state.Runs.Take(look).Sum(run => run.Units));
        }
        Assert.True(marked > 10);
        Assert.True(said.Count > 20, string.Join("\n", said));
    }

    private static WorkedPiece[] Work(MakerKind kind) =>
        [.. Enumerable.Range(300, 12).Select(seed => new WordMaker(
            new BesidePage(Tunic), kind, Tunic.Plan.Sequence.YarnPerUnit.Centimetres, seed).Work())];
}

internal static class Shares
{
    public static double Median(this WorkedPiece[] made, Func<WorkedPiece, double> figure)
    {
        double[] ordered = [.. made.Select(figure).Order()];
        return (ordered[(ordered.Length - 1) / 2] + ordered[ordered.Length / 2]) / 2;
    }
}
