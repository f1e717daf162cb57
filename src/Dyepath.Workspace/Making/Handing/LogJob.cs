using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making.Log;

namespace Dyepath.Workspace.Making.Handing;

/// <param name="Summary">Missing where the piece cannot be laid out.</param>
/// <param name="Why">Empty where there is a summary.</param>
public sealed record LogReport(LogSummary? Summary, string Why);

/// <summary>A tester's log in a few figures, in the second runtime.</summary>
public static class LogJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "log";

    /// <summary>The input of <see cref="Run"/>.</summary>
    public static string Order(MakingDocument making) => Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making));

    /// <summary>What <see cref="Run"/> returned.</summary>
    public static LogReport Read(byte[] result) => JsonSerializer.Deserialize(result, HandingJson.Default.LogReport)!;

    /// <summary>The job as the second runtime does it; an unreadable order leads to a report that says so.</summary>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        var why = "It cannot be read.";
        var summary = MakingReader.Read(Encoding.UTF8.GetBytes(order)).Making is { } making ? LogSummary.TryOf(making, out why) : null;
        return JsonSerializer.SerializeToUtf8Bytes(new LogReport(summary, why), HandingJson.Default.LogReport);
    }
}

/// <summary>What a maker is told of a piece before she begins it, in the second runtime.</summary>
public static class HandedJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "handed";

    /// <returns>Null where the text is no piece that can be made in its size.</returns>
    public static HandedWords? Read(byte[] result) => JsonSerializer.Deserialize(result, HandingJson.Default.HandedWords);

    /// <param name="making">A making document.</param>
    public static byte[] Run(string making, IProgress<double> progress) =>
        JsonSerializer.SerializeToUtf8Bytes(HandedPiece.TryOf(making)?.Words, HandingJson.Default.HandedWords!);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(LogReport))]
[JsonSerializable(typeof(HandedWords))]
internal sealed partial class HandingJson : JsonSerializerContext;
