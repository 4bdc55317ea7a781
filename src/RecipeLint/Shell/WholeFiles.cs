using System.Runtime.InteropServices;

namespace RecipeLint.Shell;

/// <summary>A file as it is to stand on the disk.</summary>
/// <param name="FullPath">Of a file, or of a link to one: then what it points to is written.</param>
internal sealed record WholeFile(string FullPath, byte[] Bytes)
{
    /// <summary>
    /// The bytes that the new ones were made from; when others stand there by now, nothing is written. Null when none were read.
    /// </summary>
    public byte[]? Expected { get; init; }

    /// <summary>Nothing may stand there yet.</summary>
    public bool IsNew { get; init; }

    /// <summary>A link in its place is replaced by the file, instead of what it points to.</summary>
    public bool ReplacesLink { get; init; }

    /// <summary>Folders on the way that are not there are made; they go again when nothing is written.</summary>
    public bool MakesFolder { get; init; }
}

/// <summary>
/// The one place of the program that writes: each file appears whole or not at all. It is written beside its place, carried to the disk and
/// then put in place; a device or pipe that somebody names as output is written to as it is. Who interrupts finds nothing half done: before
/// the first file took its place none does, after that all do.
/// </summary>
internal static class WholeFiles
{
    /// <summary>Of a name of ours, so that it stays below the 255 bytes that a disk takes.</summary>
    private const int LongestPart = 40;

    /// <summary>No run of ours waits so long between writing beside and putting in place: what is older was left by one that was
    /// killed.</summary>
    private static readonly TimeSpan _abandoned = TimeSpan.FromHours(1);

