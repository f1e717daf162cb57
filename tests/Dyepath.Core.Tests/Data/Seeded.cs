using CsCheck;

namespace Dyepath.Core.Tests.Data;

/// <summary>
/// Laws tried on values that are the same in every run. CsCheck's own <c>Sample</c> draws only its first value from the
/// seed it is given and the rest from the clock.
/// </summary>
internal static class Seeded
{
    /// <summary>Draws <paramref name="count"/> values and fails on the first that breaks the law, naming it and its place.</summary>
    public static void Holds<T>(Gen<T> values, ulong seed, Func<T, bool> law, int count = 1000)
    {
        var source = new PCG(1, seed);
        for (var i = 0; i < count; i++)
        {
            var value = values.Generate(source, null, out _);
            if (!law(value))
                Assert.Fail($"Value {i} of seed {seed} breaks the law: {value}");
        }
    }
}
