using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>How strong a stock can be made before something falls out at its coldest storage temperature.</summary>
/// <param name="Factor">On the present strength: 0.5 is half as strong; null when none was found.</param>
/// <param name="Dilution">N of the dose 1:N such a stock is made for; null when the stock states no dose.</param>
/// <param name="StoppedBy">What falls out, or comes close, just above; empty when nothing does up to <see cref="MostFactor"/>.</param>
/// <param name="Failure">Why there is no answer; null when there is one.</param>
public sealed record HighestConcentration(double? Factor, double? Dilution, IReadOnlyList<Solid> StoppedBy, string? Failure)
{
    /// <summary>Stocks are not looked at above this many times their strength.</summary>
    public const double MostFactor = 8;

    /// <summary>Nor below this part of it.</summary>
    public const double LeastFactor = 1.0 / 64;

    private const double RelativeWidth = 0.003;

    /// <summary>Searches up from a clear stock and down from a cloudy one. A pure function of the stock.</summary>
    public static HighestConcentration Of(StockFacts stock) =>
        Of(stock.Chemistry.Mix, stock.StorageTemperature.Low, stock.Stock.Dose?.Value);

    /// <param name="dose">The dose the stock is made for now.</param>
    public static HighestConcentration Of(SolutionMix mix, Temperature at, Dose? dose, Solid? only = null)
    {
        if (mix.Failure is { } failure)
        {
            return new HighestConcentration(null, null, [], failure);
        }

        var celsius = Math.Clamp(at.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);
        var now = Clearness.Of(mix, celsius, only);
        if (now.Failure is { } lost)
        {
            return new HighestConcentration(null, null, [], lost);
        }

        double clear = 1, cloudy = 1;
        IReadOnlyList<Clouding> stops = now.Cloudings;
        if (now.IsClear)
        {
            while (clear < MostFactor)
            {
                cloudy = Math.Min(clear * 1.5, MostFactor);
                var next = Clearness.Of(mix.Times(cloudy), celsius, only);
                if (!next.IsClear)
                {
                    stops = next.Cloudings;
                    break;
                }

                clear = cloudy;
            }

            if (clear >= MostFactor)
            {
                return new HighestConcentration(MostFactor, DilutionOf(dose, MostFactor), [], null);
            }
        }
        else
        {
            while (true)
            {
                clear = cloudy / 1.5;
                if (clear < LeastFactor)
                {
                    return new HighestConcentration(null, null, Solids(stops), null);
                }

                var next = Clearness.Of(mix.Times(clear), celsius, only);
                if (next.IsClear)
                {
                    break;
                }

                cloudy = clear;
                stops = next.Cloudings.Count > 0 ? next.Cloudings : stops;
            }
        }

        while (cloudy / clear > 1 + RelativeWidth)
        {
            var middle = Math.Sqrt(clear * cloudy);
            var next = Clearness.Of(mix.Times(middle), celsius, only);
            if (next.IsClear)
            {
                clear = middle;
            }
            else
            {
                cloudy = middle;
                stops = next.Cloudings.Count > 0 ? next.Cloudings : stops;
            }
        }

        return new HighestConcentration(clear, DilutionOf(dose, clear), Solids(stops), null);
    }

    private static double? DilutionOf(Dose? dose, double factor) => dose is { LitresPerLitre: > 0 } now ? now.Dilution * factor : null;

    private static IReadOnlyList<Solid> Solids(IReadOnlyList<Clouding> cloudings) =>
        [.. cloudings.OrderByDescending(c => c.Mass?.GramsPerLitre ?? 0).ThenBy(c => c.Solid.Name, StringComparer.Ordinal).Select(c => c.Solid)];
}
