using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Instructions;

/// <summary>
/// The pieces to scale: for the pattern drawn in the base size, with lettered dimensions and a table of them for all sizes; or in one size,
/// with every dimension in words where it lies.
/// </summary>
internal static class SchematicFigure
{
    public static ImmutableArray<Block> Of(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        var drawn = BaseSize(context);
        var letters = new List<Lettered>();
        var schematic = Drawn(context, drawn, (line, piece, names) =>
        {
            var each = piece.Each(line.Value);
            var lettered = letters.Find(l => l.What == line.What && l.Values.Values.SequenceEqual(each.Values));
            if (lettered is null)
                letters.Add(lettered = new Lettered(Letter(letters.Count), line.What, each, []));
            lettered.Pieces.AddRange(names.Except(lettered.Pieces));
            return Phrase.Of($"{Phrase.Named(lettered.Letter)}{new InOneSize(Phrase.Of($" {each}"))}");
        });
        ImmutableArray<ImmutableArray<Phrase>> rows =
        [
            .. letters.Select(l => (ImmutableArray<Phrase>)
            [
                Phrase.Of($"{Phrase.Named(l.Letter)}: {Phrase.Together(l.Pieces.Select(Phrase.Plain))}, {l.What}, {new UnitNames()}"),
                .. l.Values.Values.Select(length => new Phrase([new Bare(new Measure(new([length])))])),
            ]),
        ];
        return
        [
            new Figure(
                schematic,
                sizes.Length == 1 ? Phrase.Plain("The pieces to scale, before seams and edgings.") : ToScale(sizes[drawn]),
                Alternative(context)),
            new Table(
                Phrase.Plain("Dimensions lettered in the drawing, before seams and edgings."),
                context.Headed("Size"),
                rows,
                PerSizeColumns: true),
        ];
    }

    /// <param name="size">Index of the size that is drawn.</param>
    public static Figure InWords(PatternContext context, int size) => new(
        Drawn(context, size, (line, piece, _) => Phrase.Of($"{line.What} {new Measure(new([line.Value(piece.BySize.ElementAt(size))]))}")),
        ToScale(context.Plan.Sizes[size]),
        Alternative(context));

    private static Phrase ToScale(SizePlan size) => Phrase.Of($"The pieces of size {Phrase.Named(size.Name)} to scale, before seams and edgings.");

    /// <param name="label">Of a dimension, of the piece that is drawn, and of all the pieces that it serves.</param>
    private static Schematic Drawn(PatternContext context, int size, Func<SchematicLine, SizedPiece, ImmutableArray<string>, Phrase> label)
    {
        var pieces = ImmutableArray.CreateBuilder<SchematicPiece>();
        foreach (var piece in Distinct(context))
        {
            var plan = piece.BySize.ElementAt(size);
            var names = NamesAlike(context, piece);
            pieces.Add(new SchematicPiece(
                Phrase.Together(names.Select(Phrase.Plain)),
                [.. WornOutline.Of(context.Plan, plan).Points.Select(p => new PlanePoint(p.X, p.Y))],
                [.. SchematicLine.Of(context.Construction.GroupOf(plan.Id), plan)
                    .Select(line => new Dimension(line.From, line.To, line.Offset, label(line, piece, names)))],
                Marks(context, size, plan),
                context.Construction.GroupOf(plan.Id).WorkedIn(context.Plan.Direction) == Direction.Up
                    ? new(0, -1) : new(IsSeenReversed(plan) ? -1 : 1, 0)));
        }
        return new Schematic(pieces.ToImmutable());
    }

    /// <summary>A letter of the drawing: what it measures of which pieces, alike in every size.</summary>
    private sealed record Lettered(string Letter, string What, PerSize<Length> Values, List<string> Pieces);

    /// <summary>From a to z, then aa, ab and so on.</summary>
    private static string Letter(int index) => (index < 26 ? "" : Letter(index / 26 - 1)) + (char)('a' + index % 26);

