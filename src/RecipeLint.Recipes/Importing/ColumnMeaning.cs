using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Importing;

/// <summary>What a column of a table holds.</summary>
/// <param name="Word">One of <see cref="ColumnWords.All"/>, or a key of a water analysis.</param>
/// <param name="Unit">The unit that its heading names for all its values; null when each value has its own, or none.</param>
public sealed record ColumnMeaning(string Word, string? Unit)
{
    /// <summary>"amount", "amount in g": as mappings write it.</summary>
    public override string ToString() => Unit is null ? Word : $"{Word} in {Unit}";

    /// <summary>Of "amount" or "amount in g"; null when the word is none of ours.</summary>
    public static ColumnMeaning? Read(string text)
    {
        var trimmed = text.Trim();
        var at = trimmed.IndexOf(" in ", StringComparison.OrdinalIgnoreCase);
        var (word, unit) = at < 0 ? (trimmed, null) : (trimmed[..at].TrimEnd(), trimmed[(at + 4)..].Trim());
        return ColumnWords.Find(word) is { } known ? new ColumnMeaning(known, unit is { Length: 0 } ? null : unit) : null;
    }

    /// <summary>
    /// What a heading says by itself: a word of ours, alone or with a unit behind it ("amount (g)", "Ca [mg/L]", "amount in g").
    /// Null for every other heading: what somebody calls a column is not guessed.
    /// </summary>
    public static ColumnMeaning? OfHeading(string heading)
    {
        if (Read(heading) is { } plain)
        {
            return plain;
        }

        var open = heading.IndexOfAny(['(', '[']);
        return open > 0 && heading[^1] == (heading[open] == '(' ? ')' : ']') && ColumnWords.Find(heading[..open].Trim()) is { } word
            && heading[(open + 1)..^1].Trim() is { Length: > 0 } unit
                ? new ColumnMeaning(word, unit)
                : null;
    }
}

/// <summary>The words for what a column holds.</summary>
public static class ColumnWords
{
    public const string Part = "part";
    public const string Step = "step";
    public const string Substance = "substance";
    public const string Amount = "amount";
    public const string Unit = "unit";
    public const string Assay = "assay";
    public const string Strength = "strength";
    public const string With = "with";
    public const string Id = "id";
    public const string Makes = "makes";
    public const string Dose = "dose";
    public const string Analyte = "analyte";
    public const string Value = "value";
    public const string Basis = "basis";
    public const string Sample = "sample";
    public const string Note = "note";

    /// <summary>Left out because the user says so.</summary>
    public const string Ignore = "ignore";

    /// <summary>Of a table of stocks.</summary>
    public static IReadOnlyList<string> OfStocks { get; } =
        [Part, Step, Substance, Amount, Unit, Assay, Strength, With, Id, Makes, Dose];

    /// <summary>Of a table of water analyses with one value a row.</summary>
    public static IReadOnlyList<string> OfWaters { get; } = [Sample, Analyte, Value, Unit, Basis];

    /// <summary>Keys of a water file beside its ions.</summary>
    public static IReadOnlyList<string> WaterKeys { get; } = ["EC", "pH", "alkalinity", "hardness", "date", "source"];

    public static IReadOnlyList<string> All { get; } = [.. OfStocks.Union(OfWaters), Note, Ignore];

    /// <summary>What people often call a column, and what it mostly is then: offered, never assumed.</summary>
    private static readonly (string Word, string[] Names)[] _usual =
    [
        (Substance, ["salt", "chemical", "fertiliser", "fertilizer", "compound", "product", "ingredient", "component", "name"]),
        (Amount, ["quantity", "qty", "weight", "mass", "grams", "weigh", "dosage"]),
        (Part, ["tank", "bottle", "stock", "container", "canister"]),
        (Unit, ["units", "uom"]),
        (Assay, ["purity", "grade"]),
        (With, ["scale", "tool", "instrument"]),
        (Makes, ["volume", "batch", "yield"]),
        (Analyte, ["parameter", "ion", "element", "test"]),
        (Value, ["result", "measured", "reading", "concentration"]),
        (Basis, ["as", "expressed as"]),
        (Sample, ["sample name", "water", "location", "point"]),
        (Note, ["notes", "remark", "remarks", "comment", "comments"]),
    ];

    /// <summary>A word of ours in our spelling; null for any other. Chemical symbols count as they are written.</summary>
    public static string? Find(string word) =>
        All.Concat(WaterKeys).FirstOrDefault(w => w.Equals(word, StringComparison.OrdinalIgnoreCase))
        ?? (Analytes.All.ContainsKey(word) ? word : null);

    /// <summary>True for a column that holds one value of an analysis by itself.</summary>
    public static bool IsWaterKey(string word) => WaterKeys.Contains(word) || Analytes.All.ContainsKey(word);

    /// <summary>True for an ion of an analysis.</summary>
    internal static bool IsIon(string word) => Analytes.All.ContainsKey(word);

    /// <summary>What a column of that heading mostly is; null when nothing is known of it.</summary>
    public static string? Usual(string heading)
    {
        var words = Slug.Of(heading).Split('-');
        return _usual
            .FirstOrDefault(u => u.Names.Any(n => n.Equals(heading, StringComparison.OrdinalIgnoreCase) || words.Contains(n))).Word;
    }
}
