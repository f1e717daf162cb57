using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Limits;

namespace Dyepath.Drawing.Tests;

/// <summary>Writing a booklet stops wherever it looks, and does not begin where it could not end.</summary>
public sealed class StopTests
{
    private static readonly Booklet Booklet = SampleBooklet.Booklet;

    private static readonly Func<Phrase, ImmutableArray<TextSpan>> Say = SampleBooklet.Saying(Booklet, Booklet.Edition);

    [Fact]
    public void Html_stops_at_whichever_look_it_is_cancelled() =>
        Stops(effort => HtmlBooklet.Write(Booklet, Booklet.Edition, Say, TextWriter.Null, effort));

    [Fact]
    public void Pdf_stops_at_whichever_look_it_is_cancelled() => Stops(effort =>
    {
        using var output = new MemoryStream();
        try
        {
            PdfBooklet.Write(Booklet, Booklet.Edition, Say, new Print(PageSize.A4), output, null, effort);
        }
        catch (OperationCanceledException)
        {
            Assert.Equal(0, output.Length);
            throw;
        }
    });

    [Fact]
    public void A_picture_stops_at_whichever_look_it_is_cancelled() => Stops(effort =>
        SvgDrawing.Write(SampleBooklet.Turned(120, 300), "Chart.", "", Booklet.Edition, Say, effort));

    [Fact]
    public void A_chart_beyond_the_limit_is_refused_before_it_is_drawn()
    {
        var chart = SampleBooklet.Turned(1_000, BookletSize.MostChartStitches / 1_000 + 1);
        var figure = new Figure(chart, Phrase.Plain("Chart."), Phrase.Plain("Large."));
        var booklet = Booklet with { Sections = [new Section("charts", Phrase.Plain("Charts"), [figure])] };
        var effort = new Effort { Watch = _ => Assert.Fail("Something was drawn.") };
        Assert.Throws<TooMuchWorkException>(() => HtmlBooklet.Write(booklet, Booklet.Edition, Say, TextWriter.Null, effort));
        Assert.Throws<TooMuchWorkException>(() => PdfBooklet.Write(booklet, Booklet.Edition, Say, new Print(PageSize.A4), Stream.Null, null, effort));
    }

    private static void Stops(Action<Effort> work)
    {
        var looks = 0;
        work(new Effort { Watch = _ => looks++ });
        Assert.True(looks > 100, $"only {looks} looks");
        Stopped.At([1, 2, looks / 100, looks / 10, looks / 2, looks], work);
    }
}
