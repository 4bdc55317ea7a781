namespace RecipeLint.Fuzz;

/// <summary>What people and enemies write.</summary>
internal static class Words
{
    public static readonly string[] Numbers =
    [
        "0", "-0", "1", "-1", "2", "7", "10", "14", "100", "1000", "0.1", "0.5", "1e-3", "1e-9", "1e-30", "1e-300", "4.9e-324", "1e-400", "1e9", "1e15", "1e30", "1e300",
        "1.7976931348623157e308", "1e309", "1e400", "-1e300", "2147483647", "2147483648", "9223372036854775807", "9223372036854775808", "79228162514264337593543950336",
        "0.30000000000000004", "1.0000000000000000000000000000000001", "00", "01", ".5", "5.", "1.", "+1", "0x10", "1_000", "1,5", "1.000", "1 000", "1'000", "½", "٣", "１", "NaN", "Infinity", "∞",
    ];

    /// <summary>What overflows or vanishes once it is multiplied with another: picked as often as all other numbers together.</summary>
    public static readonly string[] Extremes =
        ["0", "-1", "1e-320", "1e-300", "1e-30", "1e-15", "1e15", "1e16", "1e30", "1e154", "1e300", "1.7976931348623157e308", "1e400", "99999999999999999999"];

    public static readonly string[] Units =
    [
        "g", "mg", "kg", "µg", "ug", "μg", "mL", "L", "l", "ml", "cc", "gal", "oz", "fl oz", "lb", "tsp", "tbsp", "cup", "drop", "drops", "pinch", "mmol", "mol", "mmol/L", "meq/L", "mg/L", "g/L", "ppm",
        "%", "% w/w", "% w/v", "mg/kg", "mS/cm", "µS/cm", "dS/m", "°C", "°F", "K", "°dH", "°fH", "h", "days", "day", "weeks", "months", "years", "mL/L", "1:100", "1:200", "g/mL", "kg/L", "g/mol",
        "M", "mM", "N", "ppb", "t", "m3", "m³", "L/min", "pH", "EC", "", " ", "G", "Mg", "ML",
    ];

    public static readonly string[] Pieces =
    [
        "..", "±", "-", "–", "—", "+", "+-", "/", "*", "·", "•", "×", "(", ")", "[", "]", "{", "}", ",", ";", ":", "^", "~", "about ", "ca. ", "to", "until", "as ", "of ", "in ", "at ", "and ", "\0", "\u202e", "\u200b",
        "\ufeff", "\u001b[2J", "\u009b", "\t", "\n", "\r", "\\", "\"", "'", "`", "|", "<b>", "&", "::error::", "$(x)", "{0}", "%s", "🌱", "é", "e\u0301", "\ud800", "ﬁ", "İ", "ı", "ß", "½", "₂", "²⁺", "⁻", "=1+1", "@x", "../", "//",
    ];

    public static readonly string[] Formulas =
    [
        "KNO3", "Ca(NO3)2·4H2O", "Ca(NO3)2.4H2O", "MgSO4.7H2O", "K2SO4", "KH2PO4", "NH4NO3", "H3PO4", "HNO3", "KOH", "FeSO4·7H2O", "Fe-DTPA", "Fe-EDTA", "Fe-EDDHA", "H3BO3", "ZnSO4", "CuSO4·5H2O", "MnSO4·H2O",
        "Na2MoO4·2H2O", "CaCl2", "K2SiO3", "urea", "citric-acid", "5Ca(NO3)2·NH4NO3·10H2O", "SO4^2-", "Ca2+", "NH4+", "0.5H2O", "½H2O", "calcium-nitrate-4h2o", "potassium-nitrate", "magnesium-sulfate-7h2o", "water",
        "H", "O", "Uuo", "Xx", "He", "C60", "C12H22O11", "H2O2", "NaOCl", "ClO2", "K4P2O7", "(NH4)6Mo7O24·4H2O",
    ];

    public static readonly string[] Signs =
    [
        "white needles", "white powder", "brown", "rust", "red", "orange", "green", "blue", "black", "slime", "smell of eggs", "rotten", "fizz", "no fizz with vinegar", "gas", "bulging", "hot", "crystals", "cloudy", "milky", "flakes", "mould",
        "fuzzy", "at the bottom", "floating", "after a cold night", "2 weeks", "next morning", "at once", "dissolves when warm", "does not dissolve in acid", "soft", "hard", "film", "oil", "yellow", "pink", "precipitate", "sediment", "ring", "not", "no",
        "never", "and", "but", "with", "then", "pH 6.9", "EC 1.8 mS/cm at 1:100", "1 L weighs 1.12 kg", "clear", "nothing", "ammonia", "chlorine", "bleach", "sulfur", "steam", "bang", "leaks",
    ];

    /// <summary>A text of a few pieces of all sorts, mostly well formed.</summary>
    public static string Text(Random random, params string[][] lists)
    {
        var count = random.Next(1, 7);
        var text = "";
        for (var i = 0; i < count; i++)
        {
            text += Pick(random, Pick(random, lists));
            text += random.Next(3) == 0 ? "" : " ";
        }

        return random.Next(400) == 0 ? string.Concat(Enumerable.Repeat(text, random.Next(1, 3000))) : Scratch(random, text);
    }

    /// <summary>A well formed quantity, then perhaps with a slip.</summary>
    public static string Quantity(Random random)
    {
        var text = Pick(random, Numbers) + Pick(random, "", " ", " ", "  ", "\u00a0") + Pick(random, Units);
        if (random.Next(5) == 0)
        {
            text += Pick(random, "..", " ± ", " to ", " + ", "-", " of ", " as ") + Pick(random, Numbers) + " " + Pick(random, Units);
        }

        return random.Next(3) == 0 ? Scratch(random, text) : text;
    }

    /// <summary>Sometimes drops, doubles or puts in a character or piece.</summary>
    public static string Scratch(Random random, string text)
    {
        while (random.Next(2) == 0 && text.Length > 0)
        {
            var at = random.Next(text.Length);
            text = random.Next(4) switch
            {
                0 => text.Remove(at, 1),
                1 => text.Insert(at, Pick(random, Pieces)),
                2 => text.Insert(at, text[at].ToString()),
                _ => text.Insert(at, ((char)random.Next(0x20, random.Next(2) == 0 ? 0x7f : 0x2fff)).ToString()),
            };
        }

        return text;
    }

    public static T Pick<T>(Random random, params IReadOnlyList<T> list) => list[random.Next(list.Count)];
}
