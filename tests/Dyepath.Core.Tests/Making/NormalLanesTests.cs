using Dyepath.Core.Making;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Dyepath.Core.Tests.Making;

public sealed class NormalLanesTests
{
    private const int Lanes = NormalLanes.Count;

    [Fact]
    public void Known_words_of_the_reference_xoshiro128plusplus()
    {
        // Ten first outputs from state 1, 2, 3, 4 of the authors' C program (Blackman and Vigna), as the rand_xoshiro library's
        // tests quote it.
        uint[] expected =
        [
            641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295, 495546011, 621204420,
        ];
        var lanes = new NormalLanes();
        lanes.Begin(5, 1, 2, 3, 4);
        Assert.Equal(expected, Enumerable.Range(0, expected.Length).Select(_ => lanes.Next(5)));
    }

    [Fact]
    public void Known_words_of_the_reference_splitmix64()
    {
        // First outputs from seed 1477776061723855037 of Vigna's C program, as the rand_xoshiro library's tests quote it.
        ulong[] expected =
            [1985237415132408290, 2979275885539914483, 13511426838097143398, 8488337342461049707, 15141737807933549159];
        Assert.Equal(expected, Enumerable.Range(1, 5).Select(n => TrialSeed.Output(1477776061723855037, (ulong)n)));
    }

    [Theory]
    // Abramowitz and Stegun, Handbook of Mathematical Functions (1964): P(x) of table 26.1 and x of Q in table 26.6, to the digits given.
    [InlineData(0.5, 0.6914624613)]
    [InlineData(1, 0.8413447461)]
    [InlineData(1.95996, 0.975)]
    [InlineData(2, 0.9772498681)]
    [InlineData(2.57583, 0.995)]
    [InlineData(3, 0.9986501020)]
    [InlineData(3.09023, 0.999)]
    public void Known_shares_below_a_quantile_are_those_of_the_published_tables(double x, double share)
    {
        float[] normals = Draw(streams: Lanes, each: 60_000);
        double error = 4.5 * Math.Sqrt(share * (1 - share) / normals.Length);
        Assert.Equal(share, (double)normals.Count(z => z < x) / normals.Length, error);
        Assert.Equal(share, (double)normals.Count(z => z > -x) / normals.Length, error);
    }

    [Fact]
    public void Known_moments_and_distribution_agree_with_a_numerics_library()
    {
        double[] normals = [.. Draw(streams: Lanes, each: 60_000).Select(z => (double)z)];
        var moments = new DescriptiveStatistics(normals);
        double n = normals.Length;
        Assert.Equal(Normal.WithMeanStdDev(0, 1).Mean, moments.Mean, 4 / Math.Sqrt(n));
        Assert.Equal(1, moments.Variance, 4 * Math.Sqrt(2 / n));
        Assert.Equal(0, moments.Skewness, 4 * Math.Sqrt(6 / n));
        Assert.Equal(0, moments.Kurtosis, 4 * Math.Sqrt(24 / n));

        // Kolmogorov and Smirnov: 1.95/√n is passed by one sample in a thousand.
        Array.Sort(normals);
        double worst = normals.Select((z, i) => Math.Abs(Normal.CDF(0, 1, z) - (i + 0.5) / n)).Max();
        Assert.InRange(worst, 0, 1.95 / Math.Sqrt(n));
    }

    [Fact]
    public void Law_a_pair_is_that_of_Box_and_Muller_to_single_precision()
    {
        var random = new Random(3);
        uint[] corners = [0, 1, 2, 0x3fffffff, 0x40000000, 0x7fffffff, 0x80000000, 0xbfffffff, 0xc0000000, 0xfffffffe, 0xffffffff];
        IEnumerable<(uint, uint)> cases = corners.SelectMany(radius => corners.Select(angle => (radius, angle)))
            .Concat(Enumerable.Range(0, 100_000).Select(_ => ((uint)random.NextInt64(1L << 32), (uint)random.NextInt64(1L << 32))));
        foreach ((uint radiusWord, uint angleWord) in cases)
        {
            (float first, float second) = NormalPair.Make(radiusWord, angleWord);
            // k of 31 bits is rounded to the 24 of a single first: part of the definition of u, not of the error.
            double radius = Math.Sqrt(-2 * Math.Log((float)(radiusWord >> 1 | 1) / 2147483648.0));
            double angle = (int)(angleWord << 2) / 2147483648.0 * Math.PI / 4;
            double sine = Math.Sin(angle) * radius, cosine = Math.Cos(angle) * radius * ((angleWord >> 31) == 0 ? 1 : -1);
            if ((angleWord & 0x40000000) != 0) (sine, cosine) = (cosine, sine);
            Assert.Equal(cosine, first, Math.Max(1e-7, 6e-7 * Math.Abs(cosine)));
            Assert.Equal(sine, second, Math.Max(1e-7, 6e-7 * Math.Abs(sine)));
        }
    }

    [Fact]
    public void Extreme_the_largest_normal_is_bounded()
    {
        Assert.Equal(Math.Sqrt(62 * Math.Log(2)), NormalPair.Make(0, 0).First, 1e-5);
        Assert.Equal((0f, 0f), NormalPair.Make(uint.MaxValue, 0));
    }

    [Fact]
    public void Law_lanes_are_streams_that_do_not_know_of_each_other()
    {
        const int each = 30_000;
        double[][] streams = [.. Enumerable.Range(0, Lanes).Select(lane => new double[each])];
        float[] normals = Draw(Lanes, each);
        for (int i = 0; i < normals.Length; i++) streams[i % Lanes][i / Lanes] = normals[i];
        double error = 4.5 / Math.Sqrt(each);
        for (int a = 0; a < Lanes; a++)
        {
            Assert.Equal(0, Correlation.Pearson(streams[a][1..], streams[a][..^1]), error);
            for (int b = 0; b < a; b++) Assert.Equal(0, Correlation.Pearson(streams[a], streams[b]), error);
        }
    }

    [Fact]
    public void Law_vectors_give_the_same_bits_as_lane_after_lane()
    {
        NormalLanes one = Begun(), other = Begun();
        for (int pairs = 1; pairs < 60; pairs++)
        {
            var scalar = new float[2 * pairs * Lanes];
            var vector = new float[2 * pairs * Lanes];
            one.Fill(scalar, Lanes);
            other.FillVectorised(vector);
            Assert.Equal(scalar.Select(BitConverter.SingleToUInt32Bits), vector.Select(BitConverter.SingleToUInt32Bits));
        }
    }

    private static NormalLanes Begun()
    {
        var lanes = new NormalLanes();
        for (int lane = 0; lane < Lanes; lane++) lanes.Begin(lane, new TrialSeed(20, lane));
        return lanes;
    }

    private static float[] Draw(int streams, int each)
    {
        var normals = new float[streams * each];
        Begun().Fill(normals, streams);
        return normals;
    }
}
