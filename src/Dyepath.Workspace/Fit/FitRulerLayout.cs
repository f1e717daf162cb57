using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Workspace.Fit;

/// <param name="X">Pixels from the left.</param>
/// <param name="Label">Missing on the small marks.</param>
public sealed record RulerTick(double X, string? Label);

/// <param name="Index">Place among the plan's sizes, from 0.</param>
/// <param name="Size">What it stands for.</param>
/// <param name="X">Of its target, in pixels from the left.</param>
/// <param name="Lane">Names that would cover each other stand above each other; 0 is nearest to the ruler.</param>
/// <param name="Foot">Where the count that serves it lies.</param>
public sealed record SizeMark(int Index, RulerSize Size, double X, int Lane, double? Foot);

/// <param name="Count">What it stands for.</param>
/// <param name="X">Of its finished measure, in pixels from the left.</param>
/// <param name="BandFrom">Where what it forgives begins, in pixels from the left.</param>
/// <param name="BandTo">Where what it forgives ends, in pixels from the left.</param>
/// <param name="BandLane">Bands that overlap lie under each other.</param>
/// <param name="Serves">At least one size is on it.</param>
/// <param name="HasName">There is room for its number; a picture has more.</param>
public sealed record CountMark(
    RulerCount Count, double X, double BandFrom, double BandTo, int BandLane, bool Serves, bool HasName)
{
    /// <summary>There is room for a picture of its fabric.</summary>
    public required bool HasPicture { get; init; }
}

/// <summary>Where everything on a ruler of finished measures stands, in pixels.</summary>
public sealed class FitRulerLayout
{
    /// <summary>Of a count's picture, in pixels.</summary>
    public const double PictureSide = 72;

    /// <summary>Most pixels a centimetre.</summary>
    public const double Closest = 120;

    /// <summary>As close as all sizes are shown by themselves: closer, their counts would lose their neighbours.</summary>
    public const double ClosestFit = 60;

    /// <summary>Fewest pixels a centimetre.</summary>
    public const double Widest = 3;

    private const double NameWidth = 34;
    private const double Edge = 44;
    private static readonly double[] Steps = [0.25, 0.5, 1, 2, 5, 10, 20, 50, 100];

    private readonly double _from;

    private FitRulerLayout(FitRuler ruler, double scale, bool inches, RulerCount? inHand)
    {
        Scale = scale;
        var counts = ruler.Counts.IsEmpty ? ruler.Nearest : ruler.Counts;
        var all = counts.Select(c => c.Finished).Concat(ruler.Sizes.Select(s => s.Target)).Select(l => l.Centimetres).ToArray();
        _from = all.Min() - Edge / scale;
        Width = (all.Max() - _from) * scale + Edge;
        Sizes = MarksOf(ruler);
        Counts = MarksOf(counts, ruler, inHand);
        Ticks = TicksOf(inches);
    }

    /// <summary>Pixels a centimetre.</summary>
    public double Scale { get; }

    /// <summary>Of the whole ruler, in pixels.</summary>
    public double Width { get; }

    /// <summary>In the pattern's order.</summary>
    public ImmutableArray<SizeMark> Sizes { get; }

    /// <summary>By finished measure.</summary>
    public ImmutableArray<CountMark> Counts { get; }

    /// <summary>From the left.</summary>
    public ImmutableArray<RulerTick> Ticks { get; }

    /// <summary>Lanes that names of sizes take; at least 1.</summary>
    public int SizeLanes => Sizes.Select(s => s.Lane + 1).DefaultIfEmpty(1).Max();

    /// <summary>Lanes that bands take; at least 1.</summary>
    public int BandLanes => Counts.Select(c => c.BandLane + 1).DefaultIfEmpty(1).Max();

    /// <param name="scale">Pixels a centimetre.</param>
    /// <param name="inHand">Its name and picture are always there.</param>
    public static FitRulerLayout Of(FitRuler ruler, double scale, bool inches, RulerCount? inHand = null) =>
        new(ruler, scale, inches, inHand);

    /// <summary>The scale at which all sizes, and what serves them or comes nearest, fill a width.</summary>
    public static double ScaleFor(FitRuler ruler, double width)
    {
        var (from, to) = Span(ruler);
        return Math.Clamp((width - 2 * Edge) / Math.Max(to - from, 1), Widest, ClosestFit);
    }

    /// <summary>How far the ruler is to be scrolled so that all sizes are in the middle of a width.</summary>
    public double ScrollTo(FitRuler ruler, double width)
    {
        var (from, to) = Span(ruler);
        return Math.Max(0, ((from + to) / 2 - _from) * Scale - width / 2);
    }

    /// <summary>Pixels from the left of a finished measure.</summary>
    public double X(Length measure) => (measure.Centimetres - _from) * Scale;

