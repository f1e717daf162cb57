using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Making.Order;

/// <summary>What is made in one go: a piece, the making up, or an edging.</summary>
/// <param name="Title">Such as <c>Front</c>, or <c>Sleeve, 2 of 2</c>.</param>
/// <param name="Steps">In the order of work.</param>
/// <param name="Rows">Rows or rounds among the steps.</param>
public sealed record MakingPart(Phrase Title, ImmutableArray<MakingStep> Steps, int Rows)
{
    /// <summary>The piece of the plan; missing in making up and edgings.</summary>
    public PiecePlan? Piece { get; init; }

    /// <summary>An edging that is worked back and forth.</summary>
    public bool InRows { get; init; }

    /// <summary>What is worked back and forth has rows; everything else, most edgings too, goes round.</summary>
    public bool InRounds => !InRows && Piece is not { Working: Working.Turned };

    /// <summary><c>round</c> or <c>row</c>.</summary>
    public string RowWord => InRounds ? "round" : "row";

    /// <summary>Its planned colours; missing where it is worked in one colour.</summary>
    public Fabric? Fabric { get; init; }

    /// <summary>Its planned yarn, row by row; missing as <see cref="Fabric"/> is.</summary>
    public PlannedPiece? Planned { get; init; }

    /// <summary>Index of the step that works a row, from 0.</summary>
    public int StepOf(int row)
    {
        for (var step = 0; step < Steps.Length; step++)
        {
            if (Steps[step] is RowStep found && found.Row == row)
                return step;
        }
        throw new ArgumentOutOfRangeException(nameof(row), row, $"There are {Rows} rows.");
    }
}
