using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Fabric;

/// <summary>What the page's canvas draws, in centimetres; its stitches are handed over beside it (<see cref="Stitches"/>).</summary>
/// <param name="Key">Scenes of one key are the same place: the view stays where it is.</param>
/// <param name="Stitch">Id of the fabric's stitch.</param>
/// <param name="Patches">One a piece.</param>
/// <param name="Lines">Seams and openings.</param>
/// <param name="Palette">0xRRGGBB by section, as the chosen eyes see them; the companion yarn after them.</param>
/// <param name="Inks">0xRRGGBB of what is legible on each colour of the palette.</param>
public sealed record FabricScene(
    string Key, string Stitch, ImmutableArray<ScenePatch> Patches, ImmutableArray<SceneLine> Lines, ImmutableArray<int> Palette,
    ImmutableArray<int> Inks)
{
    /// <summary>Of the sections as the yarn runs; the companion yarn has none.</summary>
    public required ImmutableArray<string> Symbols { get; init; }

    /// <summary>Standard deviation in centimetres, 0 for none.</summary>
    public required double Blur { get; init; }

    /// <summary>The scale bar's unit.</summary>
    public required bool Inches { get; init; }

    /// <summary>As the canvas's script reads it.</summary>
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
            [.. palette.Select(Ink)])
        {
            Symbols = [.. plan.Sequence.Colours.Select(c => c.Symbol), ""],
            Blur = distance.Blur(plan.StitchWidth.Centimetres),
            Inches = Wording.InchesFirst(plan.Project.Edition.Units),
        };
    }

    /// <summary>
    /// Four bytes for every stitch that is seen, patch after patch: all their cells, then as <see cref="WornStitches"/> has them all forms,
    /// all others and all changes.
    /// </summary>
    /// <param name="likely">Pieces with other colours than planned, by name; where their yarn changes within a stitch is not known.</param>
    public static byte[] Stitches(Unrolled unrolled, IReadOnlyDictionary<string, WornPiece>? likely = null)
    {
        ArgumentNullException.ThrowIfNull(unrolled);
        var stitches = new List<byte>();
        foreach (var laid in unrolled.Pieces)
        {
            var other = likely?.GetValueOrDefault(laid.Piece.Name);
            var planned = WornStitches.Of(laid.Worn);
            stitches.AddRange(laid.Cells(other));
            stitches.AddRange(laid.Seen(planned.Forms));
            stitches.AddRange(laid.Seen(planned.Others));
            stitches.AddRange(other is null ? laid.Seen(planned.Changes) : new byte[laid.Columns * laid.Worn.Rows]);
        }
        return [.. stitches];
    }

    private static ScenePatch Patch(Plan plan, LaidPiece laid, SimulatedTrials? likely)
    {
        var piece = laid.Piece;
        return new ScenePatch(
            Wording.Capital(piece.Name) + (piece.Copies > 1 ? $" (make {piece.Copies})" : ""), laid.X, laid.Y, laid.Width, laid.Height,
            laid.Columns, laid.Worn.Rows)
        {
            HiddenLeft = laid.HiddenLeft,
            HiddenRight = laid.HiddenRight,
            Sideways = plan.Construction.GroupOf(piece.Id).WorkedIn(plan.Direction) == Direction.Sideways,
            Over = piece.WrongSideOut,
            RowShares = likely?.RowShares ?? [],
        };
    }

    private static int Ink(int ground) =>
        Contrast.InkOn(new Srgb((byte)(ground >> 16), (byte)(ground >> 8), (byte)ground)) == Srgb.Black ? 0x000000 : 0xffffff;
}

/// <summary>One piece of fabric on the canvas.</summary>
/// <param name="Label">The piece's name.</param>
/// <param name="X">Left edge, in centimetres.</param>
/// <param name="Y">Upper edge, in centimetres.</param>
/// <param name="Width">In centimetres.</param>
/// <param name="Height">In centimetres.</param>
/// <param name="Columns">Cells from side to side.</param>
/// <param name="Rows">Cells from top to bottom.</param>
public sealed record ScenePatch(string Label, double X, double Y, double Width, double Height, int Columns, int Rows)
{
    /// <summary>Columns that a seam hides at the left.</summary>
    public required int HiddenLeft { get; init; }

    /// <summary>Columns that a seam hides at the right.</summary>
    public required int HiddenRight { get; init; }

    /// <summary>Rows stand upright, the first at the left.</summary>
    public required bool Sideways { get; init; }

    /// <summary>Turned over: what was worked as the front lies behind, and sideways the first row stands at the right.</summary>
    public required bool Over { get; init; }

    /// <summary>Share of each row in its planned colour, first row first; none for the plan.</summary>
    public required ImmutableArray<double> RowShares { get; init; }
}

/// <param name="Seam">Sewn or joined; else an opening.</param>
/// <param name="Tag">Written beside it; empty for none.</param>
/// <param name="X1">In centimetres.</param>
/// <param name="Y1">In centimetres.</param>
/// <param name="X2">In centimetres.</param>
/// <param name="Y2">In centimetres.</param>
public sealed record SceneLine(bool Seam, string Tag, double X1, double Y1, double X2, double Y2);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FabricScene))]
internal sealed partial class SceneJson : JsonSerializerContext;
