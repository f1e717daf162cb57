using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Pricing;
using Dyepath.Workspace.Making.Beside;

namespace Dyepath.Workspace.Pattern;

/// <param name="Pace">Missing where the log says too little.</param>
/// <param name="Why">Empty where there is a pace.</param>
public sealed record PaceReport(LogPace? Pace, string Why);

/// <summary>A maker's own pace from her log, in the second runtime.</summary>
public static class PaceJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "pace";

    /// <summary>The input of <see cref="Run"/>.</summary>
    public static string Order(MakingDocument making) => Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making));

    /// <summary>What <see cref="Run"/> returned.</summary>
    public static PaceReport Read(byte[] result) => JsonSerializer.Deserialize(result, PaceJson.Default.PaceReport)!;

    /// <summary>The job as the second runtime does it; an unreadable order leads to a report that says so.</summary>
    public static byte[] Run(string order, IProgress<double> progress) =>
        JsonSerializer.SerializeToUtf8Bytes(Of(MakingReader.Read(Encoding.UTF8.GetBytes(order)).Making), PaceJson.Default.PaceReport);

    private static PaceReport Of(MakingDocument? making)
    {
        if (making is null)
            return new PaceReport(null, "It cannot be read.");
        if (BesideView.TryOpen(making, out var why) is not { } view)
            return new PaceReport(null, why);
        return MakersPace.Of(RowTimes.Of(MakingState.Begin(view.Order, view.Own).Apply(making.Log))) is { } own
            ? new PaceReport(new LogPace(own.Pace.Low, own.Pace.Median, own.Pace.High, own.Rows, $"the log of size {making.Size}"), "")
            : new PaceReport(null, $"It has fewer than {MakersPace.FewestRows} rows that were told as they were finished.");
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PaceReport))]
internal sealed partial class PaceJson : JsonSerializerContext;
