using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Motifs;

/// <summary>Finds the stitch counts that make a motif.</summary>
public static class CountFinder
{
    /// <summary>Turn cost, in units, that reaches the half leans of an even period.</summary>
    public const double HalfTurn = 0.5;

    private const int MostNearest = 5;

    /// <summary>Rows of less yarn than this, in units, their turn included, are not offered.</summary>
    private const double LeastRow = 0.5;

    /// <summary>Advice is given in hundredths of a stitch or of a per cent where they are fine enough, at most in millionths.</summary>
    private const int TurnDecimals = 2;
    private const int YarnDecimals = 4;
    private const int MostDecimals = 6;

    /// <summary>Turns that a maker can be asked for, in units: from a first stitch without yarn of its own to a chain of four.</summary>
    private const double LeastAskedTurn = -1;
    private const double MostAskedTurn = 2;

    /// <summary>What it takes to look at one count.</summary>
    private const int StepsOfCandidate = 500;

    /// <summary>Less yarn a stitch than this no hook makes a difference of (an assumption without a source).</summary>
    private const double LeastHook = 0.005;

    /// <summary>Yarn per stitch that another hook can be expected to reach, as a relative change.</summary>
    private const double HookReach = 0.25;

    /// <summary>
    /// Every count in the range: constant, N and N + 1 in turn where offered, each at the given turn cost and, where
    /// offered, at half a unit. Counts too narrow or pieces too short for the motif are listed with that finding.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its range.</exception>
    public static CountSearch Find(ColourRing ring, CountOptions options, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(options);
        Guard.InRange(options.From, 1, FabricPath.MostStitches, "stitches", nameof(options));
        Guard.InRange(options.To, options.From, FabricPath.MostStitches, "stitches", nameof(options));
        Guard.InRange(options.Rows, 1, FabricPath.MostRows, "rows", nameof(options));
        var reader = ReaderOf(ring, options);
        var candidates = Candidates(options, effort).ToArray();
        var made = candidates.Where(c => reader.KindOf(c.Piece(options)) == options.Motif).Select(c => c.Read(reader, options, effort));
        var counts = Sort(made, options.Order);
        if (!counts.IsEmpty)
            return new CountSearch(counts, [], []);
        var near = candidates
            .Select(c => Near(reader, options, c, effort))
            .OrderBy(n => Math.Abs(n.TurnChange ?? double.MaxValue)).ThenBy(n => Math.Abs(n.YarnChange ?? double.MaxValue))
            // Of those that nothing would make it, the ones nearest to what was asked for.
            .ThenBy(n => Math.Abs(2 * n.Finding.Stitches - options.From - options.To))
            .ToImmutableArray();
        return new CountSearch([], [.. near.Take(MostNearest)], Advise(ring, options, near, effort));
    }

    /// <summary>
    /// How many counts of the range make each motif, whichever is asked for, the motif that most of them make first; and for each the
    /// clearest count among those that ask least of the maker. Motifs that none makes are left out.
    /// </summary>
    /// <inheritdoc cref="Find"/>
    public static ImmutableArray<MotifShare> Shares(ColourRing ring, CountOptions options, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(options);
        var reader = ReaderOf(ring, options);
        return
        [
            .. Candidates(options, effort).GroupBy(c => reader.KindOf(c.Piece(options)))
                .Select(kind => new MotifShare(kind.Key, kind.Count(), Clearest(kind)))
                .OrderByDescending(share => share.Counts).ThenBy(share => share.Kind),
        ];

        CountFinding Clearest(IEnumerable<Candidate> counts)
        {
            var least = counts.Min(c => c.Task);
            return counts.Where(c => c.Task == least).Select(c => c.Read(reader, options, effort)).MaxBy(f => f.Reading.Clarity)!;
        }
    }

    /// <summary>How many counts of the range make the motif.</summary>
    internal static int HowMany(ColourRing ring, CountOptions options, Effort? effort) =>
        Making(ReaderOf(ring, options), options, effort).Count();

    private static MotifReader ReaderOf(ColourRing ring, CountOptions options) => MotifReader.Create(
        ring, options.Working, options.Gauge, options.Path.StitchesPerUnit, options.Palette, options.Thresholds);

