using CsCheck;
using Dyepath.Core.Checking;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Whatever a designer types, she gets a plan that agrees with its check, or reasons; never an exception.</summary>
public sealed class WildProjectTests
{
    [Fact]
    public void Wild_lengths_give_a_plan_or_reasons()
    {
        var lengths = Gen.Select(
            Gen.Int[-60, 120], Gen.Int[-40, 150], Gen.Int[1, 90], Gen.Int[-30, 60], Gen.Int[-30, 60], Gen.Int[0, 8], Gen.Int[0, 6]);
        var outcomes = new HashSet<PlanOutcome>();
        // The finer the gauge, the more counts to search: most are kept coarse.
        var gauges = Gen.Frequency((4, Gen.Int[3, 30]), (1, Gen.Int[31, 60]));
        // Some balls too short for one sequence.
        var balls = Gen.Frequency((4, Gen.Int[40, 400]), (1, Gen.Int[1, 3]));
        Gen.Select(lengths, gauges, balls, Gen.Int[0, 15], Gen.Enum<MotifKind>()).Holds(
            (typed, gauge, ball, flags, motif) =>
            {
                var result = Wild(typed, gauge, ball, flags, motif).Tried();
                outcomes.Add(result.Outcome);
                if (result.Plan is not { } plan)
                {
                    Assert.NotEmpty(result.Reasons);
                    Assert.All(result.Reasons, r => Assert.True(r.Place.Length > 0 && r.Text.Length > 0));
                    return;
                }
                var found = PlanCheck.Verify(plan);
                Assert.True(found.IsEmpty, string.Join('\n', found.Take(5)));
            },
            seed: 601, cases: Extent.Of(18, 80));
        Assert.True(outcomes.Count == 3, $"only {string.Join(", ", outcomes)}");
    }

    [Fact]
    public void Sleeves_of_alternating_rows_are_as_long_as_their_mean_row()
    {
        // Which gauge leaves alternating rows as the better sleeve is for the grading to say.
        var plan = Enumerable.Range(10, 31)
            .Select(gauge => GarmentPlanner.Plan(Wild((80, 42, 10, -28, -23, 6, 4), gauge, 151, 13, MotifKind.Columns)).Plan)
            .First(p => p is not null && p.Sizes.Any(size => size.Pieces.Any(piece => piece is { Name: "sleeve", RowStitches.Length: 2 })));
        Assert.Empty(PlanCheck.Verify(plan!));
    }

    private static Project Wild(
        (int Ease, int Below, int Neck, int Shorter, int ArmEase, int Hidden, int HiddenRows) lengths, int gauge, int ball, int flags,
        MotifKind motif)
    {
        var (ease, below, neck, shorter, armEase, hidden, hiddenRows) = lengths;
        var project = Tideline.WithTop(t => t with
        {
            BustEase = new Ease(null, null, Cm(ease)),
            BelowWaist = Cm(below),
            Neck = t.Neck with { Width = Cm(neck) },
            UpperArmEase = Cm(armEase),
            Sleeves = (flags & 1) == 0 ? null : t.Sleeves! with { ShorterBy = Cm(shorter), Pooled = (flags & 2) == 0 },
        }).With(g => g with
        {
            Motif = motif,
            Edgings = [.. g.Edgings.Where(e => e.Where != EdgingPlace.Cuffs)],
            Seams = g.Seams with { HiddenStitches = hidden, HiddenRows = hiddenRows },
            Grading = g.Grading with
            {
                SideBands = (flags & 4) != 0,
                UnequalPanels = (flags & 8) != 0,
                AlternatingRows = (flags & 8) != 0,
            },
        });
        return project with
        {
            Yarn = project.Yarn with { Ball = new Ball(Length.FromMetres(ball), Mass.FromGrams(50)) },
            Fabric = project.Fabric with
            {
                Swatch = project.Fabric.Swatch with { Worked = new Gauge(gauge, gauge + 2, Cm(10)), Blocked = null, Hung = null },
            },
        };
    }
}
