using Dyepath.Core.Findings;

namespace Dyepath.Core.Measuring;

/// <summary>What the measurements show beyond the numbers asked for.</summary>
public enum FindingKind
{
    /// <summary>Neither counts nor lengths: the sequence cannot be known.</summary>
    NothingMeasured,

    /// <summary>The sequence comes to more stitches than can be planned.</summary>
    SequenceTooLong,

    /// <summary>So little of a colour that no stitch shows it.</summary>
    SectionTooShort,

    /// <summary>More yarn in a stitch, or less, than any stitch takes.</summary>
    YarnPerStitchBeyondBelief,

    /// <summary>A colour's count seems to be missing from the record.</summary>
    MissedSection,

    /// <summary>A colour seems to be recorded twice.</summary>
    DoubledSection,

    /// <summary>A row has too few or too many counts to be one repeat.</summary>
    RepeatOfOtherShape,

    /// <summary>A repeat takes more or fewer stitches than the others, beyond what such hands and dye explain.</summary>
    OddRepeat,

    /// <summary>The sequence as listed holds a shorter one, several times over.</summary>
    ShorterPeriod,

    /// <summary>The sequence reads the same from either end.</summary>
    ThereAndBack,

    /// <summary>One ball's sequence is not the others'.</summary>
    BallDisagrees,

    /// <summary>A ball's later repeats are not its earlier ones.</summary>
    BallDrifts,

    /// <summary>Counted stitches and measured lengths give a section different shares of the sequence.</summary>
    CountsAndLengthsDisagree,

    /// <summary>Two ways to the yarn per stitch contradict each other.</summary>
    YarnPerStitchDisagrees,

    /// <summary>Yarn per stitch was not measured and is only supposed.</summary>
    YarnPerStitchSupposed,

    /// <summary>The counts vary more than the hands that were supposed.</summary>
    HandsUnlikePrior,
}

/// <summary>Something that was found in what was measured.</summary>
/// <param name="Kind">Decides the finding's level.</param>
/// <param name="Place">In the project document, for example <c>yarn.counted[0].repeats[3]</c>.</param>
/// <param name="Text">For the maker, with what to do next.</param>
public sealed record MeasuringFinding(FindingKind Kind, string Place, string Text) : Finding(LevelOf(Kind), Place, Text)
{
    private static FindingLevel LevelOf(FindingKind kind) =>
        kind is FindingKind.NothingMeasured or FindingKind.SequenceTooLong or FindingKind.SectionTooShort
            or FindingKind.YarnPerStitchBeyondBelief
                ? FindingLevel.Fault
                : FindingLevel.Warning;
}
