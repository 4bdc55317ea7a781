using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// Targets that no mixture of salts can meet because their charges do not cancel, and a final solution whose charges a water analysis or a
/// label leaves open.
/// </summary>
public sealed class ChargeImbalance : RecipeRule
{
    /// <summary>Targets without which nothing can be said: each can close a gap.</summary>
    internal static readonly string[] Needed = ["P", "K", "Ca", "Mg", "S"];

    /// <summary>Charges near pH 5.8, where phosphate is H2PO4-.</summary>
    internal static readonly (string Key, int Charge)[] Charges =
        [("K", 1), ("Ca", 2), ("Mg", 2), ("Na", 1), ("NH4-N", 1), ("NO3-N", -1), ("P", -1), ("S", -2), ("Cl", -1)];

    public override string Name => "charge-imbalance";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (Targets(recipe, context) is { } targets)
        {
            yield return targets;
        }

        if (Solution(recipe, context) is { } solution)
        {
            yield return solution;
        }
    }

    private static Finding? Targets(RecipeFacts recipe, RuleContext context)
    {
        var wanted = recipe.Recipe.Targets
            .Where(t => t.Concentration is { GramsPerLitre: > 0 })
            .GroupBy(t => t.Key.Value)
            .ToDictionary(g => g.Key, g => g.First().Concentration!.Value.MilligramsPerLitre / AtomicWeights.Of(NutrientKeys.ElementOf(g.Key)));
        var byForm = wanted.ContainsKey("NO3-N");
        if (Needed.Any(n => !wanted.ContainsKey(n)) || !(byForm || wanted.ContainsKey("N")))
        {
            return null;
        }

        var cations = Charges.Where(c => c.Charge > 0).Sum(c => c.Charge * wanted.GetValueOrDefault(c.Key));
        var anions = -Charges.Where(c => c.Charge < 0).Sum(c => c.Charge * wanted.GetValueOrDefault(c.Key));
        var split = "";
        if (!byForm)
        {
            // Nitrogen without a form is nitrate, as far as ammonium is not stated or not needed to balance.
            var free = wanted["N"] - wanted.GetValueOrDefault("NH4-N");
            var ammonium = wanted.ContainsKey("NH4-N") ? 0 : Math.Clamp((anions + free - cations) / 2, 0, free);
            cations += ammonium;
            anions += free - ammonium;
            split = ", with the nitrogen shared between nitrate and ammonium as it fits best";
        }

        var percent = Rounding.SixDigits(100 * Math.Abs(cations - anions) / (cations + anions));
        var limit = context.Number("targetTolerance");
        if (percent <= limit)
        {
            return null;
        }

        var place = recipe.Recipe.Place.Child("targets").Key;
        var (more, less) = cations > anions ? ("cations", "anions") : ("anions", "cations");
        return context.Find(
            place,
            $"The targets ask for {Say.Number(cations)} meq/L of cations and {Say.Number(anions)} meq/L of anions{split}: {Say.Percent(percent / 100)} apart. "
            + $"Salts bring both in equal measure, so no mixture meets all targets at once; the gap fills with {(cations > anions ? "chloride, bicarbonate or alkali" : "sodium, ammonium or acid")}. "
            + $"Lower the {more} or raise the {less}, or look for a figure on another basis.") with
        {
            Measured = new Measured("imbalance of the targets", percent, limit, "%"),
            Values = [new NamedValue("cations", Rounding.SixDigits(cations), "meq/L"), new NamedValue("anions", Rounding.SixDigits(anions), "meq/L")],
        };
    }

    private static Finding? Solution(RecipeFacts recipe, RuleContext context)
    {
        var cations = recipe.Charge.Cations.MilliequivalentsPerLitre;
        var open = recipe.Charge.Unexplained.MilliequivalentsPerLitre;
        var limit = context.Number("tolerance");
        if (!recipe.IsComplete || cations <= 0)
        {
            return null;
        }

        var percent = Rounding.SixDigits(100 * Math.Abs(open) / cations);

        // An analysis that does not balance is reported at the water.
        if (percent <= limit || context.Facts.Workspace.Problems.Any(p => p.Kind == ProblemKind.UnbalancedWater && p.Place.File == recipe.Water?.Water?.File))
        {
            return null;
        }

        var place = RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#charge",
            $"{Say.Number(Math.Abs(open))} meq/L of {(open > 0 ? "anions" : "cations")} are missing from what is known of the final solution, {Say.Percent(percent / 100)} of its cations. "
            + "The pH and the conductivity computed for it are off by as much. "
            + "Complete the analysis of the water, or the label of the product that leaves it open.") with
        {
            Measured = new Measured("unexplained charge", percent, limit, "%"),
            Values = [new NamedValue("unexplained charge", Rounding.SixDigits(open), "meq/L"), new NamedValue("cations", Rounding.SixDigits(cations), "meq/L")],
            Related = recipe.Water?.Water is { File.Length: > 0 } water ? [new RelatedPlace(water.Place, "analysis of the source water")] : [],
        };
    }
}
