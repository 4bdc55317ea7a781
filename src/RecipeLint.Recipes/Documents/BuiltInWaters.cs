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

    /// <summary>The water of that name, exact spelling; null when there is none.</summary>
    public static WaterDocument? Find(string name) => Array.Find(Waters, w => w.BuiltInName == name);

    private static WaterDocument Pure(string name, string words) => new() { File = "", Name = words, BuiltInName = name };
}
