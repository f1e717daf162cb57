using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;

namespace Dyepath.Drawing.Tests;

/// <summary>Writes the sample booklet beside the test program, for people to read page by page; run it by name.</summary>
public sealed class SamplesToLookAt
{
    [Fact(Explicit = true)]
    public void The_sample_booklet_in_every_form()
    {
        var folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "samples"));
        Write("a4", SampleBooklet.Everyone, PageSize.A4);
        Write("letter-uk-left-one-size", new Edition(Terms.Uk, Units.InchesThenCentimetres, Hand.Left, "M"), PageSize.Letter);

        void Write(string name, Edition edition, PageSize size)
        {
            var say = SampleBooklet.Saying(SampleBooklet.Booklet, edition);
            File.WriteAllText(Path.Combine(folder.FullName, name + ".html"), HtmlBooklet.Write(SampleBooklet.Booklet, edition, say));
            using var pdf = File.Create(Path.Combine(folder.FullName, name + ".pdf"));
            PdfBooklet.Write(SampleBooklet.Booklet, edition, say, new Print(size), pdf);
            foreach (var (figure, i) in SampleBooklet.Booklet.Sections.SelectMany(s => s.Blocks).OfType<Figure>().Select((f, i) => (f, i)))
                File.WriteAllText(Path.Combine(folder.FullName, $"{name}-{i}.svg"), SvgDrawing.Write(figure, edition, say));
        }
    }

    [Fact(Explicit = true)]
    public void Every_edging_by_its_chart()
    {
        var folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "samples"));
        foreach (var edging in EdgingLibrary.All)
        {
            var svg = SvgDrawing.Write(
                new Figure(edging.Chart, edging.Name, Phrase.Plain("The steps say the same in words.")), SampleBooklet.Everyone,
                SampleBooklet.Saying(SampleBooklet.Booklet, SampleBooklet.Everyone));
            File.WriteAllText(Path.Combine(folder.FullName, $"edging-{edging.Id}.svg"), svg);
        }
    }
}
