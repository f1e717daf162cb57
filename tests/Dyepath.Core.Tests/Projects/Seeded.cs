using CsCheck;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Runs a law on the same random values every time; a seed given to CsCheck fixes only the first of them.</summary>
internal static class Seeded
{
    public static void Each<T>(Gen<T> gen, int times, Action<T> law)
    {
        for (var i = 0u; i < times; i++)
        {
            var random = new PCG(i, 1);
            var seed = random.ToString();
            var value = gen.Generate(random, null, out _);
            try
            {
                law(value);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"The law fails for seed \"{seed}\": {value}", e);
            }
        }
    }
}
