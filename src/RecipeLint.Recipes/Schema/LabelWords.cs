using System.Collections.Frozen;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>
/// Lines of a guaranteed analysis as bags print them ("Total nitrogen (N)", "of which nitrate", "Fe (EDTA)"), and the keys that hold them.
/// </summary>
internal static partial class LabelWords
{
    /// <summary>Words that say how a content was measured or counted, not what it is of.</summary>
    private static readonly FrozenSet<string> _fillers = new[]
    {
        "total", "soluble", "water", "in", "available", "as", "the", "of", "which", "thereof", "from", "content", "guaranteed", "minimum",
        "min", "form", "elemental", "element", "derived",
    }.ToFrozenSet(StringComparer.Ordinal);

    private static readonly (string Key, string[] Words)[] _nitrogenForms =
    [
        ("NO3-N", ["nitrate", "nitric"]),
        ("NH4-N", ["ammonium", "ammoniacal", "ammonia", "ammonic"]),
        ("urea-N", ["urea", "ureic", "ureal", "carbamide", "amide", "amidic"]),
    ];

    private static readonly FrozenDictionary<string, string> _names = new Dictionary<string, string>
    {
        ["nitrogen"] = "N",
        ["phosphorus"] = "P",
        ["phosphorus pentoxide"] = "P2O5",
        ["phosphoric anhydride"] = "P2O5",
        ["potassium"] = "K",
        ["potassium oxide"] = "K2O",
        ["potash"] = "K2O",
        ["calcium"] = "Ca",
        ["calcium oxide"] = "CaO",
        ["magnesium"] = "Mg",
        ["magnesium oxide"] = "MgO",
        ["sulfur"] = "S",
        ["sulphur"] = "S",
        ["sulfur trioxide"] = "SO3",
        ["sulphur trioxide"] = "SO3",
        ["sulfuric anhydride"] = "SO3",
        ["sulphuric anhydride"] = "SO3",
        ["iron"] = "Fe",
        ["manganese"] = "Mn",
        ["zinc"] = "Zn",
        ["copper"] = "Cu",
        ["boron"] = "B",
        ["molybdenum"] = "Mo",
        ["silicon"] = "Si",
        ["silicon dioxide"] = "SiO2",
        ["silica"] = "SiO2",
        ["sodium"] = "Na",
        ["chloride"] = "Cl",
        ["chlorine"] = "Cl",
        ["cobalt"] = "Co",
        ["nickel"] = "Ni",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly string[] _agents =
        ["EDTA", "DTPA", "HEDTA", "HEEDTA", "EDDHA", "EDDHMA", "EDDHSA", "EDDCHA", "HBED", "IDHA", "EDDS"];

    private static readonly string[] _metals = ["Fe", "Mn", "Zn", "Cu"];

    /// <summary>Whether these are the keys of a label.</summary>
    public static bool AreOfLabel(IReadOnlyList<string> known) => known.Contains("chelatedWith");

    /// <summary>The key that holds such a line; null where it is none.</summary>
    public static string? Key(string written, IReadOnlyList<string> known)
    {
        var words = Words(written);
        var left = words.Where(w => !_fillers.Contains(w)).ToList();
        var form = left.Where(w => w is not ("n" or "nitrogen")).ToList();
        if (form is [var only] && _nitrogenForms.FirstOrDefault(f => f.Words.Contains(only)).Key is { } nitrogen)
        {
            return nitrogen;
        }

        if (form is ["no3"] or ["nh4"] && left.Count == 2)
        {
            return form[0] == "no3" ? "NO3-N" : "NH4-N";
        }

        // The symbol in brackets decides; a metal with its agent in brackets is another line.
        var symbols = left.Select(w => known.FirstOrDefault(k => k.Equals(w, StringComparison.OrdinalIgnoreCase) && IsContent(k)))
            .OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        if (symbols is [var symbol] && Agent(words) is null && (left.Count == 1 || left.All(w => IsAbout(w, symbol))))
        {
            return symbol;
        }

        // "K20": a nought for the letter.
        return _names.TryGetValue(string.Join(' ', left), out var named) ? named
            : left is [var one] && one.Replace('0', 'O') is var lettered
                ? known.FirstOrDefault(k => k.Equals(lettered, StringComparison.OrdinalIgnoreCase) && IsContent(k))
                : null;
    }

    /// <summary>What to write instead of a line that is no single key of a label; null for any other.</summary>
    public static string? Advice(string key, JsonItem value, JsonItem holder)
    {
        var words = Words(key);
        var shown = value.Kind == JsonKind.Text ? Wording.Shorten(value.Text.Trim()) : "10 %";
        if (string.Concat(words) is "npk" or "np2o5k2o")
        {
            return Grades(value.Kind == JsonKind.Text ? value.Text : "");
        }

        if (Agent(words) is { } agent && Metal(words) is { } metal)
        {
            var both = holder["chelatedWith"] is null
                ? $"write \"{metal}\": \"{shown}\" and \"chelatedWith\": \"{agent}\"."
                : holder["chelatedWith"] is { Kind: JsonKind.Text } there && there.Text.Equals(agent, StringComparison.OrdinalIgnoreCase)
                    ? $"write \"{metal}\": \"{shown}\"."
                    : "a label here has one agent, so give what another one binds as a product of its own.";
            return $"The agent stands beside the metals: {both}";
        }

        if (words.Contains("chelated"))
        {
            return $"What is chelated stands with its metal: \"Fe\": {{\"total\": \"{shown}\", \"chelated\": \"{shown}\"}}.";
        }

        return words is ["no3"] or ["nh4"]
            ? $"Labels count {(words[0] == "no3" ? "nitrate" : "ammonium")} as nitrogen: write \"{words[0].ToUpperInvariant()}-N\": "
                + $"\"{shown}\" if yours does, else {(words[0] == "no3" ? "0.226" : "0.776")} times the figure."
            : null;
    }

    /// <summary>A label that is one text, such as "15-5-15", as an object.</summary>
    public static string? AsGrades(JsonItem label) =>
        label.Kind == JsonKind.Text && GradeText().IsMatch(label.Text) ? Grades(label.Text) : null;

    private static string Grades(string text)
    {
        var figures = GradeText().Match(text);
        var (n, p, k) = figures.Success
            ? (figures.Groups[1].Value, figures.Groups[2].Value, figures.Groups[3].Value)
            : ("15", "5", "15");
        return $"Write the three figures apart. Most bags count oxides: \"basis\": \"oxide\", \"N\": \"{n} %\", \"P2O5\": \"{p} %\", "
            + $"\"K2O\": \"{k} %\"; where yours counts elements, \"basis\": \"element\" with \"P\" and \"K\".";
    }

    private static bool IsContent(string key) => key is not ("basis" or "percent" or "nitrogen" or "chelatedWith" or "note");

    /// <summary>Whether a word names the element of a symbol: "iron" beside "Fe", "potash" beside "K2O".</summary>
    private static bool IsAbout(string word, string symbol) =>
        word.Equals(symbol, StringComparison.OrdinalIgnoreCase)
        || word is "phosphate" or "oxide" or "pentoxide" or "trioxide" or "dioxide" or "anhydride" or "phosphoric" or "sulfuric"
        || (_names.TryGetValue(word, out var named) && named[0] == symbol[0]);

    private static string? Agent(IReadOnlyList<string> words) =>
        _agents.FirstOrDefault(a => words.Any(w => w.EndsWith(a, StringComparison.OrdinalIgnoreCase)
            && (w.Length == a.Length || _metals.Contains(w[..^a.Length], StringComparer.OrdinalIgnoreCase))));

    private static string? Metal(IReadOnlyList<string> words) => _metals.FirstOrDefault(m => words.Any(w =>
        w.Equals(m, StringComparison.OrdinalIgnoreCase)
        || (_names.TryGetValue(w, out var named) && named == m)
        || _agents.Any(a => w.Equals(m + a, StringComparison.OrdinalIgnoreCase))));

    private static List<string> Words(string key) =>
        [.. WordBreaks().Split(key.ToLowerInvariant()).Where(w => w.Length > 0)];

    [GeneratedRegex("[^\\p{L}\\p{Nd}]+")]
    private static partial Regex WordBreaks();

    [GeneratedRegex(
        @"^\s*(\d{1,2}(?:[.,]\d+)?)\s*[-–:/+]\s*(\d{1,2}(?:[.,]\d+)?)\s*[-–:/+]\s*(\d{1,2}(?:[.,]\d+)?)", RegexOptions.CultureInvariant)]
    private static partial Regex GradeText();
}
