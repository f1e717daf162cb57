namespace Dyepath.Contracts;

/// <summary>A text that a project had before; the newest is the one before the present text.</summary>
/// <param name="Number">Grows from 1; never used again in the same project.</param>
/// <param name="SavedAt">When this text had been saved.</param>
/// <param name="Bytes">Length of the text in UTF-8.</param>
public sealed record VersionSummary(int Number, DateTimeOffset SavedAt, int Bytes);
