using System.Text;

namespace RecipeLint.Editor.Setup;

/// <summary>The schemas of the files people write, as they are published, to stand in a shop where an editor finds them.</summary>
public static class PublishedSchemas
{
    /// <summary>The folder of a shop that they are written to; a name with a dot in front is never read as part of the shop.</summary>
    public const string Folder = ".recipelint/schema";

    private const string Resource = "schema/";

    /// <summary>Files of a kind by pattern, and the schema that describes them.</summary>
    public static IReadOnlyList<(string Pattern, string Schema)> Associations { get; } =
    [
        ("*.stock.json", "stock.schema.json"),
        ("*.recipe.json", "recipe.schema.json"),
        ("*.water.json", "water.schema.json"),
        ("*.substances.json", "substances.schema.json"),
        ("*.profile.json", "profile.schema.json"),
        ("*.batch.json", "batch.schema.json"),
        ("*.rule.json", "house-rule.schema.json"),
        ("recipelint.json", "recipelint.schema.json"),
    ];

    /// <summary>Every schema with its path in the shop, in the order of the names.</summary>
    public static IReadOnlyList<(string Path, string Text)> Files()
    {
        var assembly = typeof(PublishedSchemas).Assembly;
        return
        [
            .. assembly.GetManifestResourceNames().Where(n => n.StartsWith(Resource, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal).Select(n =>
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(n)!, Encoding.UTF8);
                return ($"{Folder}/{n[Resource.Length..]}", reader.ReadToEnd().ReplaceLineEndings("\n"));
            }),
        ];
    }

    /// <summary>The way from a file of the shop to its schema; null for a file of no kind.</summary>
    /// <param name="path">Relative to the shop, forward slashes.</param>
    public static string? WayFrom(string path)
    {
        var schema = Associations.FirstOrDefault(a => path.EndsWith(a.Pattern.TrimStart('*'), StringComparison.Ordinal)).Schema;
        return schema is null ? null : string.Concat(Enumerable.Repeat("../", path.Count(c => c == '/'))) + $"{Folder}/{schema}";
    }
}
