using System.Globalization;
using System.Text;
using Dyepath.Bench;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Sizing;
using Dyepath.Drawing;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Fabric;
using Fill = (double X, double Y, double Width, double Height, int Turns, int Columns, int Rows, byte[] Cells);

namespace Dyepath.Workspace.Tests.Garment;

/// <summary>A garment as it is begun, in the middle size of its chart, as SVG files.</summary>
internal static class GarmentPictures
{
    /// <summary>Of one centimetre.</summary>
    private const double Pixels = 3;

    private const double Margin = 3;

    public static Plan PlanOf(Starter starter)
    {
        string[] middle = starter.Chart is { } id && SizeCharts.TryFind(id, out var chart) ? [chart.Sizes[chart.Sizes.Length / 2].Name] : [];
        return GarmentPlanner.Plan(starter.Project(middle)).Plan ?? throw new InvalidOperationException($"The {starter.Name} has no plan.");
    }

    /// <summary>As the page Garment draws it, without measures.</summary>
    public static string Worn(Plan plan, GarmentDrawing drawing)
    {
        var lines = drawing.Outlines.Select(o => $"<path d=\"{o.Path}\" {Style(o.Kind)}/>").ToArray();
        return Svg(
            (drawing.Left, drawing.Top, drawing.Width, drawing.Height), drawing.Sentence,
            drawing.Patches.Select(p => (p.X, p.Y, p.Width, p.Height, p.Turns, p.Columns, p.Rows, p.Cells)), plan, lines);
    }

    public static string Pieces(Plan plan) => SvgDrawing.Write(
        PatternWriter.Schematic(plan, 0), plan.Project.Edition, new Wording([.. plan.Sizes.Select(s => s.Name)], plan.Project.Edition).Say);

    /// <summary>The fabric of its pieces side by side, seams thick and openings broken.</summary>
    public static string Fabric(Plan plan)
    {
        var unrolled = Unrolled.Of(plan, plan.Sizes[0]);
        IEnumerable<string> Lines(IEnumerable<SeamLine> lines, string style) => lines.Select(l => string.Create(
            CultureInfo.InvariantCulture, $"<path d=\"M{l.X1:0.##} {l.Y1:0.##}L{l.X2:0.##} {l.Y2:0.##}\" {style}/>"));
        return Svg(
            (-Margin, -Margin, unrolled.Width + 2 * Margin, unrolled.Height + 2 * Margin), "The fabric of its pieces",
            unrolled.Pieces.Select(p => (p.X, p.Y, p.Width, p.Height, 0, p.Columns, p.Worn.Rows, p.Cells().ToArray())), plan,
            [
                .. Lines(unrolled.Openings, "stroke=\"#1c1c1c\" stroke-width=\".6\" stroke-dasharray=\"2 1\""),
                .. Lines(unrolled.Seams, "stroke=\"#1c1c1c\" stroke-width=\".8\""),
            ]);
    }

    private static string Style(string kind) => kind switch
    {
        "body" => "fill=\"none\" stroke=\"#7a7a7a\" stroke-width=\".3\" stroke-dasharray=\".6 .9\"",
        "edging" => "fill=\"#e8e8e8\" stroke=\"#7a7a7a\" stroke-width=\".3\"",
        "opening" => "fill=\"none\" stroke=\"#1c1c1c\" stroke-width=\".8\"",
        _ => "fill=\"none\" stroke=\"#1c1c1c\" stroke-width=\".3\"",
    };

    private static string Svg(
        (double Left, double Top, double Width, double Height) view, string title, IEnumerable<Fill> fills, Plan plan, IEnumerable<string> lines)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{view.Left:0.##} {view.Top:0.##} {view.Width:0.##} {view.Height:0.##}\" width=\"{view.Width * Pixels:0}\" height=\"{view.Height * Pixels:0}\" role=\"img\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{title}</title>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{view.Left:0.##}\" y=\"{view.Top:0.##}\" width=\"{view.Width:0.##}\" height=\"{view.Height:0.##}\" fill=\"#fff\"/>\n");
        var palette = YarnPalette.Of(plan);
        foreach (var fill in fills)
            Append(svg, fill, palette);
        foreach (var line in lines)
            svg.Append(line).Append('\n');
        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>
    /// Runs of one colour along rows, or along columns where those are fewer. The commonest colour lies under all others, so that nothing
    /// is seen between them, and lines overlap by a tenth.
    /// </summary>
    private static void Append(StringBuilder svg, Fill fill, int[] palette)
    {
        var (across, down) = fill.Turns % 2 == 0 ? (fill.Width, fill.Height) : (fill.Height, fill.Width);
        svg.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate({fill.X + fill.Width / 2:0.##} {fill.Y + fill.Height / 2:0.##}) rotate({90 * fill.Turns}) scale({across / fill.Columns:0.####} {down / fill.Rows:0.####}) translate({-fill.Columns / 2.0} {-fill.Rows / 2.0})\" fill=\"none\" stroke-width=\"1.1\">\n");
        var commonest = fill.Cells.Where(c => c != WornPiece.Empty).CountBy(c => c).MaxBy(c => c.Value).Key;
        var upright = Runs(fill, true).Count() < Runs(fill, false).Count();
        var colours = Runs(fill, upright).GroupBy(r => r.Cell).Where(g => g.Key != commonest).OrderBy(g => g.Key)
            .Prepend(Runs(fill with { Cells = [.. fill.Cells.Select(c => c == WornPiece.Empty ? c : commonest)] }, upright).GroupBy(r => r.Cell).Single());
        foreach (var runs in colours)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path stroke=\"#{(runs.Key == WornPiece.Plain ? palette[^1] : palette[runs.Key]):x6}\" d=\"");
            foreach (var (_, line, from, length) in runs)
                svg.Append(upright ? $"M{line}.5 {from}v{length}" : $"M{from} {line}.5h{length}");
            svg.Append("\"/>\n");
        }
        svg.Append("</g>\n");
    }

    private static IEnumerable<(byte Cell, int Line, int From, int Length)> Runs(Fill fill, bool upright)
    {
        var (lines, places) = upright ? (fill.Columns, fill.Rows) : (fill.Rows, fill.Columns);
        byte At(int line, int place) => upright ? fill.Cells[place * fill.Columns + line] : fill.Cells[line * fill.Columns + place];
        for (var line = 0; line < lines; line++)
        {
            for (int from = 0, to; from < places; from = to)
            {
                var cell = At(line, from);
                for (to = from + 1; to < places && At(line, to) == cell; to++) { }
                if (cell != WornPiece.Empty)
                    yield return (cell, line, from, to - from);
            }
        }
    }
}
