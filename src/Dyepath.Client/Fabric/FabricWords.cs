using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Planning;

namespace Dyepath.Client.Fabric;

/// <summary>Seams and stitches in a maker's words.</summary>
public static class FabricWords
{
    /// <summary>How far the colours jump, to the half unit: finer is beyond what an eye sees.</summary>
    /// <param name="unit">What is counted against the yarn, as <see cref="Unit"/> names it.</param>
    public static string Jump(double phaseJump, string unit = "stitch") =>
        (Math.Round(phaseJump * 2, MidpointRounding.AwayFromZero) / 2) switch
        {
            0 => "the colours run on here",
            1 => $"the colours jump 1 {unit} of yarn here",
            var halves => string.Create(CultureInfo.InvariantCulture, $"the colours jump {halves} {Many(unit)} of yarn here"),
        };

    public static string Match(double match) => match switch
    {
        >= 0.995 => "all stitches match",
        < 0.005 => "no stitch matches",
        _ => $"{Share(match)} of the stitches match",
    };

    public static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * share)} %");

    /// <summary>What is counted against the yarn: in linen stitch a single crochet and the chain beside it.</summary>
    public static string Unit(Plan plan) => plan.Project.Fabric.Stitch.StitchesPerUnit == 1 ? "stitch" : "pair";

    public static string Many(string unit) => unit == "stitch" ? "stitches" : unit + "s";

    /// <summary>A seam as the making up names it.</summary>
    public static string Seam(string where) => where.EndsWith(" sleeve", StringComparison.Ordinal) ? $"under the {where}" : where;

    /// <summary>One stitch, as it is read out.</summary>
    /// <param name="unit">As <see cref="Unit"/> names it.</param>
    public static string Stitch(
        PiecePlan piece, StitchReading stitch, string section, string symbol, int? ball, bool turned, string unit, Units units)
    {
        var side = !turned ? "" : stitch.RightSide ? " (RS)" : " (WS)";
        var row = turned ? "row" : "round";
        var tones = stitch.TwoToned ? ", two-toned" : "";
        var change = stitch.ToChange switch
        {
            null => "",
            0 => stitch.TwoToned ? " The colour changes within it." : " The colour changes right beside it.",
            < 1.05 and > 0.95 => $" The next change of colour is 1 {unit} of yarn away.",
            var d => string.Create(CultureInfo.InvariantCulture, $" The nearest change of colour is {d:0.#} {Many(unit)} of yarn away."),
        };
        return $"{Capital(piece.Name)}, {row} {stitch.Row}{side}, {unit} {stitch.Column} from the right: {section} ({symbol}){tones}. "
            + $"{Yarn(stitch.FromStart.Metres, units)} from the piece's first stitch{(ball is null ? "" : $", ball {ball}")}.{change}";
    }

    private static string Yarn(double metres, Units units) => units is Units.Inches or Units.InchesThenCentimetres
        ? string.Create(CultureInfo.InvariantCulture, $"{metres / 0.9144:0.0} yd of yarn")
        : string.Create(CultureInfo.InvariantCulture, $"{metres:0.0} m of yarn");

    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
