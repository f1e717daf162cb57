using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Motifs;

/// <summary>Motifs and ways of working as documents, options and results name them.</summary>
public static class MotifNames
{
    /// <summary>Such as <c>argyle</c>; <see cref="MotifKind.EvenSlant"/> is <c>even</c>.</summary>
    public static string Of(MotifKind motif) => motif switch
    {
        MotifKind.EvenSlant => "even",
        _ => motif.ToString().ToLowerInvariant(),
    };

    /// <summary>Such as <c>turned</c> or <c>rounds-turned</c>.</summary>
    public static string Of(Working working) => working == Working.RoundsTurned ? "rounds-turned" : working.ToString().ToLowerInvariant();
}
