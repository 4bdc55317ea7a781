using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>What the rules on dangerous mixtures look for, told by composition.</summary>
internal static class Reactants
{
    internal const string Hypochlorite = HazardGate.Hypochlorite;
    internal const string Peroxide = "inert:H2O2";

    /// <summary>g/mol of Cl2, from CIAAW weights: what one mole of hypochlorite sets free.</summary>
    internal const double ChlorineGramsPerMole = HazardGate.ChlorineGramsPerMole;

    private static readonly Formula _nitricAcid = FormulaParser.Parse("HNO3");

    internal static bool IsNitricAcid(Substance substance) => IsLiquidAcid(substance, _nitricAcid);

    /// <summary>True for an acid sold as a liquid, at any strength.</summary>
    internal static bool IsLiquidAcid(Substance substance, Formula acid) =>
        substance is { Kind: SubstanceKind.Acid, Form: PhysicalForm.Liquid, Formula: { } formula } && formula.HasCompositionOf(acid);

    /// <summary>Burns or reacts as organic matter, by the roles of the hazard gate.</summary>
    internal static bool IsOrganic(Substance substance) => HazardRoles.Of(substance).Contains(HazardRole.Organic);

    /// <summary>The statement of <see cref="AmountsAreMeant"/>.</summary>
    internal const string AmountsMeant = "its amounts are meant (implausible-amount speaks first)";

    /// <summary>False when an amount in the file is one that nobody means, which has been reported where it stands.</summary>
    internal static bool AmountsAreMeant(StockFacts stock, RuleContext context) =>
        !context.Facts.Workspace.ProblemsOf(stock.Stock.File).Any(p => p.Kind == ProblemKind.ImplausibleAmount);

    internal static bool Brings(AdditionFacts addition, string component) => addition.ComponentMoles.GetValueOrDefault(component) > 0;

    /// <summary>Share of the vessel's mass that fits, counted as pure compound; 0 for an empty vessel.</summary>
    internal static double Share(VesselContents contents, Func<Substance, bool> fits) =>
        contents.Grams > 0 ? contents.Additions.Where(a => fits(a.Substance)).Sum(VesselContents.PureGrams) / contents.Grams : 0;

    /// <summary>Available chlorine in the finished stock, g/L.</summary>
    internal static double ChlorineGramsPerLitre(StockFacts stock) =>
        stock.Additions.Sum(a => a.ComponentMoles.GetValueOrDefault(Hypochlorite)) * ChlorineGramsPerMole / stock.Volume.Litres;

    /// <summary>Where an acid to bleach goes in, by the roles of the hazard gate: an acid, an acid salt, or a pH adjustment with an acid.</summary>
    internal static IEnumerable<(Place Place, string Name)> Acids(StockFacts stock) =>
        stock.Additions.Where(a => HazardGate.IsAcidToBleach(HazardRoles.Of(a.Substance)))
            .Select(a => (a.Place, a.Substance.Name))
            .Concat(stock.Stock.Steps.OfType<AdjustStep>().Where(s => s.Reagent?.Kind == SubstanceKind.Acid).Select(s => (s.Place, s.Reagent!.Name)));
}
