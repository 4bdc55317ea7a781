using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// How cold and warm a stock stands, in words that keep what its file says apart from what is taken where it says nothing; the only place
/// that words it.
/// </summary>
public static class KeptWords
{
    /// <summary>Ends "at 8 °C, ...": "the coldest it is kept at", or that the model ends there.</summary>
    public static string Coldest(StockFacts stock) => IsColderThanTheModel(stock) ? ModelEnds : End(stock, "coldest");

    /// <summary>Ends "at 25 °C, ...": "the warmest it is kept at", or that the model ends there.</summary>
    public static string Warmest(StockFacts stock) => IsWarmerThanTheModel(stock) ? ModelEnds : End(stock, "warmest");

    /// <summary>True for a stock kept below 0 °C, which is judged at 0 °C.</summary>
    public static bool IsColderThanTheModel(StockFacts stock) => stock.StorageTemperature.Low.Celsius < SolutionInput.LowestCelsius;

    /// <summary>True for a stock kept above 45 °C, which is judged at 45 °C.</summary>
    public static bool IsWarmerThanTheModel(StockFacts stock) => stock.StorageTemperature.High.Celsius > SolutionInput.HighestCelsius;

    /// <summary>"kept at 8 to 25 °C", with who says so where its file does not.</summary>
    public static string Span(StockFacts stock)
    {
        var (low, high) = (stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius);
        return $"kept at {Say.Number(low)} to {Say.Number(high)} °C{Assumed(stock)}";
    }

    /// <summary>" (assumed from ...: its file does not say)"; empty where the file says how it is kept.</summary>
    public static string Assumed(StockFacts stock) => stock.StorageSource switch
    {
        StorageSource.Stated => "",
        StorageSource.Sites => " (assumed from the sites of the shop: its file does not say)",
        _ => " (assumed: nothing says how it is kept)",
    };

    private const string ModelEnds = "where the model ends";

    private static string End(StockFacts stock, string extreme) => stock.StorageSource switch
    {
        StorageSource.Stated => $"the {extreme} it is kept at",
        StorageSource.Sites => $"the {extreme} of the shop's sites, assumed as its file names none",
        _ => $"the {extreme} assumed, as nothing says how it is kept",
    };
}
