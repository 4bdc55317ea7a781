using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// Everything a repair may touch or affect: the files shown and every recipe and stock of the repository that draws on them.
/// </summary>
internal sealed class RepairScope
{
    private readonly IFileTree _files;
    private readonly string _root;

    private RepairScope(IFileTree files, Facts facts)
    {
        _files = files;
        _root = facts.Workspace.Root;
        Facts = facts;
    }

    public Facts Facts { get; }

    /// <param name="memory">Keeps the facts for the trials to come.</param>
    public static RepairScope Of(IFileTree files, LoadOptions load, Workspace shown, FactsMemory memory)
    {
        // With the root of the disk as root nobody means all of it.
        var isWholeDisk = shown.Root.TrimEnd('/') is "" or [_, ':'];
        IReadOnlyList<string> asked = isWholeDisk
            ? [.. shown.Asked.Select(f => FullPath(shown.Root, f))]
            : [shown.Root, .. shown.Asked.Select(f => FullPath(shown.Root, f))];
        return new RepairScope(files, Analyzer.Analyse(WorkspaceLoader.Load(files, asked, load), memory));
    }

    /// <summary>Files with all that depend on them: stocks that take parts of them, recipes that dose them, whatever a settings,
    /// substances or profile file serves.</summary>
    public SortedSet<string> UsersOf(IEnumerable<string> files) => Facts.Workspace.WithUsersOf(files);

    /// <summary>False for a file outside the root, or one that a link leads out of it.</summary>
    public bool MayChange(string file)
    {
        var full = FullPathOf(file);
        var root = _files.ResolveLinks(_root).TrimEnd('/');
        return full == FullPath(_root, file)
            && !Path.IsPathRooted(file)
            && _files.ResolveLinks(full).StartsWith(root + "/", StringComparison.Ordinal);
    }

    public string FullPathOf(string file) => FullPath(_root, file);

    /// <summary>The bytes as they stand on the disk, mark included.</summary>
    public static byte[] OnDisk(SourceFile source) =>
        source.HadByteOrderMark ? [.. Encoding.UTF8.Preamble, .. source.Bytes] : source.Bytes.ToArray();

    private static string FullPath(string root, string file) =>
        file.StartsWith('/') || (file.Length > 1 && file[1] == ':') ? file : $"{root.TrimEnd('/')}/{file}";
}
