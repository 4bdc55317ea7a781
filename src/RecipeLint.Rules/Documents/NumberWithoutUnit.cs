using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A bare number where a quantity is due.</summary>
internal sealed class NumberWithoutUnit() : ProblemRule(
    "number-without-unit",
    "The same number means different things in different shops. Write the quantity as a text with its unit, such as \"60 g\".",
    Harm.Loss,
    ProblemKind.NumberWithoutUnit), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (finding.Suggestions.Count > 0)
        {
            return AsSuggested.Of(finding, context);
        }

        // A bare JSON number: which units there are follows from the key and from what is added.
        var place = finding.Place with { Range = null };
        return context.Item(place) is { Kind: JsonKind.Number } number && place.Pointer.Tokens is [.., var key]
            ? AsSuggested.Of(finding with { Suggestions = [.. UnitsOf(key, place, context).Select(u => $"{number.Text} {u}")] }, context)
            : [];
    }

    private static string[] UnitsOf(string key, Place place, RepairContext context) => key switch
    {
        "assay" => ["%"],
        "makes" or "final" or "pour" or "topUp" => ["L", "mL"],
        "dose" => ["mL/L"],
        "density" => ["g/mL"],
        "molarMass" => ["g/mol"],
        "at" => ["°C"],
        "for" => ["months", "weeks", "days"],
        "amount" when IsLiquid(place, context) => ["mL", "g"],
        "amount" => ["g", "mg"],
        "tare" or "minimumWeight" or "repeatability" => ["g", "mg"],
        "readability" or "capacity" => place.Pointer.Tokens[0] == "scales" ? ["g", "mg"] : ["mL", "L"],
        _ => [],
    };

    private static bool IsLiquid(Place amount, RepairContext context) =>
        context.Workspace.FindStock(amount.File)?.Steps.OfType<AddStep>()
            .FirstOrDefault(s => amount.Pointer.Value.StartsWith(
                s.Place.Pointer.Value + "/", StringComparison.Ordinal))?.Substance is { Form: PhysicalForm.Liquid };
}
