using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Garment;

/// <summary>The repertoire's drawings, made one after another off the page's thread and kept for each chart and size.</summary>
public sealed class RepertoireDrawings(IJobs jobs)
{
    private readonly ConcurrentDictionary<string, KindDrawing?> _made = new();

    /// <summary>
    /// Before the first one that is missing, so that a page that is only passed by, or where a field is being filled in, has
    /// the processor to itself.
    /// </summary>
    public TimeSpan Pause { get; init; }

    /// <returns>Null while there is none, and where the garment cannot be made in that size.</returns>
    public KindDrawing? Find(GarmentKind kind, ProjectDocument document, string? size) =>
        _made.GetValueOrDefault(Key(kind, document, size));

    /// <summary>Makes what is missing; where the browser has no second runtime, nothing, since the page would stand still.</summary>
    /// <param name="drawn">Told after each.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public async Task DrawAsync(ProjectDocument document, string? size, Action drawn, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(drawn);
        var missing = Repertoire.All.Where(k => !_made.ContainsKey(Key(k, document, size))).ToArray();
        if (missing.Length > 0)
            await Task.Delay(Pause, cancel);
        foreach (var kind in missing)
        {
            var key = Key(kind, document, size);
            var order = RepertoireJob.Order(kind, document.Node("sizes"), size, Units(document));
            try
            {
                _made[key] = RepertoireJob.Read(await jobs.RunAsync(RepertoireJob.Name, order, _ => { }, cancel));
            }
            catch (NoWorkerException)
            {
                return;
            }
            catch (JobException)
            {
                // One that cannot be drawn keeps its pictogram.
                _made[key] = null;
            }
            drawn();
        }
    }

    /// <summary>The document's sizes, own ones or the chart's, as it writes them; missing, each garment has a chart of its own.</summary>
    public static string? Chart(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return (document.Node("sizes.own") ?? document.Node("sizes.chart"))?.ToJsonString();
    }

    /// <summary>What is not made to the body is the same in every chart.</summary>
    private static string Key(GarmentKind kind, ProjectDocument document, string? size) =>
        $"{kind.Name} {Units(document)?.ToJsonString()} {(kind.IsToBody ? $"{size} {Chart(document) ?? JsonValue.Create(kind.Chart).ToJsonString()}" : "")}";

    private static JsonNode? Units(ProjectDocument document) => document.Node("edition") is JsonObject edition ? edition["units"] : null;
}
