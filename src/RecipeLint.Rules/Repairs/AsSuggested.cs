using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Repairs that write what reading suggests: the nearest name, a unit, one of several readings.</summary>
internal static class AsSuggested
{
    private const int Most = 4;

    /// <summary>Endings of names that one letter turns into another compound.</summary>
    private static readonly string[] _tellingEndings = ["ate", "ite", "ide"];

    /// <summary>One repair for each suggestion. A single one, or one far nearer than the others, is safe; several are readings that only the writer can choose from.</summary>
    /// <param name="everSafe">False where even a single suggestion is a guess at what is meant.</param>
    public static IEnumerable<RepairProposal> Of(Finding finding, RepairContext context, bool everSafe = true)
    {
        var texts = finding.Suggestions.Select(s => s.Trim('"')).Distinct(StringComparer.Ordinal).Take(Most).ToList();
        var place = finding.Place with { Range = null };
        var written = Written(place, context);
        foreach (var text in texts)
        {
            JsonEdit edit = place.Part == PlacePart.Key ? new JsonEdit.RenameKey(place, text) : new JsonEdit.ReplaceValue(place, JsonDraft.Of(text));
            var title = $"Write '{text}' instead of '{written}'.";
            var stands = texts.Count == 1 || (text == texts[0] && IsFarNearer(written, texts));
            yield return stands && everSafe && !MayBeAnotherThing(written, text)
                ? Repair.Safe("as-suggested", title, edit)
                : Repair.Chemistry(texts.Count == 1 ? "as-suggested" : $"read-as-{Slug(text)}", title, edit);
        }
    }

    /// <summary>Small letters, digits, points and single hyphens.</summary>
    public static string Slug(string text)
    {
        var words = string.Concat(text.Select(c => char.IsAsciiLetterOrDigit(c) || c == '.' ? char.ToLowerInvariant(c) : ' '));
        return string.Join('-', words.Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>True when the first suggestion is a slip of one or two letters and none of the others nearly as near.</summary>
    private static bool IsFarNearer(string written, List<string> texts)
    {
        var distances = texts.Select(t => EditDistance.Of(written.ToLowerInvariant(), t.ToLowerInvariant())).ToList();
        return distances[0] <= 2 && distances.Skip(1).All(d => d >= distances[0] + 3);
    }

    /// <summary>
    /// True when the two differ in a digit or in an ending that makes another compound of a name: nitrite is no misspelt nitrate, and a formula
    /// with another number in it is another formula.
    /// </summary>
    private static bool MayBeAnotherThing(string written, string text)
    {
        static string Digits(string s) => string.Concat(s.Where(char.IsAsciiDigit));
        static string Endings(string s) => string.Concat(s.ToLowerInvariant().Split(' ', '-', '_', '.').Select(w => _tellingEndings.FirstOrDefault(e => w.EndsWith(e, StringComparison.Ordinal)) ?? ""));
        return Digits(written) != Digits(text) || (Endings(written) is { Length: > 0 } endings && endings != Endings(text));
    }

    private static string Written(Place place, RepairContext context) =>
        place.Part == PlacePart.Key ? place.Pointer.Tokens[^1] : context.Item(place)?.Text ?? "";
}
