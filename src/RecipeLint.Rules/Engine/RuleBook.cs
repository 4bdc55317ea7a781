using System.Collections.Immutable;
using System.Text;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>The descriptions of all rules, as their rule.json gives them.</summary>
public static class RuleBook
{
    private static readonly Lazy<ImmutableArray<RuleDescriptor>> _descriptors = new(WrittenRules.All);

    private static readonly Lazy<Dictionary<string, RuleDescriptor>> _byName = new(() =>
        _descriptors.Value
            .SelectMany(d => new[] { KeyValuePair.Create(d.Id, d), KeyValuePair.Create(d.Name, d) })
            .ToDictionary(StringComparer.OrdinalIgnoreCase));

    /// <summary>In the order of their ids.</summary>
    public static ImmutableArray<RuleDescriptor> Descriptors => _descriptors.Value;

    /// <summary>By id ("RL0101") or name ("calcium-with-sulfate"), in any case.</summary>
    public static RuleDescriptor? Find(string idOrName) => _byName.Value.GetValueOrDefault(idOrName);

    /// <summary>Rule names nearest in spelling to a text that names no rule, best first, at most three.</summary>
    public static IReadOnlyList<string> Suggest(string text) =>
        text.StartsWith("RL", StringComparison.OrdinalIgnoreCase)
            ? Spelling.Nearest(text, Descriptors.Select(d => d.Id), 3)
            : Spelling.Nearest(text, Descriptors.Select(d => d.Name), 3);

    /// <summary>The description of a rule of the program.</summary>
    /// <exception cref="KeyNotFoundException">The rule has no folder.</exception>
    public static RuleDescriptor Of(Rule rule) =>
        Find(rule.Name) ?? throw new KeyNotFoundException($"The rule '{rule.Name}' has no folder under rules/.");

    /// <summary>The explanation that travels with the program under this name, read when first asked for.</summary>
    /// <exception cref="FileNotFoundException">The program lacks it; thrown when it is read.</exception>
    internal static Lazy<string> ExplanationIn(string resource) => new(() =>
    {
        using var stream = typeof(RuleBook).Assembly.GetManifestResourceStream(resource)
            ?? throw new FileNotFoundException($"The program lacks its part '{resource}'.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    });
}
