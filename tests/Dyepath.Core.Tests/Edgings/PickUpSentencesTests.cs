using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>How stretches of an edge are told apart, told together, and shared by sizes.</summary>
public sealed class PickUpSentencesTests
{
    private static readonly Edging Band = EdgingLibrary.All.Single(e => e.Id == "sc");

    private static EdgeStretch Of(EdgeId id, int places, bool rowEnds = true) => new(new StretchId.OfEdge(id), rowEnds, places);

    private static PickUp Plan(double ratio, int multiple, params EdgeStretch[] stretches) =>
        PickUp.Plan(Band with { Multiple = multiple }, stretches, new FlatRatios(1, ratio), 0);

    [Fact]
    public void Of_several_stretches_of_one_name_each_says_which_it_is()
    {
        var said = PickUpWords.Text(Plan(1, 1,
            Of(EdgeId.FrontEdge, 8), Of(EdgeId.Hem, 5, rowEnds: false), Of(EdgeId.FrontEdge, 9),
            Of(EdgeId.Hem, 6), Of(EdgeId.FrontEdge, 7)));
        Assert.Equal(
            "front edge (1 of 3): pick up 1 in each of the 8 row ends = 8; hem (1 of 2): pick up 1 in each of the 5 stitches = 5; "
                + "front edge (2 of 3): pick up 1 in each of the 9 row ends = 9; hem (2 of 2): pick up 1 in each of the 6 row ends = 6; "
                + "front edge (3 of 3): pick up 1 in each of the 7 row ends = 7; 35 in all.", said);
    }

    /// <summary>Neighbours of one rule are told together; what differs in any number, or in kind, or turns a corner, by itself.</summary>
    [Fact]
    public void Only_neighbours_of_one_rule_are_told_together()
    {
        var (front, back) = (Of(EdgeId.Front, 8), Of(EdgeId.Back, 8));
        Assert.Equal("on each of front and back: pick up 1 in each of the 8 row ends = 8; 16 in all.", PickUpWords.Text(Plan(1, 1, front, back)));
        Assert.Equal("on each of front and back: pick up 3 in every 4 row ends, 2 times = 6; 12 in all.", PickUpWords.Text(Plan(0.75, 1, front, back)));
        Assert.Equal(
            "front: pick up 3 in every 4 row ends, 2 times = 6; back: pick up 3 in every 4 row ends, 3 times = 9; 15 in all.", PickUpWords.Text(Plan(0.75, 1, front, back with { Places = 12 })));
        Assert.Equal(
            "front: pick up 3 in every 4 row ends, 2 times = 6; back: pick up 3 in every 4 row ends, 2 times, then 1 in the last 1 row end = 7; 13 in all.",
            PickUpWords.Text(Plan(0.75, 1, front, back with { Places = 9 })));
        Assert.Equal(
            "front: pick up 3 in every 4 row ends, 1 time, then 2 in the last 2 row ends = 5; back: pick up 3 in every 4 row ends, 1 time, then 2 in the last 3 row ends = 5; 10 in all.",
            PickUpWords.Text(Plan(0.75, 1, front with { Places = 6 }, back with { Places = 7 })));
        Assert.Equal(
            "front: pick up 1 in each of the 8 row ends = 8; back: pick up 1 in each of the 8 stitches = 8; 16 in all.", PickUpWords.Text(Plan(1, 1, front, back with { RowEnds = false })));
        var corner = PickUpWords.Text(Plan(1, 1, front, back with { Corner = EdgeCorner.Outer }));
        Assert.Equal($"front: pick up 1 in each of the 8 row ends = 8; {EdgeWords.Of(EdgeCorner.Outer)}; back: pick up 1 in each of the 8 row ends = 8; 16 in all.", corner);
    }

    [Fact]
    public void Along_steps_they_are_spread_evenly() => Assert.Equal(
        "front: pick up 6 along the 8 stitches and row ends, evenly spread = 6; back: pick up 3 in every 4 row ends, 2 times = 6; 12 in all.",
        PickUpWords.Text(Plan(0.75, 1, Of(EdgeId.Front, 8) with { Stepped = true }, Of(EdgeId.Back, 8))));

    /// <summary>
    /// 14 + 5 places, and 20 stitches for them: the one that is extra goes into place 10; 21 have two, at 5 and 15, the first of the second
    /// stretch.
    /// </summary>
    [Theory]
    [InlineData(20, "1 extra, at row end 10 of the front")]
    [InlineData(7, "2 extra, at row end 5 of the front, stitch 1 of the back")]
    [InlineData(17, "2 fewer, at row end 5 of the front, stitch 1 of the back")]
    public void What_is_extra_stands_at_a_place_of_its_stretch(int multiple, string said) => Assert.Contains(
        $"; {said}; ", PickUpWords.Text(Plan(1, multiple, Of(EdgeId.Front, 14), Of(EdgeId.Back, 5, rowEnds: false))), StringComparison.Ordinal);

    /// <summary>18 places in two front edges of 9, 20 stitches: after a quarter and three quarters of them.</summary>
    [Fact]
    public void What_is_extra_names_which_of_two_stretches_it_is_on() => Assert.EndsWith(
        "; 2 extra, at row end 5 of the front edge (1 of 2), place 5 of the front edge (2 of 2); 20 in all.",
        PickUpWords.Text(Plan(1, 20, Of(EdgeId.FrontEdge, 9), Of(EdgeId.FrontEdge, 9) with { Stepped = true })), StringComparison.Ordinal);

    /// <summary>
    /// One list for all sizes, where only numbers differ; a rest of none is said as a dash where that lets them share one.
    /// </summary>
    [Fact]
    public void Sizes_share_lines_where_their_words_are_the_same()
    {
        ImmutableArray<PickUp> alike = [Plan(0.75, 1, Of(EdgeId.Front, 9)), Plan(0.75, 1, Of(EdgeId.Front, 13))];
        Assert.Equal("front: pick up 3 in every 4 row ends, 2 (3) times, then 1 in the last 1 row end: 7 (10) in all.", Said(PickUpWords.Shared(alike, withRests: false)));
        ImmutableArray<PickUp> rests = [Plan(0.75, 1, Of(EdgeId.Front, 8)), Plan(0.75, 1, Of(EdgeId.Front, 14))];
        Assert.Null(PickUpWords.Shared(rests, withRests: false));
        Assert.Equal("front: pick up 3 in every 4 row ends, 2 (3) times, then – (2) in the last – (2) row ends: 6 (11) in all.", Said(PickUpWords.Shared(rests, withRests: true)));
        ImmutableArray<PickUp> several = [Plan(1, 1, Of(EdgeId.Front, 8), Of(EdgeId.Back, 9)), Plan(1, 1, Of(EdgeId.Front, 10), Of(EdgeId.Back, 12))];
        Assert.Equal(
            "front: pick up 1 in each of the 8 (10) row ends = 8 (10) | back: pick up 1 in each of the 9 (12) row ends = 9 (12) | 17 (22) in all.",
            Said(PickUpWords.Shared(several, withRests: false)));
        Assert.Null(PickUpWords.Shared([Plan(0.75, 1, Of(EdgeId.Front, 8)), Plan(1, 1, Of(EdgeId.Front, 8))], withRests: true));
    }

    private static string Said(ImmutableArray<Phrase>? lines)
    {
        var wording = new Wording(["S", "M"], StarterDocument.Project.Edition with { Size = null });
        return string.Join(" | ", lines!.Value.Select(wording.Text));
    }
}
