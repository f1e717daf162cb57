using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Dyepath.Core.Tests.Limits;

/// <summary>Processor time of this thread, which other tests and programs do not lengthen as they do a clock's.</summary>
internal static class ThreadTime
{
    private const int ThreadClock = 3;

    public static TimeSpan Now => OperatingSystem.IsLinux() && ClockGetTime(ThreadClock, out var time) == 0
        ? TimeSpan.FromTicks(time.Seconds * TimeSpan.TicksPerSecond + time.Nanoseconds / 100)
        : Process.GetCurrentProcess().TotalProcessorTime;

    [DllImport("libc", EntryPoint = "clock_gettime")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ClockGetTime(int clock, out Time time);

    [StructLayout(LayoutKind.Sequential)]
    private struct Time
    {
        public long Seconds;
        public long Nanoseconds;
    }
}
