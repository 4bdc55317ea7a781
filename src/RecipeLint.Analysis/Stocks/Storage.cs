using System.Globalization;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Stocks;

/// <summary>How cold and warm a stock gets on the shelf.</summary>
internal static class Storage
{
    public const string AssumptionKey = "storage-temperature";

    /// <summary>An unheated shed that does not freeze (common practice, no source).</summary>
    private static readonly Interval<Temperature> Shed = new(new Temperature(5), new Temperature(30));

    /// <summary>What the stock states; else the span of the shop's sites; else 5 to 30 °C.</summary>
    public static (Interval<Temperature> At, StorageSource Source) Of(
        StockDocument stock, ShopSettings shop, AssumptionList assumptions)
    {
        if (stock.Keep?.At is { } stated)
        {
            return (stated.Value, StorageSource.Stated);
        }

        if (shop.Sites.Count == 0)
        {
            assumptions.Add(AssumptionKey, $"No storage temperature is stated: {Text(Shed)} is taken.", stock.Place);
            return (Shed, StorageSource.Assumed);
        }

        var span = new Interval<Temperature>(shop.Sites.Min(s => s.At.Low), shop.Sites.Max(s => s.At.High));
        var where = shop.Sites.Count == 1 ? $"that of '{shop.Sites[0].Name}'" : "the span of all sites";
        assumptions.Add(AssumptionKey, $"No storage temperature is stated: {where}, {Text(span)}, is taken.", stock.Place);
        return (span, StorageSource.Sites);
    }

    private static string Text(Interval<Temperature> span) =>
        string.Create(CultureInfo.InvariantCulture, $"{span.Low.Celsius:0.##} to {span.High.Celsius:0.##} °C");
}
