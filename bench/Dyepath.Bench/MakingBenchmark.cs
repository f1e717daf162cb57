using System.Diagnostics;
using System.Globalization;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Yarns;

namespace Dyepath.Bench;

/// <summary>The tables of docs/making.md: what checking and correcting is worth, over many simulated makers.</summary>
internal static class MakingBenchmark
{
    private static readonly (string Name, MakerPolicy Policy)[] Policies =
    [
        ("never", new MakerPolicy(CheckHabit.Never, Steering.Feel)),
        ("rows, feel", new MakerPolicy(CheckHabit.EveryRow, Steering.Feel)),
        ("rows, learning", new MakerPolicy(CheckHabit.EveryRow, Steering.LearningFeel)),
        ("rows, advice", new MakerPolicy(CheckHabit.EveryRow, Steering.Advice)),
        ("sections, feel", new MakerPolicy(CheckHabit.EverySection, Steering.Feel)),
        ("sections, learning", new MakerPolicy(CheckHabit.EverySection, Steering.LearningFeel)),
        ("sections, advice", new MakerPolicy(CheckHabit.EverySection, Steering.Advice)),
    ];

    private static readonly double[] Spreads = [0.005, 0.01, 0.02, 0.03, 0.05], Memories = [1, 10, 50, 200], Biases = [0.02, 0.06];

    private static readonly ulong[] Seeds = [7, 11, 12, 2026];

    private static readonly PlannedPiece Panel = Piece(83, 72);

    /// <param name="output">Where the tables go.</param>
    /// <param name="quick">A tenth of the makers.</param>
    public static void Run(TextWriter output, bool quick)
    {
        ArgumentNullException.ThrowIfNull(output);
        Grid(output, quick ? 30 : 300);
        Acts(output, quick ? 30 : 300);
        Holdable(output);
    }

    /// <summary>How well makers' own figures are found from their logs.</summary>
    /// <param name="output">Where the table goes.</param>
    /// <param name="quick">A tenth of the logs.</param>
    public static void RunFits(TextWriter output, bool quick)
    {
        ArgumentNullException.ThrowIfNull(output);
        Fits(output, quick ? 20 : 200);
    }

    private static void Grid(TextWriter output, int makers)
    {
        (double Spread, double Memory)[] hands = [.. Spreads.SelectMany(spread => Memories.Select(memory => (spread, memory)))];
        MakerFigures[][] made = [.. hands.Select(_ => new MakerFigures[Policies.Length])];
        Parallel.For(0, hands.Length * Policies.Length, i =>
        {
            (int row, int policy) = (i / Policies.Length, i % Policies.Length);
            var world = new MakerWorld { Hands = HandModel.Create(hands[row].Spread, hands[row].Memory) };
            made[row][policy] = MakerSimulation.Run(Panel, world, Policies[policy].Policy, makers, seed: 2026);
        });
        void Table(string title, IEnumerable<int> policies, Func<MakerFigures, Figure?> figure, string format)
        {
            int[] columns = [.. policies];
            output.WriteLine($"\n{title}, {makers} makers\n");
            Row(output, ["spread", "memory", .. columns.Select(column => Policies[column].Name)]);
            Row(output, [.. Enumerable.Repeat("---", columns.Length + 2)]);
            for (int row = 0; row < hands.Length; row++)
            {
                string spread = string.Create(CultureInfo.InvariantCulture, $"{hands[row].Spread * 100:0.#} %");
                Row(
                    output,
                    [spread, Number(hands[row].Memory, "0"), .. columns.Select(column => Say(figure(made[row][column])!.Value, format))]);
            }
        }
        Table("share in planned colour", Enumerable.Range(0, Policies.Length), figures => figures.Share, "0.00");
        Table("rows ripped", Enumerable.Range(1, Policies.Length - 1), figures => figures.RipBacks, "0.0");
        Table("coverage", [3, 6], figures => figures.Coverage, "0.000");
        Table("recounts", [3, 6], figures => figures.Recounts, "0.0");
    }

    /// <summary>Rip-backs hang on few makers, so other makers are asked too; and what acting on all advice is worth.</summary>
    private static void Acts(TextWriter output, int makers)
    {
        output.WriteLine($"\nrows read, spread 1 %, memory 50, {makers} makers\n");
        (string Name, Func<MakerWorld, MakerWorld> Can)[] means =
        [
            ("tension", world => world),
            ("and chain", world => world with { Turn = 0.5 }),
            ("and edge stitch", world => world with { EdgeStitch = true }),
            ("and hook", world => world with { HookStep = 0.04 }),
            ("and all three", world => world with { Turn = 0.5, EdgeStitch = true, HookStep = 0.04 }),
        ];
        Row(output, ["bias up to", "seed", "feel: share", "rows ripped", "advice by", "share", "rows ripped", "coverage"]);
        Row(output, [.. Enumerable.Repeat("---", 8)]);
        foreach ((double bias, ulong seed) in Biases.SelectMany(bias => Seeds.Select(seed => (bias, seed))))
        {
            var world = new MakerWorld { LargestBias = bias };
            var figures = new MakerFigures[means.Length + 1];
            Parallel.For(0, figures.Length, i => figures[i] = i == means.Length
                ? MakerSimulation.Run(Panel, world, Policies[1].Policy, makers, seed)
                : MakerSimulation.Run(Panel, means[i].Can(world), Policies[3].Policy, makers, seed));
            MakerFigures felt = figures[^1];
            for (int i = 0; i < means.Length; i++)
            {
                MakerFigures advised = figures[i];
                Row(
                    output,
                    [
                        Number(bias * 100, "0") + " %", seed.ToString(CultureInfo.InvariantCulture), Say(felt.Share, "0.000"), Say(felt.RipBacks, "0.0"),
                        means[i].Name, Say(advised.Share, "0.000"), Say(advised.RipBacks, "0.00"), Say(advised.Coverage!.Value, "0.000"),
                    ]);
            }
        }
    }

