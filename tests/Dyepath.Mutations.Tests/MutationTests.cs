using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Tests;

/// <summary>A bounded share of what the harness tries by command, with limits that a slow machine keeps too.</summary>
public sealed class MutationTests
{
    [Theory]
    [InlineData("agreement", 60)]
    [InlineData("documents", 500)]
    [InlineData("makings", 400)]
    [InlineData("photos", 300)]
    [InlineData("backups", 120)]
    [InlineData("http", 400)]
    public async Task No_input_breaks_a_promise(string name, int count)
    {
        await using var part = Options.Part(name);
        var result = await Run.OfAsync(part, seed: 77, from: 0, count, Limits.Generous);
        Assert.True(result.Failures.Count == 0, string.Join("\n\n", result.Failures));
        // Both what is accepted and what is refused is tried.
        Assert.True(result.Outcomes.Count > 1, string.Join(", ", result.Outcomes.Keys));
    }

    /// <summary>A harness that cannot fail proves nothing.</summary>
    [Fact]
    public async Task A_broken_promise_is_told_with_seed_case_and_a_small_input()
    {
        await using var part = new Fragile();
        var result = await Run.OfAsync(part, seed: 3, from: 0, 50, Limits.Generous);
        var told = Assert.Single(result.Failures);
        Assert.Matches("^seed 3, case [0-9]+: ", told);
        Assert.Contains("--part fragile --seed 3 --case ", told, StringComparison.Ordinal);
        Assert.EndsWith("""shrunken: {"a":[7]}""", told, StringComparison.Ordinal);
    }

    /// <summary>Cannot bear a list that begins with seven.</summary>
    private sealed class Fragile : IPart
    {
        public string Name => "fragile";

        public Task PrepareAsync(int seed) => Task.CompletedTask;

        public byte[] Input(int seed, int number) => [.. "{\"b\":{\"c\":"u8, (byte)('0' + number % 10), .. "},\"a\":["u8, (byte)('0' + number % 10), .. ",1,2]}"u8];

        public Task<string> TryAsync(byte[] input, int number, CancellationToken cancel) =>
            input.AsSpan().IndexOf("\"a\":[7"u8) < 0 ? Task.FromResult("good") : throw new Broken("there is a seven");

        public ValueTask DisposeAsync() => default;
    }
}
