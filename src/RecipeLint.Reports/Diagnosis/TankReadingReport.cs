using System.Globalization;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>What readings of a tank say beside what its recipe gives. Pure.</summary>
public static class TankReadingReport
{
    /// <summary>The report, at most 100 columns wide.</summary>
    public static string Write(RecipeFacts recipe, IReadOnlyList<TankReading> readings)
    {
        var page = new BenchPage();
        page.Text($"The tank of '{Printable.Show(recipe.Recipe.Name)}', from what was measured");
        foreach (var reading in readings)
        {
            page.Named("measured", Line(reading));
            if (CorrosiveReading.Of(reading.Measurement, reading.Fits) is { } burns)
            {
                page.Named("danger", burns);
                continue;
            }

            foreach (var slip in reading.Explaining)
            {
                page.Named("explains", Slip(slip, reading));
            }

            foreach (var slip in reading.Nearest)
            {
                page.Named("nearest", Slip(slip, reading));
            }

            page.Named("", Rest(reading));
        }

        page.Text("Rinse and calibrate the meter, stir, and measure again before you correct anything; water changes over the year, so "
            + "measure its alkalinity too.");
        return page.ToString();
    }

    private static string Line(TankReading reading)
    {
        var text = Printable.Show(reading.Measurement.Text);
        return reading.Computed is not { } value ? $"{text}; the recipe's value cannot be computed"
            : $"{text}; the recipe gives {Figure(value, reading)} ± {Plain(reading.HalfWidth)}: "
                + (reading.Fits ? "as it should be" : reading.Measurement.Value > value ? "too high" : "too low");
    }

    private static string Slip(TankSlip slip, TankReading reading) =>
        $"{Say.Capital(slip.Words)}: {Figure(slip.Value!.Value, reading)}, as computed.";

    private static string Rest(TankReading reading) => reading.Computed is not { } value || reading.Fits ? ""
        : reading.Measurement.Reading.Kind != ReadingKind.Ph ? $"It is {Plain(reading.Measurement.Value / value)} times what the recipe "
            + "gives: a dose, the filling of the tank or the strength of a stock is off by that much, or the meter is."
        : reading.Measurement.Value > value
            ? "Besides: alkalinity of the water that was not neutralised, carbon dioxide that left after the pH was set, or a weaker acid "
                + "than named."
        : "Besides: nitrifying microbes or rotting roots in the tank, too much acid, or softer water than stated.";

    private static string Figure(double value, TankReading reading) =>
        reading.Measurement.Reading.Kind == ReadingKind.Ph ? $"pH {Plain(value)}" : $"{Plain(value)} mS/cm";

    private static string Plain(double value) => value.ToString("0.0#", CultureInfo.InvariantCulture);
}
