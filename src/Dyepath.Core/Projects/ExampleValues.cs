using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects;

/// <summary>
/// Values that a project still has of the example that it was begun with, and that the designer has therefore not measured; the yarn's
/// name does not count.
/// </summary>
public static class ExampleValues
{
    /// <summary>Where the gauge stands, which is the example's together with the hook.</summary>
    public const string Swatch = "fabric.swatch.worked";

    /// <summary>Where each stands and what it is, such as <c>the lengths of the colours</c>; empty where all was put in.</summary>
    public static ImmutableArray<(string Place, string Words)> Of(Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        var example = StarterDocument.Project;
        var (yarn, swatch) = (project.Yarn, project.Fabric.Swatch);
        var left = ImmutableArray.CreateBuilder<(string Place, string Words)>();
        if (AreLengths([.. yarn.Sections.Select(s => s.Length)]))
            left.Add(("yarn.sections", "the lengths of the colours"));
        if (!swatch.YarnUsed.IsEmpty && swatch.YarnUsed.SequenceEqual(example.Fabric.Swatch.YarnUsed))
            left.Add(("fabric.swatch.yarnUsed", "the yarn that the swatch's stitches took"));
        // One gauge alone, or one hook, may well be hers; both together, and nothing said of washing, are not.
        var first = example.Fabric.Swatch;
        if (swatch.HookMillimetres == first.HookMillimetres && swatch.Worked == first.Worked && swatch is { Blocked: null, Hung: null })
            left.Add((Swatch, "the swatch's gauge and hook"));
        // Small counts are easily alike: beside nothing else of the example's they are her own, and so are those of a maker.
        var hasLengths = left.Any(l => l.Place == "yarn.sections");
        var counted = yarn.Counted.Where(b => b.Name != CountedBall.MakersOwn).SelectMany(b => b.Repeats);
        if (left.Count > 0 && AreCounts([.. counted], hasLengths))
            left.Insert(hasLengths ? 1 : 0, ("yarn.counted", "the counted stitches"));
        return left.ToImmutable();
    }

    /// <summary>Whether the lengths are the example's, whatever sections were added to it, taken out of it or moved since.</summary>
    /// <param name="lengths">Of all sections; null where none was put in.</param>
    public static bool AreLengths(IReadOnlyList<Length?> lengths) =>
        Keeps(lengths, [.. StarterDocument.Project.Yarn.Sections.Select(s => s.Length)]);

    /// <summary>Whether counts begin with the example's, whatever sections were taken out of it, moved or added to it since.</summary>
    /// <param name="repeats">Whole repeats, a count for each section.</param>
    /// <param name="hasLengths">
    /// The lengths are the example's too. Without them, more colours with stitches than the example has are another yarn's.
    /// </param>
    public static bool AreCounts(IReadOnlyList<ImmutableArray<int>> repeats, bool hasLengths)
    {
        ArgumentNullException.ThrowIfNull(repeats);
        ImmutableArray<int>[] example = [.. StarterDocument.Project.Yarn.Counted.SelectMany(b => b.Repeats)];
        return repeats.Count >= example.Length && (hasLengths || repeats.Min(r => r.Count(n => n > 0)) <= example[0].Length)
            && Keeps(Columns([.. repeats.Take(example.Length)]), Columns(example));

        static string[] Columns(ImmutableArray<int>[] rows) =>
            [.. Enumerable.Range(0, rows.Min(r => r.Length)).Select(j => string.Join(' ', rows.Select(r => r[j])))];
    }

    /// <summary>Fewer values than this may be alike by chance.</summary>
    private const int FewestAlike = 3;

    /// <summary>Whether the shorter of two lists is in the longer, value for value and in any order.</summary>
    private static bool Keeps<T>(IReadOnlyList<T> values, T[] example)
    {
        ArgumentNullException.ThrowIfNull(values);
        var rest = values.ToList();
        var alike = example.Count(rest.Remove);
        return alike >= FewestAlike && alike == Math.Min(values.Count, example.Length);
    }

    /// <summary>Whether what stands at a place is still the example's.</summary>
    public static bool Has(Project project, string place) => Of(project).Any(left => left.Place == place);

    /// <summary>One finding that names all of them.</summary>
    public static IEnumerable<Finding> Findings(Project project)
    {
        if (Of(project) is { IsEmpty: false } left)
            yield return new Finding(
                FindingLevel.Note, left[0].Place,
                $"Not measured yet, but taken from the example that the document was begun with: {Wording.List(left.Select(l => l.Words))}. Put in your own before anybody buys or works by them.");
    }
}
