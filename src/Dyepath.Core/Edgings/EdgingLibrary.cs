using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Edgings;

/// <summary>
/// The edgings that ship. Multiples and stitches are the trade's common ones; depths follow the heights of the stitches
/// (half double 1.45, double 1.85 row heights of single crochet, from the published gauges) and yarn the one measured
/// strip (half double 1.48, double 1.92, chain 0.48 of a single crochet). Slip stitch 0.5 is from memory; how far an edging draws in and
/// stretches is common practice, no source.
/// </summary>
public static class EdgingLibrary
{
    /// <summary>Holds a garment up that does not hang from the shoulders.</summary>
    public const string ElasticCasing = "elastic-casing";

    /// <summary>Rounds of single crochet, and the same in rows, where the ends of an edge do not meet.</summary>
    public const string Plain = "sc", PlainRows = "sc-rows";

    /// <summary>In the order in which they are offered.</summary>
    public static ImmutableArray<Edging> All { get; } =
    [
        Bands.Plain(), Bands.Open(), Bands.Corded(), LooseEdgings.Picot(), LooseEdgings.Shell(), LooseEdgings.VStitch(),
        Ribs.SingleCrochet(), LooseEdgings.Clusters(), Ribs.SlipStitch(), Casings.Elastic(), Casings.Drawstring(),
        ButtonBand.Edging(), FringedEdging.Edging(),
    ];

    /// <summary>Those that may go to a place.</summary>
    public static IEnumerable<Edging> At(EdgingPlace place, bool children = false) => All.Where(e => e.AllowedAt(place, children));

    /// <summary>Those that may go along an edge: in rows where its ends do not meet, in rounds where they do.</summary>
    public static IEnumerable<Edging> At(EdgingPlace place, bool open, bool children) => At(place, children).Where(e => e.InRows == open);

    /// <summary>Finds an edging by its id, letter case respected.</summary>
    public static bool TryFind(string id, [NotNullWhen(true)] out Edging? edging)
    {
        edging = All.FirstOrDefault(e => e.Id == id);
        return edging is not null;
    }

    /// <summary>An edging that a plan names.</summary>
    /// <exception cref="InvalidOperationException">No edging of this id ships.</exception>
    public static Edging Find(string id) =>
        TryFind(id, out var edging) ? edging : throw new InvalidOperationException($"The plan names an edging that does not ship: {id}.");
}
