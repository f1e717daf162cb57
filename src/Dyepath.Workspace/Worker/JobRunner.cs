namespace Dyepath.Workspace.Worker;

/// <summary>
/// Does a job by its name, usually in the second runtime. To add a job, give it a name here and call it with
/// <see cref="JobsOnPage.RunOrHereAsync"/>.
/// </summary>
public static class JobRunner
{
    private static readonly Dictionary<string, Func<string, IProgress<double>, byte[]>> Jobs = new()
    {
        [Work.PlanJob.Name] = Work.PlanJob.Run,
        [Garment.RepertoireJob.Name] = Garment.RepertoireJob.Run,
        [Pattern.PageJob.Name] = Pattern.PageJob.Run,
        [Fabric.SimulationJob.Name] = Fabric.SimulationJob.Run,
        [Pattern.PdfJob.Name] = Pattern.PdfJob.Run,
        [Pattern.CheckJob.Name] = Pattern.CheckJob.Run,
        [Pattern.ErrataJob.Name] = Pattern.ErrataJob.Run,
        [Pattern.PaceJob.Name] = Pattern.PaceJob.Run,
        [Making.Handing.LogJob.Name] = Making.Handing.LogJob.Run,
        [Making.Handing.HandedJob.Name] = Making.Handing.HandedJob.Run,
        [Making.Beside.HandsJob.Name] = Making.Beside.HandsJob.Run,
        [Making.Beside.WidthJob.Name] = Making.Beside.WidthJob.Run,
    };

    /// <exception cref="ArgumentException">No such job.</exception>
    public static byte[] Run(string job, string input, IProgress<double> progress) => Jobs.TryGetValue(job, out var work)
        ? work(input, progress)
        : throw new ArgumentException($"There is no job {job}, only {string.Join(", ", Jobs.Keys)}.", nameof(job));
}
