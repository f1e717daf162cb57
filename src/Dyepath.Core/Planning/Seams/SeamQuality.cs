namespace Dyepath.Core.Planning;

/// <summary>How the colours of two pieces meet, as a maker would put it.</summary>
public enum SeamQuality
{
    /// <summary>They go on: a jump of one pooling unit at most is no more than a turn or a tight stitch makes.</summary>
    Good,

    /// <summary>The eye finds the seam, but the motif is led up to it.</summary>
    Visible,

    /// <summary>No better than pieces begun anywhere.</summary>
    ByChance,
}

/// <summary>Words and limits of <see cref="SeamQuality"/> (derived in docs/seams.md).</summary>
public static class SeamQualities
{
    /// <summary>In pooling units; common practice, no source.</summary>
    public const double GoodJump = 1;

    /// <summary>
    /// The nearer of two extensions jumps by a sixth of the period where a piece begins anywhere: two thirds of a quarter.
    /// </summary>
    public const double ChanceShare = 2.0 / 3;

    /// <param name="jump">Mean jump in pooling units.</param>
    /// <param name="chance">A quarter of the period in pooling units; 0 for one colour, which meets itself everywhere.</param>
    public static SeamQuality Of(double jump, double chance) =>
        chance > 0 && jump >= ChanceShare * chance ? SeamQuality.ByChance : jump <= GoodJump ? SeamQuality.Good : SeamQuality.Visible;

    /// <summary>
    /// It counts as good, and yet most of its stitches lie off their places, by a stitch at most: not what an eye would call good.
    /// </summary>
    public static bool IsClose(this SeamPlan seam) => seam is { Quality: SeamQuality.Good, Match: < 0.5 };

    /// <summary>In a maker's words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">None of the named qualities.</exception>
    public static string Words(this SeamQuality quality) => quality switch
    {
        SeamQuality.Good => "good",
        SeamQuality.Visible => "visible",
        SeamQuality.ByChance => "by chance",
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "No words for this quality."),
    };
}
