using System.Runtime.InteropServices;

namespace RecipeLint.Shell;

/// <summary>
/// Names of a file beyond its first. A second one is given in one step and only where nothing has that name yet (POSIX link(2)): a file
/// that is new in its place comes there whole, or not at all, whenever the run is killed.
/// </summary>
internal static class HardLink
{
    // statx(2) of Linux, whose layout is the same on every processor: AT_FDCWD, STATX_NLINK, and where stx_nlink lies in the 256 bytes.
    private const int CurrentFolder = -100;
    private const uint AskForNames = 4;
    private const int NamesAt = 16;
    private const int StatusSize = 256;

    /// <summary>False where the name is taken, or where the system or the disk knows no such names.</summary>
    /// <param name="file">Full path of what is there.</param>
    /// <param name="name">Full path of the new name, on the same disk.</param>
    public static bool TryMake(string file, string name)
    {
        try
        {
            return !OperatingSystem.IsWindows() && Link(file, name) == 0;
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            // A system whose C library goes by another name: the slower way does it too.
            return false;
        }
    }

    /// <summary>How many names a file has; one where the system does not tell (only Linux is asked).</summary>
    /// <param name="file">Full path; a link is followed.</param>
    public static int NamesOf(string file)
    {
        try
        {
            var told = new byte[StatusSize];
            return OperatingSystem.IsLinux() && Status(CurrentFolder, file, 0, AskForNames, told) == 0
                ? BitConverter.ToInt32(told, NamesAt)
                : 1;
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            return 1;
        }
    }

    [DllImport("libc", EntryPoint = "statx", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Status(int folder, [MarshalAs(UnmanagedType.LPUTF8Str)] string file, int flags, uint asked, byte[] told);

    [DllImport("libc", EntryPoint = "link", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Link([MarshalAs(UnmanagedType.LPUTF8Str)] string file, [MarshalAs(UnmanagedType.LPUTF8Str)] string name);
}
