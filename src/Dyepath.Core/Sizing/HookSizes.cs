using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>
/// A hook as makers label it. Letters vary by maker (G is 4.0 or 4.25 mm): the millimetres govern. A name is empty where
/// that system has none; an old UK number in parentheses is one that sources give to two diameters.
/// </summary>
/// <param name="Diameter">Of the shaft; it decides.</param>
/// <param name="Us">Letter and number, such as <c>G-6</c>; empty where there is none.</param>
/// <param name="OldUk">Number, in parentheses where sources give it to two diameters; empty where there is none.</param>
public sealed record HookSize(Length Diameter, string Us, string OldUk);

/// <summary>A steel hook for fine thread; its numbers run backwards. Makers differ by up to 0.2 mm.</summary>
/// <param name="Diameter">Of the shaft; it decides.</param>
/// <param name="Us">Number; a higher one is thinner.</param>
public sealed record SteelHookSize(Length Diameter, string Us);

/// <summary>Names of hooks by their diameters.</summary>
public static class HookSizes
{
    /// <summary>For <see cref="All"/>.</summary>
    public static Citation Source { get; } = new(
        Provenance.FromMemory,
        "Craft Yarn Council hook table, from memory; old UK numbers confirmed by one page except at 2.5, 3 and 7 mm");

    /// <summary>For <see cref="Steel"/>.</summary>
    public static Citation SteelSource { get; } = new(Provenance.FromMemory, "from memory; the ends 3.5 and 0.75 mm confirmed");

    /// <summary>By diameter, the thinnest first.</summary>
    public static ImmutableArray<HookSize> All { get; } =
    [
        Hook(2, "", "14"),
        Hook(2.25, "B-1", "13"),
        Hook(2.5, "", "12"),
        Hook(2.75, "C-2", "(12)"),
        Hook(3, "", "11"),
        Hook(3.125, "D", ""),
        Hook(3.25, "D-3", "10"),
        Hook(3.5, "E-4", "9"),
        Hook(3.75, "F-5", ""),
        Hook(4, "G-6", "8"),
        Hook(4.25, "G", ""),
        Hook(4.5, "7", "7"),
        Hook(5, "H-8", "6"),
        Hook(5.25, "I", ""),
        Hook(5.5, "I-9", "5"),
        Hook(5.75, "J", ""),
        Hook(6, "J-10", "4"),
        Hook(6.5, "K-10.5", "3"),
        Hook(7, "", "2"),
        Hook(8, "L-11", "0"),
        Hook(9, "M/N-13", "00"),
        Hook(10, "N/P-15", "000"),
        Hook(11.5, "P-16", ""),
        Hook(12, "O", ""),
        Hook(15, "P/Q", ""),
        Hook(15.75, "Q", ""),
        Hook(16, "Q", ""),
        Hook(19, "S", ""),
        Hook(25, "T/U/X", ""),
        Hook(30, "T/X", ""),
    ];

    /// <summary>By diameter, the thickest first, as they are numbered.</summary>
    public static ImmutableArray<SteelHookSize> Steel { get; } =
    [
        SteelHook(3.5, "00"),
        SteelHook(3.25, "0"),
        SteelHook(2.75, "1"),
        SteelHook(2.25, "2"),
        SteelHook(2.1, "3"),
        SteelHook(2, "4"),
        SteelHook(1.9, "5"),
        SteelHook(1.8, "6"),
        SteelHook(1.65, "7"),
        SteelHook(1.5, "8"),
        SteelHook(1.4, "9"),
        SteelHook(1.3, "10"),
        SteelHook(1.1, "11"),
        SteelHook(1, "12"),
        SteelHook(0.85, "13"),
        SteelHook(0.75, "14"),
    ];

    /// <summary>The hook of the nearest diameter; of two equally near, the thicker.</summary>
    public static HookSize Nearest(Length diameter) =>
        All.OrderBy(hook => Math.Abs((hook.Diameter - diameter).Millimetres)).ThenByDescending(hook => hook.Diameter).First();

    private static HookSize Hook(double millimetres, string us, string oldUk) => new(Length.FromMillimetres(millimetres), us, oldUk);

    private static SteelHookSize SteelHook(double millimetres, string us) => new(Length.FromMillimetres(millimetres), us);
}
