using System.Collections.Immutable;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Splitting;

/// <summary>One substance to be divided among the parts, as much of it as a litre of final solution holds.</summary>
public sealed record SplitIngredient
{
    public required Substance Substance { get; init; }

    /// <summary>As bought, per litre of final solution.</summary>
    public required MassConcentration Mass { get; init; }

    /// <summary>The declared assay; null when none is declared.</summary>
    public MassFraction? Assay { get; init; }

    /// <summary>mol of each component per litre of final solution, assay applied.</summary>
    public required ComponentMoles MolesPerLitre { get; init; }

    /// <summary>Elements per litre of final solution, assay applied.</summary>
    public required ElementTotals ElementsPerLitre { get; init; }

    /// <summary>Names of the present stocks it comes from; empty for a direct dose.</summary>
    public ImmutableSortedSet<string> From { get; init; } = [];

    /// <summary>So many times as much as a litre of final solution holds, as the hazard gate looks at it.</summary>
    public Held HeldAt(double times) => new(
        Substance,
        Mass.GramsPerLitre * times,
        Mass.GramsPerLitre * times * Substance.Strength.Value * (Assay?.Value ?? 1),
        MolesPerLitre.Times(times),
        null);

    public double MilligramsPerLitre(Element element) => ElementsPerLitre[element].Milligrams;

    /// <summary>
    /// Everything that goes into a final solution but its waters and the reagent that sets the pH of the tank; the same substance from
    /// several places is one. In the order of the recipe.
    /// </summary>
    public static IReadOnlyList<SplitIngredient> In(RecipeFacts recipe)
    {
        var all = new List<SplitIngredient>();
        foreach (var dose in recipe.Doses)
        {
            if (dose.Direct is { } direct)
            {
                all.Add(Of(direct, 1 / recipe.FinalVolume.Litres, []));
            }
            else if (dose.Stock is { } stock)
            {
                all.AddRange(In(stock, dose.Volume / stock.Volume / recipe.FinalVolume.Litres));
            }
        }

        return Merged(all);
    }

    /// <summary>What one stock brings to a litre of final solution at its dose.</summary>
    public static IReadOnlyList<SplitIngredient> In(StockFacts stock, Dose dose) =>
        Merged(In(stock, dose.LitresPerLitre / stock.Volume.Litres));

    private static IEnumerable<SplitIngredient> In(StockFacts stock, double perLitre)
    {
        ImmutableSortedSet<string> from = [stock.Stock.Name];
        foreach (var addition in stock.Additions)
        {
            yield return Of(addition, perLitre, from);
        }

        foreach (var adjustment in stock.Adjustments)
        {
            if (adjustment is { Reagent: { } reagent, Amount: { Grams: > 0 } amount })
            {
                yield return new SplitIngredient
                {
                    Substance = reagent,
                    Mass = new MassConcentration(amount.Grams * perLitre),
                    MolesPerLitre = adjustment.ComponentMoles.Times(perLitre),
                    ElementsPerLitre = adjustment.Elements.Times(perLitre),
                    From = from,
                };
            }
        }
    }

    private static SplitIngredient Of(AdditionFacts addition, double perLitre, ImmutableSortedSet<string> from) => new()
    {
        Substance = addition.Substance,
        Mass = new MassConcentration(addition.Mass.Grams * perLitre),
        Assay = addition.AssayDeclared ? addition.Assay : null,
        MolesPerLitre = addition.ComponentMoles.Times(perLitre),
        ElementsPerLitre = addition.Elements.Times(perLitre),
        From = from,
    };

    private static IReadOnlyList<SplitIngredient> Merged(IEnumerable<SplitIngredient> all) =>
    [
        .. all.Where(i => i.Mass.GramsPerLitre > 0)
            .GroupBy(i => (i.Substance.Id, i.Assay))
            .Select(g => g.First() with
            {
                Mass = new MassConcentration(g.Sum(i => i.Mass.GramsPerLitre)),
                MolesPerLitre = ComponentMoles.Sum(g.Select(i => i.MolesPerLitre)),
                ElementsPerLitre = ElementTotals.Sum(g.Select(i => i.ElementsPerLitre)),
                From = [.. g.SelectMany(i => i.From)],
            }),
    ];
}
