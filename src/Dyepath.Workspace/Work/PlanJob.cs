using System.Text;
using Dyepath.Core.Projects;
using Dyepath.Core.Replays;

namespace Dyepath.Workspace.Work;

/// <summary>
/// The long part of working out a document, in the second runtime: what every search found. From that the page makes the same
/// plan again at once (docs/decisions/plan-in-the-worker.md).
/// </summary>
public static class PlanJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "plan";

    private const string Whole = "whole", Yarn = "yarn";

    /// <param name="whole">The document has no faults; else only its yarn is measured.</param>
    /// <param name="document">Photos may be missing: no plan depends on them.</param>
    public static string Order(bool whole, string document) => $"{(whole ? Whole : Yarn)}\n{document}";

    /// <returns>The decisions, as <see cref="Decisions.Replay"/> takes them.</returns>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        ArgumentNullException.ThrowIfNull(order);
        var line = order.IndexOf('\n', StringComparison.Ordinal);
        var text = order[(line + 1)..];
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(text));
        using var decisions = Decisions.Record();
        Outcome.WorkOut(
            order[..line] == Whole ? reading.Project : null, Outcome.YarnAlone(text, reading), decisions, CancellationToken.None);
        return decisions.ToArray();
    }
}
