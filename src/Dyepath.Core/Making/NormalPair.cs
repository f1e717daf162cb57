using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Dyepath.Core.Making;

/// <summary>
/// Two independent standard normals from two random words (Box and Muller, "A note on the generation of random normal
/// deviates", Annals of Mathematical Statistics 29, 1958): √(−2 ln u)·(cos θ, sin θ). In single precision: each value
/// is within 6·10⁻⁷ of its own size (or 10⁻⁷) of the exact one for the same words, the largest is √(62 ln 2) = 6.56.
/// The scalar and the vector form do the same operations in the same order and give the same bits.
/// </summary>
/// <remarks>
/// u = k/2³¹ with k odd. ln k = e ln 2 + 2 artanh s, s = (m − 1)/(m + 1), √½ ≤ m &lt; √2, by the series of artanh to
/// s⁹ (|s| ≤ 0.1716: remainder under 3·10⁻⁹ of the sum). The angle's word gives a swap, a sign and an angle within ±π/4, where
/// sine and cosine are Taylor's series to x⁹ and x⁸ (remainders under 2·10⁻⁹ and 3·10⁻⁸).
/// </remarks>
internal static class NormalPair
{
    /// <summary>The bits of √½: subtracting them before the shift puts the mantissa into [√½, √2).</summary>
    private const int BitsOfRootHalf = 0x3f3504f3;
    private const float TwoLn2 = 1.38629436f;
    private const float EighthTurnPerStep = (float)(Math.PI / 4 / 2147483648.0);
    private const uint SignBit = 0x80000000;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (float First, float Second) Make(uint radiusWord, uint angleWord)
    {
        int bits = BitConverter.SingleToInt32Bits((int)(radiusWord >> 1 | 1));
        int exponent = (bits - BitsOfRootHalf) >> 23;
        float mantissa = BitConverter.Int32BitsToSingle(bits - (exponent << 23));
        float s = (mantissa - 1f) / (mantissa + 1f);
        float q = s * s;
        float artanh = ((((q * (1f / 9) + 1f / 7) * q + 1f / 5) * q + 1f / 3) * q + 1f) * s;
        float radius = MathF.Sqrt((31 - exponent) * TwoLn2 - artanh * 4f);

        float x = (int)(angleWord << 2) * EighthTurnPerStep;
        float y = x * x;
        float sine = ((((y * (1f / 362880) - 1f / 5040) * y + 1f / 120) * y - 1f / 6) * y + 1f) * x;
        float cosine = (((y * (1f / 40320) - 1f / 720) * y + 1f / 24) * y - 1f / 2) * y + 1f;
        cosine = BitConverter.UInt32BitsToSingle(BitConverter.SingleToUInt32Bits(cosine) ^ (angleWord & SignBit));
        // Without a branch, which would be mispredicted every other time.
        int swap = (int)(angleWord << 1) >> 31;
        int sineBits = BitConverter.SingleToInt32Bits(sine), cosineBits = BitConverter.SingleToInt32Bits(cosine);
        int difference = (sineBits ^ cosineBits) & swap;
        return (
            BitConverter.Int32BitsToSingle(cosineBits ^ difference) * radius,
            BitConverter.Int32BitsToSingle(sineBits ^ difference) * radius);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector256<float> First, Vector256<float> Second) Make(Vector256<uint> radiusWord, Vector256<uint> angleWord)
    {
        Vector256<int> bits = Vector256.ConvertToSingle(((radiusWord >>> 1) | Vector256.Create(1u)).AsInt32()).AsInt32();
        Vector256<int> exponent = (bits - Vector256.Create(BitsOfRootHalf)) >> 23;
        Vector256<float> mantissa = (bits - (exponent << 23)).AsSingle();
        Vector256<float> one = Vector256<float>.One;
        Vector256<float> s = (mantissa - one) / (mantissa + one);
        Vector256<float> q = s * s;
        Vector256<float> artanh =
            ((((q * (1f / 9) + V(1f / 7)) * q + V(1f / 5)) * q + V(1f / 3)) * q + one) * s;
        Vector256<float> turns = Vector256.ConvertToSingle(Vector256.Create(31) - exponent);
        Vector256<float> radius = Vector256.Sqrt(turns * TwoLn2 - artanh * 4f);

        Vector256<float> x = Vector256.ConvertToSingle((angleWord << 2).AsInt32()) * EighthTurnPerStep;
        Vector256<float> y = x * x;
        Vector256<float> sine =
            ((((y * (1f / 362880) - V(1f / 5040)) * y + V(1f / 120)) * y - V(1f / 6)) * y + one) * x;
        Vector256<float> cosine = (((y * (1f / 40320) - V(1f / 720)) * y + V(1f / 24)) * y - V(1f / 2)) * y + one;
        cosine = (cosine.AsUInt32() ^ (angleWord & Vector256.Create(SignBit))).AsSingle();
        // The swap bit, moved to the sign and spread over the lane.
        Vector256<float> swap = ((angleWord << 1).AsInt32() >> 31).AsSingle();
        return (Vector256.ConditionalSelect(swap, sine, cosine) * radius, Vector256.ConditionalSelect(swap, cosine, sine) * radius);
    }

    private static Vector256<float> V(float value) => Vector256.Create(value);
}
