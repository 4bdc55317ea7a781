using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Rewording;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Repairs that write what reading suggests: the nearest name, a unit, one of several readings.</summary>
internal static class AsSuggested
{
    private const int Most = 4;

    /// <summary>Problems where even a single suggestion is a guess at what is meant.</summary>
    private static readonly ProblemKind[] _neverSafe =
    [
        ProblemKind.NumberWithoutUnit, ProblemKind.AmbiguousNumber, ProblemKind.AmbiguousUnit, ProblemKind.AmbiguousSubstance,
        ProblemKind.WrongDimension,
        ProblemKind.MissingReference, ProblemKind.ReferenceLeavesRepository, ProblemKind.ImpossibleAnalysis,
    ];

    /// <summary>
    /// One repair for each suggestion. The only one that says the very same thing as what is written is safe; all others are readings
    /// that only
    /// the writer can choose from.
    /// </summary>
    /// <param name="everSafe">False where even a single suggestion is a guess at what is meant.</param>
    public static IEnumerable<RepairProposal> Of(Finding finding, RepairContext context, bool everSafe = true)
    {
        var texts = finding.Suggestions.Select(s => s.Trim('"')).Distinct(StringComparer.Ordinal).Take(Most).ToList();
        var place = finding.Place with { Range = null };
        var written = Written(place, context);
        var same = everSafe ? texts.Where(t => IsSameThing(finding, written, t, context)).ToList() : [];
        foreach (var text in texts)
        {
            JsonEdit edit = place.Part == PlacePart.Key
                ? new JsonEdit.RenameKey(place, text)
                : new JsonEdit.ReplaceValue(place, JsonDraft.Of(text));
            var title = $"Write '{text}' instead of '{written}'.";
            yield return same is [var only] && only == text
                ? Repair.Safe("as-suggested", title, edit)
                : Repair.Chemistry(texts.Count == 1 ? "as-suggested" : $"read-as-{Slug.Of(text, ".")}", title, edit);
        }
    }

    private static bool IsSameThing(Finding finding, string written, string text, RepairContext context)
    {
        if (finding.Place.Part == PlacePart.Key)
        {
            return SameThing.Key(written, text);
        }

        var kinds = finding.Rule.ProblemKinds;
        if (kinds.Contains(ProblemKind.UnknownSubstance))
        {
            return SameThing.Substance(written, text, context.Workspace.Catalogue);
        }

        // A number without a unit, one that reads two ways, and the name of another file say nothing that could be said better.
        return !kinds.Any(_neverSafe.Contains)
            && (SameThing.Quantity(written, text) || (!kinds.Contains(ProblemKind.UnknownUnit) && SameThing.Word(written, text)));
    }

    private static string Written(Place place, RepairContext context) =>
        place.Part == PlacePart.Key ? place.Pointer.Tokens[^1] : context.Item(place)?.Text ?? "";
}
