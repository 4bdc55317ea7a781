using System.Collections.Immutable;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis;

/// <summary>One entry of the recipe as it reaches the final solution.</summary>
public sealed record DoseFacts
{
    public required DoseEntry Entry { get; init; }

    public string Id => Entry.Id;

    /// <summary>Null for a substance dosed directly.</summary>
    public StockFacts? Stock { get; init; }

    /// <summary>The single addition of a direct dose; null for a stock.</summary>
    public AdditionFacts? Direct { get; init; }

    /// <summary>Volume poured into the tank (0 for a solid).</summary>
    public required Volume Volume { get; init; }

    /// <summary>Stock per final volume as dosed; null for a direct dose.</summary>
    public Dose? Dose { get; init; }

    public required ElementTotals Elements { get; init; }

    public required ImmutableSortedDictionary<string, double> ComponentMoles { get; init; }
}

/// <summary>Who brought how much of an element.</summary>
/// <param name="Source">Dose id, or "water".</param>
/// <param name="AdditionId">Step id inside the stock; null for water.</param>
/// <param name="Place">The step or water value.</param>
/// <param name="Label">How to call it in a sentence ("calcium nitrate tetrahydrate in Part A").</param>
public sealed record Contribution(string Source, string? AdditionId, Place Place, string Label, MassConcentration Concentration);

/// <summary>An element (or nitrogen form) in the final solution.</summary>
/// <param name="Key">"N", "NO3-N", "NH4-N", "urea-N", "P" ...</param>
public sealed record ElementFact(string Key, MassConcentration Concentration, AmountConcentration Molar, IReadOnlyList<Contribution> Contributions);

/// <summary>Charge of the ions in the final solution, phosphate counted as H2PO4-, carbonate as HCO3-, boric acid and silica as neutral.</summary>
/// <param name="Unassigned">Cations minus anions: what H+ and OH- carry (acid or alkali put in), or what an analysis leaves open.</param>
public sealed record ChargeBalance(ChargeConcentration Cations, ChargeConcentration Anions, ChargeConcentration Unassigned);

/// <summary>What the plants get when the recipe is mixed as written.</summary>
public sealed record RecipeFacts
{
    public required RecipeDocument Recipe { get; init; }

    public required ShopSettings Settings { get; init; }

    public required CropProfile Profile { get; init; }

    /// <summary>Volume after everything is in; all concentrations refer to it.</summary>
    public required Volume FinalVolume { get; init; }

    /// <summary>Water poured from the source.</summary>
    public required Volume WaterVolume { get; init; }

    public required IReadOnlyList<DoseFacts> Doses { get; init; }

    /// <summary>Elements and nitrogen forms by key, ordered.</summary>
    public required ImmutableSortedDictionary<string, ElementFact> Elements { get; init; }

    public required ImmutableSortedDictionary<string, double> ComponentMoles { get; init; }

    public required ChargeBalance Charge { get; init; }

    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    public required bool IsComplete { get; init; }

    /// <summary>mg/L of an element or nitrogen form; 0 when absent.</summary>
    public double MilligramsPerLitre(string key) => Elements.TryGetValue(key, out var fact) ? fact.Concentration.MilligramsPerLitre : 0;
}
