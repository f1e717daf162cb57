using System.CommandLine;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Drawing;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath booklet</c>: the pattern as HTML, PDF, text and pictures.</summary>
internal static class BookletCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var folder = new Option<string>("--out") { Description = "Folder for the files; made when it is missing, files of the same names are replaced.", Required = true };
        var terms = new Option<string?>("--terms") { Description = "us or uk; without it, as the document says." };
        var units = new Option<string?>("--units") { Description = "cm, in, cm-in or in-cm; without it, as the document says." };
        var hand = new Option<string?>("--hand") { Description = "right or left; without it, as the document says." };
        var size = new Option<string?>("--size") { Description = "One size alone, without parentheses." };
        var language = new Option<string?>("--language") { Description = "en-US, en-GB, de or es; without it, as the document says. The two of English choose its terms, too." };
        var letter = new Option<bool>("--letter") { Description = "US Letter pages instead of A4." };
        var print = new Option<string?>("--print") { Description = "normal, large (18 points) or compact; without it, normal." };
        var command = new Command("booklet", """
            Writes the pattern: index.html, booklet.pdf, booklet.txt and every picture as SVG; and what a buyer asks before
            she buys, listing.txt and listing.csv.

            Example: dyepath booklet project.json --out pattern
                     dyepath booklet --demo --out pattern --terms uk --size M
            """)
        {
            folder, terms, units, hand, size, language, letter, print,
        };
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var project = file.Read(terminal, parsed);
            var own = project.Edition;
            var (said, usage) = Choice("--language", parsed.GetValue(language), (own.Language, own.Terms),
            [
                ("en-US", (Language.English, Terms.Us)), ("en-GB", (Language.English, Terms.Uk)),
                ("de", (Language.German, own.Terms)), ("es", (Language.Spanish, own.Terms)),
            ]);
            var edition = own with
            {
                Language = said,
                Terms = Choice("--terms", parsed.GetValue(terms), usage, [("us", Terms.Us), ("uk", Terms.Uk)]),
                Units = Choice("--units", parsed.GetValue(units), own.Units,
                    [("cm", Units.Centimetres), ("in", Units.Inches), ("cm-in", Units.CentimetresThenInches), ("in-cm", Units.InchesThenCentimetres)]),
                Hand = Choice("--hand", parsed.GetValue(hand), own.Hand, [("right", Hand.Right), ("left", Hand.Left)]),
                Size = parsed.GetValue(size) ?? own.Size,
            };
            project = project with { Edition = edition };
            var pages = new Print(
                parsed.GetValue(letter) ? PageSize.Letter : PageSize.A4,
                Choice("--print", parsed.GetValue(print), TypeSize.Normal,
                    [("normal", TypeSize.Normal), ("large", TypeSize.Large), ("compact", TypeSize.Compact)]));
            if (ProjectFile.TryPlan(terminal, project, parsed.GetValue(file.Json), stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            if (edition.Size is { } one && plan.Sizes.All(s => s.Name != one))
                throw new BadInputException("--size", $"“{one}” is not a size of this pattern; it has {string.Join(", ", plan.Sizes.Select(s => s.Name))}.");
            if (BookletSize.TooLarge(plan, edition) is { } tooLarge)
                throw new BadInputException(tooLarge.Place, tooLarge.Text);
            var booklet = PatternWriter.Write(plan, stop);
            var (written, count) = terminal.Progress("Writing the booklet", progress =>
                Write(plan, booklet, edition, parsed.GetRequiredValue(folder), pages, progress, stop));
            if (parsed.GetValue(file.Json))
            {
                terminal.WriteJson(json =>
                {
                    json.WriteStartObject();
                    json.WriteStartArray("files");
                    foreach (var name in written)
                        json.WriteStringValue(name);
                    json.WriteEndArray();
                    json.WriteNumber("pages", count);
                    json.WriteEndObject();
                });
            }
            else
            {
                foreach (var name in written)
                    terminal.Output.WriteLine(name);
                terminal.Output.WriteLine($"The PDF has {count} {(count == 1 ? "page" : "pages")}.");
            }
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }

    private static (List<string> Files, int Pages) Write(
        Plan plan, Booklet booklet, Edition edition, string folder, Print print, IProgress<double>? progress, CancellationToken stop)
    {
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
        return ([.. files.Select(f => Path.Combine(folder, f.Name))], pages);
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
