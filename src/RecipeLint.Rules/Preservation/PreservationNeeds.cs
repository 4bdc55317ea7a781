using RecipeLint.Analysis.Preservation;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>What a shop's options say a kept stock needs: those of the rule on weak preservatives, and of food without one for copper.</summary>
public static class PreservationNeeds
{
    /// <summary>By the shop that a file belongs to.</summary>
    public static PreservativeNeeds Of(ShopSettings shop) => Of(RuleTuning.Read(shop));

    /// <summary>By options that are read already.</summary>
    public static PreservativeNeeds Of(RuleTuning tuning)
    {
        var weak = tuning.Options<PreservativeTooWeakOptions>(RuleBook.Find(PreservativeTooWeak.RuleName)!);
        return new PreservativeNeeds
        {
            LeastBenzoic = weak.LeastBenzoic,
            LeastSorbic = weak.LeastSorbic,
            LeastPropionic = weak.LeastPropionic,
            RichFood = weak.RichFood,
            RichTimes = weak.RichTimes,
            LongDays = weak.LongDays,
            MinimumFood = weak.MinimumFood,
            FreshDays = weak.FreshDays,
            SafeBelowPh = weak.SafeBelowPh,
            SafeCopper = tuning.Options<CarbonWithoutPreservativeOptions>(RuleBook.Find(CarbonWithoutPreservative.RuleName)!).SafeCopper,
        };
    }
}
