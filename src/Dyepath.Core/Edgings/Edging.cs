using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Edgings;

/// <summary>What of an edging a small child may be caught, choked or hurt by.</summary>
[Flags]
public enum EdgingHazards
{
    /// <summary>Nothing that could harm.</summary>
    None = 0,

    /// <summary>Loops that a small child's finger or a catch can hang on.</summary>
    Loops = 1,

    /// <summary>A cord or drawstring.</summary>
    Cords = 2,

    /// <summary>Strands that hang free.</summary>
    Strands = 4,
}

/// <summary>A border worked along an edge of the finished fabric.</summary>
public sealed record Edging
{
    private readonly int? _fewest;

    /// <summary>Shortest share of a girth that an elastic is cut to.</summary>
    public const double ShortestShare = 0.5;

    /// <summary>Longest share of a girth that an elastic is cut to.</summary>
    public const double LongestShare = 1.2;

    /// <summary>Rounds that an edging may have.</summary>
    public static CountBounds RoundCounts { get; } = new(1, 40, "rounds");

    /// <summary>What an elastic's ends overlap by (common practice, no source).</summary>
    public static Length ElasticOverlap { get; } = Length.FromCentimetres(2.5);

    /// <summary>Widths in which elastic is sold, in millimetres (common practice, no source).</summary>
    public static ImmutableArray<int> ElasticWidths { get; } = [3, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50];

    /// <summary>A cord's length beyond the edge that it runs in (common practice, no source).</summary>
    public static Length CordBeyond { get; } = Length.FromCentimetres(40);

    /// <summary>How the project document names it.</summary>
    public required string Id { get; init; }

    /// <summary>As the pattern prints it, within a sentence.</summary>
    public required Phrase Name { get; init; }

    /// <summary>Stitches of one repeat; at least 1.</summary>
    public int Multiple { get; init; } = 1;

    /// <summary>Stitches beyond whole repeats where the edge is not closed into a round; 0 or more.</summary>
    public int Plus { get; init; }

    /// <summary>Rounds unless the pattern says otherwise, the last one included.</summary>
    public required int Rounds { get; init; }

    /// <summary>
    /// Rounds below which it is no longer this edging, no more than <see cref="Rounds"/>: unless it is said, two, since a last round of its own
    /// needs one to stand on.
    /// </summary>
    public int Fewest
    {
        get => _fewest ?? Math.Min(2, Rounds);
        init => _fewest = value;
    }

    /// <summary>Rounds that it may have at most; missing: as many as any edging may have.</summary>
    public int? Most { get; init; }

    /// <summary>What may be asked of it; fewer than <see cref="Fewest"/> only where the designer says so.</summary>
    public CountBounds Allowed => Most is { } most ? new(RoundCounts.Smallest, most, RoundCounts.Unit) : RoundCounts;

    /// <summary>Depth of a round before the last one, in row heights of single crochet.</summary>
    public double RoundDepth { get; init; } = 1;

    /// <summary>Depth of the last round, in row heights of single crochet, and of whatever one round has beyond the others.</summary>
    public double LastDepth { get; init; } = 1;

    /// <summary>Yarn of a round before the last one, per stitch picked up, in single crochet.</summary>
    public double RoundYarn { get; init; } = 1;

    /// <summary>Yarn of the last round, per stitch picked up, in single crochet, and of whatever is worked once.</summary>
    public double LastYarn { get; init; } = 1;

    /// <summary>Stitches picked up per stitch of a plain edge; under 1 the edging draws the edge in.</summary>
    public double Draw { get; init; } = 1;

    /// <summary>Width at rest over the length of the edge; under 1 the edging draws it in.</summary>
    public double Relaxed { get; init; } = 1;

    /// <summary>Width stretched as far as it springs back from, over the length of the edge; at least <see cref="Relaxed"/>.</summary>
    public double Stretched { get; init; } = 1;

    /// <summary>What of it rules for children's clothes are about; <see cref="EdgingHazards.None"/> unless said otherwise.</summary>
    public EdgingHazards Hazards { get; init; }

    /// <summary>Edges that it is made for; most go on every edge that is a round.</summary>
    public ImmutableArray<EdgingPlace> Places { get; init; } = [.. Enum.GetValues<EdgingPlace>()
        .Where(p => p is not (EdgingPlace.Fronts or EdgingPlace.Shoulder))];

