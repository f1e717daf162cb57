namespace Dyepath.Contracts;

/// <summary>Whether a host can work, for whoever watches over it.</summary>
/// <param name="Ready">Whether requests should be sent here.</param>
/// <param name="Troubles">What somebody has to do; there may be some on a host that is ready.</param>
public sealed record Readiness(bool Ready, IReadOnlyList<Trouble> Troubles);

/// <param name="Kind">For a program that watches: <c>away</c>, <c>newer</c>, <c>full</c> or <c>damaged</c>.</param>
/// <param name="Title">One short sentence.</param>
/// <param name="Detail">What to do.</param>
public sealed record Trouble(string Kind, string Title, string Detail);
