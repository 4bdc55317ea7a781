using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Mixing;

/// <summary>One step at the bench with the vessel before and after it.</summary>
/// <param name="Index">Place among the steps, from 0.</param>
/// <param name="At">How warm the vessel is: 20 °C, or what it has been warmed to.</param>
public sealed partial record MixingStep(int Index, Step Step, VesselContents Before, VesselContents After, Temperature At)
{
    /// <summary>What warming without a figure is taken as, hot-tap warm (common practice, no source), °C.</summary>
    private const double WarmCelsius = 40;

    /// <summary>What this step puts in; empty for water and handling.</summary>
    public IReadOnlyList<AdditionFacts> Added { get; } = [.. After.Additions.Skip(Before.Additions.Count)];

    public bool BringsWater => Step is PourStep or TopUpStep;

    /// <summary>True when the vessel holds something else afterwards, or the same at another temperature.</summary>
    public bool Changes =>
        !ReferenceEquals(Before, After) || Step is HandlingStep { Handling: Handling.Warm or Handling.Cool or Handling.Rest };

    /// <summary>
    /// What dissolving this step's salts does to the temperature; null where no heat of solution is known, and without water.
    /// </summary>
    public BatchTemperature? HeatOfDissolving =>
        After.FreeWaterGrams > 0 && Added.Count > 0 ? DissolvingHeat.Change(Added, After.FreeWaterGrams, At.Celsius) : null;

    /// <summary>
    /// How warm a step makes the vessel: "to 40 °C" is 40; warming without a figure is taken as hot-tap warm, 40 °C. Null when it does not
    /// warm.
    /// </summary>
    public static double? WarmsTo(Step step) =>
        step is HandlingStep { Handling: Handling.Warm, How: var how } ? CelsiusIn(how.Value) ?? WarmCelsius : null;

    /// <summary>Every step of a stock, in order.</summary>
    public static IReadOnlyList<MixingStep> Walk(StockFacts stock)
    {
        var steps = new List<MixingStep>(stock.Stock.Steps.Count);
        var contents = VesselContents.Empty;
        var celsius = VesselContents.BenchCelsius;
        foreach (var step in stock.Stock.Steps)
        {
            var after = contents.After(step, stock);
            celsius = step is TopUpStep or HandlingStep { Handling: Handling.Cool or Handling.Rest }
                ? VesselContents.BenchCelsius
                : WarmsTo(step) ?? celsius;
            steps.Add(new MixingStep(steps.Count, step, contents, after, new Temperature(celsius)));
            contents = after;
        }

        return steps;
    }

    /// <summary>The highest temperature a handling text names ("to 40 °C"); null when it names none.</summary>
    private static double? CelsiusIn(string text)
    {
        var found = Degrees().Matches(text).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToList();
        return found.Count == 0 ? null : found.Max();
    }

    [GeneratedRegex(@"(\d+(?:\.\d+)?)\s*°\s*C", RegexOptions.CultureInvariant)]
    private static partial Regex Degrees();
}
