using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Garments.Checking;
using Dyepath.Core.Instructions.Writing;

namespace Dyepath.Core.Instructions.Reading;

/// <summary>
/// The technical check: the plan's numbers by a second route, and the written pattern read back in every combination of terms and
/// units, its rows counted from their words and held against the plan.
/// </summary>
public static class PatternCheck
{
    /// <returns>Every disagreement with its place; empty when all agrees.</returns>
    public static ImmutableArray<Finding> Run(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var found = ImmutableArray.CreateBuilder<Finding>();
        found.AddRange(PlanCheck.Verify(plan));
        var booklet = PatternWriter.Write(plan);
        foreach (var terms in Enum.GetValues<Terms>())
        {
            var edition = plan.Project.Edition with { Terms = terms, Size = null };
            Compare(plan, BookletReader.Read(TextBooklet.Write(booklet, edition)), found);
        }
        return [.. found.DistinctBy(f => (f.Place, f.Text))];
    }

    /// <summary>Holds what the text says against the plan.</summary>
    private static void Compare(Plan plan, ReadBooklet read, ImmutableArray<Finding>.Builder found)
    {
        foreach (var wrong in read.Disagreements)
            found.Add(new Finding(FindingLevel.Fault, "pattern", wrong));
        foreach (var size in plan.Sizes)
        {
            var pieces = read.Pieces.Where(p => p.Size == size.Name).ToArray();
            if (pieces.Length != size.Pieces.Length)
            {
                Wrong(size.Name, $"the text has {pieces.Length} pieces, the plan {size.Pieces.Length}");
                continue;
            }
            foreach (var (said, planned) in pieces.Zip(size.Pieces))
            {
                var place = $"{size.Name}, {planned.Name}";
                if (said.Chains != planned.FoundationChains)
                    Wrong(place, $"the text begins with {said.Chains} chains, the plan with {planned.FoundationChains}");
                if (said.Rows != planned.Rows)
                    Wrong(place, $"the text works {said.Rows} rows, the plan {planned.Rows}");
                for (var row = 0; row < said.RowStitches.Length; row++)
                {
                    var stitches = planned.RowStitches[row % planned.RowStitches.Length];
                    if (said.RowStitches[row] != stitches)
                        Wrong(place, $"row {row + 1} has {said.RowStitches[row]} stitches in the text, {stitches} in the plan");
                }
            }
        }

        void Wrong(string place, string text) => found.Add(new Finding(FindingLevel.Fault, $"pattern: {place}", text));
    }
}
