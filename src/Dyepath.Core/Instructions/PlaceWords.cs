using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Instructions;

/// <summary>Places of edgings, and where they begin, in a maker's words.</summary>
public static class PlaceWords
{
    /// <summary>Within a sentence.</summary>
    public static string Within(EdgingPlace place) => Of(place).ToLowerInvariant();

    /// <summary>As a heading has it, such as <c>Top edge</c>.</summary>
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
    };

    /// <summary>Where the yarn is joined, such as <c>at one vent</c>, and which way it goes where that is not plain.</summary>
    public static string At(OpenEnd end) => end switch
    {
        OpenEnd.LowerEndOfLeftFront => "at the lower end of the left front's front edge",
        OpenEnd.UpperEndOfRightFront => "at the upper end of the right front's front edge",
        OpenEnd.LeftShoulder => "at the left shoulder's end of the front neck",
        OpenEnd.Vent => "at one vent, along the lower edge to the other vent",
    };
}
