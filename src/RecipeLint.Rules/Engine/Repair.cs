using RecipeLint.Analysis;
using RecipeLint.Recipes.Patching;

namespace RecipeLint.Rules.Engine;

/// <summary>What applying a repair may change.</summary>
public enum RepairKind
{
    /// <summary>How the file says it, or what it does not say yet; what is in the bottle stays as meant.</summary>
    Safe,

    /// <summary>What is weighed, how it is mixed or kept, or which of several readings holds: applied only by name.</summary>
    Chemistry,
}

/// <summary>One way to mend a finding, as a rule proposes it.</summary>
/// <param name="Key">kebab-case; names the way among those of one rule, the same from run to run.</param>
/// <param name="Title">One sentence that says what to do, with its numbers.</param>
/// <param name="Edits">At one or several files; each speaks of the files as they stand.</param>
public sealed record Repair(string Key, string Title, RepairKind Kind, IReadOnlyList<JsonEdit> Edits)
{
    /// <summary>What must hold of the files once it is applied, besides that its finding is gone; null for nothing.</summary>
    internal Func<Facts, bool>? Provided { get; init; }

    public static Repair Safe(string key, string title, params JsonEdit[] edits) => new(key, title, RepairKind.Safe, edits);

    public static Repair Chemistry(string key, string title, params JsonEdit[] edits) => new(key, title, RepairKind.Chemistry, edits);
}

/// <summary>What a rule proposes: one repair, or several of one kind of which the first that holds is taken.</summary>
public abstract record RepairProposal
{
    private RepairProposal()
    {
    }

    public static implicit operator RepairProposal(Repair repair) => new Ladder([repair]);

    public static RepairProposal Of(Repair repair) => repair;

    /// <summary>The same, each repair of it only where more holds of the files once it is applied.</summary>
    internal RepairProposal Providing(Func<Facts, bool> holds) => this switch
    {
        Ladder ladder => new Ladder(ladder.Rungs.Select(r => r with { Provided = holds })),
        Tuned tuned => tuned with { With = f => tuned.With(f) is { } repair ? repair with { Provided = holds } : null },
        _ => this,
    };

    /// <summary>The first of these that holds, from the gentlest on.</summary>
    public sealed record Ladder(IEnumerable<Repair> Rungs) : RepairProposal;

    /// <summary>
    /// A repair with a number in it. The one nearest to <paramref name="From"/> that mends the finding is looked for by halving the way,
    /// in the logarithm: all beyond it are taken to mend it too.
    /// </summary>
    /// <param name="With">The repair with that number; null where there is none.</param>
    /// <param name="From">The number as the file stands, above zero.</param>
    /// <param name="To">As far as it is sensible to go, above zero.</param>
    public sealed record Tuned(Func<double, Repair?> With, double From, double To) : RepairProposal;
}

/// <summary>A rule that can propose how its findings are mended. What it proposes is tried out before anybody sees it.</summary>
public interface IProposesRepairs
{
    /// <summary>Ways to mend one of the rule's findings, the best first. Computed only when repairs are asked for.</summary>
    IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context);
}
