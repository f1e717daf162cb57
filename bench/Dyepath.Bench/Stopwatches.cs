using System.Diagnostics;

namespace Dyepath.Bench;

internal static class Stopwatches
{
    /// <summary>Runs until the code is compiled for speed and its data are at hand: at least 3 times and for at least a second.</summary>
    public static void Warm(Action action)
    {
        long begin = Stopwatch.GetTimestamp();
        for (int i = 0; i < 3 || Stopwatch.GetElapsedTime(begin).TotalSeconds < 1; i++)
        {
            action();
            // Lets the background compiler finish between runs.
            Thread.Sleep(20);
        }
    }

    public static double Seconds(Action action)
    {
        long begin = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }

    public static double Median(IEnumerable<double> values)
    {
        double[] ordered = [.. values.Order()];
        return (ordered[(ordered.Length - 1) / 2] + ordered[ordered.Length / 2]) / 2;
    }
}
