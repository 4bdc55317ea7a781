// The one file of the project that may touch the disk: everything else asks IFileTree.
#pragma warning disable RS0030

using System.Formats.Tar;
using System.IO.Enumeration;
using System.Security;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>The files of this machine. Only regular files are read; links to files are followed, links to folders are told apart.</summary>
/// <param name="currentFolder">The folder relative paths start from, in the spelling of this machine.</param>
public sealed class DiskFileTree(string currentFolder) : IFileTree
{
    private const int MaxLinks = 40;

    /// <summary>Hidden files count like others; who may not list a folder is told that it is empty, as with <see cref="Names"/>.</summary>
    private static readonly EnumerationOptions _everything = new()
    {
        AttributesToSkip = 0,
        IgnoreInaccessible = false,
        RecurseSubdirectories = false,
    };

    public string CurrentFolder { get; } = Slashes(Path.GetFullPath(currentFolder));

    public string FullPath(string path)
    {
        try
        {
            return Slashes(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path, CurrentFolder)));
        }
        catch (Exception e) when (IsFileFault(e))
        {
            // A name with a NUL in it: keep it as a path that no file has.
            return FilePaths.Join(CurrentFolder, path);
        }
    }

    public EntryKind Kind(string path) => Guarded(() => KindOf(path), EntryKind.Missing);

    public string ResolveLinks(string path) => Guarded(
        () =>
        {
            var at = path;
            for (var followed = 0; followed < MaxLinks; followed++)
            {
                if (FirstLink(at) is not { } link)
                {
                    return at;
                }

                at = link;
            }

            return path;
        },
        path);

    public IReadOnlyList<string> Names(string folder) => Guarded<IReadOnlyList<string>>(
        () => [.. new DirectoryInfo(folder).EnumerateFileSystemInfos().Select(i => i.Name).Order(StringComparer.Ordinal)],
        []);

    public bool IsLink(string path) => Guarded(() => new FileInfo(path).LinkTarget is not null, false);

    public IReadOnlyList<FolderEntry> Entries(string folder) => Guarded<IReadOnlyList<FolderEntry>>(
        () =>
        [
            .. new FileSystemEnumerable<FolderEntry>(
                folder, (ref FileSystemEntry e) => new FolderEntry(e.FileName.ToString(), e.IsDirectory), _everything)
                .OrderBy(e => e.Name, StringComparer.Ordinal),
        ],
        []);

    public FileBytes Read(string path, int sizeLimit)
    {
        try
        {
            if (RealFile(new FileInfo(path)) is not { } real || (real.Length == 0 && !IsRegular(real.FullName)))
            {
                return new FileBytes(null, null, "it is not a regular file");
            }

            // Pipes, sockets and devices state a length of 0, and opening one can wait for ever: what states 0 is never opened.
            if (real.Length == 0)
            {
                return FileBytes.Of([]);
            }

            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
            if (stream.Length > sizeLimit)
            {
                return new FileBytes(null, stream.Length, null);
            }

            // The file may grow or shrink while it is read.
            var bytes = new byte[Math.Max(1, (int)stream.Length)];
            var length = 0;
            int count;
            while ((count = stream.Read(bytes, length, bytes.Length - length)) > 0)
            {
                length += count;
                if (length > sizeLimit)
                {
                    return new FileBytes(null, length, null);
                }

                if (length == bytes.Length && stream.Position < stream.Length)
                {
                    Array.Resize(ref bytes, (int)Math.Min(stream.Length, (long)sizeLimit + 1));
                }
                else if (length == bytes.Length)
                {
                    break;
                }
            }

            return FileBytes.Of(length == bytes.Length ? bytes : bytes[..length]);
        }
        catch (Exception e) when (IsFileFault(e))
        {
            return new FileBytes(null, null, e is UnauthorizedAccessException ? "permission is denied" : "it cannot be read");
        }
    }

    private static EntryKind KindOf(string path)
    {
        var file = new FileInfo(path);
        if (file.Exists)
        {
            return RealFile(file) is { } real && (real.Length > 0 || IsRegular(real.FullName)) ? EntryKind.File : EntryKind.Other;
        }

        var folder = new DirectoryInfo(path);
        return !folder.Exists ? EntryKind.Missing
            : folder.LinkTarget is null ? EntryKind.Folder
            : folder.ResolveLinkTarget(returnFinalTarget: true) is DirectoryInfo { Exists: true } ? EntryKind.LinkedFolder
            : EntryKind.Other;
    }

    /// <summary>The file at the end of all links; null where there is none.</summary>
    private static FileInfo? RealFile(FileInfo file) =>
        !file.Exists ? null
        : !file.Attributes.HasFlag(FileAttributes.ReparsePoint) ? file
        : file.ResolveLinkTarget(returnFinalTarget: true) is FileInfo { Exists: true } real ? real
        : null;

    /// <summary>
    /// Whether what states a length of 0 is an empty file and no pipe, socket or device. An archive header of it says so without opening
    /// it; the runtime has no other way to ask. What the kernel makes up while it is read states 0 too, is opened for its header, and may
    /// then wait for ever.
    /// </summary>
    private static bool IsRegular(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return true;
        }

        if (path.StartsWith("/proc/", StringComparison.Ordinal) || path.StartsWith("/sys/", StringComparison.Ordinal))
        {
            return false;
        }

        using var archive = new MemoryStream();
        using (var writer = new TarWriter(archive, TarEntryFormat.Ustar, leaveOpen: true))
        {
            try
            {
                writer.WriteEntry(path, "entry");
            }
            catch (UnauthorizedAccessException)
            {
                // Only a regular file is opened for its header.
                return true;
            }
            catch (IOException)
            {
                // Sockets have no place in an archive.
                return false;
            }
        }

        archive.Position = 0;
        using var reader = new TarReader(archive);
        return reader.GetNextEntry() is { EntryType: TarEntryType.RegularFile };
    }

    /// <summary>The path with its first link replaced by where it leads; null when nothing on the way is a link.</summary>
    private static string? FirstLink(string path)
    {
        var parts = path.Split('/');
        var at = "";
        for (var i = 0; i < parts.Length; i++)
        {
            at = i == 0 ? parts[0] : $"{at}/{parts[i]}";
            if (i == 0 || at.EndsWith(':'))
            {
                continue;
            }

            FileSystemInfo entry = Directory.Exists(at) ? new DirectoryInfo(at) : new FileInfo(at);
            if (entry.LinkTarget is { } target)
            {
                var resolved = Slashes(Path.GetFullPath(target, FilePaths.FolderOf(at)));
                return string.Join('/', parts[(i + 1)..].Prepend(resolved));
            }
        }

        return null;
    }

    private static T Guarded<T>(Func<T> read, T otherwise)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (IsFileFault(e))
        {
            return otherwise;
        }
    }

    private static bool IsFileFault(Exception e) =>
        e is IOException or UnauthorizedAccessException or SecurityException or ArgumentException or NotSupportedException;

    private static string Slashes(string path) => Path.DirectorySeparatorChar == '\\' ? path.Replace('\\', '/') : path;
}
