using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Making.Work;

/// <summary>How far one part has come.</summary>
/// <param name="Step">Index of the step at hand; the number of steps when all are done.</param>
/// <param name="Run">Index of the run at hand within its row.</param>
/// <param name="Drift">Missing where nothing is worked in the variegated yarn.</param>
public sealed record PartProgress(int Step, int Run, DriftTrack? Drift)
{
    /// <summary>Stitches of the row that were worked when she laid it down; 0 where she did not, or went on since.</summary>
    public int Stopped { get; init; }
}
