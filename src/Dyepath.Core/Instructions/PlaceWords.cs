using Dyepath.Core.Edgings;

namespace Dyepath.Core.Instructions;

/// <summary>Places of edgings in a maker's words.</summary>
public static class PlaceWords
{
    /// <summary>Within a sentence.</summary>
    public static string Within(EdgingPlace place) => Of(place).ToLowerInvariant();

    public static string Of(EdgingPlace place) => place switch
    {
        EdgingPlace.Hem => "Hem",
        EdgingPlace.Neck => "Neck",
        EdgingPlace.Armholes => "Armholes",
        EdgingPlace.Cuffs => "Cuffs",
        EdgingPlace.Border => "Border",
        EdgingPlace.Brims => "Brims",
        EdgingPlace.TopEdge => "Top edge",
        EdgingPlace.Waist => "Waist",
        EdgingPlace.Brim => "Brim",
        EdgingPlace.Fronts => "Fronts",
        EdgingPlace.LegOpenings => "Leg openings",
        EdgingPlace.Shoulder => "Shoulder",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "No words for this place."),
    };
}
