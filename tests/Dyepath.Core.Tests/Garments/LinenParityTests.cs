using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Reading;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Instructions;

namespace Dyepath.Core.Tests.Garments;

/// <summary>In linen stitch every single crochet falls on a chain space, where a round ends too.</summary>
public sealed class LinenParityTests
{
    private static readonly MotifKind[] Motifs = [MotifKind.EvenSlant, MotifKind.Columns, MotifKind.Argyle, MotifKind.Shallow];

    [Fact]
    public void Joined_rounds_hold_whole_pairs_and_spirals_half_a_pair_more()
    {
        var planned = Enum.GetValues<Working>().ToDictionary(w => w, _ => 0);
        Gen.Select(Gen.Enum<Working>(), Gen.Int[0, 3], Gen.Int[44, 130]).Holds(
            (working, motif, around) =>
            {
                if (Patterns.LinenCowl(working, Motifs[motif], around).Tried().Plan is not { } plan)
                    return;
                planned[working]++;
                var stitches = plan.Sizes[0].Pieces[0].Stitches;
                if (working != Working.Turned)
                    Assert.Equal(working == Working.Spiral ? 1 : 0, stitches % 2);
                Assert.Empty(PlanCheck.Verify(plan));
                Assert.Empty(PatternCheck.Text(plan, Written(plan)));
            },
            seed: 2741, cases: 60);
        Assert.All(planned, p => Assert.True(p.Value >= 4, $"Only {p.Value} cowls were planned for {p.Key}."));
    }

    [Theory]
    [InlineData(Working.Rounds, MotifKind.Columns)]
    [InlineData(Working.RoundsTurned, MotifKind.Argyle)]
    [InlineData(Working.Spiral, MotifKind.EvenSlant)]
    public void A_count_of_the_other_parity_is_refused_wherever_it_comes_from(Working working, MotifKind motif)
    {
        var project = Patterns.LinenCowl(working, motif, 60);
        var plan = project.Planned();
        var (size, piece) = (plan.Sizes[0], plan.Sizes[0].Pieces[0]);
        var pinned = project.Fixed([], [new FixedNumber(size.Name, "panelStitches", null, piece.Stitches + 1, "tried")]).Tried();
        Assert.Equal(PlanOutcome.Infeasible, pinned.Outcome);
        Assert.Contains(pinned.Reasons, r => r.Text.Contains(piece.Stitches + " or ", StringComparison.Ordinal));

        var odd = piece with
        {
            Stitches = piece.Stitches + 1,
            RowStitches = [piece.Stitches + 1],
            FoundationChains = piece.FoundationChains + 1,
            Foundation = piece.Foundation with { Chains = piece.FoundationChains + 1 },
        };
        var spoilt = plan with { Sizes = [size with { Pieces = [odd] }] };
        Assert.Contains(PlanCheck.Verify(spoilt), f => f.Place.EndsWith(".stitches", StringComparison.Ordinal));
        Assert.Contains(
            PatternCheck.Text(spoilt, Written(spoilt)), f => f.Text.Contains("cannot be followed", StringComparison.Ordinal));
    }

    private static string Written(Plan plan) => TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
}
