using System.Collections.Immutable;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Starts that the designer chose.</summary>
public sealed class StartTests
{
    [Fact]
    public void Pieces_begin_where_they_are_asked_to_and_the_rest_of_the_plan_stays()
    {
        var best = Tideline.Sleeved(pooled: true).Planned();
        var asked = Starting(Tideline.Sleeved(pooled: true), ("front", 8), ("back", 3), ("sleeve", 20)).Planned();
        foreach (var (size, before) in asked.Sizes.Zip(best.Sizes))
        {
            Assert.Equal([8, 3, 20], size.Pieces.Select(p => p.Start));
            Assert.Equal(before.Pieces.Select(p => p.Stitches), size.Pieces.Select(p => p.Stitches));
        }
        Assert.Empty(PlanCheck.Verify(asked));
    }

    [Fact]
    public void A_moved_front_takes_the_back_along_and_a_moved_back_pays_at_the_seams()
    {
        var best = Tideline.Planned().Sizes[2];
        var moved = Starting(Tideline, ("front", 1)).Planned().Sizes[2];
        Assert.Equal(1, moved.Pieces[0].Start);
        Assert.True(Sides(moved) <= Sides(best) + 0.5);
        var (first, last) = ((int)best.Pieces[0].Start, (int)best.Pieces[1].Start);
        var sides = Enumerable.Range(0, 21)
            .Select(b => Sides(Starting(Tideline, ("front", first), ("back", b)).Planned().Sizes[2])).ToArray();
        Assert.True(sides[last] <= sides.Min() + 0.5);
        Assert.True(sides.Max() >= sides[last] + 3);

        static double Sides(SizePlan size) => size.Seams[0].PhaseJump + size.Seams[1].PhaseJump;
    }

    [Theory]
    [InlineData(21)]
    [InlineData(400)]
    public void A_start_beyond_the_sequence_is_a_located_fault(int start)
    {
        var reason = Assert.Single(Starting(Tideline, ("back", start)).Tried().Reasons);
        Assert.Equal(("garment.starts.back", FindingLevel.Fault), (reason.Place, reason.Level));
        Assert.Contains("from 0 to 20", reason.Text, StringComparison.Ordinal);
        Assert.Contains(Starting(Wrap, ("wrap", start)).Tried().Reasons, r => r.Place == "garment.starts.wrap");
    }

    [Fact]
    public void One_rectangle_begins_where_it_is_asked_to()
    {
        var asked = Starting(Wrap, ("wrap", 7)).Planned();
        Assert.Equal(7, asked.Sizes[0].Pieces[0].Start);
        Assert.Empty(PlanCheck.Verify(asked));
    }

    [Fact]
    public void The_check_names_a_start_that_is_not_the_one_asked_for()
    {
        var plan = Starting(Tideline, ("front", 8)).Planned();
        var other = plan with { Project = Starting(plan.Project, ("front", 9)) };
        Assert.Contains(PlanCheck.Verify(other), f => f.Place == "sizes.M.pieces.front.start");
    }

    [Fact]
    public void A_seam_matches_where_nothing_jumps_and_not_where_everything_does()
    {
        foreach (var size in Tideline.Planned().Sizes)
        {
            Assert.All(size.Seams, s => Assert.InRange(s.Match, 0, 1));
            Assert.All(size.Seams.Where(s => s.PhaseJump == 0), s => Assert.Equal(1, s.Match));
        }
        var meter = new SeamMeter(21_000_000);
        foreach (var jump in new long[] { 0, 499_999, 500_000, 20_600_000 })
            meter.Add(jump, 0);
        Assert.Equal((0.75, 0), (meter.Match(), meter.Match(later: 5_000_000)));
    }

    private static Project Wrap { get; } = Tideline.With(g => g with
    {
        Shape = new Wrap(Cm(60), Cm(180)),
        Edgings = [],
        Motif = MotifKind.Argyle,
    });

    private static Project Starting(Project project, params (string Piece, int Start)[] starts) =>
        project.With(g => g with { Starts = starts.ToImmutableSortedDictionary(s => s.Piece, s => s.Start) });
}
