using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Dyepath.Core.Making;

/// <summary>
/// Eight streams of standard normals side by side, a trial each. Each stream is xoshiro128++ (Blackman and Vigna,
/// "Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical Software 47, 2021).
/// </summary>
internal sealed class NormalLanes
{
    /// <summary>How many trials go side by side: the singles of a 256-bit vector.</summary>
    public const int Count = 8;

    private readonly uint[] _s0 = new uint[Count], _s1 = new uint[Count], _s2 = new uint[Count], _s3 = new uint[Count];

    public void Begin(int lane, TrialSeed seed) => Begin(
        lane, (uint)seed.StateLow, (uint)(seed.StateLow >> 32), (uint)seed.StateHigh, (uint)(seed.StateHigh >> 32));

    internal void Begin(int lane, uint s0, uint s1, uint s2, uint s3) =>
        (_s0[lane], _s1[lane], _s2[lane], _s3[lane]) = (s0, s1, s2, s3);

    /// <summary>
    /// Fills <paramref name="normals"/>, value i of a lane at i·8 + lane. Streams give normals in pairs: the length must be a whole
    /// number of pairs. Lanes from <paramref name="lanes"/> on are left alone.
    /// </summary>
    public void Fill(Span<float> normals, int lanes)
    {
        for (int lane = 0; lane < lanes; lane++)
        {
            uint s0 = _s0[lane], s1 = _s1[lane], s2 = _s2[lane], s3 = _s3[lane];
            for (int i = lane; i < normals.Length; i += 2 * Count)
            {
                uint radiusWord = Next(ref s0, ref s1, ref s2, ref s3);
                uint angleWord = Next(ref s0, ref s1, ref s2, ref s3);
                (normals[i], normals[i + Count]) = NormalPair.Make(radiusWord, angleWord);
            }
            Begin(lane, s0, s1, s2, s3);
        }
    }

    /// <summary>As <see cref="Fill"/> for all lanes at once, with the same bits.</summary>
    public void FillVectorised(Span<float> normals)
    {
        Vector256<uint> s0 = Vector256.Create(_s0), s1 = Vector256.Create(_s1), s2 = Vector256.Create(_s2), s3 = Vector256.Create(_s3);
        ref float target = ref MemoryMarshal.GetReference(normals);
        for (nuint i = 0; i < (nuint)normals.Length; i += 2 * Count)
        {
            Vector256<uint> radiusWord = Rotate(s0 + s3, 7) + s0;
            Step(ref s0, ref s1, ref s2, ref s3);
            Vector256<uint> angleWord = Rotate(s0 + s3, 7) + s0;
            Step(ref s0, ref s1, ref s2, ref s3);
            (Vector256<float> first, Vector256<float> second) = NormalPair.Make(radiusWord, angleWord);
            first.StoreUnsafe(ref target, i);
            second.StoreUnsafe(ref target, i + Count);
        }
        s0.CopyTo(_s0);
        s1.CopyTo(_s1);
        s2.CopyTo(_s2);
        s3.CopyTo(_s3);
    }

    /// <summary>The next word of one lane's stream.</summary>
    internal uint Next(int lane) => Next(ref _s0[lane], ref _s1[lane], ref _s2[lane], ref _s3[lane]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Next(ref uint s0, ref uint s1, ref uint s2, ref uint s3)
    {
        uint result = unchecked(BitOperations.RotateLeft(s0 + s3, 7) + s0);
        uint t = s1 << 9;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = BitOperations.RotateLeft(s3, 11);
        return result;
    }

    private static void Step(ref Vector256<uint> s0, ref Vector256<uint> s1, ref Vector256<uint> s2, ref Vector256<uint> s3)
    {
        Vector256<uint> t = s1 << 9;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = Rotate(s3, 11);
    }

    private static Vector256<uint> Rotate(Vector256<uint> words, int by) => (words << by) | (words >>> (32 - by));
}
