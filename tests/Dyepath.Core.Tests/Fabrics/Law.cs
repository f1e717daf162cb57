using CsCheck;

namespace Dyepath.Core.Tests.Fabrics;

/// <summary>
/// Holds a law to cases that are the same in every run. (The library's own seed argument fixes the first case only.)
/// </summary>
internal static class Law
{
    public static void Holds<T>(this Gen<T> cases, Func<T, bool> law, ulong seed, int iter)
    {
        var random = new PCG(1, seed);
        for (var i = 0; i < iter; i++)
        {
            var drawn = cases.Generate(random, null, out _);
            Assert.True(law(drawn), $"Seed {seed}, case {i}: {Check.Print(drawn)}");
        }
    }

    public static void Holds<T1, T2>(this Gen<(T1, T2)> cases, Func<T1, T2, bool> law, ulong seed, int iter) =>
        cases.Holds(t => law(t.Item1, t.Item2), seed, iter);

    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Func<T1, T2, T3, bool> law, ulong seed, int iter) =>
        cases.Holds(t => law(t.Item1, t.Item2, t.Item3), seed, iter);

    public static void Holds<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> cases, Func<T1, T2, T3, T4, bool> law, ulong seed, int iter) =>
        cases.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4), seed, iter);

    public static void Holds<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> cases, Func<T1, T2, T3, T4, T5, bool> law, ulong seed, int iter) =>
        cases.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), seed, iter);

    public static void Holds<T1, T2, T3, T4, T5, T6, T7>(
        this Gen<(T1, T2, T3, T4, T5, T6, T7)> cases, Func<T1, T2, T3, T4, T5, T6, T7, bool> law, ulong seed, int iter) =>
        cases.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6, t.Item7), seed, iter);
}
