using Dyepath.Core.Limits;

namespace Dyepath.Core.Making.Log;

/// <summary>What she was told to do at once, besides how to work.</summary>
public enum SaidAct
{
    /// <summary>To make the turning chain tight.</summary>
    TightTurn,

    /// <summary>To make the turning chain loose.</summary>
    LooseTurn,

    /// <summary>To skip the edge stitch.</summary>
    Skip,

    /// <summary>To work one more into the edge.</summary>
    Add,

    /// <summary>To go down a hook size.</summary>
    HookDown,

    /// <summary>To go up a hook size.</summary>
    HookUp,

    /// <summary>To cut the yarn and join it again, <see cref="Said.Out"/> stitches further on.</summary>
    Join,

    /// <summary>To rip back to the beginning of row <see cref="Said.Rip"/>.</summary>
    Rip,
}

/// <summary>
/// What she was told in answer to an entry. Ways of working are grades: 0, her natural hands; ±1 a touch, ±2 a little, ±3 plainly,
/// ±4 much; negative is tighter.
/// </summary>
/// <param name="Hold">The grade to go on at, after <see cref="Work"/> where there is such.</param>
/// <param name="Work">The grade to begin with; missing where it is <see cref="Hold"/>.</param>
/// <param name="For">For so many stitches, up to a mark or the row's end; missing, with nothing to watch for.</param>
/// <param name="Look">After so many stitches she was asked to look again; missing where she was not.</param>
public sealed record Said(int Hold, int? Work = null, int? For = null, int? Look = null)
{
    /// <summary>Of <see cref="Hold"/> and <see cref="Work"/>.</summary>
    public static CountBounds Grades { get; } = new(-4, 4, "grades");

    /// <summary>Of <see cref="For"/>, <see cref="Look"/> and <see cref="Rip"/>.</summary>
    public static CountBounds Numbers { get; } = new(1, 10_000, "stitches or rows");

    /// <summary>Of <see cref="Out"/>.</summary>
    public static Bounds Outs { get; } = new(0, 10_000, "stitches");

    /// <summary>Missing where she was told how to work and no more.</summary>
    public SaidAct? Act { get; init; }

    /// <summary>The row, from 1, to whose beginning; missing where she was not told to rip.</summary>
    public int? Rip { get; init; }

    /// <summary>Stitches of yarn to leave out; missing where it was not to be cut.</summary>
    public double? Out { get; init; }
}
