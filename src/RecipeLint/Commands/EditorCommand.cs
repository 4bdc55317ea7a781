using System.CommandLine;
using System.Text;
using RecipeLint.Editor.Setup;
using RecipeLint.Reports;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes the settings of an editor into a shop, with the schemas they point to.</summary>
internal static class EditorCommand
{
    public static Command Build(Surroundings world)
    {
        var editor = new Option<string?>("--for") { Description = "The editor.", HelpName = string.Join('|', EditorNames) };
        editor.AcceptOnlyFromAmong(EditorNames);
        var print =
            new Option<bool>("--print") { Description = "Write no settings, print them: for an editor that has a settings file already." };
        var folder = new Argument<string>("folder") { Description = "The shop.", DefaultValueFactory = _ => "." };
        const string Purpose =
            "Write an editor's settings for a shop: which schema describes which file, and how the language server is started.";
        var command = new Command("editor", Purpose) { folder, editor, print };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(editor) is not { } name)
            {
                throw new UsageException($"say for which editor with '--for': {string.Join(", ", EditorNames)}.");
            }

            Write(world, parsed.GetValue(folder)!, name, parsed.GetValue(print));
            return ExitCodes.Clean;
        });
        return command;
    }

    // Stands here so that a command line that is only parsed does not load the room behind it.
    private static readonly string[] EditorNames = ["helix", "neovim", "vscode"];

    private static void Write(Surroundings world, string folder, string name, bool print)
    {
        var target = Path.GetFullPath(folder, world.CurrentDirectory);
        if (!Directory.Exists(target))
        {
            throw new UsageException($"the folder '{folder}' does not exist.");
        }

        var settings = EditorSettings.For(name);
        if (!print && Path.Exists(Path.Combine(target, settings.Path)))
        {
            throw new UsageException($"'{settings.Path}' is there already and stays as it is; '--print' shows what would stand in it.");
        }

        // The schemas are the program's own and follow its version.
        var written = PublishedSchemas.Files().Select(f => In(target, f.Path, f.Text)).ToList();
        if (!print)
        {
            written.Add(In(target, settings.Path, settings.Text) with { IsNew = true });
        }

        WholeFiles.Write(written);
        if (print)
        {
            world.Out.Write(settings.Text);
        }
        else
        {
            world.Tell($"wrote {PublishedSchemas.Folder} and {settings.Path}");
            world.Out.WriteLine(Printable.Show(settings.Hint));
        }
    }

    private static WholeFile In(string target, string path, string text) =>
        new(Path.Combine(target, path), Encoding.UTF8.GetBytes(text)) { MakesFolder = true };
}
