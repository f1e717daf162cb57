namespace Dyepath.Core.Booklets;

/// <summary>Words that know to whom they are said: where all sizes are printed, where one is, or where one certain size is.</summary>
/// <param name="Text">In the reader's terms, units and hand.</param>
/// <param name="Strong">Printed in bold.</param>
/// <param name="InAll">Said where all sizes are printed.</param>
/// <param name="InOne">Said where one size is printed.</param>
/// <param name="Size">Index of the only size to which it is said where one is printed; null: to any.</param>
public readonly record struct SizedSpan(string Text, bool Strong, bool InAll = true, bool InOne = true, int? Size = null)
{
    /// <param name="size">Index of the one size that is printed, or null for all.</param>
    public bool IsSaidTo(int? size) => size is { } one ? InOne && (Size ?? one) == one : InAll;
}
