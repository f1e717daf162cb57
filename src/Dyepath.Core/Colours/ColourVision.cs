namespace Dyepath.Core.Colours;

/// <summary>Named by the cone that is missing or shifted: long (protan), middle (deutan), short (tritan).</summary>
public enum ColourVision
{
    Protan,
    Deutan,
    Tritan,
}
