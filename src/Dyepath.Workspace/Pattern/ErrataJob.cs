using System.Text;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;

namespace Dyepath.Workspace.Pattern;

/// <summary>Compares an earlier version of a document with the plan in view, in the second runtime.</summary>
public static class ErrataJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "errata";

    private const byte Compared = 1, NotCompared = 0;

    /// <summary>The earlier document on a line, then the plan.</summary>
    /// <param name="earlier">The document as it was kept.</param>
    /// <inheritdoc cref="PlanAnew.Write"/>
    public static string Order(string earlier, Plan plan, byte[]? decisions) =>
        $"{Convert.ToBase64String(Encoding.UTF8.GetBytes(earlier))}\n{PlanAnew.Write(plan, decisions)}";

    /// <summary>The errata, or why there are none: a sentence.</summary>
    public static (bool IsCompared, string Text) Read(byte[] made)
    {
        ArgumentNullException.ThrowIfNull(made);
        return (made[0] == Compared, Encoding.UTF8.GetString(made.AsSpan(1)));
    }

    /// <summary>What the job is at.</summary>
    /// <param name="done">As <see cref="Run"/> reports it.</param>
    public static string Doing(double done) => done < 0.5 ? "Working the earlier version out…" : "Comparing the two, line by line…";

    /// <exception cref="InvalidOperationException">The document in view has no plan.</exception>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(progress);
        var line = order.IndexOf('\n', StringComparison.Ordinal);
        var now = PlanAnew.Read(order[(line + 1)..]);
        progress.Report(0.1);
        var reading = ProjectReader.Read(Convert.FromBase64String(order[..line]));
        if (reading.Project is not { } project)
            return Made(NotCompared, $"The earlier version has something to mend at {reading.Faults[0].Path}, so there is no pattern to compare with.");
        var result = GarmentPlanner.Plan(project);
        if (result.Plan is not { } was)
            return Made(NotCompared, $"The earlier version had no pattern: {result.Reasons[0].Text}");
        progress.Report(0.5);
        return Made(Compared, Errata.Of(was, now).Text());
    }

    private static byte[] Made(byte how, string text) => [how, .. Encoding.UTF8.GetBytes(text)];
}
