using CsCheck;
using Xunit.Sdk;

namespace Dyepath.Tests;

/// <summary>
/// Holds laws to values that are the same in every run. (CsCheck's own <c>Sample</c> draws only its first value from the seed
/// that it is given, and the rest from the clock.)
/// </summary>
internal static class Seeded
{
    /// <summary>Draws <paramref name="cases"/> values and fails on the first that breaks the law, naming seed, case and value.</summary>
    public static void Holds<T>(this Gen<T> values, Func<T, bool> law, ulong seed, int cases) =>
        values.Holds(value => { if (!law(value)) Assert.Fail("The law gives false."); }, seed, cases);

    /// <summary>The same for a law that asserts; whatever it throws is the failure's inner exception.</summary>
    public static void Holds<T>(this Gen<T> values, Action<T> law, ulong seed, int cases)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(cases);
        var source = new PCG(1, seed);
        for (var i = 0; i < cases; i++)
        {
            var value = values.Generate(source, null, out _);
            // Printed beforehand, because a law may change what it is given.
            var printed = Check.Print(value);
            try
            {
                law(value);
            }
            catch (Exception broken)
            {
                throw new XunitException($"Seed {seed}, case {i} breaks the law: {printed}", broken);
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
