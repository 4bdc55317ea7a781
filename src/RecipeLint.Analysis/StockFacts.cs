using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis;

/// <summary>A default that entered a number because the file does not say.</summary>
/// <param name="Key">Stable word for machines ("assay", "storage-temperature", "volume-meaning").</param>
/// <param name="Text">One plain sentence.</param>
public sealed record Assumption(string Key, string Text, Place? Place);

/// <summary>What one addition brings.</summary>
public sealed record AdditionFacts
{
    /// <summary>The step's id, or for an addition inside an aliquot the aliquot's id, a slash and the inner id.</summary>
    public required string Id { get; init; }

    /// <summary>The step in this stock (the aliquot step for what an aliquot brings).</summary>
    public required Place Place { get; init; }

    public required Substance Substance { get; init; }

    /// <summary>Mass of the substance as bought.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Poured volume for liquids.</summary>
    public Volume? Volume { get; init; }

    /// <summary>Assay used: the declared one, else 1.</summary>
    public MassFraction Assay { get; init; } = MassFraction.One;

    public bool AssayDeclared { get; init; }

    /// <summary>Element masses brought, assay applied.</summary>
    public required ElementTotals Elements { get; init; }

    /// <summary>Moles of solution components brought, assay applied.</summary>
    public required ComponentMoles ComponentMoles { get; init; }

    /// <summary>The scale or measure it was taken with; null when none could be found.</summary>
    public Scale? Scale { get; init; }

    public Measure? Measure { get; init; }

    /// <summary>True when the file names the scale or measure; false when it was chosen from the shop's.</summary>
    public bool EquipmentStated { get; init; }

    /// <summary>
    /// Masses of declared or typical impurities this addition can bring. They stand apart from <see cref="Elements"/>: most are upper
    /// limits of a grade, not contents.
    /// </summary>
    public ElementTotals Impurities { get; init; } = ElementTotals.Empty;

    /// <summary>True when it came in through an aliquot of another stock and was not weighed for this one.</summary>
    public bool ThroughAliquot { get; init; }

    /// <summary>What the rooms above have computed from these facts.</summary>
    internal Derived Derived { get; } = new();

    /// <summary>Equal additions have equal ids; hashing everything they hold would cost more than it tells.</summary>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Id);
}

/// <summary>Source water that goes in, with the ions it brings.</summary>
public sealed record WaterFacts
{
    /// <summary>The pour or top-up step (through an aliquot: the aliquot's id, a slash and the inner id); "water" in a recipe.</summary>
    public required string Id { get; init; }

    public required Place Place { get; init; }

    /// <summary>As written, or the default that was taken ("distilled").</summary>
    public required string Name { get; init; }

    /// <summary>Null for a built-in water, which is taken as pure.</summary>
    public WaterDocument? Water { get; init; }

    public required Volume Volume { get; init; }

    /// <summary>True when the volume is what is missing up to a mark: the volume that dissolved solids take up is not subtracted.</summary>
    public bool VolumeIsEstimate { get; init; }

    public required ElementTotals Elements { get; init; }

    public required ComponentMoles ComponentMoles { get; init; }
}

/// <summary>A measured part of another stock that goes in; what it brings stands among the additions.</summary>
public sealed record AliquotFacts(string Id, Place Place, string StockFile, Volume Volume)
{
    /// <summary>The scale or measure it was taken with; null when none could be found.</summary>
    public Measure? Measure { get; init; }

    /// <summary>True when the file names the measure.</summary>
    public bool EquipmentStated { get; init; }
}

/// <summary>A reagent added until a pH is reached.</summary>
/// <param name="Id">Step id; "adjust" in a recipe; through an aliquot the aliquot's id, a slash and the inner id.</param>
/// <param name="Amount">Mass of reagent needed, as bought; null when it is not known.</param>
/// <param name="Reason">Why the amount is null; null when it is known.</param>
public sealed record PhAdjustmentFacts(string Id, Place Place, double? TargetPh, Substance? Reagent, Mass? Amount, string? Reason)
{
    /// <summary>Volume of a liquid reagent; null for a solid.</summary>
    public Volume? Volume { get; init; }

    /// <summary>pH before the reagent; null when it is not known.</summary>
    public double? PhBefore { get; init; }

    /// <summary>What the reagent brings; part of the totals.</summary>
    public ElementTotals Elements { get; init; } = ElementTotals.Empty;

    /// <summary>What the reagent brings; part of the totals.</summary>
    public ComponentMoles ComponentMoles { get; init; } = Solutions.ComponentMoles.Empty;

    /// <summary>True when it was done in another stock that an aliquot was taken of.</summary>
    public bool ThroughAliquot { get; init; }
}

/// <summary>What a stock holds when it is made as written.</summary>
public sealed record StockFacts
{
    public required StockDocument Stock { get; init; }

    public required ShopSettings Settings { get; init; }

    /// <summary>The finished volume all concentrations refer to.</summary>
    public required Volume Volume { get; init; }

    /// <summary>In the order of the steps.</summary>
    public required IReadOnlyList<AdditionFacts> Additions { get; init; }

    /// <summary>Source water in the order of the steps.</summary>
    public IReadOnlyList<WaterFacts> Waters { get; init; } = [];

    /// <summary>Parts of other stocks in the order of the steps.</summary>
    public IReadOnlyList<AliquotFacts> Aliquots { get; init; } = [];

    /// <summary>
    /// pH adjustments in the order of the steps; what their reagent brings is in the totals unless its amount is unknown.
    /// </summary>
    public IReadOnlyList<PhAdjustmentFacts> Adjustments { get; init; } = [];

    /// <summary>Declared or typical impurities of the whole batch, apart from the totals.</summary>
    public ElementTotals Impurities { get; init; } = ElementTotals.Empty;

    /// <summary>Element masses in the whole batch, source water included.</summary>
    public required ElementTotals Totals { get; init; }

    /// <summary>Moles of solution components in the whole batch, source water included, ordered by name.</summary>
    public required ComponentMoles ComponentMoles { get; init; }

    /// <summary>Stated, or the shop's site, or the assumed 5 to 30 °C.</summary>
    public required Interval<Temperature> StorageTemperature { get; init; }

    /// <summary>Who says so.</summary>
    public StorageSource StorageSource { get; init; }

    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    /// <summary>The pH the steps adjust to; null when none is set and the solver has to say.</summary>
    public double? DeclaredPh { get; init; }

    /// <summary>False when something could not be read: totals are lower bounds and rules on ranges stay silent.</summary>
    public required bool IsComplete { get; init; }

    /// <summary>What the rooms above have computed from these facts.</summary>
    internal Derived Derived { get; } = new();

    public AmountConcentration Concentration(string component) => new Amount(ComponentMoles.GetValueOrDefault(component)) / Volume;

    public MassConcentration Concentration(Element element) => Totals[element] / Volume;

    /// <summary>Additions that bring a component, largest first.</summary>
    public IEnumerable<AdditionFacts> SuppliersOf(string component) =>
        Additions.Where(a => a.ComponentMoles.GetValueOrDefault(component) > 0)
            .OrderByDescending(a => a.ComponentMoles[component])
            .ThenBy(a => a.Id, StringComparer.Ordinal);
}
