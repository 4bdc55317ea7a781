using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Chelation;

/// <summary>A feed whose iron is iron(II) without a chelating agent: clear when it is mixed, and without iron once the air has been at it.</summary>
public sealed class FerrousIronInFeed : RecipeRule
{
    /// <summary>The chelate that the remedy names.</summary>
    private const string Chelate = "fe-dtpa-hna";

    public override string Name => "ferrous-iron-in-feed";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!IsFerrous(recipe) || Iron.Supplier(recipe) is not { } dose || SpokenOfInTheBottle(dose.Stock))
        {
            yield break;
        }

        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var state = Iron.Feed(recipe);
        var limit = context.Number("mostLost") / 100;
        var lost = state.IsSolved ? Rounding.SixDigits(Iron.RustShare(state, iron)) : 0;
        if (lost <= limit)
        {
            yield break;
        }

        var message = $"'{recipe.Recipe.Name}' gets {Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron as iron(II) and nothing that holds it: once the air has oxidised it, {Say.Percent(lost)} of it falls out as {Iron.RustCalled(state)} at pH {Say.Number(Math.Round(state.Ph, 2))}. "
            + "The feed looks clear when it is mixed, the drippers brown within days, and new leaves turn yellow. "
            + Remedy(recipe, context, iron);
        yield return context.Find(dose.Entry.Place, message) with
        {
            Measured = new Measured("iron that falls out", lost * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("iron", iron * Iron.GramsPerMole * 1000, "mg/L"),
                new NamedValue("iron that falls out", lost * 100, "%"),
                new NamedValue("pH", state.Ph, ""),
            ],
        };
    }

    /// <summary>True where iron(II) is all the iron there is to speak of and no agent was put in for it; iron that falls out at once is a deposit.</summary>
    internal static bool IsFerrous(RecipeFacts recipe)
    {
        var iron = Iron.Moles(recipe.ComponentMoles);
        return recipe.IsComplete
            && recipe.ComponentMoles.GetValueOrDefault(Iron.Ferrous) > iron / 2
            && Iron.ChelatorMoles(recipe.ComponentMoles) < Iron.IntendedShare * iron;
    }

    /// <summary>A kept stock that loses its iron to the air before it is dosed has a finding of its own.</summary>
    internal static bool SpokenOfInTheBottle(StockFacts? stock) =>
        stock?.Chemistry.Aged is { IsSolved: true } aged
        && Iron.RustShare(aged, Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres) > Iron.IntendedShare;

    private static string Remedy(RecipeFacts recipe, RuleContext context, double iron)
    {
        if (context.Facts.Workspace.Catalogue.ById(Chelate) is not { } chelate || chelate.Dissolves.FirstOrDefault(y => y.Component == Iron.Ferric) is not { MolesPerGram: > 0 } yield)
        {
            return "Dose the iron as a chelate.";
        }

        return $"Dose the iron as a chelate, for instance {Say.Grams(iron * recipe.FinalVolume.Litres / yield.MolesPerGram)} of {chelate.Name} in {Say.Litres(recipe.FinalVolume.Litres)}.";
    }
}
