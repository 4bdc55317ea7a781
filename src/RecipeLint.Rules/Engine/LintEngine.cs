using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>Runs the rules over the facts and applies what the shop says of them.</summary>
public static class LintEngine
{
    public static LintResult Judge(Facts facts, EngineOptions options) => new LintRun(facts, options).Judge();

    /// <summary>The distinct settings that hold for any file read, in the order of their files.</summary>
    public static IReadOnlyList<ShopSettings> ShopsOf(Workspace workspace) =>
    [
        .. workspace.Sources.Keys
            .Concat(workspace.Stocks.Select(s => s.File))
            .Concat(workspace.Recipes.Select(r => r.File))
            .Order(StringComparer.Ordinal)
            .Select(workspace.SettingsFor)
            .DistinctBy(s => s.File)
            .OrderBy(s => s.File, StringComparer.Ordinal),
    ];
}
