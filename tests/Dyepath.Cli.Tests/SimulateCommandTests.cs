namespace Dyepath.Cli.Tests;

public class SimulateCommandTests
{
    private const string Piece = "simulate --sections 5,4,6,7 --stitches 83 --rows 20 --worked turned --trials 64";

    [Fact]
    public async Task Perfect_hands_keep_every_stitch()
    {
        var json = await Run.Json(Piece + " --spread 0 --check never");
        Assert.Equal(1, json.GetProperty("median").GetDouble());
        Assert.Equal(1, json.GetProperty("good").GetDouble());
        Assert.Equal(0, json.GetProperty("meanCorrection").GetDouble());
    }

    [Fact]
    public async Task The_same_seed_gives_the_same_answer_and_another_seed_another()
    {
        var first = await Run.Dyepath(Piece + " --spread 0.02 --seed 7 --json");
        Assert.Equal(first, await Run.Dyepath(Piece + " --spread 0.02 --seed 7 --json"));
        Assert.NotEqual(first, await Run.Dyepath(Piece + " --spread 0.02 --seed 8 --json"));
    }

    [Fact]
    public async Task Checking_more_often_keeps_more()
    {
        var shares = new List<double>();
        foreach (var check in new[] { "never", "row", "section" })
            shares.Add((await Run.Json($"{Piece} --spread 0.02 --check {check}")).GetProperty("median").GetDouble());
        Assert.True(shares[0] < shares[1] && shares[1] < shares[2], string.Join(", ", shares));
    }

    [Theory]
    [InlineData("linen")]
    [InlineData("dc")]
    public async Task Perfect_hands_keep_every_stitch_of_other_stitches(string stitch)
    {
        var json = await Run.Json($"{Piece} --spread 0 --check never --stitch {stitch}");
        Assert.Equal(1, json.GetProperty("median").GetDouble());
    }

    /// <summary>In linen stitch the same stitches take half the sequences, so that hands that drift lose less.</summary>
    [Fact]
    public async Task Pairs_take_half_the_sequences_of_single_crochets()
    {
        var single = await Run.Json(Piece + " --spread 0.02 --check never");
        var pairs = await Run.Json(Piece + " --spread 0.02 --check never --stitch linen");
        Assert.True(pairs.GetProperty("median").GetDouble() > single.GetProperty("median").GetDouble(), $"{pairs} {single}");
    }

    [Theory]
    [InlineData("--spread 2", "--spread")]
    [InlineData("--memory -1", "--memory")]
    [InlineData("--check daily", "--check")]
    [InlineData("--trials 0", "--trials")]
    [InlineData("--seed -1", "-1")]
    public async Task Bad_input_exits_with_2_and_says_where(string option, string place)
    {
        var (code, _, errors) = await Run.Dyepath($"{Piece.Replace(" --trials 64", "", StringComparison.Ordinal)} {option}");
        Assert.Equal(2, code);
        Assert.Contains(place, errors, StringComparison.Ordinal);
    }
}
