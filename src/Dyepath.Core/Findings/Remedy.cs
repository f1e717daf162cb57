namespace Dyepath.Core.Findings;

/// <summary>Something that helps.</summary>
/// <param name="Place">What it sets in the document, such as <c>garment.motif</c>; missing where no one place does it.</param>
/// <param name="Value">To what, as JSON; missing with the place.</param>
/// <param name="Text">What is done and what comes of it, one sentence or more.</param>
public sealed record Remedy(string? Place, string? Value, string Text);
