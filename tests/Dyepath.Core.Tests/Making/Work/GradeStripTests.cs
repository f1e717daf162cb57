using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Work;

namespace Dyepath.Core.Tests.Making.Work;

public sealed class GradeStripTests
{
    /// <summary>Against yarn that is worked up stitch by stitch: the end that is told is the first to come a whole stitch later.</summary>
    [Theory]
    [InlineData(5, 4, 3, 5, 4)]
    [InlineData(5, 4, 6, 7)]
    [InlineData(1, 0, 30)]
    public void The_first_end_of_a_colour_that_comes_a_stitch_later_is_found(params int[] sections)
    {
        var strips = GradeStrip.Of([.. sections]);
        Assert.Equal(TensionGrades.Levels, strips.Select(s => s.Level));
        foreach (var strip in strips)
        {
            // Yarn up to the colour's end, in natural stitches; tighter stitches take the less of it.
            double yarn = 0, worked = 0;
            var found = false;
            for (var at = 0; !found; at++)
            {
                yarn += sections[at % sections.Length];
                while (worked * (1 - strip.Level) <= yarn - (1 - strip.Level) + 1e-9)
                    worked++;
                found = worked - yarn >= 1 && sections[at % sections.Length] > 0;
                if (found)
                    Assert.Equal((at / sections.Length + 1, at % sections.Length, (int)yarn), (strip.Sequence, strip.Section, strip.Stitches));
            }
        }
    }

    [Fact]
    public void A_sequence_of_nothing_is_refused() => Assert.Throws<ArgumentException>(() => GradeStrip.Of([0, 0]));
}
