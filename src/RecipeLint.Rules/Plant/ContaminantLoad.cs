using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Heavy metals that a certificate declares, against limits for fertilisers and, in the final solution, for irrigation water.</summary>
public sealed class ContaminantLoad : WorkspaceRule
{
    public override string Name => "contaminant-load";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        var declared = facts.Workspace.SubstanceFiles
            .SelectMany(f => f.Substances.Select(s => (f.File, Entry: s)))
            .Where(s => s.Entry.Substance.Impurities.Any(i => IsDeclared(i, s.File)))
            .ToList();
        var files = declared.Select(s => s.File).ToHashSet(StringComparer.Ordinal);
        return declared.SelectMany(s => Products(s.File, s.Entry, context))
            .Concat(facts.Recipes.Where(r => r.IsComplete && files.Count > 0)
                .SelectMany(r => Solutions(r, substance => substance.Impurities.Where(i => files.Any(f => IsDeclared(i, f))), context)));
    }

    /// <summary>What the shop wrote, not the typical impurities that a strength of a catalogue substance inherits.</summary>
    internal static bool IsDeclared(Impurity impurity, string file) => impurity.Content.Source == $"stated in {file}";

    internal static IEnumerable<Impurity> Declared(Substance substance, string file) => substance.Impurities.Where(i => IsDeclared(i, file));

    private static IEnumerable<Finding> Products(string file, ShopSubstance entry, RuleContext context)
    {
        foreach (var (limit, per) in ContaminantLimits.For(entry.Substance))
        {
            var content = Declared(entry.Substance, file).Where(i => i.Element.Symbol == limit.Element).Select(i => i.Content.Value.Value).DefaultIfEmpty().Max();
            var found = Rounding.SixDigits(content * 1e6 / per);
            if (found <= limit.Milligrams)
            {
                continue;
            }

            yield return context.Find(
                entry.Place.Child("impurities").Child(limit.Element).Key,
                $"'{entry.Substance.Name}' is declared with {Say.Number(found)} mg of {limit.Element} per {limit.Per}; the limit for such a fertiliser is {Say.Number(limit.Milligrams)} mg. "
                + "It stays in the substrate and in the crop, and no later step takes it out. Ask the supplier for a purer grade, and check the law that holds where you are.",
                certainty: limit.Recalled ? Certainty.Practice : Certainty.Computed) with
            {
                Measured = new Measured(limit.Element, found, limit.Milligrams, "mg/kg"),
                Values = [new NamedValue(limit.Element, found, "mg/kg"), new NamedValue("limit", limit.Milligrams, "mg/kg")],
            };
        }
    }

    private static IEnumerable<Finding> Solutions(RecipeFacts recipe, Func<Substance, IEnumerable<Impurity>> declared, RuleContext context)
    {
        foreach (var limit in ContaminantLimits.InWater)
        {
            var shares = recipe.Doses
                .SelectMany(Additions)
                .Select(a => (a.Addition, Milligrams: a.Part * a.Addition.Mass.Grams * 1000
                    * declared(a.Addition.Substance).Where(i => i.Element.Symbol == limit.Element).Select(i => i.Content.Value.Value).DefaultIfEmpty().Max()))
                .Where(s => s.Milligrams > 0)
                .OrderByDescending(s => s.Milligrams)
                .ToList();
            var found = Rounding.SixDigits(shares.Select(s => s.Milligrams).Order().Sum() / recipe.FinalVolume.Litres);
            if (found <= limit.Milligrams)
            {
                continue;
            }

            var place = RecipePlaces.Doses(recipe);
            yield return context.Find(
                place,
                $"{IdPath.Of(context.Facts.Workspace, place)}#{limit.Element}",
                $"The declared impurities bring {Say.Number(found)} mg/L {limit.Element} into the final solution; irrigation water should not hold more than {Say.Number(limit.Milligrams)} mg/L. "
                + "Plants take it up, or it poisons their roots. Use a purer grade of the product that brings most.",
                certainty: limit.Recalled ? Certainty.Practice : Certainty.Computed) with
            {
                Measured = new Measured(limit.Element, found, limit.Milligrams, "mg/L"),
                Values = [new NamedValue(limit.Element, found, "mg/L"), new NamedValue("limit", limit.Milligrams, "mg/L")],
                Related =
                [
                    .. shares.DistinctBy(s => s.Addition.Place).Take(3)
                        .Select(s => new RelatedPlace(s.Addition.Place, $"{s.Addition.Substance.Name} brings {Say.Number(s.Milligrams / recipe.FinalVolume.Litres)} mg/L {limit.Element}")),
                ],
            };
        }
    }

    /// <summary>What is weighed for a dose, with the part of it that reaches the solution.</summary>
    internal static IEnumerable<(AdditionFacts Addition, double Part)> Additions(DoseFacts dose) =>
        dose.Direct is { } direct
            ? [(direct, 1)]
            : dose.Stock is { } stock ? stock.Additions.Select(a => (a, dose.Volume / stock.Volume)) : [];
}
