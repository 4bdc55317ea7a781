using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>With what the finished volume of a stock is measured.</summary>
/// <param name="Pouring">The measure and the volume.</param>
/// <param name="IsStated">True when the file names one of the shop's measures as its vessel; false when the best the shop has for it is
/// assumed.</param>
/// <param name="Place">The vessel as the stock names it, else the whole stock.</param>
public sealed record FinishedVolume(Pouring Pouring, bool IsStated, Place Place)
{
    /// <summary>
    /// The vessel where it is one of the shop's measures; else the best of the vessel's own mark (some vessel's, where none is named) and
    /// the shop's measures that hold the volume in one filling. Null where neither a vessel nor any measure is known.
    /// </summary>
    public static FinishedVolume? Of(StockFacts stock)
    {
        var (document, shop) = (stock.Stock, stock.Settings);
        var place = document.Vessel?.Place ?? document.Place;
        if (document.Vessel is { } named && shop.FindMeasure(named.Value) is { } stated)
        {
            return new FinishedVolume(Pouring.Of(stated, stock.Volume), true, place);
        }

        if (document.Vessel is null && shop.Measures.Count == 0)
        {
            return null;
        }

        var best = shop.Measures.Where(m => CanHold(m, stock.Volume))
            .Append(Marked(stock))
            .Select(m => Pouring.Of(m, stock.Volume))
            .OrderBy(p => p.Standard)
            .ThenBy(p => p.Measure.Name, StringComparer.Ordinal)
            .First();
        return new FinishedVolume(best, false, place);
    }

    /// <summary>A flask holds one volume only; a cylinder or jug any up to its capacity.</summary>
    private static bool CanHold(Measure measure, Volume volume) => measure switch
    {
        { Kind: MeasureKind.Flask, Capacity: { } capacity } => Math.Abs((capacity / volume) - 1) < 1e-6,
        { Kind: MeasureKind.Cylinder or MeasureKind.Jug, Capacity: { } capacity } => capacity.Litres >= volume.Litres * (1 - 1e-9),
        _ => false,
    };

    /// <summary>The marks of a vessel are those of a jug; a vessel nobody names has one at just the finished volume.</summary>
    private static Measure Marked(StockFacts stock)
    {
        var named = stock.Stock.Vessel;
        var vessel = named is null ? null : stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value);
        var place = vessel?.Place ?? named?.Place ?? stock.Stock.Place;
        return new Measure(
            named?.Value ?? "vessel mark", place, MeasureKind.Jug, named is null ? stock.Volume : vessel?.Capacity, null, null);
    }
}
