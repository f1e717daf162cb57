using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Client.Draft;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Client.Fabric;

/// <summary>What the page's canvas draws, in centimetres; its cells are handed over beside it, patch after patch.</summary>
/// <param name="Key">Scenes of one key are the same place: the view stays where it is.</param>
/// <param name="Stitch">Id of the fabric's stitch.</param>
/// <param name="Symbols">Of the sections as the yarn runs; the companion yarn has none.</param>
/// <param name="Inks">0xRRGGBB of what is legible on each colour of the palette.</param>
/// <param name="Blur">Standard deviation in centimetres, 0 for none.</param>
/// <param name="Inches">The scale bar's unit.</param>
public sealed record FabricScene(
    string Key, string Stitch, ImmutableArray<ScenePatch> Patches, ImmutableArray<SceneLine> Lines, ImmutableArray<int> Palette,
    ImmutableArray<int> Inks, ImmutableArray<string> Symbols, double Blur, bool Inches)
{
    public string ToJson() => JsonSerializer.Serialize(this, SceneJson.Default.FabricScene);

    /// <param name="likely">Pieces as they were likely worked, in place of the plan.</param>
    public static FabricScene Of(Unrolled unrolled, Eyes eyes, Distance distance, ImmutableArray<SimulatedTrials>? likely)
    {
        var plan = unrolled.Plan;
        var palette = YarnPalette.Of(plan, eyes.Seen).ToImmutableArray();
        var telling = unrolled.Telling.ToList();
        return new FabricScene(
            string.Join(' ', unrolled.Pieces.Select(p => p.Piece.Name).Prepend(unrolled.Size.Name)),
            plan.Project.Fabric.Stitch.Id,
            [.. unrolled.Pieces.Select(p => Patch(plan, p, likely?.FirstOrDefault(t => t.Name == p.Piece.Name)))],
            [
                .. unrolled.Seams.Select(s => new SceneLine(
                    true, string.Join(", ", s.Seams.Select(i => telling.IndexOf(i) + 1)), s.X1, s.Y1, s.X2, s.Y2)),
                .. unrolled.Openings.Select(s => new SceneLine(false, "", s.X1, s.Y1, s.X2, s.Y2)),
            ],
            palette,
            [.. palette.Select(Ink)],
            [.. plan.Sequence.Colours.Select(c => c.Symbol), ""],
            distance.Blur(plan.StitchWidth.Centimetres),
            plan.Project.Edition.Units is Units.Inches or Units.InchesThenCentimetres);
    }

    private static ScenePatch Patch(Plan plan, LaidPiece laid, SimulatedTrials? likely)
    {
        var piece = laid.Piece;
        var turned = piece.Working is Working.Turned or Working.RoundsTurned;
        return new ScenePatch(
            FabricWords.Capital(piece.Name) + (piece.Copies > 1 ? $" (make {piece.Copies})" : ""), laid.X, laid.Y, laid.Width, laid.Height,
            laid.Columns, laid.Worn.Rows, laid.Hidden, plan.Direction == Direction.Sideways, turned, piece.WrongSideOut,
            likely?.RowShares ?? []);
    }

    private static int Ink(int ground) =>
        Contrast.InkOn(new Srgb((byte)(ground >> 16), (byte)(ground >> 8), (byte)ground)) == Srgb.Black ? 0x000000 : 0xffffff;
}

/// <param name="Hidden">Columns at each side that a seam hides.</param>
/// <param name="Sideways">Rows stand upright, the first at the left.</param>
/// <param name="Turned">Every other row shows its other side.</param>
/// <param name="Over">Turned over: the first row shows its wrong side, and sideways stands at the right.</param>
/// <param name="RowShares">Share of each row in its planned colour, first row first; none for the plan.</param>
public sealed record ScenePatch(
    string Label, double X, double Y, double Width, double Height, int Columns, int Rows, int Hidden, bool Sideways, bool Turned, bool Over,
    ImmutableArray<double> RowShares);

/// <param name="Seam">Sewn or joined; else an opening.</param>
public sealed record SceneLine(bool Seam, string Tag, double X1, double Y1, double X2, double Y2);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FabricScene))]
internal sealed partial class SceneJson : JsonSerializerContext;
