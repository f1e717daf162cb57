using Dyepath.Core.Checking;
using Dyepath.Core.Documents;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Projects;

namespace Dyepath.Core.Tests.Limits;

/// <summary>Whatever is worked out from a heavy document can be stopped wherever it looks, looks often, and ends by itself.</summary>
public sealed class StopTests
{
    /// <summary>Processor time of the working thread between two looks: a law of structure, far from what is usual.</summary>
    private static readonly TimeSpan LongestBlind = TimeSpan.FromSeconds(1);

    public static TheoryData<string> Heavy { get; } = [.. Extent.Half(HeavyProjects.Names.Where(name => name is not "counted"))];

    [Theory]
    [MemberData(nameof(Heavy))]
    public void Planning_stops_at_whichever_look_it_is_cancelled(string name)
    {
        var project = Extent.IsWhole ? HeavyProjects.Of(name) : Lighter(name, HeavyProjects.Of(name));
        Stops(effort => GarmentPlanner.Plan(project, effort));
    }

    [Theory]
    [InlineData("charts")]
    [InlineData("starts")]
    public void Check_and_pattern_stop_at_whichever_look_they_are_cancelled(string name)
    {
        var plan = GarmentPlanner.Plan(HeavyProjects.Of(name), TestContext.Current.CancellationToken).Plan!;
        Stops(effort => PlanCheck.Verify(plan, effort));
        Stops(effort => PatternWriter.Write(plan, effort));
        Stops(effort => PatternCheck.Steps(plan, () => effort)[1]());
    }

    [Fact]
    public void Longest_record_of_counts_is_planned_or_refused_in_a_bounded_number_of_steps()
    {
        // Some megabytes as they are printed; the reader takes them without their spaces.
        var project = HeavyProjects.Of("counted");
        Assert.True(ProjectReader.Read(ProjectWriter.WriteUtf8(project)).IsGood);
        var effort = new Effort(Effort.MostOfPlan, TestContext.Current.CancellationToken);
        var result = GarmentPlanner.Plan(project, effort);
        Assert.DoesNotContain(result.Reasons, r => r.Cause is not null);
        Assert.True(effort.Spent < Effort.MostOfPlan, $"{effort.Spent} steps");
    }

    [Fact]
    public void Work_beyond_its_limit_is_refused_at_the_part_that_is_too_much_with_what_to_leave_out()
    {
        var counts = GarmentPlanner.Plan(HeavyProjects.Of("slips"), new Effort(10_000_000, TestContext.Current.CancellationToken));
        var reason = Assert.Single(counts.Reasons);
        Assert.Equal(("yarn.counted", FindingLevel.Fault), (reason.Place, reason.Level));
        Assert.Equal($"Working this out would take too long. {EffortPart.Counted.LeaveOut}", reason.Text);
        var seams = GarmentPlanner.Plan(HeavyProjects.Of("starts"), new Effort(20_000_000, TestContext.Current.CancellationToken));
        Assert.Equal("sizes", Assert.Single(seams.Reasons).Place);
    }

    [Fact]
    public void A_fault_of_the_program_is_a_reason_at_its_place_and_kept_for_the_log()
    {
        var effort = new Effort { Watch = _ => throw new InvalidOperationException("provoked") };
        var reason = Assert.Single(GarmentPlanner.Plan(HeavyProjects.Of("charts"), effort).Reasons);
        Assert.Equal("yarn.counted", reason.Place);
        Assert.Equal("This could not be worked out: undo the last change. The document is kept.", reason.Text);
        Assert.Equal("provoked", reason.Cause?.Message);
        var plan = GarmentPlanner.Plan(HeavyProjects.Of("charts"), TestContext.Current.CancellationToken).Plan!;
        Assert.NotNull(Assert.Single(PlanCheck.Verify(plan, new Effort { Watch = _ => throw new InvalidOperationException("provoked") })).Cause);
    }

    /// <summary>The two that take by far the longest, with fewer balls and sizes: the same work, not as often.</summary>
    private static Project Lighter(string name, Project project) => name switch
    {
        "slips" => project with { Yarn = project.Yarn with { Counted = project.Yarn.Counted[..4] } },
        "none" => project with { Sizes = project.Sizes with { Own = [.. project.Sizes.Own.Where((_, i) => i % 4 == 0)] } },
        _ => project,
    };

    /// <summary>Looks are counted, not timed: the same work looks as often on every machine.</summary>
    private static void Stops(Action<Effort> work)
    {
        var looks = 0;
        var blind = TimeSpan.Zero;
        var before = ThreadTime.Now;
        work(new Effort
        {
            Watch = _ =>
            {
                looks++;
                var now = ThreadTime.Now;
                blind = now - before > blind ? now - before : blind;
                before = now;
            },
        });
        Assert.True(looks > 3, $"only {looks} looks");
        Assert.True(blind < LongestBlind, $"{blind} of work without a look");
        // The last look comes after nearly all of the work.
        int[] last = Extent.IsWhole ? [looks] : [];
        Stopped.At([1, 2, looks / 1_000 + 1, looks / 50 + 1, .. Extent.IsWhole ? [looks / 5 + 1] : (int[])[], .. last], work);
    }
}
