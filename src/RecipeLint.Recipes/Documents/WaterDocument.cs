using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>An analysis of source water.</summary>
public sealed record WaterDocument
{
    /// <summary>Empty for a built-in water.</summary>
    public required string File { get; init; }

    public Place Place => Place.Whole(File);

    public required string Name { get; init; }

    /// <summary>The name files use for a built-in water; null for one read from a file.</summary>
    public string? BuiltInName { get; init; }

    /// <summary>One entry per stated analyte, already converted to the ion or element that the key names.</summary>
    public IReadOnlyList<WaterValue> Values { get; init; } = [];

    /// <summary>mS/cm at 25 °C.</summary>
    public Located<Interval<Conductivity>>? Ec { get; init; }

    public Located<Interval<double>>? Ph { get; init; }

    /// <summary>Acid-neutralising capacity; from HCO3 where only that is stated.</summary>
    public Located<Interval<ChargeConcentration>>? Alkalinity { get; init; }

    /// <summary>Calcium plus magnesium in charge.</summary>
    public Located<Interval<ChargeConcentration>>? Hardness { get; init; }

    /// <summary>What was estimated because only hardness, alkalinity or EC were stated; empty when fully analysed.</summary>
    public IReadOnlyList<string> Estimates { get; init; } = [];

    /// <summary>What the analysis states by itself; null for a built-in water and where it could not be read whole.</summary>
    public WaterFigures? Stated { get; init; }

    public bool IsComplete { get; init; } = true;
}

/// <summary>One measured analyte of a water.</summary>
/// <param name="Component">Solution component it dissolves as ("Ca+2", "NO3-", "CO3-2" for bicarbonate ...).</param>
/// <param name="Key">As written ("HCO3", "Ca").</param>
/// <param name="Concentration">Moles of the component per litre, lowest to highest of the year.</param>
public sealed record WaterValue(string Component, Located<string> Key, Interval<AmountConcentration> Concentration);
