namespace Dyepath.Cli.Tests;

public class CountsCommandTests
{
    /// <summary>
    /// Common practice, no source: whole repeats minus one give argyle in turned single crochet; half repeats serve as well.
    /// </summary>
    [Fact]
    public async Task Whole_and_half_repeats_minus_one_are_among_the_counts()
    {
        var json = await Run.Json("counts --sections 5,4,6,7 --from 40 --to 120 --worked turned --motif argyle --gauge 14x16");
        var counts = json.GetProperty("counts").EnumerateArray()
            .Where(c => c.GetProperty("rowStitches").GetArrayLength() == 1).Select(c => c.GetProperty("stitches").GetInt32()).ToArray();
        foreach (var expected in new[] { 43, 65, 87, 109, 54, 76, 98 })
            Assert.Contains(expected, counts);
    }

    [Fact]
    public async Task Every_count_has_its_lean_its_width_and_what_it_forgives()
    {
        var json = await Run.Json("counts --sections 5.2,4.1,6,7.3 --from 40 --to 120 --worked turned --motif argyle --gauge 14x16");
        Assert.NotEmpty(json.GetProperty("counts").EnumerateArray());
        foreach (var count in json.GetProperty("counts").EnumerateArray())
        {
            var mean = count.GetProperty("rowStitches").EnumerateArray().Average(s => s.GetDouble());
            var rest = 2 * mean % 22.6;
            var lean = (2 * rest > 22.6 ? rest - 22.6 : rest) / 2;
            Assert.Equal(lean, count.GetProperty("lean").GetDouble(), 6);
            Assert.Equal(count.GetProperty("stitches").GetInt32() * 10 / 14.0, count.GetProperty("widthCm").GetDouble(), 3);
            Assert.True(count.GetProperty("forgivesTighter").GetDouble() <= 0);
            Assert.True(count.GetProperty("forgivesLooser").GetDouble() >= 0);
            Assert.Equal("argyle", count.GetProperty("motif").GetString());
        }
    }

    /// <summary>Classic argyle in linen stitch leans by half a pair a row: pairs in a row are whole repeats and half a pair more or less.</summary>
    [Fact]
    public async Task In_linen_stitch_rows_of_whole_repeats_and_half_a_pair_are_argyle()
    {
        var json = await Run.Json("counts --sections 5,4,6,7 --from 80 --to 140 --stitch linen --motif argyle --gauge 18x18 --constant");
        var leans = json.GetProperty("counts").EnumerateArray()
            .ToDictionary(c => c.GetProperty("stitches").GetInt32(), c => c.GetProperty("lean").GetDouble());
        // 22 pairs are 44 stitches: 2 × 44 − 1 and + 1, and half repeats between.
        foreach (var (stitches, lean) in new[] { (87, -0.5), (89, 0.5), (109, -0.5), (111, 0.5), (131, -0.5), (133, 0.5) })
            Assert.Equal(lean, leans[stitches], 6);
        Assert.Equal(89 * 10 / 18.0, json.GetProperty("counts").EnumerateArray().Single(c => c.GetProperty("stitches").GetInt32() == 89).GetProperty("widthCm").GetDouble(), 3);
    }

    [Fact]
    public async Task None_found_exits_with_3_and_says_what_would_help()
    {
        var json = await Run.Json("counts --sections 5,4,6,7 --from 60 --to 63 --worked turned --motif argyle --constant", code: 3);
        Assert.Empty(json.GetProperty("counts").EnumerateArray());
        Assert.NotEmpty(json.GetProperty("nearest").EnumerateArray());
        Assert.NotEmpty(json.GetProperty("advice").EnumerateArray());
    }

    [Theory]
    [InlineData("counts --sections 5,4 --from 60 --to 50", "--to")]
    [InlineData("counts --sections 5,4 --motif paisley", "--motif")]
    [InlineData("counts --sections 5,4 --order size", "--order")]
    public async Task Bad_input_exits_with_2_and_says_where(string command, string place)
    {
        var (code, _, errors) = await Run.Dyepath(command);
        Assert.Equal(2, code);
        Assert.Contains(place, errors, StringComparison.Ordinal);
    }
}
