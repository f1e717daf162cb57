using System.Collections.Immutable;
using Dyepath.Core.Measuring.Taps;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>What goes wrong in a tapped record, at a place of its own choice.</summary>
public enum TapTrouble
{
    None,
    Miscount,
    Skipped,
    Doubled,
    Knot,
    Reversed,
    Drift6,
    Drift12,
}

/// <summary>A yarn to be tapped: stitches of each section, and which colour it has.</summary>
internal sealed record TappedYarn(ImmutableArray<double> Sections, ImmutableArray<int> Colours)
{
    public double Sequence => Sections.Sum();

    /// <summary>3 to 7 sections of 3 to 9 stitches, in two of five yarns with a colour that comes twice; the colours have no shorter period.</summary>
    public static TappedYarn Random(SimulatedMaker chance)
    {
        while (true)
        {
            var count = 3 + (int)(5 * chance.Uniform());
            var kinds = count > 3 && chance.Uniform() < 0.4 ? count - 1 : count;
            var colours = Enumerable.Range(0, count).Select(j => j < kinds ? j : (int)(kinds * chance.Uniform())).ToImmutableArray();
            // A colour that comes twice stands anywhere but beside itself.
            var at = (int)(count * chance.Uniform());
            colours = [.. colours[..at].Where((_, j) => j < kinds), .. colours[kinds..], .. colours[at..Math.Max(at, kinds)]];
            if (colours.Length != count || Enumerable.Range(0, count).Any(j => colours[j] == colours[(j + 1) % count]))
                continue;
            return new([.. Enumerable.Range(0, count).Select(_ => 3 + 6 * chance.Uniform())], colours);
        }
    }

    /// <summary>The sections turned so that one of them comes first.</summary>
    public bool IsTurnOf(ImmutableArray<string> names) => names.Length == Colours.Length
        && Enumerable.Range(0, names.Length).Any(turn => Enumerable.Range(0, names.Length).All(j => names[j] == Name(Colours[(j + turn) % names.Length])));

    public static string Name(int colour) => $"c{colour}";
}

/// <summary>
/// Taps stitches as a maker would: uneven hands and dye as in <see cref="SimulatedMaker"/>, some taps on another colour, and at most one
/// trouble in the middle third.
/// </summary>
internal sealed class SimulatedTapper(double spread, double memory, double dye, double misreads, ulong seed)
{
    private readonly double _rho = Math.Exp(-1 / memory);

    public SimulatedMaker Chance { get; } = new(spread, memory, dye, seed);

    /// <summary>Names of the colours tapped, one a stitch.</summary>
    /// <param name="change">Of the yarn per stitch in the second half, such as −0.06; 0 for none.</param>
    public List<string> Tap(TappedYarn yarn, int stitches, TapTrouble trouble = TapTrouble.None)
    {
        var count = yarn.Colours.Length;
        var (section, way) = ((int)(count * Chance.Uniform()), 1);
        double at = 0, end = yarn.Sections[section] * Chance.Uniform(), tension = spread * Chance.Gaussian();
        var troubled = (int)(stitches * (1 + Chance.Uniform()) / 3);
        var change = trouble switch { TapTrouble.Drift6 => 0.06, TapTrouble.Drift12 => 0.12, _ => 0 };
        var taps = new List<(int Section, int Visit)>();
        var visit = 0;
        while (taps.Count < stitches)
        {
            if (taps.Count == troubled && trouble is TapTrouble.Knot or TapTrouble.Reversed && troubled >= 0)
            {
                troubled = -1;
                way = trouble == TapTrouble.Reversed ? -1 : 1;
                // Two to all but two sections on, and anywhere within it.
                section = (section + 2 + (int)(Math.Max(1, count - 3) * Chance.Uniform())) % count;
                end = at + yarn.Sections[section] * Chance.Uniform();
                visit++;
            }
            var taken = (1 + tension) * (taps.Count > stitches / 2 ? 1 - change : 1);
            while (at + taken / 2 > end)
            {
                section = (section + way + count) % count;
                end += yarn.Sections[section] * (1 + dye * Chance.Gaussian());
                visit++;
            }
            taps.Add((section, visit));
            at += taken;
            tension = _rho * tension + spread * Math.Sqrt(1 - _rho * _rho) * Chance.Gaussian();
        }
        return [.. Spoilt(taps, trouble, troubled).Select(tap => Read(yarn, tap.Section))];
    }

    public static TappedStitches Taps(IEnumerable<string> colours, int row = 0)
    {
        var taps = new TappedStitches();
        foreach (var colour in colours)
        {
            taps.Tap(colour);
            if (row > 0 && taps.Count % row == 0)
                taps.EndRow();
        }
        return taps;
    }

    private static List<(int Section, int Visit)> Spoilt(List<(int Section, int Visit)> taps, TapTrouble trouble, int at)
    {
        if (trouble is not (TapTrouble.Miscount or TapTrouble.Skipped or TapTrouble.Doubled))
            return taps;
        var visit = taps[at].Visit;
        // A miscount of less than the whole, and of more than chance: sections of 6 and more lose 4, others gain 4 to 6.
        var own = taps.Where(t => t.Visit == visit).ToList();
        var first = taps.FindIndex(t => t.Visit == visit);
        switch (trouble)
        {
            case TapTrouble.Skipped:
                taps.RemoveRange(first, own.Count);
                break;
            case TapTrouble.Doubled:
                taps.InsertRange(first, own);
                break;
            case TapTrouble.Miscount when own.Count >= 6:
                taps.RemoveRange(first, 4);
                break;
            case TapTrouble.Miscount:
                taps.InsertRange(first, Enumerable.Repeat(own[0], own.Count + 4));
                break;
        }
        return taps;
    }

    private string Read(TappedYarn yarn, int section)
    {
        var kinds = yarn.Colours.Max() + 1;
        var colour = yarn.Colours[section];
        if (Chance.Uniform() < misreads)
            colour = (colour + 1 + (int)((kinds - 1) * Chance.Uniform())) % kinds;
        return TappedYarn.Name(colour);
    }
}
