using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>
/// The Craft Yarn Council has printed two tables of ease, and "close" means 2.5 to 5 cm in the older and 0 in the newer:
/// a project stores which one it means.
/// </summary>
public enum EaseRevision
{
    /// <summary>"Close" is 2.5 to 5 cm.</summary>
    Older,

    /// <summary>"Close" is the body's own measure.</summary>
    Newer,
}

/// <summary>How closely a garment fits, the closest first.</summary>
public enum EaseCategory
{
    /// <summary>The body's measure or less.</summary>
    VeryClose,

    /// <summary>Body-skimming; see <see cref="EaseRevision"/>.</summary>
    Close,

    /// <summary>Printed as "standard" in the older table.</summary>
    Classic,

    /// <summary>10 to 15 cm in both tables.</summary>
    Loose,

    /// <summary>15 cm or more in both tables.</summary>
    Oversized,
}

/// <summary>
/// How much larger than the body the garment is all round, negative where it stretches. Ends may be open: an older very
/// close fit is "the body or less", oversized is "so much or more". Both printed forms are kept; computing uses centimetres.
/// </summary>
/// <param name="Revision">Which printing of the table.</param>
/// <param name="Category">Whose ease it is.</param>
/// <param name="Name">As that printing calls the category.</param>
/// <param name="InCentimetres">As printed.</param>
/// <param name="InInches">As printed, rounded for itself.</param>
public sealed record EaseRange(
    EaseRevision Revision, EaseCategory Category, string Name, OpenRange<Length> InCentimetres, OpenRange<Length> InInches)
{
    /// <summary>
    /// The ease to plan with where only the category is known: the middle of the range, or its one end where the other is open.
    /// </summary>
    public Length Typical => InCentimetres switch
    {
        ({ } least, { } most) => (least + most) / 2,
        ({ } least, null) => least,
        (null, { } most) => most,
        _ => Length.Zero,
    };
}

/// <summary>The Craft Yarn Council's tables of ease.</summary>
public static class PublishedEase
{
    /// <summary>Where a printing's figures come from.</summary>
    public static Citation Source(EaseRevision revision) => revision == EaseRevision.Older
        ? new(Provenance.FromMemory, "Craft Yarn Council, older table of fit, from memory")
        : new(Provenance.Published, "Craft Yarn Council, newer table of fit, as an excerpt quotes it");

    /// <summary>The older printing, then the newer, each from the closest fit to the loosest.</summary>
    public static ImmutableArray<EaseRange> All { get; } =
    [
        Row(EaseRevision.Older, EaseCategory.VeryClose, "very close fit", null, 0, null, 0),
        Row(EaseRevision.Older, EaseCategory.Close, "close fit", 2.5, 5, 1, 2),
        Row(EaseRevision.Older, EaseCategory.Classic, "standard fit", 5, 10, 2, 4),
        Row(EaseRevision.Older, EaseCategory.Loose, "loose fit", 10, 15, 4, 6),
        Row(EaseRevision.Older, EaseCategory.Oversized, "oversized", 15, null, 6, null),
        Row(EaseRevision.Newer, EaseCategory.VeryClose, "very close fit", -10, -5, -4, -2),
        Row(EaseRevision.Newer, EaseCategory.Close, "close fit", 0, 0, 0, 0),
        Row(EaseRevision.Newer, EaseCategory.Classic, "classic fit", 5, 10, 2, 4),
        Row(EaseRevision.Newer, EaseCategory.Loose, "loose fit", 10, 15, 4, 6),
        Row(EaseRevision.Newer, EaseCategory.Oversized, "oversized", 15, null, 6, null),
    ];

    /// <summary>A category's row in one printing.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such revision or category.</exception>
    public static EaseRange Find(EaseRevision revision, EaseCategory category) =>
        All.FirstOrDefault(range => range.Revision == revision && range.Category == category)
        ?? throw new ArgumentOutOfRangeException(nameof(category), category, "revision and category must be among the named ones.");

    /// <summary>
    /// The category that an ease falls into. On the common end of two, and halfway in a gap between two, the looser;
    /// elsewhere in a gap the nearer; below a newer very close fit still that.
    /// </summary>
    public static EaseRange Classify(EaseRevision revision, Length ease) =>
        All.Where(range => range.Revision == revision)
            .OrderBy(range => Misfit(range.InCentimetres, ease)).ThenByDescending(range => range.Category).First();

    private static Length Misfit(OpenRange<Length> range, Length ease) => range switch
    {
        ({ } least, _) when range.IsBelow(ease) => least - ease,
        (_, { } most) when range.IsAbove(ease) => ease - most,
        _ => Length.Zero,
    };

    private static EaseRange Row(
        EaseRevision revision, EaseCategory category, string name, double? leastCm, double? mostCm, double? leastIn, double? mostIn) => new(
            revision, category, name,
            new(Optional(leastCm, Length.FromCentimetres), Optional(mostCm, Length.FromCentimetres)),
            new(Optional(leastIn, Length.FromInches), Optional(mostIn, Length.FromInches)));

    private static Length? Optional(double? value, Func<double, Length> unit) => value is { } known ? unit(known) : null;
}
