namespace RecipeLint.Recipes.Quantities;

/// <summary>What a unit measures. Each has one base unit in which read values are kept.</summary>
public enum Dimension
{
    /// <summary>No unit: a pH, a count.</summary>
    Number,

    /// <summary>Base unit g.</summary>
    Mass,

    /// <summary>Base unit L.</summary>
    Volume,

    /// <summary>Counted drops.</summary>
    Drops,

    /// <summary>Base unit mol.</summary>
    Amount,

    /// <summary>Base unit mol of charge.</summary>
    Charge,

    /// <summary>Base unit g/L.</summary>
    MassConcentration,

    /// <summary>Base unit mol/L.</summary>
    AmountConcentration,

    /// <summary>Base unit eq/L.</summary>
    ChargeConcentration,

    /// <summary>Degrees of hardness or alkalinity; base unit eq/L of alkaline earths or of acid capacity.</summary>
    HardnessDegree,

    /// <summary>Stock into solution; base unit L/L.</summary>
    Dose,

    /// <summary>Base unit g/g.</summary>
    MassFraction,

    /// <summary>Base unit L/L.</summary>
    VolumeFraction,

    /// <summary>Base unit °C.</summary>
    Temperature,

    /// <summary>Base unit day.</summary>
    Duration,

    /// <summary>Base unit mS/cm.</summary>
    Conductivity,

    /// <summary>Base unit g/mL.</summary>
    Density,

    /// <summary>Base unit g/mol.</summary>
    MolarMass,
}

/// <summary>The words for dimensions in messages.</summary>
internal static class Dimensions
{
    /// <summary>With its article: "a mass".</summary>
    public static string Words(this Dimension dimension) => dimension switch
    {
        Dimension.Number => "a plain number",
        Dimension.Mass => "a mass",
        Dimension.Volume => "a volume",
        Dimension.Drops => "a count of drops",
        Dimension.Amount => "an amount of substance",
        Dimension.Charge => "an amount of charge",
        Dimension.MassConcentration => "a mass per volume",
        Dimension.AmountConcentration => "an amount of substance per volume",
        Dimension.ChargeConcentration => "an amount of charge per volume",
        Dimension.HardnessDegree => "a degree of hardness",
        Dimension.Dose => "a volume per volume",
        Dimension.MassFraction => "a share by mass",
        Dimension.VolumeFraction => "a share by volume",
        Dimension.Temperature => "a temperature",
        Dimension.Duration => "a length of time",
        Dimension.Conductivity => "a conductivity",
        Dimension.Density => "a density",
        _ => "a molar mass",
    };

    /// <summary>What a division of one by the other measures; the likelier reading first, empty when it means nothing here.</summary>
    public static IReadOnlyList<Dimension> Per(this Dimension numerator, Dimension denominator) => (numerator, denominator) switch
    {
        (Dimension.Mass, Dimension.Volume) => [Dimension.MassConcentration, Dimension.Density],
        (Dimension.Volume or Dimension.Drops, Dimension.Volume) => [Dimension.Dose, Dimension.VolumeFraction],
        (Dimension.Amount, Dimension.Volume) => [Dimension.AmountConcentration],
        (Dimension.Charge, Dimension.Volume) => [Dimension.ChargeConcentration],
        (Dimension.Mass, Dimension.Mass) => [Dimension.MassFraction],
        (Dimension.Mass, Dimension.Amount) => [Dimension.MolarMass],
        _ => [],
    };
}
