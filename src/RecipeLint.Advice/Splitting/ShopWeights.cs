using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Advice.Splitting;

/// <summary>Weights as the scales of a shop show them.</summary>
internal static class ShopWeights
{
    private const int Digits = 4;

    /// <summary>
    /// The finest scale that carries it in the lightest vessel of the shop; else the one that carries most, for weighing in portions; null
    /// where the shop has none.
    /// </summary>
    public static Scale? ScaleFor(Mass mass, ShopSettings shop)
    {
        var tare = shop.Vessels.Select(v => v.Tare).OfType<Mass>().DefaultIfEmpty(Mass.Zero).Min();
        return shop.Scales
            .Where(s => s.Readability.Grams > 0 && (s.Capacity is not { } capacity || capacity >= mass + tare))
            .OrderBy(s => s.Readability)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .FirstOrDefault()
        ?? shop.Scales
            .Where(s => s.Readability.Grams > 0)
            .OrderByDescending(s => s.Capacity?.Grams ?? 0)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    /// <summary>To the step of the scale it is weighed on; to four digits where the shop has no scale.</summary>
    public static Mass Round(Mass mass, ShopSettings shop)
    {
        if (ScaleFor(mass, shop) is not { } scale)
        {
            return new Mass(Significant(mass.Grams));
        }

        // A sum of steps such as 0.1 has a last bit of its own; twelve decimals drop it.
        var step = scale.Readability.Grams;
        return new Mass(Math.Round(Math.Round(mass.Grams / step) * step, 12));
    }

    /// <summary>To four digits.</summary>
    public static Volume Round(Volume volume) => Volume.FromMillilitres(Significant(volume.Millilitres));

    /// <summary>True when its scale neither shows nor repeats it well enough.</summary>
    public static bool IsTooLittle(Mass mass, Scale scale, SplitLimits limits)
    {
        var weighing = new Weighing(scale, mass);
        return Rounding.SixDigits(mass / scale.Readability) < limits.DisplaySteps
            || weighing.RelativeExpanded is not { } relative
            || Rounding.SixDigits(relative) > limits.WeighingUncertainty;
    }

    private static double Significant(double value)
    {
        if (value == 0)
        {
            return 0;
        }

        var decimals = Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (decimals > 15)
        {
            return value;
        }

        var unit = Math.Pow(10, Math.Abs(decimals));
        return decimals >= 0 ? Math.Round(value, decimals) : Math.Round(value / unit) * unit;
    }
}
