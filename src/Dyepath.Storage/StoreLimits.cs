namespace Dyepath.Storage;

/// <summary>How much a store takes; several hosts on one database that save at the same moment may pass it by a few texts.</summary>
/// <param name="MostProjects">On the shelf and in the archive together.</param>
/// <param name="MostBytes">Of all texts together: documents, their versions, handovers, logs and makings.</param>
public sealed record StoreLimits(int MostProjects = StoreLimits.UsualProjects, long MostBytes = StoreLimits.UsualBytes)
{
    /// <summary>Of <see cref="MostProjects"/>.</summary>
    public const int UsualProjects = 2000;

    /// <summary>Of <see cref="MostBytes"/>: 4 GB.</summary>
    public const long UsualBytes = 4_000_000_000;
}
