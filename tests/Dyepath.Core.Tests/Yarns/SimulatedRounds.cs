namespace Dyepath.Core.Tests.Yarns;

/// <summary>
/// One maker's first row: by colours, and by a count from whole sequences in a swatch rounded to stitches. The motif comes by itself where the
/// lean that her natural hands give the row lies within half a stitch of 1.
/// </summary>
internal readonly record struct ColourTrial(bool ByColours, bool ByCount)
{
    /// <param name="spread">Of her hands.</param>
    /// <param name="rounds">Sequences in a row.</param>
    /// <param name="counted">Sequences counted in the swatch.</param>
    public static ColourTrial Of(double spread, int rounds, int counted, ulong seed)
    {
        var maker = new SimulatedMaker(spread, 50, 0.02, seed);
        double[] sections = [.. Enumerable.Range(0, 4).Select(_ => 3.5 + 5 * maker.Uniform())];
        var sequence = sections.Sum();
        var row = new SimulatedMaker(spread, 50, 0.02, seed + 1_000_000).Count(sections, rounds).Sum(r => r.Sum()) + 1;
        var swatch = new SimulatedMaker(spread, 50, 0.02, seed + 2_000_000).Count(sections, counted).Sum(r => r.Sum());
        var chain = rounds * (int)Math.Round((double)swatch / counted) + 1;
        return new(Holds(row), Holds(chain));

        bool Holds(int stitches) => Math.Abs(stitches - rounds * sequence - 1) <= 0.5;
    }
}
