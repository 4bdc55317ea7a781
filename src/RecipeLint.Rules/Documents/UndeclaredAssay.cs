using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Substances whose strength differs from lot to lot, used without saying how strong this one is.</summary>
internal sealed class UndeclaredAssay : WorkspaceRule
{
    public override string Name => "undeclared-assay";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var stock in facts.Stocks)
        {
            var additions = stock.Additions.Where(a => !a.ThroughAliquot).ToList();
            if (Find(stock.Stock.Place.Child("steps").Key, "stock", stock.Stock.Name, additions, context) is { } finding)
            {
                yield return finding;
            }
        }

        foreach (var recipe in facts.Recipes)
        {
            var additions = recipe.Doses.Where(d => d.Entry is DirectDose).Select(d => d.Direct).OfType<AdditionFacts>().ToList();
            if (Find(recipe.Recipe.Place.Child("doses").Key, "recipe", recipe.Recipe.Name, additions, context) is { } finding)
            {
                yield return finding;
            }
        }
    }

    private static Finding? Find(Place place, string kind, string name, IReadOnlyList<AdditionFacts> additions, RuleContext context)
    {
        var open = additions.Where(a => a.Substance.NeedsAssay && !a.AssayDeclared).DistinctBy(a => a.Substance.Id).ToList();
        if (open.Count == 0)
        {
            return null;
        }

        var names = Say.List(open.Select(a => $"'{a.Substance.Name}'"));
        return context.Find(
            place,
            $"The {kind} '{name}' does not say how pure {names} {(open.Count == 1 ? "is" : "are")}. "
            + "Every figure takes the nominal strength instead, and what is missing there is missing in the tank. "
            + Advice(open),
            Harm.Damage,
            Odds.Possible) with
        {
            Related = [.. open.Select(a => new RelatedPlace(a.Place, Label(a)))],
        };
    }

    /// <summary>A solution has its strength on the label, and no purity.</summary>
    private static string Advice(IReadOnlyList<AdditionFacts> open) =>
        open.All(a => a.Substance.Form == PhysicalForm.Liquid)
            ? "Look at the label: where it says the same, write that it is whole (\"assay\": \"100 %\"), else its own strength in place of "
                + "the usual one (\"strength\": \"4 %\", of acids, lyes, bleach and peroxide)."
            : "Copy the assay from the bag or certificate into 'assay' (\"assay\": \"98 %\").";

    private static string Label(AdditionFacts addition) =>
        addition.Substance.TypicalAssay is { } typical ? $"no assay stated; in the trade: {typical.Value}" : "no assay stated here";
}
