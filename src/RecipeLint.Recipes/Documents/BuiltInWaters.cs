namespace RecipeLint.Recipes.Documents;

/// <summary>
/// Waters that need no analysis. All three count as pure water: what little rain and reverse-osmosis water hold differs from roof to roof
/// and from membrane to membrane, so a figure for them would be a guess; whoever knows theirs writes a *.water.json.
/// </summary>
public static class BuiltInWaters
{
    private static readonly WaterDocument[] Waters =
        [Pure("distilled", "Distilled water"), Pure("reverse-osmosis", "Reverse-osmosis water"), Pure("rain", "Rain water")];

    /// <summary>The names files may use, in the order they are offered.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Waters.Select(w => w.BuiltInName!)];

    /// <summary>What the trade calls them, in letters and figures only.</summary>
    private static readonly Dictionary<string, string> OtherNames = new(StringComparer.OrdinalIgnoreCase)
    {
        ["ro"] = "reverse-osmosis",
        ["rowater"] = "reverse-osmosis",
        ["osmosis"] = "reverse-osmosis",
        ["osmosiswater"] = "reverse-osmosis",
        ["di"] = "distilled",
        ["diwater"] = "distilled",
        ["deionised"] = "distilled",
        ["deionisedwater"] = "distilled",
        ["deionized"] = "distilled",
        ["deionizedwater"] = "distilled",
        ["demineralised"] = "distilled",
        ["demineralisedwater"] = "distilled",
        ["demineralized"] = "distilled",
        ["demineralizedwater"] = "distilled",
        ["demi"] = "distilled",
        ["pure"] = "distilled",
        ["purewater"] = "distilled",
        ["distilledwater"] = "distilled",
        ["destilled"] = "distilled",
        ["rainwater"] = "rain",
    };

    /// <summary>The name that files use for a water by another word for it ("RO"); null for any other text.</summary>
    public static string? NameFor(string word) => OtherNames.GetValueOrDefault(string.Concat(word.Where(char.IsAsciiLetterOrDigit)));

    /// <summary>Waters that only an analysis tells of.</summary>
    public static bool DiffersByPlace(string word) => new[] { "tap", "well", "city", "mains", "river", "borehole", "municipal" }
        .Any(w => word.Contains(w, StringComparison.OrdinalIgnoreCase));

    /// <summary>The water of that name, exact spelling; null when there is none.</summary>
    public static WaterDocument? Find(string name) => Array.Find(Waters, w => w.BuiltInName == name);

    private static WaterDocument Pure(string name, string words) => new() { File = "", Name = words, BuiltInName = name };
}
