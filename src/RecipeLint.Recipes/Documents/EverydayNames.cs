using System.Collections.Frozen;
using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// What people write in a hurry where a substance is due: half a word ("cal nitrate"), water, or what something does in place of what it
/// is. Only hints come of it; nothing is read so.
/// </summary>
internal static partial class EverydayNames
{
    private const int Most = 3;

    private static readonly FrozenDictionary<string, string> _halves = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["cal"] = "calcium",
        ["mag"] = "magnesium",
        ["pot"] = "potassium",
        ["amm"] = "ammonium",
        ["ammon"] = "ammonium",
        ["sod"] = "sodium",
        ["mang"] = "manganese",
        ["nit"] = "nitrate",
        ["nitr"] = "nitrate",
        ["sulf"] = "sulfate",
        ["sulph"] = "sulfate",
        ["phos"] = "phosphate",
        ["sil"] = "silicate",
        ["moly"] = "molybdate",
        ["chlor"] = "chloride",
        ["carb"] = "carbonate",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> _ofWater = new[]
    {
        "tap", "rain", "ro", "well", "spring", "mains", "pure", "plain", "cold", "warm", "hot", "distilled", "deionised", "deionized",
        "demineralised", "demineralized", "osmosis", "reverse",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> _setsPh =
        new[] { "ph down", "ph minus", "ph up", "ph plus", "acid", "alkali", "lye" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>What to write instead, as a sentence; null where there is nothing better to say than that the name is not known.</summary>
    public static string? Hint(string text)
    {
        var words = Words(text);
        return words.Length > 0 && words[^1].Equals("water", StringComparison.OrdinalIgnoreCase) && words[..^1].All(_ofWater.Contains)
            ? "Water is not added but poured: in a stock {\"pour\": \"500 mL\", \"of\": \"distilled\"} and at the end "
                + "{\"topUp\": \"1 L\"}; a recipe names it under \"water\"."
            : _setsPh.Contains(string.Join(' ', words))
                ? "That is what it does, not what it is: write the acid or alkali on the label with its strength, such as 'nitric-38', "
                    + "'phosphoric-85' or 'koh-10'."
                : null;
    }

    /// <summary>Substances that a name in half words stands for; empty where it has none.</summary>
    public static IReadOnlyList<string> Meant(string text, SubstanceCatalogue catalogue)
    {
        var words = Words(text);
        var whole = words.Select(w => _halves.GetValueOrDefault(w, w)).ToArray();
        if (whole is ["chelated", _])
        {
            whole = [whole[1], "chelate"];
        }

        var lettered = Nought().Replace(text, "O");
        var meant = lettered != text ? lettered : whole.SequenceEqual(words) ? null : string.Join(' ', whole);
        return meant is null ? [] : catalogue.Find(meant) switch
        {
            SubstanceLookup.Found found => [found.Substance.Id],
            SubstanceLookup.Ambiguous several => [.. several.Candidates.Take(Most).Select(s => s.Id)],
            _ => [],
        };
    }

    /// <summary>A nought where a formula has oxygen: "KH2P04", "MgSO4.7H20".</summary>
    [GeneratedRegex(@"(?<=[A-Z])0|(?<=H2)0(?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex Nought();

    private static string[] Words(string text) =>
        text.Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
