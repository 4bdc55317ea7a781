using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A key the file cannot do without.</summary>
internal sealed class MissingKey() : ProblemRule(
    "missing-key",
    "The figures that need it cannot be computed. Add it.",
    Harm.Loss,
    ProblemKind.MissingKey), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (finding.Place.Pointer.Value.Length > 0 || context.Item(finding.Place with { Range = null }) is not { } root)
        {
            yield break;
        }

        if (root["format"] is null)
        {
            yield return Repair.Safe(
                "add-format",
                "Begin the file with \"format\": 1.",
                new JsonEdit.InsertMember(finding.Place, "format", new JsonDraft.Literal("1"), ""));
        }

        // What the last top-up brings the stock to is what it makes.
        if (finding.Place.File.EndsWith(".stock.json", StringComparison.Ordinal) && root["makes"] is null
            && root["steps"]?.Items.Select(i => i["topUp"]).OfType<JsonItem>().LastOrDefault() is { Kind: JsonKind.Text } mark)
        {
            yield return Repair.Chemistry(
                "as-topped-up",
                $"Write \"makes\": \"{mark.Text}\", the volume of the last top-up.",
                new JsonEdit.InsertMember(finding.Place, "makes", JsonDraft.Of(mark.Text), root["name"] is null ? "format" : "name"));
        }
    }
}
