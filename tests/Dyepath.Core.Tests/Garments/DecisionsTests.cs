using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using CsCheck;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Projects;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>A plan made again from its decisions is the plan, down to the last bit of every number that can be read from it.</summary>
public sealed class DecisionsTests
{
    [Fact]
    public void ThePlanOfAnyProjectComesBackFromItsDecisions()
    {
        var outcomes = new HashSet<PlanOutcome>();
        ProjectGen.Project.Select(Steady).Holds(project => { outcomes.Add(Holds(project)); }, seed: 41, cases: 60);
        Assert.Equal(3, outcomes.Count);
    }

    [Fact]
    public void SoDoPlansOfTheDemoWithOtherMotifsGradingsAndCounts()
    {
        Gen.Select(Gen.Enum<MotifKind>(), Gen.Int[0, 31], Gen.Int[1, 4], Gen.Int[0, 20]).Holds(
            (motif, flags, most, start) => Holds(Varied(motif, flags, most, start)), seed: 42, cases: Extent.Of(12, 40));
    }

    [Fact]
    public void OtherPlansDecisionsAreRefused()
    {
        using var recorded = Decisions.Record();
        GarmentPlanner.Plan(Tideline, recorded);
        var other = Tideline with { Sizes = Tideline.Sizes with { Sizes = [.. Tideline.Sizes.Sizes[..3]], Base = null } };
        using var whole = Decisions.Replay(recorded.ToArray());
        Assert.NotNull(GarmentPlanner.Plan(Tideline, whole).Plan);
        using var half = Decisions.Replay(recorded.ToArray()[..^200]);
        Assert.IsType<InvalidDataException>(Assert.Single(GarmentPlanner.Plan(Tideline, half).Reasons).Cause);
        using var none = Decisions.Replay([]);
        Assert.IsType<InvalidDataException>(Assert.Single(GarmentPlanner.Plan(other, none).Reasons).Cause);
    }

    /// <summary>Wherever the work was too much, in a search or between two, the same is said again; and of a search that failed too.</summary>
    /// <remarks>By command: at one of the places where work is cut short, one decision too many is asked for; nothing is planned wrongly.</remarks>
    [Fact]
    public void WhatWasGivenUpIsGivenUpAgainForTheSameReason()
    {
        var whole = new Effort();
        GarmentPlanner.Plan(Tideline, whole);
        for (var part = 1; part < 9; part++)
        {
            using var recorded = Decisions.Record();
            var first = GarmentPlanner.Plan(Tideline, recorded, new Effort(whole.Spent * part / 9));
            using var replayed = Decisions.Replay(recorded.ToArray());
            var again = GarmentPlanner.Plan(Tideline, replayed);
            Assert.Contains("too long", Assert.Single(first.Reasons).Text, StringComparison.Ordinal);
            Assert.Equal(first.Reasons, again.Reasons);
        }
        using var failed = Decisions.Record();
        var broken = GarmentPlanner.Plan(Tideline, failed, new Effort { Watch = Failing(whole.Spent / 2) });
        using var replay = Decisions.Replay(failed.ToArray());
        Assert.Equal(Assert.Single(broken.Reasons).Text, Assert.Single(GarmentPlanner.Plan(Tideline, replay).Reasons).Text);

        static Action<long> Failing(long after)
        {
            var spent = 0L;
            return steps => spent = (spent + steps) < after ? spent + steps : throw new InvalidOperationException("As a fault would.");
        }
    }

    /// <summary>What is asked of a plan later is searched for anew: nothing waits for decisions that were used up.</summary>
    [Fact]
    public void ARulerWorksOutCornersAfterTheReplay()
    {
        var (first, again) = Twice(Tideline);
        foreach (var (was, now) in first.Plan!.Options.Zip(again.Plan!.Options))
        {
            var (a, b) = (was.Ruler.Corner(was.Ruler.Counts[0], 20, 12), now.Ruler.Corner(now.Ruler.Counts[0], 20, 12));
            Assert.Equal(a.Cells.ToArray(), b.Cells.ToArray());
        }
    }

