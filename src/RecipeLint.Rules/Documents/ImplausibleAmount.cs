using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>An amount nobody means: zero, negative, or far too much for the batch.</summary>
internal sealed class ImplausibleAmount() : ProblemRule(
    "implausible-amount",
    "Nobody can mean that, so a unit or a decimal point has slipped. Correct it before anything is weighed.",
    Harm.Loss,
    ProblemKind.ImplausibleAmount), IProposesRepairs
{
    /// <summary>Times what is made from which a volume can have been meant in the thousandth (common practice, no source).</summary>
    private const double LeastTimes = 20;

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        // A thousand times too much is the commonest slip of a unit; what is hardly too much for the vessel is another.
        if (finding.Values.FirstOrDefault(v => v.Name == "volume") is { } volume
            && finding.Values.FirstOrDefault(v => v.Name == "limit") is { } limit
            && volume.Value < LeastTimes * limit.Value)
        {
            yield break;
        }

        var place = finding.Place with { Range = null };
        if (context.Item(place) is not { Kind: JsonKind.Text } item)
        {
            yield break;
        }

        foreach (var (large, small) in new[] { ("kg", "g"), ("g", "mg"), ("L", "mL"), ("m³", "L") })
        {
            if (item.Text.EndsWith(" " + large, StringComparison.Ordinal))
            {
                var text = item.Text[..^large.Length] + small;
                yield return Repair.Chemistry(
                    "smaller-unit",
                    $"Write '{text}' instead of '{item.Text}', a thousandth of it.",
                    new JsonEdit.ReplaceValue(place, JsonDraft.Of(text)));
            }
        }
    }
}
