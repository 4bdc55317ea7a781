using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>What the rules on dangerous mixtures look for, told by composition.</summary>
internal static class Reactants
{
    internal const string Hypochlorite = HazardGate.Hypochlorite;

    /// <summary>g/mol of Cl2, from CIAAW weights: what one mole of hypochlorite sets free.</summary>
    internal const double ChlorineGramsPerMole = HazardGate.ChlorineGramsPerMole;

    /// <summary>The statement of <see cref="AmountsAreMeant"/>.</summary>
    internal const string AmountsMeant = "its amounts are meant (implausible-amount speaks first)";

    /// <summary>False when an amount in the file is one that nobody means, which has been reported where it stands.</summary>
    internal static bool AmountsAreMeant(StockFacts stock, RuleContext context) =>
        !context.ProblemsOf(stock.Stock.File).Any(p => p.Kind == ProblemKind.ImplausibleAmount);

    internal static bool Brings(AdditionFacts addition, string component) => addition.ComponentMoles.GetValueOrDefault(component) > 0;

    /// <summary>Available chlorine in the finished stock, g/L.</summary>
    internal static double ChlorineGramsPerLitre(StockFacts stock) =>
        stock.Additions.Sum(a => a.ComponentMoles.GetValueOrDefault(Hypochlorite)) * ChlorineGramsPerMole / stock.Volume.Litres;

    /// <summary>
    /// Where an acid to bleach goes in, by the roles of the hazard gate: an acid, an acid salt, or a pH adjustment with an acid.
    /// </summary>
    internal static IEnumerable<(Place Place, string Name)> Acids(StockFacts stock) =>
        stock.Additions.Where(a => HazardGate.IsAcidToBleach(HazardRoles.Of(a.Substance)))
            .Select(a => (a.Place, a.Substance.Name))
            .Concat(stock.Stock.Steps
                .OfType<AdjustStep>()
                .Where(s => s.Reagent?.Kind == SubstanceKind.Acid)
                .Select(s => (s.Place, s.Reagent!.Name)));
}
