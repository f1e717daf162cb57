using System.CommandLine;
using System.Text;
using System.Text.Json;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Reading;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath errata</c>: what a corrected pattern says otherwise than the published one, and whom it touches.</summary>
internal static class ErrataCommand
{
    public static Command Create(Terminal terminal)
    {
        var published = new Argument<string>("OLD") { Description = "The document that the published pattern was made from; - reads standard input." };
        var corrected = new Argument<string>("NEW") { Description = "The corrected document; - reads standard input." };
        var file = new Option<string?>("--out") { Description = "File for the text, which is replaced where it is there; without it, standard output." };
        var json = new Option<bool>("--json") { Description = "Write the result as JSON." };
        var command = new Command("errata", """
            Compares two documents as a maker reads their patterns: every line of each size that both have, in the language, terms,
            units and hand of the new one. First whom it touches, and from which row on; then what stood at each place, and what
            stands there now.

            Example: dyepath errata published.json project.json
                     dyepath errata published.json project.json --out errata.txt
            """)
        {
            published, corrected, file, json,
        };
        command.SetAction((parsed, stop) =>
        {
            var (old, young) = (Named(parsed.GetRequiredValue(published)), Named(parsed.GetRequiredValue(corrected)));
            if (old == "-" && young == "-")
                throw new BadInputException("command line", "Only one of the two can be read from standard input; name a file for the other.");
            if (parsed.GetValue(file) is "")
                throw new BadInputException("--out", "It is empty; name a file.");
            if (parsed.GetValue(json) && parsed.GetValue(file) is not null)
                throw new BadInputException("--out", "The file is text; leave out --json, or --out.");
            var (was, now) = (ProjectFile.Read(terminal, old), ProjectFile.Read(terminal, young));
            if (ProjectFile.TryPlan(terminal, was, terminal.Json, stop, old) is not { } before
                || ProjectFile.TryPlan(terminal, now, terminal.Json, stop, young) is not { } after)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            var errata = Compared(before, after, stop);
            if (errata.HasOneNumber)
                terminal.Errors.WriteLine($"Both call themselves edition {errata.Now.Edition.Number}: give the corrected pattern the next number before anybody gets it.");
            if (parsed.GetValue(json))
                terminal.WriteJson(writer => Write(writer, errata));
            else if (parsed.GetValue(file) is { } path)
                Save(terminal, path, errata);
            else
                terminal.Output.Write(errata.Text());
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }

    private static string Named(string file) => file is ['-', _, ..]
        ? throw new BadInputException(file, $"It is not an option of this command; see --help. A file of that name is written ./{file}.")
        : file;

    private static Errata Compared(Plan was, Plan now, CancellationToken stop)
    {
        try
        {
            return Errata.Of(was, now, stop);
        }
        catch (TooMuchWorkException tooMuch)
        {
            throw new BadInputException(tooMuch.Part.Place, $"Comparing the two would take too long. {tooMuch.Part.LeaveOut}");
        }
    }

    private static void Save(Terminal terminal, string path, Errata errata)
    {
        try
        {
            WholeFile.Write(path, stream => stream.Write(Encoding.UTF8.GetBytes(errata.Text())));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException("--out", $"The file cannot be written: {fault.Message}");
        }
        terminal.Output.WriteLine(path);
    }

    private static void Write(Utf8JsonWriter json, Errata errata)
    {
        json.WriteStartObject();
        json.WriteString("title", errata.Now.Title);
        Edition("was", errata.WasEdition);
        Edition("now", errata.Now.Edition);
        Names("sizes", errata.Sizes);
        Names("newSizes", errata.NewSizes);
        Names("goneSizes", errata.GoneSizes);
        var wording = new Wording(errata.Now, errata.Now.Edition);
        json.WriteStartArray("touched");
        foreach (var touch in errata.Touched)
        {
            json.WriteStartObject();
            Names("sizes", touch.Sizes);
            Names("who", touch.Who.Select(wording.Text));
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("changes");
        foreach (var change in errata.Changes)
        {
            json.WriteStartObject();
            json.WriteString("section", change.Title);
            json.WriteString("heading", change.Heading);
            json.WriteString("label", change.Label);
            json.WriteString("was", change.Was);
            json.WriteString("now", change.Now);
            json.WriteBoolean("moved", change.IsMoved);
            Names("sizes", change.Sizes);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();

        void Edition(string name, Edition edition)
        {
            json.WriteStartObject(name);
            if (edition.Number is { } number)
                json.WriteNumber("number", number);
            if (edition.Date is { } date)
                json.WriteString("date", date.ToString("O", System.Globalization.CultureInfo.InvariantCulture));
            json.WriteEndObject();
        }

        void Names(string name, IEnumerable<string> names)
        {
            json.WriteStartArray(name);
            foreach (var one in names)
                json.WriteStringValue(one);
            json.WriteEndArray();
        }
    }
}
