namespace RecipeLint.Reports.Pictures;

/// <summary>Ends of axes: round figures that leave nothing outside.</summary>
internal static class Scales
{
    /// <summary>From 0 to a round figure above all values.</summary>
    public static (double Least, double Most) FromZero(IEnumerable<double> values)
    {
        var most = values.Where(double.IsFinite).DefaultIfEmpty(1).Max();
        return (0, most > 0 ? Round(1.05 * most) : 1);
    }

    /// <summary>Powers of ten around all values above zero.</summary>
    public static (double Least, double Most) Log(IEnumerable<double> values)
    {
        var known = values.Where(v => v > 0 && double.IsFinite(v)).DefaultIfEmpty(1).ToList();
        return (Math.Pow(10, Math.Floor(Math.Log10(known.Min()))), Math.Pow(10, Math.Ceiling(Math.Log10(known.Max() * 1.05))));
    }

    /// <summary>Whole numbers around all values, and around what must be seen.</summary>
    public static (double Least, double Most) Around(IEnumerable<double> values, params double[] seen)
    {
        var known = values.Where(double.IsFinite).Concat(seen).DefaultIfEmpty(0).ToList();
        var (least, most) = (Math.Floor(known.Min() - 0.1), Math.Ceiling(known.Max() + 0.1));
        return (least, most);
    }

    private static double Round(double value)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return new[] { 1, 1.5, 2, 3, 4, 5, 6, 8, 10 }.Select(f => f * step).First(v => v >= value);
    }
}
