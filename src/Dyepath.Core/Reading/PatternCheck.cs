using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Reading;

/// <summary>
/// The technical check: the plan's numbers by a second route, and the written pattern read back in both terms and in every pair of
/// units, its rows counted from their words and held against the plan.
/// </summary>
public static class PatternCheck
{
    /// <summary>What it takes to hold one size's words against the plan.</summary>
    private const int StepsOfSize = 100_000;

    /// <returns>Every disagreement with its place; empty when all agrees.</returns>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static ImmutableArray<Finding> Run(Plan plan, CancellationToken cancel = default) =>
        [.. Steps(plan, cancel).SelectMany(step => step()).DistinctBy(f => (f.Place, f.Text))];

    /// <summary>The same, step by step, for who wants to show how far it has come or to stop it.</summary>
    /// <returns>Each finds what disagrees: the first in the plan's numbers, each other one in one edition of the text.</returns>
    public static ImmutableArray<Func<ImmutableArray<Finding>>> Steps(Plan plan, CancellationToken cancel = default) =>
        Steps(plan, () => Effort.OfPlan(cancel));

    /// <param name="effort">A new one for each step.</param>
    internal static ImmutableArray<Func<ImmutableArray<Finding>>> Steps(Plan plan, Func<Effort> effort)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Booklet? booklet = null;
        // Other languages say the same phrases, and are not read.
        var own = plan.Project.Edition with { Language = Language.English };
        var editions = Enum.GetValues<Terms>().SelectMany(
            _ => Enum.GetValues<Units>(), (terms, units) => own with { Terms = terms, Units = units, Size = null });
        if (own.Size is not null)
            editions = editions.Append(own);
        return
        [
            () => PlanCheck.Verify(plan, effort()),
            .. editions.Select(edition => new Func<ImmutableArray<Finding>>(() => Edition(edition))),
        ];

        ImmutableArray<Finding> Edition(Edition edition)
        {
            var steps = effort();
            return SafetyNet.Run(
                steps, () => Text(plan, TextBooklet.Write(booklet ??= PatternWriter.Write(plan, steps), edition), steps),
                reason => [reason]);
        }
    }

    /// <summary>
    /// A text that was written earlier or by hand: line by line against what the document writes in the same language, terms, units, hand
    /// and size, and, where it is English, read back as well.
    /// </summary>
    /// <returns>Every line that differs and every disagreement; the edition that it was taken for.</returns>
    public static (Edition Edition, ImmutableArray<Finding> Findings) Delivered(Plan plan, string text, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(text);
        var effort = Effort.OfPlan(cancel);
        var booklet = PatternWriter.Write(plan, effort);
        var edition = DeliveredText.EditionOf(plan, booklet, text, effort);
        var findings = DeliveredText.Compare(TextBooklet.Write(booklet, edition), text);
        return (edition, [.. edition.Language == Language.English ? findings.Concat(ReadBack()) : findings]);

        ImmutableArray<Finding> ReadBack()
        {
            try
            {
                return Text(plan, text, effort);
            }
            catch (FormatException unreadable)
            {
                return [new Finding(FindingLevel.Fault, "text", unreadable.Message)];
            }
        }
    }

    /// <summary>Reads one edition's text, for all sizes or for one, and holds it against the plan.</summary>
    /// <exception cref="FormatException">The text is not a booklet's.</exception>
    public static ImmutableArray<Finding> Text(Plan plan, string text) => Text(plan, text, new Effort());

    private static ImmutableArray<Finding> Text(Plan plan, string text, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(plan);
        effort.Spend(text.Length);
        var read = BookletReader.Read(text);
        var notes = new List<(string Place, string Text)>();
        notes.AddRange(read.Disagreements.Select(wrong => ("", wrong)));
        if (read.Sizes.Any(name => plan.Sizes.All(s => s.Name != name)))
            notes.Add(("sizes", $"the text has sizes {string.Join(", ", read.Sizes)}"));
        foreach (var size in plan.Sizes.Where(s => read.Sizes.Contains(s.Name)))
        {
            effort.Spend(StepsOfSize);
            PieceComparison.Compare(plan, size, read, notes);
            EdgingComparison.Compare(plan.Construction, size, read, notes);
            TableComparison.Compare(plan, size, read, notes);
            SeamComparison.Compare(plan, size, read, notes);
        }
        BeforeComparison.Compare(plan, read, notes);
        LineComparison.Compare(plan, read, notes);
        SentenceRules.Compare(plan, read, notes);
        effort.Spend(StepsOfSize);
        RowStartComparison.Compare(plan, read, notes);
        ShiftComparison.Compare(plan, read, notes);
        return [.. notes.Select(n => new Finding(FindingLevel.Fault, n.Place.Length == 0 ? "pattern" : $"pattern: {n.Place}", n.Text))];
    }
}
