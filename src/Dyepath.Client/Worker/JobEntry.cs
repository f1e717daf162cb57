using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Worker;

namespace Dyepath.Client.Worker;

/// <summary>The side of the second runtime, as wwwroot/js/worker.js calls it.</summary>
public static partial class JobEntry
{
    /// <param name="engine">The page's <see cref="Engine.Id"/>.</param>
    [JSExport]
    internal static byte[] Run(string? engine, string job, string input) => engine == Engine.Id
        ? JobRunner.Run(job, input, new ToPage())
        : throw new InvalidOperationException(Engine.IsOther);

    [JSImport("progress", "dyepath/worker")]
    private static partial void Tell(double share);

    private sealed class ToPage : IProgress<double>
    {
        public void Report(double value) => Tell(value);
    }
}
