using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Order;

/// <summary>The water a stock is begun with: as the file pours it, in one go before anything else.</summary>
internal sealed class StartWater
{
    private const int Halvings = 10;

    /// <summary>Least part of the mark that can be stirred (common practice, no source).</summary>
    private const double LeastPart = 0.1;

    /// <summary>
    /// Strongest that a liquid acid is left standing in the vessel unless the stock itself is stronger, by mass (common practice, no
    /// source).
    /// </summary>
    private const double StrongestAcid = 0.05, AboveTheStock = 1.5;

    private readonly IReadOnlyList<WaterFacts> _waters;
    private readonly double _poured;
    private readonly VesselContents _rest;

    public StartWater(StockFacts stock, IReadOnlyList<OrderUnit> units)
    {
        var mark = stock.Stock.Steps.OfType<TopUpStep>().LastOrDefault();
        Mark = mark?.To is { Value.Litres: > 0 and var litres } ? litres : stock.Volume.Litres;
        var pours = stock.Stock.Steps.Where(s => s is PourStep).Select(s => s.Place).ToHashSet();
        _waters = [.. stock.Waters.Where(w => pours.Contains(w.Place))];
        _poured = _waters.Sum(w => w.Volume.Litres);
        if (_poured <= 0 && mark is not null)
        {
            _waters = [.. stock.Waters.Where(w => w.Place == mark.Place)];
        }

        InFile = _poured > 0 ? _poured : null;
        _rest = units.Aggregate(VesselContents.Empty, (c, u) => c.After(u.Step, stock));
    }

    /// <summary>L that the file pours before it tops up; null when it pours none.</summary>
    public double? InFile { get; }

    /// <summary>L that the vessel is filled up to.</summary>
    public double Mark { get; }

    /// <summary>The vessel with so many litres, in the file's proportion where it pours different waters.</summary>
    public VesselContents Pour(double litres)
    {
        var all = _waters.Sum(w => w.Volume.Litres);
        return all <= 0
            ? VesselContents.Empty.WithPureWater(new Volume(litres))
            : _waters.Aggregate(VesselContents.Empty, (c, w) => c.With(w, new Volume(litres * w.Volume.Litres / all)));
    }

    /// <summary>L of water that leave room to top up once everything else is in; at least a tenth of the mark.</summary>
    /// <param name="room">Part of the mark to keep free.</param>
    public double Most(double room)
    {
        // Volumes hardly depend on the water there is: what the rest takes up in a vessel filled to the mark is near enough.
        var full = _rest.WithPureWater(new Volume(Mark));
        return Math.Max(LeastPart * Mark, Mark - (full.Litres - Mark) - (room * Mark));
    }

    /// <summary>
    /// Least water, L rounded up to two digits, in which nothing lies in the vessel at any step of an order and no liquid acid stands
    /// strong; at least a tenth of the mark, null when none does. More water is taken never to hurt.
    /// </summary>
    public double? Smallest(StockFacts stock, IReadOnlyList<OrderUnit> order, double celsius, double room)
    {
        double most = Most(room), low = Math.Min(most, Math.Max(LeastPart * Mark, WaterForAcid())), high = most;
        if (!Clear(most))
        {
            return null;
        }

        high = Clear(low) ? low : high;
        for (var i = 0; i < Halvings && high > low; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Clear(middle) ? (low, middle) : (middle, high);
        }

        return Math.Min(most, Rounding.TwoDigitsUp(high));

        bool Clear(double litres) => new OrderProblem(stock, [.. order.OrderBy(u => u.Index)], Pour(litres), celsius).StaysClear(order);
    }

    /// <summary>L of water in which liquid acids are weak enough to go on working over.</summary>
    private double WaterForAcid()
    {
        var acid = _rest.Additions
            .Where(a => a is { ThroughAliquot: false, Substance: { Kind: SubstanceKind.Acid, Form: PhysicalForm.Liquid } })
            .Sum(VesselContents.PureGrams);
        var limit = Math.Max(StrongestAcid, AboveTheStock * acid / (1000 * Mark));
        return acid / limit / 1000;
    }
}
