using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Mutations.Operators;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>What became of one mutant.</summary>
/// <param name="Harm">Why it does harm; null when it is harmless.</param>
/// <param name="WithTargets">The finding that catches it, or null.</param>
/// <param name="WithoutTargets">The same when the recipe states no targets; null also for a mutant of the targets.</param>
/// <param name="Findings">All that the rules say of it, targets as they stand.</param>
internal sealed record Outcome(Mutant Mutant, string? Harm, Finding? WithTargets, Finding? WithoutTargets, IReadOnlyList<Finding> Findings)
{
    /// <summary>A plain check would end with exit code 1: the clean shop has no finding above a note, so whatever errs here is the mutant's.</summary>
    internal bool Stops => Findings.Any(f => f.Level == Level.Error);

    internal bool IsHarmless => Harm is null;
}

/// <summary>Every mutant of every clean shop, made, analysed and judged once, whoever asks.</summary>
internal static class MutationStudy
{
    private static readonly Lazy<IReadOnlyList<Outcome>> _outcomes = new(Run);

    private static readonly HashSet<string> _blindToTargets = [.. RuleList.All.Where(r => r.Scope == RuleScope.Stock).Select(r => r.Name)];

    internal static IReadOnlyList<Outcome> Outcomes => _outcomes.Value;

    /// <summary>Mutants that do harm.</summary>
    internal static IReadOnlyList<Outcome> Harmful => [.. Outcomes.Where(o => !o.IsHarmless)];

    /// <summary>Harmful mutants that there are without targets.</summary>
    internal static IReadOnlyList<Outcome> HarmfulWithoutTargets => [.. Harmful.Where(o => !o.Mutant.InTargets)];

    private static IReadOnlyList<Outcome> Run()
    {
        var harms = CleanShop.All.ToDictionary(s => s, s => new Harm(s));
        return [.. CleanShop.All.SelectMany(Slips.Of).AsParallel().AsOrdered().Select(m => Judge(m, harms[m.Shop]))];
    }

    private static Outcome Judge(Mutant mutant, Harm harm)
    {
        var facts = mutant.Shop.FactsOf(mutant);
        var result = CleanShop.Judge(facts);
        Assert.Empty(result.Faults.Select(f => $"{mutant}: {f.Message}"));
        var caught = Naming.Catches(mutant, result).ToList();
        var without = mutant.InTargets ? null : caught.FirstOrDefault(f => _blindToTargets.Contains(f.Rule.Name)) ?? CatchWithoutTargets(mutant, facts);
        return new Outcome(mutant, harm.Of(mutant, facts), caught.FirstOrDefault(), without, [.. result.Findings]);
    }

    /// <summary>What rules on stocks say does not change with the targets: only the others are asked again.</summary>
    private static Finding? CatchWithoutTargets(Mutant mutant, Analysis.Facts facts) =>
        Naming.Catches(mutant, CleanShop.Judge(WithoutTargets(facts), [.. RuleList.All.Where(r => !_blindToTargets.Contains(r.Name))])).FirstOrDefault();

    /// <summary>The same facts with no word of targets; the stocks and what is computed of them are shared.</summary>
    internal static Analysis.Facts WithoutTargets(Analysis.Facts facts) => facts with
    {
        Workspace = facts.Workspace with { Recipes = [.. facts.Workspace.Recipes.Select(r => r with { Targets = [] })] },
        Recipes = [.. facts.Recipes.Select(r => r with { Recipe = r.Recipe with { Targets = [] } })],
    };
}
