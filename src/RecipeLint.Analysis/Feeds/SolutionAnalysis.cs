using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Feeds;

/// <summary>What the plants get from one recipe.</summary>
internal static class SolutionAnalysis
{
    private const string WaterSource = "water";

    /// <summary>Null for a recipe without a readable final volume.</summary>
    public static RecipeFacts? Of(RecipeDocument recipe, Workspace workspace, StockAnalysis stocks)
    {
        if (recipe.Final is not { Value.Litres: > 0 and < double.PositiveInfinity } final)
        {
            return null;
        }

        var shop = workspace.SettingsFor(recipe.File);
        var assumptions = new AssumptionList(recipe.Place);
        var reader = new DoseReader(final.Value, shop, stocks, assumptions);
        var doses = recipe.Doses.Select(reader.Read).OfType<DoseFacts>().ToList();
        var dosed = doses.Aggregate(Volume.Zero, (sum, d) => sum + d.Volume);
        var (finalVolume, waterVolume) = Volumes(recipe, final.Value, dosed, assumptions);

        var choice = SourceWater.Find(workspace, recipe.Water);
        if (recipe.Water is null)
        {
            assumptions.Add("water", "No source water is named: it is taken as distilled, without ions.", recipe.Place);
        }

        var water = SourceWater.Pour(WaterSource, recipe.Water?.Place ?? recipe.Place, choice, waterVolume, estimate: false, assumptions);
        foreach (var stock in doses.Select(d => d.Stock).OfType<StockFacts>())
        {
            assumptions.AddRange(stock.Assumptions.Where(a => a.Key != Storage.AssumptionKey));
        }

        var poured = ComponentMoles.Sum([.. doses.Select(d => d.ComponentMoles), water.ComponentMoles]);
        var adjustment = Adjustment(recipe, poured, finalVolume, assumptions);
        var moles = adjustment is null ? poured : ComponentMoles.Sum([poured, adjustment.ComponentMoles]);
        var (ions, charge) = ChargeBook.Of(moles, finalVolume);
        return new RecipeFacts
        {
            Recipe = recipe,
            Settings = shop,
            Profile = ProfileFor(recipe, workspace, shop, assumptions) is var crop && recipe.IsForLeaves ? crop.WithoutBounds() : crop,
            FinalVolume = finalVolume,
            WaterVolume = waterVolume,
            Doses = doses,
            Water = water,
            Elements = ElementTable.Of(doses, water, adjustment, finalVolume),
            ComponentMoles = moles,
            Charge = charge,
            Ions = ions,
            Impurities = ElementTotals.Sum(doses.Select(d => d.Impurities)),
            Adjustment = adjustment,
            Assumptions = assumptions.ToList(),
            IsComplete = recipe.IsComplete && choice.Resolved && reader.IsComplete,
        };
    }

    /// <summary>
    /// "Made up": doses and water together give the stated volume. "Added to": the stated volume is water, and the doses come on top.
    /// </summary>
    private static (Volume Final, Volume Water) Volumes(RecipeDocument recipe, Volume stated, Volume poured, AssumptionList assumptions)
    {
        if (recipe.IsForLeaves)
        {
            assumptions.Add(
                "given-to-leaves",
                "It is sprayed onto leaves: what roots bear and take up is not judged, only what burns leaves or people.",
                recipe.GivenTo!.Place);
        }

        if (recipe.VolumeMeaning is null)
        {
            assumptions.Add(
                "volume-meaning",
                "The file does not say what the final volume means: doses and water are taken as made up to it.",
                recipe.Place);
        }

        if (recipe.VolumeMeaning?.Value == FinalVolumeMeaning.AddedTo)
        {
            return (stated + poured, stated);
        }

        if (poured > stated)
        {
            assumptions.Add(
                "doses-exceed-final",
                "The doses alone are more than the final volume: no water is counted and their sum is the final volume.",
                recipe.Place);
            return (poured, Volume.Zero);
        }

        return (stated, stated - poured);
    }

    /// <summary>Growers' tanks stand open and are stirred, so the reagent is what the solution takes at rest with the air.</summary>
    private static PhAdjustmentFacts? Adjustment(
        RecipeDocument recipe, ComponentMoles moles, Volume final, AssumptionList assumptions)
    {
        if (recipe.Adjust is not { } adjust)
        {
            return null;
        }

        var mix = SolutionMix.Of(moles, final);
        var water = new Mass(1000 * mix.KilogramsWaterPerLitre * final.Litres);
        return Adjustments.Of("adjust", adjust.Place, adjust.Target?.Value, adjust.Reagent, moles, water, openToAir: true, assumptions);
    }

    /// <summary>The recipe's crop, else the shop's profile, else the generic one.</summary>
    private static CropProfile ProfileFor(RecipeDocument recipe, Workspace workspace, ShopSettings shop, AssumptionList assumptions)
    {
        var stage = recipe.Stage?.Value;
        foreach (var (name, file) in new[] { (recipe.Crop, recipe.ProfileFile), (shop.Profile, shop.ProfileFile) })
        {
            if (file is not null && workspace.FindProfile(file) is { } own)
            {
                return ShopProfile.Of(own, stage);
            }

            if (name is not null && ProfileLibrary.Find(name.Value, stage) is { } profile)
            {
                return profile;
            }
        }

        var why = recipe.Crop is { } crop ? $"No profile is known for the crop '{crop.Value}'" : "No crop is stated";
        assumptions.Add("profile", $"{why}: the generic ranges are used.", recipe.Crop?.Place ?? recipe.Place);
        return ProfileLibrary.Generic;
    }
}
