namespace Dyepath.Core.Sizing;

/// <summary>A range that includes its ends; an end that is null is open. <c>default</c> is open at both ends.</summary>
/// <param name="Least">Included; null where the range has no lower end.</param>
/// <param name="Most">Included; null where the range has no upper end.</param>
public readonly record struct OpenRange<T>(T? Least, T? Most)
    where T : struct, IComparable<T>
{
    /// <summary>Within the range, ends included.</summary>
    public bool Contains(T value) => !IsBelow(value) && !IsAbove(value);

    /// <summary>Whether <paramref name="value"/> lies below this range.</summary>
    public bool IsBelow(T value) => Least is { } least && value.CompareTo(least) < 0;

    /// <summary>Whether <paramref name="value"/> lies above this range.</summary>
    public bool IsAbove(T value) => Most is { } most && value.CompareTo(most) > 0;
}