    /// <summary>
    /// Everything is written beside its place before anything takes it. When that fails, or a later file cannot take its place, the earlier
    /// ones stand there again as they were: nothing has changed.
    /// </summary>
    /// <returns>
    /// Full paths of the files that had other names on the disk: those still hold what stood there before, for a file that is written
    /// where it stands would not be whole or not at all, and a copy that somebody keeps in this way would be lost.
    /// </returns>
    /// <exception cref="IOException">The disk refuses, a file that should be new is there, or one was changed by someone else
    /// meanwhile.</exception>
    /// <exception cref="UnauthorizedAccessException">A file or folder may not be written.</exception>
    public static IReadOnlyList<string> Write(IReadOnlyList<WholeFile> files)
    {
        var waiting = new List<Waiting>();
        var made = new Stack<string>();
        var gate = new Lock();
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, _ => End(130));
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, _ => End(143));
        try
        {
            foreach (var file in files)
            {
                Lay(file, waiting, made, gate);
            }

            lock (gate)
            {
                PutInPlace(waiting);
                made.Clear();
            }

            Sweep(waiting);
            return [.. waiting.Where(w => w.HadOtherNames).Select(w => w.File.FullPath)];
        }
        finally
        {
            Leave();
        }

        // Whoever holds the gate is alone: nothing takes its place any more.
        void End(int code)
        {
            lock (gate)
            {
                Leave();
                Environment.Exit(code);
            }
        }

        void Leave()
        {
            lock (gate)
            {
                foreach (var left in waiting.Where(w => File.Exists(w.Beside)))
                {
                    File.Delete(left.Beside);
                }

                while (made.TryPop(out var folder))
                {
                    if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
                    {
                        Directory.Delete(folder);
                    }
                }
            }
        }
    }

    /// <summary>Beside its place, with the permissions of what stands there.</summary>
    private static void Lay(WholeFile file, List<Waiting> waiting, Stack<string> made, Lock gate)
    {
        var target = file.ReplacesLink ? file.FullPath : Target(file.FullPath);
        lock (gate)
        {
            var beside = Plainly(target, () =>
            {
                if (file.MakesFolder)
                {
                    MakeFolder(Path.GetDirectoryName(target)!, made);
                }

                return WriteBeside(target, file.Bytes);
            });
            waiting.Add(new Waiting(beside, target, file, !file.ReplacesLink && File.Exists(target) && HardLink.NamesOf(target) > 1));
        }

        if (!(file.ReplacesLink && IsLink(target)))
        {
            KeepPermissions(target, waiting[^1].Beside);
        }
    }

    /// <summary>One after the other, each remembered before it is made.</summary>
    private static void MakeFolder(string folder, Stack<string> made)
    {
        if (Directory.Exists(folder))
        {
            return;
        }

        if (Path.GetDirectoryName(folder) is { } above)
        {
            MakeFolder(above, made);
        }

        made.Push(folder);
        Directory.CreateDirectory(folder);
    }

    /// <summary>One after the other; where one cannot, those before it are taken back.</summary>
    private static void PutInPlace(List<Waiting> waiting)
    {
        var replaced = new List<Replaced>();
        try
        {
            // New ones first: of two runs at once one stops before it has touched anything.
            foreach (var (beside, target, file, _) in waiting.OrderByDescending(w => w.File.IsNew))
            {
                using var held = Held(target, file.Expected);
                if (new FileInfo(target).LinkTarget is { } link)
                {
                    File.Move(beside, target, overwrite: !file.IsNew);
                    replaced.Add(new Replaced(target, null, link));
                }
                else if (file.IsNew && HardLink.TryMake(beside, target))
                {
                    replaced.Add(new Replaced(target, null, null));
                    File.Delete(beside);
                }
                else if (file.IsNew)
                {
                    // Moving looks first and then replaces; only making a file tells at once that another run made it. Where no second name
                    // can be given this is left: killed just here, an empty file stays.
                    Plainly(target, () => new FileStream(target, FileMode.CreateNew, FileAccess.Write)).Dispose();
                    replaced.Add(new Replaced(target, null, null));
                    File.Move(beside, target, overwrite: true);
                }
                else if (waiting.Count > 1 && File.Exists(target))
                {
                    // What stood there keeps a name of ours, so that taking it back needs no room on the disk.
                    replaced.Add(new Replaced(target, Plainly(target, () => Exchange(beside, target)), null));
                }
                else
                {
                    if (!Plainly(target, () => Move(beside, target)))
                    {
                        replaced.Add(new Replaced(target, null, null));
                    }
                }
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            replaced.ForEach(PutBack);
            throw;
        }

        foreach (var before in replaced.Select(r => r.Before).OfType<string>())
        {
            File.Delete(before);
        }
    }

    /// <returns>True where a file was replaced.</returns>
    private static bool Move(string beside, string target)
    {
        var wasThere = File.Exists(target);
        File.Move(beside, target, overwrite: true);
        return wasThere;
    }

    /// <summary>Does what the disk may refuse; the refusal names the file that was asked for, not one that is hidden beside it.</summary>
    private static T Plainly<T>(string target, Func<T> act)
    {
        try
        {
            return act();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            var reason = e is UnauthorizedAccessException ? "permission is denied"
                : e is FileNotFoundException or DirectoryNotFoundException ? "no file can be made there"
                : e.Message.Contains("exist", StringComparison.Ordinal) && Path.Exists(target) ? "it is there already"
                : e.Message.Split(" : '")[0].TrimEnd('.');
            reason = char.ToLowerInvariant(reason[0]) + reason[1..];
            throw new IOException($"'{Path.GetFileName(target)}' cannot be written: {reason}; nothing was written.", e);
        }
    }

    /// <summary>Puts one file in the place of another.</summary>
    /// <returns>Where the other lies now.</returns>
    private static string Exchange(string beside, string target)
    {
        var before = Beside(target);
        try
        {
            File.Replace(beside, target, before, ignoreMetadataErrors: true);
            return before;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Its second name is made first; the file itself still stands in its place.
            File.Delete(before);
            throw;
        }
    }

    /// <summary>
    /// Makes sure that a file still is what was read, and keeps other runs of ours from replacing it until that is done; null where nothing
    /// was read.
    /// </summary>
    /// <exception cref="IOException">Somebody saved it since, or another run of ours is replacing it.</exception>
    private static FileStream? Held(string target, byte[]? expected)
    {
        if (expected is null)
        {
            return null;
        }

        var held = Hold(target);
        if (File.Exists(target) && File.ReadAllBytes(target).AsSpan().SequenceEqual(expected))
        {
            return held;
        }

        held.Dispose();
        throw new IOException($"'{Path.GetFileName(target)}' was changed by someone else meanwhile; nothing was written.");
    }

    /// <summary>
    /// A file that only one run at a time can have open. It goes when that run ends, however it ends, or with the next one.
    /// </summary>
    private static FileStream Hold(string target)
    {
        var name = Path.Combine(Path.GetDirectoryName(target)!, $".recipelint-{Part(target)}.held.partial");
        try
        {
            return new FileStream(
                name, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0, FileOptions.DeleteOnClose);
        }
        catch (IOException fault)
        {
            throw new IOException($"'{Path.GetFileName(target)}' is being written by another run; nothing was written.", fault);
        }
    }

    /// <summary>Writes reports where the user said: files whole, all or none, then devices and pipes as they are.</summary>
    /// <exception cref="IOException">One cannot be written, for example because the disk or device is full.</exception>
    /// <exception cref="UnauthorizedAccessException">One may not be written.</exception>
    public static void Deliver(IReadOnlyList<WholeFile> reports)
    {
        var special = reports.Where(r => IsSpecial(r.FullPath)).ToList();
        Write([.. reports.Except(special)]);
        foreach (var report in special)
        {
            using var stream = new FileStream(report.FullPath, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            Plainly(report.FullPath, () =>
            {
                Fill(stream, report.Bytes);
                return true;
            });
        }
    }

    /// <summary>Devices, pipes and terminals: what cannot be replaced by a file of the same name.</summary>
    public static bool IsSpecial(string path)
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
        if (target != path
            && (target.StartsWith("/dev/", StringComparison.Ordinal) || target.StartsWith("/proc/", StringComparison.Ordinal)))
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
        var beside = Beside(target);
        using var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.Read, bufferSize: 0);
        try
        {
            Fill(stream, bytes);
            return beside;
        }
        catch (IOException)
        {
            // A full disk leaves half a file, which is nobody's.
            stream.Dispose();
            File.Delete(beside);
            throw;
        }
    }

    private static void Fill(FileStream stream, byte[] bytes)
    {
        try
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: stream.CanSeek);
        }
        catch (ArgumentOutOfRangeException fault)
        {
            // What the runtime makes of a disk that takes no file of this size.
            throw new IOException("the disk takes no file of this size", fault);
        }
    }

    /// <summary>Hidden, with our name in it and of this one file: no other run has the same.</summary>
    private static string Beside(string target)
    {
        return Path.Combine(Path.GetDirectoryName(target)!, $".recipelint-{Part(target)}.{Guid.NewGuid():N}.partial");
    }

    private static string Part(string target)
    {
        var name = Path.GetFileName(target);
        return name.Length > LongestPart ? name[..LongestPart] : name;
    }

    /// <summary>Removes what runs that were killed left in these folders. The clock is that of the disk.</summary>
    private static void Sweep(List<Waiting> written)
    {
        foreach (var one in written.DistinctBy(w => Path.GetDirectoryName(w.Target)))
        {
            var now = File.GetLastWriteTimeUtc(one.Target);
            foreach (var left in new DirectoryInfo(Path.GetDirectoryName(one.Target)!).EnumerateFiles(".recipelint-*.partial"))
            {
                if (now - left.LastWriteTimeUtc <= _abandoned)
                {
                    continue;
                }

                try
                {
                    left.Delete();
                }
                catch (UnauthorizedAccessException)
                {
                    // In a folder that many share it is somebody else's, and theirs to remove; what was asked for is written.
                }
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

    private static void PutBack(Replaced replaced)
    {
        if (replaced.Before is { } before)
        {
            File.Move(before, replaced.Target, overwrite: true);
            return;
        }

        File.Delete(replaced.Target);
        if (replaced.Link is { } link)
        {
            File.CreateSymbolicLink(replaced.Target, link);
        }
    }

    /// <param name="HadOtherNames">What stands at the target has more names than this one.</param>
    private sealed record Waiting(string Beside, string Target, WholeFile File, bool HadOtherNames);

    /// <param name="Before">Where the file that stood there lies now; null when there was none.</param>
    /// <param name="Link">Where the link led that stood there; null when there was none.</param>
    private sealed record Replaced(string Target, string? Before, string? Link);
}
