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
        if (part.Below is null)
            return "body";
        // The parts of one row are worked right after each other.
        var nth = part.Index - part.Below.Value - 1;
        return nth < Ordinals.Length ? $"{Ordinals[nth]} side" : FormattableString.Invariant($"side {nth + 1}");
    }
}
