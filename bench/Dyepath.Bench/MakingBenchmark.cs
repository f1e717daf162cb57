using System.Globalization;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Yarns;

namespace Dyepath.Bench;

/// <summary>The tables of docs/making.md: what checking and correcting is worth, over many simulated makers.</summary>
internal static class MakingBenchmark
{
    private const int Makers = 300;
    private const double Hands = 0.06;

    private static readonly (string Name, MakerPolicy Policy, double Hands)[] Policies =
    [
        ("never", new MakerPolicy(CheckHabit.Never, Steering.Feel), Hands),
        ("rows, feel", new MakerPolicy(CheckHabit.EveryRow, Steering.Feel), Hands),
        ("rows, learning feel", new MakerPolicy(CheckHabit.EveryRow, Steering.LearningFeel), Hands),
        ("rows, advice", new MakerPolicy(CheckHabit.EveryRow, Steering.Advice), Hands),
        ("sections, feel", new MakerPolicy(CheckHabit.EverySection, Steering.Feel), Hands),
        ("sections, learning feel", new MakerPolicy(CheckHabit.EverySection, Steering.LearningFeel), Hands),
        // As far as advice ever asks.
        ("sections, learning feel, ¾", new MakerPolicy(CheckHabit.EverySection, Steering.LearningFeel), Hands * DriftAdvice.Asked),
        ("sections, advice", new MakerPolicy(CheckHabit.EverySection, Steering.Advice), Hands),
    ];

    public static void Run(TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        PlannedPiece piece = PlannedPiece.Create(ColourRing.FromUnits([5, 4, 6, 7]), [.. Enumerable.Repeat(83, 72)]);
        (double Spread, double Memory)[] hands =
            [(0.005, 50), (0.01, 50), (0.03, 50), (0.05, 50), (0.01, 1), (0.01, 10), (0.01, 200), (0.05, 1), (0.05, 200)];
        output.WriteLine($"making: 83 x 72, {Makers} makers, median share, rip-backs, coverage, recounts, each with its 95 % interval");
        output.WriteLine("| spread | memory | policy | share in planned colour | rows ripped | coverage | recounts |");
        output.WriteLine("|---|---|---|---|---|---|---|");
        string[] lines = new string[hands.Length * Policies.Length];
        Parallel.For(0, lines.Length, i =>
        {
            (double spread, double memory) = hands[i / Policies.Length];
            (string name, MakerPolicy policy, double most) = Policies[i % Policies.Length];
            var world = new MakerWorld { Hands = HandModel.Create(spread, memory, largestCorrection: most) };
            MakerFigures figures = MakerSimulation.Run(piece, world, policy, Makers, seed: 2026);
            string coverage = figures.Coverage is { } covered ? Say(covered, "0.000") : "";
            lines[i] = string.Create(
                CultureInfo.InvariantCulture,
                $"| {spread * 100:0.#} % | {memory} | {name} | {Say(figures.Share, "0.000")} | {Say(figures.RipBacks, "0.0")} | ") +
                $"{coverage} | {Say(figures.Recounts, "0.0")} |";
        });
        foreach (string line in lines) output.WriteLine(line);
    }

    private static string Say(Figure figure, string format) =>
        $"{Number(figure.Value, format)} ({Number(Math.Max(0, figure.Low), format)} to {Number(figure.High, format)})";

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
