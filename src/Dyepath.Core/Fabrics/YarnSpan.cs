namespace Dyepath.Core.Fabrics;

/// <summary>A stretch of yarn in micro-units from <paramref name="From"/>, which may be negative, over <paramref name="Length"/>.</summary>
public readonly record struct YarnSpan(long From, long Length);
