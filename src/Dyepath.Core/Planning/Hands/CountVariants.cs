using System.Collections.Immutable;
using System.Numerics;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Planning;

/// <summary>One of the counts that a piece may be offered in.</summary>
/// <param name="Offset">What it has more than the planned count, in pooling units.</param>
/// <param name="From">
/// Makers whose own repeat is at least this much longer than the plan's take it, relative to the plan's; below zero: shorter.
/// </param>
public readonly record struct CountVariant(int Offset, double From);

/// <summary>
/// The counts that a piece may be offered in, so that makers whose own repeat is not the plan's keep the motif too: each takes the count
/// that suits what she counted. Derived in docs/made-well.md.
/// </summary>
/// <param name="Variants">By offset, ascending, the planned count with offset 0 among them; the first serves all shorter repeats.</param>
/// <param name="Alone">Share of makers served by the planned count alone, in [0, 1].</param>
/// <param name="Served">Share of makers served by all of <paramref name="Variants"/>, in [0, 1].</param>
public sealed record CountVariants(ImmutableArray<CountVariant> Variants, double Alone, double Served)
{
    /// <summary>
    /// How far makers' own repeats differ from the plan's, one standard deviation, once they have matched the gauge as nearly as a hook
    /// allows. An assumption without a source.
    /// </summary>
    public const double RepeatSpread = 0.03;

    /// <summary>Share of makers that the variants are to serve.</summary>
    public const double Aim = 0.9;

    /// <summary>A further variant that serves fewer makers more than this is not offered.</summary>
    public const double WorthOffering = 0.01;

    /// <summary>The most that a variant has more or fewer than the plan, in units; and the most variants.</summary>
    public const int Furthest = 7, Most = 7;

    /// <summary>Own repeats lie within this many standard deviations on a grid of twice <see cref="Half"/> steps.</summary>
    private const double Reach = 3.5;

    private const int Half = 28;

    private const double Step = Reach * RepeatSpread / Half;

    /// <summary>The aim is met with the variants.</summary>
    public bool ServesMost => Served >= Aim;

    /// <summary>
    /// The fewest variants, the planned count among them, that serve <see cref="Aim"/> of all makers; where none do, the fewest to which no
    /// other adds <see cref="WorthOffering"/>. Missing for a piece without colours to hold.
    /// </summary>
    public static CountVariants? Of(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        return MadeWell.Held(SharedFabric.Of(plan), piece) is { } motif ? Fewest(plan, motif) : null;
    }

    /// <summary>Of every piece of a size that has colours to hold; pieces that hold the same are worked out once.</summary>
    public static ImmutableDictionary<PieceId, CountVariants> Of(Plan plan, SizePlan size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(size);
        var shared = SharedFabric.Of(plan);
        return size.Pieces.GroupBy(p => MadeWell.Held(shared, p)).Where(alike => alike.Key is not null).SelectMany(alike =>
        {
            var variants = Fewest(plan, alike.Key!.Value);
            return alike.Select(p => KeyValuePair.Create(p.Id, variants));
        }).ToImmutableDictionary();
    }

    private static CountVariants Fewest(Plan plan, HeldMotif motif) =>
        Fewest(motif, plan.Sequence.Measured.Hands, MadeWell.ErrorOf(plan.Sequence.Measured));

    /// <param name="hands">Of which memory and dye count.</param>
    /// <param name="sequenceError">Standard error of C, relative to it.</param>
    internal static CountVariants Fewest(HeldMotif motif, HandsPrior hands, double sequenceError)
    {
        var chances = Chances(motif, hands, sequenceError);
        var alone = Share(chances, 1 << Furthest);
        var (best, served) = (1 << Furthest, alone);
        for (var count = 2; count <= Most && served < Aim; count++)
        {
            var (next, more) = Best(chances, count);
            if (more < served + WorthOffering)
                break;
            (best, served) = (next, more);
        }
        return new CountVariants(Taken(chances, best), alone, served);
    }

