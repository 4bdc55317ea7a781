using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>The same key twice in one object: readers keep one of the two without a word.</summary>
internal sealed class DuplicateKey() : ProblemRule(
    "duplicate-key",
    "Readers keep one of the two without saying which. Delete the one that does not hold.",
    Harm.Loss,
    ProblemKind.DuplicateKey), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (finding.Related is not [{ Place: { Range: not null } first }, ..] || finding.Place.Range is null)
        {
            return finding.Related.Count > 0 && context.Item(finding.Place) is { Kind: JsonKind.Text } id
                ? [AnotherId(finding, id.Text, context)]
                : [];
        }

        var key = finding.Place.Pointer.Tokens[^1];
        return
        [
            Repair.Chemistry("keep-last", $"Keep the last \"{key}\" and take out the first.", new JsonEdit.Remove(first)),
            Repair.Chemistry("keep-first", $"Keep the first \"{key}\" and take out the last.", new JsonEdit.Remove(finding.Place)),
        ];
    }

    /// <summary>An id that nothing else in the file has: the old one with a number.</summary>
    private static RepairProposal AnotherId(Finding finding, string id, RepairContext context)
    {
        var text = context.Workspace.Sources[finding.Place.File];
        var all = text.Excerpt(new ByteSpan(0, text.Bytes.Length));
        var count = Enumerable.Range(2, 1000)
            .First(n => !all.Contains(FormattableString.Invariant($"\"{id}-{n}\""), StringComparison.Ordinal));
        var free = FormattableString.Invariant($"{id}-{count}");
        var edit = new JsonEdit.ReplaceValue(finding.Place, JsonDraft.Of(free));

        // Which of two products of one name a recipe means, nobody but its writer knows.
        return finding.Place.File.EndsWith(".substances.json", StringComparison.Ordinal)
            ? Repair.Chemistry("another-id", $"Call this entry '{free}'.", edit)
            : Repair.Safe("another-id", $"Call this entry '{free}'.", edit);
    }
}
