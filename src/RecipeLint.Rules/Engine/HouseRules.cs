using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>The rules of a shop's own as the engine knows rules: by a description.</summary>
public static class HouseRules
{
    /// <summary>The family of all of them.</summary>
    public const string Family = "house";

    /// <summary>A built-in rule or one of the shop's own, by id or name, in any case.</summary>
    public static RuleDescriptor? Find(ShopSettings shop, string idOrName) =>
        RuleBook.Find(idOrName) ?? (shop.HouseRules.FirstOrDefault(r => IsCalled(r, idOrName)) is { } own ? Descriptor(own) : null);

    /// <summary>
    /// What each rule of the shop says of one file, in the order of its rules; null findings for one that the shop has switched off.
    /// Accepted findings are among them: this tells what is so, not what is still to do.
    /// </summary>
    /// <param name="document">Writes the facts of a file as JSON; null where it has none.</param>
    public static IReadOnlyList<(RuleDescriptor Rule, IReadOnlyList<Finding>? Findings)> On(
        Facts facts, string file, HouseRuleScope scope, Func<Facts, string, ReadOnlyMemory<byte>?> document)
    {
        var shop = facts.Workspace.SettingsFor(file);
        var rules = shop.HouseRules.Where(r => r.LooksAt == scope).Select(Descriptor).ToList();
        if (rules.Count == 0)
        {
            return [];
        }

        var tuning = RuleTuning.Read(shop);
        var found = new HouseRuleDesk(facts, document).Judge(file, scope).ToLookup(f => f.Rule.Id, StringComparer.Ordinal);
        return
        [
            .. rules.Select(r => (
                r, tuning.IsOff(r) ? null : (IReadOnlyList<Finding>?)[.. found[r.Id].Select(tuning.Apply).OfType<Finding>()])),
        ];
    }

    public static RuleDescriptor Descriptor(HouseRuleDocument rule) => new()
    {
        Id = rule.Id.Value,
        Name = rule.Name.Value,
        Family = Family,
        Title = rule.Title,
        Level = rule.Level switch { "error" => Level.Error, "warning" => Level.Warning, _ => Level.Note },
        Certainty = Certainty.Practice,
        Scope = rule.LooksAt == HouseRuleScope.Stock ? RuleScope.Stock : RuleScope.Recipe,
        Sources = [new RuleSource($"house rule of this shop, {rule.File}", "practice")],
        Since = "this shop",
        Explanation = new Lazy<string>(() => Explain(rule)),
    };

    private static bool IsCalled(HouseRuleDocument rule, string text) =>
        rule.Id.Value.Equals(text, StringComparison.OrdinalIgnoreCase) || rule.Name.Value.Equals(text, StringComparison.OrdinalIgnoreCase);

    private static string Explain(HouseRuleDocument rule)
    {
        var text = new StringBuilder();
        text.Append("## What it finds\n\n").Append(rule.Title).Append("\n\n## Why it matters\n\n").Append(rule.Reason).Append('\n');
        if (rule.Explanation.Length > 0)
        {
            text.Append('\n').Append(rule.Explanation.TrimEnd()).Append('\n');
        }

        return text.ToString();
    }
}
