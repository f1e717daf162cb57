using System.Collections.Immutable;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Making.Work;

/// <summary>
/// What a grade comes to on a strip of the maker's own yarn: the first end of a colour that comes a whole stitch later when she works so
/// much tighter from the strip's first stitch on (worked looser, it comes a stitch earlier).
/// </summary>
/// <param name="Level">Relative, more than 0; one of <see cref="TensionGrades.Levels"/>.</param>
/// <param name="Sequence">In which sequence of the strip, from 1.</param>
/// <param name="Section">Which of its colours, from 0.</param>
/// <param name="Stitches">From the strip's first stitch to that end, by natural hands.</param>
public sealed record GradeStrip(double Level, int Sequence, int Section, int Stitches)
{
    /// <summary>One for each level, the least first.</summary>
    /// <param name="sections">Stitches of each colour of her sequence, in the order of work; at least one in all.</param>
    public static ImmutableArray<GradeStrip> Of(ImmutableArray<int> sections)
    {
        if (sections.Sum() <= 0 || sections.Any(s => s < 0))
            throw new ArgumentException("A sequence has stitches.", nameof(sections));
        return [.. TensionGrades.Levels.Select(level => Of(level, sections))];
    }

    private static GradeStrip Of(double level, ImmutableArray<int> sections)
    {
        var stitches = 0;
        for (var at = 0; ; at++)
        {
            stitches += sections[at % sections.Length];
            // The yarn of n natural stitches makes n/(1 − level) tighter ones.
            if (stitches * level >= 1 - level && sections[at % sections.Length] > 0)
                return new GradeStrip(level, at / sections.Length + 1, at % sections.Length, stitches);
        }
    }
}
