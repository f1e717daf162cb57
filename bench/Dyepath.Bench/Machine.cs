using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Dyepath.Bench;

internal static class Machine
{
    /// <summary>The kind of machine, as far as a figure cannot be read without it.</summary>
    public static string Describe()
    {
        const string cpuInfo = "/proc/cpuinfo";
        string? model = File.Exists(cpuInfo)
            ? File.ReadLines(cpuInfo).FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))
            : null;
        string processor = model?.Split(':')[1].Trim() ?? "unnamed processor";
        string vectors = Vector512.IsHardwareAccelerated ? "512-bit" : Vector256.IsHardwareAccelerated ? "256-bit" : "no wide";
        return $"{processor} {RuntimeInformation.ProcessArchitecture}, {Environment.ProcessorCount} cores, {vectors} vectors, " +
            RuntimeInformation.FrameworkDescription;
    }
}
