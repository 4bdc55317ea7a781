using System.Collections.Frozen;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Recipes.Quantities;

/// <summary>All units the files may use, as data.</summary>
/// <remarks>
/// Factors of the SI and its prefixes: BIPM, The International System of Units (SI Brochure), 9th edition, tables 7 and 8.
/// Customary units: NIST Special Publication 811 (2008), appendix B; all used here are exact by definition.
/// </remarks>
internal static class UnitTable
{
    private const string Si = "SI Brochure, 9th ed.";
    private const string Nist = "NIST SP 811 (2008), appendix B.8, exact";
    private const string Practice = "common practice, no source";

    // 1 °dH is 10 mg/L of CaO and 1 °fH is 10 mg/L of CaCO3 (DIN 38409-6 and common usage; recalled), so both follow from molar masses.
    private static readonly double GermanDegree = 2 * 0.010 / FormulaParser.Parse("CaO").MolarMass.GramsPerMole;
    private static readonly double FrenchDegree = 2 * 0.010 / FormulaParser.Parse("CaCO3").MolarMass.GramsPerMole;

    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("g", Dimension.Mass, 1, Si, ["gm"], ["gram", "grams", "gramme", "grammes"]),
        new("kg", Dimension.Mass, 1e3, Si, ["Kg", "KG"], ["kilogram", "kilograms", "kilo", "kilos"]),
        new("mg", Dimension.Mass, 1e-3, Si, null, ["milligram", "milligrams"]),
        new("µg", Dimension.Mass, 1e-6, Si, ["ug", "mcg"], ["microgram", "micrograms"]),
        new("ng", Dimension.Mass, 1e-9, Si, null, ["nanogram", "nanograms"]),
        new("t", Dimension.Mass, 1e6, Si, null, ["tonne", "tonnes", "metric ton", "metric tons"]),
        new("lb", Dimension.Mass, 453.59237, Nist, ["lbs", "LB", "LBS"], ["pound", "pounds"]),
        new("oz", Dimension.Mass, 28.349523125, Nist, ["OZ"], ["ounce", "ounces"]),
        new("grain", Dimension.Mass, 0.06479891, Nist, null, ["grain", "grains"]),

        new("L", Dimension.Volume, 1, Si, ["l", "ltr", "Ltr", "ℓ", "dm³", "dm3"], ["liter", "liters", "litre", "litres"]),
        new("mL", Dimension.Volume, 1e-3, Si, ["ml", "cc", "cm³", "cm3"], ["milliliter", "milliliters", "millilitre", "millilitres"]),
        new("µL", Dimension.Volume, 1e-6, Si, ["µl", "uL", "ul"], ["microliter", "microliters", "microlitre", "microlitres"]),
        new("cL", Dimension.Volume, 1e-2, Si, ["cl"], ["centiliter", "centiliters", "centilitre", "centilitres"]),
        new("dL", Dimension.Volume, 1e-1, Si, ["dl"]),
        new("hL", Dimension.Volume, 100, Si, ["hl"], ["hectoliter", "hectoliters", "hectolitre", "hectolitres"]),
        new("m³", Dimension.Volume, 1000, Si, ["m3", "cbm"], ["cubic meter", "cubic meters", "cubic metre", "cubic metres"]),
        new(
            "US gal",
            Dimension.Volume,
            3.785411784,
            Nist,
            null,
            ["us gal", "gal us", "us gallon", "us gallons", "gallon us", "gallons us", "u.s. gal", "u.s. gallons"]),
        new("UK gal", Dimension.Volume, 4.54609, Nist, null,
            [
                "uk gal", "gal uk", "uk gallon", "uk gallons", "gallon uk", "gallons uk", "imp gal", "imperial gal", "imperial gallon",
                "imperial gallons", "gal imp",
            ]),
        new(
            "US fl oz",
            Dimension.Volume,
            3.785411784 / 128,
            Nist,
            null,
            ["us fl oz", "fl oz us", "us fluid ounce", "us fluid ounces", "us fl. oz.", "fl. oz. us"]),
        new("UK fl oz", Dimension.Volume, 4.54609 / 160, Nist, null,
            ["uk fl oz", "fl oz uk", "uk fluid ounce", "uk fluid ounces", "imp fl oz", "imperial fl oz", "uk fl. oz.", "fl. oz. uk"]),
        new("US qt", Dimension.Volume, 3.785411784 / 4, Nist, null, ["us qt", "qt us", "us quart", "us quarts"]),
        new(
            "UK qt",
            Dimension.Volume,
            4.54609 / 4,
            Nist,
            null,
            ["uk qt", "qt uk", "uk quart", "uk quarts", "imperial quart", "imperial quarts"]),
        new("US pt", Dimension.Volume, 3.785411784 / 8, Nist, null, ["us pt", "pt us", "us pint", "us pints"]),
        new(
            "UK pt",
            Dimension.Volume,
            4.54609 / 8,
            Nist,
            null,
            ["uk pt", "pt uk", "uk pint", "uk pints", "imperial pint", "imperial pints"]),

