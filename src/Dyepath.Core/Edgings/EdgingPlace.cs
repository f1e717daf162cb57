using System.Text.Json;

namespace Dyepath.Core.Edgings;

/// <summary>Where an edging goes.</summary>
public enum EdgingPlace
{
    /// <summary>Round the lower edge.</summary>
    Hem,

    /// <summary>Round the neck, or along it where it opens.</summary>
    Neck,

    /// <summary>Round each armhole of a garment without sleeves.</summary>
    Armholes,

    /// <summary>Round the lower edge of each sleeve.</summary>
    Cuffs,

    /// <summary>All round a wrap.</summary>
    Border,

    /// <summary>The first and the last round of a cowl.</summary>
    Brims,

    /// <summary>All round the top of front, back and both sleeves, on the shoulders, or of a bag.</summary>
    TopEdge,

    /// <summary>Round the top of a skirt.</summary>
    Waist,

    /// <summary>The lower edge of a hat.</summary>
    Brim,

    /// <summary>The open edges of a front.</summary>
    Fronts,

    /// <summary>Round an animal's forelegs.</summary>
    LegOpenings,

    /// <summary>The front's edge of a shoulder that is left open.</summary>
    Shoulder,
}

/// <summary>What documents and sentences call the places of edgings.</summary>
public static class EdgingPlaces
{
    /// <summary>As the document names it, such as <c>topEdge</c>.</summary>
    public static string Key(EdgingPlace place) => JsonNamingPolicy.CamelCase.ConvertName(place.ToString());

    /// <summary>Within a sentence, such as <c>top edge</c>.</summary>
    public static string Words(EdgingPlace place) =>
        string.Concat(place.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $" {c}" : $"{c}")).ToLowerInvariant();
}
