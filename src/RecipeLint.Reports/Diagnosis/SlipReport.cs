using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>What a measurement says of how a bottle was mixed. Pure.</summary>
public static class SlipReport
{
    /// <summary>Said where the contents forbid to look for anything but the way out.</summary>
    public const string NotCompared = "What was measured is compared with nothing: what stands above comes first.\n";

    /// <summary>The report, at most 100 columns wide.</summary>
    public static string Write(StockFacts stock, SlipSearch search)
    {
        var page = new BenchPage();
        page.Text($"'{Printable.Show(stock.Stock.Name)}', from what was measured");
        foreach (var measured in search.Measured)
        {
            page.Named("measured", Line(measured));
            page.Named("danger", CorrosiveReading.Of(measured.Measurement, measured.Expected is null || measured.Fits) ?? "");
        }

        page.Blank();
        if (search.Measured.Any(m => m.Expected is null))
        {
            page.Text(search.Measured.Any(m => m is { Expected: null, Measurement.Reading.Kind: ReadingKind.Conductivity })
                ? "What cannot be computed cannot be compared: above an ionic strength of 1 mol/kg no EC is given. Measure a dilution in "
                    + "distilled water and say which, such as \"EC 1.8 mS/cm at 1:100\"."
                : "What cannot be computed cannot be compared. 'recipelint show' on this file says what is known of it.");
        }
        else if (search.IsAsItShouldBe)
        {
            page.Text($"{(search.Measured.Count == 1 ? "It is" : "They are")} what the recipe gives when it is mixed as written. Slips "
                + "too small to show stay possible; 'recipelint proof' lists them.");
        }
        else
        {
            WriteSlips(page, search);
        }

        foreach (var assumption in search.Assumptions)
        {
            page.Text(assumption);
        }

        return page.ToString();
    }

    private static string Line(MeasuredReading measured)
    {
        var text = Printable.Show(measured.Measurement.Text);
        return measured.Expected is { } window
            ? $"{text}; the recipe gives {ReadingWords.Window(measured.Measurement.Reading, window)}: "
                + $"{(measured.Fits ? "as it should be" : measured.Measurement.Value > window.Value ? "too high" : "too low")}"
            : $"{text}; the recipe's value cannot be computed";
    }

    private static void WriteSlips(BenchPage page, SlipSearch search)
    {
        if (search.Explaining.Count == 0)
        {
            page.Text("No single slip explains it. Measure again with a calibrated meter at 20 to 25 °C before looking for two slips at "
                + "once. These come nearest:");
            foreach (var near in search.Nearest)
            {
                page.Item(near.Slip.Text, Readings(search, near));
            }

            return;
        }

        page.Text(search.Explaining.Count == 1
            ? "One single slip explains it:"
            : $"{search.Explaining.Count} single slips explain it, the nearest first:");
        foreach (var fit in search.Explaining)
        {
            page.Item(fit.Slip.Text, Readings(search, fit));
        }

        page.Blank();
        if (search.Separating is { } test)
        {
            page.Text($"The cheapest test that parts them is {ReadingWords.Name(test.Reading)}:");
            foreach (var group in test.Groups)
            {
                page.Item(
                    group.Slips.Count <= 4
                        ? Say.List(group.Slips.Select(s => s.Text))
                        : $"{Say.List(group.Slips.Take(3).Select(s => s.Text))} and {group.Slips.Count - 3} more of the list",
                    ReadingWords.Value(test.Reading, group.Value, test.HalfWidth));
            }
        }
        else if (search.Explaining.Count > 1)
        {
            page.Text("No quick reading parts them: look at what is left in the bags and at the label of what was poured.");
        }
    }

    private static string Readings(SlipSearch search, SlipFit fit) =>
        string.Join(", ", fit.Readings.Select((value, i) => ReadingWords.Value(
            search.Measured[i].Measurement.Reading, value, search.Measured[i].Expected!.Value.HalfWidth)));
}
