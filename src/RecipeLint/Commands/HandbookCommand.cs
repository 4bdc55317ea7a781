using System.CommandLine;
using RecipeLint.Reports.Handbook;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes the rule book as static pages.</summary>
internal static class HandbookCommand
{
    /// <summary>The list, one path a line. It makes a folder an earlier handbook.</summary>
    internal const string ListName = "handbook-files.txt";

    public static Command Build(Surroundings world)
    {
        var output = new Option<string?>("--output", "-o")
        {
            Description = "The folder to write to: a new or empty one, or an earlier handbook, which is replaced.",
            HelpName = "folder",
        };
        var exercises = new Option<string?>("--exercises")
        {
            Description = "Write the exercises of the first week and the files of the lessons into this folder, to be mended and checked; "
                + "no file is replaced.",
            HelpName = "folder",
        };
        var command = new Command("handbook", "Write the rule book and a first week of exercises as pages for a browser.")
        {
            output,
            exercises,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(exercises) is { } lessons)
            {
                NewFiles.Write(
                    world, Path.GetFullPath(lessons, world.CurrentDirectory), lessons,
                    [.. RuleHandbook.Exercises().Concat(RuleHandbook.Lessons()).Select(f => (f.Path, f.Text))]);
                if (parsed.GetValue(output) is null)
                {
                    return ExitCodes.Clean;
                }
            }

            var named = parsed.GetValue(output)
                ?? throw new UsageException(
                    "'handbook' needs '--output': the folder to write to, or '--exercises': the folder for the exercises as files.");
            var folder = Path.GetFullPath(named, world.CurrentDirectory);
            var pages = new PageFolder(ListName, "recipelint handbook", "handbook");

            // Asked before the pages are made, which takes a while.
            pages.Earlier(folder, named);
            var files = RuleHandbook.Make(ToolVersion.Text);
            pages.Write(folder, named, [.. files.Select(f => (f.Path, f.Text))]);
            var count = files.Count(f => f.Path.EndsWith(".html", StringComparison.Ordinal));
            world.Tell($"wrote {count} pages to {named}; open {Path.Combine(named, "index.html")} in a browser");
            return ExitCodes.Clean;
        });
        return command;
    }
}
