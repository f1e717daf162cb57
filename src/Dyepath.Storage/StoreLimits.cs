namespace Dyepath.Storage;

/// <summary>How much a store takes; several hosts on one database that save at the same moment may pass it by a few texts.</summary>
/// <param name="MostBytes">Of all texts together: documents, their versions, handovers, logs and makings.</param>
public sealed record StoreLimits(int MostProjects = StoreLimits.UsualProjects, long MostBytes = StoreLimits.UsualBytes)
{
    public const int UsualProjects = 2000;

    public const long UsualBytes = 4_000_000_000;
}
