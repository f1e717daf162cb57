using System.Collections.Immutable;

namespace Dyepath.Core.Booklets;

public enum Terms
{
    Us,
    Uk,
}

public enum Units
{
    CentimetresThenInches,
    InchesThenCentimetres,
    Centimetres,
    Inches,
}

public enum Hand
{
    Right,
    Left,
}

/// <summary>How one reader's copy is worded: terms, units, hand, and which sizes it holds.</summary>
/// <param name="Size">One size alone, without parentheses; missing, all sizes.</param>
public sealed record Edition(Terms Terms, Units Units, Hand Hand, string? Size = null);

/// <summary>The places of a booklet where the designer's own words go.</summary>
public static class WordPlaces
{
    public static ImmutableArray<string> All { get; } =
        ["introduction", "materials", "gauge", "notes", "pieces", "makingUp", "care", "closing"];
}
