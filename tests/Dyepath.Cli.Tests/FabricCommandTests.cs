using System.Globalization;
using System.Text.Json;

namespace Dyepath.Cli.Tests;

public class FabricCommandTests
{
    [Fact]
    public async Task Rows_agree_with_a_fabric_worked_out_stitch_by_stitch()
    {
        int[] sections = [5, 4, 6, 7];
        var strip = sections.SelectMany((n, i) => Enumerable.Repeat(i, n)).ToArray();
        var json = await Run.Json("fabric --sections 5,4,6,7 --stitches 67 --rows 24 --worked turned");
        Assert.Equal(22, json.GetProperty("sequenceStitches").GetDouble());
        Assert.Equal(22, json.GetProperty("period").GetDouble());
        Assert.Equal(1, json.GetProperty("lean").GetDouble());
        Assert.Equal("argyle", json.GetProperty("motif").GetString());
        Assert.Equal(0, json.GetProperty("twoToned").GetInt32());
        for (var row = 0; row < 24; row++)
        {
            for (var column = 0; column < 67; column++)
            {
                var place = row * 67 + (row % 2 == 0 ? column : 66 - column);
                Assert.Equal(strip[place % 22], Cell(json, row, column));
            }
        }
    }

    [Fact]
    public async Task Rounds_run_forwards_through_the_columns()
    {
        var json = await Run.Json("fabric --sections 1,2,3 --stitches 7 --rows 3 --worked rounds --start 2");
        int[] strip = [0, 1, 1, 2, 2, 2];
        for (var row = 0; row < 3; row++)
        {
            for (var column = 0; column < 7; column++)
                Assert.Equal(strip[(2 + row * 7 + column) % 6], Cell(json, row, column));
        }
    }

    /// <summary>A stitch that two colours share evenly shows the one met first, and is two-toned.</summary>
    [Fact]
    public async Task A_tie_goes_to_the_earlier_colour()
    {
        var json = await Run.Json("fabric --sections 1.5,1.5 --stitches 3 --rows 1 --worked turned");
        Assert.Equal([0, 0, 1], Enumerable.Range(0, 3).Select(c => Cell(json, 0, c)));
        Assert.Equal(1, json.GetProperty("twoToned").GetInt32());
    }

    [Fact]
    public async Task Equal_colours_shorten_the_period()
    {
        var distinct = await Run.Json("fabric --sections 3,2,3,2 --stitches 21 --rows 4 --worked turned");
        var alike = await Run.Json(
            "fabric --sections 3,2,3,2 --colours #111111,#eeeeee,#111111,#eeeeee --stitches 21 --rows 4 --worked turned");
        Assert.Equal(10, distinct.GetProperty("period").GetDouble());
        Assert.Equal(5, alike.GetProperty("period").GetDouble());
    }

    [Theory]
    [InlineData("fabric --sections 5,x,6 --stitches 67 --rows 24", "--sections[1]")]
    [InlineData("fabric --sections 5,NaN --stitches 67 --rows 24", "--sections[1]")]
    [InlineData("fabric --sections 5,-1 --stitches 67 --rows 24", "--sections[1]")]
    [InlineData("fabric --sections 5,1e999 --stitches 67 --rows 24", "--sections[1]")]
    [InlineData("fabric --sections 5,4 --stitches 1001 --rows 24", "--stitches")]
    [InlineData("fabric --sections 5,4 --stitches 67 --rows 0", "--rows")]
    [InlineData("fabric --sections 5,4 --stitches 67 --rows 24 --worked sideways", "--worked")]
    [InlineData("fabric --sections 5,4 --stitches 67 --rows 24 --worked spiral --turn-cost 0.5", "--turn-cost")]
    [InlineData("fabric --sections 5,4 --colours #fff --stitches 67 --rows 24", "--colours")]
    [InlineData("fabric --sections 5,4 --colours #fff,red --stitches 67 --rows 24", "--colours[1]")]
    [InlineData("fabric --sections 5,4 --stitches 67 --rows 24 --gauge 14", "--gauge")]
    [InlineData("fabric --sections 5,4 --stitches 67", "--rows")]
    [InlineData("fabric --sections 5,4 --stitches many --rows 3", "many")]
    [InlineData("fabric --sections 5,4 --stitches 67 --rows 3 --stitch knit", "--stitch")]
    [InlineData("fabric --sections 5,4 --stitches 67 --rows 3 --stitch dc --turn-cost -1", "--turn-cost")]
    [InlineData("fabric --sections 5,4 --stitches 3 --rows 3 --stitch linen --turn-cost -1.5", "--turn-cost")]
    [InlineData("frabic", "frabic")]
    public async Task Bad_input_exits_with_2_and_says_where(string command, string place)
    {
        var (code, _, errors) = await Run.Dyepath(command);
        Assert.Equal(2, code);
        Assert.Contains(place, errors, StringComparison.Ordinal);
        var json = await Run.Json(command, code: 2);
        Assert.NotEmpty(json.GetProperty("faults").EnumerateArray());
    }

