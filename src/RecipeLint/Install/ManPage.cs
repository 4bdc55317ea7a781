using System.Globalization;
using System.Text;

namespace RecipeLint.Install;

/// <summary>The manual page, section 1, in the macros of man(7); made from the definitions that parse the arguments.</summary>
internal static class ManPage
{
    public static string Write(string about, IReadOnlyList<CommandOutline> commands, string version)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $".TH RECIPELINT 1 \"\" \"RecipeLint {version}\" \"User Commands\"\n");
        text.Append(".SH NAME\nrecipelint \\- check recipes and stocks of plant nutrients before they are mixed\n");
        text.Append(".SH SYNOPSIS\n.B recipelint\n.I command\n.RI [ options ]\n");
        text.Append(CultureInfo.InvariantCulture, $".SH DESCRIPTION\n{Escape(about)}\n.SH COMMANDS\n");
        foreach (var command in commands)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $".SS recipelint {Escape(command.Name)} {Escape(command.Usage)}\n{Escape(command.Description)}\n");
            foreach (var option in command.Options)
            {
                var value = option.ValueName is { } name ? $" \\fI{Escape(name)}\\fR" : "";
                text.Append(
                    CultureInfo.InvariantCulture,
                    $".TP\n\\fB{string.Join("\\fR, \\fB", option.Names.Select(Escape))}\\fR{value}\n{Escape(option.Description)}\n");
            }
        }

        text.Append("""
            .SH EXIT STATUS
            .TP
            0
            Nothing at or above the threshold.
            .TP
            1
            Findings at or above the threshold.
            .TP
            2
            Wrong usage, unreadable input, or no input matched.
            .TP
            3
            A fault of the program itself.
            .SH FILES
            .TP
            .I recipelint.json
            Settings of a shop; the nearest one from a file upwards holds for it.
            .TP
            .I *.stock.json, *.recipe.json, *.water.json, *.substances.json, *.profile.json, *.batch.json
            What is checked.
            .SH ENVIRONMENT
            .TP
            NO_COLOR, FORCE_COLOR, CLICOLOR_FORCE
            Whether text is coloured, where \-\-color does not say.

            """);
        return text.ToString();
    }

    private static string Escape(string text)
    {
        var escaped = text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);
        return escaped.StartsWith('.') || escaped.StartsWith('\'') ? "\\&" + escaped : escaped;
    }
}
