using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>The promises of docs/reliability.md over random interleavings of tabs, devices and a host that is slow, fails, is emptied and comes back.</summary>
public sealed class KeepingLawTests
{
    private const int Steps = 200;

    /// <summary>One interleaving in so many runs in <c>./test</c>.</summary>
    private const int Part = 5;

    [Theory]
    [InlineData(false, 30_000)]
    [InlineData(true, 30_000)]
    public void NothingThatWasShownAsKeptIsLostAndEveryConflictEnds(bool isLog, int cases) =>
        Hold(isLog, new Trials(Devices: 2, Tabs: 3, DevicesFail: true, HostIsEmptied: true, OneWriter: false), seed: 1, Extent.Of(cases / Part, cases));

    [Theory]
    [InlineData(false, 1, 1, true, 10_000)]
    [InlineData(false, 1, 3, false, 10_000)]
    [InlineData(false, 2, 3, false, 10_000)]
    [InlineData(true, 1, 3, true, 10_000)]
    [InlineData(true, 2, 3, false, 10_000)]
    public void ThereIsNoConflictWithoutTwoWriters(bool isLog, int devices, int tabs, bool emptied, int cases) =>
        Hold(isLog, new Trials(devices, tabs, DevicesFail: false, emptied, OneWriter: true), seed: 2, Extent.Of(cases / Part, cases));

    [Theory]
    [InlineData(false, 20_000)]
    public void OneChoiceEndsTheConflictOfTwoTabsAndTheOtherIsWhatWasWrittenLast(bool isLog, int cases) =>
        Hold(isLog, new Trials(Devices: 1, Tabs: 2, DevicesFail: false, HostIsEmptied: false, OneWriter: false, OneChoice: true), seed: 5, Extent.Of(cases / Part, cases));

    /// <summary>For the figures in docs/reliability.md: run it by itself.</summary>
    [Fact(Explicit = true)]
    public void AMillionMore()
    {
        for (var isLog = 0; isLog < 2; isLog++)
        {
            Hold(isLog == 1, new Trials(2, 3, true, true, false), seed: 3, 300_000);
            Hold(isLog == 1, new Trials(2, 3, false, false, true), seed: 4, 200_000);
        }
    }

    internal static void Hold(bool isLog, Trials trials, int seed, int cases)
    {
        var conflicts = 0;
        var rules = new WordRules(isLog);
        for (var i = 0; i < cases; i++)
        {
            var random = new Random(HashCode(seed, i));
            var choices = new byte[Steps];
            random.NextBytes(choices);
            var world = new World(rules, trials, choices);
            try
            {
                world.Run();
            }
            catch (BrokenPromiseException)
            {
                var shortest = Shortest(rules, trials, choices);
                Assert.Fail($"Seed {seed}, case {i}, {shortest.Length} choices: {Broken(rules, trials, shortest)}");
            }
            conflicts += world.Conflicts;
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{cases} interleavings, {conflicts} conflicts.");
        // A world in which nobody ever disagrees would hold the other promises too easily.
        Assert.True(trials.OneWriter || conflicts > cases / 20);
    }

    private static int HashCode(int seed, int i) => unchecked((seed * 1_000_003) + (i * 7919));

    private static string? Broken(WordRules rules, Trials trials, byte[] choices)
    {
        try
        {
            new World(rules, trials, choices).Run();
            return null;
        }
        catch (BrokenPromiseException broken)
        {
            return broken.Message;
        }
    }

    /// <summary>Leaves out choices, ever fewer at a time, as long as the promise stays broken.</summary>
    private static byte[] Shortest(WordRules rules, Trials trials, byte[] choices)
    {
        for (var span = choices.Length / 2; span >= 1; span /= 2)
        {
            for (var at = 0; at + span <= choices.Length;)
            {
                byte[] fewer = [.. choices[..at], .. choices[(at + span)..]];
                if (Broken(rules, trials, fewer) is null)
                    at += span;
                else
                    choices = fewer;
            }
        }
        return choices;
    }
}
