using System.Collections.Immutable;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
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
    public required ImmutableSortedDictionary<string, double> ComponentMoles { get; init; }

    /// <summary>The scale or measure it was taken with; null when none could be found.</summary>
    public Scale? Scale { get; init; }

    public Measure? Measure { get; init; }

    /// <summary>True when it came in through an aliquot of another stock and was not weighed for this one.</summary>
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

    /// <summary>Element masses in the whole batch.</summary>
    public required ElementTotals Totals { get; init; }

    /// <summary>Moles of solution components in the whole batch, source water included, ordered by name.</summary>
    public required ImmutableSortedDictionary<string, double> ComponentMoles { get; init; }

    /// <summary>Stated, or the shop's site, or the assumed 5 to 30 °C.</summary>
    public required Interval<Temperature> StorageTemperature { get; init; }

    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    /// <summary>The pH the steps adjust to; null when none is set and the solver has to say.</summary>
    public double? DeclaredPh { get; init; }

    /// <summary>False when something could not be read: totals are lower bounds and rules on ranges stay silent.</summary>
    public required bool IsComplete { get; init; }

    public AmountConcentration Concentration(string component) => new Amount(ComponentMoles.GetValueOrDefault(component)) / Volume;

    public MassConcentration Concentration(Element element) => Totals[element] / Volume;

    /// <summary>Additions that bring a component, largest first.</summary>
    public IEnumerable<AdditionFacts> SuppliersOf(string component) =>
        Additions.Where(a => a.ComponentMoles.GetValueOrDefault(component) > 0)
            .OrderByDescending(a => a.ComponentMoles[component])
            .ThenBy(a => a.Id, StringComparer.Ordinal);
}
