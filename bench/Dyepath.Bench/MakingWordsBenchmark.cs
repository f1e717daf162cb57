using System.Globalization;
using Dyepath.Bench.Makers;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Bench;

/// <summary>The tables of docs/making.md on what sentences are worth: makers who read them, beside those who do not.</summary>
internal static class MakingWordsBenchmark
{
    private static readonly (string Name, MakerKind Kind)[] Policies =
    [
        ("ignores it", new MakerKind { GoesBy = GoesBy.Nothing }),
        ("honest feel", new MakerKind { GoesBy = GoesBy.Feel }),
        ("the words", new MakerKind()),
        ("the words, taken for less or more by a third", new MakerKind { MeaningSpread = 0.35 }),
        ("the words, looking in mid-row where asked", new MakerKind { Looks = Looks.MidRow }),
        ("the words, looking at every colour", new MakerKind { Looks = Looks.EveryColour }),
        ("the engine's numbers", new MakerKind { GoesBy = GoesBy.Numbers }),
    ];

    private static readonly double[] Spreads = [0.005, 0.01, 0.015, 0.02, 0.03];

    /// <param name="output">Where the tables go.</param>
    /// <param name="quick">Half of the makers, others, in the middle spread alone.</param>
    public static void Run(TextWriter output, bool quick)
    {
        ArgumentNullException.ThrowIfNull(output);
        int makers = quick ? 40 : 80, firstSeed = quick ? 0 : 5_000;
        var plan = GarmentPlanner.Plan(ProjectReader.Read(File.ReadAllBytes(Demo())).Project!).Plan!;
        foreach (string size in (string[])["M", "2X"])
        {
            var order = MakingOrder.Of(plan, size);
            var piece = order.Parts.First(part => part.Planned is not null).Planned!;
            output.WriteLine($"\nSize {size}, {piece.RowStitches[0]} x {piece.RowStitches.Length}, {makers} makers: median (worst 5 %)\n");
            double[] spreads = quick ? [0.015] : Spreads;
            Row(output, ["goes by", .. spreads.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s * 100:0.#} %")), "under half", "a mark", "a mark or another level", "rows ripped", "cuts"]);
            Row(output, [.. Enumerable.Repeat("---", spreads.Length + 6)]);
            foreach (var (name, kind) in Policies)
            {
                List<string> cells = [name];
                List<string> more = [];
                foreach (double spread in spreads)
                {
                    var made = Make(order, kind with { Spread = spread }, makers, firstSeed);
                    double[] shares = [.. made.Select(m => m.Share).Order()];
                    cells.Add($"{Number(At(shares, 0.5), "0.00")} ({Number(At(shares, 0.05), "0.00")})");
                    if (spread == 0.015)
                    {
                        more =
                        [
                            Number(made.Average(m => m.BadRows), "0.00"), Number(made.Average(m => m.Asked), "0.00"),
                            Number(made.Average(m => m.Changed), "0.00"),
                            Number(made.Average(m => m.Ripped), "0.0"), Number(made.Average(m => m.Cuts), "0.0"),
                        ];
                    }
                }
                Row(output, [.. cells, .. more]);
            }
        }
    }

    /// <summary>Every maker with her own seed, so that all kinds have the same hands.</summary>
    internal static WorkedPiece[] Make(MakingOrder order, MakerKind kind, int makers, int firstSeed)
    {
        double centimetres = order.Plan.Sequence.YarnPerUnit.Centimetres;
        var made = new WorkedPiece[makers];
        Parallel.For(0, makers, i => made[i] = new WordMaker(new BesidePage(order), kind, centimetres, firstSeed + i).Work());
        return made;
    }

    private static double At(double[] ordered, double part) => ordered[(int)Math.Round(part * (ordered.Length - 1))];

    private static string Demo()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string path = Path.Combine(folder.FullName, "demo", "tideline.json");
            if (File.Exists(path)) return path;
        }
        throw new FileNotFoundException("The demo was not found above the benchmark.");
    }

    private static void Row(TextWriter output, string[] cells) => output.WriteLine($"| {string.Join(" | ", cells)} |");

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
