using System.CommandLine;
using RecipeLint.Install;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints what a shell or the manual needs: completion scripts and the manual page.</summary>
internal static class CompletionCommand
{
    public static Command Build(Surroundings world, RootCommand root)
    {
        var shell = new Argument<string>("shell") { Description = "bash, zsh, fish or powershell." };
        shell.AcceptOnlyFromAmong([.. CompletionScripts.Shells]);
        var command = new Command("completion", "Print the script that lets a shell complete commands, options and rule names.") { shell };
        command.SetAction(parsed =>
        {
            world.Out.Write(CompletionScripts.For(parsed.GetValue(shell)!, CommandOutline.Of(root)));
            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }

    public static Command BuildManual(Surroundings world, RootCommand root)
    {
        var command = new Command("man", "Print the manual page, to be read with 'man -l' or put beside the others as recipelint.1.");
        command.SetAction(_ =>
        {
            world.Out.Write(ManPage.Write((root.Description ?? "").Split('\n')[0].Trim(), CommandOutline.Of(root), ToolVersion.Text));
            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }
}