    /// <summary>Worked back and forth along an open edge, so that its rounds are rows.</summary>
    public bool InRows { get; init; }

    /// <summary>
    /// Takes an elastic, cut to this share of the body's girth (common practice, no source); missing where it takes none.
    /// </summary>
    public double? ElasticShare { get; init; }

    /// <summary>Strands knotted into it; missing where there are none.</summary>
    public Fringe? Fringe { get; init; }

    /// <summary>Its rows stand across the edge, from end to end of the depth, instead of round upon round.</summary>
    public bool Across { get; init; }

    /// <summary>Worked over the stitches picked up.</summary>
    public required ImmutableArray<Instruction> Steps { get; init; }

    /// <summary>What is done once, after the rounds.</summary>
    public ImmutableArray<Instruction> Finishing { get; init; } = [];

    /// <summary>What is done besides where children wear it; missing where nothing is.</summary>
    public Instruction? ForChildren { get; init; }

    /// <summary>Folded in half to the inside.</summary>
    public bool Folded { get; init; }

    /// <summary>The round, from 1, along whose top it is folded; of an odd number the longer half lies outside.</summary>
    public static int FoldRound(int rounds) => (rounds + 1) / 2;

    /// <summary>Its special stitches, each explained.</summary>
    public ImmutableArray<Phrase> Special { get; init; } = [];

    /// <summary>One repeat and what is beside it, in symbols.</summary>
    public required SymbolChart Chart { get; init; }

    /// <summary>
    /// Its last round goes over the stitches of the round before it as they come, at corners too; between the first and the last are rounds
    /// of single crochet.
    /// </summary>
    public bool LastKeepsCount { get; init; }

    /// <summary>
    /// Of so many rounds or rows, those that widen or narrow at corners: every one of single crochet after the first, where that breaks no
    /// repeat and no fold; the stitches picked up are so many that the last round has whole repeats.
    /// </summary>
    public int CornerRounds(int rounds) =>
        Folded || Across || Multiple != 1 && !LastKeepsCount ? 0 : Math.Max(0, rounds - (LastKeepsCount ? 2 : 1));

    /// <summary>What the edging adds to the edge.</summary>
    /// <param name="rounds">1 to 40.</param>
    /// <param name="rowHeight">Height of a single crochet row, from <see cref="EdgingGauge"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rounds outside 1 to 40.</exception>
    public Length Depth(int rounds, Length rowHeight) =>
        rowHeight * ((RoundCounts.Check(rounds) - 1) * RoundDepth + LastDepth);

    /// <summary>
    /// Yarn over <paramref name="pickUp"/> stitches, in single crochet stitches of yarn; picking up is the first round, and strands of a
    /// fringe are not in it.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Rounds outside 1 to 40.</exception>
    public double YarnInSingleCrochet(int pickUp, int rounds, int perRound = 0) =>
        Enumerable.Range(1, RoundCounts.Check(rounds))
            .Sum(round => (pickUp + perRound * Math.Min(round - 1, CornerRounds(rounds))) * (round == rounds ? LastYarn : RoundYarn));

    /// <summary>Yarn over <paramref name="pickUp"/> stitches, the strands of a fringe included.</summary>
    /// <param name="singleCrochet">Yarn of one single crochet.</param>
    /// <param name="perRound">Stitches by which each round is longer than the one before it.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rounds outside 1 to 40.</exception>
    public Length Yarn(int pickUp, int rounds, Length singleCrochet, int perRound = 0) =>
        YarnInSingleCrochet(pickUp, rounds, perRound) * singleCrochet
        + (Fringe is { } fringe ? pickUp / Multiple * fringe.Bunch : Length.Zero);

    /// <summary>How wide the edged edge is at rest.</summary>
    /// <param name="edge">Length of the edge that it is worked along.</param>
    public Length RelaxedWidth(Length edge) => edge * Relaxed;

    /// <summary>How wide the edged edge becomes without harm: what a hip, a head or a hand has to go through.</summary>
    /// <param name="edge">Length of the edge that it is worked along.</param>
    public Length StretchedWidth(Length edge) => edge * Stretched;