    private static int BaseSize(PatternContext context)
    {
        var sizes = context.Plan.Sizes;
        var named = context.Project.Sizes.Base is { } name ? sizes.ToList().FindIndex(s => s.Name == name) : -1;
        return named >= 0 ? named : sizes.Length / 2;
    }

    /// <summary>A piece that is open at one side only is drawn as worn, and so against its rows where it is turned over.</summary>
    private static bool IsSeenReversed(PiecePlan piece) => piece.WrongSideOut && piece.Openings.Any(o => o.Side is not null);

    /// <summary>All the pieces that one drawing serves.</summary>
    private static ImmutableArray<string> NamesAlike(PatternContext context, SizedPiece drawn) =>
        [.. context.Pieces.Where(piece => Outline(piece) == Outline(drawn)).Select(piece => piece.Name)];

    private static string Outline(SizedPiece piece) => string.Join(';', piece.BySize.Select(p => $"{p.Width}×{p.Height}{Steps(p)}{p.Taper?.Slope}{string.Concat(p.Openings.Select(o => o.Side))}"));

    private static string Steps(PiecePlan piece) => piece.Shape is { } shape
        ? string.Concat(shape.Parts.SelectMany(p => p.Outline.Runs.Select(r => FormattableString.Invariant($", {p.FirstRow + r.FromRow}: {r.First}-{r.Last}"))))
        : "";

    /// <summary>Pieces that differ in size in some size of the pattern; a back like its front is drawn once.</summary>
    private static IEnumerable<SizedPiece> Distinct(PatternContext context) => context.Pieces
        .DistinctBy(Outline);

    private static ImmutableArray<SchematicMark> Marks(PatternContext context, int drawn, PiecePlan piece)
    {
        var marks = ImmutableArray.CreateBuilder<SchematicMark>();
        if (piece.Openings.IsEmpty || piece.Shape is not null)
            return [];
        var (width, height) = (piece.Width.Centimetres, piece.Height.Centimetres);
        var finished = context.Plan.Sizes[drawn].Finished;
        foreach (var opening in context.Construction.GroupOf(piece.Id).OpeningsOf(piece.Id))
        {
            if (!finished.TryGetValue(opening.Measure, out var length))
                continue;
            var (name, size) = (Phrase.Plain(PlaceNames.Of(opening.Id)), length.Centimetres);
            foreach (var side in opening.Sides)
            {
                var (all, x) = (side.IsUpright() ? height : width, side == PieceSide.Left ? 0 : width);
                var (from, to) = opening.At switch
                {
                    OpeningAt.Middle => ((all - size) / 2, (all + size) / 2),
                    OpeningAt.Beginning => (0, Math.Min(all, size)),
                    _ => (all - Math.Min(all, size), all),
                };
                marks.Add(side.IsUpright()
                    ? new SchematicMark(new(x, height - to), new(x, height - from), name)
                    : new SchematicMark(new(from, 0), new(to, 0), name));
            }
        }
        return marks.ToImmutable();
    }

    private static Phrase Alternative(PatternContext context)
    {
        var pieces = Phrase.Join(", ", context.Pieces.Select(p => Phrase.Plain(p.Name)));
        if (context.Pieces.Any(p => p.First.Shape is not null))
            return context.Construction.Groups.Any(g => g.Gores is not null)
                ? Phrase.Of($"Outlines: {pieces}. Arrows show which way the rows grow; sides run together where gores close.")
                : Phrase.Of($"Outlines: {pieces}. Arrows show which way the rows grow; steps are where rows stop short or go on.");
        return context.Pieces.Length == 1
            ? Phrase.Of($"Rectangle: {pieces}. Arrows show which way the rows grow{HeavyLines(context)}.")
            : Phrase.Of($"Rectangles: {pieces}. Arrows show which way the rows grow{HeavyLines(context)}.");
    }

    private static string HeavyLines(PatternContext context)
    {
        var openings = context.Construction.Groups.SelectMany(g => g.Openings).ToArray();
        return openings.Length == 0 ? ""
            : openings.Any(o => o.Id == OpeningId.SleeveJoin) ? "; heavy lines mark openings, and where sleeves are sewn on" : "; heavy lines mark the openings";
    }
}
