namespace Dyepath.Contracts;

/// <summary>Why something was not done: <c>application/problem+json</c> (RFC 9457), in a maker's words.</summary>
/// <param name="Title">One short sentence.</param>
/// <param name="Detail">What to do.</param>
/// <param name="Status">The answer's status code.</param>
/// <param name="CurrentEtag">Where the stored text is another one than was expected: its ETag.</param>
/// <param name="UpdatedAt">Where the stored text is another one: when it was saved.</param>
/// <param name="GoodVersion">
/// Where the stored text is damaged: number of the newest version that can be read. Restoring it mends the project.
/// </param>
public sealed record Problem(
    string? Title, string? Detail, int? Status, string? CurrentEtag = null, DateTimeOffset? UpdatedAt = null, int? GoodVersion = null);
