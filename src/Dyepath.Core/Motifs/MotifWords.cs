namespace Dyepath.Core.Motifs;

/// <summary>Motifs in a maker's words.</summary>
public static class MotifWords
{
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
