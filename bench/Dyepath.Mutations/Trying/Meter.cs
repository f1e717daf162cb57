namespace Dyepath.Mutations.Trying;

/// <summary>Processor time and memory of one case. Everything of a case runs in this process, so the process's time bounds the case's.</summary>
internal sealed class Meter
{
    private readonly TimeSpan _cpu = Environment.CpuUsage.TotalTime;
    private readonly long _allocated = GC.GetTotalAllocatedBytes();

    public TimeSpan Cpu => Environment.CpuUsage.TotalTime - _cpu;

    /// <summary>Bytes that were ever taken; what lived at once is at most this.</summary>
    public long Allocated => GC.GetTotalAllocatedBytes() - _allocated;

    /// <summary>Most bytes that lived at once while something ran, sampled by full collections.</summary>
    public static long MostAlive(Action run)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var most = before;
        using var done = new ManualResetEventSlim();
        var watch = new Thread(() =>
        {
            while (!done.Wait(TimeSpan.FromMilliseconds(30)))
                most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true));
        });
        watch.Start();
        try
        {
            run();
        }
        finally
        {
            done.Set();
            watch.Join();
        }
        return most - before;
    }
}
