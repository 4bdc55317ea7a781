using System.CommandLine;
using RecipeLint.Editor;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Serves an editor over standard input and output.</summary>
internal static class LanguageServerCommand
{
    public static Command Build(Surroundings world)
    {
        // Editors pass it by habit; there is no other way of talking.
        var stdio = new Option<bool>("--stdio")
        {
            Description = "Talk over standard input and output, which it does anyway.",
            Hidden = true,
        };
        const string Purpose = "Serve an editor (Language Server Protocol 3.17 over standard input and output).";
        var command = new Command("language-server", Purpose) { stdio };
        command.SetAction(_ => Serve(world));
        return command;
    }

    private static int Serve(Surroundings world)
    {
        using var input = world.StandardInput();
        using var output = world.StandardOutput();
        return LanguageServer.Run(input, output, world.Files(world.CurrentDirectory), world.Today, ToolVersion.Text);
    }
}
