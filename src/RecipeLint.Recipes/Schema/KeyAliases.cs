using System.Collections.Frozen;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>
/// Keys that people write for another one, where spelling does not find it or finds a wrong one. Words for the same thing may be renamed
/// as they stand; a key that counts as something else ("P2O5") only together with its value.
/// </summary>
internal static class KeyAliases
{
    /// <summary>Same thing, other word: by what is written, the keys it can stand for.</summary>
    private static readonly FrozenDictionary<string, string[]> _sameThing = new Dictionary<string, string[]>
    {
        ["grams"] = ["amount"],
        ["weight"] = ["amount"],
        ["mass"] = ["amount"],
        ["quantity"] = ["amount"],
        ["qty"] = ["amount"],
        ["how much"] = ["amount"],
        ["salt"] = ["add"],
        ["substance"] = ["add"],
        ["chemical"] = ["add"],
        ["ingredient"] = ["add"],
        ["material"] = ["add"],
        ["ingredients"] = ["steps", "doses"],
        ["additions"] = ["steps"],
        ["salts"] = ["steps"],
        ["procedure"] = ["steps"],
        ["stocks"] = ["doses"],
        ["parts"] = ["doses"],
        ["volume"] = ["makes"],
        ["yield"] = ["makes"],
        ["batch"] = ["makes"],
        ["tank"] = ["final"],
        ["storage"] = ["keep"],
        ["store"] = ["keep"],
        ["purity"] = ["assay"],
        ["fill"] = ["topUp"],
        ["fill up"] = ["topUp"],
        ["water"] = ["pour"],
        ["plant"] = ["crop"],
        ["title"] = ["name"],
        ["n-no3"] = ["NO3-N"],
        ["no3n"] = ["NO3-N"],
        ["nitrate-n"] = ["NO3-N"],
        ["n-nh4"] = ["NH4-N"],
        ["nh4n"] = ["NH4-N"],
        ["ammonium-n"] = ["NH4-N"],
        ["nitrogen"] = ["N"],
        ["phosphorus"] = ["P"],
        ["potassium"] = ["K"],
        ["calcium"] = ["Ca"],
        ["magnesium"] = ["Mg"],
        ["sulfur"] = ["S"],
        ["sulphur"] = ["S"],
        ["iron"] = ["Fe"],
        ["manganese"] = ["Mn"],
        ["zinc"] = ["Zn"],
        ["copper"] = ["Cu"],
        ["boron"] = ["B"],
        ["molybdenum"] = ["Mo"],
        ["silicon"] = ["Si"],
        ["sodium"] = ["Na"],
        ["chlorine"] = ["Cl"],
        ["chloride"] = ["Cl"],
        ["fluoride"] = ["F"],
        ["sulfate"] = ["SO4"],
        ["sulphate"] = ["SO4"],
        ["nitrate"] = ["NO3"],
        ["ammonium"] = ["NH4"],
        ["phosphate"] = ["PO4"],
        ["bicarbonate"] = ["HCO3"],
        ["hydrogencarbonate"] = ["HCO3"],
        ["carbonate"] = ["CO3"],
        ["conductivity"] = ["EC", "ec"],
        ["total hardness"] = ["hardness"],
        ["gh"] = ["hardness"],
        ["kh"] = ["alkalinity"],
        ["alk"] = ["alkalinity"],
        ["total alkalinity"] = ["alkalinity"],
        ["balances"] = ["scales"],
        ["balance"] = ["scales"],
        ["exclude"] = ["ignore"],
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Another way to count: the key that holds it and what the value has to say.</summary>
    private static readonly FrozenDictionary<string, (string Key, string Basis)> _otherBasis = new Dictionary<string, (string, string)>
    {
        ["P2O5"] = ("P", "P2O5"),
        ["PO4"] = ("P", "PO4"),
        ["K2O"] = ("K", "K2O"),
        ["CaO"] = ("Ca", "CaO"),
        ["MgO"] = ("Mg", "MgO"),
        ["SO3"] = ("S", "SO3"),
        ["SO4"] = ("S", "SO4"),
        ["SiO2"] = ("Si", "SiO2"),
        ["B2O3"] = ("B", "B2O3"),
        ["NO3"] = ("NO3-N", "NO3"),
        ["NH4"] = ("NH4-N", "NH4"),
        ["CaCO3"] = ("alkalinity", "CaCO3"),
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Keys that are no other word for anything here, and what to do instead.</summary>
    private static readonly FrozenDictionary<string, (string Needs, string Advice)> _elsewhere = new Dictionary<string, (string, string)>
    {
        ["TDS"] = ("EC", "A meter that shows TDS measures the conductivity: write \"EC\" in mS/cm, the ppm divided by 500 or by 700, "
            + "whichever the meter means."),
        ["ppm"] = ("EC", "Write \"EC\" in mS/cm, the ppm divided by 500 or by 700, whichever the meter means."),
        ["NPK"] =
            ("targets", "Write what the plants are to get under \"targets\", element by element, such as \"P\": \"90 mg/L as P2O5\"."),
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>What to write instead of a key that has no counterpart; null for any other key.</summary>
    public static string? Elsewhere(string key, IReadOnlyList<string> known) =>
        _elsewhere.TryGetValue(key, out var other) && known.Contains(other.Needs) ? other.Advice : null;

    /// <summary>The key that means the same and that this object may have; null where none does.</summary>
    public static string? SameThing(string key, IReadOnlyList<string> known) =>
        _sameThing.TryGetValue(key.Replace('_', ' '), out var meant) ? meant.FirstOrDefault(known.Contains)
        : WithoutCharge(key) is var bare && bare.Length < key.Length && known.Contains(bare) ? bare
        : null;

    /// <summary>The element that a word names ("calcium", "sulphur"), where its symbol is known; null for any other word, ions among
    /// them.</summary>
    public static string? Symbol(string word, IEnumerable<string> known) =>
        _sameThing.TryGetValue(word, out var meant) && meant is [{ Length: <= 2 } symbol]
            && !word.EndsWith("ide", StringComparison.OrdinalIgnoreCase) && known.Contains(symbol) ? symbol : null;

    /// <summary>The ion without its charge: "Ca" for "Ca2+" and "Ca++", "SO4" for "SO4 2-"; any other text as it is.</summary>
    private static string WithoutCharge(string key)
    {
        var bare = key.TrimEnd('+', '-', '²', '³', '⁺', '⁻');
        if (bare.Length == key.Length)
        {
            return key;
        }

        // The figure before the sign belongs to the charge where it follows a symbol or a blank, but not in "NO3-".
        var symbol = bare.TrimEnd('2', '3');
        return symbol.EndsWith(' ') || (symbol.Length is 1 or 2 && symbol.All(char.IsAsciiLetter) && symbol is not "NO")
            ? symbol.TrimEnd()
            : bare;
    }

    /// <summary>
    /// A sentence for a key that counts otherwise, with the value rewritten; null where it is no such key or the object has no key for it.
    /// </summary>
    public static string? OtherBasis(string key, JsonItem value, IReadOnlyList<string> known, JsonItem holder)
    {
        if (!_otherBasis.TryGetValue(key, out var meant) || !known.Contains(meant.Key))
        {
            return null;
        }

        var amount = value is { Kind: JsonKind.Text } && !value.Text.Contains(" as ", StringComparison.Ordinal)
            ? value.Text.Trim()
            : "90 mg/L";
        var line = $"\"{meant.Key}\": \"{Wording.Shorten(amount)} as {meant.Basis}\"";
        return holder[meant.Key] is null
            ? $"What it counts as stands in the value: write {line}."
            : $"\"{meant.Key}\" is there already; what it counts as stands in its value, such as {line}.";
    }

    /// <summary>
    /// Whether a key may be a slip of another. Formulas and symbols are no slips of each other: "NO2" is not a mistyped "NO3", nor "Al" a
    /// mistyped "Cl", and renaming one to the other would change what the file says.
    /// </summary>
    public static bool MayBeSlip(string key, string other) =>
        !(IsChemical(key) && IsChemical(other)) || Fold(key) == Fold(other);

    private static bool IsChemical(string text) =>
        text.Length is > 0 and <= 6 && char.IsAsciiLetter(text[0]) && (text.Length <= 2 || text.Any(char.IsAsciiDigit));

    private static string Fold(string text) => string.Concat(text.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
}
