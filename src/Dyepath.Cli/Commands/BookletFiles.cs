using System.CommandLine;
using System.Text;
using System.Text.Json;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Drawing;

namespace Dyepath.Cli.Commands;

/// <summary>How a booklet is worded and printed, and its files in a folder.</summary>
internal sealed class BookletFiles
{
    private readonly Option<string?> _terms = new("--terms") { Description = "us or uk; without it, as the document says." };
    private readonly Option<string?> _units = new("--units") { Description = "cm, in, cm-in or in-cm; without it, as the document says." };
    private readonly Option<string?> _hand = new("--hand") { Description = "right or left; without it, as the document says." };
    private readonly Option<string?> _language = new("--language") { Description = "en-US, en-GB, de or es; without it, as the document says. The two of English choose its terms, too." };
    private readonly Option<bool> _letter = new("--letter") { Description = "US Letter pages instead of A4." };
    private readonly Option<string?> _print = new("--print") { Description = "normal, large (18 points) or compact; without it, normal." };

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_terms, _units, _hand, _language, _letter, _print])
            command.Options.Add(option);
    }

    /// <summary>The edition that is asked for, in all sizes or the document's one.</summary>
    /// <param name="own">What the document says.</param>
    /// <exception cref="BadInputException">No such choice.</exception>
    public Edition Edition(ParseResult parsed, Edition own)
    {
        var (said, usage) = Choice("--language", parsed.GetValue(_language), (own.Language, own.Terms),
        [
            ("en-US", (Language.English, Terms.Us)), ("en-GB", (Language.English, Terms.Uk)),
            ("de", (Language.German, own.Terms)), ("es", (Language.Spanish, own.Terms)),
        ]);
        return own with
        {
            Language = said,
            Terms = Choice("--terms", parsed.GetValue(_terms), usage, [("us", Terms.Us), ("uk", Terms.Uk)]),
            Units = Choice("--units", parsed.GetValue(_units), own.Units,
                [("cm", Units.Centimetres), ("in", Units.Inches), ("cm-in", Units.CentimetresThenInches), ("in-cm", Units.InchesThenCentimetres)]),
            Hand = Choice("--hand", parsed.GetValue(_hand), own.Hand, [("right", Hand.Right), ("left", Hand.Left)]),
        };
    }

    /// <summary>Pages and print that are asked for.</summary>
    /// <inheritdoc cref="Edition" path="/exception"/>
    public Print Print(ParseResult parsed) => new(
        parsed.GetValue(_letter) ? PageSize.Letter : PageSize.A4,
        Choice("--print", parsed.GetValue(_print), TypeSize.Normal,
            [("normal", TypeSize.Normal), ("large", TypeSize.Large), ("compact", TypeSize.Compact)]));

    /// <summary>Writes the booklet of the plan's own edition.</summary>
    /// <exception cref="BadInputException">Too large to be printed, or the folder cannot be written.</exception>
    public static WrittenBooklet Write(Terminal terminal, Plan plan, string folder, Print print, CancellationToken stop)
    {
        var edition = plan.Project.Edition;
        if (BookletSize.TooLarge(plan, edition) is { } tooLarge)
            throw new BadInputException(tooLarge.Place, tooLarge.Text);
        var booklet = PatternWriter.Write(plan, stop);
        return terminal.Progress("Writing the booklet", progress => Write(plan, booklet, folder, print, progress, stop));
    }

    private static WrittenBooklet Write(
        Plan plan, Booklet booklet, string folder, Print print, IProgress<double>? progress, CancellationToken stop)
    {
        var edition = plan.Project.Edition;
        var wording = new Wording(booklet, edition);
        var figures = booklet.For(edition).Sections.SelectMany(s => s.Blocks).OfType<Figure>().ToArray();
        var pages = 0;
        var files = new List<(string Name, Action<Stream> Write)>
        {
            ("index.html", stream =>
            {
                using var text = new StreamWriter(stream, leaveOpen: true);
                HtmlBooklet.Write(booklet, edition, wording.Say, text, stop);
            }
            ),
            ("booklet.pdf", stream => pages = PdfBooklet.Write(
                booklet, edition, wording.Say, print, stream, cancel: stop)),
            ("listing.txt", stream => stream.Write(Encoding.UTF8.GetBytes(ListingSheet.Text(plan, booklet)))),
            ("listing.csv", stream => stream.Write(Encoding.UTF8.GetBytes(ListingSheet.Spreadsheet(plan, booklet)))),
            ("booklet.txt", stream => stream.Write(Encoding.UTF8.GetBytes(TextBooklet.Write(booklet, edition)))),
        };
        for (var i = 0; i < figures.Length; i++)
        {
            var figure = figures[i];
            files.Add(($"figure-{i + 1:00}.svg", stream => stream.Write(Encoding.UTF8.GetBytes(
                SvgDrawing.Write(figure, edition, wording.Say, stop)))));
        }
        OutputFolder.Write(folder, files, progress, stop);
        return new WrittenBooklet([.. files.Select(f => Path.Combine(folder, f.Name))], pages);
    }

    private static T Choice<T>(string option, string? said, T otherwise, (string Name, T Value)[] choices)
    {
        if (said is null)
            return otherwise;
        foreach (var (name, value) in choices)
        {
            if (name == said)
                return value;
        }
        throw new BadInputException(option, $"“{said}” is not a choice; use {string.Join(", ", choices.Select(c => c.Name))}.");
    }
}

/// <param name="Files">With their folder.</param>
/// <param name="Pages">Of the PDF.</param>
internal sealed record WrittenBooklet(IReadOnlyList<string> Files, int Pages)
{
    /// <summary>Writes its files and pages into an object that is open.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteList("files", Files);
        json.WriteNumber("pages", Pages);
    }

    public void Print(TextWriter output)
    {
        foreach (var name in Files)
            output.WriteLine(name);
        output.WriteLine($"The PDF has {Pages} {(Pages == 1 ? "page" : "pages")}.");
    }
}
