using RecipeLint.Chemistry.Data;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Loads the data files compiled into the assembly.</summary>
internal static class BuiltInSubstances
{
    private const string Prefix = "RecipeLint.Chemistry.Data.substances.";

    /// <summary>One file a family; listed by name because nothing is looked up by reflection.</summary>
    private static readonly string[] Files =
    [
        "acids", "bases", "boron-molybdenum", "chelates", "chlorides", "dyes", "extracts", "nitrates", "organics", "oxidisers",
        "phosphates",
        "preservatives", "silicates", "sulfates", "trace-salts",
    ];

    public static IEnumerable<CatalogueEntry> Load() => Files.SelectMany(Load);

    private static IEnumerable<CatalogueEntry> Load(string family)
    {
        // Kept open: the entries read their rows when they are asked for.
        var document = EmbeddedJson.Open(typeof(BuiltInSubstances).Assembly, Prefix + family + ".json");
        var reader = new SubstanceReader(family + ".json", document.RootElement.GetProperty("sources"));
        foreach (var row in document.RootElement.GetProperty("substances").EnumerateArray())
        {
            yield return reader.Entry(row);
        }
    }
}
