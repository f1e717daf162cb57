using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Making.Work;

/// <summary>Rows found again by how they begin. A sequence of 5, 4 and 3; rows of 13 stitches, each a stitch further on than the last.</summary>
public sealed class RowFinderTests
{
    // Row 1: 5 4 3 1. Row 2 begins a stitch later in the yarn: 4 4 3 2. Row 3: 3 4 3 3, and so on.
    private static readonly Core.Fabrics.Fabric Fabric = Core.Fabrics.Fabric.Work(
        ColourRing.FromUnits([5, 4, 3]), FabricPath.Constant(Working.Rounds, 13, 5, new PathOptions()));

    [Fact]
    public void A_row_that_begins_so_is_found_alone() => Assert.Equal([new(1, 0)], Found((0, 4), (1, 4)));

    /// <summary>One stitch off is a miscount, and the nearest comes first; two off is another row.</summary>
    [Fact]
    public void A_stitch_miscounted_is_forgiven_and_two_are_not()
    {
        Assert.Equal([new(0, 1)], Found((0, 6), (1, 4)));
        Assert.Equal([new(0, 2)], Found((0, 6), (1, 5)));
        Assert.Empty(Found((0, 7), (1, 4)));
        Assert.Empty(Found((0, 5), (1, 6)));
    }

    [Fact]
    public void Another_colour_is_another_row()
    {
        Assert.Empty(Found((1, 5), (2, 4)));
        Assert.Empty(Found((0, 4), (2, 4)));
    }

    /// <summary>Where the last run may go on, it is at least so long.</summary>
    [Fact]
    public void An_open_run_may_be_longer_and_a_stitch_shorter()
    {
        Assert.Equal([new(0, 0), new(1, 0), new(2, 0)], RowFinder.Find(Fabric, [new ColourRun(0, 3)], lastIsOpen: true));
        Assert.Equal([new(0, 0)], RowFinder.Find(Fabric, [new ColourRun(0, 5)], lastIsOpen: true));
        Assert.Equal([new(0, 1)], RowFinder.Find(Fabric, [new ColourRun(0, 6)], lastIsOpen: true));
        Assert.Empty(RowFinder.Find(Fabric, [new ColourRun(0, 7)], lastIsOpen: true));
    }

    /// <summary>The whole row may be given, and more than it has is no row.</summary>
    [Fact]
    public void A_row_may_be_given_whole()
    {
        Assert.Equal([new(0, 0)], Found((0, 5), (1, 4), (2, 3), (0, 1)));
        Assert.Empty(Found((0, 5), (1, 4), (2, 3), (0, 1), (1, 1)));
    }

    [Fact]
    public void Nothing_and_too_much_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RowFinder.Find(Fabric, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => RowFinder.Find(Fabric, [.. Enumerable.Repeat(new ColourRun(0, 1), 41)]));
        Assert.Empty(RowFinder.Find(Fabric, [.. Enumerable.Repeat(new ColourRun(0, 1), 40)]));
    }

    private static ImmutableArray<RowMatchFound> Found(params (int Section, int Units)[] begins) =>
        RowFinder.Find(Fabric, [.. begins.Select(b => new ColourRun(b.Section, b.Units))]);
}
