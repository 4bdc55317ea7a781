using System.Globalization;

namespace RecipeLint.Chemistry.Physical;

/// <summary>One strength of an acid or base in every unit a bottle may carry.</summary>
/// <param name="MassPercent">g of the pure substance per 100 g; null when not given.</param>
/// <param name="DensityGramsPerMl">g/mL at the temperature asked for.</param>
/// <param name="MolPerLitre">mol of the pure substance per litre.</param>
/// <param name="GramsPerLitre">g of the pure substance per litre.</param>
/// <param name="EstimateBecause">Reasons why the value is an estimate; empty inside the tables.</param>
/// <param name="NotGivenBecause">Why there is no value, or null.</param>
public sealed record StrengthReading(
    double? MassPercent, double? DensityGramsPerMl, double? MolPerLitre, double? GramsPerLitre,
    IReadOnlyList<string> EstimateBecause, string? NotGivenBecause);

/// <summary>
/// Density and molar strength of an acid, base or other bottled liquid by mass per cent, from the handbook table at 20 °C
/// (acid-and-base-density.json) carried to other temperatures by the ratio of Laliberté's correlation.
/// </summary>
public sealed class AcidStrength
{
    private const double TableTemperatureC = 20;
    private readonly double[] _massPercent;
    private readonly double[] _density;
    private readonly double[] _slope;
    private readonly TemperatureCurve? _curve;

    internal AcidStrength(
        string formula, string name, double gramsPerMol, TemperatureCurve? curve, ReadOnlySpan<double> massPercentAndDensity)
    {
        (Formula, Name, GramsPerMol, _curve) = (formula, name, gramsPerMol, curve);
        var count = (massPercentAndDensity.Length / 2) + 1;
        (_massPercent, _density, _slope) = (new double[count], new double[count], new double[count]);
        _density[0] = Water.Density(TableTemperatureC);
        for (var i = 1; i < count; i++)
            (_massPercent[i], _density[i]) = (massPercentAndDensity[(2 * i) - 2], massPercentAndDensity[(2 * i) - 1]);
        for (var i = 0; i < count; i++)
            _slope[i] = SlopeAt(i);
    }

    /// <summary>Every substance with a table.</summary>
    public static IReadOnlyList<AcidStrength> All => StrengthTable.All;

    public string Formula { get; }

    public string Name { get; }

    /// <summary>Molar mass of the pure substance, g/mol.</summary>
    public double GramsPerMol { get; }

    /// <summary>Strongest solution in the table, mass per cent.</summary>
    public double MaxMassPercent => _massPercent[^1];

    /// <summary>The table of a substance by its formula ("HNO3") or name ("nitric acid"); null when there is none.</summary>
    public static AcidStrength? Find(string formulaOrName)
    {
        foreach (var table in StrengthTable.All)
        {
            if (string.Equals(table.Formula, formulaOrName, StringComparison.Ordinal)
                || string.Equals(table.Name, formulaOrName, StringComparison.OrdinalIgnoreCase))
                return table;
        }

        return null;
    }

    /// <summary>Reading for a strength in mass per cent (g per 100 g), 0 to <see cref="MaxMassPercent"/>, at 0 to 45 °C.</summary>
    public StrengthReading AtMassPercent(double massPercent, double temperatureC = TableTemperatureC)
    {
        if (RefuseTemperature(temperatureC) is { } refusal)
            return NotGiven(refusal);
        if (!(massPercent >= 0 && massPercent <= MaxMassPercent))
            return NotGiven(string.Create(CultureInfo.InvariantCulture, $"the table of {Name} ends at {MaxMassPercent:0.##} % by mass"));
        var because = new List<string>();
        var density = Density(massPercent, temperatureC, because);
        return new StrengthReading(
            massPercent, density, 10 * massPercent * density / GramsPerMol, 10 * massPercent * density, because, null);
    }