        // A cup from the kitchen is filled by eye.
        new("US cups", Dimension.Volume, 3.785411784 / 16, Nist, null, ["us cup", "us cups", "cup us", "cups us"]) { Uncertainty = 0.05 },
        new("metric cups", Dimension.Volume, 0.25, Practice, null, ["metric cup", "metric cups"]) { Uncertainty = 0.05 },
        new("tsp", Dimension.Volume, 5e-3, Practice, null, ["tsp", "teaspoon", "teaspoons"]) { Uncertainty = 0.10 },

        // 15 mL in most kitchens, 14.8 mL in the US, 20 mL in Australia (common practice, no source).
        new("tbsp", Dimension.Volume, 15e-3, Practice, null, ["tbsp", "tablespoon", "tablespoons", "tbs", "tblsp"]) { Uncertainty = 0.15 },
        new("drops", Dimension.Drops, 1, Practice, null, ["drop", "drops"]) { Uncertainty = 0.20 },

        new("mol", Dimension.Amount, 1, Si, null, ["mole", "moles"]),
        new("mmol", Dimension.Amount, 1e-3, Si, null, ["millimole", "millimoles"]),
        new("µmol", Dimension.Amount, 1e-6, Si, ["umol"], ["micromole", "micromoles"]),
        new("kmol", Dimension.Amount, 1e3, Si),
        new("eq", Dimension.Charge, 1, Si, ["Eq"], ["equivalent", "equivalents"]),
        new("meq", Dimension.Charge, 1e-3, Si, ["mEq", "me"], ["milliequivalent", "milliequivalents"]),
        new("µeq", Dimension.Charge, 1e-6, Si, ["ueq", "µEq", "uEq"]),

        new("M", Dimension.AmountConcentration, 1, Si, null, ["molar"]),
        new("mM", Dimension.AmountConcentration, 1e-3, Si, null, ["millimolar"]),
        new("µM", Dimension.AmountConcentration, 1e-6, Si, ["uM"], ["micromolar"]),

        new("% w/w", Dimension.MassFraction, 0.01, Si, ["%w/w", "% m/m", "%m/m", "wt%", "wt %", "% wt"], ["% by weight", "% by mass"]),
        new("% w/v", Dimension.MassConcentration, 10, "by definition g per 100 mL", ["%w/v", "% m/v", "%m/v"]),
        new("% v/v", Dimension.VolumeFraction, 0.01, Si, ["%v/v", "vol%", "vol %", "% vol"], ["% by volume"]) { Also = Dimension.Dose },

        new("°C", Dimension.Temperature, 1, Si, ["C", "degC", "deg C", "℃", "° C"], ["degrees celsius", "celsius"]),
        new("°F", Dimension.Temperature, 1
            / 1.8, Nist, ["F", "degF", "deg F", "℉", "° F"], ["degrees fahrenheit", "fahrenheit"]) { Offset = -32 / 1.8 },

        new("hours", Dimension.Duration, 1 / 24.0, Si, ["h"], ["hour", "hours"]),
        new("days", Dimension.Duration, 1, Si, ["d"], ["day", "days"]),
        new("weeks", Dimension.Duration, 7, "by definition", ["wk", "w"], ["week", "weeks"]),
        new("months", Dimension.Duration, 30.4375, "a twelfth of a Julian year of 365.25 days", ["mo"], ["month", "months"]),
        new("years", Dimension.Duration, 365.25, "the Julian year", ["yr", "y", "a"], ["year", "years"]),

        new("mS/cm", Dimension.Conductivity, 1, Si),
        new("dS/m", Dimension.Conductivity, 1, Si),
        new("S/m", Dimension.Conductivity, 10, Si),
        new("mS/m", Dimension.Conductivity, 0.01, Si),
        new("µS/cm", Dimension.Conductivity, 1e-3, Si, ["uS/cm"]),

