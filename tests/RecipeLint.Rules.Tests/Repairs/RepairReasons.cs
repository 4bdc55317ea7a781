using System.Text.Json;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>Why some rules and some examples have no repair; from the table beside the tests.</summary>
internal static class RepairReasons
{
    private static readonly Lazy<Dictionary<string, string>> _reasons = new(() =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllBytes(Path))!);

    private static string Path => System.IO.Path.Combine(AppContext.BaseDirectory, "../../../Repairs/repairs.reasons.json");

    public static IReadOnlyDictionary<string, string> All => _reasons.Value;

    public static string? ForRule(string rule) => _reasons.Value.GetValueOrDefault(rule);

    public static string? ForExample(string rule, string example) => _reasons.Value.GetValueOrDefault($"{rule}/{example}");
}
