using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

public sealed class HeadbandTests
{
    [Theory]
    [InlineData(Direction.Up, "sc")]
    [InlineData(Direction.Sideways, "sc")]
    [InlineData(Direction.Up, "hdc")]
    [InlineData(Direction.Sideways, "hdc")]
    [InlineData(Direction.Up, "linen")]
    [InlineData(Direction.Sideways, "linen")]
    public void Edged_it_is_checked_by_other_routes(Direction direction, string stitch)
    {
        var plan = Check(Edged(Of("headband", stitch), direction, EdgingPlace.Brims));
        Assert.All(plan.Sizes, size =>
        {
            Assert.Equal([SeamId.BackSeam], size.Seams.Select(s => s.Id));
            Assert.Equal(2, Assert.Single(size.Edgings).Copies);
        });
    }

    /// <summary>Of a head of 56 cm 8 % are 4.48 cm, a tenth 5.6 cm; its height is the document's, whatever the head.</summary>
    [Theory]
    [InlineData(0.08, 51.52)]
    [InlineData(0.1, 50.4)]
    public void It_is_a_share_smaller_than_the_head(double smaller, double around)
    {
        var size = Assert.Single(On(56).With(g => g with { Shape = new Headband(smaller, Cm(9)) }).Planned().Sizes);
        Assert.Equal(around, size.Target[GarmentMeasure.Circumference].Centimetres, 1e-9);
        Assert.Equal(9, size.Target[GarmentMeasure.Height].Centimetres, 1e-9);
    }

    [Fact]
    public void Left_out_it_is_8_per_cent_smaller_and_11_cm_high() => Assert.Equal(new Headband(0.08, Cm(11)), Of("headband").Garment.Shape);

    /// <summary>Both edges are edged, so that the height that is asked for holds two bands of 1 cm or more.</summary>
    [Fact]
    public void Its_height_counts_the_edging_of_both_edges()
    {
        var bare = On(56).With(g => g with { Direction = Direction.Up }).Planned().Sizes[0];
        var edged = Edged(On(56), Direction.Up, EdgingPlace.Brims).Planned().Sizes[0];
        var depth = Assert.Single(edged.Edgings).Depth;
        Assert.True(depth.Centimetres > 1);
        Assert.Equal(11, edged.Finished[GarmentMeasure.Height].Centimetres, 0.7);
        Assert.Equal((edged.Finished[GarmentMeasure.Height] - 2 * depth).Centimetres, edged[PieceId.Panel].Height.Centimetres, 1e-6);
        Assert.Equal(bare.Finished[GarmentMeasure.Height].Centimetres, bare[PieceId.Panel].Height.Centimetres, 1e-6);
    }

    /// <summary>Crochet stretches by 15 % of what it measures: 80 % of the head comes to 92 % of it, 90 % to more than it.</summary>
    [Theory]
    [InlineData(0.1, true)]
    [InlineData(0.2, false)]
    public void It_has_to_stretch_round_the_head(double smaller, bool holds)
    {
        var plan = On(56).With(g => g with { Shape = new Headband(smaller, Cm(11)) }).Planned();
        var fit = Assert.Single(plan.Sizes[0].Worn);
        Assert.Equal((FitPart.Brim, BodyMeasure.Head, holds), (fit.Part, fit.Body, fit.Holds));
        Assert.Equal(1.15 * plan.Sizes[0].Finished[GarmentMeasure.Circumference].Centimetres, fit.Garment.Centimetres, 1e-9);
        Assert.Equal(!holds, plan.Findings.Any(f => f.Place == "garment.smaller" && f.Text.EndsWith("take less off the head.", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(Direction.Up, "lay the two side edges together, outsides in, and sew row to row into a tube.")]
    [InlineData(Direction.Sideways, "lay the first row and the last row together, outsides in, and sew stitch to stitch into a tube.")]
    public void It_is_sewn_into_a_tube_and_nothing_is_drawn_together(Direction direction, string words)
    {
        var text = Text(Edged(Of("headband"), direction, EdgingPlace.Brims).Planned());
        Assert.Contains($"Back seam: {words}", text, StringComparison.Ordinal);
        Assert.Contains("Brims (work 2): plain sc band", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Crown", text, StringComparison.OrdinalIgnoreCase);
    }

    private static Project On(double head) => Of("headband") with
    {
        Sizes = new SizeSelection(null, [], [new("one", new Dictionary<string, Length> { ["head"] = Cm(head) }.ToImmutableSortedDictionary())], null, [], []),
    };
}
