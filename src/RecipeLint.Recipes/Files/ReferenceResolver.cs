using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Turns references between files into workspace paths. Nothing outside the repository is ever looked at.</summary>
/// <param name="files">Where existence and links are asked.</param>
/// <param name="root">Full path of the repository root.</param>
internal sealed class ReferenceResolver(IFileTree files, string root) : IReferences
{
    /// <summary>
    /// Folders beside its own that are looked into for a file that is missing; in a repository of a thousand shops there are as many.
    /// </summary>
    private const int MostBeside = 20;

    private readonly Lazy<string> _realRoot = new(() => files.ResolveLinks(root));

    /// <summary>Whether this disk tells names apart by case; asked once.</summary>
    private bool? _tellsCaseApart;

    public ResolvedReference Resolve(string fromFile, string reference, string ending, string what)
    {
        var shown = Wording.Shorten(reference);
        if (OfOneMachine(reference, shown) is { } unfit)
        {
            return unfit;
        }

        var from = FilePaths.Join(root, fromFile);
        var full = FilePaths.Resolve(FilePaths.FolderOf(from), reference);
        if (full is null || !StaysInside(FilePaths.FolderOf(fromFile), reference))
        {
            return new(
                null, ProblemKind.ReferenceLeavesRepository, $"'{shown}' climbs out of the repository. Only files inside it are read.");
        }

        if (!reference.EndsWith(ending, StringComparison.OrdinalIgnoreCase))
        {
            var meant = Near(from, full + ending, ending);
            return new(
                null,
                ProblemKind.MissingReference,
                $"'{shown}' is not a {what}. The name of one ends in '{ending}'.{Wording.DidYouMean(meant)}")
            { Suggestions = meant };
        }

        var kind = reference.Contains('\0', StringComparison.Ordinal) ? EntryKind.Missing : files.Kind(full);
        if (kind != EntryKind.File)
        {
            var reason = kind == EntryKind.Missing ? "does not exist" : "is not a regular file";
            return new(null, ProblemKind.MissingReference, $"The {what} '{shown}' {reason}.") { Suggestions = Near(from, full, ending) };
        }

        if (Respelled(from, full) is { } spelled)
        {
            var relative = Relative(FilePaths.FolderOf(from), spelled);
            return new(
                null,
                ProblemKind.MissingReference,
                $"The {what} '{shown}' is spelled '{Wording.Shorten(relative)}' on the disk. "
                + "This machine takes one for the other; others do not.")
            {
                Suggestions = [relative],
            };
        }

        return FilePaths.IsWithin(files.ResolveLinks(full), _realRoot.Value)
            ? new(FilePaths.Below(OwnPath(full), root), default, "")
            : new(
                null,
                ProblemKind.ReferenceLeavesRepository,
                $"'{shown}' is a link that leads out of the repository. Only files inside it are read.");
    }

    /// <summary>What is wrong with a reference that only one machine or system can follow; null for any other.</summary>
    private static ResolvedReference? OfOneMachine(string reference, string shown)
    {
        if (reference.Contains('\\', StringComparison.Ordinal))
        {
            var repaired = reference.Replace('\\', '/');
            return new(
                null,
                ProblemKind.ReferenceLeavesRepository,
                $"'{shown}' is written with backslashes, which other machines read differently. Write '{Wording.Shorten(repaired)}'.")
            {
                Suggestions = LooksAbsolute(repaired) ? [] : [repaired],
            };
        }

        if (LooksAbsolute(reference))
        {
            return new(
                null,
                ProblemKind.ReferenceLeavesRepository,
                $"'{shown}' points to a place on one machine or on a network. Write the way from this file, such as "
                    + "'../stocks/a.stock.json'.");
        }

        return null;
    }

    IReadOnlyList<string> IReferences.Near(string fromFile, string name, string ending)
    {
        var from = FilePaths.Join(root, fromFile);
        return name.IndexOfAny(['\0', '\\']) < 0
            && FilePaths.Resolve(FilePaths.FolderOf(from), name) is { } full
            && FilePaths.IsWithin(full, root)
            ? Near(from, full, ending)
            : [];
    }

    /// <summary>The path of a file without links to folders on the way, so that one file has one name.</summary>
    private string OwnPath(string full) =>
        FolderWalk.Target(files, FilePaths.FolderOf(full), root) is { } folder ? FilePaths.Join(folder, FilePaths.NameOf(full)) : full;

    /// <summary>The path as the disk spells it, where that differs in case from what was written; null where it does not.</summary>
    private string? Respelled(string from, string full)
    {
        var shouted = FilePaths.Join(FilePaths.FolderOf(from), FilePaths.NameOf(from).ToUpperInvariant());
        _tellsCaseApart ??= files.Kind(shouted) == EntryKind.Missing;
        if (_tellsCaseApart.Value)
        {
            return null;
        }

        var spelled = root;
        foreach (var part in FilePaths.Below(full, root).Split('/'))
        {
            var names = files.Names(spelled);
            var own = names.Contains(part) ? part : names.FirstOrDefault(n => n.Equals(part, StringComparison.OrdinalIgnoreCase)) ?? part;
            spelled = FilePaths.Join(spelled, own);
        }

        return spelled == full ? null : spelled;
    }

    private static bool LooksAbsolute(string reference) =>
        reference.StartsWith('/') || reference.StartsWith('~') || reference.Contains(':', StringComparison.Ordinal);

    /// <summary>A way that leaves the root and comes back is refused as well: it works only where the folder has that name.</summary>
    private static bool StaysInside(string folder, string reference)
    {
        var depth = folder.Length == 0 ? 0 : folder.Split('/').Length;
        foreach (var part in reference.Split('/'))
        {
            depth += part switch { "" or "." => 0, ".." => -1, _ => 1 };
            if (depth < 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// Files of the same kind in the folder meant, beside the referring file or in a folder beside its own, spelled so that they resolve.
    /// </summary>
    private IReadOnlyList<string> Near(string from, string full, string ending)
    {
        var meant = FilePaths.FolderOf(full);
        var here = FilePaths.FolderOf(from);
        var name = FilePaths.NameOf(full);
        var above = FilePaths.FolderOf(here);
        var beside = here == root || !FilePaths.IsWithin(above, root)
            ? []
            : files.Names(above).Where(n => !FolderWalk.IsSkipped(n)).Select(n => FilePaths.Join(
                above, n)).Where(f => files.Kind(f) == EntryKind.Folder)
                .Take(MostBeside);
        var candidates = new[] { meant, here }.Concat(beside).Distinct(StringComparer.Ordinal)
            .Where(f => FilePaths.IsWithin(f, root))
            .SelectMany(f => files.Names(f).Where(n => n.EndsWith(ending, StringComparison.Ordinal)).Select(n => FilePaths.Join(f, n)))
            .ToArray();
        var near = Spelling.Nearest(name, candidates.Select(FilePaths.NameOf).Distinct(StringComparer.Ordinal));
        return [.. near.Select(n => Relative(here, candidates.First(c => FilePaths.NameOf(c) == n)))];
    }

    private string Relative(string folder, string target)
    {
        var up = "";
        var at = folder;
        while (!FilePaths.IsWithin(target, at) && at != root)
        {
            at = FilePaths.FolderOf(at);
            up += "../";
        }

        return up + FilePaths.Below(target, at);
    }
}