    /// <summary>Each variant from the shortest repeat on that it suits best.</summary>
    private static ImmutableArray<CountVariant> Taken(double[][] chances, int set)
    {
        var variants = Enumerable.Range(0, 2 * Furthest + 1).Where(v => (set >> v & 1) != 0).ToArray();
        var taken = ImmutableArray.CreateBuilder<CountVariant>();
        var at = 0;
        foreach (var (index, variant) in variants.Index())
        {
            while (index > 0 && at < 2 * Half && chances[variants[index - 1]][at] >= chances[variant][at])
                at++;
            taken.Add(new CountVariant(variant - Furthest, index == 0 ? -1 : (at - 0.5 - Half) * Step));
        }
        return taken.ToImmutable();
    }

    /// <summary>
    /// Of all sets of so many variants, the planned count among them, the one that serves most; of equals the one nearest to the plan.
    /// </summary>
    private static (int Set, double Served) Best(double[][] chances, int count)
    {
        var (best, served, spread) = (0, -1.0, 0);
        for (var set = 0; set < 1 << 2 * Furthest + 1; set++)
        {
            if (BitOperations.PopCount((uint)set) != count || (set >> Furthest & 1) == 0)
                continue;
            var share = Share(chances, set);
            var wide = BitOperations.Log2((uint)set) - BitOperations.TrailingZeroCount(set);
            if (share > served + 1e-9 || share > served - 1e-9 && wide < spread)
                (best, served, spread) = (set, share, wide);
        }
        return (best, served);
    }

    /// <summary>Each maker takes the variant that suits her repeat best.</summary>
    private static double Share(double[][] chances, int set)
    {
        var share = 0.0;
        for (var at = 0; at <= 2 * Half; at++)
        {
            var best = 0.0;
            for (var left = set; left != 0; left &= left - 1)
                best = Math.Max(best, chances[BitOperations.TrailingZeroCount(left)][at]);
            share += best;
        }
        return share;
    }

    /// <summary>
    /// By variant, and by own repeat: the chance of a good piece times the share of makers who have such a repeat. Whoever's repeat is ε
    /// longer uses less yarn by ε a stitch, which k stitches more make up for where k = ε·N.
    /// </summary>
    private static double[][] Chances(HeldMotif motif, HandsPrior hands, double sequenceError)
    {
        var weights = Enumerable.Range(-Half, 2 * Half + 1).Select(i => Math.Exp(-Math.Pow(Reach * i / Half, 2) / 2)).ToArray();
        var sum = weights.Sum();
        var farthest = Reach * RepeatSpread + Furthest / motif.RowUnits;
        // The chance by how far all rows depart from the plan, on a grid that ends where nothing is left of it.
        var biases = MadeWell.Biases(sequenceError).ToArray();
        var nodes = (int)Math.Ceiling((Math.Min(farthest, 0.2) + biases.Max(b => Math.Abs(b.Bias))) / Step) + 1;
        var table = new double[2 * nodes + 1];
        foreach (var (kind, share) in MadeWell.AllHands(hands))
        {
            for (var node = -nodes; node <= nodes; node++)
                table[node + nodes] += share * MadeWell.ChanceAt(motif, kind, node * Step);
        }
        return
        [
            .. Enumerable.Range(-Furthest, 2 * Furthest + 1).Select(k => Enumerable.Range(-Half, 2 * Half + 1).Select(i =>
                weights[i + Half] / sum * biases.Sum(b => b.Share * At(k / motif.RowUnits - i * Step + b.Bias))).ToArray()),
        ];

        double At(double departure)
        {
            var place = departure / Step + nodes;
            if (place <= 0 || place >= 2 * nodes)
                return 0;
            var below = (int)place;
            return table[below] + (place - below) * (table[below + 1] - table[below]);
        }
    }
}
