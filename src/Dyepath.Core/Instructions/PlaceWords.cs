using Dyepath.Core.Edgings;

namespace Dyepath.Core.Instructions;

/// <summary>Places of edgings in a maker's words.</summary>
public static class PlaceWords
{
    public static string Of(EdgingPlace place) => place switch
    {
        EdgingPlace.Hem => "Hem",
        EdgingPlace.Neck => "Neck",
        EdgingPlace.Armholes => "Armholes",
        EdgingPlace.Cuffs => "Cuffs",
        EdgingPlace.Border => "Border",
        EdgingPlace.Brims => "Brims",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "No words for this place."),
    };
}
