namespace Dyepath.Contracts;

/// <summary>What the host knows of the browser that asks.</summary>
/// <param name="SignedIn">Whether it has given the access token and so can be signed out.</param>
public sealed record DeviceSession(bool SignedIn);
