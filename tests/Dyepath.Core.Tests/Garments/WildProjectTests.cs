using CsCheck;
using Dyepath.Core.Garments;
using Dyepath.Core.Garments.Checking;
using Dyepath.Core.Motifs;
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
        Gen.Select(lengths, Gen.Int[3, 60], Gen.Int[1, 400], Gen.Int[0, 15], Gen.Enum<MotifKind>()).Holds(
            (typed, gauge, ball, flags, motif) =>
            {
                var (ease, below, neck, shorter, armEase, hidden, hiddenRows) = typed;
                var project = Tideline.WithTop(t => t with
                {
                    BustEase = new Ease(null, null, Cm(ease)),
                    BelowWaist = Cm(below),
                    NeckWidth = Cm(neck),
                    UpperArmEase = Cm(armEase),
                    Sleeves = (flags & 1) == 0 ? null : t.Sleeves! with { ShorterBy = Cm(shorter), Pooled = (flags & 2) == 0 },
                }).With(g => g with
                {
                    Motif = motif,
                    Edgings = [.. g.Edgings.Where(e => e.Where != EdgingPlace.Cuffs)],
                    Seams = g.Seams with { HiddenStitches = hidden, HiddenRows = hiddenRows },
                    Grading = g.Grading with { SideBands = (flags & 4) != 0, UnequalPanels = (flags & 8) != 0, AlternatingRows = (flags & 8) != 0 },
                });
                project = project with
                {
                    Yarn = project.Yarn with { Ball = new Ball(Length.FromMetres(ball), Mass.FromGrams(50)) },
                    Fabric = project.Fabric with
                    {
                        Swatch = project.Fabric.Swatch with { Worked = new Gauge(gauge, gauge + 2, Cm(10)), Blocked = null, Hung = null },
                    },
                };
                var result = project.Tried();
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
            seed: 601, cases: 150);
        Assert.Equal(3, outcomes.Count);
    }
}
