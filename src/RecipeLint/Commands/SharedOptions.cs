using System.CommandLine;

namespace RecipeLint.Commands;

/// <summary>Options that several commands have in common.</summary>
internal static class SharedOptions
{
    public static Option<string> Color()
    {
        var option = new Option<string>("--color")
        {
            Description = "Colour the text. 'auto' looks at the terminal, NO_COLOR and FORCE_COLOR.",
            DefaultValueFactory = _ => "auto",
            HelpName = "auto|always|never",
        };
        option.AcceptOnlyFromAmong("auto", "always", "never");
        return option;
    }

    public static Option<string?> Config() => new("--config")
    {
        Description = "Use this settings file for every input instead of the nearest recipelint.json.",
        HelpName = "file",
    };

    public static Option<bool> NoConfig() => new("--no-config") { Description = "Use built-in settings only." };
}
