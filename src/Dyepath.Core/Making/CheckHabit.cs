namespace Dyepath.Core.Making;

/// <summary>When the maker compares the colours worked with the colours planned, and then corrects.</summary>
public enum CheckHabit
{
    /// <summary>Not at all: the colours fall where they fall.</summary>
    Never,

    /// <summary>At the end of every row or round.</summary>
    EveryRow,

    /// <summary>After the stitch in which a whole sequence, counted from the piece's first stitch, is planned to end.</summary>
    EverySequence,

    /// <summary>After the stitch in which a colour is planned to end.</summary>
    EverySection,
}
