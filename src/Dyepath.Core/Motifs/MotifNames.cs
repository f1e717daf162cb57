using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Motifs;

/// <summary>Motifs and ways of working as documents, options and results name them.</summary>
public static class MotifNames
{
    public static string Of(MotifKind motif) => motif switch
    {
        MotifKind.EvenSlant => "even",
        _ => motif.ToString().ToLowerInvariant(),
    };

    public static string Of(Working working) => working == Working.RoundsTurned ? "rounds-turned" : working.ToString().ToLowerInvariant();
}
