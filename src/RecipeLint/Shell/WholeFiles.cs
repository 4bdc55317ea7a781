using System.Globalization;

namespace RecipeLint.Shell;

/// <summary>A file as it is to stand on the disk.</summary>
/// <param name="FullPath">Of a file, or of a link to one: then what it points to is written.</param>
internal sealed record WholeFile(string FullPath, byte[] Bytes);

/// <summary>Writes files so that each appears whole or not at all: beside the old one first, then in its place.</summary>
internal static class WholeFiles
{
    private const int MostNames = 100;

    /// <summary>
    /// Everything is written beside its place before anything takes it. When that fails, or a later file cannot take its place, the earlier
    /// ones get their old bytes back: nothing has changed.
    /// </summary>
    /// <exception cref="IOException">The disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">A file or folder may not be written.</exception>
    public static void Write(IReadOnlyList<WholeFile> files)
    {
        var waiting = new List<(string Beside, string Target)>();
        var replaced = new List<(string Target, byte[]? Old)>();
        try
        {
            foreach (var file in files)
            {
                var target = Target(file.FullPath);
                waiting.Add((WriteBeside(target, file.Bytes), target));
                KeepPermissions(target, waiting[^1].Beside);
            }

            foreach (var (beside, target) in waiting)
            {
                var old = File.Exists(target) ? File.ReadAllBytes(target) : null;
                File.Move(beside, target, overwrite: true);
                replaced.Add((target, old));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            replaced.ForEach(r => PutBack(r.Target, r.Old));
            throw;
        }
        finally
        {
            foreach (var (beside, _) in waiting.Where(w => File.Exists(w.Beside)))
            {
                File.Delete(beside);
            }
        }
    }

    /// <summary>A new file with a name nothing has, so that no file or link of anybody's is written through.</summary>
    private static string WriteBeside(string target, byte[] bytes)
    {
        for (var i = 1; ; i++)
        {
            var beside = string.Create(CultureInfo.InvariantCulture, $"{target}.{i}.partial");
            try
            {
                using var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write);
                stream.Write(bytes);
                return beside;
            }
            catch (IOException) when (i < MostNames && Path.Exists(beside))
            {
                // Somebody's: the next name.
            }
        }
    }

    private static string Target(string path)
    {
        var file = new FileInfo(path);
        return file.Exists && file.ResolveLinkTarget(returnFinalTarget: true) is { } target ? target.FullName : path;
    }

    private static void KeepPermissions(string target, string beside)
    {
        if (!File.Exists(target))
        {
            return;
        }

        if (File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
        {
            throw new UnauthorizedAccessException($"'{target}' is write-protected.");
        }

        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
        }
    }

    private static void PutBack(string target, byte[]? old)
    {
        if (old is null)
        {
            File.Delete(target);
        }
        else
        {
            File.WriteAllBytes(target, old);
        }
    }
}
