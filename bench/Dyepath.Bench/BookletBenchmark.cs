using System.Collections.Immutable;
using System.Diagnostics;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Instructions;
using Dyepath.Core.Quantities;
using Dyepath.Drawing;

namespace Dyepath.Bench;

/// <summary>A booklet of nine sizes with a colour chart for each of five stitch counts, as HTML and as PDF.</summary>
public static class BookletBenchmark
{
    private static readonly ImmutableArray<string> Sizes = ["XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"];

    /// <summary>Prints milliseconds (best of five after one warm-up, and the first) and bytes.</summary>
    public static void Run(TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        var booklet = Sample(rows: 72, counts: [67, 78, 89, 100, 111]);
        var say = new Wording(booklet, booklet.Edition).Say;
        output.WriteLine("booklet of 9 sizes, 5 charts of 67 to 111 stitches and 72 rows");
        Time("PDF ", () =>
        {
            using var pdf = new MemoryStream();
            PdfBooklet.Write(booklet, booklet.Edition, say, PageSize.A4, pdf, CancellationToken.None);
            return pdf.Length;
        });
        Time("HTML", () => HtmlBooklet.Write(booklet, booklet.Edition, say).Length);
        foreach (var rows in new[] { 36, 72, 144, 288 })
        {
            var scaled = Sample(rows, [100]);
            Time($"PDF, one chart of 100 stitches and {rows} rows", () =>
            {
                using var pdf = new MemoryStream();
                PdfBooklet.Write(scaled, scaled.Edition, say, PageSize.A4, pdf, CancellationToken.None);
                return pdf.Length;
            });
        }

        void Time(string name, Func<long> work)
        {
            var times = new double[6];
            var size = 0L;
            for (var i = 0; i < times.Length; i++)
            {
                var start = Stopwatch.GetTimestamp();
                size = work();
                times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }
            output.WriteLine(FormattableString.Invariant($"  {name}: {times[1..].Min():0} ms (first {times[0]:0} ms), {size / 1024} KB"));
        }
    }

    private static Booklet Sample(int rows, ImmutableArray<int> counts)
    {
        var edition = new Edition(Terms.Us, Units.CentimetresThenInches, Hand.Right);
        var measures = Enumerable.Range(0, 12).Select(m => ImmutableArray.CreateRange(
            [Phrase.Plain($"Measure {m + 1}"), .. Sizes.Select((_, n) => new Phrase([new Bare(Length.FromCentimetres(20 + 5 * m + 3 * n))]))]));
        var steps = Enumerable.Range(1, 40).Select(n => new Instruction(
            Phrase.Plain($"Row {n}"), Phrase.Of($"{new Term("ch")} 1, {new Term("sc")} in each across: {new PerSize<int>([.. Sizes.Select((_, s) => 61 + 6 * s)])} {new Term("sc")}, turn.")));
        return new Booklet("Tideline", "A designer", Sizes, edition,
        [
            new Section("sizes", Phrase.Plain("Sizes"), [new Table(Phrase.Plain("Finished measurements."), [Phrase.Plain("Size"), .. Sizes.Select(Phrase.Plain)], [.. measures], PerSizeColumns: true)]),
            new Section("pieces", Phrase.Plain("Pieces"), [new Steps([.. steps])]),
            .. counts.Select(count => new Section($"chart{count}", Phrase.Plain($"Chart, {count} stitches"), [new Figure(Chart(count, rows), Phrase.Plain($"Colour chart for {count} stitches."), Phrase.Plain("Diamonds."))])),
        ]);
    }

    private static ColourChart Chart(int stitches, int rows)
    {
        byte[] sequence = [0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 3, 3];
        var cells = ImmutableArray.CreateBuilder<byte>(stitches * rows);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < stitches; column++)
                cells.Add(sequence[(row * stitches + (row % 2 == 1 ? stitches - 1 - column : column)) % sequence.Length]);
        }
        return new ColourChart(
            [new("Sand", new Srgb(0xc9, 0xa8, 0x7c), "A"), new("Glass", new Srgb(0x6f, 0xa8, 0x9a), "B"), new("Foam", new Srgb(0xf1, 0xee, 0xe4), "C"), new("Deep", new Srgb(0x1e, 0x3f, 0x5a), "D")],
            Working.Turned, stitches, rows, cells.ToImmutable(),
            [.. Enumerable.Repeat(stitches, rows)], [.. Enumerable.Repeat(0, rows)], 1,
            Length.FromCentimetres(10 / 14.0), Length.FromCentimetres(10 / 16.0));
    }
}
