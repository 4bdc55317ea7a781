using System.Text.Json;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

/// <summary>The data files themselves: nothing misspelt, nothing without a source, nothing left unread.</summary>
public sealed class DataFileTests
{
    private const string Prefix = "RecipeLint.Chemistry.Data.substances.";

    private static readonly string[] Keys =
    [
        "id", "name", "kind", "behavesAs", "form", "family", "aliases", "formula", "cas", "dissolves", "label", "strength", "density20C", "needsAssay", "assay",
        "impurities", "feedsMicrobes", "extractOf", "colour", "hazards", "keepApart", "solubility", "note", "assumes",
    ];

    public static TheoryData<string> Files => [.. FileNames()];

    [Theory]
    [MemberData(nameof(Files))]
    public void EveryKeyIsKnownAndEverySourceIsUsed(string file)
    {
        using var document = Open(file);
        var root = document.RootElement;
        Assert.NotEmpty(root.GetProperty("about").GetString()!);
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in root.GetProperty("substances").EnumerateArray())
        {
            Assert.All(row.EnumerateObject(), p => Assert.Contains(p.Name, Keys));
            Assert.Equal(row.EnumerateObject().Count(), row.EnumerateObject().Select(p => p.Name).Distinct().Count());
            CollectSources(row, used);

            // What carries a measured or printed value must carry its source beside it.
            foreach (var key in new[] { "cas", "label", "strength", "density20C", "assay", "hazards", "keepApart", "solubility", "note", "assumes" })
            {
                Assert.True(!row.TryGetProperty(key, out var value) || (value.TryGetProperty("src", out _) && value.TryGetProperty("confidence", out _)), key);
            }
        }

        Assert.Equal(root.GetProperty("sources").EnumerateObject().Select(s => s.Name).Order(StringComparer.Ordinal), used.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void TheCatalogueReadsEveryFile()
    {
        var rows = FileNames().Sum(file =>
        {
            using var document = Open(file);
            return document.RootElement.GetProperty("substances").GetArrayLength();
        });
        Assert.Equal(rows, SubstanceCatalogue.BuiltIn.Substances.Count);
    }

    private static IEnumerable<string> FileNames() => typeof(Substance).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal) && !n.EndsWith("components.json", StringComparison.Ordinal))
        .Select(n => n[Prefix.Length..]);

    private static JsonDocument Open(string file) => JsonDocument.Parse(typeof(Substance).Assembly.GetManifestResourceStream(Prefix + file)!);

    private static void CollectSources(JsonElement element, HashSet<string> used)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in element.EnumerateObject())
            {
                if (property.NameEquals("src"))
                {
                    used.Add(property.Value.GetString()!);
                }

                CollectSources(property.Value, used);
            }
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
            {
                CollectSources(item, used);
            }
        }
    }
}
