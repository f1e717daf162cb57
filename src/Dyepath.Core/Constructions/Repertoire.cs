using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Constructions;

/// <summary>
/// Every garment that can be made. A new one is a file of this folder, a line of this list, its rows in the docs and its tests.
/// </summary>
public static class Repertoire
{
    /// <summary>In the order in which they are offered.</summary>
    public static ImmutableArray<GarmentKind> All { get; } =
    [
        BoxyTop.Pullover, BoxyTop.Tunic, Cardigan.Kind, Vest.Kind, Tabard.Kind, OffShoulder.Top, OffShoulder.Dress, Poncho.Kind,
        Skirt.Kind, Hat.Kind, Headband.Kind, Cowl.Kind, Wrap.Kind, Wrap.Blanket, Shawl.Kind, BiasWrap.Kind, Cushion.Kind, Bag.Kind,
        PetTabard.Kind,
    ];

    /// <summary>The garment in the document: one object whose fields depend on its shape.</summary>
    internal static Shape<GarmentSpec> Garment { get; } = new VariantShape<GarmentSpec>(
        "shape", g => g.Shape.Name, [.. All.Select(kind => new VariantCase<GarmentSpec>([kind.Name], kind.Document))]);
}
