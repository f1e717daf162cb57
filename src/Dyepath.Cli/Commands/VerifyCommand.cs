using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;
using Dyepath.Core.Reading;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath verify</c>: the document's faults, then the technical check of everything derived from it.</summary>
internal static class VerifyCommand
{
    private const int MostBytes = 4_000_000;

    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var text = new Option<string?>("--text") { Description = "A booklet's text as it is handed out, booklet.txt, in any language, terms, units, hand and size." };
        var command = new Command("verify", """
            Lists every fault of the document with its place, and then checks the pattern as a technical editor would: every number of the
            plan by a second route, and the written rows by counting their words.

            With --text a booklet's text that was written earlier, or changed by hand, is compared with the document line by line.

            Example: dyepath verify project.json
                     dyepath verify project.json --text pattern/booklet.txt
            """)
        {
            text,
        };
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var json = parsed.GetValue(file.Json);
            if (ProjectFile.TryPlan(terminal, file.Read(terminal, parsed), json, stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            var delivered = parsed.GetValue(text) is { } path
                ? PatternCheck.Delivered(plan, Encoding.UTF8.GetString(terminal.ReadDocument(path, MostBytes)).ReplaceLineEndings("\n"), stop)
                : default;
            var isDelivered = delivered.Edition is not null;
            var wrong = isDelivered ? delivered.Findings : PatternCheck.Run(plan, stop);
            if (json)
            {
                terminal.WriteJson(writer =>
                {
                    writer.WriteStartObject();
                    Terminal.WriteFaults(writer, [.. wrong.Select(w => new InputFault(w.Place, w.Text))]);
                    writer.WriteStartArray("findings");
                    foreach (var finding in plan.Findings)
                        writer.WriteStringValue($"{finding.Place}: {finding.Text}");
                    writer.WriteEndArray();
                    writer.WriteEndObject();
                });
            }
            else
            {
                foreach (var finding in plan.Findings.Concat(wrong))
                    terminal.Output.WriteLine($"{finding.Level.ToString().ToLowerInvariant()}: {finding.Place}: {finding.Text}");
                if (delivered.Edition is { } edition)
                    terminal.Output.WriteLine($"Compared with the text in {LanguageTags.Of(edition.Language, edition.Terms)}, {edition.Units}, {edition.Hand.ToString().ToLowerInvariant()} hand, {(edition.Size is { } one ? $"size {one}" : "all sizes")}, line by line.");
                terminal.Output.WriteLine(wrong.IsEmpty && isDelivered ? "Every line is the document's." : wrong.IsEmpty
                    ? $"Nothing disagrees. Compared: the plan's numbers by a second route, and the text in {PatternCheck.Steps(plan, stop).Length - 1} editions with the plan: rows counted from their words, openings, edgings, seams, tables, row starts and pairs of units. Words of your own, and sentences without a number, are not compared."
                    : $"{wrong.Length} {(wrong.Length == 1 ? "thing disagrees" : "things disagree")}.");
            }
            return Task.FromResult(wrong.IsEmpty ? ExitCode.Success : isDelivered ? ExitCode.BadInput : ExitCode.InternalFault);
        });
        return command;
    }
}