    private static void Fits(TextWriter output, int logs)
    {
        output.WriteLine("how many intervals hold the truth; the median of what is found\n");
        Row(output, ["spread", "memory", "read", "logs", "readings", "bias held", "spread held", "memory held", "bias off", "spread found", "memory found", "ms"]);
        Row(output, [.. Enumerable.Repeat("---", 12)]);
        (double Spread, double Memory, CheckHabit Check, PlannedPiece Piece)[] cases =
        [
            (0.01, 50, CheckHabit.EveryRow, Panel), (0.03, 50, CheckHabit.EveryRow, Panel), (0.03, 200, CheckHabit.EveryRow, Panel),
            (0.03, 10, CheckHabit.EveryRow, Panel), (0.03, 50, CheckHabit.EveryRow, Piece(42, 72)),
            (0.01, 50, CheckHabit.EverySection, Piece(83, 24)), (0.03, 50, CheckHabit.EverySection, Piece(83, 24)),
            (0.01, 50, CheckHabit.EverySection, Panel), (0.03, 50, CheckHabit.EverySection, Panel),
        ];
        foreach ((double spread, double memory, CheckHabit check, PlannedPiece piece) in cases)
        {
            var world = new MakerWorld { Hands = HandModel.Create(spread, memory) };
            // A thousand readings take a while.
            int makers = check == CheckHabit.EverySection ? logs / 4 : logs;
            var fits = new MakerFit[makers];
            double[] biases = new double[makers];
            var clock = Stopwatch.StartNew();
            Parallel.For(0, makers, i =>
            {
                var trial = new MakerTrial(piece, world, new MakerPolicy(check, Steering.Advice), 2026, i) { Log = [] };
                trial.Work();
                fits[i] = MakerFit.Of(new MakerLog(world.Model(piece), [.. trial.Log]))!;
                biases[i] = trial.FirstBias;
            });
            double each = clock.Elapsed.TotalMilliseconds / makers;
            string Held(Func<int, Figure> figure, Func<int, double> truth) => Number(
                Enumerable.Range(0, makers).Count(i => figure(i).Low <= truth(i) && truth(i) <= figure(i).High) / (double)makers, "0.00");
            string Median(Func<int, double> figure, string format) =>
                Number(Enumerable.Range(0, makers).Select(figure).Order().ElementAt(makers / 2), format);
            Row(
                output,
                [
                    Number(spread * 100, "0") + " %", Number(memory, "0"), $"{check} {piece.RowStitches[0]} x {piece.RowStitches.Length}",
                    Number(makers, "0"),
                    Median(i => fits[i].Readings, "0"),
                    Held(i => fits[i].Bias, i => biases[i]), Held(i => fits[i].Spread, _ => spread), Held(i => fits[i].Memory, _ => memory),
                    Median(i => (fits[i].Bias.Value - biases[i]) * 100, "0.00") + " %", Median(i => fits[i].Spread.Value * 100, "0.00") + " %",
                    Median(i => fits[i].Memory.Value, "0"), Number(each, "0"),
                ]);
        }
    }

    private static void Holdable(TextWriter output)
    {
        output.WriteLine("\nwhat would hold 83 x 72 read by rows, memory 50\n");
        foreach (double spread in new[] { 0.01, 0.03, 0.05, 0.08, 0.15 })
        {
            var clock = Stopwatch.StartNew();
            HoldableWork work = HoldableWork.For(Panel, new MakerWorld { Hands = HandModel.Create(spread, 50) }, CheckHabit.EveryRow);
            output.WriteLine($"{Number(spread * 100, "0")} %, {clock.ElapsedMilliseconds} ms: {DriftWords.Say(work)}");
        }
    }

    private static PlannedPiece Piece(int stitches, int rows) =>
        PlannedPiece.Create(ColourRing.FromUnits([5, 4, 6, 7]), [.. Enumerable.Repeat(stitches, rows)]);

    private static void Row(TextWriter output, string[] cells) => output.WriteLine($"| {string.Join(" | ", cells)} |");

    private static string Say(Figure figure, string format) =>
        $"{Number(figure.Value, format)} ({Number(Math.Max(0, figure.Low), format)}–{Number(figure.High, format)})";

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
