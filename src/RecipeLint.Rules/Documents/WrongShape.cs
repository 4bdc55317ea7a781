using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A value of another kind than its key holds.</summary>
internal sealed class WrongShape() : ProblemRule(
    "wrong-shape",
    "The value cannot be understood as it stands and is left out of every figure. Write the kind of value the format asks for.",
    Harm.Loss,
    ProblemKind.WrongShape), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        foreach (var repair in AsSuggested.Of(finding, context))
        {
            yield return repair;
        }

        // One step or dose written without the list around it.
        if (finding.Place is { Pointer.Value: "/steps" or "/doses" or "/suppressions" or "/substances" } place
            && context.Item(place with { Range = null }) is { Kind: JsonKind.Object } entry)
        {
            yield return Repair.Safe(
                "make-list",
                $"Put the one entry of \"{place.Pointer.Tokens[^1]}\" into a list.",
                new JsonEdit.ReplaceText(place with { Range = new ByteSpan(entry.Span.Start, 0) }, "["),
                new JsonEdit.ReplaceText(place with { Range = new ByteSpan(entry.Span.End, 0) }, "]"));
        }
    }
}
