using CsCheck;
using Dyepath.Core.Edgings;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>Picked up and worked as the words say, every edging ends on whole repeats, round after round.</summary>
public sealed class EdgingRoundsTests
{
    [Fact]
    public void Every_pick_up_can_be_worked_to_the_end()
    {
        Gen.Select(
            Gen.Int[0, EdgingLibrary.All.Length - 1], Gen.Int[1, 400], Gen.Int[1, 400], Gen.Double[0.4, 3], Gen.Double[0.4, 3], Gen.Int[0, 10]).Holds(
            (at, one, other, along, ends, more) =>
            {
                var edging = EdgingLibrary.All[at];
                var pickUp = PickUp.Plan(edging, [new(new StretchId.OfEdge(EdgeId.Front), true, one), new(new StretchId.OfEdge(EdgeId.Back), false, other)], new(along, ends), 2, 1, closed: !edging.InRows);
                Assert.Equal(pickUp.Total, RuleFollower.Follow(PickUpWords.Text(pickUp)).Stitches);
                Assert.Equal(edging.InRows ? edging.Plus : 0, pickUp.Total % edging.Multiple);
                if (edging.Across)
                {
                    Assert.Equal(0, RibFollower.Left([.. edging.Steps.Select(s => EdgingSayings.Say(s.Text))], pickUp.Total));
                    return;
                }
                var (stitches, rounds) = (pickUp.Total, edging.Fewest + more);
                for (var round = 0; round < rounds; round++)
                {
                    var words = new StepFollower(EdgingSayings.Say(edging.StepOf(round, rounds).Text));
                    var found = words.Work(stitches);
                    // Only a last round may have more or fewer stitches than it stands on.
                    if (round < rounds - 1)
                        Assert.Equal(stitches, found);
                    stitches = found;
                }
            },
            seed: 104, cases: 4_000);
    }

    /// <summary>One stitch more or fewer than whole repeats cannot be worked: the follower would notice.</summary>
    [Theory]
    [InlineData("picot", 61)]
    [InlineData("shell", 63)]
    [InlineData("v-stitch", 61)]
    [InlineData("clusters", 61)]
    public void What_is_no_whole_repeat_is_noticed(string id, int stitches)
    {
        var edging = EdgingLibrary.Find(id);
        var words = new StepFollower(EdgingSayings.Say(edging.StepOf(1, 2).Text));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => words.Work(stitches));
    }

    /// <summary>
    /// Stitches of 0.7 cm: 1.5 cm are two of them, and 2.5 cm that fold back four. Between the ends 26 stitches hold four holes of two with six
    /// between them, 29 with seven; 6 stitches hold one. Five in all have room for one in the middle, three for none. Worked out by hand.
    /// </summary>
    [Theory]
    [InlineData(30, 0, 4, 2, 6, 2)]
    [InlineData(33, 0, 4, 2, 7, 2)]
    [InlineData(34, 0, 4, 2, 7, 3)]
    [InlineData(34, 2.5, 4, 2, 6, 6)]
    [InlineData(10, 0, 1, 2, 0, 6)]
    [InlineData(5, 0, 1, 1, 0, 2)]
    [InlineData(3, 0, 0, 0, 0, 3)]
    public void Buttonholes_are_spread_evenly_between_the_ends_of_what_closes(int pickUp, double folded, int holes, int before, int between, int after) =>
        Assert.Equal(
            new ButtonLayout(holes, before, between, after),
            ButtonLayout.Of(pickUp, Length.FromCentimetres(0.7), Length.FromCentimetres(folded)));

    /// <summary>Every stitch is somewhere; the ends are 1 to 2 cm from what closes, but for the stitches that cannot be shared out.</summary>
    [Fact]
    public void A_bands_stitches_are_all_used_and_its_holes_keep_their_distances() =>
        Gen.Select(Gen.Int[0, 400], Gen.Double[0.3, 1.9], Gen.Double[0, 30]).Holds(
            (pickUp, width, folded) =>
            {
                var layout = ButtonLayout.Of(pickUp, Length.FromCentimetres(width), Length.FromCentimetres(folded));
                Assert.Equal(pickUp, layout.Before + 2 * layout.Holes + Math.Max(0, layout.Holes - 1) * layout.Between + layout.After);
                var closing = pickUp - (int)Math.Ceiling(Math.Round(folded / width, 6));
                if (layout.Holes == 0)
                {
                    Assert.True(closing < 4, $"{closing} stitches hold a buttonhole.");
                    return;
                }
                if (closing < 2 + 2 * Math.Max(1, Math.Round(1.5 / width, MidpointRounding.AwayFromZero)))
                {
                    // Too short to keep the distances: one, in the middle.
                    Assert.Equal((1, closing - 2), (layout.Holes, layout.Before + layout.After - (pickUp - closing)));
                    Assert.InRange(layout.After - (pickUp - closing) - layout.Before, 0, 1);
                    return;
                }
                Assert.InRange(layout.Before * width, Math.Min(1, width), 2.4);
                Assert.True(layout.After * width >= folded + 0.75);
                Assert.True(layout.Holes == 1 || layout.Between >= 6);
                // Another hole would not have fitted.
                Assert.True(layout.Holes < 2 || (layout.Holes + 1) * 2 + layout.Holes * 6 > layout.Holes * 2 + (layout.Holes - 1) * layout.Between);
            },
            seed: 411, cases: 2_000);

    /// <summary>Buttonholes stand in the middle row, on whole rows whatever their number: the third of five, the fourth of six.</summary>
    [Theory]
    [InlineData(3, 2)]
    [InlineData(5, 3)]
    [InlineData(6, 4)]
    [InlineData(7, 4)]
    public void A_button_bands_holes_are_in_its_middle_row(int rows, int row) => Assert.Equal(row, ButtonBand.HoleRow(rows));

    /// <summary>Of an odd number of rounds the longer half lies outside.</summary>
    [Theory]
    [InlineData(6, 3)]
    [InlineData(7, 4)]
    [InlineData(2, 1)]
    public void A_casing_is_folded_along_a_round(int rounds, int fold) => Assert.Equal(fold, Edging.FoldRound(rounds));
}
