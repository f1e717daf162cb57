using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Edgings;

/// <summary>A border worked along an edge of the finished fabric.</summary>
/// <param name="Id">How the project document names it.</param>
/// <param name="Multiple">Stitches of one repeat; at least 1.</param>
/// <param name="Plus">Stitches beyond whole repeats where the edge is not closed into a round; 0 or more.</param>
/// <param name="Rounds">Rounds unless the pattern says otherwise, the last one included.</param>
/// <param name="RoundDepth">Depth of a round before the last one, in row heights of single crochet.</param>
/// <param name="LastDepth">Depth of the last round, in row heights of single crochet.</param>
/// <param name="RoundYarn">Yarn of a round before the last one, per stitch picked up, in single crochet.</param>
/// <param name="LastYarn">Yarn of the last round, per stitch picked up, in single crochet.</param>
/// <param name="Draw">Stitches picked up per stitch of a plain edge; under 1 the edging draws the edge in.</param>
/// <param name="Loops">
/// It leaves loops or fringes that a small child's finger or a catch can hang on; such edgings, like cords and ties, stay off the
/// neck of children's garments.
/// </param>
/// <param name="Steps">Worked over the stitches picked up.</param>
public sealed record Edging(
    string Id,
    Phrase Name,
    int Multiple,
    int Plus,
    int Rounds,
    double RoundDepth,
    double LastDepth,
    double RoundYarn,
    double LastYarn,
    double Draw,
    bool Loops,
    ImmutableArray<Instruction> Steps,
    SymbolChart Chart)
{
    /// <summary>Rounds that an edging may have.</summary>
    public static CountBounds RoundCounts { get; } = new(1, 40, "rounds");

    /// <summary>What the edging adds to the edge.</summary>
    /// <param name="rounds">1 to 40.</param>
    /// <param name="rowHeight">Height of a single crochet row.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rounds outside 1 to 40.</exception>
    public Length Depth(int rounds, Length rowHeight) =>
        rowHeight * ((RoundCounts.Check(rounds) - 1) * RoundDepth + LastDepth);

    /// <summary>Yarn over <paramref name="pickUp"/> stitches, in single crochet stitches of yarn; picking up is the first round.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Rounds outside 1 to 40.</exception>
    public double YarnInSingleCrochet(int pickUp, int rounds) =>
        pickUp * ((RoundCounts.Check(rounds) - 1) * RoundYarn + LastYarn);

    /// <summary>Whether it may go there: an edging with loops stays off the neck of children's garments.</summary>
    public bool AllowedAt(EdgingPlace place, bool children) => !(Loops && children && place == EdgingPlace.Neck);
}