    private static IEnumerable<Candidate> Candidates(CountOptions options, Effort? effort)
    {
        var turned = options.Working is Working.Turned or Working.RoundsTurned;
        for (var n = options.From; n <= options.To; n++)
        {
            effort?.Spend(StepsOfCandidate);
            foreach (var extra in (bool[])[false, true])
            {
                if (extra && !(options.Alternating && turned && n < options.To))
                    continue;
                if ((double)n / options.Path.StitchesPerUnit + options.Path.TurnCost >= LeastRow)
                    yield return new Candidate(n, extra, options.Path, false);
                if (options is { HalfTurn: true, Path.TurnCost: not HalfTurn } && options.Working != Working.Spiral)
                    yield return new Candidate(n, extra, options.Path with { TurnCost = HalfTurn }, true);
            }
        }
    }

    private static ImmutableArray<CountFinding> Sort(IEnumerable<CountFinding> counts, CountOrder order) =>
    [
        .. order switch
        {
            CountOrder.Forgiveness => counts.OrderByDescending(c => c.Forgiveness?.Least ?? 0).ThenBy(c => c.Stitches),
            CountOrder.Clarity => counts.OrderByDescending(c => c.Reading.Clarity).ThenBy(c => c.Stitches),
            _ => counts.OrderBy(c => c.Stitches),
        },
    ];

    private static NearCount Near(MotifReader reader, CountOptions options, Candidate candidate, Effort? effort)
    {
        var (turn, yarn) = reader.Needs(options.Motif, candidate.Piece(options));
        return new NearCount(candidate.Read(reader, options, effort), options.Working == Working.Spiral ? null : turn, yarn);
    }

    private static ImmutableArray<CountAdvice> Advise(ColourRing ring, CountOptions options, ImmutableArray<NearCount> near, Effort? effort)
    {
        var advice = ImmutableArray.CreateBuilder<CountAdvice>();
        if (near.Where(CanTurn).MinBy(n => Math.Abs(n.TurnChange!.Value)) is { } turn)
        {
            var task = turn.Finding.Task & CountTask.ExtraEdgeStitch;
            advice.Add(new CountAdvice.Turn(turn.Finding.Stitches, SaidTurn(ring, options, turn)) { Task = task });
        }
        if (near.Where(n => CanHook(ring, n)).MinBy(n => Math.Abs(n.YarnChange!.Value)) is { } hook)
        {
            var change = SaidYarn(ring, options, hook);
            advice.Add(new CountAdvice.Hook(hook.Finding.Stitches, change, ring.SequenceUnits / (1 + change)) { Task = hook.Finding.Task });
        }
        foreach (var kind in near.GroupBy(n => n.Finding.Reading.Kind).OrderByDescending(g => g.Count())
            .Where(g => g.Key != MotifKind.Scattered))
        {
            var example = kind.MinBy(n => n.Finding.Task)!.Finding;
            advice.Add(new CountAdvice.Motif(kind.Key, kind.Count(), example.Stitches) { Task = example.Task });
        }
        foreach (var way in Enum.GetValues<Working>().Where(w => w != options.Working))
        {
            var other = options with { Working = way, Path = way == Working.Spiral ? options.Path with { TurnCost = 0 } : options.Path };
            var made = Making(ReaderOf(ring, other), other, effort).ToArray();
            if (made.Length > 0)
            {
                var example = made.MinBy(c => c.Task);
                advice.Add(new CountAdvice.Way(way, made.Length, example.Stitches) { Task = example.Task });
            }
        }
        var reader = ReaderOf(ring, options);
        var wider = options with { From = 1, To = FabricPath.MostStitches };
        var outside = Making(reader, wider, effort).ToArray();
        // A piece of another size altogether is no help.
        var reach = outside.Where(c => 2 * c.Stitches >= options.From && c.Stitches <= 2 * options.To).ToArray();
        if (reach.Length > 0)
        {
            var example = reach
                .OrderBy(c => c.Stitches < options.From ? options.From - c.Stitches : c.Stitches - options.To)
                .ThenBy(c => c.Task)
                .First();
            advice.Add(new CountAdvice.Range(example.Stitches) { Task = example.Task });
        }
        return advice.ToImmutable();
    }

