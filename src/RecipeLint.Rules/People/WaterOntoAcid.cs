using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Water poured onto an acid that is still strong enough to boil or burn.</summary>
public sealed class WaterOntoAcid : StockRule, IProposesRepairs
{
    /// <summary>The acids sold as liquids, with their options.</summary>
    internal static readonly (Formula Acid, string Option)[] Acids =
    [
        (FormulaParser.Parse("H2SO4"), "sulfuricFrom"), (FormulaParser.Parse("HNO3"), "nitricFrom"), (FormulaParser.Parse("HCl"), "hydrochloricFrom"),
        (FormulaParser.Parse("H3PO4"), "phosphoricFrom"), (FormulaParser.Parse("C2H4O2"), "aceticFrom"),
    ];

    public override string Name => "water-onto-acid";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        foreach (var moment in stock.Mixing.Steps.Where(m => m.BringsWater))
        {
            foreach (var (acid, option) in Acids)
            {
                var acids = moment.Before.Additions.Where(a => !a.ThroughAliquot && Reactants.IsLiquidAcid(a.Substance, acid)).ToList();
                if (acids.Count == 0)
                {
                    continue;
                }

                var pure = acids.Sum(VesselContents.PureGrams);
                var strength = pure / (pure + moment.Before.FreeWaterGrams) * 100;
                var limit = context.Number(option);
                var poured = moment.After.FreeWaterGrams - moment.Before.FreeWaterGrams;
                if (Rounding.SixDigits(strength) < limit || poured <= 0)
                {
                    continue;
                }

                var heat = HeatOfSolution.Find(acid.Text) is { KilojoulesPerMol: < 0 } known && strength >= 90
                    ? $"Diluting it sets free up to {Say.Number(-known.KilojoulesPerMol * pure / known.GramsPerMol)} kJ: the"
                    : "";
                yield return context.Find(
                    acids[^1].Place,
                    $"Water is poured onto acid: when '{moment.Step.Id}' begins, the acid in the vessel ({acids[^1].Substance.Name}) is still {Say.Number(strength)} % strong, past the {Say.Number(limit)} % from which that is dangerous. "
                    + $"{(heat.Length > 0 ? heat : "The")} first water {(heat.Length > 0 ? "boils" : "heats up")} on the surface and can throw acid at face and hands. "
                    + "Pour most of the water first, then the acid into it, slowly and stirring, with goggles, gloves and apron, as the safety data sheet says.") with
                {
                    Measured = new Measured("acid when water comes onto it", strength, limit, "%"),
                    Values = [new NamedValue("acid when water comes onto it", strength, "%"), new NamedValue("limit", limit, "%")],
                    Related = [new RelatedPlace(moment.Step.Place, "this water comes after the acid")],
                };
                yield break;
            }
        }
    }

    /// <summary>The acid behind the water.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (finding.Related is [{ Place: var poured }, ..] && RepairContext.StepAt(stock, poured) is { } water && RepairContext.StepAt(stock, finding.Place) is { } acid)
        {
            if (water is PourStep && Steps.Move(stock, context, water, acid) is { } first)
            {
                yield return Repair.Chemistry("water-first", $"Pour the water of '{water.Id}' before the acid.", first);
            }

            if (water is PourStep && Steps.Move(stock, context, acid, water, behind: true) is { } later)
            {
                yield return Repair.Chemistry("acid-later", $"Put '{acid.Id}' in after '{water.Id}', slowly and stirring.", later);
            }

            // Only a top-up: most of the water has to be in the vessel before the acid.
            foreach (var most in Pours.MostWaterFirst(context, stock))
            {
                yield return most;
            }
        }
    }
}
