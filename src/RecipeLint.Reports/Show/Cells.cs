using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>Figures as cells: a number without its unit, which stands in the head.</summary>
internal static class Cells
{
    /// <summary>meq/L; a thousandth is less than any test shows (common practice, no source).</summary>
    private const double LeastAlkalinity = 1e-3;

    public static string Number(double? value) => value is { } number && double.IsFinite(number) ? Say.Number(number) : "";

    public static string Range(double? low, double? high) => (low, high) switch
    {
        ({ } l, { } h) => l == h ? Say.Number(l) : $"{Say.Number(l)} to {Say.Number(h)}",
        ({ } l, null) => $"from {Say.Number(l)}",
        (null, { } h) => $"to {Say.Number(h)}",
        _ => "",
    };

    public static string Range(Interval<double> range) => Range(range.Low, range.High);

    public static string Celsius(Temperature temperature) => $"{Say.Number(temperature.Celsius)} °C";

    /// <summary>A pH has two decimals, whatever its size.</summary>
    public static string Ph(double? ph) => ph is { } value && double.IsFinite(value)
        ? PhDoubt.OffTheScale(value) ?? value.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)
        : "";

    /// <summary>The pH of a state, or that it is not known.</summary>
    public static string Ph(SolutionState state) => PhDoubt.In(state.Mix) ? "not known" : Ph(state.Ph);

    /// <summary>Less than any test shows is printed as none.</summary>
    public static string Alkalinity(double milliequivalents) => Number(Math.Abs(milliequivalents) < LeastAlkalinity ? 0 : milliequivalents);
}
