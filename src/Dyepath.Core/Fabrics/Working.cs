namespace Dyepath.Core.Fabrics;

/// <summary>How rows follow each other.</summary>
public enum Working
{
    /// <summary>Back and forth, turning at each row's end.</summary>
    Turned,

    /// <summary>Joined rounds, all worked the same way round.</summary>
    Rounds,

    /// <summary>Joined rounds, turned at each join.</summary>
    RoundsTurned,

    /// <summary>One continuous round without joins.</summary>
    Spiral,
}
