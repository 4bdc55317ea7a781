using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>A vessel that holds less than the stock makes.</summary>
public sealed class VesselTooSmall : StockRule
{
    public override string Name => "vessel-too-small";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!Overflows(stock) || stock.Stock.Vessel is not { } vessel || CapacityOf(stock) is not { } capacity)
        {
            yield break;
        }

        var makes = stock.Volume.Litres;
        var fit = stock.Settings.Vessels
            .Where(v => v.Capacity is { } held && held >= stock.Volume)
            .OrderBy(v => v.Capacity!.Value)
            .ThenBy(v => v.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        var instead = fit is null ? "Name a vessel that holds it with room to stir" : $"Take '{fit.Name}', which holds {Say.Litres(fit.Capacity!.Value.Litres)}";
        var message = $"'{stock.Stock.Name}' makes {Say.Litres(makes)}, but its vessel '{vessel.Value}' holds {Say.Litres(capacity.Litres)}. "
            + $"It runs over, or is left {Say.Litres(makes - capacity.Litres)} short and everything in it {Say.Number(makes / capacity.Litres)} times as strong. "
            + $"{instead}, or write what is really made.";
        yield return context.Find(vessel.Place, message) with
        {
            Measured = new Measured("finished volume", makes, capacity.Litres, "L"),
            Values = [new NamedValue("finished volume", makes, "L"), new NamedValue("capacity", capacity.Litres, "L")],
            Related = [new RelatedPlace(stock.Stock.Makes?.Place ?? stock.Stock.Place, "what the stock makes")],
        };
    }

    internal static bool Overflows(StockFacts stock) =>
        CapacityOf(stock) is { Litres: > 0 } capacity && Rounding.SixDigits(stock.Volume / capacity) > 1;

    /// <summary>Of the vessel or measure the stock names; null where it names none or its size is not stated.</summary>
    private static Volume? CapacityOf(StockFacts stock) =>
        stock.Stock.Vessel is not { } named
            ? null
            : stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value)?.Capacity ?? stock.Settings.FindMeasure(named.Value)?.Capacity;
}
