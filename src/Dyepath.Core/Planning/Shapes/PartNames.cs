using Dyepath.Core.Shaping;

namespace Dyepath.Core.Planning;

/// <summary>What the parts of a shaped piece are called, in the pattern and in JSON.</summary>
public static class PartNames
{
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];

    /// <summary>Such as <c>body</c>, <c>first side</c>: parts that stand on one part are counted in the order of work.</summary>
    /// <param name="part">Of the piece.</param>
    public static string Of(ShapedPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return SideOf(part) is { } nth ? Side(nth) : "body";
    }

    /// <summary>Such as <c>first side</c>.</summary>
    /// <param name="nth">From 0, in the order of work.</param>
    public static string Side(int nth) => nth < Ordinals.Length ? $"{Ordinals[nth]} side" : FormattableString.Invariant($"side {nth + 1}");

    /// <summary>Which of the parts that stand on one part it is, from 0; missing for the part that all others stand on.</summary>
    internal static int? SideOf(ShapedPart part) =>
        // The parts of one row are worked right after each other.
        part.Below is { } below ? part.Index - below - 1 : null;
}
