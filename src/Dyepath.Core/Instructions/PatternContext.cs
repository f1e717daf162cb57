using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>What every section of the pattern reads: the plan, and its numbers lined up by size.</summary>
internal sealed class PatternContext
{
    /// <summary>Chest of the smallest child that is no baby, about (common practice, no source).</summary>
    private static readonly Length LeastOfChildren = Length.FromCentimetres(53);

    /// <summary>Chest of the smallest adult, about (common practice, no source).</summary>
    private static readonly Length LeastOfAdults = Length.FromCentimetres(71);

    private ImmutableArray<ChartVariant>? _charts;
    private Construction? _construction;
    private Lazy<MotifReader>? _reader;
    private bool? _shiftsAlike;

    public PatternContext(Plan plan, Effort? effort = null)
    {
        Plan = plan;
        Effort = effort ?? new Effort();
        var shape = plan.Sizes[0].Pieces.Select(piece => piece.Id).ToArray();
        if (plan.Sizes.Any(size => !size.Pieces.Select(piece => piece.Id).SequenceEqual(shape)))
            throw new ArgumentException("Every size of a plan has the same pieces in the same order.", nameof(plan));
        Pieces = [.. Enumerable.Range(0, shape.Length).Select(i => new SizedPiece(this, i))];
    }

    public Plan Plan { get; }

    public Effort Effort { get; }

    public Project Project => Plan.Project;

    public Construction Construction => _construction ??= Plan.Construction;

    public ImmutableArray<ChartVariant> Charts => _charts ??= ChartVariant.All(this);

    public ImmutableArray<SequenceColour> Key => Plan.Sequence.Colours;

    public ImmutableArray<SizedPiece> Pieces { get; }

    /// <summary>The same number of every size, in order.</summary>
    public PerSize<T> Each<T>(Func<SizePlan, T> number)
        where T : notnull => new([.. Plan.Sizes.Select(number)]);

    /// <summary>The colour of a section, with its symbol.</summary>
    public ColourName Colour(int section) => new(section, Key[section].Name, Key[section].Symbol);

    /// <summary>
    /// For whom it is. For own sizes it follows from their smallest chest. A garment without sizes is an adult's, unless it states its
    /// wearers.
    /// </summary>
    public Wearers Wearers
    {
        get
        {
            if (SizeCharts.TryFind(Project.Sizes.Chart ?? "", out var chart))
                return chart.Wearer;
            var chests = Project.Sizes.Own.SelectMany(o => o.Measures).Where(m => m.Key is "bust" or "chest").Select(m => m.Value).ToArray();
            return chests.Length == 0 ? Project.Garment.Shape.Unsized
                : chests.Min() < LeastOfChildren ? Wearers.Baby | Wearers.Child
                : chests.Min() < LeastOfAdults ? Wearers.Child
                : Wearers.Adult;
        }
    }

    /// <summary>What the pattern calls the solid yarn.</summary>
    public string CompanionName => Project.Companion?.Name ?? "the companion yarn";

    /// <inheritdoc cref="CompanionName"/>
    public Phrase Companion => Project.Companion is { } companion ? Phrase.Named(companion.Name) : Phrase.Plain("the companion yarn");

    /// <summary>What chains are made of that rows are worked on over: the companion yarn, or else any smooth one.</summary>
    public Phrase ChainYarn => Project.Companion is { } companion ? Phrase.Named(companion.Name) : Phrase.Plain("the smooth yarn");

    /// <summary>Whether rows of any size are worked on over chains.</summary>
    public bool HasTurnedOver => Plan.Sizes.Any(s => s.Pieces.Any(p => p.WrongSideOut));

    public bool HasChains => Plan.Sizes.Any(s => s.Pieces.Any(p => p.Shape is { CompanionChains: > 0 }));

    /// <summary>Whether one sentence says for every piece of every size how much earlier or later colours begin.</summary>
    public bool ShiftsAlike => _shiftsAlike ??= Charts.SelectMany(c => ColourShift.Said(this, c.Piece)).Distinct().Take(2).Count() < 2;

    /// <summary>The edges that the edging of a place runs along, and whether it closes them.</summary>
    public EdgingEdge EdgesAt(EdgingPlace place) => Construction.Edgings.First(e => e.Place == place);

    /// <inheritdoc cref="PieceMotif.Of"/>
    public MotifKind MotifOf(PiecePlan shaped, int units) =>
        PieceMotif.Of(Plan, shaped, units, _reader ??= new(() => PieceMotif.ReaderOf(Plan, shaped)));

    /// <summary>The yarn that serves for a use, by name.</summary>
    public string YarnFor(CompanionUse use) =>
        Project.Companion is { } companion && companion.Uses.Contains(use) ? companion.Name : Project.Yarn.Name;

    /// <summary>Names of all sizes, as a table's head has them after what the rows are.</summary>
    public ImmutableArray<Phrase> Headed(string rows) => [Phrase.Plain(rows), .. Plan.Sizes.Select(s => Phrase.Named(s.Name))];

    /// <summary>Whether the garment's first piece grows in rounds.</summary>
    public bool InRounds => Pieces[0].First.Working != Working.Turned;

    public string RowWord => InRounds ? "round" : "row";

    /// <summary>What is counted against the yarn.</summary>
    public string UnitWord(bool one = false) => (Project.Fabric.Stitch.StitchesPerUnit, one) switch
    {
        (1, true) => "stitch",
        (1, false) => "stitches",
        (_, true) => "pair",
        _ => "pairs",
    };

    /// <summary>Before what is said of some sizes only, such as <c>Sizes 2, 4: </c>; nothing where one size is printed.</summary>
    public static InAllSizes Lead(ImmutableArray<string> names)
    {
        var named = Phrase.Named(string.Join(", ", names));
        return new(Phrase.Of($"{new Strong(names.Length == 1 ? Phrase.Of($"Size {named}") : Phrase.Of($"Sizes {named}"))}: "));
    }

    /// <summary>The designer's own words for a place, if any, then her photos.</summary>
    public IEnumerable<Block> Own(string place)
    {
        if (Project.Words.TryGetValue(place, out var words) && words.Length > 0)
            yield return new OwnWords(place, words);
        foreach (var photo in Project.Photos.Where(photo => photo.Place == place))
            yield return photo;
    }
}

/// <summary>One piece in all sizes.</summary>
/// <param name="only">Index of the one size that it is written for; missing, all of them.</param>
internal sealed class SizedPiece(PatternContext context, int index, int? only = null)
{
    /// <summary>Of the first size; use it for what does not differ by size.</summary>
    public PiecePlan First => context.Plan.Sizes[only ?? 0].Pieces[index];

    public SizedPiece Only(int size) => new(context, index, size);

    public string Name => First.Name;

    public IEnumerable<PiecePlan> BySize => only is not null ? [First] : context.Plan.Sizes.Select(size => size.Pieces[index]);

    public IEnumerable<string> SizeNames => only is { } one ? [context.Plan.Sizes[one].Name] : context.Plan.Sizes.Select(size => size.Name);

    public PerSize<T> Each<T>(Func<PiecePlan, T> number)
        where T : notnull => new([.. BySize.Select(number)]);
}
