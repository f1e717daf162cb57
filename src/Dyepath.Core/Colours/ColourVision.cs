namespace Dyepath.Core.Colours;

/// <summary>Named by the cone that is missing or shifted: long (protan), middle (deutan), short (tritan).</summary>
public enum ColourVision
{
    /// <summary>Long-wave cones, which see red.</summary>
    Protan,

    /// <summary>Middle-wave cones, which see green.</summary>
    Deutan,

    /// <summary>Short-wave cones, which see blue.</summary>
    Tritan,
}
