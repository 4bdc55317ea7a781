using System.CommandLine;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports;
using RecipeLint.Reports.Comparison;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Pages;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Compares two states of files, for whoever reviews a change.</summary>
internal static class CompareCommand
{
    public static Command Build(Surroundings world)
    {
        var old = new Argument<string>("old") { Description = "A file, a folder, or a git revision such as HEAD~1, main or v1.2." };
        var now =
            new Argument<string>("new") { Description = "The same kind; after a revision also a path, which is then looked at in both." };
        var format = new Option<string>("--format")
        {
            Description = "How to report.",
            DefaultValueFactory = _ => "text",
            HelpName = "text|markdown|html|json",
        };
        format.AcceptOnlyFromAmong("text", "markdown", "html", "json");
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Write to this file instead of standard output.",
            HelpName = "file",
        };
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var command = new Command(
            "compare", "Compare two files, folders or git revisions: amounts, what the plants get, room in the bottles, findings.")
        {
            old, now, format, output, width, color,
        };
        command.SetAction(parsed =>
        {
            var (before, after) = Sides(world, parsed.GetValue(old)!, parsed.GetValue(now)!);
            var comparison = Comparison.Of(before, after);
            var target = parsed.GetValue(output) is { } path ? OutputFile.Of(world, path, after.Facts.Workspace) : null;
            var useColor = target is null ? world.UseColor(parsed.GetValue(color)!) : parsed.GetValue(color) == "always";
            var options = new TextOptions(useColor, world.Width(parsed.GetValue(width)));
            if (target is null)
            {
                Write(world.Out, parsed.GetValue(format)!, comparison, options);
                world.Out.Flush();
            }
            else
            {
                target.Write(writer => Write(writer, parsed.GetValue(format)!, comparison, options));
            }

            return ExitCodes.Clean;
        });
        return command;
    }

    private static void Write(TextWriter writer, string format, Comparison comparison, TextOptions options)
    {
        switch (format)
        {
            case "markdown":
                ComparisonMarkdown.Write(writer, comparison);
                break;
            case "html":
                writer.Write(ComparisonPage.Of(comparison, ToolVersion.Text));
                break;
            case "json":
                ComparisonJson.Write(writer, comparison);
                break;
            default:
                ComparisonText.Write(writer, comparison, options);
                break;
        }
    }

    /// <exception cref="UsageException">A side is neither a path nor a revision.</exception>
    private static (Side Old, Side New) Sides(Surroundings world, string old, string now)
    {
        var disk = world.Files(world.CurrentDirectory);
        var (oldIsPath, nowIsPath) = (IsPath(disk, old), IsPath(disk, now));
        (IFileTree Tree, string? Path)? oldRevision = oldIsPath ? null : Revision(world, old);
        (IFileTree Tree, string? Path)? nowRevision = nowIsPath ? null : Revision(world, now);
        var before = oldRevision is { } was
            ? Of(world, was.Tree, was.Path ?? (nowIsPath ? now : nowRevision?.Path ?? "."), old)
            : Of(world, disk, old, old);
        var after = nowRevision is { } becomes
            ? Of(world, becomes.Tree, becomes.Path ?? (oldIsPath ? old : oldRevision?.Path ?? "."), now)
            : Of(world, disk, now, now);
        return (before, after);
    }

    private static bool IsPath(IFileTree disk, string path) => disk.Kind(disk.FullPath(path)) is EntryKind.File or EntryKind.Folder;

    /// <summary>The files of "main" or "main:stocks/a.stock.json".</summary>
    private static (IFileTree Tree, string? Path) Revision(Surroundings world, string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var name = colon < 0 ? text : text[..colon];
        return GitRepository.IsRevision(world.CurrentDirectory, name)
            ? (GitRepository.Around(world.CurrentDirectory).FilesOf(name, world.CurrentDirectory), colon < 0 ? null : text[(colon + 1)..])
            : throw new UsageException($"'{text}' is neither a file or folder nor a git revision.");
    }

    private static Side Of(Surroundings world, IFileTree files, string path, string name)
    {
        var run = Session.OpenIn(files, path);
        var result = LintEngine.Judge(run.Facts, StandardEngine.On(world.Today));
        var full = files.FullPath(path);
        var folder = files.Kind(full) == EntryKind.Folder ? full : full[..Math.Max(full.LastIndexOf('/'), 0)];
        var root = run.Workspace.Root.TrimEnd('/');
        return new Side(ShownName.Of(name), run.Facts, result, file =>
        {
            var whole = $"{root}/{file}";
            return whole.StartsWith(folder + "/", StringComparison.Ordinal) ? whole[(folder.Length + 1)..] : file;
        });
    }
}
