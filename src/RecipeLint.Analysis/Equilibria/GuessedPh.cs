using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// A pH that rests on ions which close the charge of a label and are stated nowhere: sodium, or acid, or hydroxide in their place
/// move it by units.
/// </summary>
/// <param name="Share">Of the charge of all cations, 0 to 1.</param>
/// <param name="Names">Of the products, the largest guess first.</param>
public sealed record GuessedPh(double Share, IReadOnlyList<string> Names)
{
    /// <summary>From this share of the charge the pH is a guess; less is what rounded labels leave (common practice, no source).</summary>
    private const double Least = 0.03;

    /// <summary>The pH of a feed; null where it is not a guess, or a reagent brings it to a pH that is measured.</summary>
    public static GuessedPh? Of(RecipeFacts recipe) => recipe.Adjustment is { Amount: not null }
        ? null
        : Of(Parts(recipe), recipe.ComponentMoles);

    /// <summary>What goes into a feed, with the part of each stock that is dosed.</summary>
    internal static IEnumerable<(AdditionFacts Addition, double Times)> Parts(RecipeFacts recipe) =>
        recipe.Doses.SelectMany(d => d.Direct is { } direct ? [(direct, 1.0)]
            : d.Stock is { Volume.Litres: > 0 } stock
                ? stock.Additions.Select(a => (a, d.Volume.Litres / stock.Volume.Litres)) : []);

    /// <summary>The pH of a stock; null where it is not a guess, or is adjusted.</summary>
    public static GuessedPh? Of(StockFacts stock) =>
        stock.Adjustments.Count > 0 ? null : Of(stock.Additions.Select(a => (a, 1.0)), stock.ComponentMoles);

    private static GuessedPh? Of(IEnumerable<(AdditionFacts Addition, double Times)> parts, Solutions.ComponentMoles moles)
    {
        var guesses = parts
            .Select(p => (p.Addition.Substance.Name, Moles: p.Times * p.Addition.Mass.Grams * p.Addition.Substance.GuessedCharge))
            .Where(g => g.Moles > 0)
            .OrderByDescending(g => g.Moles)
            .ToList();
        var cations = moles.Sum(m => SolutionComponent.TryParse(m.Key, out var known) && known.Name != Component.Hydrogen
            ? Math.Max(0, known.Charge) * m.Value : 0);
        var share = cations > 0 ? guesses.Sum(g => g.Moles) / cations : 0;
        return share >= Least ? new GuessedPh(share, [.. guesses.Select(g => g.Name).Distinct()]) : null;
    }
}
