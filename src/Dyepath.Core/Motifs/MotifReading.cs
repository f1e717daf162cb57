using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Motifs;

/// <summary>Why a motif may not show as its class promises.</summary>
public enum MotifFinding
{
    /// <summary>The ring has one colour, or colours without contrast.</summary>
    OneColour,

    /// <summary>The row is shorter than the visible period.</summary>
    TooNarrow,

    /// <summary>The piece has fewer rows than a line takes to travel one visible period.</summary>
    TooShort,

    /// <summary>
    /// Joined and turned: the round's two ends lie over a quarter of the visible period apart along the yarn, as half
    /// repeats do, so that the lines do not meet at the join.
    /// </summary>
    JumpsAtJoin,

    /// <summary>Stitch counts change along the piece; the reading is of the class that most rows have.</summary>
    Uneven,
}

/// <summary>What a person sees in a piece.</summary>
/// <param name="Kind">By the thresholds of <see cref="MotifOptions"/>.</param>
/// <param name="Lean">Of the whole period, before any sideways travel; null for one colour, or where counts change.</param>
/// <param name="PeriodUnits">P; null for one colour.</param>
/// <param name="VisiblePeriodUnits">P/m for the wave m that best survives the blur along the row.</param>
/// <param name="VisibleLean">Units per row modulo the visible period, sideways travel included, positive as a positive lean.</param>
/// <param name="DiamondWidth">The visible period; null for one colour.</param>
/// <param name="DiamondHeight">Rows in which a line travels one visible period; null where it does not lean.</param>
public sealed record MotifReading(
    MotifKind Kind,
    Lean? Lean,
    double? PeriodUnits,
    double? VisiblePeriodUnits,
    double? VisibleLean,
    Length? DiamondWidth,
    Length? DiamondHeight)
{
    /// <summary>Contrast that survives the blur over contrast before, 0 to 1.</summary>
    public required double Clarity { get; init; }

    /// <summary>
    /// Clarity over the best that this ring reaches in this way of working, 0 to 1; 0 where the blur leaves nothing of any lean.
    /// </summary>
    public required double RelativeClarity { get; init; }

    /// <summary>Why the motif may not show; empty where nothing speaks against it.</summary>
    public required ImmutableArray<MotifFinding> Findings { get; init; }
}
