using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>What an analysis itself states, before anything is estimated from it; a rule holds these figures against each other.</summary>
/// <param name="Ions">In the order of the file.</param>
/// <param name="IonsPlace">The key they stand under; null where the file has none.</param>
/// <param name="Alkalinity">Acid-neutralising capacity; null where only bicarbonate is stated.</param>
/// <param name="Hardness">Calcium plus magnesium in charge; null where only the two are stated.</param>
/// <param name="Ec">mS/cm at 25 °C.</param>
public sealed record WaterFigures(
    IReadOnlyList<StatedIon> Ions,
    Place? IonsPlace,
    Located<Interval<ChargeConcentration>>? Alkalinity,
    Located<Interval<ChargeConcentration>>? Hardness,
    Located<Interval<Conductivity>>? Ec);

/// <summary>One ion of an analysis.</summary>
/// <param name="Key">As files write it ("Ca", "HCO3").</param>
/// <param name="Component">Solution component it dissolves as.</param>
/// <param name="Charge">Of the ion as it stands in water; 0 where that depends on the pH.</param>
/// <param name="Equivalents">Charge that it carries, whatever its sign, lowest to highest of the year; 0 where the charge is.</param>
public sealed record StatedIon(string Key, string Component, int Charge, Interval<ChargeConcentration> Equivalents);
