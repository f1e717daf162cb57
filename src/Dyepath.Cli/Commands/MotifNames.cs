using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;

namespace Dyepath.Cli.Commands;

/// <summary>Motifs and ways of working as options and JSON name them.</summary>
internal static class MotifNames
{
    public const string Listed = "columns, steep, argyle, shallow, bands, scattered, or even (the slant of a round)";

    public static string Of(MotifKind motif) => motif switch
    {
        MotifKind.EvenSlant => "even",
        _ => motif.ToString().ToLowerInvariant(),
    };

    public static string Of(Working working) => working == Working.RoundsTurned ? "rounds-turned" : working.ToString().ToLowerInvariant();

    public static MotifKind Read(string name) =>
        Enum.GetValues<MotifKind>().Where(m => Of(m) == name).Select(m => (MotifKind?)m).FirstOrDefault()
        ?? throw new BadInputException("--motif", $"“{name}” is not a motif; use {Listed}.");
}
