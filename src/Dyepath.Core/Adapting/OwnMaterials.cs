using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>A reader's own yarn: its colours in the order in which they come off her ball, and what she measured of them.</summary>
/// <param name="Name">As her booklet calls it.</param>
/// <param name="Sections">1 to 64, each with its length or, where stitches were counted, without.</param>
/// <param name="Repeats">
/// Stitches that she counted in each section, repeat after repeat, at natural tension (in linen stitch: pairs); empty where the sections
/// have lengths.
/// </param>
public sealed record OwnYarnCount(string Name, ImmutableArray<YarnSection> Sections, ImmutableArray<ImmutableArray<int>> Repeats);

/// <summary>What a reader works with. What she has not measured is taken to be as the pattern has it.</summary>
/// <param name="Yarn">Her own.</param>
public sealed record OwnMaterials(OwnYarnCount Yarn)
{
    /// <summary>
    /// Of her swatch in the state that the pattern's size depends on, at natural tension: washed and dried, or hung, where the pattern's
    /// is.
    /// </summary>
    public Gauge? Gauge { get; init; }

    /// <summary>Yarn that one of her stitches takes, in linen stitch a pair.</summary>
    public Length? YarnPerStitch { get; init; }

    /// <summary>The hook that all this was measured with, in millimetres; missing: the pattern's.</summary>
    public double? HookMillimetres { get; init; }

    /// <summary>Yarn on one of her balls; missing: as much as on the pattern's.</summary>
    public Length? Ball { get; init; }
}
