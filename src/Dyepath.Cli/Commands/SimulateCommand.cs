using System.CommandLine;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Making;
using Dyepath.Core.Yarns;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath simulate</c>: how much of the picture human hands keep.</summary>
internal static class SimulateCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new SequenceOptions();
        var stitches = new Option<int>("--stitches") { CustomParser = NumberText.Read<int>, Description = "Stitches in a row, 1 to 1,000.", Required = true };
        var rows = new Option<int>("--rows") { CustomParser = NumberText.Read<int>, Description = "Rows or rounds, 1 to 5,000.", Required = true };
        var start = new Option<double>("--start") { CustomParser = NumberText.Read<double>, Description = "Where in the sequence the first stitch lies, in stitches." };
        var spread = new Option<double>("--spread") { CustomParser = NumberText.Read<double>, Description = "How much yarn per stitch varies: relative standard deviation, 0 to 0.5; 0.01 is a steady hand.", DefaultValueFactory = _ => 0.01 };
        var memory = new Option<double>("--memory") { CustomParser = NumberText.Read<double>, Description = "Over how many stitches the hands stay as they are: correlation length, e^(-1/memory) from stitch to stitch.", DefaultValueFactory = _ => 50 };
        var check = new Option<string>("--check") { Description = "When the colours are compared with the plan and corrected by feel: never, row, sequence or section.", DefaultValueFactory = _ => "row" };
        var trials = new Option<int>("--trials") { CustomParser = NumberText.Read<int>, Description = "How often the piece is worked, 1 to 100,000.", DefaultValueFactory = _ => 500 };
        var seed = new Option<ulong>("--seed") { CustomParser = NumberText.Read<ulong>, Description = "The same seed gives the same result everywhere.", DefaultValueFactory = _ => 1 };
        var dye = new Option<double>("--dye") { CustomParser = NumberText.Read<double>, Description = "How much the dyed lengths vary: relative standard deviation, 0 to 0.5." };
        var bias = new Option<double>("--bias") { CustomParser = NumberText.Read<double>, Description = "How much looser (or tighter, negative) the hands are than the plan, -0.5 to 0.5." };
        var hands = new Option<double>("--hands") { CustomParser = NumberText.Read<double>, Description = "The largest correction that hands can make, 0 to 0.5.", DefaultValueFactory = _ => 0.06 };
        var command = new Command("simulate", """
            Works a piece many times over with hands that vary, and says what share of its stitches comes in the planned colour.

            Example: dyepath simulate --sections 5,4,6,7 --stitches 83 --rows 72 --worked turned --spread 0.01 --memory 50 --check row
            """)
        {
            stitches, rows, start, spread, memory, check, trials, seed, dye, bias, hands,
        };
        options.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var ring = options.Ring(parsed);
            var working = options.Working(parsed);
            var count = SequenceOptions.InRange(parsed, stitches, 1, FabricPath.MostStitches, "stitches");
            var rowCount = SequenceOptions.InRange(parsed, rows, 1, FabricPath.MostRows, "rows");
            if (ring.Sections.Min() < ColourRing.ShortestSection * ColourRing.Unit)
                throw new BadInputException("--sections", $"A section is shorter than {SequenceOptions.Said(ColourRing.ShortestSection)} stitches; nobody could see it.");
            var path = options.Path(parsed, working) with { Start = SequenceOptions.InRange(parsed, start, -1e6, 1e6, "stitches") };
            SequenceOptions.RequireYarn(count, path);
            var piece = PlannedPiece.Of(ring, FabricPath.Constant(working, count, rowCount, path));
            var tension = HandModel.Create(
                SequenceOptions.InRange(parsed, spread, 0, 0.5, ""),
                SequenceOptions.InRange(parsed, memory, 0, 100_000, "stitches"),
                SequenceOptions.InRange(parsed, bias, -0.5, 0.5, ""),
                SequenceOptions.InRange(parsed, hands, 0, 0.5, ""));
            var settings = new SimulationSettings
            {
                Check = Habit(parsed.GetRequiredValue(check)),
                Trials = SequenceOptions.InRange(parsed, trials, 1, 100_000, "trials"),
                Seed = parsed.GetValue(seed),
                DyeVariation = SequenceOptions.InRange(parsed, dye, 0, 0.5, ""),
                Workers = Environment.ProcessorCount,
            };
            var result = terminal.Progress("Working the piece", progress => TensionSimulation.Run(piece, tension, settings, progress, stop));
            if (parsed.GetValue(options.Json))
            {
                terminal.WriteJson(json =>
                {
                    json.WriteStartObject();
                    json.WriteNumber("median", Math.Round(result.Median, 6));
                    json.WriteNumber("p05", Math.Round(result.P05, 6));
                    json.WriteNumber("p95", Math.Round(result.P95, 6));
                    json.WriteNumber("good", result.Good);
                    json.WriteNumber("meanCorrection", Math.Round(result.MeanCorrection, 8));
                    json.WriteEndObject();
                });
            }
            else
            {
                terminal.Output.WriteLine($"In planned colour: median {Share(result.Median)}, from {Share(result.P05)} to {Share(result.P95)} in nine pieces of ten.");
                terminal.Output.WriteLine($"Pieces with at least 80 % in planned colour: {Share(result.Good)}. Mean correction: {Share(result.MeanCorrection)} of the yarn in a stitch.");
            }
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }

    private static string Share(double share) => SequenceOptions.Said(Math.Round(100 * share, 1)) + " %";

    private static CheckHabit Habit(string name) => name switch
    {
        "never" => CheckHabit.Never,
        "row" => CheckHabit.EveryRow,
        "sequence" => CheckHabit.EverySequence,
        "section" => CheckHabit.EverySection,
        _ => throw new BadInputException("--check", $"“{name}” is not a habit; use never, row, sequence or section."),
    };
}
