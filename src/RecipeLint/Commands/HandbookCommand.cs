using System.CommandLine;
using System.Text;
using RecipeLint.Reports.Handbook;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>
/// Writes the rule book as static pages. A list of what was written lies beside the pages: only a folder that is empty or has such a list is
/// written to, and only what the list names is ever replaced or removed.
/// </summary>
internal static class HandbookCommand
{
    /// <summary>The list, one path a line. It makes a folder an earlier handbook.</summary>
    internal const string ListName = "handbook-files.txt";

    private const string ListHead = "Written by 'recipelint handbook', which replaces the files named here and no others.";

    public static Command Build(Surroundings world)
    {
        var output = new Option<string>("--output", "-o")
        {
            Description = "The folder to write to: a new or empty one, or an earlier handbook, which is replaced.",
            HelpName = "folder",
            Required = true,
        };
        var command = new Command("handbook", "Write the rule book and a first week of exercises as pages for a browser.") { output };
        command.SetAction(parsed =>
        {
            var named = parsed.GetValue(output)!;
            var folder = Path.GetFullPath(named, world.CurrentDirectory);
            var earlier = Earlier(folder, named);
            var files = RuleHandbook.Make(ToolVersion.Text);
            Refuse(folder, earlier, files);
            Write(folder, earlier, files);
            var pages = files.Count(f => f.Path.EndsWith(".html", StringComparison.Ordinal));
            world.Out.WriteLine($"wrote {pages} pages to {named}; open {Path.Combine(named, "index.html")} in a browser");
            return ExitCodes.Clean;
        });
        return command;
    }

    /// <summary>The files of an earlier handbook in the folder; none where the folder is new or empty.</summary>
    /// <exception cref="UsageException">Something else is there.</exception>
    private static HashSet<string> Earlier(string folder, string named)
    {
        if (File.Exists(folder))
        {
            throw new UsageException($"cannot write to '{named}': it is a file.");
        }

        if (!Directory.Exists(folder) || !Directory.EnumerateFileSystemEntries(folder).Any())
        {
            return [];
        }

        var list = Path.Combine(folder, ListName);
        var lines = File.Exists(list) ? File.ReadAllLines(list) : [];
        return lines.Length > 0 && lines[0] == ListHead
            ? [.. lines.Skip(1).Where(IsOurs)]
            : throw new UsageException($"'{named}' is not empty and no earlier handbook (it has no {ListName}); nothing was written. Name a new or empty folder.");
    }

    /// <summary>A path as the handbook writes them; a list that was tampered with leads nowhere else.</summary>
    private static bool IsOurs(string path) =>
        path.Length > 0 && path.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '/' or '.')
        && path.Split('/').All(part => part.Length > 0 && part[0] != '.');

    /// <exception cref="UsageException">A file would be replaced that no earlier handbook wrote, or a link leads elsewhere.</exception>
    private static void Refuse(string folder, HashSet<string> earlier, IReadOnlyList<HandbookFile> files)
    {
        foreach (var path in files.Select(f => f.Path).Concat(earlier))
        {
            var full = Path.Combine(folder, path);
            if (File.Exists(full) && !earlier.Contains(path))
            {
                throw new UsageException($"'{path}' is there already and was not written by an earlier handbook; nothing was written.");
            }

            if (new DirectoryInfo(Path.GetDirectoryName(full)!).LinkTarget is not null && Path.GetDirectoryName(full) != folder)
            {
                throw new UsageException($"the folder of '{path}' is a link to elsewhere; nothing was written.");
            }
        }
    }

    private static void Write(string folder, HashSet<string> earlier, IReadOnlyList<HandbookFile> files)
    {
        Directory.CreateDirectory(folder);

        // The list goes first and names both: a run that is broken off leaves a folder that the next one may finish.
        WriteList(folder, files.Select(f => f.Path).Concat(earlier));
        foreach (var below in files.Select(f => Path.GetDirectoryName(Path.Combine(folder, f.Path))!).Distinct(StringComparer.Ordinal))
        {
            Directory.CreateDirectory(below);
        }

        WholeFiles.Write([.. files.Select(f => Page(folder, f.Path, f.Text))]);
        foreach (var gone in earlier.Except(files.Select(f => f.Path)))
        {
            File.Delete(Path.Combine(folder, gone));
        }

        WriteList(folder, files.Select(f => f.Path));
    }

    private static void WriteList(string folder, IEnumerable<string> paths)
    {
        var text = new StringBuilder(ListHead).Append('\n').AppendJoin('\n', paths.Distinct().Order(StringComparer.Ordinal)).Append('\n');
        WholeFiles.Write([Page(folder, ListName, text.ToString())]);
    }

    private static WholeFile Page(string folder, string path, string text) =>
        new(Path.Combine(folder, path), Encoding.UTF8.GetBytes(text)) { ReplacesLink = true };
}
