using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Reading;

namespace Dyepath.Workspace.Pattern;

/// <summary>The technical check in the second runtime.</summary>
public static class CheckJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "check";

    /// <summary>The input of <see cref="Run"/>.</summary>
    public static string Order(Plan plan, byte[]? decisions) => PlanAnew.Write(plan, decisions);

    /// <summary>What <see cref="Run"/> returned; empty where nothing was found.</summary>
    public static ImmutableArray<Finding> Read(byte[] result) =>
        JsonSerializer.Deserialize(result, CheckJson.Default.ImmutableArrayFinding);

    /// <summary>What the check is at.</summary>
    /// <param name="done">As <see cref="Run"/> reports it; null before that.</param>
    public static string Doing(double? done) => done switch
    {
        null => "Planning the design once more, to be checked…",
        0 => "Working every number out by the second route…",
        _ => "Reading the written pattern back…",
    };

    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        var steps = PatternCheck.Steps(PlanAnew.Read(order));
        progress.Report(0);
        var found = ImmutableArray.CreateBuilder<Finding>();
        for (var i = 0; i < steps.Length; i++)
        {
            found.AddRange(steps[i]());
            progress.Report((i + 1.0) / steps.Length);
        }
        ImmutableArray<Finding> each = [.. found.DistinctBy(f => (f.Place, f.Text))];
        return JsonSerializer.SerializeToUtf8Bytes(each, CheckJson.Default.ImmutableArrayFinding);
    }
}

[JsonSerializable(typeof(ImmutableArray<Finding>))]
internal sealed partial class CheckJson : JsonSerializerContext;
