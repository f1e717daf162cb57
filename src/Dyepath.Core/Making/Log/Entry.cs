using Dyepath.Core.Limits;

namespace Dyepath.Core.Making.Log;

/// <summary>What a maker did.</summary>
public enum EntryKind
{
    /// <summary>Finished what is no row.</summary>
    Step,

    /// <summary>Finished the row; with <see cref="Entry.Phase"/> where she looked how it ended.</summary>
    Row,

    /// <summary>Finished the run of one colour.</summary>
    Run,

    /// <summary>Looked, without finishing anything.</summary>
    Read,

    /// <summary>Looked in mid-row, where run <see cref="Entry.To"/> of it, from 1, ended.</summary>
    Look,

    /// <summary>Is at the beginning of row <see cref="Entry.To"/> of this part: ripped back to it, or worked on to it untold.</summary>
    At,

    /// <summary>Goes on with part <see cref="Entry.To"/>.</summary>
    Part,

    /// <summary>Takes back the last that is not taken back.</summary>
    Back,

    /// <summary>Worked <see cref="Entry.To"/> stitches at the edge beyond the plan: −1, one skipped; 1, one added.</summary>
    Edge,

    /// <summary>Made the turning chain as advised: −1 tight, 1 loose.</summary>
    Turn,

    /// <summary>Changed the hook: −1 a size down, 1 a size up.</summary>
    Hook,

    /// <summary>Cut the yarn and joined it again where the plan has it.</summary>
    Join,

    /// <summary>Joined a new ball where the colours go on: its sequence may be longer or shorter.</summary>
    Ball,

    /// <summary>Met a knot in the yarn, or spliced it: the colours may begin anywhere after it.</summary>
    Knot,

    /// <summary>Laid the work down after <see cref="Entry.To"/> stitches of the row.</summary>
    Stop,
}

/// <summary>One line of a maker's log.</summary>
/// <param name="Kind">Decides what <paramref name="Phase"/> and <paramref name="To"/> mean, and whether they are needed.</param>
/// <param name="At">To the millisecond.</param>
/// <param name="Phase">
/// Phase error read, in whole stitches (in linen stitch: pairs); positive: colours come early. Within <see cref="Phases"/>.
/// </param>
/// <param name="To">A number from 1, or −1 or 1, as <see cref="EntryKind"/> says.</param>
/// <param name="Said">What she was told in answer, where it is known; in logs of version 1 it is not.</param>
public sealed record Entry(EntryKind Kind, DateTimeOffset At, int? Phase = null, int? To = null, Said? Said = null)
{
    /// <summary>Of <see cref="Phase"/>.</summary>
    public static CountBounds Phases { get; } = new(-1_000, 1_000, "stitches");

    /// <summary>Of <see cref="To"/>.</summary>
    public static CountBounds Numbers { get; } = new(-1, 10_000, "rows, parts or stitches");
}
