using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>Where the constants and limits come from that the facts of one file, and what is judged by them, rest on.</summary>
internal static class FactSources
{
    public static IEnumerable<Ground> Of(StockFacts stock) =>
    [
        .. States(stock.Chemistry.States),
        .. Substances(stock.Additions.Select(a => a.Substance).Concat(stock.Adjustments.Select(a => a.Reagent).OfType<Substance>())),
    ];

    public static IEnumerable<Ground> Of(RecipeFacts recipe) =>
    [
        .. RuleGround.Limits(recipe),
        .. States(recipe.Chemistry.States),
        .. Substances(recipe.Doses.Select(d => d.Direct?.Substance).Append(recipe.Adjustment?.Reagent).OfType<Substance>()),
    ];

    /// <summary>The constants of every solid that comes up in a state, and the limits of the rule that speaks of it.</summary>
    private static IEnumerable<Ground> States(IReadOnlyList<SolutionState> states)
    {
        var solids = states.SelectMany(s =>
            s.Deposits.Select(d => d.Solid).Concat(s.NearSaturation.Select(n => n.Solid)).Concat(s.Salts.Select(v => v.Solid)))
            .DistinctBy(s => s.Name).OrderBy(s => s.Name, StringComparer.Ordinal).ToList();
        foreach (var solid in solids)
        {
            yield return RuleGround.Constant(solid);
        }

        foreach (var rule in solids.Select(s => s.Owner is { } owner ? RuleBook.Find(owner) : null).OfType<RuleDescriptor>().Distinct()
            .OrderBy(r => r.Id, StringComparer.Ordinal))
        {
            foreach (var ground in RuleGround.Options(rule))
            {
                yield return ground with { What = $"{rule.Name}: {ground.What}" };
            }
        }
    }

    private static IEnumerable<Ground> Substances(IEnumerable<Substance> substances)
    {
        var all = substances.DistinctBy(s => s.Id).OrderBy(s => s.Id, StringComparer.Ordinal).ToList();
        foreach (var substance in all)
        {
            if (substance.Density is { } density)
            {
                yield return new Ground($"density of {substance.Name}", RuleGround.Cited(density));
            }

            if (substance.Solubility is { } solubility)
            {
                yield return new Ground($"solubility of {substance.Name}", RuleGround.Cited(solubility));
            }
        }

        foreach (var ground in RuleGround.Hazards(all))
        {
            yield return ground;
        }
    }
}
