using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions.Reading;
using Dyepath.Core.Projects;

namespace Dyepath.Client.Pattern;

/// <summary>The technical check in the second runtime, which plans the project anew: the same document gives the same plan.</summary>
public static class CheckJob
{
    public const string Name = "check";

    public static string Order(Plan plan) => ProjectWriter.Write(plan.Project);

    public static ImmutableArray<Finding> Read(byte[] result) => JsonSerializer.Deserialize(result, CheckJson.Default.ImmutableArrayFinding);

    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        var plan = (ProjectReader.Read(Encoding.UTF8.GetBytes(order)).Project is { } project ? GarmentPlanner.Plan(project).Plan : null)
            ?? throw new InvalidOperationException("A document without a plan cannot be checked.");
        var steps = PatternCheck.Steps(plan);
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
