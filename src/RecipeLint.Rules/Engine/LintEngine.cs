using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>Runs the rules over the facts and applies what the shop says of them.</summary>
public static class LintEngine
{
    public static LintResult Judge(Facts facts, EngineOptions options) => Conclude([new LintRun(facts, options).Look()], options);

    /// <summary>
    /// Judges a part of the files, so that they can be let go before the next part is read. Several parts may be judged at once.
    /// </summary>
    public static LintPiece Look(Facts facts, EngineOptions options)
    {
        var piece = new LintRun(facts, options).Look();
        var kept = new Dictionary<ShopSettings, ShopSettings>(ReferenceEqualityComparer.Instance);
        return piece with
        {
            Shops = [.. piece.Shops.Select(Kept)],
            SettingsOf = piece.SettingsOf.ToDictionary(s => s.Key, s => Kept(s.Value), StringComparer.Ordinal),
            Findings = [.. piece.Findings.Select(f => f with { Verdict = null })],
            Sources = piece.Sources.ToDictionary(s => s.Key, s => s.Value.WithoutTree(), StringComparer.Ordinal),
        };

        ShopSettings Kept(ShopSettings whole) => kept.TryGetValue(whole, out var known) ? known : kept[whole] = whole.ForFindings();
    }

    /// <summary>One result of all parts, the same as if all had been judged together.</summary>
    /// <param name="pieces">Always in the same order for the same files.</param>
    public static LintResult Conclude(IReadOnlyList<LintPiece> pieces, EngineOptions options) =>
        new LintConclusion(pieces, options).Conclude();

    /// <summary>The distinct settings that hold for any file read, in the order of their files.</summary>
    public static IReadOnlyList<ShopSettings> ShopsOf(Workspace workspace) =>
    [
        .. workspace.Sources.Keys
            .Concat(workspace.Stocks.Select(s => s.File))
            .Concat(workspace.Recipes.Select(r => r.File))
            .Order(StringComparer.Ordinal)
            .Select(workspace.SettingsFor)
            .DistinctBy(s => (s.File, s.Variant))
            .OrderBy(s => s.File, StringComparer.Ordinal),
    ];
}
