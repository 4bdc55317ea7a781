using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Reports.HouseRules;

/// <summary>One example of a house rule, tried out.</summary>
/// <param name="Fault">What is wrong with it, a sentence; null when it does what it should.</param>
public sealed record TriedExample(HouseRuleDocument Rule, HouseRuleExample Example, bool ShouldFail, string? Fault);

/// <summary>Runs the examples that a house rule brings along, each as a small shop in memory with this rule in it.</summary>
public static class HouseRuleTrial
{
    private const string Shop = "/shop";
    private const string RuleFile = "house-rules/own.rule.json";

    /// <param name="source">The rule's file.</param>
    public static IReadOnlyList<TriedExample> Of(HouseRuleDocument rule, SourceFile source) =>
    [
        .. rule.Failing.Select(e => new TriedExample(rule, e, true, Try(rule, source, e, shouldFail: true))),
        .. rule.Passing.Select(e => new TriedExample(rule, e, false, Try(rule, source, e, shouldFail: false))),
    ];

    private static string? Try(HouseRuleDocument rule, SourceFile source, HouseRuleExample example, bool shouldFail)
    {
        var files = new MemoryFileTree(Shop).Add($"{Shop}/recipelint.json", "{}").Add($"{Shop}/{RuleFile}", source.Bytes.ToArray());
        foreach (var (name, bytes) in example.Files)
        {
            if (files.FullPath($"{Shop}/{name}") is var full && !full.StartsWith(Shop + "/", StringComparison.Ordinal))
            {
                return $"'{Printable.Show(name)}' leads out of the example.";
            }

            files.Add(full, bytes);
        }

        var load = new LoadOptions { Root = Shop, Profiles = ProfileLibrary.AllNames };
        var judged = Judged.Of(files, [Shop], load, StandardEngine.On(null));
        if (!judged.IsComplete(example.File)
            || (judged.Facts.FindStock(example.File) is null && judged.Facts.Recipes.All(r => r.Recipe.File != example.File)))
        {
            var why = judged.Result.Findings.FirstOrDefault(f => f.Place.File == example.File && f.Rule.ProblemKinds.Count > 0)?.Message;
            return $"'{Printable.Show(example.File)}' cannot be read whole{(why is null ? "." : ": " + why)}";
        }

        var found = judged.Result.Findings.Where(f => f.Rule.Id == rule.Id.Value && f.Place.File == example.File).ToList();
        return (shouldFail, found.Count) switch
        {
            (true, 0) => "The rule finds no fault with it, and it should.",
            (false, > 0) => $"The rule finds fault with it, and it should not: {found[0].Message}",
            (true, _) when example.At is { } at && found.TrueForAll(f => f.Place.Pointer.Value != at) =>
                $"The rule finds fault at {string.Join(", ", found.Select(f => Named(f.Place.Pointer.Value)))}, not at {at}.",
            _ => null,
        };
    }

    private static string Named(string pointer) => pointer.Length == 0 ? "the whole file" : pointer;
}
