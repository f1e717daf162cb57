using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>What every section of the pattern reads: the plan, and its numbers lined up by size.</summary>
internal sealed class PatternContext
{
    public PatternContext(Plan plan)
    {
        Plan = plan;
        var yarn = plan.Project.Yarn;
        Key = ColourKey.Of(yarn.FromOtherEnd ? [.. yarn.Sections.Reverse()] : yarn.Sections);
        var shape = plan.Sizes[0].Pieces.Select(piece => piece.Name).ToArray();
        if (plan.Sizes.Any(size => !size.Pieces.Select(piece => piece.Name).SequenceEqual(shape)))
            throw new ArgumentException("Every size of a plan has the same pieces in the same order.", nameof(plan));
        Pieces = [.. Enumerable.Range(0, shape.Length).Select(i => new SizedPiece(this, i))];
    }

    public Plan Plan { get; }

    public Project Project => Plan.Project;

    public ImmutableArray<ChartColour> Key { get; }

    public ImmutableArray<SizedPiece> Pieces { get; }

    /// <summary>The same number of every size, in order.</summary>
    public PerSize<T> Each<T>(Func<SizePlan, T> number)
        where T : notnull => new([.. Plan.Sizes.Select(number)]);

    /// <summary>The colour of a section, with its symbol.</summary>
    public ColourName Colour(int section) => new(section, Key[section].Name, Key[section].Symbol);

    /// <summary>The designer's own words for a place, if any.</summary>
    public IEnumerable<Block> Own(string place) =>
        Project.Words.TryGetValue(place, out var words) && words.Length > 0 ? [new OwnWords(place, words)] : [];
}

/// <summary>One piece in all sizes.</summary>
internal sealed class SizedPiece(PatternContext context, int index)
{
    /// <summary>Of the first size; use it for what does not differ by size.</summary>
    public PiecePlan First => context.Plan.Sizes[0].Pieces[index];

    public string Name => First.Name;

    public IEnumerable<PiecePlan> BySize => context.Plan.Sizes.Select(size => size.Pieces[index]);

    public PerSize<T> Each<T>(Func<PiecePlan, T> number)
        where T : notnull => context.Each(size => number(size.Pieces[index]));
}
