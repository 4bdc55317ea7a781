using System.Text.Json;
using RecipeLint.Chemistry.Data;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>The embedded data of the hazard gate. A fault in them is a fault of the build and throws.</summary>
public static class HazardData
{
    private static readonly Lazy<IReadOnlyList<HazardRoleRow>> LoadedRows = new(ReadRows);

    private static readonly Lazy<IReadOnlyDictionary<string, IReadOnlySet<HazardRole>>> LoadedRoles = new(() =>
        LoadedRows.Value.ToDictionary(r => r.Id, r => r.Roles, StringComparer.Ordinal));

    private static readonly Lazy<IReadOnlyList<HazardLimit>> LoadedLimits = new(ReadLimits);

    private static readonly Lazy<Content> LoadedTexts = new(ReadTexts);

    /// <summary>The rows of roles.json.</summary>
    public static IReadOnlyList<HazardRoleRow> Rows => LoadedRows.Value;

    /// <summary>The rows of limits.json.</summary>
    public static IReadOnlyList<HazardLimit> Limits => LoadedLimits.Value;

    /// <summary>Sentences that the texts of other data may share with the hazards.</summary>
    public static SharedSentences Sentences => LoadedTexts.Value.Sentences;

    internal static string Deference => LoadedTexts.Value.Deference;

    internal static IReadOnlyList<HazardText> Texts => LoadedTexts.Value.Texts;

    internal static HazardText Text(HazardKind kind) => Texts.First(t => t.Kind == kind);

    /// <summary>The roles of a substance of the catalogue; null for what is not in it.</summary>
    internal static IReadOnlySet<HazardRole>? RolesOf(string id) =>
        SubstanceCatalogue.BuiltIn.ById(id)?.BehavesAs is { } row ? LoadedRoles.Value[row] : null;

    internal static double Limit(string name) =>
        (Limits.FirstOrDefault(l => l.Name == name) ?? throw new InvalidOperationException($"limits.json has no '{name}'.")).Value;

    /// <summary>True when this kind at this grade forbids the action ("order", "put").</summary>
    internal static bool Forbids(HazardKind kind, HazardGrade grade, string action)
    {
        var grades = LoadedTexts.Value.Forbids[kind];
        return (grades.GetValueOrDefault(grade) ?? grades[HazardGrade.Present]).Contains(action);
    }

    private static List<HazardRoleRow> ReadRows()
    {
        using var document = Open("roles");
        return
        [
            .. document.RootElement.GetProperty("rows").EnumerateArray().Select(r => new HazardRoleRow(
                Text(r, "id"),
                Strings(r, "roles").Select(Role).ToHashSet(),
                Text(r, "why"),
                Text(r, "source"),
                Enum.Parse<Confidence>(Text(r, "confidence"), ignoreCase: true))),
        ];
    }

    private static List<HazardLimit> ReadLimits()
    {
        using var document = Open("limits");
        return
        [
            .. document.RootElement.GetProperty("limits").EnumerateArray().Select(l => new HazardLimit(
                Text(l, "name"), l.GetProperty("value").GetDouble(), Text(l, "unit"), Text(l, "what"), Text(l, "source"), Text(l,
                    "confidence"))),
        ];
    }

    private static Content ReadTexts()
    {
        using var document = Open("hazards");
        var sentences = SharedSentences.Of(document.RootElement);
        var texts = new List<HazardText>();
        var forbids = new Dictionary<HazardKind, Dictionary<HazardGrade, HashSet<string>>>();
        foreach (var row in document.RootElement.GetProperty("kinds").EnumerateArray())
        {
            var kind = Word<HazardKind>(Text(row, "id"));
            string Said(string name) => sentences.In(Text(row, name));
            texts.Add(new HazardText(
                kind, Said("name"), Said("happens"), Said("notice"), Said("first"), Said("help"), Said("when"), Said("instead"),
                [.. Strings(row, "signs")], Text(row, "source"), Text(row, "confidence")));
            forbids.Add(
                kind,
                row.GetProperty("forbids").EnumerateObject().ToDictionary(
                    g => Word<HazardGrade>(g.Name), g => g.Value.EnumerateArray().Select(a => a.GetString()!)
                        .ToHashSet(StringComparer.Ordinal)));
        }

        return new Content(document.RootElement.GetProperty("deference").GetString()!, sentences, texts, forbids);
    }

    private static HazardRole Role(string text) => Word<HazardRole>(text);

    /// <summary>"nitric-acid" is NitricAcid.</summary>
    private static T Word<T>(string text)
        where T : struct, Enum =>
        Enum.Parse<T>(text.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);

    private static string Text(JsonElement item, string name) => item.GetProperty(name).GetString()!;

    private static IEnumerable<string> Strings(JsonElement item, string name) => item.GetProperty(name).EnumerateArray().Select(e =>
        e.GetString()!);

    private static JsonDocument Open(string file) =>
        EmbeddedJson.Open(typeof(HazardData).Assembly, $"RecipeLint.Analysis.Hazards.{file}.json");

    private sealed record Content(string Deference, SharedSentences Sentences, IReadOnlyList<HazardText> Texts,
        Dictionary<HazardKind, Dictionary<HazardGrade, HashSet<string>>> Forbids);
}
