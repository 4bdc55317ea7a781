using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>The scale or measure for one amount, and what it shows of it.</summary>
/// <param name="Step">Smallest step, g or L.</param>
/// <param name="Shown">The amount in whole steps.</param>
/// <param name="Portions">How often it has to be filled.</param>
internal sealed record Tool(string Name, double Step, double Shown, int Portions)
{
    /// <summary>
    /// The scale the file names, where it carries the batch; else of the shop's that carry it the finest. Null where none does.
    /// </summary>
    public static Tool? ForMass(StockFacts stock, AdditionFacts addition)
    {
        var named = addition is { Scale: { } own, EquipmentStated: true } && Carries(own, addition.Mass) ? own : null;
        return named is null
            ? ForMass(stock.Settings, addition.Mass)
            : new Tool(named.Name, named.Readability.Grams, Rounded(addition.Mass.Grams, named.Readability.Grams), 1);
    }

    /// <summary>Of the shop's scales that carry a mass the finest; null where none does.</summary>
    public static Tool? ForMass(ShopSettings shop, Mass mass) =>
        shop.Scales.Where(s => Carries(s, mass)).OrderBy(s => s.Readability).FirstOrDefault() is { } scale
            ? new Tool(scale.Name, scale.Readability.Grams, Rounded(mass.Grams, scale.Readability.Grams), 1)
            : null;

    /// <summary>
    /// The measure the file names; else the smallest of the shop's that holds it, else the largest, filled several times.
    /// </summary>
    public static Tool? ForVolume(ShopSettings shop, Volume volume, Measure? named)
    {
        var usable = shop.Measures
            .Where(m => m is { Capacity: not null, Readability: not null } && m.Kind != MeasureKind.Injector)
            .ToList();
        var measure = named is { Capacity: not null, Readability: not null } && named.Capacity >= volume ? named
            : usable.Where(m => m.Capacity >= volume).OrderBy(m => m.Capacity).FirstOrDefault()
                ?? usable.OrderByDescending(m => m.Capacity).FirstOrDefault();
        if (measure is not { Capacity: { } capacity, Readability: { } step })
        {
            return null;
        }

        var portions = (int)Math.Ceiling(Math.Round(volume / capacity, 9));
        return new Tool(measure.Name, step.Litres, Rounded(volume.Litres, step.Litres), Math.Max(1, portions));
    }

    private static bool Carries(Scale scale, Mass mass) => new Weighing(scale, mass).Load(null) is ScaleLoad.Within or ScaleLoad.Unknown;

    /// <summary>Whole steps of a display; the figure a step is written with decides the decimals, not the binary fraction.</summary>
    private static double Rounded(double value, double step) =>
        (double)(Math.Round((decimal)(value / step), MidpointRounding.AwayFromZero) * (decimal)step);
}
