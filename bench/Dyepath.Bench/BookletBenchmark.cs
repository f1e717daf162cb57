using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Drawing;

namespace Dyepath.Bench;

/// <summary>The demo's booklet as PDF, HTML and text. Aim for the PDF of all sizes: under a second and under 2 MB.</summary>
internal static class BookletBenchmark
{
    private const int Rounds = 7;

    public static void Run(TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        output.WriteLine("booklet of the demo");
        foreach (var sizes in new[] { 9, 3, 1 })
        {
            var project = ProjectReader.Read(DemoProject.Utf8).Project!;
            project = project with { Sizes = project.Sizes with { Sizes = [.. project.Sizes.Sizes.Skip((9 - sizes) / 2).Take(sizes)] } };
            var booklet = PatternWriter.Write(GarmentPlanner.Plan(project).Plan!);
            var say = new Wording(booklet, booklet.Edition).Say;
            Time(output, $"PDF, {sizes} sizes", () =>
            {
                using var pdf = new MemoryStream();
                PdfBooklet.Write(booklet, booklet.Edition, say, PageSize.A4, pdf, CancellationToken.None);
                return pdf.Length;
            });
            Time(output, $"HTML, {sizes} sizes", () => HtmlBooklet.Write(booklet, booklet.Edition, say).Length);
            Time(output, $"text, {sizes} sizes", () => TextBooklet.Write(booklet, booklet.Edition).Length);
        }
    }

    private static void Time(TextWriter output, string what, Func<long> write)
    {
        long length = 0;
        var first = Stopwatches.Seconds(() => length = write());
        var rest = Enumerable.Range(0, Rounds).Select(_ => Stopwatches.Seconds(() => write())).ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  {what,-16} {1000 * Stopwatches.Median(rest),7:0} ms warm, {1000 * first,7:0} ms first, {length / 1e3,7:0} kB"));
    }
}
