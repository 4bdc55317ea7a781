using System.CommandLine;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>What the user wants mended.</summary>
/// <param name="Show">List repairs below the findings.</param>
/// <param name="Fix">Apply the safe ones.</param>
/// <param name="Apply">Rules whose findings are mended, each with the key of a repair or null for the best.</param>
/// <param name="DryRun">Print the difference and write nothing.</param>
internal sealed record RepairWishes(bool Show, bool Fix, IReadOnlyList<(RuleDescriptor Rule, string? Key)> Apply, bool DryRun)
{
    /// <summary>True when repairs are looked for at all; that takes the facts of every file.</summary>
    public bool IsAny => Show || Fix || Apply.Count > 0;
}

/// <summary>The options of 'check' that mend.</summary>
internal sealed class RepairOptions
{
    private readonly Option<bool> _show =
        new("--repairs") { Description = "List below each finding the repairs that hold, with what each changes." };

    private readonly Option<bool> _fix = new("--fix")
    {
        Description = "Write the repairs that only change how a file says it, in the files named: spelling, notes. No figure changes.",
    };

    private readonly Option<string[]> _apply = new("--apply")
    {
        Description = "Write the best repair of each finding of a rule, or the one of a key (RL0101:weaker). May be given several times.",
        HelpName = "rule[:repair]",
        DefaultValueFactory = _ => [],
    };

    private readonly Option<bool> _dryRun =
        new("--dry-run") { Description = "With --fix or --apply: write nothing, print the change as a unified diff." };

    public void AddTo(Command command)
    {
        command.Add(_show);
        command.Add(_fix);
        command.Add(_apply);
        command.Add(_dryRun);
    }

    /// <exception cref="UsageException">A rule is not known, or options do not go together.</exception>
    public RepairWishes Of(ParseResult parsed)
    {
        var apply = parsed.GetValue(_apply)!.Select(Named).ToList();
        var wishes = new RepairWishes(parsed.GetValue(_show), parsed.GetValue(_fix), apply, parsed.GetValue(_dryRun));
        if (wishes is { DryRun: true, Fix: false, Apply.Count: 0 })
        {
            throw new UsageException("'--dry-run' goes with '--fix' or '--apply'.");
        }

        return wishes;
    }

    private static (RuleDescriptor Rule, string? Key) Named(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var name = colon < 0 ? text : text[..colon];
        if (RuleBook.Find(name) is { } rule)
        {
            return (rule, colon < 0 ? null : text[(colon + 1)..]);
        }

        var near = RuleBook.Suggest(name);
        throw new UsageException(
            $"There is no rule '{name}'." + (near.Count > 0 ? $" Did you mean {string.Join(" or ", near.Select(n => $"'{n}'"))}?" : "")
            + " 'recipelint rules' lists them all.");
    }
}
