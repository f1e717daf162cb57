using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions;

/// <summary>
/// A dimension of a piece in the drawing of the pieces, before seams and edgings; places in centimetres from its upper left corner.
/// </summary>
/// <param name="What">Such as <c>neck depth</c>.</param>
/// <param name="Value">The same of the piece in any size.</param>
internal sealed record SchematicLine(string What, PlanePoint From, PlanePoint To, double Offset, Func<PiecePlan, Length> Value)
{
    /// <summary>
    /// Width, height, every opening along its side and into the piece, and what a neck leaves beside it; what is at both sides is
    /// measured at the left, since worked up the right may lie a row off.
    /// </summary>
    public static IEnumerable<SchematicLine> Of(PieceGroup group, PiecePlan piece)
    {
        var (width, height) = (piece.Width.Centimetres, piece.Height.Centimetres);
        var gap = Math.Max(3, 0.06 * Math.Max(width, height));
        yield return new SchematicLine("width", new(0, height), new(width, height), -gap, p => p.Width);
        yield return new SchematicLine("height", new(0, 0), new(0, height), -gap - 1, p => p.Height);
        if (group.Gores is { } gores)
        {
            var top = Top(piece).Centimetres;
            yield return new SchematicLine($"{EdgeWords.Of(gores.Top)} edge", new((width - top) / 2, 0), new((width + top) / 2, 0), gap, Top);
        }
        foreach (var opening in group.OpeningsOf(piece.Id).Where(o => piece.Openings.Any(p => p.Id == o.Id)))
        {
            var (along, into) = (Along(piece, opening).Centimetres, Into(piece, opening).Centimetres);
            var depth = opening.Cut is { } cut && cut.Depths.TryGetValue(piece.Id, out var measure) ? Words(measure) : null;
            if (opening.Sides[0].IsUpright())
            {
                var top = opening.At switch
                {
                    OpeningAt.Beginning => height - along,
                    OpeningAt.Middle => (height - along) / 2,
                    _ => 0,
                };
                yield return new SchematicLine(Words(opening.Measure), new(0, top), new(0, top + along), -gap, p => Along(p, opening));
                if (depth is not null)
                    yield return new SchematicLine(depth, new(0, 0), new(into, 0), gap, p => Into(p, opening));
                continue;
            }
            var left = opening.At switch
            {
                OpeningAt.Beginning => 0,
                OpeningAt.End => width - along,
                _ => (width - along) / 2,
            };
            var (right, beside) = (left + along, Beside(group, piece, opening).Centimetres);
            yield return new SchematicLine(Words(opening.Measure), new(left, 0), new(right, 0), gap, p => Along(p, opening));
            if (depth is not null)
                yield return new SchematicLine(depth, new(width / 2, 0), new(width / 2, into), 0, p => Into(p, opening));
            var shoulder = opening.At == OpeningAt.Beginning ? right : left - beside;
            yield return new SchematicLine("shoulder width", new(shoulder, 0), new(shoulder + beside, 0), gap, p => Beside(group, p, opening));
        }
    }

    /// <summary>The top of a gored piece, which is as wide as the rows that reach it.</summary>
    private static Length Top(PiecePlan piece) => piece.Shape is { Parts: [var part] }
        ? piece.Width * ((double)part.Outline.FullRows / piece.Rows)
        : piece.Width;

    /// <summary>Along the side that it opens.</summary>
    private static Length Along(PiecePlan piece, OpeningDesign design)
    {
        var opening = piece.Opening(design.Id);
        var along = design.Sides[0].IsUpright() ? piece.Height : piece.Width;
        return along * (opening.Mean / Counted(piece, opening.AlongStitches));
    }

    /// <summary>From that side inwards.</summary>
    private static Length Into(PiecePlan piece, OpeningDesign design)
    {
        var opening = piece.Opening(design.Id);
        return (design.Sides[0].IsUpright() ? piece.Width : piece.Height) * ((double)opening.Into / Counted(piece, !opening.AlongStitches));
    }

    /// <summary>Stitches or rows from one side to the other; the first row of a shaped piece may be shorter.</summary>
    private static int Counted(PiecePlan piece, bool stitches) =>
        !stitches ? piece.Rows : piece.Shape is { } shape ? shape.LastColumn - shape.FirstColumn + 1 : piece.Stitches;

    /// <summary>Between an opening of the top and what is cut out of the sides.</summary>
    private static Length Beside(PieceGroup group, PiecePlan piece, OpeningDesign top) =>
        group.Openings.Where(o => o.Cut is not null && o.Sides[0].IsUpright())
            .Aggregate((piece.Width - Along(piece, top)) / (top.At == OpeningAt.Middle ? 2 : 1), (left, cut) => left - Into(piece, cut));

    /// <summary>Front and back are named with the piece.</summary>
    private static string Words(GarmentMeasure measure) =>
        measure is GarmentMeasure.NeckDepth or GarmentMeasure.BackNeckDepth ? "neck depth" : GarmentMeasures.Words(measure);
}
