using CsCheck;
using Xunit.Sdk;

namespace Dyepath.Tests;

/// <summary>
/// Holds laws to values that are the same in every run, and lets CsCheck find the smallest value that breaks one. (CsCheck's own
/// <c>Sample</c> draws only its first value from the seed that it is given, and the rest from the clock; so it is asked from the
/// case that broke the law.)
/// </summary>
internal static class Seeded
{
    /// <summary>As many values as a law has cases, so often, are tried for one that is smaller than the one that broke it.</summary>
    private const int Smaller = 4;

    /// <summary>
    /// Draws <paramref name="cases"/> values and fails on the first that breaks the law, naming seed and case, and the smallest value
    /// that breaks it with CsCheck's seed for that.
    /// </summary>
    public static void Holds<T>(this Gen<T> values, Func<T, bool> law, ulong seed, int cases) =>
        values.Holds(value => { if (!law(value)) Assert.Fail("The law gives false."); }, seed, cases);

    /// <summary>The same for a law that asserts; whatever it throws is the failure's inner exception.</summary>
    public static void Holds<T>(this Gen<T> values, Action<T> law, ulong seed, int cases)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(cases);
        var source = new PCG(1, seed);
        for (var i = 0; i < cases; i++)
        {
            var state = source.State;
            try
            {
                law(values.Generate(source, null, out _));
            }
            catch (Exception broken)
            {
                try
                {
                    values.Sample(law, seed: source.ToString(state), iter: 1L + Smaller * cases, threads: 1);
                }
                catch (CsCheckException smallest)
                {
                    throw new XunitException($"Seed {seed}, case {i} breaks the law; the smallest like it: {smallest.Message}", smallest.InnerException);
                }
                throw new XunitException($"Seed {seed}, case {i} breaks the law once and not again, so that it asks for more than its values.", broken);
            }
        }
    }

    public static void Holds<T1, T2>(this Gen<(T1, T2)> values, Func<T1, T2, bool> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2), seed, cases);

    public static void Holds<T1, T2>(this Gen<(T1, T2)> values, Action<T1, T2> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2), seed, cases);

    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> values, Func<T1, T2, T3, bool> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3), seed, cases);

    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> values, Action<T1, T2, T3> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3), seed, cases);

    public static void Holds<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> values, Func<T1, T2, T3, T4, bool> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4), seed, cases);

    public static void Holds<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> values, Action<T1, T2, T3, T4> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4), seed, cases);

    public static void Holds<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> values, Func<T1, T2, T3, T4, T5, bool> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), seed, cases);

    public static void Holds<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> values, Action<T1, T2, T3, T4, T5> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), seed, cases);

    public static void Holds<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> values, Action<T1, T2, T3, T4, T5, T6> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6), seed, cases);

    public static void Holds<T1, T2, T3, T4, T5, T6, T7>(
        this Gen<(T1, T2, T3, T4, T5, T6, T7)> values, Func<T1, T2, T3, T4, T5, T6, T7, bool> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6, t.Item7), seed, cases);

    public static void Holds<T1, T2, T3, T4, T5, T6, T7>(
        this Gen<(T1, T2, T3, T4, T5, T6, T7)> values, Action<T1, T2, T3, T4, T5, T6, T7> law, ulong seed, int cases) =>
        values.Holds(t => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6, t.Item7), seed, cases);
}
