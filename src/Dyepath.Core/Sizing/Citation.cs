namespace Dyepath.Core.Sizing;

/// <summary>How far a published figure can be trusted.</summary>
public enum Provenance
{
    /// <summary>The source, or a page that quotes it, was read.</summary>
    Published,

    /// <summary>Of a published source, but written down from memory.</summary>
    FromMemory,

    /// <summary>What the trade does; no source.</summary>
    CommonPractice,

    /// <summary>Computed from other figures.</summary>
    Derived,

    /// <summary>The designer's own figures.</summary>
    Designer,
}

/// <summary>Where a figure comes from, in words that a size table or a note may print.</summary>
/// <param name="Provenance">How far it can be trusted.</param>
/// <param name="Text">As the end of a sentence, without a full stop.</param>
public sealed record Citation(Provenance Provenance, string Text);
