using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
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
        output.WriteLine("booklet of the demo, and how it grows with sizes and sections");
        var demo = ProjectReader.Read(DemoProject.Utf8).Project!;
        foreach (var sizes in new[] { 9, 3, 1 })
            Booklet(output, $"{sizes} sizes", WithSizes(demo, sizes));
        foreach (var sections in new[] { 4, 3 })
            Booklet(output, $"{sections} sections", WithSections(demo, sections));
    }

    private static void Booklet(TextWriter output, string what, Project project)
    {
        var result = GarmentPlanner.Plan(project);
        if (!result.HasPlan)
        {
            output.WriteLine($"  {what}: no plan. {string.Join(" ", result.Reasons.Select(r => r.Text))}");
            return;
        }
        var booklet = PatternWriter.Write(result.Plan);
        var say = new Wording(booklet, booklet.Edition).Say;
        Time(output, $"PDF, {what}", () =>
        {
            using var pdf = new MemoryStream();
            PdfBooklet.Write(booklet, booklet.Edition, say, new Print(PageSize.A4), pdf);
            return pdf.Length;
        });
        Time(output, $"HTML, {what}", () => HtmlBooklet.Write(booklet, booklet.Edition, say).Length);
        Time(output, $"text, {what}", () => TextBooklet.Write(booklet, booklet.Edition).Length);
    }

    /// <summary>The middle sizes, the middlemost being the base.</summary>
    private static Project WithSizes(Project project, int sizes)
    {
        var all = project.Sizes.Sizes;
        return project with
        {
            Sizes = project.Sizes with { Sizes = [.. all.Skip((all.Length - sizes) / 2).Take(sizes)], Base = all[all.Length / 2] },
        };
    }

    /// <summary>The yarn without its last sections.</summary>
    private static Project WithSections(Project project, int sections) => project with
    {
        Yarn = project.Yarn with
        {
            Sections = project.Yarn.Sections[..sections],
            Counted = [.. project.Yarn.Counted.Select(ball => ball with { Repeats = [.. ball.Repeats.Select(r => r[..sections])] })],
        },
        Fabric = project.Fabric with { SectionStitches = project.Fabric.SectionStitches?[..sections] },
    };

    private static void Time(TextWriter output, string what, Func<long> write)
    {
        long length = 0;
        var first = Stopwatches.Seconds(() => length = write());
        var rest = Enumerable.Range(0, Rounds).Select(_ => Stopwatches.Seconds(() => write())).ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  {what,-16} {1000 * Stopwatches.Median(rest),7:0} ms warm, {1000 * first,7:0} ms first, {length / 1e3,7:0} kB"));
    }
}
