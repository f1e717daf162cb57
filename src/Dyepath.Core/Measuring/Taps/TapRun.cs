using System.Runtime.InteropServices;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>Taps of one colour in a row.</summary>
/// <param name="Colour">Index of the colour.</param>
/// <param name="Length">Taps, 1 or more.</param>
/// <param name="First">Index of its first tap.</param>
internal readonly record struct TapRun(byte Colour, int Length, int First)
{
    /// <summary>The taps as runs.</summary>
    public static List<TapRun> Of(ReadOnlySpan<byte> taps)
    {
        var runs = new List<TapRun>();
        for (var first = 0; first < taps.Length;)
        {
            var end = first;
            while (end < taps.Length && taps[end] == taps[first])
                end++;
            Add(runs, new TapRun(taps[first], end - first, first));
            first = end;
        }
        return runs;
    }

    /// <summary>Single taps within a colour count as that colour: most of them are misread.</summary>
    public static List<TapRun> Healed(List<TapRun> runs)
    {
        var healed = new List<TapRun>();
        for (var i = 0; i < runs.Count; i++)
        {
            var lost = runs[i].Length == 1 && i > 0 && i + 1 < runs.Count && runs[i - 1].Colour == runs[i + 1].Colour;
            Add(healed, lost ? runs[i] with { Colour = runs[i - 1].Colour } : runs[i]);
        }
        return healed;
    }

    /// <summary>Every single tap counts as the colour before it.</summary>
    public static List<TapRun> Smoothed(List<TapRun> runs)
    {
        var smooth = new List<TapRun>();
        for (var i = 0; i < runs.Count; i++)
            Add(smooth, runs[i].Length == 1 && i > 0 && i + 1 < runs.Count ? runs[i] with { Colour = smooth[^1].Colour } : runs[i]);
        return smooth;
    }

    private static void Add(List<TapRun> runs, TapRun run)
    {
        if (runs.Count > 0 && runs[^1].Colour == run.Colour)
            CollectionsMarshal.AsSpan(runs)[^1] = runs[^1] with { Length = runs[^1].Length + run.Length };
        else
            runs.Add(run);
    }
}
