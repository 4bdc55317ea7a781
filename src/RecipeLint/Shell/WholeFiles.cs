using System.Globalization;

namespace RecipeLint.Shell;

/// <summary>A file as it is to stand on the disk.</summary>
/// <param name="FullPath">Of a file, or of a link to one: then what it points to is written.</param>
internal sealed record WholeFile(string FullPath, byte[] Bytes)
{
    /// <summary>The bytes that the new ones were made from; when others stand there by now, nothing is written. Null when none were read.</summary>
    public byte[]? Expected { get; init; }

    /// <summary>Nothing may stand there yet.</summary>
    public bool IsNew { get; init; }

    /// <summary>A link in its place is replaced by the file, instead of what it points to.</summary>
    public bool ReplacesLink { get; init; }
}

/// <summary>
/// The one place of the program that writes: each file appears whole or not at all. It is written beside its place, carried to the disk and
/// then put in place; a device or pipe that somebody names as output is written to as it is.
/// </summary>
internal static class WholeFiles
{
    private const int MostNames = 100;

    /// <summary>
    /// Everything is written beside its place before anything takes it. When that fails, or a later file cannot take its place, the earlier
    /// ones get their old bytes back: nothing has changed.
    /// </summary>
    /// <exception cref="IOException">The disk refuses, a file that should be new is there, or one was changed by someone else meanwhile.</exception>
    /// <exception cref="UnauthorizedAccessException">A file or folder may not be written.</exception>
    public static void Write(IReadOnlyList<WholeFile> files)
    {
        var waiting = new List<(string Beside, string Target, WholeFile File)>();
        var replaced = new List<(string Target, byte[]? Old)>();
        try
        {
            foreach (var file in files)
            {
                var target = file.ReplacesLink ? file.FullPath : Target(file.FullPath);
                waiting.Add((WriteBeside(target, file.Bytes), target, file));
                if (!(file.ReplacesLink && IsLink(target)))
                {
                    KeepPermissions(target, waiting[^1].Beside);
                }
            }

            foreach (var (beside, target, file) in waiting)
            {
                var old = File.Exists(target) && !IsLink(target) ? File.ReadAllBytes(target) : null;
                if (file.Expected is { } expected && (old is null || !old.AsSpan().SequenceEqual(expected)))
                {
                    throw new IOException($"'{Path.GetFileName(target)}' was changed by someone else meanwhile; nothing was written.");
                }

                File.Move(beside, target, overwrite: !file.IsNew);
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
            foreach (var (beside, _, _) in waiting.Where(w => File.Exists(w.Beside)))
            {
                File.Delete(beside);
            }
        }
    }

    /// <summary>Writes a report where the user said: a file whole or not at all, a device or pipe as it is.</summary>
    /// <exception cref="IOException">It cannot be written, for example because the disk or device is full.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Deliver(string fullPath, byte[] bytes)
    {
        if (!IsSpecial(fullPath))
        {
            Write([new WholeFile(fullPath, bytes)]);
            return;
        }

        using var stream = new FileStream(fullPath, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        stream.Write(bytes);
        stream.Flush();
    }

    /// <summary>Devices, pipes and terminals: what cannot be replaced by a file of the same name.</summary>
    private static bool IsSpecial(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return path.StartsWith(@"\\.\", StringComparison.Ordinal);
        }

        if (path.StartsWith("/dev/", StringComparison.Ordinal) || path.StartsWith("/proc/", StringComparison.Ordinal))
        {
            return File.Exists(path);
        }

        var target = Target(path);
        if (target != path && (target.StartsWith("/dev/", StringComparison.Ordinal) || target.StartsWith("/proc/", StringComparison.Ordinal)))
        {
            return true;
        }

        // What has a length is a file. Opened for both ways a pipe does not wait for the other side.
        if (new FileInfo(target) is not { Exists: true, Length: 0 })
        {
            return false;
        }

        try
        {
            using var stream = new FileStream(target, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);
            return !stream.CanSeek;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
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
                try
                {
                    stream.Write(bytes);
                    stream.Flush(flushToDisk: true);
                }
                catch (IOException)
                {
                    // A full disk leaves half a file, which is nobody's.
                    stream.Dispose();
                    File.Delete(beside);
                    throw;
                }

                return beside;
            }
            catch (IOException) when (i < MostNames && Path.Exists(beside))
            {
                // Somebody's: the next name.
            }
        }
    }

    private static bool IsLink(string path) => new FileInfo(path).LinkTarget is not null;

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
