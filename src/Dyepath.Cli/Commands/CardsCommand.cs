using System.CommandLine;
using System.Text;
using Dyepath.Core.Workshops;
using Dyepath.Drawing;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath cards</c>: a workshop's cards, one for each person, and what to bring.</summary>
internal static class CardsCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "The workshop's document; - reads standard input.", Arity = ArgumentArity.ZeroOrOne };
        var folder = new Option<string?>("--out") { Description = "Folder for the files; made when it is missing, files of the same names are replaced." };
        var starter = new Option<bool>("--new") { Description = "Write a commented document to begin with, to standard output." };
        var json = new Option<bool>("--json") { Description = "Write the result as JSON." };
        var command = new Command("cards", """
            Prints a card of half a page for each person of a workshop: by the colours of her own yarn, without a count. Beside them the
            list of what to bring. As PDF on A4 and Letter, two cards to a page, and as HTML.

            Example: dyepath cards --new > workshop.json
                     dyepath cards workshop.json --out cards
            """)
        {
            file, folder, starter, json,
        };
        command.SetAction((parsed, stop) =>
        {
            if (parsed.GetValue(starter))
            {
                terminal.Output.Write(WorkshopDocument.Starter());
                return Task.FromResult(ExitCode.Success);
            }
            var from = parsed.GetValue(file) ?? throw new BadInputException("command line", "Name a workshop's document, or - for standard input; dyepath cards --new writes one.");
            var to = parsed.GetValue(folder) ?? throw new BadInputException("--out", "Name a folder for the files.");
            var (workshop, faults) = WorkshopDocument.Read(terminal.ReadDocument(from, WorkshopDocument.MostBytes));
            if (workshop is null)
                throw new BadInputException([.. faults.Select(ProjectFile.AsInput)]);
            var cards = CardWriter.Write(workshop);
            (string Name, Action<Stream> Write)[] files =
            [
                ("cards.html", stream => stream.Write(Encoding.UTF8.GetBytes(CardSheets.WriteHtml(cards)))),
                ("cards-a4.pdf", stream => CardSheets.WritePdf(cards, PageSize.A4, stream, stop)),
                ("cards-letter.pdf", stream => CardSheets.WritePdf(cards, PageSize.Letter, stream, stop)),
            ];
            OutputFolder.Write(to, files, null, stop);
            string[] written = [.. files.Select(f => Path.Combine(to, f.Name))];
            if (parsed.GetValue(json))
            {
                terminal.WriteJson(writer =>
                {
                    writer.WriteStartObject();
                    writer.WriteNumber("cards", cards.Cards.Length);
                    writer.WriteList("files", written);
                    writer.WriteList("kit", cards.Kit);
                    writer.WriteEndObject();
                });
            }
            else
            {
                foreach (var name in written)
                    terminal.Output.WriteLine(name);
            }
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }
}
