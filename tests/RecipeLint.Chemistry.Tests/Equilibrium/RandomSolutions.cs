using System.Globalization;
using CsCheck;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Random solutions over the whole component set: amounts over eight decades, 0 to 45 °C, every way to decide the pH.</summary>
public static class RandomSolutions
{
    public static readonly string[] Names = [.. Components.Names.Where(n => n is not ("H+" or "H2O"))];

    // A plain double generator prefers round numbers; here every value of the range is equally likely.
    public static Gen<double> Between(double low, double high) => Gen.Int[0, 10_000_000].Select(i => low + (high - low) * i / 10_000_000.0);

    public static Gen<KeyValuePair<string, double>[]> Amounts(double lowestLog, double highestLog, int most = 34) => Gen.Select(
        Gen.Int[1, most], Gen.Shuffle(Names), Between(lowestLog, highestLog).Array[Names.Length],
        (count, names, logs) => Enumerable.Range(0, count).Select(i => new KeyValuePair<string, double>(names[i], Math.Pow(10, logs[i]))).ToArray());

    /// <summary>Charge balance mostly; a given pH in a third of cases; open to air in a third, then never above pH 9.5, where no equilibrium is.</summary>
    public static readonly Gen<SolutionInput> Inputs = Gen.Select(Amounts(-8, 0), Between(0, 45), Gen.Int[0, 5], Between(0, 1),
        (amounts, celsius, mode, share) => new SolutionInput
        {
            Totals = new ComponentTotals(amounts),
            Celsius = celsius,
            FixedPh = mode switch { 0 => 14 * share, 1 => 9.5 * share, _ => null },
            CarbonDioxideAtm = mode is 1 or 2 ? 4.2e-4 : null,
        });

    /// <summary>
    /// Runs a check over generated values, the same ones every time; a failure names the state of the generator that brings its value back.
    /// RECIPELINT_SEED picks other values.
    /// </summary>
    public static void ForEach<T>(Gen<T> gen, int count, Action<T> check)
    {
        var seed = ulong.TryParse(Environment.GetEnvironmentVariable("RECIPELINT_SEED"), CultureInfo.InvariantCulture, out var s) ? s : 20261125;
        var random = new PCG(101, seed);
        for (var i = 0; i < count; i++)
        {
            var state = random.ToString();
            var value = gen.Generate(random, null, out _);
            try
            {
                check(value);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"Case {i}, generator state \"{state}\": {e.Message}", e);
            }
        }
    }

    /// <summary>100,000 solutions when RECIPELINT_LONG=1, else the number that fits into a normal run.</summary>
    public static int Count(int normal) => Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 100_000 : normal;

    public static string Describe(SolutionInput i) => string.Create(CultureInfo.InvariantCulture,
        $"{i.Celsius:0.00} °C pH {i.FixedPh:0.00} CO2 {i.CarbonDioxideAtm}: ") +
        string.Join(", ", i.Totals.Present.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Key} {p.Value:0.######E+0}")));
}
