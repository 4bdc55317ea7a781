using System.Collections.Frozen;

namespace RecipeLint.Recipes.Quantities;

/// <summary>Units of the world beside those the files may use: a known unit is no misspelling of another.</summary>
/// <remarks>SI Brochure, 9th ed., tables 2 to 8; customary and kitchen measures: NIST SP 811 (2008), appendix B, and common
/// practice.</remarks>
internal static class KnownUnits
{
    private static readonly string[] _prefixes =
    [
        "", "q", "r", "y", "z", "a", "f", "p", "n", "µ", "u", "m", "c", "d", "da", "h", "k", "M", "G", "T", "P", "E", "Z", "Y", "R", "Q",
    ];

    private static readonly string[] _prefixed =
    [
        "m", "g", "s", "A", "K", "mol", "cd", "L", "l", "Hz", "N", "Pa", "J", "W", "C", "V", "F", "S", "T", "lm", "lx", "Bq", "eq", "Eq",
        "M", "osmol", "bar", "cal", "Wh", "t", "m3", "m³",
    ];

    private static readonly string[] _others =
    [
        "tbsp", "tablespoon", "tablespoons", "tbs", "tblsp", "dsp", "dessertspoon", "tsp", "teaspoon", "cup", "cups", "pt", "pint",
        "pints", "qt", "quart", "quarts", "gill", "gills",
        "fl dr", "dr", "dram", "drams", "drachm", "scruple", "minim", "minims", "pinch", "dash", "smidgen", "handful", "handfuls",
        "scoop", "scoops", "cap", "capful", "shot",
        "jigger", "glass", "bottle", "bag", "sack", "bucket", "barrel", "bbl", "bushel", "bu", "peck", "pk", "gal", "gallon", "gallons",
        "fl oz", "floz", "oz", "lb", "lbs", "st",
        "stone", "cwt", "hundredweight", "ton", "tons", "tonne", "slug", "carat", "ct", "gr", "grain", "pennyweight", "dwt", "troy oz",
        "ozt",
        "in", "inch", "inches", "ft", "foot", "feet", "yd", "yard", "mi", "mile", "acre", "acres", "ha", "hectare", "cu ft", "cu in",
        "cubic foot", "cubic feet",
        "cubic inch", "min", "minute", "minutes", "sec", "second", "seconds", "h", "hr", "hrs", "d", "day", "wk", "yr", "mo",
        "ppm", "ppb", "ppt", "%", "percent", "per cent", "‰", "°C", "°F", "°R", "K", "kelvin", "°dH", "°fH", "°e", "°Clark", "°Bé",
        "°Brix", "°Oe", "N", "normal", "osm",
        "psi", "atm", "torr", "mmHg", "inHg", "IU", "CFU", "NTU", "hp", "BTU", "cal", "kcal", "TDS", "EC", "CF", "mho", "mmho", "umho",
    ];

    private static readonly FrozenSet<string> _exact = _prefixes.SelectMany(p => _prefixed.Select(u => p + u))
        .Concat(_others)
        .Concat(UnitTable.BySymbol.Keys).Concat(UnitTable.ByWord.Keys).Concat(UnitTable.AmbiguousBySpelling.Keys)
        .ToFrozenSet(StringComparer.Ordinal);

    private static readonly ILookup<string, string> _folded = _exact.ToLookup(u => u.ToUpperInvariant(), StringComparer.Ordinal);

    /// <summary>All of them, in ordinal order.</summary>
    public static IEnumerable<string> All => _exact.Order(StringComparer.Ordinal);

    /// <summary>True for a unit spelled so.</summary>
    public static bool IsKnown(string unit) => _exact.Contains(unit);

    /// <summary>The units that differ from a text in upper and lower case only.</summary>
    public static IEnumerable<string> SameLetters(string unit) => _folded[unit.ToUpperInvariant()];
}
