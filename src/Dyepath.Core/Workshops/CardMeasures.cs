using Dyepath.Core.Fabrics;
using Dyepath.Core.Pricing;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Workshops;

/// <summary>A low and a high end, and what is likeliest between them, in one unit.</summary>
/// <param name="Low">The low end.</param>
/// <param name="Likely">Between the two.</param>
/// <param name="High">The high end.</param>
public readonly record struct CardRange(double Low, double Likely, double High)
{
    /// <summary>All three times as much.</summary>
    public CardRange Times(double factor) => new(Low * factor, Likely * factor, High * factor);
}

/// <summary>
/// The numbers of a card. A row is m sequences and one stitch (law 16 of the design, docs/workshops.md): about m times as wide as the
/// yarn of a sequence over 9 in single crochet, 13 in half double and 16 in double crochet, whatever the yarn's thickness.
/// </summary>
/// <param name="Stitch">Single crochet, or a taller one where a sequence would be too wide in it.</param>
/// <param name="HalfRounds">Twice m: 2 or more.</param>
/// <param name="Sequence">Stitches of one sequence.</param>
/// <param name="Diamond">Width of one sequence in a row, cm.</param>
/// <param name="Width">Across a row, cm.</param>
/// <param name="Rows">Rows, or rounds, of the whole piece.</param>
/// <param name="StitchWidth">One stitch, cm.</param>
public sealed record CardMeasures(
    FabricStitch Stitch, int HalfRounds, double Sequence, CardRange Diamond, CardRange Width, int Rows, double StitchWidth)
{
    /// <summary>Wanted at most so many times the width of one sequence before a taller stitch is taken.</summary>
    private const double TooWide = 1.25;

    private const int MostHalfRounds = 24;

    /// <summary>The yarn of a sequence over the width that it makes: 9 widths of yarn in a single crochet, and so on.</summary>
    public static double YarnOverWidth(FabricStitch stitch) =>
        stitch == FabricStitch.SingleCrochet ? 9 : stitch == FabricStitch.HalfDoubleCrochet ? 13 : 16;

    /// <summary>Stitches of a row: m sequences and one.</summary>
    public int RowStitches => (int)Math.Round(HalfRounds / 2.0 * Sequence) + 1;

    /// <summary>Minutes for all rows, from the fastest to the slowest of the usual paces; a taller stitch takes as much more as it
    /// takes yarn.</summary>
    public CardRange Minutes
    {
        get
        {
            var work = RowStitches * (double)Rows * Stitch.YarnInSingleCrochet;
            return new(work / Pace.Usual.High, work / Pace.Usual.Median, work / Pace.Usual.Low);
        }
    }

    /// <summary>Rows in so many minutes, from slow to fast, at most <see cref="Rows"/>.</summary>
    public (int Low, int High) RowsIn(int minutes)
    {
        var row = RowStitches * Stitch.YarnInSingleCrochet;
        return (Math.Min(Rows, (int)(minutes * Pace.Usual.Low / row)), Math.Min(Rows, (int)(minutes * Pace.Usual.High / row)));
    }

    /// <summary>Yarn of the whole piece, metres, as much as it may come to: a quarter more than likely.</summary>
    public double SafeMetres => 1.25 * RowStitches * Rows * 9 * StitchWidth * Stitch.YarnInSingleCrochet / 100;

    /// <summary>Rows that a diamond is high, and that are worked before the first one is whole.</summary>
    public int DiamondRows => (int)Math.Round(Sequence);

    /// <summary>The numbers for a person.</summary>
    /// <param name="mayHalve">Whether m and a half can be told by colours.</param>
    public static CardMeasures For(WorkshopPerson person, Func<FabricStitch, bool> mayHalve)
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(mayHalve);
        var wanted = (person.Width ?? UsualWidth(person.Piece, person.Way)).Centimetres;
        var unit = StitchOf(person.Yarn.Thickness);
        FabricStitch[] stitches = [FabricStitch.SingleCrochet, FabricStitch.HalfDoubleCrochet, FabricStitch.DoubleCrochet];
        var stitch = stitches.FirstOrDefault(s => DiamondOf(person.Yarn, s, unit).Likely <= TooWide * wanted) ?? stitches[^1];
        var diamond = DiamondOf(person.Yarn, stitch, unit);
        var halves = mayHalve(stitch);
        var m = Enumerable.Range(2, MostHalfRounds - 1).Where(h => h % 2 == 0 || halves).MinBy(h => Math.Abs(h / 2.0 * diamond.Likely +
            unit - wanted));
        var width = new CardRange(m / 2.0 * diamond.Low + unit, m / 2.0 * diamond.Likely + unit, m / 2.0 * diamond.High + unit);
        var rows = (int)Math.Ceiling(Along(person, width.Likely) / (unit * stitch.HeightOverWidth));
        return new(stitch, m, diamond.Likely / unit, diamond, width, rows, unit);
    }

    /// <summary>Across a row where nothing is asked for.</summary>
    public static Length UsualWidth(WorkshopPiece piece, WorkshopWay way) => Length.FromCentimetres(piece switch
    {
        WorkshopPiece.Hat => way == WorkshopWay.Rounds ? 54 : 22,
        WorkshopPiece.Cowl => way == WorkshopWay.Rounds ? 60 : 25,
        WorkshopPiece.Bag => 30,
        _ => 20,
    });

    /// <summary>How far the rows go, cm.</summary>
    private static double Along(WorkshopPerson person, double width) => person.Piece switch
    {
        WorkshopPiece.Hat => person.Way == WorkshopWay.Rounds ? 22 : 54,
        WorkshopPiece.Cowl => person.Way == WorkshopWay.Rounds ? 25 : 60,
        WorkshopPiece.Scarf => 150,
        WorkshopPiece.Bag => 2 * width,
        _ => width,
    };

    /// <summary>Width of a single crochet, cm: 22, 15 and 11 to 10 cm (common practice, no source).</summary>
    private static double StitchOf(YarnThickness thickness) => 10.0 / (thickness switch
    {
        YarnThickness.Thin => 22,
        YarnThickness.Medium => 15,
        _ => 11,
    });

    /// <summary>From counted stitches, 15 % either way for the gauge; else from the reach of the body, whose ends are its range (no
    /// source for either).</summary>
    private static CardRange DiamondOf(WorkshopYarn yarn, FabricStitch stitch, double unit)
    {
        if (yarn.Sequence is { } counted)
        {
            var width = counted / stitch.YarnInSingleCrochet * unit;
            return new(0.85 * width, width, 1.15 * width);
        }
        return (yarn.Reach switch
        {
            SequenceReach.Forearm => new CardRange(30, 45, 60),
            SequenceReach.Arm => new CardRange(60, 80, 110),
            SequenceReach.BothArms => new CardRange(110, 160, 200),
            _ => new CardRange(200, 300, 450),
        }).Times(1 / YarnOverWidth(stitch));
    }
}
