using System.Globalization;

namespace RecipeLint.Chemistry.Physical;

/// <summary>Density of a solution, and how far to trust it.</summary>
/// <param name="State">Volume and mass per kg of water; null when <paramref name="NotGivenBecause"/> says why.</param>
/// <param name="SpeciesWithoutVolume">Species present whose volume nobody measured (0.55 cm³/g, or nothing without a molar mass).</param>
/// <param name="EstimateBecause">Empty inside the checked range; otherwise each reason why the value is an estimate.</param>
/// <param name="NotGivenBecause">Why there is no value, or null.</param>
public sealed record DensityResult(
    VolumeState? State, IReadOnlyList<string> SpeciesWithoutVolume, IReadOnlyList<string> EstimateBecause, string? NotGivenBecause)
{
    /// <summary>Density in g/mL, or null.</summary>
    public double? GramsPerMl => State?.DensityGramsPerMl;
}

/// <summary>Concentrations in the other unit, or the reason why not.</summary>
/// <param name="Amounts">mol/L or mol per kg of water, as the function that made it says; null when not given.</param>
/// <param name="State">Volume and mass per kg of water.</param>
/// <param name="NotGivenBecause">Why there is no value, or null.</param>
public sealed record ConversionResult(IReadOnlyDictionary<string, double>? Amounts, VolumeState? State, string? NotGivenBecause);

/// <summary>
/// Density, molarity and molality of a composition given by species names. Pure functions over <see cref="SolutionVolume"/>.
/// </summary>
public static class SolutionDensity
{
    // Half a part in a thousand of the volume: a tenth of the 0.5 % the model claims.
    private const double UnmeasuredShareToMention = 0.0005;

    /// <summary>Density at <paramref name="temperatureC"/> of a solution with these molalities (mol per kg of water).</summary>
    public static DensityResult Of(
        IReadOnlyDictionary<string, double> molality, double temperatureC, IReadOnlyDictionary<string, double>? gramsPerMolOfOthers = null)
    {
        ArgumentNullException.ThrowIfNull(molality);
        var (names, values) = Split(molality);
        if (Refuse(names, values, temperatureC) is { } refusal)
            return new DensityResult(null, [], [], refusal);
        var volume = SolutionVolume.For(names, gramsPerMolOfOthers);
        var state = volume.Evaluate(values, temperatureC);
        if (!state.IsGiven)
            return new DensityResult(null, [], [], "the composition leaves no volume: it is far outside any solution");

        var without = volume.SpeciesWithoutVolume.Where(s => molality[s] > 0).ToArray();
        var because = new List<string>();
        if (without.Length > 0)
        {
            var rest = SolutionVolume.For(names, gramsPerMolOfOthers)
                .Evaluate([.. names.Select((n, i) => without.Contains(n) ? 0 : values[i])], temperatureC);
            var unknownMass = without.Any(s => VolumeTable.FindConstituent(s) < 0 && VolumeTable.PartsOf(s).IsEmpty
                && gramsPerMolOfOthers?.ContainsKey(s) != true && molality[s] > 1e-3);
            if (unknownMass || Math.Abs(state.MlPerKgWater - rest.MlPerKgWater) > UnmeasuredShareToMention * state.MlPerKgWater)
                because.Add($"no measured volume for {string.Join(", ", without)}: 0.55 cm³ per gram taken");
        }

        if (state.DissolvedMassFraction > SolutionVolume.MaxCheckedMassFraction)
            because.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{100 * state.DissolvedMassFraction:0} % by mass is dissolved; the volumes are fitted up to 25 %"));
        if (temperatureC is < SolutionVolume.MinCheckedTemperatureC or > SolutionVolume.MaxCheckedTemperatureC)
            because.Add("the volumes are checked from 0 to 45 °C");
        return new DensityResult(state, without, because, null);
    }

    /// <summary>Turns mol per kg of water into mol per litre of solution at <paramref name="temperatureC"/>.</summary>
    public static ConversionResult ToMolarity(
        IReadOnlyDictionary<string, double> molality, double temperatureC, IReadOnlyDictionary<string, double>? gramsPerMolOfOthers = null)
    {
        var density = Of(molality, temperatureC, gramsPerMolOfOthers);
        return density.State is not { } state
            ? new ConversionResult(null, null, density.NotGivenBecause)
            : new ConversionResult(
                molality.ToDictionary(p => p.Key, p => p.Value / state.LitresPerKgWater, StringComparer.Ordinal), state, null);
    }

    /// <summary>Turns mol per litre of solution at <paramref name="temperatureC"/> into mol per kg of water.</summary>
    public static ConversionResult ToMolality(
        IReadOnlyDictionary<string, double> molarity, double temperatureC, IReadOnlyDictionary<string, double>? gramsPerMolOfOthers = null)
    {
        ArgumentNullException.ThrowIfNull(molarity);
        var (names, values) = Split(molarity);
        if (Refuse(names, values, temperatureC) is { } refusal)
            return new ConversionResult(null, null, refusal);
        var volume = SolutionVolume.For(names, gramsPerMolOfOthers);
        if (volume.KilogramsWaterPerLitre(values, temperatureC) is not { } water)
            return new ConversionResult(null, null, "the solutes alone fill the litre: there is no such solution");
        double[] molality = [.. values.Select(c => c / water)];
        return new ConversionResult(
            names.Zip(molality).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal), volume.Evaluate(molality, temperatureC),
            null);
    }

    // Ordinal order, so that the last digit of a sum never depends on how a dictionary was filled.
    private static (string[] Names, double[] Values) Split(IReadOnlyDictionary<string, double> amounts)
    {
        string[] names = [.. amounts.Keys.Order(StringComparer.Ordinal)];
        return (names, [.. names.Select(n => amounts[n])]);
    }

    private static string? Refuse(string[] names, double[] values, double temperatureC)
    {
        for (var i = 0; i < names.Length; i++)
        {
            if (!(values[i] >= 0) || double.IsInfinity(values[i]))
                return $"the amount of {names[i]} is not a number of moles";
        }

        return Water.InRange(temperatureC) ? null : "the temperature lies outside 0 to 100 °C";
    }
}
