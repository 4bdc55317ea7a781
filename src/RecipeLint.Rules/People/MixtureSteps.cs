using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>How the share of a mixture that carries a hazard follows, as steps of a working.</summary>
internal static class MixtureSteps
{
    /// <summary>The shares by mass, each with its weight, %.</summary>
    internal static List<Term> Shares(
        WorkingBuilder work, MixtureHazards mixture, IEnumerable<(AdditionFacts Addition, double Weight)> additions)
    {
        var parts = new List<Term>();
        var grams = work.Given("mass of the finished stock", mixture.Grams, "g", "volume model");
        foreach (var (addition, weight) in additions)
        {
            var mass = work.Given(addition.Substance.Name, mixture.Percent(addition) * mixture.Grams / 100, "g", "file and strength");
            parts.Add(weight == 1
                ? work.Result("of the stock", "100 × mass / stock", 100 * mass / grams, "%")
                : work.Result($"of the stock, weighted {((Term)weight).Text}", "weight × 100 × mass / stock", weight * (Term)100 * mass
                    / grams, "%"));
        }

        return parts;
    }

    /// <summary>The weighted share that decides whether the mixture carries a statement.</summary>
    internal static Term Sum(WorkingBuilder work, MixtureHazards mixture, MixtureRow row)
    {
        var parts = Shares(work, mixture, mixture.Parts(row));
        return parts.Count == 1 ? parts[0] : work.Result("together", "sum", Term.Sum(parts), "%");
    }

    /// <summary>What keeps a notice of a hazard silent: a label that says it, or an amount that nobody means.</summary>
    internal static IEnumerable<Check> Silencers(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Label is { Hazard: true })
        {
            yield return Check.That("its label does not name the hazard yet", false);
        }

        if (!Reactants.AmountsAreMeant(stock, context))
        {
            yield return Check.That(Reactants.AmountsMeant, false);
        }
    }
}
