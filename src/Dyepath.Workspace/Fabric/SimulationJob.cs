using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Workspace.Fabric;

/// <summary>Pieces to be worked many times over by the same hands.</summary>
/// <param name="Sections">The ring's sections in micro-units.</param>
/// <param name="Colours">As <see cref="ColourRing.Colours"/>.</param>
/// <param name="Pieces">The pooled ones, in the order in which they are made.</param>
/// <param name="Hands">The same for all pieces.</param>
/// <param name="Check">When the maker corrects.</param>
/// <param name="Trials">How often each piece is worked.</param>
/// <param name="Seed">The same seed gives the same answer everywhere.</param>
public sealed record SimulationOrder(
    ImmutableArray<long> Sections, ImmutableArray<int> Colours, ImmutableArray<SimulatedPiece> Pieces, SimulatedHands Hands,
    CheckHabit Check, int Trials, ulong Seed)
{
    /// <summary>The pooled pieces of a size, by the maker's hands as the project knows them, or else the stated prior.</summary>
    public static SimulationOrder Of(Plan plan, SizePlan size, CheckHabit check, int trials, ulong seed)
    {
        var hands = HandsPrior.For(plan.Project.Fabric.Hands);
        var pieces = size.Pieces.Where(p => p.Pooled).Select(p =>
        {
            var planned = PlannedPiece.Of(plan, p);
            return new SimulatedPiece(p.Name, planned.RowStitches, planned.Turns, p.Start);
        });
        return new SimulationOrder(
            plan.Sequence.Ring.Sections, plan.Sequence.Ring.Colours, [.. pieces],
            new(hands.Spread, hands.Memory, DyeOf(plan.Project.Yarn, hands)), check, trials, seed);
    }

    /// <summary>Relative spread of the sections' lengths, as measured on the yarn, or else the prior's.</summary>
    private static double DyeOf(Core.Yarns.Yarn yarn, HandsPrior hands)
    {
        var measured = yarn.Sections.Where(s => s is { Length: not null, Spread: not null })
            .Select(s => s.Spread!.Value / s.Length!.Value).ToArray();
        return measured.Length == 0 ? hands.Dye : Math.Min(0.5, Math.Sqrt(measured.Average(m => m * m)));
    }
}

/// <summary>What wanders in a maker's work: the tension, as <see cref="HandModel"/> has it, and the dye of the yarn.</summary>
/// <param name="Spread">See <see cref="HandModel.Spread"/>.</param>
/// <param name="Memory">See <see cref="HandModel.Memory"/>.</param>
/// <param name="Dye">Standard deviation of a section's length over its mean.</param>
public sealed record SimulatedHands(double Spread, double Memory, double Dye);

/// <param name="Name">The piece's.</param>
/// <param name="RowStitches">Pooling units of each row.</param>
/// <param name="Turns">Micro-units of yarn after each row.</param>
/// <param name="Start">In pooling units.</param>
public sealed record SimulatedPiece(string Name, ImmutableArray<int> RowStitches, ImmutableArray<long> Turns, double Start);

/// <param name="Name">The piece's.</param>
/// <param name="Median">Share of stitches in planned colour that half of the trials reach.</param>
/// <param name="P05">Five trials in a hundred fall below it.</param>
/// <param name="P95">Five trials in a hundred lie above it.</param>
/// <param name="Good">Share of trials that reach <see cref="SimulationJob.GoodShare"/>.</param>
/// <param name="RowShares">Share in planned colour of each row over all trials, the first row first.</param>
/// <param name="Likely">The trial nearest to the median.</param>
public sealed record SimulatedTrials(
    string Name, double Median, double P05, double P95, double Good, ImmutableArray<double> RowShares, DrawnTrial Likely);

/// <summary>A trial that is drawn.</summary>
/// <param name="Share">Of its stitches, in planned colour.</param>
/// <param name="Trial">Which one, from 0.</param>
/// <param name="Worked">Its sections, one a pooling unit, in working order.</param>
public sealed record DrawnTrial(double Share, int Trial, byte[] Worked);

/// <summary>How much of the picture the hands keep, and what one likely piece looks like.</summary>
public static class SimulationJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "simulate";

    /// <summary>The share of stitches in planned colour from which a piece counts as good.</summary>
    public const double GoodShare = 0.8;

    /// <summary>The input of <c>Run</c>.</summary>
    public static string Write(SimulationOrder order) => JsonSerializer.Serialize(order, SimulationJson.Default.SimulationOrder);

    /// <summary>What <c>Run</c> returned, by piece.</summary>
    public static ImmutableArray<SimulatedTrials> Read(byte[] result) =>
        JsonSerializer.Deserialize(result, SimulationJson.Default.ImmutableArraySimulatedTrials);

    /// <summary>The job as a worker does it.</summary>
    public static byte[] Run(string input, IProgress<double> progress)
    {
        var order = JsonSerializer.Deserialize(input, SimulationJson.Default.SimulationOrder)!;
        return JsonSerializer.SerializeToUtf8Bytes(Run(order, progress), SimulationJson.Default.ImmutableArraySimulatedTrials);
    }

    public static ImmutableArray<SimulatedTrials> Run(SimulationOrder order, IProgress<double> progress)
    {
        var ring = ColourRing.FromUnits([.. order.Sections.Select(ColourRing.ToUnits)], order.Colours);
        var hands = HandModel.Create(order.Hands.Spread, order.Hands.Memory);
        var settings = new SimulationSettings
        {
            Check = order.Check,
            Trials = order.Trials,
            Seed = order.Seed,
            DyeVariation = order.Hands.Dye,
            GoodShare = GoodShare,
        };
        double all = order.Pieces.Sum(p => p.RowStitches.Sum()), done = 0;
        var trials = ImmutableArray.CreateBuilder<SimulatedTrials>();
        foreach (var piece in order.Pieces)
        {
            var planned = PlannedPiece.Create(ring, piece.RowStitches, piece.Turns, piece.Start);
            var result = TensionSimulation.Run(planned, hands, settings, new Part(progress, done / all, planned.Stitches / all));
            done += planned.Stitches;
            trials.Add(new SimulatedTrials(
                piece.Name, result.Median, result.P05, result.P95, result.Good, result.RowShares,
                new(result.Shares[result.Typical], result.Typical, TensionSimulation.Draw(planned, hands, settings, result.Typical))));
        }
        return trials.ToImmutable();
    }

    /// <summary>One piece's progress within all pieces'.</summary>
    private sealed class Part(IProgress<double> whole, double from, double share) : IProgress<double>
    {
        public void Report(double value) => whole.Report(from + share * value);
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true)]
[JsonSerializable(typeof(SimulationOrder))]
[JsonSerializable(typeof(ImmutableArray<SimulatedTrials>))]
internal sealed partial class SimulationJson : JsonSerializerContext;
