namespace Dyepath.Core.Motifs;

/// <summary>What a person sees in the fabric (docs/mathematics.md states every threshold).</summary>
public enum MotifKind
{
    /// <summary>One colour, or colours that no order survives in.</summary>
    Scattered,
    Columns,
    Argyle,

    /// <summary>Diamonds more than twice as tall as wide; in rounds, a slant nearer the vertical.</summary>
    Steep,

    /// <summary>In rounds: a slant of about 45 degrees.</summary>
    EvenSlant,

    /// <summary>Diamonds less than half as tall as wide; in rounds, a slant nearer the horizontal.</summary>
    Shallow,
    Bands,
}
