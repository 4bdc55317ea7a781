using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>The check to do after mixing, and what it can and cannot show. Pure.</summary>
public static class ProofReport
{
    private const int SlipWidth = 52, CellWidth = 12;

    /// <summary>The report, at most 100 columns wide.</summary>
    public static string Write(Proof proof)
    {
        var page = new BenchPage();
        if (HazardGate.Of(proof.Stock).ForLeaving is { } danger)
        {
            foreach (var sentence in HazardWords.Refused(new Refusal(danger, VesselAction.Order, null, false)))
            {
                page.Text(sentence);
            }

            return page.ToString();
        }

        page.Text($"Check '{Printable.Show(proof.Stock.Stock.Name)}' after mixing, at about 20 °C and mixed through");
        foreach (var check in proof.Checks)
        {
            page.Named(Short(check.Reading), How(check, proof.Stock));
        }

        if (proof.Checks.Count == 0)
        {
            page.Blank();
            page.Text("No reading of this stock can be computed: 'recipelint check' says what is missing.");
            return page.ToString();
        }

        page.Blank();
        Table(page, proof, Showing.Yes, "Slips that show");
        Table(page, proof, Showing.Perhaps, "Slips that may show, at the edge of what the instruments tell");
        Table(page, proof, Showing.No, "Slips that do not show in any of these: tick off each line while weighing");
        page.Text("A figure is the change against the expected value; * shows surely, ? may show.");
        foreach (var assumption in proof.Assumptions)
        {
            page.Text(assumption);
        }

        return page.ToString();
    }

    /// <summary>Each check as one line: "EC: 1:100 in distilled water reads ...".</summary>
    public static IEnumerable<string> Checks(Proof proof) =>
        proof.Checks.Select(c => $"{(c.Reading.Kind == ReadingKind.Density ? "Weight" : Short(c.Reading))}: {How(c, proof.Stock)}");

    private static string How(ProofCheck check, StockFacts stock)
    {
        var window = check.Window;
        if (check.Weighing is { } weighing)
        {
            var what = weighing.With is { } measure
                ? $"{Say.Litres(weighing.Volume.Litres)} of it in '{Printable.Show(measure.Name)}'"
                : $"the full {Say.Litres(stock.Volume.Litres)} bottle's contents, without the bottle,";
            return $"{what} {(weighing.With is null ? "weigh" : "weighs")} {ReadingWords.Rounded(window.Value, window.HalfWidth)} ± {ReadingWords.Width(window.HalfWidth)} g on '{Printable.Show(weighing.Scale.Name)}'";
        }

        var dilution = check.Reading.Dilution == 1
            ? "the stock itself reads"
            : $"1:{Say.Number(check.Reading.Dilution)} in distilled water ({Say.Litres(1 / check.Reading.Dilution)} made up to 1 L) reads";
        return check.Reading.Kind == ReadingKind.Conductivity
            ? $"{dilution} EC {ReadingWords.Window(check.Reading, window)} at 25 °C"
            : $"{dilution} {ReadingWords.Window(check.Reading, window)}";
    }

    private static void Table(BenchPage page, Proof proof, Showing showing, string title)
    {
        var rows = proof.Rows.Where(r => r.Shows == showing).ToList();
        if (rows.Count == 0)
        {
            return;
        }

        page.Columns(title, SlipWidth, [.. proof.Checks.Select(c => Head(c.Reading))], CellWidth);
        foreach (var row in rows)
        {
            page.Columns("  " + row.Slip.Text, SlipWidth, [.. row.Cells.Select((cell, i) => Cell(cell, proof.Checks[i]))], CellWidth);
        }

        page.Blank();
    }

    private static string Cell(ProofCell cell, ProofCheck check) => cell.Change is { } change
        ? ReadingWords.Change(change, check.Window.HalfWidth) + (check.Weighing is null ? "" : " g") + cell.Shows switch { Showing.Yes => " *", Showing.Perhaps => " ?", _ => "  " }
        : "-  ";

    private static string Short(Reading reading) => reading.Kind switch
    {
        ReadingKind.Density => "weigh",
        ReadingKind.Conductivity => "EC",
        _ => "pH",
    };

    private static string Head(Reading reading) => reading.Kind switch
    {
        ReadingKind.Density => "weight  ",
        ReadingKind.Conductivity => $"EC 1:{Say.Number(reading.Dilution)}  ",
        _ => reading.Dilution == 1 ? "pH stock  " : $"pH 1:{Say.Number(reading.Dilution)}  ",
    };
}
