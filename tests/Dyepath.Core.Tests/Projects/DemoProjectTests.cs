using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Projects;

public sealed class DemoProjectTests
{
    private static readonly Project Demo = ProjectReader.Read(DemoProject.Utf8).Project!;

    private static int SequenceStitches => Demo.Fabric.SectionStitches!.Value.Sum();

    [Fact]
    public void It_reads_without_faults() => Assert.Empty(ProjectReader.Read(DemoProject.Utf8).Faults);

    [Fact]
    public void Its_sequence_is_odd_so_that_half_leans_exist()
    {
        Assert.Equal(21, SequenceStitches);
        Assert.InRange(Demo.Yarn.Sections.Length, 4, 7);
    }

    [Fact]
    public void Lengths_counts_and_yarn_per_stitch_agree()
    {
        var sequence = Demo.Yarn.Sections.Sum(s => s.Length!.Value.Centimetres);
        foreach (var used in Demo.Fabric.Swatch.YarnUsed)
        {
            var yarn = used.Length ?? Demo.Yarn.Ball.Length * (used.Mass!.Value / Demo.Yarn.Ball.Mass);
            Assert.InRange(sequence / (yarn.Centimetres / used.Stitches), SequenceStitches - 0.15, SequenceStitches + 0.15);
        }
        var repeats = Demo.Yarn.Counted.SelectMany(b => b.Repeats).ToArray();
        Assert.InRange(repeats.Average(r => r.Sum()), SequenceStitches - 0.1, SequenceStitches + 0.1);
    }

    [Fact]
    public void No_colour_asks_for_more_than_five_per_cent_of_hand_tension()
    {
        var perStitch = Demo.Yarn.Sections.Sum(s => s.Length!.Value.Centimetres) / SequenceStitches;
        for (var i = 0; i < Demo.Yarn.Sections.Length; i++)
        {
            var tension = Demo.Yarn.Sections[i].Length!.Value.Centimetres / (Demo.Fabric.SectionStitches!.Value[i] * perStitch) - 1;
            Assert.InRange(tension, -0.05, 0.05);
        }
    }

    [Fact]
    public void Its_yarn_is_of_the_category_that_it_names()
    {
        // Category 3 (light): 12 to 17 single crochet in 4 in, hook 4.5 to 5.5 mm, as yarn standards pages quote; 182 to 242 m in
        // 100 g, derived from a spinning magazine's table; yarn in a stitch about 6.3 cm within a quarter, derived from one
        // hobbyist's measured strip.
        Assert.Equal(3, Demo.Yarn.Category);
        Assert.InRange(Demo.Yarn.Ball.Length.Metres / Demo.Yarn.Ball.Mass.Grams * 100, 182, 242);
        Assert.InRange(Demo.Fabric.Swatch.Worked.Stitches, 12, 17);
        Assert.InRange(Demo.Fabric.Swatch.HookMillimetres, 4.5, 5.5);
        Assert.InRange(Demo.Yarn.Sections.Sum(s => s.Length!.Value.Centimetres) / SequenceStitches, 6.3 * 0.75, 6.3 * 1.25);
    }

    [Fact]
    public void It_is_a_tunic_in_nine_sizes_with_a_companion_for_seams_edgings_and_sleeves()
    {
        Assert.True(Demo.Garment.Shape is BoxyTop { IsTunic: true });
        Assert.Equal(["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"], Demo.Sizes.Sizes);
        Assert.Equal([CompanionUse.Seams, CompanionUse.Edgings, CompanionUse.PlainPieces], Demo.Companion!.Uses);
    }
}
