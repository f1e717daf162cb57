namespace Dyepath.Core.Planning;

/// <summary>How a stitch of a piece as worn lies before the eye; without a flag, the stitch's front, worked from right to left.</summary>
[Flags]
public enum StitchForm
{
    /// <summary>Its front, as it lies before a right-handed maker who works it.</summary>
    Front = 0,

    /// <summary>Its back, so that its row runs from left to right as it is seen.</summary>
    Back = 1,

    /// <summary>The chain of a pair of linen stitch.</summary>
    Chain = 2,

    /// <summary>The turning chain that stands for the row's first stitch.</summary>
    TurningChain = 4,

    /// <summary>Where its yarn changes colour, the other colour comes first; else it comes last.</summary>
    OtherFirst = 8,
}
