using System.Runtime.InteropServices.JavaScript;

namespace Dyepath.Client.Worker;

/// <summary>
/// The side of the second runtime: does a job by its name. To add a job, give it a name here and call it with
/// <see cref="JobsOnPage.RunOrHereAsync"/>.
/// </summary>
public static partial class JobRunner
{
    private static readonly Dictionary<string, Func<string, IProgress<double>, byte[]>> Jobs = new()
    {
        [Work.PlanJob.Name] = Work.PlanJob.Run,
        [Pattern.PageJob.Name] = Pattern.PageJob.Run,
        [Fabric.SimulationJob.Name] = Fabric.SimulationJob.Run,
        [Pattern.PdfJob.Name] = Pattern.PdfJob.Run,
        [Pattern.CheckJob.Name] = Pattern.CheckJob.Run,
        [Making.Handing.LogJob.Name] = Making.Handing.LogJob.Run,
        [Making.Handing.HandedJob.Name] = Making.Handing.HandedJob.Run,
        [Making.Beside.HandsJob.Name] = Making.Beside.HandsJob.Run,
        [Making.Beside.WidthJob.Name] = Making.Beside.WidthJob.Run,
    };

    /// <exception cref="ArgumentException">No such job.</exception>
    public static byte[] Run(string job, string input, IProgress<double> progress) => Jobs.TryGetValue(job, out var work)
        ? work(input, progress)
        : throw new ArgumentException($"There is no job {job}, only {string.Join(", ", Jobs.Keys)}.", nameof(job));

    /// <param name="engine">The page's <see cref="Engine.Id"/>.</param>
    [JSExport]
    internal static byte[] Run(string? engine, string job, string input) => engine == Engine.Id
        ? Run(job, input, new ToPage())
        : throw new InvalidOperationException(Engine.IsOther);

    [JSImport("progress", "dyepath/worker")]
    private static partial void Tell(double share);

    private sealed class ToPage : IProgress<double>
    {
        public void Report(double value) => Tell(value);
    }
}
