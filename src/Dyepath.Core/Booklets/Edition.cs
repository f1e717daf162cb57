using System.Collections.Immutable;
using System.Globalization;

namespace Dyepath.Core.Booklets;

/// <summary>Whose names of stitches a copy uses; the same word stands for different stitches in the two.</summary>
public enum Terms
{
    /// <summary>American: the shortest stitch that is not a slip stitch is a single crochet.</summary>
    Us,

    /// <summary>British: the same stitch is a double crochet.</summary>
    Uk,
}

/// <summary>In which units lengths are said.</summary>
public enum Units
{
    /// <summary>Centimetres, with inches after them.</summary>
    CentimetresThenInches,

    /// <summary>Inches, with centimetres after them.</summary>
    InchesThenCentimetres,

    /// <summary>Centimetres alone.</summary>
    Centimetres,

    /// <summary>Inches alone.</summary>
    Inches,
}

/// <summary>Which hand the maker holds the hook in.</summary>
public enum Hand
{
    /// <summary>Right-side rows are worked from right to left.</summary>
    Right,

    /// <summary>Right-side rows are worked from left to right; pictures and sides are mirrored.</summary>
    Left,
}

/// <summary>How one reader's copy is worded: terms, units, hand, and which sizes it holds.</summary>
/// <param name="Terms">Whose names of stitches are used.</param>
/// <param name="Units">Units of lengths.</param>
/// <param name="Hand">The maker's; the other hand mirrors charts and exchanges left and right.</param>
/// <param name="Size">One size alone, without parentheses; missing, all sizes.</param>
public sealed record Edition(Terms Terms, Units Units, Hand Hand, string? Size = null)
{
    /// <summary>Of its words; another than English has terms of its own, whatever <see cref="Terms"/> says.</summary>
    public Language Language { get; init; }

    /// <summary>Largest <see cref="Number"/> that a document may have.</summary>
    public const int MostNumber = 999;

    /// <summary>Of the published pattern, 1 to <see cref="MostNumber"/>; missing where it is not said.</summary>
    public int? Number { get; init; }

    /// <summary>The day on which it is published; missing where it is not said.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Which published pattern this is, such as <c>Edition 2, 2026-12-01</c>; null where neither is said.</summary>
    public Phrase? Label => (Number, Day) switch
    {
        ({ } number, { } day) => Phrase.Of($"Edition {number}, {day}"),
        ({ } number, null) => Phrase.Of($"Edition {number}"),
        (null, { } day) => Phrase.Of($"Edition of {day}"),
        _ => null,
    };

    /// <summary>The date in the form of ISO 8601, which every language reads alike.</summary>
    private Phrase? Day =>
        Date is { } date ? Phrase.Named(date.ToString("O", CultureInfo.InvariantCulture)) : null;
}

/// <summary>The places of a booklet where the designer's own words go.</summary>
public static class WordPlaces
{
    /// <summary>Below the title; a photo there takes the place of the drawing.</summary>
    public const string Cover = "cover";

    /// <summary>Names as the document spells them, in the order in which the booklet comes to them.</summary>
    public static ImmutableArray<string> All { get; } =
        [Cover, "introduction", "materials", "gauge", "notes", "pieces", "makingUp", "care", "closing"];
}
