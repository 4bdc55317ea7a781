using System.Text.Json;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

/// <summary>The independent density and heat capacity correlation the tests compare with (Laliberté 2009).</summary>
internal static class Laliberte
{
    private static readonly JsonElement Data = PhysicalData.Measured("laliberte.json");

    internal static IEnumerable<JsonElement> Salts => Data.GetProperty("density").EnumerateArray();

    internal static IEnumerable<JsonElement> HeatCapacities => Data.GetProperty("heatCapacity").EnumerateArray();

    internal static JsonElement Salt(string formula) => Salts.Single(e => e.GetProperty("salt").GetString() == formula);

    /// <summary>Density in g/mL of salts by mass fraction.</summary>
    internal static double Density(IReadOnlyList<(string Salt, double MassFraction)> salts, double temperatureC)
    {
        var w = salts.Sum(s => s.MassFraction);
        var specificVolume = (1 - w) / Water.DensityGramsPerMl(temperatureC);
        foreach (var (salt, fraction) in salts)
        {
            var c = Salt(salt).GetProperty("c").EnumerateArray().Select(x => x.GetDouble()).ToArray();
            var apparent = ((c[0] * w) + c[1]) * Math.Exp(1e-6 * (temperatureC + c[4]) * (temperatureC + c[4])) / (w + c[2] + (c[3] * temperatureC)) / 1000;
            specificVolume += fraction / apparent;
        }

        return 1 / specificVolume;
    }

    /// <summary>Heat capacity of a solution in kJ/(kg K), with 4.181 for water at 25 °C.</summary>
    internal static double HeatCapacity(JsonElement salt, double massFraction, double temperatureC)
    {
        var a = salt.GetProperty("a").EnumerateArray().Select(x => x.GetDouble()).ToArray();
        var own = (a[0] * Math.Exp((a[1] * temperatureC) + (a[2] * Math.Exp(0.01 * temperatureC)) + (a[3] * massFraction))) + (a[4] * Math.Pow(massFraction, a[5]));
        return ((1 - massFraction) * 4.181) + (massFraction * own);
    }
}
