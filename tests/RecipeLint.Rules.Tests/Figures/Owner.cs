using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Figures;

/// <summary>Limits and constants as their owners have them.</summary>
internal static partial class Owner
{
    private static readonly Lazy<ILookup<string, string>> Sources = new(() =>
        Directory.EnumerateFiles(Path.Combine(RuleFolder.Repository, "src"), "*", SearchOption.AllDirectories)
            .Where(p => !Path.GetRelativePath(RuleFolder.Repository, p).Split(Path.DirectorySeparatorChar).Any(f => f is "obj" or "bin"))
            .ToLookup(p => Path.GetFileName(p), StringComparer.Ordinal));

    /// <summary>Default of an option of a rule.</summary>
    public static double Option(string rule, string name) => Options(rule)[name].Default;

    /// <summary>Default and unit of each option of a rule; words are left out.</summary>
    public static IReadOnlyDictionary<string, (double Default, string Unit)> Options(string rule)
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(RuleFolder.Find(rule).Path, "rule.json")));
        return file.RootElement.TryGetProperty("options", out var options)
            ? options.EnumerateArray()
                .Where(o => o.GetProperty("default").ValueKind == JsonValueKind.Number)
                .ToDictionary(
                    o => o.GetProperty("name").GetString()!,
                    o => (o.GetProperty("default").GetDouble(), o.TryGetProperty("unit", out var unit) ? unit.GetString()! : ""),
                    StringComparer.Ordinal)
            : new Dictionary<string, (double, string)>();
    }

    /// <summary>
    /// The number after some marks in a source or data file, one mark after the other: what the engine keeps to itself is read where it is
    /// declared and needs no door for a test.
    /// </summary>
    public static double In(string file, params string[] marks) => After(Sources.Value[file].Single(), marks);

    /// <summary>A number of what a rule says of its own failing example.</summary>
    public static double Said(string rule, params string[] marks) =>
        After(Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Rules.Tests", "Said", rule + ".txt"), marks);

    private static double After(string path, string[] marks)
    {
        var (text, file, at) = (File.ReadAllText(path), Path.GetFileName(path), 0);
        foreach (var mark in marks)
        {
            at = text.IndexOf(mark, at, StringComparison.Ordinal);
            Assert.True(at >= 0, $"{file} has no '{mark}'");
            at += mark.Length;
        }

        var number = Number().Match(text, at);
        Assert.True(number.Success && number.Index - at <= 2, $"{file} has no number behind '{marks[^1]}'");
        return double.Parse(number.Value.Replace("_", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"-?\d[\d_]*(\.\d+)?(e-?\d+)?", RegexOptions.IgnoreCase)]
    private static partial Regex Number();
}
