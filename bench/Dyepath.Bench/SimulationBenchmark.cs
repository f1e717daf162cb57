using System.Diagnostics;
using System.Globalization;
using Dyepath.Core.Making;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Bench;

/// <summary>
/// The tension simulation, stitches per second on one core, against bench/cpp/tension.cpp. Row-checked, 83 × 72, sections 5, 4,
/// 6, 7, spread 1 %, memory 50. Rounds of both take turns, so that a busy machine slows both.
/// </summary>
internal static class SimulationBenchmark
{
    private const int Stitches = 83;
    private const int Rows = 72;
    private const int Trials = 4_000;
    private const int Rounds = 7;

    public static void Run(TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        var piece = PlannedPiece.Create(ColourRing.FromUnits([5, 4, 6, 7]), [.. Enumerable.Repeat(Stitches, Rows)]);
        var hands = HandModel.Create(0.01, 50);
        var settings = new SimulationSettings { Trials = Trials };
        double share = TensionSimulation.Run(piece, hands, settings).Median;
        string? program = BuildReference();

        double Ours(SimulationSettings how, bool vectorised) =>
            (double)how.Trials * piece.Stitches / Stopwatches.Seconds(() => TensionSimulation.Run(piece, hands, how, vectorised));

        output.WriteLine($"simulation: row-checked, {Stitches} x {Rows}, spread 1 %, memory 50; median share {share:0.0000}");
        Stopwatches.Warm(() => Ours(settings, vectorised: true));
        Stopwatches.Warm(() => Ours(settings, vectorised: false));
        List<double> vector = [], scalar = [], reference = [];
        for (int round = 0; round < Rounds; round++)
        {
            vector.Add(Ours(settings, vectorised: true));
            scalar.Add(Ours(settings, vectorised: false));
            if (program is not null) reference.Add(ReferenceSpeed(program));
        }
        double best = Stopwatches.Median(vector);
        Print(output, "vectorised, one core", best);
        Print(output, "scalar, one core", Stopwatches.Median(scalar));
        if (program is null) output.WriteLine("  no C++ compiler found: nothing to compare with");
        else
        {
            double theirs = Stopwatches.Median(reference);
            Print(output, "C++ -O3, one core", theirs);
            output.WriteLine($"  ratio to C++ {best / theirs:0.0}");
        }
        foreach (CheckHabit check in Enum.GetValues<CheckHabit>())
            Print(output, $"vectorised, check {check}", Ours(settings with { Check = check }, vectorised: true));
        Print(output, "vectorised, dye 2 %", Ours(settings with { DyeVariation = 0.02 }, vectorised: true));
        foreach ((int stitches, int rows) in new[] { (20, 20), (200, 300), (1_000, 1_000), (1_000, 5_000) })
        {
            PlannedPiece other = PlannedPiece.Create(ColourRing.FromUnits([5, 4, 6, 7]), [.. Enumerable.Repeat(stitches, rows)]);
            SimulationSettings how = settings with { Trials = Math.Max(8, Trials * piece.Stitches / other.Stitches / 8 * 8) };
            double seconds = Stopwatches.Seconds(() => TensionSimulation.Run(other, hands, how, vectorised: true));
            Print(output, $"vectorised, {stitches} x {rows}", (double)how.Trials * other.Stitches / seconds);
        }
    }

    private static void Print(TextWriter output, string what, double stitchesPerSecond) =>
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {what,-28} {stitchesPerSecond / 1e6,8:0.0} million stitches/s"));

    private static string? BuildReference()
    {
        string? root = AppContext.BaseDirectory;
        while (root is not null && !File.Exists(Path.Combine(root, "Dyepath.slnx"))) root = Path.GetDirectoryName(root);
        if (root is null) return null;
        string folder = Path.Combine(root, "bench", "cpp");
        using Process build = Process.Start("bash", [Path.Combine(folder, "build.sh")]);
        build.WaitForExit();
        return build.ExitCode == 0 ? Path.Combine(folder, "build", "tension") : null;
    }

    private static double ReferenceSpeed(string program)
    {
        var start = new ProcessStartInfo(program, [$"{Stitches}", $"{Rows}", $"{Trials}"]) { RedirectStandardOutput = true };
        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return double.Parse(output.Split(' ')[0], CultureInfo.InvariantCulture);
    }
}
