namespace Dyepath.Core.Colours;

/// <summary>The sRGB transfer function of IEC 61966-2-1, with its published constants.</summary>
internal static class SrgbTransfer
{
    private static readonly double[] LinearOfByte = [.. Enumerable.Range(0, 256).Select(code => Decode(code / 255.0))];

    public static double ToLinear(byte code) => LinearOfByte[code];

    /// <summary>Clips to [0, 1] and rounds to the nearest code, halves up.</summary>
    public static byte ToByte(double linear) => (byte)(Encode(Math.Clamp(linear, 0, 1)) * 255 + 0.5);

    private static double Decode(double encoded) =>
        encoded <= 0.04045 ? encoded / 12.92 : Math.Pow((encoded + 0.055) / 1.055, 2.4);

    private static double Encode(double linear) =>
        linear <= 0.0031308 ? linear * 12.92 : 1.055 * Math.Pow(linear, 1 / 2.4) - 0.055;
}
