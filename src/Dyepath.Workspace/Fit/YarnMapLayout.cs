using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Fit;

/// <summary>The places of a map that draw one motif equally clearly, as one outline.</summary>
/// <param name="Clear">Of three: 0 hardly, 1 well enough, 2 clearly.</param>
/// <param name="Path">For SVG, in the map's units: a stitch across, a per mille of yarn per stitch up.</param>
public sealed record MapZone(MotifKind Kind, int Clear, string Path);

/// <summary>Where everything on the map of the yarn stands, and what is said of each place. Tighter is down.</summary>
public sealed class YarnMapLayout
{
    /// <summary>How far yarn per stitch goes both ways: what hooks and hands differ by.</summary>
    public const double Reach = 0.08;

    /// <summary>Relative clarity from which a motif shows well enough, and clearly.</summary>
    public const double WellFrom = 0.25, ClearFrom = 0.6;

    /// <summary>Height of the map in its units.</summary>
    public const double Height = 2000 * Reach;

    private YarnMapLayout(YarnMap map, FitRuler ruler, MotifKind wanted)
    {
        (Map, Wanted) = (map, wanted);
        From = map.Columns[0].Stitches;
        Zones =
        [
            .. map.Columns.SelectMany(c => c.Stretches, (c, s) => (c.Stitches, Stretch: s))
                .GroupBy(p => (p.Stretch.Kind, Clear: Level(p.Stretch.Clarity)))
                .Select(zone => new MapZone(zone.Key.Kind, zone.Key.Clear, Outline(zone))),
        ];
        Sizes =
        [
            .. ruler.Sizes.Where(s => s.Choice is not null).GroupBy(s => s.Choice!.Front).OrderBy(g => g.Key)
                .Select(g => (g.Key, string.Join(", ", g.Select(s => s.Name)))),
        ];
    }

    /// <summary>What it shows.</summary>
    public YarnMap Map { get; }

    /// <summary>The motif that the design asks for.</summary>
    public MotifKind Wanted { get; }

    /// <summary>Fewest stitches.</summary>
    public int From { get; }

    /// <summary>Counts, a stitch apart.</summary>
    public int Wide => Map.Columns.Length;

    /// <summary>Together they cover the map once.</summary>
    public ImmutableArray<MapZone> Zones { get; }

    /// <summary>Counts that sizes are on, with the names of the sizes.</summary>
    public ImmutableArray<(int Stitches, string Names)> Sizes { get; }

    /// <returns>Null where the direction has no counts to choose from.</returns>
    public static YarnMapLayout? Of(FitRuler ruler, MotifKind wanted)
    {
        ArgumentNullException.ThrowIfNull(ruler);
        return ruler.Map(Reach) is { } map ? new YarnMapLayout(map, ruler, wanted) : null;
    }

    /// <summary>The middle of a count's column.</summary>
    public double X(int stitches) => stitches - From + 0.5;

    /// <summary>Where a change of yarn per stitch lies, from the top.</summary>
    public static double Y(double change) => Math.Clamp(1000 * (Reach - change), 0, Height);

    /// <summary>Stretches of the motif that the design asks for, one of each count at most: the nearest to the plan's yarn.</summary>
    public IEnumerable<(int Stitches, MapStretch Stretch)> Islands =>
        from column in Map.Columns
        let wanted = column.Stretches.Where(s => s.Kind == Wanted).ToArray()
        where wanted.Length > 0
        select (column.Stitches, wanted.MinBy(s => s.Has(0) ? 0 : Math.Min(Math.Abs(s.From), Math.Abs(s.To))));

    /// <summary>
    /// Such as <c>84 stitches, yarn per stitch 1.5 % tighter than your swatch's: argyle diamonds, clearly; so from 2 % tighter to 0.4 %
    /// tighter.</c>
    /// </summary>
    public string Say(int stitches, double change)
    {
        var stretch = Map.Columns[Math.Clamp(stitches - From, 0, Wide - 1)].At(change);
        return $"{stitches} stitches, yarn per stitch {(change == 0 ? "as in your swatch" : $"{Change(change)} than your swatch's")}: {MotifWords.Of(stretch.Kind)}{(stretch.Kind == MotifKind.Scattered ? "" : $", {Clearly(Level(stretch.Clarity))}")}; "
            + $"so from {Change(stretch.From)} to {Change(stretch.To)}.";
    }

    /// <summary>Such as <c>1.5 % tighter</c>.</summary>
    public static string Change(double change) => Math.Abs(change) < 0.0005 ? "as in your swatch"
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(100 * change):0.#} % {(change < 0 ? "tighter" : "looser")}");

    /// <summary>As a person sees it.</summary>
    public static string Clearly(int clear) => clear switch { 2 => "clearly", 1 => "well enough", _ => "hardly to be seen" };

    private static int Level(double clarity) => clarity >= ClearFrom ? 2 : clarity >= WellFrom ? 1 : 0;

    private string Outline(IEnumerable<(int Stitches, MapStretch Stretch)> places)
    {
        var path = new StringBuilder();
        foreach (var (stitches, stretch) in places)
            path.Append(CultureInfo.InvariantCulture, $"M{stitches - From} {Y(stretch.To):0.##}h1V{Y(stretch.From):0.##}h-1z");
        return path.ToString();
    }
}
