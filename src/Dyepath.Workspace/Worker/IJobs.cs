namespace Dyepath.Workspace.Worker;

/// <summary>Long computing, away from what answers the hands.</summary>
public interface IJobs
{
    /// <summary>Opens the second runtime beforehand, so that the first job need not wait for it.</summary>
    Task WarmAsync();

    /// <summary>Runs a job of <see cref="JobRunner"/>.</summary>
    /// <param name="input">As the job reads it, usually JSON.</param>
    /// <param name="progress">Told the share that is done, in (0, 1].</param>
    /// <param name="assemblies">Assemblies that are fetched only when they are first needed, such as by this job.</param>
    /// <exception cref="NoWorkerException">There is no second runtime to be had.</exception>
    /// <exception cref="JobException">The job could not be done.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies = null);
}

/// <summary>A job that could not be done.</summary>
public class JobException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The browser, or whoever set it up, allows no second runtime.</summary>
public sealed class NoWorkerException(string message) : JobException(message);
