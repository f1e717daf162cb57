namespace Dyepath.Core.Sizing.Counts;

/// <summary>What the grading program makes as small as it can.</summary>
public enum GradingCriterion
{
    /// <summary>The sum over sizes of weighted loss and penalty.</summary>
    Total,

    /// <summary>
    /// The largest loss plus penalty of any size, weights left out; among equals the smallest
    /// <see cref="Total"/>.
    /// </summary>
    WorstLoss,

    /// <summary>
    /// The largest |error| of any size, whatever loss and penalty; among equals the smallest <see cref="Total"/>.
    /// </summary>
    WorstError,
}

/// <summary>How penalties enter the total.</summary>
public enum PenaltyScale
{
    /// <summary>Each size adds weight × (loss + penalty).</summary>
    BySizeWeight,

    /// <summary>Each size adds weight × loss + penalty. Needs branch and bound where weights and penalties both vary.</summary>
    Unscaled,
}
