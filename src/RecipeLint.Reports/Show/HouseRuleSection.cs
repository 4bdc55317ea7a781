using RecipeLint.Analysis;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>What the shop's own rules say of a file.</summary>
internal static class HouseRuleSection
{
    public static SheetSection Of(Facts facts, string file, HouseRuleScope scope) => new(
        "house-rules", "Rules of this shop", [],
        new Table(
            [new("rule"), new("level"), new("says")],
            [.. RecipeLint.Rules.Engine.HouseRules.On(facts, file, scope, StandardEngine.Document).SelectMany(Rows)]));

    private static IEnumerable<IReadOnlyList<string>> Rows((RuleDescriptor Rule, IReadOnlyList<Finding>? Findings) judged)
    {
        var name = $"{judged.Rule.Id} {judged.Rule.Name}";
        return judged.Findings switch
        {
            null => [[name, "off", "not asked: the shop has switched it off"]],
            [] => [[name, "", "nothing: it is as the rule wants it"]],
            var found => found.Select(f => (IReadOnlyList<string>)[name, Words.Of(f.Level), f.Message]),
        };
    }
}
