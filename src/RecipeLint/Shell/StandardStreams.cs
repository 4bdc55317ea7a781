using System.Runtime.InteropServices;

namespace RecipeLint.Shell;

/// <summary>
/// The standard streams as whoever started this process handed them over. Where one was closed, the runtime is given its number for
/// something of its own; written to or read from, that would seem to work, wait for ever, or disturb the runtime.
/// </summary>
internal static class StandardStreams
{
    /// <summary>What is said where nothing more can be printed.</summary>
    public const string LostOutput = "standard output cannot be written: it is closed or its disk is full.";

    /// <summary>F_GETFD of POSIX fcntl(2), the same number on Linux and macOS.</summary>
    private const int GetFlags = 1;

    /// <summary>FD_CLOEXEC of the same.</summary>
    private const int ClosesOnExec = 1;

    /// <exception cref="UsageException">It was closed.</exception>
    public static Stream Input() =>
        WasHandedOver(0) ? Console.OpenStandardInput() : throw new UsageException("standard input cannot be read: it is closed.");

    public static Stream Output() => WasHandedOver(1) ? Console.OpenStandardOutput() : new LostStream();

    public static Stream Error() => WasHandedOver(2) ? Console.OpenStandardError() : new LostStream();

    /// <summary>
    /// Whether a descriptor was there before this program began. What is marked to be closed when a program begins cannot have been; the
    /// runtime marks everything that it opens.
    /// </summary>
    private static bool WasHandedOver(int number)
    {
        try
        {
            return OperatingSystem.IsWindows() || Control(number, GetFlags) is var flags and >= 0 && (flags & ClosesOnExec) == 0;
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            // A system whose C library goes by another name.
            return true;
        }
    }

    [DllImport("libc", EntryPoint = "fcntl", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Control(int descriptor, int command);

    /// <summary>Takes nothing; that is noticed as soon as something is said.</summary>
    private sealed class LostStream : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override void Write(byte[] buffer, int offset, int count)
        {
            if (count > 0)
            {
                throw new IOException(LostOutput);
            }
        }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}