    /// <summary>An elastic or a cord draws it in to any length.</summary>
    public bool IsDrawnIn => ElasticShare is not null || Hazards.HasFlag(EdgingHazards.Cords);

    /// <summary>Elastic to cut: a share of the girth that it sits at, and what its ends overlap by.</summary>
    /// <param name="girth">Of the body, where the edge sits.</param>
    /// <param name="share">0.5 to 1.2 of the girth; missing: <see cref="ElasticShare"/>.</param>
    /// <exception cref="InvalidOperationException">This edging takes no elastic.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Share out of range.</exception>
    public Length ElasticLength(Length girth, double? share = null)
    {
        if (ElasticShare is not { } usual)
            throw new InvalidOperationException($"The {Id} edging takes no elastic.");
        return girth * Guard.InRange(share ?? usual, ShortestShare, LongestShare, "of the girth", nameof(share)) + ElasticOverlap;
    }

    /// <summary>The widest elastic sold that runs freely in a casing; null where none is so narrow.</summary>
    /// <param name="depth">Of the casing once folded.</param>
    public static int? ElasticMillimetres(Length depth)
    {
        var widths = ElasticWidths.Where(w => w + 2 <= depth.Millimetres + 1e-6).ToArray();
        return widths.Length == 0 ? null : widths[^1];
    }

    /// <summary>Whether it may go there.</summary>
    public bool AllowedAt(EdgingPlace place, bool children) => Objection(place, children) is null;

    /// <summary>
    /// Why it may not go there, as the end of a sentence; null where it may. Cords at children's necks: 16 CFR 1120 and EN 14682:2014;
    /// loops and free strands: common practice, no source.
    /// </summary>
    public string? Objection(EdgingPlace place, bool children)
    {
        if (!Places.Contains(place))
            return "is not made for this edge";
        if (!children)
            return null;
        var atNeck = place is EdgingPlace.Neck or EdgingPlace.TopEdge;
        if (atNeck && Hazards.HasFlag(EdgingHazards.Loops))
            return "has loops, which have no place at the neck of children's garments";
        if (atNeck && Hazards.HasFlag(EdgingHazards.Cords))
            return "has a cord, which has no place at the neck of children's garments";
        return Hazards.HasFlag(EdgingHazards.Strands) ? "has loose strands, which have no place on what children wear" : null;
    }

    /// <summary>
    /// The step that says how a round or row is worked; of an edging whose rows stand across the edge, the one that begins it.
    /// </summary>
    /// <param name="round">From 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rounds outside 1 to 40, or no such round.</exception>
    /// <exception cref="InvalidOperationException">The edging says nothing of this round.</exception>
    public Instruction StepOf(int round, int rounds)
    {
        Guard.InRange(round, 0, RoundCounts.Check(rounds) - 1, "rounds", nameof(round));
        Instruction? Named(Phrase label) => Steps.FirstOrDefault(s => s.Label == label);
        var step = Named(EdgingLabels.Numbered(round + 1, InRows));
        if (step is null && round == rounds - 1)
            step = Named(EdgingLabels.Last);
        step ??= Named(EdgingLabels.Further(InRows)) ?? (round > 0 ? Named(EdgingLabels.Between) : null);
        return step ?? (Across ? Steps[0] : throw new InvalidOperationException($"The {Id} edging has no words for round {round + 1} of {rounds}."));
    }

    /// <summary>The steps that occur where it is worked over any of these numbers of rounds, in order.</summary>
    public ImmutableArray<Instruction> StepsOver(IReadOnlyCollection<int> rounds) => Across
        ? Steps
        : [.. Steps.Where(step => rounds.Any(all => Enumerable.Range(0, all).Any(round => StepOf(round, all) == step)))];
}

/// <summary>Strands knotted into the last round.</summary>
/// <param name="Strands">Of one bunch; there is a bunch to each repeat of the edging.</param>
/// <param name="Cut">Of one strand.</param>
/// <param name="Hangs">What hangs below the edge once it is trimmed.</param>
public sealed record Fringe(int Strands, Length Cut, Length Hangs)
{
    /// <summary>Yarn of one bunch.</summary>
    public Length Bunch => Strands * Cut;
}
