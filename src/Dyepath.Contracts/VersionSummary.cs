namespace Dyepath.Contracts;

/// <summary>A text that a project had before, or that was published from it.</summary>
/// <param name="Number">Grows from 1; never used again in the same project.</param>
/// <param name="SavedAt">When this text had been saved.</param>
/// <param name="Bytes">Length of the text in UTF-8.</param>
/// <param name="Edition">The edition number under which it was published; missing where it was not.</param>
public sealed record VersionSummary(int Number, DateTimeOffset SavedAt, int Bytes, int? Edition = null);
