namespace Dyepath.Core.Fabrics;

/// <summary>A stretch of yarn in micro-units from <paramref name="From"/>, which may be negative, over <paramref name="Length"/>.</summary>
/// <param name="From">In micro-units from the sequence's beginning; may be negative.</param>
/// <param name="Length">In micro-units.</param>
public readonly record struct YarnSpan(long From, long Length);
