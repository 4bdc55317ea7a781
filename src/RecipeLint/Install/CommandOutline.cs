using System.CommandLine;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Install;

/// <summary>What an option or argument takes, as far as a shell can help with it.</summary>
internal enum TakenValue
{
    Nothing,
    File,
    Word,
    OneOf,
}

/// <summary>An option of a command.</summary>
/// <param name="Names">The long name first.</param>
/// <param name="Words">What it takes where that is a fixed choice.</param>
/// <param name="ValueName">What the value is called in help; null for a switch.</param>
internal sealed record OptionOutline(
    IReadOnlyList<string> Names, string Description, TakenValue Takes, IReadOnlyList<string> Words, string? ValueName);

/// <summary>A command with everything a shell or a manual page says of it.</summary>
internal sealed record CommandOutline(
    string Name, string Description, string Usage, IReadOnlyList<OptionOutline> Options, TakenValue Argument,
    IReadOnlyList<string> ArgumentWords)
{
    /// <summary>Every command in the order of the help, read from the definitions that parse the arguments.</summary>
    public static IReadOnlyList<CommandOutline> Of(RootCommand root) => [.. root.Subcommands.Where(c => !c.Hidden).Select(Of)];

    private static CommandOutline Of(Command command)
    {
        var argument = command.Arguments.FirstOrDefault();
        var isRule = argument?.Name == "rule";
        IReadOnlyList<string> words = isRule ? [.. RuleBook.Descriptors.Select(d => d.Name)] : argument is null ? [] : FixedWords(argument);
        var takes = argument is null ? TakenValue.Nothing : words.Count > 0 ? TakenValue.OneOf : TakenValue.File;
        return new CommandOutline(
            command.Name,
            command.Description ?? "",
            string.Join(' ', command.Arguments.Select(Shown)),
            [.. command.Options.Where(o => !o.Hidden).Select(Of)],
            takes,
            words);
    }

    private static OptionOutline Of(Option option)
    {
        var isSwitch = option.ValueType == typeof(bool);
        string[] words = option.HelpName is { } help && help.Contains('|') ? help.Split('|') : [];
        var takes = isSwitch ? TakenValue.Nothing
            : words.Length > 0 ? TakenValue.OneOf
            : option.HelpName is "file" or "folder" or "path" ? TakenValue.File
            : TakenValue.Word;
        return new OptionOutline(
            [option.Name, .. option.Aliases.Where(a => a != option.Name).Order(StringComparer.Ordinal)],
            option.Description ?? "",
            takes,
            words,
            isSwitch ? null : option.HelpName ?? "value");
    }

    /// <summary>The words of an argument that takes nothing else, as its own completions tell them.</summary>
    private static IReadOnlyList<string> FixedWords(Argument argument) =>
        [.. argument.GetCompletions(System.CommandLine.Completions.CompletionContext.Empty)
            .Select(c => c.Label)
            .Order(StringComparer.Ordinal)];

    private static string Shown(Argument argument)
    {
        var many = argument.Arity.MaximumNumberOfValues > 1 ? "..." : "";
        return argument.Arity.MinimumNumberOfValues == 0 ? $"[<{argument.Name}>{many}]" : $"<{argument.Name}>{many}";
    }
}
