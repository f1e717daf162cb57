using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Pricing;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Workshops;

/// <summary>What a teacher brings for all: short lines.</summary>
public static class WorkshopKit
{
    /// <summary>A sewn centimetre takes so many of yarn (an assumption, no source).</summary>
    private const double SewnYarn = 4;

    /// <summary>Coloured balls by thickness, plain yarn, hooks and small things.</summary>
    public static ImmutableArray<string> Of(Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        var lines = ImmutableArray.CreateBuilder<string>();
        var working = workshop.People.Where(p => p.Yarn.Change != ColourChange.Speckled).ToArray();
        foreach (var group in working.GroupBy(p => p.Yarn.Thickness).OrderBy(g => g.Key))
        {
            var balls = group.Sum(Balls);
            var spare = (balls + Kit.ReserveOneIn - 1) / Kit.ReserveOneIn;
            var plain = group.Sum(PlainMetres);
            var plainBalls = (int)Math.Ceiling(100 * plain / BallOf(group.Key).Centimetres);
            var name = Name(group.Key);
            lines.Add(Said($"{Capital(name)} coloured yarn for {People(group.Count())}: {balls} {Word(balls)}, and {spare} more in reserve (one in ten). All of one colourway from one lot; look whether the colours come in the same order in every ball."));
            lines.Add(Said($"{Capital(name)} plain yarn for chains and seams: {Math.Ceiling(plain):0} m, {plainBalls} {Word(plainBalls)}. Take a colour that none of the coloured yarn has."));
            lines.Add(Said($"Hooks of {CardWriter.Hook(group.Key):0.#} mm: {group.Count()}, and one size smaller and larger for who works loosely or tightly."));
        }
        var speckled = workshop.People.Length - working.Length;
        if (speckled > 0)
            lines.Add(Said($"{People(speckled)} {(speckled == 1 ? "brings" : "bring")} speckled yarn, with which nothing can be planned: have a ball with long colours ready for each."));
        lines.Add(Said($"For each: a wool needle, scissors, one stitch marker for the first stitch of a row: {workshop.People.Length} of each."));
        lines.Add("Tape measures, one for every two.");
        return lines.ToImmutable();
    }

    /// <summary>Balls that are enough for a person, however it comes out.</summary>
    public static int Balls(WorkshopPerson person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return (int)Math.Ceiling(100 * CardWriter.Measures(person).SafeMetres / (person.Yarn.Ball ??
            BallOf(person.Yarn.Thickness)).Centimetres);
    }

    /// <summary>Plain yarn of a person: the long chain, and what is sewn.</summary>
    private static double PlainMetres(WorkshopPerson person)
    {
        var measures = CardWriter.Measures(person);
        var chain = 1.25 * measures.Width.High / measures.StitchWidth * 9 * measures.StitchWidth * FabricStitch.ChainInSingleCrochet;
        var sewn = person.Way == WorkshopWay.Rounds ? 0 : person.Piece switch
        {
            WorkshopPiece.Hat or WorkshopPiece.Cowl => measures.Width.High,
            WorkshopPiece.Bag => 2 * measures.Width.High,
            _ => 0,
        };
        return (chain + SewnYarn * sewn) / 100;
    }

    /// <summary>Yarn in 100 g (common practice, no source).</summary>
    private static Length BallOf(YarnThickness thickness) => Length.FromMetres(thickness switch
    {
        YarnThickness.Thin => 400,
        YarnThickness.Medium => 200,
        _ => 100,
    });

    private static string Name(YarnThickness thickness) => thickness.ToString().ToLowerInvariant();

    private static string People(int count) => count == 1 ? "1 person" : Said($"{count} people");

    private static string Word(int balls) => balls == 1 ? "ball" : "balls";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
