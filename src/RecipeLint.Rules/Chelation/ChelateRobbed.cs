using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>Another metal takes the chelating agent from the iron in the final solution, at a pH the chelate would stand.</summary>
public sealed class ChelateRobbed : RecipeRule, IProposesRepairs
{
    public override string Name => "chelate-robbed";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var agent = Iron.ChelatorMoles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var least = context.Number("leastHeld") / 100;

        // Too little agent is another finding, and so is a pH that the chelate does not stand.
        if (!recipe.IsComplete || iron <= 0 || agent < least * iron || Iron.Supplier(recipe) is not { } ironDose)
        {
            yield break;
        }

        var state = Iron.Feed(recipe);
        var held = state.IsSolved ? Rounding.SixDigits(Iron.HeldShare(state, iron)) : 1;
        if (held >= least || Robbery.Of(recipe, state, held, least) is not { } robber)
        {
            yield break;
        }

        var main = Iron.Holders(recipe.ComponentMoles).MaxBy(h => h.Share).Name;
        var without = robber.HeldWithout;
        var stronger = (main, robber.Key) switch
        {
            ("EDDHA", _) => " or bring the pH to 5.5",
            (_, "Cu") => " or use Fe-EDDHA, from which copper takes far less",
            ("EDTA" or "HEDTA", _) => " or use Fe-DTPA, which gives iron up less easily",
            _ => " or bring the pH to 5.5",
        };
        var message = $"At pH {Say.Number(Math.Round(state.Ph, 2))} {main} holds only {Say.Percent(held)} of {Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron: {robber.Name}, at {Say.Number(recipe.MilligramsPerLitre(robber.Key))} mg/L, has taken the chelating agent. "
            + $"The iron without a holder falls out as rust and the crop goes short of it; without the {robber.Name} {Say.Percent(without)} would stay held. "
            + $"Lower the {robber.Name},{stronger}.";
        yield return context.Find(Source(recipe, robber.Key), message) with
        {
            Related = [new RelatedPlace(ironDose.Entry.Place, "brings the iron chelate")],
            Measured = new Measured("iron still held", held * 100, least * 100, "%"),
            Values =
            [
                new NamedValue("iron still held", held * 100, "%"),
                new NamedValue($"iron held without the {robber.Name}", without * 100, "%"),
                new NamedValue(robber.Name, recipe.MilligramsPerLitre(robber.Key), "mg/L"),
                new NamedValue("pH", state.Ph, ""),
            ],
        };
    }

    /// <summary>Where most of an element comes in: a dose, the water or the reagent.</summary>
    private static Place Source(RecipeFacts recipe, string key)
    {
        var most = recipe.Elements[key].Contributions
            .GroupBy(c => c.Source)
            .OrderByDescending(g => g.Sum(c => c.Concentration.GramsPerLitre))
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .FirstOrDefault()?.Key;
        return recipe.Doses.FirstOrDefault(d => d.Id == most)?.Entry.Place
            ?? (most == recipe.Water?.Id ? recipe.Water?.Place : null)
            ?? recipe.Recipe.Place.Child("doses").Key;
    }

    /// <summary>Less of the metal that robs, a stronger agent, or a lower pH.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        var robber = _byName.FirstOrDefault(n => finding.Values.Any(v => v.Name == n.Name)).Key;
        foreach (var addition in recipe.Doses.SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? []).Where(a => !a.ThroughAliquot))
        {
            if (robber is not null and not ("Ca" or "Mg") && addition.Elements[new Element(robber)].Grams > 0)
            {
                yield return Additions.Less(context, addition);
            }

            foreach (var other in Iron.Moles(addition.ComponentMoles) > 0 ? Additions.OtherIron(context, addition) : [])
            {
                yield return other;
            }
        }

        foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59" }.OfType<string>().Distinct(StringComparer.Ordinal))
        {
            yield return Waters.Adjust(context, recipe, 5.5, acid);
        }
    }

    private static readonly (string Name, string Key)[] _byName =
        [("copper", "Cu"), ("zinc", "Zn"), ("manganese", "Mn"), ("nickel", "Ni"), ("cobalt", "Co"), ("calcium", "Ca"), ("magnesium", "Mg")];
}
