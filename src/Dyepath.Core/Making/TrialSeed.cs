namespace Dyepath.Core.Making;

/// <summary>
/// Everything random about one trial, drawn from its seed and number alone, so that trials may run in any order, on
/// any number of threads, in vector lanes or one by one. Mixing is SplitMix64's (Steele, Lea and Flood, "Fast
/// splittable pseudorandom number generators", OOPSLA 2014): output n of the stream begun at s is Mix(s + n·Gamma).
/// </summary>
internal readonly struct TrialSeed
{
    private const ulong Gamma = 0x9e3779b97f4a7c15;

    private readonly ulong _key;

    public TrialSeed(ulong seed, int trial) => _key = Output(Output(seed, 1), (ulong)trial + 1);

    /// <summary>The first half of the stitch stream's state. The two halves cannot both be zero, since Mix is one to one.</summary>
    public ulong StateLow => Output(_key, 1);

    public ulong StateHigh => Output(_key, 2);

    /// <summary>The normal that starts the hands' tension off in its stationary distribution.</summary>
    public float FirstTension => NormalFrom(Output(_key, 3));

    /// <summary>The normal that makes one section occurrence longer or shorter than the mean.</summary>
    /// <param name="occurrence">Counted along the yarn from the piece's first section, 0; negative before it.</param>
    public float Dye(long occurrence) => NormalFrom(Output(Output(_key, 4), (ulong)occurrence));

    /// <summary>The <paramref name="n"/>th output (from 1) of the SplitMix64 stream begun at <paramref name="start"/>.</summary>
    internal static ulong Output(ulong start, ulong n)
    {
        ulong z = unchecked(start + n * Gamma);
        z = unchecked((z ^ (z >> 30)) * 0xbf58476d1ce4e5b9);
        z = unchecked((z ^ (z >> 27)) * 0x94d049bb133111eb);
        return z ^ (z >> 31);
    }

    private static float NormalFrom(ulong word) => NormalPair.Make((uint)(word >> 32), (uint)word).First;
}