    /// <summary>The count that is nearest to so many pixels; null where there are no counts.</summary>
    public CountMark? NearestTo(double x) => Counts.IsEmpty ? null : Counts.MinBy(c => Math.Abs(c.X - x));

    private static (double From, double To) Span(FitRuler ruler)
    {
        // Where no count makes the motif, those that come nearest are what there is to see.
        var shown = ruler.Sizes.Select(s => s.Target.Centimetres)
            .Concat(ruler.Sizes.Where(s => s.Choice is not null).Select(s => s.Choice!.Finished.Centimetres))
            .Concat(ruler.Counts.IsEmpty ? ruler.Nearest.Select(n => n.Finished.Centimetres) : []).ToArray();
        return (shown.Min(), shown.Max());
    }

    private ImmutableArray<SizeMark> MarksOf(FitRuler ruler)
    {
        var lanes = new Lanes();
        var marks = ruler.Sizes.Select((size, i) => (size, i, x: X(size.Target))).OrderBy(m => m.x)
            .Select(m =>
            {
                var half = HalfName(m.size.Name);
                var foot = m.size.Choice is { } choice ? X(choice.Finished) : (double?)null;
                return new SizeMark(m.i, m.size, m.x, lanes.Put(m.x - half, m.x + half + 4), foot);
            });
        return [.. marks.ToArray().OrderBy(m => m.Index)];
    }

    /// <summary>Half of the width that a name takes, in pixels, at least 20.</summary>
    public static double HalfName(string name) => Math.Max(20, 5 * name.Length + 10);

    private ImmutableArray<CountMark> MarksOf(ImmutableArray<RulerCount> counts, FitRuler ruler, RulerCount? inHand)
    {
        var serving = ruler.Sizes.Where(s => s.Choice is not null)
            .SelectMany(s => new[] { (s.Choice!.Front, s.Choice.IsAlternating), (s.Choice.Back, s.Choice.IsAlternating) }).ToHashSet();
        bool Serves(RulerCount c) => serving.Contains((c.Stitches, c.RowStitches.Length == 2));
        var names = new Room(NameWidth);
        var pictures = new Room(PictureSide + 8);
        var named = new HashSet<RulerCount>(ReferenceEqualityComparer.Instance);
        var pictured = new HashSet<RulerCount>(ReferenceEqualityComparer.Instance);
        foreach (var count in counts.OrderByDescending(c => ReferenceEquals(c, inHand)).ThenByDescending(Serves)
            .ThenBy(c => ruler.Sizes.Min(s => Math.Abs((s.Target - c.Finished).Centimetres))))
        {
            if (names.Take(X(count.Finished)))
                named.Add(count);
            if (named.Contains(count) && pictures.Take(X(count.Finished)))
                pictured.Add(count);
        }
        var bands = new Lanes();
        return
        [
            .. counts.OrderBy(c => c.Finished).Select(c =>
            {
                var (from, to) = (Math.Max(0, X(c.HoldsFrom)), Math.Min(Width, X(c.HoldsTo)));
                return new CountMark(
                    c, X(c.Finished), from, to, bands.Put(from, to + 2), Serves(c), named.Contains(c))
                {
                    HasPicture = pictured.Contains(c),
                };
            }),
        ];
    }

    private ImmutableArray<RulerTick> TicksOf(bool inches)
    {
        var unit = inches ? 2.54 : 1;
        var step = Steps.First(s => s * unit * Scale >= 52 || s == Steps[^1]);
        var small = Steps.First(s => s * unit * Scale >= 7);
        var ticks = ImmutableArray.CreateBuilder<RulerTick>();
        for (var i = (long)Math.Ceiling(_from / unit / small); ; i++)
        {
            var (value, x) = (i * small, (i * small * unit - _from) * Scale);
            if (x > Width)
                return ticks.ToImmutable();
            var whole = Math.Abs(value / step - Math.Round(value / step)) < 1e-9;
            ticks.Add(new RulerTick(x, whole ? value.ToString("0.##", CultureInfo.InvariantCulture) : null));
        }
    }

    /// <summary>The first lane in which what was put before ends before this begins.</summary>
    private sealed class Lanes
    {
        private readonly List<double> _ends = [];

        public int Put(double from, double to)
        {
            var lane = _ends.FindIndex(end => end <= from);
            if (lane < 0)
            {
                lane = _ends.Count;
                _ends.Add(0);
            }
            _ends[lane] = to;
            return lane;
        }
    }

    /// <summary>Places on a line that keep a distance from each other.</summary>
    private sealed class Room(double distance)
    {
        private readonly List<double> _taken = [];

        public bool Take(double x)
        {
            if (_taken.Any(t => Math.Abs(t - x) < distance))
                return false;
            _taken.Add(x);
            return true;
        }
    }
}
