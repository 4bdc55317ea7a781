using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Mixing;

/// <summary>How much of a substance pure water dissolves, by the table carried with it.</summary>
public static class HandbookSolubility
{
    /// <summary>A table is used so far beyond its ends, K.</summary>
    private const double BeyondKelvin = 5;

    /// <summary>Grams of a substance that 100 g of water dissolve; null without a table, or more than 5 K outside it.</summary>
    public static double? GramsPer100GramsWater(Substance substance, double celsius)
    {
        if (substance.Solubility is not { Value: { Count: > 0 } points }
            || celsius < points[0].Temperature.Celsius - BeyondKelvin
            || celsius > points[^1].Temperature.Celsius + BeyondKelvin)
        {
            return null;
        }

        var upper = points.TakeWhile(p => p.Temperature.Celsius < celsius).Count();
        if (upper == 0 || upper == points.Count)
        {
            return points[upper == 0 ? 0 : ^1].GramsPer100GramsWater;
        }

        var (low, high) = (points[upper - 1], points[upper]);
        var share = (celsius - low.Temperature.Celsius) / (high.Temperature.Celsius - low.Temperature.Celsius);
        return low.GramsPer100GramsWater + (share * (high.GramsPer100GramsWater - low.GramsPer100GramsWater));
    }
}