    private static bool CanTurn(NearCount near) =>
        near.Finding.TurnCost + near.TurnChange is >= LeastAskedTurn and <= MostAskedTurn and var cost
            // No turn gives yarn back, unless its chain takes the place of a stitch.
            && (cost >= 0 || near.Finding.TurnCost < 0)
            && near.Finding.Stitches + cost >= LeastRow;

    /// <summary>Within reach, and the sequence stays one that a ring can hold.</summary>
    private static bool CanHook(ColourRing ring, NearCount near) =>
        Math.Abs(near.YarnChange ?? 1) is >= LeastHook and <= HookReach
        && ring.SequenceUnits / (1 - HookReach) <= ColourRing.LongestSequence
        && ring.Sections.Min() / (1 + HookReach) > 1;

    private static double SaidTurn(ColourRing ring, CountOptions options, NearCount near)
    {
        var reader = ReaderOf(ring, options);
        return near.Finding.TurnCost + InFewDecimals(near.TurnChange!.Value, TurnDecimals, change =>
            reader.KindOf(Candidate.Of(near.Finding, options, near.Finding.TurnCost + change).Piece(options)) == options.Motif);
    }

    private static double SaidYarn(ColourRing ring, CountOptions options, NearCount near)
    {
        var piece = Candidate.Of(near.Finding, options, near.Finding.TurnCost).Piece(options);
        return InFewDecimals(near.YarnChange!.Value, YarnDecimals, change =>
        {
            var changed = ColourRing.FromUnits([.. ring.Sections.Select(s => ColourRing.ToUnits(s) / (1 + change))], ring.Colours);
            return ReaderOf(changed, options).KindOf(piece) == options.Motif;
        });
    }

    /// <summary>
    /// A change, a little larger where need be, in the fewest decimals that still make the motif: so it can be said in full.
    /// </summary>
    private static double InFewDecimals(double change, int decimals, Func<double, bool> makes)
    {
        for (; decimals <= MostDecimals; decimals++)
        {
            var said = Math.Round(
                Math.CopySign(Math.Ceiling(Math.Abs(change) * Math.Pow(10, decimals)), change) / Math.Pow(10, decimals), decimals);
            if (makes(said))
                return said;
        }
        return change;
    }

    private static IEnumerable<Candidate> Making(MotifReader reader, CountOptions options, Effort? effort) =>
        Candidates(options, effort).Where(c => reader.KindOf(c.Piece(options)) == options.Motif);

    /// <param name="Extra">N and N + 1 in turn.</param>
    /// <param name="HalfTurned">Worked with the half stitch of turn cost that the options offer.</param>
    private readonly record struct Candidate(int Stitches, bool Extra, PathOptions Path, bool HalfTurned)
    {
        public static Candidate Of(CountFinding finding, CountOptions options, double turnCost) => new(
            finding.Stitches,
            finding.Task.HasFlag(CountTask.ExtraEdgeStitch),
            options.Path with { TurnCost = turnCost },
            finding.Task.HasFlag(CountTask.HalfStitchTurn));

        public CountTask Task =>
            (Extra ? CountTask.ExtraEdgeStitch : CountTask.None) | (HalfTurned ? CountTask.HalfStitchTurn : CountTask.None);

        public Piece Piece(CountOptions options)
        {
            // Two rows tell all that a steady piece's reading needs.
            var path = Extra
                ? FabricPath.Alternating(options.Working, Stitches, 2, Path)
                : FabricPath.Constant(options.Working, Stitches, 2, Path);
            return Motifs.Piece.Of(path, path.Advance!.Value, options.Rows);
        }

        public CountFinding Read(MotifReader reader, CountOptions options, Effort? effort)
        {
            effort?.Spend(reader.StepsOfReading);
            var piece = Piece(options);
            return new CountFinding(
                Stitches,
                Extra ? [Stitches, Stitches + 1] : [Stitches],
                Path.TurnCost,
                Task,
                reader.PeriodsOf(piece),
                reader.Read(piece),
                reader.Forgive(piece))
            {
                Width = options.Gauge.Over * (Stitches / options.Gauge.Stitches),
            };
        }
    }
}
