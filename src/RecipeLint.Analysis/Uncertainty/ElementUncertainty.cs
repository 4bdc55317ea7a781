using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// How well an element is known when a stock or final solution is made with the shop's equipment: first-order propagation by the GUM
/// (JCGM 100:2008, 5.1 and 5.2) of weighing, assay, finished volume, aliquots, doses and final volume.
/// </summary>
/// <param name="Key">"N", "NO3-N", "P", "Mo" ...</param>
/// <param name="Concentration">As computed, uncertainty left aside.</param>
/// <param name="RelativeStandard">Combined standard uncertainty as a fraction of the concentration.</param>
public sealed record ElementUncertainty(string Key, MassConcentration Concentration, double RelativeStandard)
{
    private readonly Uncertain? _value;
    private IReadOnlyList<UncertaintyShare>? _shares;

    private ElementUncertainty(string key, Uncertain value, double relativeStandard)
        : this(key, new MassConcentration(value.Value), relativeStandard) => _value = value;

    /// <summary>Sources by their share of the variance, largest first; the fractions sum to 1. Sorted out when first asked for.</summary>
    public IReadOnlyList<UncertaintyShare> Shares => _shares ??= _value?.Shares ?? [];

    /// <summary>False for a value without any error, which has no shares.</summary>
    public bool HasShares => _value?.HasErrors == true;

    /// <summary>Expanded uncertainty U (k = 2, about 95 %) as a fraction of the concentration: 0.06 reads "± 6 %".</summary>
    public double RelativeExpanded => 2 * RelativeStandard;

    /// <summary>Expanded uncertainty U (k = 2).</summary>
    public MassConcentration Expanded => new(Concentration.GramsPerLitre * RelativeExpanded);

    /// <summary>The elements of a final solution.</summary>
    /// <param name="findStock">Facts of a stock by its file, for pre-stocks (<see cref="Facts.FindStock"/>).</param>
    public static UncertaintyFacts Of(RecipeFacts recipe, Func<string, StockFacts?> findStock)
    {
        var budget = new ElementBudget(findStock);
        return From(budget.OfRecipe(recipe), budget);
    }

    /// <summary>The elements of a finished stock.</summary>
    /// <param name="findStock">Facts of a stock by its file, for pre-stocks (<see cref="Facts.FindStock"/>).</param>
    public static UncertaintyFacts Of(StockFacts stock, Func<string, StockFacts?> findStock)
    {
        var budget = new ElementBudget(findStock);
        return From(budget.OfStock(stock), budget);
    }

    private static UncertaintyFacts From(SortedDictionary<string, Uncertain> concentrations, ElementBudget budget)
    {
        var elements = new SortedList<string, ElementUncertainty>(concentrations.Count, StringComparer.Ordinal);
        foreach (var (key, value) in concentrations)
        {
            if (value.Value > 0 && value.RelativeStandard is { } relative && double.IsFinite(relative))
            {
                elements.Add(key, new ElementUncertainty(key, value, relative));
            }
        }

        return new UncertaintyFacts(elements, budget.Notes);
    }
}

/// <summary>How well each element is known, and what had to be assumed to say so.</summary>
public sealed class UncertaintyFacts
{
    private readonly UncertaintyNotes _notes;
    private IReadOnlyList<Assumption>? _assumptions;

    internal UncertaintyFacts(SortedList<string, ElementUncertainty> elements, UncertaintyNotes notes) =>
        (Elements, _notes) = (elements, notes);

    /// <summary>By nutrient key, in its order; elements of zero concentration have none.</summary>
    public IReadOnlyDictionary<string, ElementUncertainty> Elements { get; }

    /// <summary>Equipment, assays and effects taken for granted. Put into words when first asked for.</summary>
    public IReadOnlyList<Assumption> Assumptions => _assumptions ??= _notes.ToList();
}
