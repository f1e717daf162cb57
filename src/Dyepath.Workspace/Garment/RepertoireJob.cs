using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Garment;

/// <summary>A garment as it is begun, as worn in one size: lines alone, since the yarn that it is planned in is nobody's.</summary>
/// <param name="Front">Seen from the front.</param>
/// <param name="Behind">Missing where there is nothing else to see.</param>
/// <param name="OnFigure">It hangs on a figure of the size; else it lies by itself.</param>
/// <param name="Measures">Finished, such as <c>104 cm round and 60 cm long</c>.</param>
public sealed record KindDrawing(KindView Front, KindView? Behind, bool OnFigure, string Measures);

/// <summary>Centimetres; y grows downwards.</summary>
/// <param name="Left">Left edge of what is drawn.</param>
/// <param name="Top">Upper edge of what is drawn.</param>
/// <param name="Width">Of what is drawn.</param>
/// <param name="Height">Of what is drawn.</param>
/// <param name="Lines">From the back to the front.</param>
public sealed record KindView(double Left, double Top, double Width, double Height, ImmutableArray<KindLine> Lines)
{
    internal static KindView Of(GarmentDrawing drawing)
    {
        var points = drawing.Outlines.SelectMany(o => o.Points).ToArray();
        var (left, top) = (points.Min(p => p.X), points.Min(p => p.Y));
        return new KindView(
            left, top, points.Max(p => p.X) - left, points.Max(p => p.Y) - top,
            [.. drawing.Outlines.Select(o => new KindLine(o.Kind, o.Path))]);
    }
}

/// <param name="Kind">As <see cref="GarmentLine.Kind"/>.</param>
/// <param name="Path">As <see cref="GarmentLine.Path"/>.</param>
public sealed record KindLine(string Kind, string Path);

/// <summary>Plans and draws one garment of the repertoire as it is begun, in the second runtime.</summary>
public static class RepertoireJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "repertoire";

    /// <param name="sizes">The document's sizes; where it names no chart and has no own ones, the garment's own chart.</param>
    /// <param name="size">The only one that is planned; missing, the middle one of the chart is drawn.</param>
    /// <param name="units">As the document has them; missing, as it is begun.</param>
    public static string Order(GarmentKind kind, JsonNode? sizes, string? size, JsonNode? units = null)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Of(kind)))!;
        if (kind.IsToBody)
        {
            // Where the document has a chart, nothing is drawn in another one.
            document.Set("sizes", sizes is JsonObject chosen && (chosen["chart"] ?? chosen["own"]) is not null
                ? Only(chosen, size)
                : new JsonObject { ["chart"] = kind.Chart });
        }
        if (units is not null)
            document.Set("edition", new JsonObject { ["units"] = units.DeepClone() });
        return document.Text;
    }

    /// <returns>Null where it cannot be made in that size, such as in a chart that lacks one of its measures.</returns>
    public static KindDrawing? Read(byte[] result) => JsonSerializer.Deserialize(result, KindJson.Default.KindDrawing);

    /// <summary>The job as the second runtime does it.</summary>
    public static byte[] Run(string order, IProgress<double> progress) =>
        JsonSerializer.SerializeToUtf8Bytes(Draw(order), KindJson.Default.KindDrawing!);

    private static KindDrawing? Draw(string order)
    {
        if (ProjectReader.Read(Encoding.UTF8.GetBytes(order)).Project is not { } project
            || GarmentPlanner.Plan(project).Plan is not { } plan)
            return null;
        var size = plan.Sizes[plan.Sizes.Length / 2];
        var front = WornGarment.Front(plan, size);
        var behind = WornGarment.Behind(plan, size);
        return new KindDrawing(
            KindView.Of(front), behind is null ? null : KindView.Of(behind), front.IsOnFigure, GarmentSentence.Measures(plan, size));
    }

    /// <summary>The same chart with this size alone, and nothing that is fixed for another garment.</summary>
    private static JsonObject Only(JsonObject sizes, string? size)
    {
        var only = new JsonObject();
        if (sizes["own"] is JsonArray own)
            only["own"] = new JsonArray([.. own.Where(o => size is null || o?["name"]?.ToString() == size).Select(o => o!.DeepClone())]);
        else
        {
            only["chart"] = sizes["chart"]?.DeepClone();
            if (size is not null)
                only["names"] = new JsonArray(size);
        }
        if (size is not null)
            only["base"] = size;
        return only;
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(KindDrawing))]
internal sealed partial class KindJson : JsonSerializerContext;
