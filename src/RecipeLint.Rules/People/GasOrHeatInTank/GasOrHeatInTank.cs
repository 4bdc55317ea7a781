using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>What the hazard gate sees where the doses of a recipe come together, and not within one stock already.</summary>
internal sealed class GasOrHeatInTank : RecipeRule<VesselHazard>
{
    public const string RuleName = "gas-or-heat-in-tank";

    public override string Name => RuleName;

    protected override IEnumerable<VesselHazard> Judge(RecipeFacts recipe, RuleContext context)
    {
        var hazards = HazardGate.Of(recipe).Present.Where(h => IsOwn(h) && !IsOfOneStock(recipe, h)).ToList();
        return hazards.Count == 0
            ? [VesselHazard.None(recipe.Recipe.Place, recipe.Recipe.Name)]
            : VesselHazard.Of(recipe.Recipe.Place, recipe.Recipe.Name, hazards);
    }

    protected override Finding Describe(VesselHazard verdict, RuleContext context)
    {
        var finding = verdict.Describe(context);

        // The bottles are right by themselves; what is wrong stands in the recipe.
        return finding.Place.File == verdict.Whole.File ? finding : finding with
        {
            Place = verdict.Whole,
            Related = [new RelatedPlace(finding.Place, "what comes in"), .. finding.Related],
        };
    }

    protected override Working Work(VesselHazard verdict, RuleContext context) => verdict.Work();

    /// <summary>What ferments and what nobody can name is left to the rules on stocks; a tank takes up the heat.</summary>
    private static bool IsOwn(Hazard hazard) => hazard.Kind switch
    {
        HazardKind.Fire or HazardKind.FermentationPressure or HazardKind.UnknownContents or HazardKind.Heat => false,
        HazardKind.OxygenPressure => !VesselHazard.IsOfMetals(hazard),
        HazardKind.CarbonDioxidePressure => hazard.Grade == HazardGrade.Grave,
        _ => true,
    };

    private static bool IsOfOneStock(RecipeFacts recipe, Hazard hazard) =>
        hazard is { From.Place: { } from, With.Place: { } with }
        && from.File == with.File && recipe.Doses.Any(d => d.Stock?.Stock.File == from.File);
}
