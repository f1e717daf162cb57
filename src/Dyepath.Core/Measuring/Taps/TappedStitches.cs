using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>
/// A swatch told stitch by stitch: one tap for each stitch, on the colour that it shows. Nothing need be known of the yarn before. It
/// can be
/// read after every tap; reading 2,000 taps takes a few milliseconds. Not for several threads at once.
/// </summary>
public sealed class TappedStitches
{
    /// <summary>Most taps; a swatch that says more says nothing new.</summary>
    public static CountBounds Counts { get; } = new(0, 5_000, "taps");

    /// <summary>Most colours.</summary>
    public const int MostColours = 32;

    /// <summary>Longest name of a colour, in characters.</summary>
    public const int LongestName = 40;

    private readonly List<string> _colours = [];
    private readonly List<byte> _taps = [];
    private readonly List<int> _rowEnds = [];
    private (ImmutableArray<CountedRun> Runs, HandsPrior Hands, SequenceEstimate Estimate)? _estimated;

    /// <summary>The colours in the order in which they were first tapped.</summary>
    public IReadOnlyList<string> Colours => _colours;

    /// <summary>Taps so far.</summary>
    public int Count => _taps.Count;

    /// <summary>Rows that were ended.</summary>
    public int Rows => _rowEnds.Count;

    internal ReadOnlySpan<byte> Taps => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_taps);

    internal IReadOnlyList<int> RowEnds => _rowEnds;

    /// <summary>One stitch of a colour; letter case makes no difference.</summary>
    /// <param name="colour">1 to <see cref="LongestName"/> characters beside blanks at its ends.</param>
    /// <exception cref="ArgumentException">No name, one too long, or one colour too many.</exception>
    /// <exception cref="InvalidOperationException">There are as many taps as <see cref="Counts"/> allows.</exception>
    public void Tap(string colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        var name = colour.Trim();
        if (name.Length is 0 or > LongestName)
            throw new ArgumentException($"A colour's name has 1 to {LongestName} characters.", nameof(colour));
        if (_taps.Count >= Counts.Largest)
            throw new InvalidOperationException($"At most {Counts.Largest} taps can be read.");
        var index = _colours.FindIndex(c => c.Equals(name, StringComparison.OrdinalIgnoreCase));
        if (index < 0)
        {
            if (_colours.Count == MostColours)
                throw new ArgumentException($"At most {MostColours} colours can be told apart.", nameof(colour));
            index = _colours.Count;
            _colours.Add(name);
        }
        _taps.Add((byte)index);
    }

    /// <summary>The row ends after the last tap; said twice, or before the first, it changes nothing.</summary>
    public void EndRow()
    {
        if (_taps.Count > (_rowEnds.Count == 0 ? 0 : _rowEnds[^1]))
            _rowEnds.Add(_taps.Count);
    }

    /// <summary>Takes back the last tap, with the row's end behind it.</summary>
    /// <returns>False where there is none.</returns>
    public bool Undo()
    {
        if (_taps.Count == 0)
            return false;
        if (_rowEnds.Count > 0 && _rowEnds[^1] == _taps.Count)
            _rowEnds.RemoveAt(_rowEnds.Count - 1);
        _taps.RemoveAt(_taps.Count - 1);
        return true;
    }

    /// <summary>What the taps say by now.</summary>
    /// <param name="hands">The maker's; missing, <see cref="HandsPrior.Default"/>.</param>
    /// <param name="listed">The sections as the yarn's list has them, by name, to be held against the taps; empty where there is none.</param>
    /// <param name="tolerance">
    /// How far from the truth the sequence may be, at 95 %, to count as sure, in stitches, over 0; missing, 1 or a twenty-fifth of it,
    /// whichever is more.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">Tolerance outside its range.</exception>
    public TapReading Read(HandsPrior? hands = null, ImmutableArray<string> listed = default, double? tolerance = null)
    {
        if (tolerance is { } asked)
            Guard.InRange(asked, 0.01, 1_000, "stitches", nameof(tolerance));
        return TapReader.Read(this, hands ?? HandsPrior.Default, listed.IsDefault ? [] : listed, tolerance);
    }

    /// <summary>The estimate of such runs: worked out only when a sequence more is whole.</summary>
    internal SequenceEstimate Estimate(ImmutableArray<CountedRun> runs, HandsPrior hands, Func<SequenceEstimate> estimate)
    {
        if (_estimated is { } before && before.Hands == hands && IsSame(before.Runs, runs))
            return before.Estimate;
        var found = estimate();
        _estimated = (runs, hands, found);
        return found;
    }

    private static bool IsSame(ImmutableArray<CountedRun> one, ImmutableArray<CountedRun> other) =>
        one.Length == other.Length && one.Zip(other).All(pair => pair.First.Rows.Length == pair.Second.Rows.Length
            && pair.First.Rows.Zip(pair.Second.Rows).All(rows => rows.First.AsSpan().SequenceEqual(rows.Second.AsSpan())));
}
