using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects.Description;

/// <summary>What the numbers of a yarn must agree on.</summary>
internal static class YarnChecks
{
    /// <summary>From cord to the finest lace; beyond, a unit was mistaken.</summary>
    private const double LeastMetresPerGram = 0.01;

    private const double MostMetresPerGram = 100;

    public static void Grist(Place ball, Length length, Mass mass, FaultList faults)
    {
        var metresPerGram = length.Metres / mass.Grams;
        if (metresPerGram is < LeastMetresPerGram or > MostMetresPerGram)
        {
            faults.Meaning(
                ball, FormattableString.Invariant($"{LeastMetresPerGram} to {MostMetresPerGram} m of yarn in a gram"),
                "Check both units.", FormattableString.Invariant($"{metresPerGram:0.###} m in a gram"));
        }
    }

    /// <summary>A part of a section is no longer than the section.</summary>
    public static void Within(Place section, string part, Length? partLength, Length? sectionLength, FaultList faults)
    {
        if (partLength > Length.Zero && sectionLength is null)
            faults.Meaning(section.Member(part), "only beside a length", "Add the section's length.");
        else if (partLength > sectionLength)
            faults.Meaning(section.Member(part), $"at most the section's length, {sectionLength}", "Check both lengths.");
    }

    public static void Sections(Place yarn, ImmutableArray<YarnSection> sections, FaultList faults)
    {
        var place = yarn.Member("sections");
        var measured = sections.Count(s => s.Length is not null);
        var byName = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < sections.Length; i++)
        {
            if (sections[i].Length is null && measured > 0)
                faults.Meaning(
                    place.Item(i).Member("length"), "a length for every section, or for none", "Measure this section too.", "nothing");
            if (byName.TryGetValue(sections[i].Name, out var first) && sections[first].Colour != sections[i].Colour)
            {
                faults.Meaning(
                    place.Item(i).Member("colour"), $"{sections[first].Colour}, as in sections[{first}] of the same name",
                    "Give the two colours names of their own, or make them equal.");
            }
            byName.TryAdd(sections[i].Name, i);
        }
    }

    public static void BallHoldsSequence(Place yarn, ImmutableArray<YarnSection> sections, Ball ball, FaultList faults)
    {
        var sequence = SequenceLength(sections);
        if (sequence > ball.Length)
        {
            faults.Meaning(
                yarn.Member("ball").Member("length"), $"at least one whole sequence, {sequence}",
                "Check the ball's length and the sections'.");
        }
    }

    public static void Counted(Place yarn, ImmutableArray<YarnSection> sections, ImmutableArray<CountedBall> balls, FaultList faults)
    {
        for (var b = 0; b < balls.Length; b++)
        {
            var repeats = yarn.Member("counted").Item(b).Member("repeats");
            for (var r = 0; r < balls[b].Repeats.Length; r++)
            {
                if (!balls[b].IsBegun(r, sections.Length))
                    Sequence(repeats.Item(r), balls[b].Repeats[r], sections.Length, faults);
            }
        }
        Distinctness.Check(yarn.Member("counted"), [.. balls.Select(b => b.Name)], faults);
    }

    /// <summary>One whole number a section, and a sequence of 1 to 4,096 stitches.</summary>
    public static void Sequence(Place counts, ImmutableArray<int> stitches, int sections, FaultList faults)
    {
        if (stitches.Length != sections)
        {
            faults.Meaning(
                counts, $"{sections} numbers, one for each of yarn.sections", "Add or remove numbers.",
                FormattableString.Invariant($"{stitches.Length} numbers"));
        }
        SequenceStitches(counts, stitches.Sum(), faults);
    }

    public static void SequenceStitches(Place place, double stitches, FaultList faults)
    {
        if (!(stitches >= 1 && stitches <= ColourRing.LongestSequence))
        {
            faults.Meaning(
                place, $"a sequence of 1 to {ColourRing.LongestSequence} stitches", "Check these numbers.",
                FormattableString.Invariant($"a sequence of {stitches:0.##} stitches"));
        }
    }

    /// <summary>L, or null where a section is not measured.</summary>
    public static Length? SequenceLength(ImmutableArray<YarnSection> sections) =>
        sections.Aggregate((Length?)Length.Zero, (sum, section) => sum + section.Length);
}