        new("°dH", Dimension.HardnessDegree, GermanDegree, "10 mg/L of CaO", ["dH", "° dH", "°DH"]),
        new("°fH", Dimension.HardnessDegree, FrenchDegree, "10 mg/L of CaCO3", ["fH", "° fH", "°FH"]),

        // A hardness in grains per gallon is US without saying so (common practice, no source); it always counts as CaCO3.
        new("grains/gal", Dimension.MassConcentration, 0.06479891 / 3.785411784, Nist, ["gpg"],
            [
                "grain/gal", "grains/gal", "grains per gallon", "grains/us gal", "grain/us gal", "grains/gal us", "grain/gal us",
            ]) { Basis = "CaCO3" },
    ];

    public static IReadOnlyList<AmbiguousUnit> Ambiguous { get; } =
    [
        .. Gallons("gal", "gallon", "gallons"),
        .. FluidOunces("fl oz", "fl. oz.", "fl.oz.", "floz", "fluid ounce", "fluid ounces"),
        .. Tons("ton", "tons"),
        .. Quarters("qt", "quart", "quarts"),
        .. Pints("pt", "pint", "pints"),
        .. Cups("cup", "cups"),
        new("gr", ["g", "grain"], "'gr' is a gram to some and a grain of 0.0648 g to others, a factor of 15.43.", 1 / 0.06479891),
    ];

    /// <summary>Units by symbol, upper and lower case told apart.</summary>
    public static FrozenDictionary<string, Unit> BySymbol { get; } =
        Units.SelectMany(u => (u.Symbols ?? []).Append(u.Symbol).Select(s => (s, u)))
            .ToFrozenDictionary(p => p.s, p => p.u, StringComparer.Ordinal);

    /// <summary>Units by spelled-out name, upper and lower case alike.</summary>
    public static FrozenDictionary<string, Unit> ByWord { get; } =
        Units.SelectMany(u => (u.Words ?? []).Select(w => (w, u))).ToFrozenDictionary(p => p.w, p => p.u, StringComparer.OrdinalIgnoreCase);

    public static FrozenDictionary<string, AmbiguousUnit> AmbiguousBySpelling { get; } =
        Ambiguous.ToFrozenDictionary(a => a.Spelling, StringComparer.OrdinalIgnoreCase);

    private static IEnumerable<AmbiguousUnit> Gallons(params string[] spellings) => spellings.Select(s => new AmbiguousUnit(
        s, ["US gal", "UK gal"], "A US gallon is 3.785 L and a UK gallon 4.546 L, a factor of 1.201.", 4.54609 / 3.785411784));

    private static IEnumerable<AmbiguousUnit> FluidOunces(params string[] spellings) => spellings.Select(s => new AmbiguousUnit(
        s, ["US fl oz", "UK fl oz"], "A US fluid ounce is 29.57 mL and a UK fluid ounce 28.41 mL, a factor of 1.041.",
        3.785411784 / 128 / (4.54609 / 160)));

    private static IEnumerable<AmbiguousUnit> Quarters(params string[] spellings) => spellings.Select(s => new AmbiguousUnit(
        s, ["US qt", "UK qt"], "A US quart is 0.946 L and a UK quart 1.137 L, a factor of 1.201.", 4.54609 / 3.785411784));

    private static IEnumerable<AmbiguousUnit> Pints(params string[] spellings) => spellings.Select(s => new AmbiguousUnit(
        s, ["US pt", "UK pt"], "A US pint is 473 mL and a UK pint 568 mL, a factor of 1.201.", 4.54609 / 3.785411784));

    private static IEnumerable<AmbiguousUnit> Cups(params string[] spellings) => spellings.Select(s => new AmbiguousUnit(
        s, ["US cups", "metric cups"], "A US cup is 236.6 mL and a metric cup 250 mL, a factor of 1.057.", 250 / (3785.411784 / 16)));

    // NIST SP 811, appendix B.8: short ton 907.18474 kg, long ton 1016.0469088 kg.
    private static IEnumerable<AmbiguousUnit> Tons(params string[] spellings) => spellings.Select(s => new AmbiguousUnit(
        s, ["t"], "A tonne is 1000 kg, a US ton 907 kg and a UK ton 1016 kg, up to a factor of 1.120.", 1016.0469088 / 907.18474));
}
