namespace Dyepath.Core.Measuring.Taps;

/// <summary>What the taps show beside the sequence.</summary>
public enum TapRemarkKind
{
    /// <summary>One colour once has far more or fewer taps than at other times.</summary>
    Miscount,

    /// <summary>A colour was passed over once.</summary>
    SkippedSection,

    /// <summary>A colour once has twice its taps.</summary>
    DoubledSection,

    /// <summary>The sequence breaks off and goes on at another place.</summary>
    Knot,

    /// <summary>From here on the colours come in the other order: the ball was joined from its other end.</summary>
    ReversedBall,

    /// <summary>The colours run there and back.</summary>
    ThereAndBack,

    /// <summary>The colours alone come again sooner than their lengths do.</summary>
    LongerPeriod,

    /// <summary>What was listed holds the sequence twice or more.</summary>
    ShorterPeriod,

    /// <summary>The sequence takes more or fewer stitches later on.</summary>
    Drift,

    /// <summary>The taps show other sections than the list has.</summary>
    OtherSequence,

    /// <summary>A row has more or fewer taps than all others.</summary>
    RowOfOtherLength,
}

/// <summary>One thing that the taps show.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Tap">The tap that it begins with, from 1; 0 where it concerns them all.</param>
/// <param name="Row">The row of that tap, from 1; 0 where rows were not marked, or all are concerned.</param>
/// <param name="Text">For the maker, with what to do.</param>
public sealed record TapRemark(TapRemarkKind Kind, int Tap, int Row, string Text);
