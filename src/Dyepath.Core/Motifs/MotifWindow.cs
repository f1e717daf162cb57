namespace Dyepath.Core.Motifs;

/// <summary>
/// Where each class lies. Lines return to their column |f| times a row, f = visible lean over visible period. With yarn per
/// stitch λz the period is P/z, so that f = a·z − b is linear in z, and so is every threshold: each class is an
/// interval of z for a sign of f and a branch b, in closed form. Derived in docs/mathematics.md.
/// </summary>
internal sealed class MotifWindow
{
    /// <summary>Largest looser change considered: ten times the yarn.</summary>
    public const double MostLooser = 9;

    private readonly MotifKind _kind;
    private readonly Line[] _least;
    private readonly Line[] _most;

    private MotifWindow(MotifKind kind, Line[] least, Line[] most)
    {
        _kind = kind;
        _least = least;
        _most = most;
    }

    /// <param name="kind">Any class but bands, which depends on the row's length alone.</param>
    /// <param name="flattest">|f| above which the piece is scattered.</param>
    /// <param name="square">|f| of a line that rises as far as it runs, at z = 1.</param>
    /// <param name="rowsPerReturn">1 where rows are compared one by one, 2 where every other.</param>
    public static MotifWindow Of(MotifKind kind, MotifOptions options, double flattest, double square, int rows, int rowsPerReturn)
    {
        var drift = new Line(options.ColumnsDrift / rows, 0);
        var scattered = new Line(flattest, 0);
        var steep = new Line(0, square / options.TallestArgyle);
        var shallow = new Line(0, square / options.FlattestArgyle);
        return kind switch
        {
            MotifKind.Columns => new MotifWindow(kind, [], [drift]),
            MotifKind.Steep => new MotifWindow(kind, [drift], [scattered, steep]),
            MotifKind.Argyle or MotifKind.EvenSlant => new MotifWindow(kind, [drift, steep], [scattered, shallow]),
            MotifKind.Shallow => new MotifWindow(kind, [drift, shallow], [scattered]),
            _ => new MotifWindow(kind, [drift, scattered], [new Line((1.0 / rowsPerReturn) - Math.Max(flattest, drift.Constant), 0)]),
        };
    }

    /// <summary>The values of z at which f = slope·z − offset, of the given sign, lies in this class; null where none does.</summary>
    public (double Low, double High)? Interval(double slope, double offset, int sign)
    {
        var (low, high) = (0.0, 1 + MostLooser);
        foreach (var line in _most)
        {
            // sign·(slope·z − offset) ≤ constant + perZ·z
            Require((sign * slope) - line.PerZ, line.Constant + (sign * offset), ref low, ref high);
            if (_kind == MotifKind.Columns)
                Require((-sign * slope) - line.PerZ, line.Constant - (sign * offset), ref low, ref high);
        }
        foreach (var line in _least)
            Require(line.PerZ - (sign * slope), -line.Constant - (sign * offset), ref low, ref high);
        return low <= high ? (low, high) : null;
    }

    /// <summary>Bounds of |f| at z = 1; null where the class is empty in this piece.</summary>
    public (double Least, double Most)? Lines()
    {
        var least = _least.Select(l => l.Constant + l.PerZ).DefaultIfEmpty(0).Max();
        var most = _most.Min(l => l.Constant + l.PerZ);
        return least <= most ? (least, most) : null;
    }

    /// <summary>coefficient·z ≤ bound</summary>
    private static void Require(double coefficient, double bound, ref double low, ref double high)
    {
        if (coefficient > 0)
            high = Math.Min(high, bound / coefficient);
        else if (coefficient < 0)
            low = Math.Max(low, bound / coefficient);
        else if (bound < 0)
            high = double.NegativeInfinity;
    }

    /// <summary>A threshold of |f|.</summary>
    private readonly record struct Line(double Constant, double PerZ);
}
