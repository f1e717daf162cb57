namespace Dyepath.Core.Motifs;

/// <summary>What a person sees in the fabric (docs/mathematics.md states every threshold).</summary>
public enum MotifKind
{
    /// <summary>One colour, or colours that no order survives in.</summary>
    Scattered,

    /// <summary>Each colour stands above itself.</summary>
    Columns,

    /// <summary>Lines that cross in diamonds, from half as tall as wide to twice as tall.</summary>
    Argyle,

    /// <summary>Diamonds more than twice as tall as wide; in rounds, a slant nearer the vertical.</summary>
    Steep,

    /// <summary>In rounds: a slant of about 45 degrees.</summary>
    EvenSlant,

    /// <summary>Diamonds less than half as tall as wide; in rounds, a slant nearer the horizontal.</summary>
    Shallow,

    /// <summary>Stripes along the rows, since a colour is longer than a row.</summary>
    Bands,
}
