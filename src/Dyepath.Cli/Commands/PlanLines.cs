using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Cli.Commands;

/// <summary>What <c>dyepath plan</c> says below its table, a line each: what else to buy, edgings, beginnings, seams, fit.</summary>
internal sealed class PlanLines(Plan plan)
{
    private readonly Wording _wording = new([.. plan.Sizes.Select(s => s.Name)], new Edition(Terms.Us, Units.Centimetres, Hand.Right));

    public IEnumerable<string> All => [.. Shopping(), .. Edgings(), .. Beginnings(), .. Seams(), .. Fits()];

    private string Stitch => plan.Project.Fabric.Stitch.StitchesPerUnit == 1 ? "stitch" : "pair";

    private PerSize<T> Each<T>(Func<SizePlan, T> number)
        where T : notnull => new([.. plan.Sizes.Select(number)]);

    private string Say(PhraseBuilder phrase) => _wording.Text(Phrase.Of(phrase));

    private IEnumerable<string> Shopping()
    {
        var uses = plan.Sizes.SelectMany(s => s.Yarn.Uses).Where(u => u.Companion && u.Length > Length.Zero).ToArray();
        if (uses.Length > 0)
        {
            var metres = new YarnLength(Each(s => s.Yarn.CompanionLength));
            var balls = plan.Sizes.All(s => s.Yarn.Companion is not null) ? Phrase.Of($"; balls for 19 of 20: {Each(s => s.Yarn.Companion!.Balls)}") : Phrase.Empty;
            yield return Say($"Also buy: {plan.Project.Companion?.Name ?? "smooth yarn of similar thickness"}, {metres}{balls}; for {Wording.List(uses.Select(YarnUseNames.Taker).Distinct())}.");
        }
        if (Notions.Buttons(plan) is { } buttons)
            yield return Say($"Also buy: buttons, {buttons}.");
        for (var at = 0; at < plan.Sizes[0].Edgings.Length; at++)
        {
            if (Notions.Elastic(plan, at) is { } elastic)
                yield return Say($"Also buy: elastic for the {Place(at)}, {elastic}.");
        }
    }

    private IEnumerable<string> Edgings()
    {
        for (var i = 0; i < plan.Sizes[0].Edgings.Length; i++)
        {
            var at = i;
            var planned = plan.Sizes[0].Edgings[at];
            var edging = EdgingLibrary.Find(planned.Edging);
            yield return Say($"Edging, {Place(at)}{(planned.Copies == 1 ? "" : $" (work {planned.Copies})")}: {edging.Name}; {(edging.InRows ? "rows" : "rounds")}: {Each(s => s.Edgings[at].Rounds)}; stitches picked up: {Each(s => s.Edgings[at].PickUp)}.");
        }
    }

    private IEnumerable<string> Beginnings() => plan.Sizes[0].Pieces.Where(p => p.Pooled).Select(piece => $"Begins, {piece.Name}: {BySize(s => First(s[piece.Id]))}.");

    private string First(PiecePlan piece)
    {
        var nth = plan.Sequence.NthUnit(piece.StartSection, piece.Start);
        return string.Create(CultureInfo.InvariantCulture, $"{Stitch} {nth} of {plan.Sequence.Colours[piece.StartSection].Name}");
    }

    private IEnumerable<string> Seams() => plan.Sizes[0].Seams
        .Select(first => $"{Wording.Capital(first.Where)}: {BySize(s => Meet(s.Seams.First(seam => seam.Id == first.Id)))}.");

    private static string Meet(SeamPlan seam) => (seam.Extension, seam.Quality) switch
    {
        (null, _) => "no colours meet there",
        _ when seam.IsClose() => "the colours meet to within a stitch",
        (SeamExtension.Mirrored, SeamQuality.Good) => "the colours meet as in a mirror",
        (_, SeamQuality.Good) => "the colours go on across it",
        (_, SeamQuality.Visible) => "the colours are led up to it, and the seam shows",
        _ => "the colours do not meet",
    };

    /// <summary>The body's measures of which the least that is left over is none or more.</summary>
    private IEnumerable<string> Fits()
    {
        var held = plan.Sizes.SelectMany(s => s.Worn, (s, fit) => (Size: s.Name, Fit: fit)).GroupBy(w => w.Fit.Body)
            .Where(g => g.All(w => w.Fit.Holds))
            .Select(g => g.MinBy(w => w.Fit.Garment - w.Fit.Wanted))
            .Select(w => FormattableString.Invariant(
                $"{plan.Project.Sizes.Words(w.Fit.Body)} ({(w.Fit.Garment - w.Fit.Wanted).Centimetres:0.0} cm to spare{(plan.Sizes.Length == 1 ? "" : $" in {w.Size}")})"))
            .ToArray();
        if (held.Length > 0)
            yield return $"Fits, at the least: {string.Join(", ", held)}.";
    }

    private string Place(int at) => PlaceWords.Within(plan.Sizes[0].Edgings[at].Where);

    /// <summary>Said once where all sizes agree; otherwise each with the sizes that it holds for.</summary>
    private string BySize(Func<SizePlan, string> say)
    {
        var groups = plan.Sizes.GroupBy(say).ToArray();
        return groups.Length == 1 ? groups[0].Key : string.Join("; ", groups.Select(g => $"{g.Key} ({string.Join(", ", g.Select(s => s.Name))})"));
    }
}
