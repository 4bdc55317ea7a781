using System.Globalization;

namespace RecipeLint.Recipes.Quantities;

/// <summary>Units whose meaning depends on where they stand: "ppm" and "%" without a basis.</summary>
internal static class ContextualUnits
{
    // Two scales are on the market: ppm shown for 1 mS/cm (common practice, no source).
    private const double LowScale = 500;
    private const double HighScale = 700;
    private const string ConductivityAdvice = "Meters show 500 ppm or 700 ppm for 1 mS/cm, a factor of 1.4.";

    /// <summary>Null when the unit is not one of these.</summary>
    public static UnitReading? Read(string unit, Due due) => UnitParser.Normalise(unit).ToUpperInvariant() switch
    {
        "PPM" => Ppm(due),
        "%" => Percent(due),
        _ => null,
    };

    private static UnitReading Ppm(Due due) => due.Ppm switch
    {
        PpmMeaning.MilligramsPerLitre => new UnitReading.Known("mg/L", [Dimension.MassConcentration], 1e-3),
        PpmMeaning.MilligramsPerKilogram => new UnitReading.Known("mg/kg", [Dimension.MassFraction], 1e-6),

        PpmMeaning.ConductivityScale => new UnitReading.Several(ConductivityAdvice, [], HighScale / LowScale),
        _ when !due.Accepts.Contains(Dimension.MassConcentration) => new UnitReading.Known("ppm", [Dimension.MassConcentration], 1e-3),
        _ => new UnitReading.Several(
            "It can be mg/L or mg/kg, in the bottle or in what the plants get, of the salt or of one element; in a concentrate they "
                + "differ.", ["mg/L"], null),
    };

    /// <summary>What a meter's ppm can be in mS/cm, one whole text for each scale.</summary>
    public static IReadOnlyList<string> ConductivityReadings(double ppm) =>
        [.. new[] { LowScale, HighScale }.Select(scale => string.Create(CultureInfo.InvariantCulture, $"{ppm / scale:0.####} mS/cm"))];

    private static UnitReading Percent(Due due)
    {
        string[] readings =
        [
            .. due.Accepts.Contains(Dimension.MassFraction) ? ["% w/w"] : Array.Empty<string>(),
            .. due.Accepts.Contains(Dimension.MassConcentration) ? ["% w/v"] : Array.Empty<string>(),
            .. due.Accepts.Contains(Dimension.VolumeFraction) || due.Accepts.Contains(Dimension.Dose) ? ["% v/v"] : Array.Empty<string>(),
        ];
        return due.PlainPercentIsByMass || readings.Length == 0
            ? new UnitReading.Known("%", [Dimension.MassFraction], 0.01)
            : new UnitReading.Several("It can be by mass (g in 100 g), by volume (mL in 100 mL) or g in 100 mL.", readings, null);
    }
}
