using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions;

/// <summary>The pieces to scale, drawn for the base size, with lettered dimensions and a table of them for all sizes.</summary>
internal static class SchematicFigure
{
    public static ImmutableArray<Block> Of(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        var drawn = BaseSize(context);
        var pieces = ImmutableArray.CreateBuilder<SchematicPiece>();
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Phrase>>();
        foreach (var piece in Distinct(context))
        {
            var plan = piece.BySize.ElementAt(drawn);
            var (width, height) = (plan.Width.Centimetres, plan.Height.Centimetres);
            var gap = Math.Max(3, 0.06 * Math.Max(width, height));
            var dimensions = ImmutableArray.CreateBuilder<Dimension>();
            Add(new PlanePoint(0, height), new PlanePoint(width, height), -gap, $"{NamesAlike(context, piece)}, width", p => p.Width);
            Add(new PlanePoint(0, 0), new PlanePoint(0, height), -gap, $"{NamesAlike(context, piece)}, height", p => p.Height);
            pieces.Add(new SchematicPiece(
                NamesAlike(context, piece),
                [new(0, 0), new(width, 0), new(width, height), new(0, height)],
                dimensions.ToImmutable(),
                Marks(context, drawn, plan),
                context.Plan.Direction == Direction.Sideways ? new(1, 0) : new(0, -1)));

            void Add(PlanePoint from, PlanePoint to, double offset, string what, Func<PiecePlan, Length> value)
            {
                var letter = ((char)('a' + rows.Count)).ToString();
                var each = piece.Each(value);
                dimensions.Add(new Dimension(from, to, offset, Phrase.Of($"{letter}{new InOneSize(Phrase.Of($" {each}"))}")));
                rows.Add([Phrase.Of($"{letter}: {what}, {new UnitNames()}"), .. each.Values.Select(l => new Phrase([new Bare(new Measure(new([l])))]))]);
            }
        }
        return
        [
            new Figure(
                new Schematic(pieces.ToImmutable()),
                Phrase.Of($"{(sizes.Length == 1 ? "The pieces" : $"The pieces of size {sizes[drawn].Name}")} to scale, before seams and edgings."),
                Alternative(context)),
            new Table(
                Phrase.Plain("Dimensions lettered in the drawing, before seams and edgings."),
                [Phrase.Plain("Size"), .. sizes.Select(s => Phrase.Plain(s.Name))],
                rows.ToImmutable(),
                PerSizeColumns: true),
        ];
    }

    private static int BaseSize(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        var named = context.Project.Sizes.Base is { } name ? sizes.ToList().FindIndex(s => s.Name == name) : -1;
        return named >= 0 ? named : sizes.Length / 2;
    }

    /// <summary>All the pieces that one drawing serves.</summary>
    private static string NamesAlike(PatternContext context, SizedPiece drawn) =>
        string.Join(" and ", context.Pieces.Where(piece => Outline(piece) == Outline(drawn)).Select(piece => piece.Name));

    private static string Outline(SizedPiece piece) => string.Join(';', piece.BySize.Select(p => $"{p.Width}×{p.Height}"));

    /// <summary>Pieces that differ in size in some size of the pattern; a back like its front is drawn once.</summary>
    private static IEnumerable<SizedPiece> Distinct(PatternContext context) => context.Pieces
        .DistinctBy(Outline);

    private static ImmutableArray<SchematicMark> Marks(PatternContext context, int drawn, PiecePlan piece)
    {
        var finished = context.Plan.Sizes[drawn].Finished;
        var marks = ImmutableArray.CreateBuilder<SchematicMark>();
        if (piece.Openings.IsEmpty)
            return [];
        var (width, height) = (piece.Width.Centimetres, piece.Height.Centimetres);
        if (finished.TryGetValue(GarmentMeasure.NeckWidth, out var neck))
        {
            var from = (width - neck.Centimetres) / 2;
            marks.Add(new SchematicMark(new(from, 0), new(width - from, 0), Phrase.Plain("neck")));
        }
        if (finished.TryGetValue(GarmentMeasure.ArmholeDepth, out var armhole))
        {
            var depth = Math.Min(height, armhole.Centimetres);
            marks.Add(new SchematicMark(new(0, 0), new(0, depth), Phrase.Plain("armhole")));
            marks.Add(new SchematicMark(new(width, 0), new(width, depth), Phrase.Plain("armhole")));
        }
        return marks.ToImmutable();
    }

    private static Phrase Alternative(PatternContext context) => Phrase.Of(
        $"Rectangles: {string.Join(", ", context.Pieces.Select(p => p.Name))}. Arrows show which way the rows grow; heavy lines mark the openings.");
}
