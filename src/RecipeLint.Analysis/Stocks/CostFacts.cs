using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Stocks;

/// <summary>What one substance of a stock costs.</summary>
/// <param name="Mass">In the whole batch.</param>
/// <param name="Cost">In the shop's currency; null without a declared price, or where it is bought by a volume that is not known.</param>
public sealed record CostShare(Substance Substance, Mass Mass, double? Cost);

/// <summary>What a stock costs by the prices that its shop declares. Water, work and bottles cost nothing here.</summary>
/// <param name="Shares">By substance, the dearest first; those without a price last.</param>
/// <param name="Volume">Of the batch.</param>
/// <param name="Currency">As it is printed; empty when the shop states none.</param>
public sealed record CostFacts(IReadOnlyList<CostShare> Shares, Volume Volume, string Currency)
{
    /// <summary>Of what has a price.</summary>
    public double Batch => Shares.Sum(s => s.Cost ?? 0);

    public double PerLitre => Batch / Volume.Litres;

    /// <summary>Substances that no price is declared for.</summary>
    public IEnumerable<Substance> Unpriced => Shares.Where(s => s.Cost is null).Select(s => s.Substance);

    /// <summary>Null where the shop declares no prices.</summary>
    public static CostFacts? Of(StockFacts stock) => Of(
        stock.Settings,
        [
            .. stock.Additions.Select(a => Part(a, 1)),
            .. stock.Adjustments.Where(a => a is { Reagent: not null, Amount: not null }).Select(a => Part(a, 1)),
        ],
        stock.Volume);

    /// <summary>What the solution that the plants get costs; null where the shop declares no prices.</summary>
    public static CostFacts? Of(RecipeFacts recipe)
    {
        var put = recipe.Doses.SelectMany(d => d.Stock is { } stock
            ? stock.Additions.Select(a => Part(a, d.Volume / stock.Volume)).Concat(
                stock.Adjustments.Where(a => a is { Reagent: not null, Amount: not null }).Select(a => Part(a, d.Volume / stock.Volume)))
            : d.Direct is { } direct ? [Part(direct, 1)] : []).ToList();
        if (recipe.Adjustment is { Reagent: not null, Amount: not null } adjustment)
        {
            put.Add(Part(adjustment, 1));
        }

        return Of(recipe.Settings, put, recipe.FinalVolume);
    }

    private static CostFacts? Of(
        ShopSettings settings, IReadOnlyList<(Substance Substance, Mass Mass, Volume? Volume)> put, Volume volume)
    {
        if (settings.Prices.Count == 0 || volume <= Volume.Zero)
        {
            return null;
        }

        var prices = settings.Prices.Where(p => p.Substance is not null)
            .GroupBy(p => p.Substance!.Id, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var shares = put.GroupBy(p => p.Substance.Id, StringComparer.Ordinal).Select(g => new CostShare(
            g.First().Substance,
            g.Aggregate(Mass.Zero, (sum, p) => sum + p.Mass),
            prices.TryGetValue(g.Key, out var price) ? Cost(price, [.. g]) : null));
        return new CostFacts(
            [.. shares.OrderByDescending(s => s.Cost ?? -1).ThenBy(s => s.Substance.Id, StringComparer.Ordinal)],
            volume,
            settings.Currency ?? "");
    }

    private static (Substance Substance, Mass Mass, Volume? Volume) Part(AdditionFacts addition, double share) =>
        (addition.Substance, addition.Mass * share, addition.Volume is { } volume ? volume * share : null);

    private static (Substance Substance, Mass Mass, Volume? Volume) Part(PhAdjustmentFacts adjustment, double share) =>
        (adjustment.Reagent!, adjustment.Amount!.Value * share, adjustment.Volume is { } volume ? volume * share : null);

    private static double? Cost(Price price, IReadOnlyList<(Substance Substance, Mass Mass, Volume? Volume)> put)
    {
        if (price.Mass is { } bag)
        {
            return put.Sum(p => p.Mass / bag) * price.Cost;
        }

        // Bought by volume and weighed: by its density, where that is known.
        var litres = put.Select(p => p.Volume ?? (p.Substance.Density is { } density ? p.Mass / density.Value : null)).ToList();
        return price.Volume is { } bottle && litres.All(l => l is not null) ? litres.Sum(l => l!.Value / bottle) * price.Cost : null;
    }
}
