using System.Runtime.InteropServices;

namespace RecipeLint.Shell;

/// <summary>
/// A second name for a file, given in one step and only where nothing has that name yet (POSIX link(2)): a file that is new in its place
/// comes there whole, or not at all, whenever the run is killed.
/// </summary>
internal static class HardLink
{
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

    [DllImport("libc", EntryPoint = "link", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Link([MarshalAs(UnmanagedType.LPUTF8Str)] string file, [MarshalAs(UnmanagedType.LPUTF8Str)] string name);
}