    /// <summary>
    /// Reading for a strength in g of the pure substance per litre at <paramref name="temperatureC"/> (w/v per cent times 10).
    /// </summary>
    public StrengthReading AtGramsPerLitre(double gramsPerLitre, double temperatureC = TableTemperatureC)
    {
        if (RefuseTemperature(temperatureC) is { } refusal)
            return NotGiven(refusal);
        var strongest = 10 * MaxMassPercent * Density(MaxMassPercent, temperatureC, null);
        if (!(gramsPerLitre >= 0 && gramsPerLitre <= strongest))
            return NotGiven(string.Create(CultureInfo.InvariantCulture, $"the table of {Name} ends at {strongest:0} g/L"));
        double low = 0, high = MaxMassPercent;
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (10 * middle * Density(middle, temperatureC, null) < gramsPerLitre)
                low = middle;
            else
                high = middle;
        }

        return AtMassPercent((low + high) / 2, temperatureC);
    }

    /// <summary>Reading for a strength in mol/L at <paramref name="temperatureC"/>.</summary>
    public StrengthReading AtMolPerLitre(double molPerLitre, double temperatureC = TableTemperatureC) =>
        AtGramsPerLitre(molPerLitre * GramsPerMol, temperatureC);

    private static StrengthReading NotGiven(string because) => new(null, null, null, null, [], because);

    private static string? RefuseTemperature(double temperatureC) =>
        temperatureC is >= 0 and <= 45 ? null : "densities of acids and bases are given from 0 to 45 °C";

    private double Density(double massPercent, double temperatureC, List<string>? because)
    {
        var at20 = Interpolate(massPercent);
        if (temperatureC == TableTemperatureC)
            return at20;
        if (_curve is null)
        {
            because?.Add($"the temperature dependence of {Name} is taken from water");
            return at20 * Water.Density(temperatureC) / Water.Density(TableTemperatureC);
        }

        if (massPercent > _curve.MassPercentUpTo)
            because?.Add(string.Create(
                CultureInfo.InvariantCulture, $"the temperature dependence is that of {_curve.MassPercentUpTo:0.#} % {Name}"));
        if (temperatureC < _curve.MinC || temperatureC > _curve.MaxC || TableTemperatureC < _curve.MinC)
            because?.Add(string.Create(
                CultureInfo.InvariantCulture, $"the temperature dependence was measured from {_curve.MinC:0.#} to {_curve.MaxC:0.#} °C"));
        var w = Math.Min(massPercent, _curve.MassPercentUpTo) / 100;
        return at20 * _curve.Density(w, temperatureC) / _curve.Density(w, TableTemperatureC);
    }

    private double Interpolate(double massPercent)
    {
        var right = Array.BinarySearch(_massPercent, massPercent);
        if (right >= 0)
            return _density[right];
        right = ~right;
        var left = right - 1;
        var h = _massPercent[right] - _massPercent[left];
        var s = (massPercent - _massPercent[left]) / h;
        double s2 = s * s, s3 = s2 * s;
        return (((2 * s3) - (3 * s2) + 1) * _density[left]) + ((s3 - (2 * s2) + s) * h * _slope[left])
            + (((3 * s2) - (2 * s3)) * _density[right]) + ((s3 - s2) * h * _slope[right]);
    }

    // Slope of the parabola through three neighbouring rows: smooth, and exact for the gentle curves these tables are.
    private double SlopeAt(int i)
    {
        var m = Math.Clamp(i, 1, _massPercent.Length - 2);
        double h0 = _massPercent[m] - _massPercent[m - 1], h1 = _massPercent[m + 1] - _massPercent[m];
        double d0 = (_density[m] - _density[m - 1]) / h0, d1 = (_density[m + 1] - _density[m]) / h1;
        var curvature = (d1 - d0) / (h0 + h1);
        return d0 + (curvature * ((2 * _massPercent[i]) - _massPercent[m - 1] - _massPercent[m]));
    }
}
