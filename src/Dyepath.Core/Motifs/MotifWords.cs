namespace Dyepath.Core.Motifs;

/// <summary>Motifs in a maker's words.</summary>
public static class MotifWords
{
    /// <summary>In the plural where it has one, such as <c>argyle diamonds</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">None of the named motifs.</exception>
    public static string Of(MotifKind motif) => motif switch
    {
        MotifKind.Columns => "columns",
        MotifKind.Argyle => "argyle diamonds",
        MotifKind.Steep => "tall diamonds or steep slants",
        MotifKind.EvenSlant => "an even slant",
        MotifKind.Shallow => "flat diamonds or shallow slants",
        MotifKind.Bands => "bands",
        MotifKind.Scattered => "scattered colours",
        _ => throw new ArgumentOutOfRangeException(nameof(motif), motif, "No words for this motif."),
    };
}
