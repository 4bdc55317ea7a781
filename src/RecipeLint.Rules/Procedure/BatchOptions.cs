using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>What counts as made as planned: the option of the rule on what was weighed, for all that judge a batch.</summary>
public static class BatchOptions
{
    /// <summary>How far a batch may lie from its plan, as a shop has set it; relative.</summary>
    public static double Allowed(ShopSettings shop) =>
        RuleTuning.Read(shop).Options<BatchWeighedOffOptions>(RuleBook.Find(RuleNames.BatchWeighedOff)!).Allowed / 100;
}
