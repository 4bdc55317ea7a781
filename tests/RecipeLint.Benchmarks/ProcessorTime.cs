using System.Diagnostics;
using System.Runtime.InteropServices;

namespace RecipeLint.Benchmarks;

/// <summary>
/// What the running thread has used of the processor, where the system tells (Linux): on a machine that others use as well the clock on the
/// wall says how busy they are. Elsewhere the wall clock.
/// </summary>
internal static class ProcessorTime
{
    private const int ThreadClock = 3;

    public static long Nanoseconds() => OperatingSystem.IsLinux() && IntPtr.Size == 8 && ClockGetTime(ThreadClock, out var time) == 0
        ? time.Seconds * 1_000_000_000 + time.Nanoseconds
        : (long)(Stopwatch.GetTimestamp() * (1e9 / Stopwatch.Frequency));

    [DllImport("libc", EntryPoint = "clock_gettime"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ClockGetTime(int clock, out TimeSpec time);

    [StructLayout(LayoutKind.Sequential)]
    private readonly struct TimeSpec
    {
        public readonly long Seconds;
        public readonly long Nanoseconds;
    }
}
