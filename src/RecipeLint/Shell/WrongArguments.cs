using System.Collections.Frozen;
using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Parsing;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Shell;

/// <summary>One line for a command line that cannot be carried out: what is wrong with it, and what was most likely meant.</summary>
internal static class WrongArguments
{
    /// <summary>What others call a command of ours.</summary>
    private static readonly FrozenDictionary<string, string> OtherWords = new Dictionary<string, string>
    {
        ["lint"] = "check",
        ["validate"] = "check",
        ["verify"] = "check",
        ["test"] = "check",
        ["run"] = "check",
        ["print"] = "show",
        ["view"] = "show",
        ["open"] = "show",
        ["diff"] = "compare",
        ["new"] = "init",
        ["create"] = "init",
        ["convert"] = "import",
        ["why"] = "explain",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Words that other programs take for a command and that are options here.</summary>
    public static string[] Understood(string[] arguments) => arguments switch
    {
        ["help", .. var rest] when !rest.Contains("--help") => [.. rest, "--help"],
        ["version"] => ["--version"],
        _ => arguments,
    };

    /// <summary>Null when the arguments can be carried out.</summary>
    public static string? Problem(RootCommand root, ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        if (MistypedOption(parsed) is { } option)
        {
            return UnknownOption(command, option);
        }

        if (parsed.Errors.Count == 0)
        {
            return null;
        }

        if (command == root)
        {
            return UnknownCommand(root, parsed);
        }

        var error = parsed.Errors[0];
        return error.SymbolResult switch
        {
            OptionResult { Tokens.Count: 0, IdentifierToken: not null } bare =>
                $"'{bare.Option.Name}' needs a value: {ValueOf(bare.Option)}." + Help(command),
            OptionResult given when given.Option.HelpName is { } values && values.Contains('|') =>
                WrongWord($"'{given.Option.Name}'", given.Tokens[0].Value, values.Split('|')),
            // The parser's own words name a type of the program; an option that reads its number itself has better ones.
            OptionResult given when (given.Option.ValueType == typeof(int) || given.Option.ValueType == typeof(int?))
                && error.Message.Contains("System.", StringComparison.Ordinal) =>
                $"'{given.Option.Name}' takes a whole number, not '{given.Tokens[0].Value}'." + Help(command),
            _ when command.Options.FirstOrDefault(o => o.Required
                && parsed.GetResult(o) is null or { IdentifierToken: null }) is { } needed =>
                $"'{command.Name}' needs '{needed.Name}': {LowerFirst(needed.Description ?? "")}" + Help(command),
            ArgumentResult { Tokens.Count: 0 } missing => MissingArgument(command, missing.Argument),
            ArgumentResult given when WordsOf(given.Argument) is { Length: > 0 } words =>
                WrongWord($"'{command.Name}'", given.Tokens[0].Value, words),
            _ when parsed.UnmatchedTokens.Count > 0 && Quantities(command, parsed) is { } swapped => swapped + Help(command),
            _ when parsed.UnmatchedTokens is [var extra, ..] =>
                $"'{extra}' is more than '{command.Name}' takes."
                + (command.Arguments.Count == 0 && command.Options.FirstOrDefault(o => o.Name == "--output") is { } written
                    ? $" What is written goes behind '{written.Name}', such as '{command.Name} {written.Name} {extra}'."
                    : "")
                + (command.Arguments.Count == 0 ? "" : $" It takes {string.Join(" and ", command.Arguments.Select(a => $"<{a.Name}>"))}.")
                    + Help(command),
            _ => error.Message + Help(command),
        };
    }

    /// <summary>An amount in the place of a file, where an option of this command takes it ("bench-sheet '2 L' FILE").</summary>
    private static string? Quantities(Command command, ParseResult parsed)
    {
        var amount = parsed.CommandResult.Tokens.Select(t => t.Value).Concat(parsed.CommandResult.Children.OfType<ArgumentResult>()
                .SelectMany(a => a.Tokens).Select(t => t.Value)).Concat(parsed.UnmatchedTokens)
            .FirstOrDefault(t => QuantityReader.TryRead(t, Due.Volume, out _, out _));
        return amount is not null && command.Options.Any(o => o.Name == "--batch")
            ? $"'{amount}' is no file; a size stands behind '--batch', such as '--batch \"{amount}\"'."
            : null;
    }

    /// <summary>What starts with a hyphen and was taken for a path; behind "--" everything is one.</summary>
    private static string? MistypedOption(ParseResult parsed)
    {
        var taken = parsed.CommandResult.Children
            .OfType<ArgumentResult>()
            .SelectMany(a => a.Tokens)
            .Select(t => t.Value)
            .ToHashSet(StringComparer.Ordinal);
        return parsed.Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash)
            .Where(t => t.Type == TokenType.Argument && LooksLikeOption(t.Value))
            .Select(t => t.Value)
            .FirstOrDefault(t => taken.Contains(t) || parsed.UnmatchedTokens.Contains(t));
    }