    [Fact]
    public void ARulerWorksOutCornersOfAPlanThatNobodyWaitsForAnyMore()
    {
        using var left = new CancellationTokenSource();
        var ruler = GarmentPlanner.Plan(Tideline, left.Token).Plan!.Chosen.Ruler;
        left.Cancel();
        Assert.Equal(20 * 12, ruler.Corner(ruler.Counts[0], 20, 12).Cells.Length);
    }

    /// <summary>Hands that spread no further than they can be planned with.</summary>
    private static Project Steady(Project project) => project.Fabric.Hands is { } hands
        ? project with { Fabric = project.Fabric with { Hands = hands with { Spread = Math.Min(hands.Spread, 0.3) } } }
        : project;

    /// <summary>In part, mostly in three sizes: what is recorded of one is recorded of every one.</summary>
    private static Project Varied(MotifKind motif, int flags, int most, int start)
    {
        var begun = Extent.IsWhole || start % 4 == 0 ? Tideline : Tideline with { Sizes = Tideline.Sizes with { Sizes = ["XS", "M", "5X"] } };
        var project = begun.WithTop(t => t with { Sleeves = (flags & 1) == 0 ? t.Sleeves! with { Pooled = true } : t.Sleeves }).With(g => g with
        {
            Motif = motif,
            Starts = (flags & 16) == 0 ? g.Starts : g.Starts.SetItem("back", start),
            Grading = g.Grading with
            {
                MostCounts = most,
                SideBands = (flags & 2) != 0,
                UnequalPanels = (flags & 4) != 0,
                AlternatingRows = (flags & 8) != 0,
                HalfStitchTurn = (flags & 16) != 0,
            },
        });
        return (flags & 24) == 24
            ? project.With(g => g with { Direction = Direction.Up }) with
            {
                Sizes = project.Sizes with { Overrides = [new FixedNumber("M", "panelStitches", null, 80 + start, "as the sample")] },
            }
            : project;
    }

    private static PlanOutcome Holds(Project project)
    {
        var (first, again) = Twice(project);
        if (first.Plan is { } plan)
            Assert.Equal(PlanJson.Write(plan), PlanJson.Write(again.Plan!));
        var told = Told(again);
        Assert.Equal(Told(first), told);
        Assert.Equal(Told(GarmentPlanner.Plan(project)), told);
        return first.Outcome;
    }

    private static (PlanResult First, PlanResult Again) Twice(Project project)
    {
        using var recorded = Decisions.Record();
        var first = GarmentPlanner.Plan(project, recorded);
        using var replayed = Decisions.Replay(recorded.ToArray());
        return (first, GarmentPlanner.Plan(project, replayed));
    }

    private static readonly Dictionary<Type, PropertyInfo[]> Members = [];

    private static PropertyInfo[] MembersOf(Type type)
    {
        if (!Members.TryGetValue(type, out var members))
            Members.Add(type, members = [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(m => m.GetIndexParameters().Length == 0)]);
        return members;
    }

    /// <summary>Everything that can be read of a result, floating numbers to the last bit.</summary>
    private static string Told(object? value)
    {
        var text = new StringBuilder();
        Tell(value, 0);
        return text.ToString();

        void Tell(object? what, int depth)
        {
            Assert.True(depth < 24);
            switch (what)
            {
                case null:
                    text.Append("none\n");
                    break;
                case double number:
                    text.Append(number.ToString("R", CultureInfo.InvariantCulture)).Append('\n');
                    break;
                case Delegate or Type:
                    break;
                case string or IFormattable or bool:
                    text.Append(CultureInfo.InvariantCulture, $"{what}\n");
                    break;
                case IEnumerable list:
                    foreach (var item in list)
                        Tell(item, depth + 1);
                    text.Append("end\n");
                    break;
                default:
                    foreach (var member in MembersOf(what.GetType()))
                    {
                        text.Append(member.Name).Append(": ");
                        Tell(member.GetValue(what), depth + 1);
                    }
                    if (what is SequenceEstimate estimate)
                    {
                        for (var i = 0; i < estimate.Sections.Length * estimate.Sections.Length; i++)
                            Tell(estimate.Covariance(i / estimate.Sections.Length, i % estimate.Sections.Length), depth + 1);
                    }
                    break;
            }
        }
    }
}
