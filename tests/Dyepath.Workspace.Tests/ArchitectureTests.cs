using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests;

public sealed class ArchitectureTests
{
    /// <summary>Components and what asks the browser are the client's, so that all this is tested without either.</summary>
    [Fact]
    public void Nothing_here_needs_a_browser() => Assert.DoesNotContain(
        typeof(Workbench).Assembly.GetReferencedAssemblies(),
        a => a.Name!.StartsWith("Microsoft.", StringComparison.Ordinal) || a.Name.EndsWith(".JavaScript", StringComparison.Ordinal));
}