    [Fact]
    public async Task The_picture_for_people_has_row_1_at_the_bottom()
    {
        var (code, output, _) = await Run.Dyepath("fabric --sections 1,1,1 --stitches 3 --rows 2 --worked rounds");
        Assert.Equal(0, code);
        var rows = output.Split('\n').Where(l => l.TrimStart().Length > 0 && char.IsDigit(l.TrimStart()[0])).Select(l => l.Trim())
            .ToArray();
        Assert.Equal(["2 CBA", "1 CBA"], rows);
    }

    /// <summary>Half a pair of yarn after the other, counted along a strip of half pairs: the pair worked last in a row of 7 is half a pair.</summary>
    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    public async Task In_linen_stitch_a_cell_is_a_pair_and_an_odd_count_ends_in_half_a_pair(int stitches)
    {
        int[] sections = [2, 1, 3];
        var strip = sections.SelectMany((pairs, i) => Enumerable.Repeat(i, 2 * pairs)).ToArray();
        var command = $"fabric --sections 2,1,3 --stitches {stitches} --rows 4 --stitch linen";
        var json = await Run.Json(command);
        Assert.Equal(2, json.GetProperty("stitchesPerUnit").GetInt32());
        var (_, output, _) = await Run.Dyepath(command);
        var drawn = output.Split('\n').Where(l => l.Length > 6 && l[0] == ' ' && char.IsDigit(l[4])).Select(l => l[6..]).Reverse().ToArray();
        for (var row = 0; row < 4; row++)
        {
            var worked = Enumerable.Range(0, stitches).Select(s => strip[(row * stitches + s) % strip.Length]).Chunk(2)
                .Select(pair => (Colour: pair[0], Stitches: pair.Length)).ToArray();
            var fromRight = row % 2 == 0 ? worked : worked.Reverse().ToArray();
            Assert.Equal(fromRight.Select(c => c.Colour), Enumerable.Range(0, fromRight.Length).Select(c => Cell(json, row, c)));
            // Seen from the right-hand edge, single crochets of one row stand above chains of the row below.
            var halves = row % 2 == 0 ? 0 : 1;
            Assert.Equal(halves, json.GetProperty("halfPairsRight")[row].GetInt32());
            var letters = string.Concat(fromRight.Reverse().Select(c => new string((char)('A' + c.Colour), c.Stitches)));
            Assert.Equal(letters, drawn[row].Trim());
            // The half pair itself fills the room at the right-hand edge.
            Assert.Equal(halves == 1 && stitches % 2 == 0 ? " " : "", drawn[row][letters.Length..].TrimEnd('\r'));
        }
    }

    private static int Cell(JsonElement json, int row, int column) =>
        int.Parse(json.GetProperty("rows")[row][column].GetRawText(), CultureInfo.InvariantCulture);
}
