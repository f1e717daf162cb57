using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;

namespace Dyepath.Core.Planning;

/// <summary>What in the document would let a count make the motif, where none does.</summary>
internal static class FitRemedies
{
    public static IEnumerable<Remedy> Of(SharedFabric shared, Direction direction, CountOffer offer, Effort effort)
    {
        var options = offer.Options;
        if (!options.HalfTurn && options.Working != Working.Spiral && HowMany(options with { HalfTurn = true }) is > 0 and var halves)
            yield return new Remedy(
                "garment.grading.halfStitchTurn", "true", $"{Serve(halves)} where every turn takes half a stitch of yarn.");
        if (!options.Alternating && options.Working == Working.Turned && HowMany(options with { Alternating = true }) is > 0 and var pairs)
            yield return new Remedy(
                "garment.grading.alternatingRows", "true", $"{Serve(pairs)} where every other row has one stitch more.");
        foreach (var advice in offer.Search.Advice)
        {
            if (Change(shared, direction, advice) is var (place, value))
                yield return new Remedy(place, $"\"{value}\"", AdviceWords.Say(advice));
        }

        int HowMany(CountOptions wider) => CountFinder.HowMany(shared.Ring, wider, effort);
    }

    /// <summary>Null where the document has no place for it: another hook needs another swatch, other sizes another garment.</summary>
    private static (string Place, string Value)? Change(SharedFabric shared, Direction direction, CountAdvice advice) => advice switch
    {
        CountAdvice.Motif { Task: CountTask.None } motif => ("garment.motif", MotifNames.Of(motif.Kind)),
        CountAdvice.Turn { Task: CountTask.None } turn =>
            ("fabric.turnCost", FormattableString.Invariant($"{turn.TurnCost:0.######} stitches")),
        CountAdvice.Way { Task: CountTask.None } way when direction == Direction.Up && MayGoRound(shared.Project.Garment) =>
            ("garment.working", MotifNames.Of(way.Working)),
        _ => null,
    };

    /// <summary>A tube may be worked in rounds.</summary>
    private static bool MayGoRound(GarmentSpec garment) =>
        garment.Shape.Construct(garment with { Working = Working.Rounds }).Groups.All(g => g.Working == Working.Rounds);

    private static string Serve(int counts) => counts == 1 ? "One count would make it" : $"{counts} counts would make it";
}
