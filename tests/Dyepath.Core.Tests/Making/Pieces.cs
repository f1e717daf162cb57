using System.Collections.Immutable;
using Dyepath.Core.Making;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Making;

/// <summary>Pieces straight from section lengths.</summary>
internal static class Pieces
{
    public static PlannedPiece Of(
        ImmutableArray<double> sections, ImmutableArray<int> colours, ImmutableArray<int> rowStitches, double turnCost = 0,
        double start = 0) =>
        PlannedPiece.Create(
            colours.IsEmpty ? ColourRing.FromUnits(sections) : ColourRing.FromUnits(sections, colours), rowStitches, turnCost, start);

    public static PlannedPiece Of(ImmutableArray<double> sections, int stitches, int rows, double turnCost = 0, double start = 0) =>
        Of(sections, [], [.. Enumerable.Repeat(stitches, rows)], turnCost, start);
}
