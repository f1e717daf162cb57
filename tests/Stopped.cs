using Dyepath.Core.Limits;

namespace Dyepath.Tests;

/// <summary>Work that can be stopped wherever it looks.</summary>
internal static class Stopped
{
    /// <summary>Cancels the work at each of these looks, counted from 1, and holds that it ends there.</summary>
    public static void At(IEnumerable<int> looks, Action<Effort> work)
    {
        foreach (var at in looks)
        {
            using var source = new CancellationTokenSource();
            var seen = 0;
            var effort = new Effort(cancel: source.Token)
            {
                Watch = _ =>
                {
                    if (++seen == at)
                        source.Cancel();
                },
            };
            Assert.Throws<OperationCanceledException>(() => work(effort));
            Assert.Equal(at, seen);
        }
    }
}
