using System.Text;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Shell;

/// <summary>
/// A folder of pages that may be written again. A list of what was written lies beside the pages: only a folder that is empty or has such a
/// list is written to, and only what the list names is ever replaced or removed.
/// </summary>
/// <param name="ListName">The list, one path a line. It makes a folder one of these.</param>
/// <param name="Command">What writes it ("recipelint handbook").</param>
/// <param name="What">"handbook", "report".</param>
internal sealed record PageFolder(string ListName, string Command, string What)
{
    private string ListHead => $"Written by '{Command}', which replaces the files named here and no others.";

    /// <param name="folder">Full path.</param>
    /// <param name="named">As the user wrote it.</param>
    /// <param name="beside">Written with the pages or not at all, such as the page that leads to them; null for none.</param>
    /// <exception cref="UsageException">Something else is there.</exception>
    public void Write(string folder, string named, IReadOnlyList<(string Path, string Text)> files, WholeFile? beside = null)
    {
        var earlier = Earlier(folder, named);
        Refuse(folder, earlier, files.Select(f => f.Path));
        var isNew = !Directory.Exists(folder);

        // The list goes first and names both: a run that is killed leaves a folder that the next one may finish.
        WriteList(folder, files.Select(f => f.Path).Concat(earlier));
        try
        {
            WholeFiles.Write([.. files.Select(f => Page(folder, f.Path, f.Text)), .. beside is null ? Array.Empty<WholeFile>() : [beside]]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            TakeBack(folder, earlier.Count == 0, isNew);
            throw;
        }

        foreach (var gone in earlier.Except(files.Select(f => f.Path)))
        {
            File.Delete(Path.Combine(folder, gone));
        }

        WriteList(folder, files.Select(f => f.Path));
    }

    /// <summary>The files of an earlier run in the folder; none where the folder is new or empty.</summary>
    /// <exception cref="UsageException">Something else is there.</exception>
    public IReadOnlySet<string> Earlier(string folder, string named)
    {
        var reason = named.Length == 0 ? "a folder needs a name"
            : WholeFiles.IsSpecial(folder) ? "it is a device"
            : File.Exists(folder) ? "it is a file"
            : DocumentKinds.FromFileName(folder.TrimEnd('/', Path.DirectorySeparatorChar)) is not null
                ? "its name is that of a file that is read"
            : null;
        if (reason is not null)
        {
            throw new UsageException($"cannot write to '{named}': {reason}.");
        }

        if (!Directory.Exists(folder) || !Directory.EnumerateFileSystemEntries(folder).Any())
        {
            return new HashSet<string>();
        }

        var list = Path.Combine(folder, ListName);
        var lines = File.Exists(list) ? File.ReadAllLines(list) : [];
        return lines.Length > 0 && lines[0] == ListHead
            ? lines.Skip(1).Where(IsOurs).ToHashSet()
            : throw new UsageException(
                $"'{named}' is not empty and no earlier {What} (it has no {ListName}); nothing was written. Name a new or empty folder.");
    }

    /// <summary>A path as pages have them; a list that was tampered with leads nowhere else.</summary>
    private static bool IsOurs(string path) =>
        path.Length > 0 && path.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '/' or '.')
        && path.Split('/').All(part => part.Length > 0 && part[0] != '.');

    /// <exception cref="UsageException">A file would be replaced that no earlier run wrote, or a link leads elsewhere.</exception>
    private void Refuse(string folder, IReadOnlySet<string> earlier, IEnumerable<string> paths)
    {
        foreach (var path in paths.Concat(earlier))
        {
            var full = Path.Combine(folder, path);
            if (File.Exists(full) && !earlier.Contains(path))
            {
                throw new UsageException($"'{path}' is there already and was not written by an earlier {What}; nothing was written.");
            }

            if (new DirectoryInfo(Path.GetDirectoryName(full)!).LinkTarget is not null && Path.GetDirectoryName(full) != folder)
            {
                throw new UsageException($"the folder of '{path}' is a link to elsewhere; nothing was written.");
            }
        }
    }

    private void WriteList(string folder, IEnumerable<string> paths)
    {
        var text = new StringBuilder(ListHead).Append('\n').AppendJoin('\n', paths.Distinct().Order(StringComparer.Ordinal)).Append('\n');
        WholeFiles.Write([Page(folder, ListName, text.ToString())]);
    }

    /// <summary>
    /// A folder in which nothing could be written is left as it was. An earlier list may stay: it names more than is there.
    /// </summary>
    private void TakeBack(string folder, bool isFirst, bool isNew)
    {
        if (isFirst)
        {
            File.Delete(Path.Combine(folder, ListName));
        }

        if (isNew && !Directory.EnumerateFileSystemEntries(folder).Any())
        {
            Directory.Delete(folder);
        }
    }

    private static WholeFile Page(string folder, string path, string text) =>
        new(Path.Combine(folder, path), Encoding.UTF8.GetBytes(text)) { ReplacesLink = true, MakesFolder = true };
}
