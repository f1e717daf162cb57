namespace Dyepath.Core.Edgings;

/// <summary>Where an edging goes.</summary>
public enum EdgingPlace
{
    Hem,
    Neck,
    Armholes,
    Cuffs,

    /// <summary>All round a wrap.</summary>
    Border,

    /// <summary>The first and the last round of a cowl.</summary>
    Brims,
}
