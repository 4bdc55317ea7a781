using System.Collections.Immutable;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
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

    /// <summary>Where the dose comes from.</summary>
    public DoseBasis Basis { get; init; }

    /// <summary>The syringe, injector or cylinder it is dosed with, where the file names one of the shop's.</summary>
    public Measure? Measure { get; init; }

    public required ElementTotals Elements { get; init; }

    /// <summary>Declared or typical impurities, apart from the elements.</summary>
    public ElementTotals Impurities { get; init; } = ElementTotals.Empty;

    public required ComponentMoles ComponentMoles { get; init; }
}

/// <summary>What a dose of stock was computed from.</summary>
public enum DoseBasis
{
    /// <summary>A substance dosed directly.</summary>
    Direct,

    /// <summary>The dose stated in the recipe.</summary>
    Stated,

    /// <summary>A volume for the whole final volume.</summary>
    Volume,

    /// <summary>Strokes of a syringe or injector of known capacity.</summary>
    Strokes,

    /// <summary>The dose the stock was made for.</summary>
    StockOwn,
}

/// <summary>Who brought how much of an element.</summary>
/// <param name="Source">Dose id, "water", or "adjust" for the reagent that sets the pH.</param>
/// <param name="AdditionId">Step id inside the stock; null for water.</param>
/// <param name="Place">The step or water value.</param>
/// <param name="Label">How to call it in a sentence ("calcium nitrate tetrahydrate in 'Part A'").</param>
public sealed record Contribution(string Source, string? AdditionId, Place Place, string Label, MassConcentration Concentration);

/// <summary>An element (or nitrogen form) in the final solution.</summary>
/// <param name="Key">"N", "NO3-N", "NH4-N", "urea-N", "P" ...</param>
public sealed record ElementFact(
    string Key, MassConcentration Concentration, AmountConcentration Molar, IReadOnlyList<Contribution> Contributions);

/// <summary>
/// Charge of the ions in the final solution, phosphate counted as H2PO4-, carbonate as HCO3-, boric acid and silica as neutral.
/// </summary>
/// <param name="Unassigned">Cations minus anions: what H+ and OH- carry (acid or alkali put in), or what an analysis leaves open.</param>
public sealed record ChargeBalance(ChargeConcentration Cations, ChargeConcentration Anions, ChargeConcentration Unassigned)
{
    /// <summary>
    /// Sum of all charges put in, hydrogen ions included: zero when every substance and the water are described completely, else what a
    /// water analysis or a label leaves open.
    /// </summary>
    public ChargeConcentration Unexplained { get; init; }
}

/// <summary>One ion or neutral solute of the final solution, as counted in the charge balance.</summary>
/// <param name="Name">Component ("Ca+2", "H2PO4-") or chelate ("Fe+3·EDTA-4").</param>
/// <param name="Charge">Elementary charges in a feed near pH 5.8.</param>
public sealed record IonFact(string Name, int Charge, AmountConcentration Concentration)
{
    /// <summary>meq/L with the sign of the charge.</summary>
    public ChargeConcentration ChargeConcentration => new(Charge * Concentration.MolesPerLitre);
}

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

    /// <summary>
    /// Elements and nitrogen forms by key, ordered. "N" is nitrate, ammonium and urea nitrogen; what chelating agents hold is "organic-N".
    /// </summary>
    public required ImmutableSortedDictionary<string, ElementFact> Elements { get; init; }

    public required ComponentMoles ComponentMoles { get; init; }

    public required ChargeBalance Charge { get; init; }

    /// <summary>The ions behind the charge balance, by name.</summary>
    public IReadOnlyList<IonFact> Ions { get; init; } = [];

    /// <summary>The source water.</summary>
    public WaterFacts? Water { get; init; }

    /// <summary>The pH adjustment the recipe asks for; what its reagent brings is in the totals unless its amount is unknown.</summary>
    public PhAdjustmentFacts? Adjustment { get; init; }

    /// <summary>Declared or typical impurities in the whole final volume, apart from the elements.</summary>
    public ElementTotals Impurities { get; init; } = ElementTotals.Empty;

    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    public required bool IsComplete { get; init; }

    /// <summary>What the rooms above have computed from these facts.</summary>
    internal Derived Derived { get; } = new();

    /// <summary>mg/L of an element or nitrogen form; 0 when absent.</summary>
    public double MilligramsPerLitre(string key) => Elements.TryGetValue(key, out var fact) ? fact.Concentration.MilligramsPerLitre : 0;
}
