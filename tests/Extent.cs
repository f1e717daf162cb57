namespace Dyepath.Tests;

/// <summary>
/// How much of a long trial runs: a part that still shows a broken promise in every run of <c>./test</c>, or, with
/// <c>DYEPATH_WHOLE=1</c> in the environment, the whole (docs/testing.md lists them).
/// </summary>
internal static class Extent
{
    /// <summary>A test with this trait runs in the whole alone: <c>./test</c> leaves it out.</summary>
    public const string Trait = "extent";

    public const string Whole = "whole";

    public static bool IsWhole { get; } = Environment.GetEnvironmentVariable("DYEPATH_WHOLE") is "1";

    public static int Of(int part, int whole) => IsWhole ? whole : part;

    /// <summary>All cases in the whole; in part half of them, shifted by one after every four, so that none of few kinds is always left out.</summary>
    public static IEnumerable<T> Half<T>(IEnumerable<T> cases) => cases.Where((_, i) => IsWhole || (i + (i / 4)) % 2 == 0);
}
