using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Measuring;
using Dyepath.Core.Swatches;

namespace Dyepath.Workspace.Making.Beside;

/// <summary>A figure with its 95 % interval.</summary>
/// <param name="Value">The figure itself.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
public readonly record struct FigureRange(double Value, double Low, double High)
{
    /// <summary>The same figure as JSON can hold it.</summary>
    public static FigureRange Of(Figure figure) => new(figure.Value, figure.Low, figure.High);
}

/// <param name="Words">What the log says of these hands; also where there are too few readings for figures.</param>
/// <param name="YarnCentimetres">Yarn in a stitch, or in linen stitch in a pair.</param>
/// <param name="PlannedCentimetres">The same as planned.</param>
/// <param name="Spread">See <see cref="HandModel.Spread"/>.</param>
/// <param name="Memory">See <see cref="HandModel.Memory"/>.</param>
/// <param name="Readings">How many the figures rest on.</param>
public sealed record HandsReport(
    string Words, FigureRange? YarnCentimetres, double PlannedCentimetres, FigureRange? Spread, FigureRange? Memory, int Readings);

/// <param name="Words">Whether these hands hold this width, and what would.</param>
/// <param name="Holds">They hold it as it is.</param>
public sealed record WidthReport(string Words, bool Holds);

/// <param name="Making">The document.</param>
/// <param name="Sections">She reads where every colour ends, not only at a row's end.</param>
public sealed record HandsOrder(string Making, bool Sections);

/// <summary>The maker's own figures from her log, in the second runtime.</summary>
public static class HandsJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "hands";

    /// <summary>The input of <see cref="Run"/>.</summary>
    public static string Order(MakingDocument making, bool sections = false) =>
        JsonSerializer.Serialize(
            new HandsOrder(Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making)), sections), HandsJson.Default.HandsOrder);

    /// <summary>What <see cref="Run"/> returned.</summary>
    public static HandsReport Read(byte[] result) => JsonSerializer.Deserialize(result, HandsJson.Default.HandsReport)!;

    /// <summary>The job as the second runtime does it.</summary>
    /// <exception cref="ArgumentException">The order holds no making, or one that cannot be laid out.</exception>
    public static byte[] Run(string input, IProgress<double> progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        var (state, _) = Open(input);
        progress.Report(0.1);
        var fit = MakerFit.Of(HandsLog.Of(state));
        var planned = state.Order.Plan.Sequence.YarnPerUnit.Centimetres;
        var told = new HandsReport(
            DriftWords.Say(fit),
            fit is null ? null : new FigureRange(
                planned * (1 + fit.Bias.Value), planned * (1 + fit.Bias.Low), planned * (1 + fit.Bias.High)),
            planned, fit is null ? null : FigureRange.Of(fit.Spread), fit is null ? null : FigureRange.Of(fit.Memory), fit?.Readings ?? 0);
        return JsonSerializer.SerializeToUtf8Bytes(told, HandsJson.Default.HandsReport);
    }

    /// <exception cref="ArgumentException">No making, or one that cannot be laid out.</exception>
    internal static (MakingState State, bool Sections) Open(string input)
    {
        var order = JsonSerializer.Deserialize(input, HandsJson.Default.HandsOrder)!;
        if (MakingReader.Read(Encoding.UTF8.GetBytes(order.Making)).Making is not { } making
            || BesideView.TryOpen(making, out var why) is not { } view)
            throw new ArgumentException("This is no piece that can be laid out.", nameof(input));
        return (MakingState.Begin(view.Order, view.Own).Apply(making.Log), order.Sections);
    }
}

/// <summary>Whether the maker's hands hold the width at hand, in the second runtime.</summary>
public static class WidthJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "width";

    /// <summary>What <see cref="Run"/> returned.</summary>
    public static WidthReport Read(byte[] result) => JsonSerializer.Deserialize(result, HandsJson.Default.WidthReport)!;

    /// <summary>The job as the second runtime does it; its input is that of <see cref="HandsJob.Order"/>.</summary>
    public static byte[] Run(string input, IProgress<double> progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        var (state, sections) = HandsJob.Open(input);
        if (state.Drift is not { } drift)
            throw new ArgumentException("This part is worked in one colour.", nameof(input));
        progress.Report(0.1);
        var world = MakerWorld.Of(drift.Filter, MakerRemedies.LargestCorrection, HandsPrior.Default.Dye);
        var work = HoldableWork.For(drift.Piece, world, sections ? CheckHabit.EverySection : CheckHabit.EveryRow);
        return JsonSerializer.SerializeToUtf8Bytes(new WidthReport(DriftWords.Say(work), work.Holds), HandsJson.Default.WidthReport);
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(HandsOrder))]
[JsonSerializable(typeof(HandsReport))]
[JsonSerializable(typeof(WidthReport))]
internal sealed partial class HandsJson : JsonSerializerContext;
