using RecipeLint.Analysis;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Other ways to keep a stock: warmer, cooler, darker, for a shorter time.</summary>
internal static class Keep
{
    /// <summary>Added to degrees Celsius while a temperature is looked for, so that it has a logarithm below zero too.</summary>
    private const double Shift = 100;

    /// <summary>Warmer than this no shed is heated for a stock.</summary>
    private const double WarmestFloor = 22;

    /// <summary>The coldest it is kept at raised as far as needed, in whole degrees.</summary>
    public static RepairProposal Warmer(RepairContext context, StockFacts stock)
    {
        var (low, high) = (stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius);
        var floors = Enumerable.Range(0, 50).Select(i => Math.Floor(low) + 1 + i).TakeWhile(t => t <= WarmestFloor).ToList();
        return new RepairProposal.Tuned(
            shifted => At(context, stock, Math.Ceiling(shifted - Shift - 1e-6), high, "warmer"),
            low + Shift,
            (floors.Count > 0 ? floors[^1] : low) + Shift);
    }

    /// <summary>The warmest it is kept at lowered as far as needed, in whole degrees.</summary>
    public static RepairProposal Cooler(RepairContext context, StockFacts stock)
    {
        var (low, high) = (stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius);
        return new RepairProposal.Tuned(
            shifted => At(context, stock, low, Math.Floor(shifted - Shift + 1e-6), "cooler"),
            high + Shift,
            Math.Max(low, 10) + Shift);
    }

    /// <summary>A shorter time.</summary>
    public static Repair For(RepairContext context, StockFacts stock, double days)
    {
        var text = days < 1
            ? $"{AmountText.Write(Math.Floor(days * 24))} hours"
            : $"{AmountText.Write(Math.Floor(days + 1e-9))} {(days < 2 ? "day" : "days")}";
        return Repair.Chemistry(
            "shorter",
            $"Keep '{stock.Stock.Name}' for {text} at most, and make only what is used up by then.",
            Steps.SetInside(context, stock.Stock.Place, "keep", "for", text));
    }

    /// <summary>Out of the light.</summary>
    public static Repair Dark(RepairContext context, StockFacts stock) => Repair.Chemistry(
        "dark",
        $"Keep '{stock.Stock.Name}' in the dark, in an opaque bottle or a closed cupboard.",
        Steps.SetInside(context, stock.Stock.Place, "keep", "light", "dark"));

    private static Repair? At(RepairContext context, StockFacts stock, double low, double high, string key)
    {
        if (low > high)
        {
            return null;
        }

        var text = low == high ? $"{AmountText.Write(low)} °C" : FormattableString.Invariant($"{low}..{high} °C");
        return Repair.Chemistry(
            key,
            $"Keep '{stock.Stock.Name}' at {Say.Number(low)} to {Say.Number(high)} °C instead of "
                + $"{Say.Number(stock.StorageTemperature.Low.Celsius)} to {Say.Number(stock.StorageTemperature.High.Celsius)} °C.",
            Steps.SetInside(context, stock.Stock.Place, "keep", "at", text));
    }
}
