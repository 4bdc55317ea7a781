namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Clean peroxide in a closed bottle: slowly it gives off oxygen by itself, and where it is strong, warm and kept long that is enough to
/// burst what has no vent.
/// </summary>
public static class KeptPeroxide
{
    /// <summary>Part of it that goes in a year at 20 °C (recalled: makers of stabilised grades state less than 1 %).</summary>
    private const double InAYear = 0.01;

    /// <summary>Times as fast for 10 °C more (recalled: 2.2 to 2.3).</summary>
    private const double TenDegrees = 2.2;

    private const double DaysOfYear = 365.25, Usual = 20;

    /// <summary>Litres of oxygen a litre gives off while it is kept, at its warmest; null where that does not count.</summary>
    public static Hazard? Of(StockFacts stock)
    {
        if (stock.Stock.Keep?.For?.Value.Days is not { } days
            || HazardGate.Of(stock).Find(HazardKind.OxygenPressure) is not { Grade: HazardGrade.Possible, From: { } peroxide } hazard)
        {
            return null;
        }

        var share = Math.Min(1, InAYear * days / DaysOfYear * Math.Pow(TenDegrees, (stock.StorageTemperature.High.Celsius - Usual) / 10));
        var litres = share * hazard.Value;
        return litres < HazardLimits.Default.Gas.BriskFrom ? null : hazard with
        {
            From = peroxide,
            Value = litres,
            Limit = HazardLimits.Default.Gas.BriskFrom,
        };
    }
}
