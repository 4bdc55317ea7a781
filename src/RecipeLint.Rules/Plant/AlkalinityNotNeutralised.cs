using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>Hydrogen carbonate of the water that neither the salts nor the pH reagent use up.</summary>
public sealed class AlkalinityNotNeutralised : RecipeRule, IProposesRepairs
{
    private const double AimedPh = 5.8;

    private const double BenchCelsius = 20;

    public override string Name => "alkalinity-not-neutralised";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (Left(recipe) is not { } left || left <= context.Number("residual"))
        {
            yield break;
        }

        var limit = context.Number("residual");
        var ph = recipe.Chemistry.Final.Ph;
        var demand = Demand(recipe, context);
        var remedy = demand is { Volume: { } volume, ComponentMoles: var moles }
            ? $"About {Say.Number(moles.GetValueOrDefault("NO3-") * 1000 / recipe.FinalVolume.Litres)} meq/L of acid bring it to pH {Say.Number(AimedPh)}, "
                + $"for instance {Say.Litres(volume.Litres)} of {demand.Reagent.Name} in {Say.Litres(recipe.FinalVolume.Litres)}: write it as 'adjust'."
            : "Write an 'adjust' with the acid that is used, so that what it brings is counted.";
        var place = recipe.Adjustment?.Place ?? recipe.Recipe.Water?.Place ?? RecipePlaces.Doses(recipe);
        yield return context.Find(
            place,
            $"{Say.Number(left)} meq/L of alkalinity stay in the final solution ({Say.Number(left * CaCO3MilligramsPerMilliequivalent)} mg/L as CaCO3), and it comes to rest with the air at pH {Say.Number(Math.Round(ph, 1))}. "
            + "The pH climbs in the tank and at the root, and iron, manganese and phosphate go out of reach. "
            + remedy,
            certainty: Certainty.Practice) with
        {
            Measured = new Measured("alkalinity", left, limit, "meq/L"),
            Values = [new NamedValue("alkalinity", left, "meq/L"), new NamedValue("limit", limit, "meq/L"), new NamedValue("pH", Rounding.SixDigits(ph), "")],
            Related = recipe.Water?.Water is { Alkalinity: { } alkalinity } ? [new RelatedPlace(alkalinity.Place, "alkalinity of the source water")] : [],
        };
    }

    /// <summary>One meq of alkalinity counts as so many mg of CaCO3: half its molar mass.</summary>
    internal const double CaCO3MilligramsPerMilliequivalent = 50.04;

    /// <summary>meq/L that stay; null where it cannot be computed.</summary>
    internal static double? Left(RecipeFacts recipe)
    {
        if (!recipe.IsComplete || !recipe.Chemistry.IsComplete || !recipe.Chemistry.Final.IsSolved || !recipe.Chemistry.Tank.IsSolved)
        {
            return null;
        }

        // Calcium carbonate that falls out in the open tank takes alkalinity with it, but only as a crust: without acid the closed tank counts.
        var state = recipe.Chemistry.TankAdjusted ?? recipe.Chemistry.Tank;
        return Rounding.SixDigits(state.CarbonateAlkalinity.MilliequivalentsPerLitre);
    }

    private static ReagentDemand? Demand(RecipeFacts recipe, RuleContext context) =>
        context.Facts.Workspace.Catalogue.ById("nitric-38") is { } nitric
            ? PhDemand.Find(
                recipe.ComponentMoles,
                new Mass(1000 * recipe.Chemistry.Mix.KilogramsWaterPerLitre * recipe.FinalVolume.Litres),
                nitric,
                AimedPh,
                new Temperature(BenchCelsius),
                openToAir: true)
            : null;

    /// <summary>An acid against it, or purer water.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59", "sulfuric-37" }.OfType<string>().Distinct(StringComparer.Ordinal))
        {
            yield return Waters.Adjust(context, recipe, AimedPh, acid);
        }

        foreach (var water in new[] { "rain", "reverse-osmosis" })
        {
            if (Waters.Pure(recipe, water) is { } pure)
            {
                yield return pure;
            }
        }
    }
}
