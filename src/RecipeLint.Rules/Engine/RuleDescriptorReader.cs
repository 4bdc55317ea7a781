using System.Text.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// Turns a rule.json into a descriptor. Strict: whatever it does not know is an error of the rule's author, found by the first test that
/// runs.
/// </summary>
internal static class RuleDescriptorReader
{
    private static readonly string[] _known =
    [
        "$schema", "id", "name", "family", "level", "certainty", "scope", "title", "options", "since", "sources", "problemKind", "preview",
    ];

    /// <exception cref="FormatException">The text is not a rule description.</exception>
    internal static RuleDescriptor Read(ReadOnlyMemory<byte> json, string origin, Lazy<string> explanation)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            var root = document.RootElement;
            foreach (var member in root.EnumerateObject())
            {
                if (!_known.Contains(member.Name))
                {
                    throw new FormatException($"{origin}: unknown key '{member.Name}'.");
                }
            }

            return new RuleDescriptor
            {
                Id = Text(root, "id"),
                Name = Text(root, "name"),
                Family = Text(root, "family"),
                Title = Text(root, "title"),
                Level = Word<Level>(Text(root, "level")),
                Certainty = Word<Certainty>(Text(root, "certainty")),
                Scope = Word<RuleScope>(Text(root, "scope")),
                Since = Text(root, "since"),
                IsPreview = root.TryGetProperty("preview", out var preview) && preview.GetBoolean(),
                Options = [.. Items(root, "options").Select(ReadOption)],
                Sources = [.. Items(root, "sources").Select(s => new RuleSource(Text(s, "text"), Text(s, "confidence")))],
                ProblemKinds = ReadKinds(root),
                Explanation = explanation,
            };
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or ArgumentException)
        {
            throw new FormatException($"{origin}: {e.Message}", e);
        }
    }

    private static RuleOption ReadOption(JsonElement option)
    {
        var value = option.GetProperty("default");
        return new RuleOption(
            Text(option, "name"),
            Text(option, "description"),
            value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText(),
            value.ValueKind == JsonValueKind.Number,
            Text(option, "unit"),
            Text(option, "source"));
    }

    private static IReadOnlyList<ProblemKind> ReadKinds(JsonElement root)
    {
        if (!root.TryGetProperty("problemKind", out var kinds))
        {
            return [];
        }

        return kinds.ValueKind == JsonValueKind.Array
            ? [.. kinds.EnumerateArray().Select(k => Word<ProblemKind>(k.GetString()!))]
            : [Word<ProblemKind>(kinds.GetString()!)];
    }

    private static JsonElement.ArrayEnumerator Items(JsonElement root, string name) =>
        root.TryGetProperty(name, out var items) ? items.EnumerateArray() : default;

    private static string Text(JsonElement item, string name) => item.GetProperty(name).GetString()!;

    private static T Word<T>(string text)
        where T : struct, Enum => Enum.Parse<T>(text, ignoreCase: true);
}
