using RecipeLint.Analysis.Preservation;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>
/// What a shop's options say a kept stock needs: what works, from the rule on weak preservatives; what has to be kept and for how long,
/// from the rule on food without one.
/// </summary>
public static class PreservationNeeds
{
    /// <summary>By the shop that a file belongs to.</summary>
    public static PreservativeNeeds Of(ShopSettings shop) => Of(RuleTuning.Read(shop));

    /// <summary>By options that are read already.</summary>
    public static PreservativeNeeds Of(RuleTuning tuning)
    {
        var weak = tuning.Options<PreservativeTooWeakOptions>(RuleBook.Find(PreservativeTooWeak.RuleName)!);
        var food = Food(tuning);
        return new PreservativeNeeds
        {
            LeastBenzoic = weak.LeastBenzoic,
            LeastSorbic = weak.LeastSorbic,
            LeastPropionic = weak.LeastPropionic,
            RichFood = weak.RichFood,
            RichTimes = weak.RichTimes,
            LongDays = weak.LongDays,
            MinimumFood = food.MinimumFood,
            FreshDays = food.FreshDays,
            SafeBelowPh = food.SafeBelowPh,
            SafeCopper = food.SafeCopper,
        };
    }

    /// <summary>What counts as food that has to be kept, and for how long it keeps by itself.</summary>
    internal static CarbonWithoutPreservativeOptions Food(ShopSettings shop) => Food(RuleTuning.Read(shop));

    private static CarbonWithoutPreservativeOptions Food(RuleTuning tuning) =>
        tuning.Options<CarbonWithoutPreservativeOptions>(RuleBook.Find(CarbonWithoutPreservative.RuleName)!);
}
