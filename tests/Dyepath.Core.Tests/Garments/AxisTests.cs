using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Counts along one edge, of stitches half a centimetre wide, one of them hidden by a seam.</summary>
public sealed class AxisTests
{
    private static readonly Axis Edge = new(AlongStitches: true, Cm(0.5), Hidden: 1);

    [Theory]
    [InlineData(100, 0, 50)]
    [InlineData(100, 1, 49.5)]
    [InlineData(100, 2, 49)]
    public void A_seam_takes_its_stitches_from_each_sewn_edge(int count, int edges, double centimetres) =>
        Assert.Equal(Cm(centimetres), Edge.Of(count, edges));

    [Theory]
    [InlineData(50, 0, 1, 100)]
    [InlineData(50, 2, 1, 102)]
    [InlineData(50.24, 0, 1, 100)]
    [InlineData(50.25, 0, 1, 101)]
    [InlineData(50.4, 0, 2, 100)]
    [InlineData(50.5, 0, 2, 102)]
    [InlineData(0, 2, 1, 3)]
    [InlineData(0, 2, 2, 4)]
    [InlineData(-9, 0, 1, 1)]
    [InlineData(-9, 0, 2, 2)]
    public void The_nearest_count_has_its_seams_added_and_shows_something(double centimetres, int edges, int multiple, int count) =>
        Assert.Equal(count, Edge.Nearest(Cm(centimetres), edges, multiple));

    /// <summary>What is centred on an odd count is odd, on an even one even.</summary>
    [Theory]
    [InlineData(10, 0, 41, 21)]
    [InlineData(10, 0, 40, 20)]
    [InlineData(10.2, 0, 40, 20)]
    [InlineData(10.2, 0, 41, 21)]
    [InlineData(10, 1, 41, 21)]
    [InlineData(10, 1, 40, 22)]
    [InlineData(10, 2, 40, 22)]
    [InlineData(0, 0, 41, 1)]
    [InlineData(0, 0, 40, 2)]
    public void A_centred_count_is_odd_or_even_as_what_it_is_centred_on(double centimetres, int edges, int like, int count) =>
        Assert.Equal(count, Edge.NearestLike(Cm(centimetres), edges, like));
}
