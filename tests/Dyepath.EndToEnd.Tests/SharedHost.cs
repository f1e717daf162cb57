[assembly: AssemblyFixture(typeof(Dyepath.EndToEnd.Tests.SharedHost))]

namespace Dyepath.EndToEnd.Tests;

/// <summary>
/// A host for all tests that neither stop it nor look at more of its store than their own projects and pieces: a start of it costs more
/// than many a test.
/// </summary>
public sealed class SharedHost : IAsyncLifetime
{
    public PublishedHost Host { get; } = new();

    public async ValueTask InitializeAsync() => await Host.StartAsync();

    public ValueTask DisposeAsync() => Host.DisposeAsync();
}
