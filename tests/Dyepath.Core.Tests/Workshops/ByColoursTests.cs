using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Tests.Yarns;
using Dyepath.Core.Workshops;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Workshops;

/// <summary>
/// Law 16: work until the colours have come round m times, or m and a half, plus one stitch, then turn. Held against the fabric worked stitch
/// by stitch, and against makers who count.
/// </summary>
public class ByColoursTests
{
    [Fact]
    public void Even_hands_reach_m_sequences_and_one_whatever_the_sequence()
    {
        var chance = new SimulatedMaker(0, 50, 0, 11);
        for (var trial = 0; trial < 200; trial++)
        {
            var sections = Enumerable.Range(0, 3 + trial % 4).Select(_ => 2 + 7 * chance.Uniform()).ToArray();
            var rounds = 1 + trial % 3;
            var ring = Ring(sections);
            var stitches = ByColours(ring, rounds);

            var lean = stitches - rounds * sections.Sum();
            Assert.InRange(lean, 0.5 - 1e-6, 1.5 + 1e-6);
            if (sections.Sum() > 16 && Math.Abs(lean - 1) < 0.3)
                AssertSteps(ring, stitches, sections.Sum());
        }
    }

    /// <summary>The places that a card names for half a sequence more lie where it says.</summary>
    [Fact]
    public void Half_a_sequence_more_keeps_the_lean_too()
    {
        double[] sections = [6, 5, 6, 5];
        var told = RoundByColour.Of(sections, ["a", "b", "c", "d"]);
        Assert.Equal(new RoundByColour(0, 2, false), told);
        var stitches = (int)(1.5 * 22) + 1;
        Assert.Equal(1, Lean.Wrap(2 * stitches, 22) / 2.0);
        AssertSteps(Ring(sections), stitches, 22);

        Assert.Equal(new RoundByColour(0, 1, true), RoundByColour.Of([5, 6, 5], ["a", "b", "c"]) with { Half = 1, Start = 0 });
        Assert.True(RoundByColour.Of([5, 5, 5], ["a", "b", "c"]).InMiddle);
        Assert.Null(RoundByColour.Of([3, 9, 8.1], ["a", "b", "c"]).Half);
        Assert.Null(RoundByColour.Of([5, 6, 5, 6], ["a", "b", "a", "b"]).Half);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void More_makers_get_diamonds_by_colours_than_by_a_count(int rounds)
    {
        int colours = 0, counted = 0;
        for (ulong t = 0; t < 400; t++)
        {
            var trial = ColourTrial.Of(0.02, rounds, 2, 4_000 + t);
            colours += trial.ByColours ? 1 : 0;
            counted += trial.ByCount ? 1 : 0;
        }
        Assert.True(colours > counted + 10, $"{colours} {counted}");
    }

    /// <summary>Each colour lies two stitches farther to the right two rows up, and a row of whole rounds ends in the colour that it began with.</summary>
    private static void AssertSteps(ColourRing ring, int stitches, double sequence)
    {
        var fabric = Fabric.Work(ring, FabricPath.Constant(Working.Turned, stitches, 6));
        int same = 0, all = 0, still = 0;
        for (var row = 0; row + 2 < fabric.Rows; row++)
        {
            // In rows worked to the right the same yarn runs the other way.
            var way = row % 2 == 0 ? 2 : -2;
            for (var c = 2; c + 2 < stitches; c++)
            {
                all++;
                same += fabric[row + 2, c] == fabric[row, c + way] ? 1 : 0;
                still += fabric[row + 2, c] == fabric[row, c] ? 1 : 0;
            }
        }
        Assert.True(same > still, $"{same} {still} of {all}");
        if (Math.Abs(stitches - 1 - Math.Round((stitches - 1) / sequence) * sequence) > 0.5 + 1e-6)
            return;
        for (var row = 0; row < 2; row++)
        {
            var cells = fabric.Row(row);
            Assert.True(cells[0] == cells[^1] || Math.Abs(cells[0] - cells[^1]) is 1 || Math.Abs(cells[0] - cells[^1]) == ring.Sections.Length - 1);
        }
    }

    /// <summary>Stitch after stitch along one long row, as she sees them.</summary>
    private static int ByColours(ColourRing ring, int rounds)
    {
        var row = Fabric.Work(ring, FabricPath.Constant(Working.Turned, 200, 1)).Row(0);
        var come = 0;
        for (var stitch = 1; ; stitch++)
        {
            if (row[stitch] == 0 && row[stitch - 1] != 0 && ++come == rounds)
                return stitch + 1;
        }
    }

    private static ColourRing Ring(double[] sections) =>
        ColourRing.FromUnits(sections, [.. sections.Select((_, j) => new Srgb((byte)(30 * j), 0, 0))]);
}
