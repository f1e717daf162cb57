using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>How far the tapping has come.</summary>
public enum TapProgress
{
    /// <summary>The colours have not yet come round twice.</summary>
    NotRound,

    /// <summary>More stitches make the sequence sure.</summary>
    GoOn,

    /// <summary>The sequence is known well enough.</summary>
    Sure,

    /// <summary>No tapping that a maker would do makes it sure for such hands.</summary>
    NotByTapping,
}

/// <summary>What tapped stitches say of a yarn.</summary>
/// <param name="Progress">How far the tapping has come.</param>
/// <param name="Sections">Names of the sections in the order in which the yarn runs; empty until the colours have come round.</param>
/// <param name="Balls">
/// The counts of whole sequences, section by section in the order of <see cref="Sections"/>, as a yarn's <see cref="Yarn.Counted"/> takes them: one
/// entry for each stretch without a break.
/// </param>
/// <param name="Estimate">Stitches of each section and of the sequence; missing until a whole sequence was tapped beside a begun one.</param>
/// <param name="TimesRound">How often the sequence has come round whole.</param>
/// <param name="MoreStitches">Stitches still to tap; 0 unless <see cref="TapProgress.GoOn"/>.</param>
/// <param name="MoreRows">The same in rows as long as those tapped; 0 where rows were not marked.</param>
public sealed record TapReading(
    TapProgress Progress,
    ImmutableArray<string> Sections,
    ImmutableArray<CountedBall> Balls,
    SequenceEstimate? Estimate,
    int TimesRound,
    int MoreStitches,
    int MoreRows)
{
    /// <summary>What the taps show beside the sequence, in the order of the taps.</summary>
    public ImmutableArray<TapRemark> Remarks { get; init; } = [];

    /// <summary>What the maker is told now: whole sentences.</summary>
    public required string Words { get; init; }

    /// <summary>
    /// A yarn with the sections and counts that were tapped in place of its own, to be measured by <see cref="MeasuredYarn"/>; lengths along the
    /// yarn are no longer known.
    /// </summary>
    /// <param name="colour">The colour of a name, as a screen shows it.</param>
    /// <exception cref="InvalidOperationException">The colours have not come round.</exception>
    public Yarn Into(Yarn yarn, Func<string, Srgb> colour)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        ArgumentNullException.ThrowIfNull(colour);
        if (Sections.IsEmpty)
            throw new InvalidOperationException("The colours have not come round yet.");
        return yarn with
        {
            Sections = [.. Sections.Select(name => new YarnSection(name, colour(name)))],
            Counted = Balls,
            FromOtherEnd =
            false
        };
    }
}
