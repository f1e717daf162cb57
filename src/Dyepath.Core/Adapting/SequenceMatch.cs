using System.Collections.Immutable;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>How a reader's sections take the places of the pattern's.</summary>
/// <param name="First">Her section, from 0, that begins where the pattern's first does.</param>
/// <param name="Backwards">Her yarn is pulled from its other end, so that her sections run back from there.</param>
/// <param name="Stitches">Units that the pattern counts on, by her sections in the pattern's order.</param>
internal sealed record SequenceMatch(int First, bool Backwards, ImmutableArray<double> Stitches)
{
    /// <summary>What is said section by section in her order, in the pattern's.</summary>
    public ImmutableArray<T> InPatternsOrder<T>(ImmutableArray<T> own) =>
        [.. Enumerable.Range(0, own.Length).Select(i => own[At(i, own.Length)])];

    private int At(int place, int sections) => ((Backwards ? First - place : First + place) % sections + sections) % sections;

    /// <summary>
    /// How her yarn, worked as she measured it, takes the stitches that the pattern counts on within what hands hold; null where no way
    /// round does. Of several the one that asks least of the hands, as it comes off the ball rather than otherwise.
    /// </summary>
    /// <param name="natural">Units that each of her sections takes, in her order.</param>
    public static SequenceMatch? Find(Plan plan, ImmutableArray<YarnSection> own, ImmutableArray<double> natural) =>
        Candidates(plan, own).Where(match => match.IsHeld(natural, plan.Project.Fabric.Keeping))
            .OrderBy(match => match.IsAsItComes ? 0 : 1).ThenBy(match => match.Worst(natural)).FirstOrDefault();

    /// <summary>How her colours would take the pattern's places, whatever their stitches; null where number or order are others.</summary>
    public static SequenceMatch? OfOrder(Plan plan, ImmutableArray<YarnSection> own, ImmutableArray<double> natural) =>
        Candidates(plan, own).OrderBy(match => match.IsAsItComes ? 0 : 1).ThenBy(match => match.Worst(natural)).FirstOrDefault();

    private bool IsAsItComes => First == 0 && !Backwards;

    private static IEnumerable<SequenceMatch> Candidates(Plan plan, ImmutableArray<YarnSection> own)
    {
        var (ring, named) = (plan.Sequence.Ring, plan.Sequence.Colours);
        var (sections, times) = (ring.Sections.Length, own.Length / ring.Sections.Length);
        if (own.Length % sections != 0)
            yield break;
        // Her sequence may be written as several of the pattern's, one after the other.
        ImmutableArray<double> stitches =
            [.. Enumerable.Range(0, own.Length).Select(i => ColourRing.ToUnits(ring.Sections[i % sections]))];
        foreach (var backwards in new[] { false, true })
        {
            for (var first = 0; first < own.Length; first++)
            {
                var match = new SequenceMatch(first, backwards, stitches);
                var hers = match.InPatternsOrder(own);
                if (IsAlike(hers) && (times == 1 || Enumerable.Range(0, own.Length).All(i => hers[i].Colour == hers[i % sections].Colour)))
                    yield return match;
            }
        }

        // Equal colours where the pattern has equal ones, and none of its own colours in the place of another.
        bool IsAlike(ImmutableArray<YarnSection> hers)
        {
            for (var i = 0; i < sections; i++)
            {
                for (var j = 0; j < sections; j++)
                {
                    var same = ring.Colours[i] == ring.Colours[j];
                    if (same != (hers[i].Colour == hers[j].Colour) || !same && hers[i].Colour == named[j].Colour)
                        return false;
                }
            }
            return true;
        }
    }

    /// <summary>Units of her whole sequence over those that the pattern counts on, less 1; positive: hers takes more stitches.</summary>
    public double Longer(ImmutableArray<double> natural) => natural.Sum() / Stitches.Sum() - 1;

    /// <summary>Her yarn per stitch beyond the plan's, as beside the hook; positive: she has to work tighter than by herself.</summary>
    public double Departure(ImmutableArray<double> natural) => 1 / (1 + Longer(natural)) - 1;

    private bool IsHeld(ImmutableArray<double> natural, ColourKeeping keeping) =>
        Math.Abs(Departure(natural)) <= AdaptLimits.Held && (keeping == ColourKeeping.Free || Strayed(natural) is null);

    /// <summary>
    /// The section, in the pattern's order, whose stitches are farthest from the pattern's of those that hands do not bring there unseen;
    /// null where they bring all of them.
    /// </summary>
    public int? Strayed(ImmutableArray<double> natural)
    {
        var own = InPatternsOrder(natural);
        var strayed = Enumerable.Range(0, own.Length).Where(i => Off(i) >= TensionLimits.Scattered.Shows
            && Math.Round(own[i], MidpointRounding.AwayFromZero) != Stitches[i]).ToArray();
        return strayed.Length == 0 ? null : strayed.MaxBy(Off);

        double Off(int i) => Math.Abs(own[i] / Stitches[i] - 1);
    }

    private double Worst(ImmutableArray<double> natural) =>
        InPatternsOrder(natural).Zip(Stitches, (own, planned) => Math.Abs(own / planned - 1)).Max();
}
