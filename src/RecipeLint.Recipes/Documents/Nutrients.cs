using System.Collections.Frozen;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// Nutrients by the words people use for what they want in the tank. None of them can be weighed: a salt brings them. The salts named are
/// the usual ones in the trade (common practice, no source); a test holds that the catalogue has each and that it brings the element.
/// </summary>
public static class Nutrients
{
    /// <summary>To stand behind the word.</summary>
    public const string NoSubstance = "says what is wanted, not what is weighed; add a substance that brings it";

    private static readonly (string Symbol, string[] Words, string[] Bearers)[] _all =
    [
        ("N", ["N", "nitrogen", "nitrate", "NO3", "NO3-N"], ["calcium-nitrate-4h2o", "potassium-nitrate"]),
        ("N", ["ammonium", "NH4", "NH4-N"], ["ammonium-nitrate", "ammonium-sulfate"]),
        ("P", ["P", "phosphorus", "phosphor", "phosphate", "P2O5", "PO4"], ["monopotassium-phosphate", "monoammonium-phosphate"]),
        ("K", ["K", "potassium", "K2O"], ["potassium-nitrate", "potassium-sulfate"]),
        ("Ca", ["Ca", "calcium", "CaO"], ["calcium-nitrate-4h2o", "calcium-chloride-2h2o"]),
        ("Mg", ["Mg", "magnesium", "MgO"], ["magnesium-sulfate-7h2o", "magnesium-nitrate-6h2o"]),
        ("S", ["S", "sulfur", "sulphur", "sulfate", "sulphate", "SO4", "SO3"], ["magnesium-sulfate-7h2o", "potassium-sulfate"]),
        ("Fe", ["Fe", "iron"], ["fe-dtpa-hna", "fe-edta-na-3h2o"]),
        ("Mn", ["Mn", "manganese"], ["manganese-sulfate-h2o", "mn-edta"]),
        ("Zn", ["Zn", "zinc"], ["zinc-sulfate-7h2o", "zn-edta"]),
        ("Cu", ["Cu", "copper"], ["copper-sulfate-5h2o", "cu-edta"]),
        ("B", ["B", "boron", "B2O3"], ["boric-acid", "borax-10h2o"]),
        ("Mo", ["Mo", "molybdenum"], ["sodium-molybdate-2h2o", "ammonium-heptamolybdate-4h2o"]),
        ("Si", ["Si", "silicon", "silica", "SiO2"], ["potassium-silicate-29be", "potassium-silicate-powder"]),
        ("Cl", ["Cl", "chlorine", "chloride"], ["potassium-chloride", "calcium-chloride-2h2o"]),
        ("Ni", ["Ni", "nickel"], ["nickel-sulfate-6h2o"]),
        ("Co", ["Co", "cobalt"], ["cobalt-sulfate-7h2o"]),
    ];

    private static readonly FrozenDictionary<string, (string Symbol, string[] Bearers)> _byWord =
        _all.SelectMany(n => n.Words.Select(w => (w, n)))
            .ToFrozenDictionary(p => p.w, p => (p.n.Symbol, p.n.Bearers), StringComparer.OrdinalIgnoreCase);

    /// <summary>Every word with the element it means and the ids of substances that bring it.</summary>
    public static IEnumerable<(string Word, string Symbol, IReadOnlyList<string> Bearers)> All =>
        _byWord.Select(p => (p.Key, p.Value.Symbol, (IReadOnlyList<string>)p.Value.Bearers));

    /// <summary>
    /// Ids of usual substances that bring a nutrient named by its symbol, its English name or its oxide; empty for any other word.
    /// </summary>
    public static IReadOnlyList<string> Bearers(string word) => _byWord.TryGetValue(word.Trim(), out var nutrient) ? nutrient.Bearers : [];
}
