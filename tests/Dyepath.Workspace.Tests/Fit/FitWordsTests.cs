using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

public sealed class FitWordsTests
{
    /// <summary>Sideways, what stands upright on the hook lies across the body.</summary>
    [Theory]
    [InlineData(MotifKind.Columns, Direction.Sideways, "upright as worked, across as worn")]
    [InlineData(MotifKind.Bands, Direction.Sideways, "across as worked, upright as worn")]
    [InlineData(MotifKind.Columns, Direction.Up, null)]
    [InlineData(MotifKind.Bands, Direction.Up, null)]
    [InlineData(MotifKind.Argyle, Direction.Sideways, null)]
    public void Stripes_that_lie_the_other_way_as_worn_say_so(MotifKind motif, Direction direction, string? words) =>
        Assert.Equal(words, FitWords.Lie(motif, direction));
}
