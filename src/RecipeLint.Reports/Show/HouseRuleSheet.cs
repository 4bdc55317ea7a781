using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Show;

/// <summary>What a rule of the shop wants, why, and the examples it brings along.</summary>
public static class HouseRuleSheet
{
    public static Sheet Of(HouseRuleDocument rule) => new("rule of the shop", $"{rule.Id.Value} {rule.Name.Value}", rule.File,
    [
        .. new[]
        {
            new SheetSection("about", "About",
            [
                $"{rule.Title} ({rule.Level}; looks at each {(rule.LooksAt == HouseRuleScope.Stock ? "stock" : "recipe")})",
                rule.Reason,
                .. rule.Explanation.Split("\n\n").Select(p => p.Replace('\n', ' ').Trim()).Where(p => p.Length > 0),
            ]),
            new SheetSection("examples", "Examples", [],
                new Table(
                    [new("what"), new("file"), new("the rule")],
                    [
                        .. rule.Failing.Select(e => (IReadOnlyList<string>)[e.What, e.File, "objects"]),
                        .. rule.Passing.Select(e => (IReadOnlyList<string>)[e.What, e.File, "says nothing"]),
                    ]),
                "'recipelint rules --test' tries them."),
        }.Where(s => !s.IsEmpty),
    ]);
}
