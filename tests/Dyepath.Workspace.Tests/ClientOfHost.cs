namespace Dyepath.Workspace.Tests;

internal static class ClientOfHost
{
    /// <summary>A client that asks this host and no other.</summary>
    public static HttpClient Client(this HttpMessageHandler host) => new(host) { BaseAddress = new Uri("http://host.test/") };
}
