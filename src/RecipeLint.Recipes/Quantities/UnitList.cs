namespace RecipeLint.Recipes.Quantities;

/// <summary>A unit that files may use, for whoever looks one up.</summary>
/// <param name="Symbol">As messages spell it.</param>
/// <param name="Measures">"a mass", "a volume".</param>
/// <param name="Spellings">Other ways to write it.</param>
/// <param name="Factor">Base units in one of it; null for a unit that has to be told apart first.</param>
/// <param name="BaseUnit">"g", "L" ...; empty for a plain number.</param>
/// <param name="Uncertainty">How far one is off by nature, as a fraction; null for exact ones.</param>
/// <param name="Source">Where the factor comes from; for an ambiguous spelling, what the readings are.</param>
public sealed record ListedUnit(
    string Symbol, string Measures, IReadOnlyList<string> Spellings, double? Factor, string BaseUnit, double? Uncertainty, string Source);

/// <summary>Every unit that files may use, and every spelling that is refused because it means several.</summary>
public static class UnitList
{
    public static IReadOnlyList<ListedUnit> All { get; } =
    [
        .. UnitTable.BySymbol.Values.Concat(UnitTable.ByWord.Values).Distinct()
            .OrderBy(u => u.Dimension).ThenBy(u => u.Factor).ThenBy(u => u.Symbol, StringComparer.Ordinal)
            .Select(u => new ListedUnit(
                u.Symbol, u.Dimension.Words(), [.. (u.Symbols ?? []).Concat(u.Words ?? []).Distinct(StringComparer.Ordinal)],
                u.Factor, BaseOf(u.Dimension), u.Uncertainty, u.Source)),
        .. UnitTable.Ambiguous.Select(a => new ListedUnit(a.Spelling, "not told apart", a.Readings, null, "", null, a.Advice)),
    ];

    private static string BaseOf(Dimension dimension) => dimension switch
    {
        Dimension.Mass => "g",
        Dimension.Volume => "L",
        Dimension.Drops => "drop",
        Dimension.Amount => "mol",
        Dimension.Charge or Dimension.HardnessDegree => dimension == Dimension.Charge ? "eq" : "eq/L",
        Dimension.MassConcentration => "g/L",
        Dimension.AmountConcentration => "mol/L",
        Dimension.ChargeConcentration => "eq/L",
        Dimension.Dose or Dimension.VolumeFraction => "L/L",
        Dimension.MassFraction => "g/g",
        Dimension.Temperature => "°C",
        Dimension.Duration => "days",
        Dimension.Conductivity => "mS/cm",
        Dimension.Density => "g/mL",
        Dimension.MolarMass => "g/mol",
        _ => "",
    };
}
