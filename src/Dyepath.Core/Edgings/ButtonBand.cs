using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Edgings;

/// <summary>
/// A band along an open front or shoulder, worked back and forth, with buttonholes in one row of it: 2 stitches wide, at least 6 between
/// them, the first and the last 1.5 cm from where the band closes (common practice, no source).
/// </summary>
public static class ButtonBand
{
    /// <summary>Stitches of a buttonhole.</summary>
    public const int Hole = 2;

    /// <summary>A hole of chains gives by a quarter (common practice, no source).</summary>
    private const double Gives = 1.25;

    /// <summary>Diameters in which buttons are sold, in millimetres (common practice, no source).</summary>
    public static ImmutableArray<int> Diameters { get; } = [6, 8, 9, 10, 11, 12, 13, 15, 18, 20, 23, 25, 28, 30, 34, 38];

    /// <summary>The largest button that passes a hole; the smallest that is sold where none does.</summary>
    /// <param name="stitch">Width of one stitch along the edge.</param>
    public static int Diameter(Length stitch) => Diameters.LastOrDefault(d => d <= Hole * stitch.Millimetres * Gives + 1e-6, Diameters[0]);

    /// <summary>Stitches from one buttonhole to the next, at least.</summary>
    public const int LeastBetween = 6;

    /// <summary>
    /// From the end of what closes to the first buttonhole, to the nearest stitch (1 to 2 cm are common; common practice, no source).
    /// </summary>
    public static Length FromEnd { get; } = Length.FromCentimetres(1.5);

    /// <summary>The row with the buttonholes, from 1: the middle one; of an even number the first after the middle.</summary>
    public static int HoleRow(int rows) => rows / 2 + 1;

    internal static Edging Edging() => new()
    {
        Id = "button-band",
        Name = Phrase.Plain("button band"),
        Rounds = 5,
        Fewest = 3,
        InRows = true,
        Places = [EdgingPlace.Fronts, EdgingPlace.Shoulder],
        Steps =
        [
            new(EdgingLabels.Numbered(1, row: true), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up, turn.")),
            new(EdgingLabels.Further(row: true), Phrase.Of($"Ch 1, {Sc} in each st and in each ch of a buttonhole, turn.")),
        ],
        Finishing =
        [
            new(Phrase.Plain("Buttons"), Phrase.Plain(
                "Sew a button opposite the middle of each buttonhole, fast enough that no pull takes it off.")),
        ],
        Chart = Chart(),
    };

    /// <summary>One hole, in the third of five rows.</summary>
    private static SymbolChart Chart()
    {
        const int before = 3;
        const int stitches = 12;
        var plain = EdgingChart.Each(StitchSymbol.SingleCrochet, stitches).ToArray();
        var holes = plain.Select(s => s.At is >= before and < before + Hole ? new ChartStitch(StitchSymbol.Chain, s.At, 0.2) : s);
        return new EdgingChart(stitches).Row(plain).Row(plain).Row(holes).Row(plain).Row(plain).Repeating(1);
    }
}

/// <summary>Where a band's buttonholes lie, in stitches, from its lower end up.</summary>
/// <param name="Holes">How many, 0 or more.</param>
/// <param name="Before">Below the lowest hole.</param>
/// <param name="Between">From one hole to the next.</param>
/// <param name="After">Above the topmost hole.</param>
public sealed record ButtonLayout(int Holes, int Before, int Between, int After)
{
    /// <summary>
    /// As many as fit between the lower end and what folds back at the top, evenly spaced; stitches that cannot be shared out lie above the
    /// topmost one. Where the ends' distance leaves room for none, one in the middle; none where a band is shorter than a hole with a
    /// stitch at either side.
    /// </summary>
    /// <param name="stitches">Picked up along the whole edge.</param>
    /// <param name="stitch">Width of one along the edge; more than 0.</param>
    /// <param name="folded">Of the edge, at its top, that folds back and does not close.</param>
    public static ButtonLayout Of(int stitches, Length stitch, Length folded)
    {
        var before = Math.Max(1, (int)Math.Round(ButtonBand.FromEnd / stitch, MidpointRounding.AwayFromZero));
        var open = (int)Math.Ceiling(Math.Round(folded / stitch, 6));
        var within = stitches - open - 2 * before;
        var holes = Math.Max(0, (within + ButtonBand.LeastBetween) / (ButtonBand.Hole + ButtonBand.LeastBetween));
        if (holes == 0)
            return InTheMiddle(stitches, open);
        var between = holes == 1 ? 0 : (within - holes * ButtonBand.Hole) / (holes - 1);
        return new ButtonLayout(holes, before, between, stitches - before - holes * ButtonBand.Hole - (holes - 1) * between);
    }

    private static ButtonLayout InTheMiddle(int stitches, int folded)
    {
        var beside = stitches - folded - ButtonBand.Hole;
        return beside < 2 ? new(0, 0, 0, stitches) : new(1, beside / 2, 0, stitches - beside / 2 - ButtonBand.Hole);
    }

    /// <summary>From the middle of one hole to the middle of the next.</summary>
    public Length Spacing(Length stitch) => (ButtonBand.Hole + Between) * stitch;
}