    private static bool LooksLikeOption(string text) =>
        text.Length > 1 && text[0] == '-' && (char.IsAsciiLetter(text[1]) || (text[1] == '-' && text.Length > 2));

    private static string UnknownOption(Command command, string written)
    {
        var name = written.Split('=', 2)[0];
        var known = command.Options.Where(o => !o.Hidden).Select(o => o.Name).Append("--help").Distinct(StringComparer.Ordinal).ToList();
        if (FormatOf(name, command) is { } format)
        {
            return $"'{command.Name}' has no option '{name}'. Did you mean '--format {format}'?{Help(command)}";
        }

        var near = name.Length == 2
            ? [.. known.Where(k => k.StartsWith("--", StringComparison.Ordinal) && k[2] == char.ToLowerInvariant(name[1])).Take(3)]
            : Spelling.Nearest(name, known);
        var owner = command is RootCommand ? "there is" : $"'{command.Name}' has";
        return $"{owner} no option '{name}'."
            + (near.Count > 0 ? DidYouMean(near) : command.Arguments.Count == 0 ? "" : " A file of that name goes behind '--'.")
                + Help(command);
    }

    /// <summary>A format that is written as an option of its own; null where it is none.</summary>
    private static string? FormatOf(string option, Command command) =>
        command.Options.FirstOrDefault(o => o.Name == "--format")?.HelpName?.Split('|') is { } formats
        && formats.Contains(option.TrimStart('-'), StringComparer.Ordinal)
            ? option.TrimStart('-')
            : null;

    private static string UnknownCommand(RootCommand root, ParseResult parsed)
    {
        var names = root.Subcommands.Where(c => !c.Hidden).Select(c => c.Name).ToList();
        if (parsed.UnmatchedTokens is not [var written, ..])
        {
            return $"say what to do: {string.Join(", ", names)}. 'recipelint check .' checks everything below this folder; 'recipelint "
                + "--help' tells more.";
        }

        var near = OtherWords.TryGetValue(written, out var meant) ? [meant] : Spelling.Nearest(written, names);
        var hint = near.Count > 0 ? DidYouMean(near)
            : written.EndsWith(".json", StringComparison.OrdinalIgnoreCase)
                || written is "." or ".."
                || written.Contains('/', StringComparison.Ordinal)
                ? $" To check it: 'recipelint check {written}'."
                : $" Commands are {string.Join(", ", names)}.";
        return $"there is no command '{written}'.{hint}{Help(root)}";
    }

    private static string WrongWord(string who, string written, string[] words)
    {
        var near = Spelling.Nearest(written, words);
        return $"{who} takes {Joined(words)}, not '{written}'." + (near.Count == 1 ? DidYouMean(near) : "");
    }

    /// <summary>What an argument takes where that is a fixed choice.</summary>
    private static string[] WordsOf(Argument argument) =>
        [.. argument.GetCompletions(CompletionContext.Empty).Select(c => c.Label)];

    private static string MissingArgument(Command command, Argument argument) =>
        $"'{command.Name}' needs a <{argument.Name}>: {LowerFirst(argument.Description ?? "")}" + Help(command);

    private static string ValueOf(Option option) =>
        option.HelpName is { } values && values.Contains('|') ? Joined(values.Split('|')) : $"<{option.HelpName ?? "value"}>";

    private static string Joined(string[] words) => string.Join(", ", words[..^1]) + " or " + words[^1];

    private static string DidYouMean(IReadOnlyList<string> near) => $" Did you mean {string.Join(" or ", near.Select(n => $"'{n}'"))}?";

    private static string Help(Command command) =>
        command is RootCommand ? " Try 'recipelint --help'." : $" Try 'recipelint {command.Name} --help'.";

    private static string LowerFirst(string text) =>
        text.Length > 1 && char.IsUpper(text[0]) && !char.IsUpper(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
