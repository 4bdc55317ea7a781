using System.Globalization;
using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Reports.Dissolve;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Stretching;

/// <summary>How strong and how weak a stock may get, as a text of at most 100 columns. Pure.</summary>
public static class StretchReport
{
    public static string Write(StockStretch stretch)
    {
        var page = new TablePage();
        var stock = stretch.Stock;
        var dose = stock.Stock.Dose?.Value;
        var made = dose is { } d
            ? $"made for 1:{Figure(d.Dilution, Math.Round)} ({Say.Number(d.MillilitresPerLitre)} mL/L)"
            : "made for no stated dose";
        page.Text($"'{Printable.Show(stock.Stock.Name)}', {made}, "
            + KeptWords.Span(stock));
        page.Text("Stronger or weaker means: the final solution stays the same, amounts and dose change against each other.");
        page.Blank();
        if (WhyNot(stretch) is { } reasons)
        {
            foreach (var sentence in reasons)
            {
                page.Text(sentence);
            }

            return page.ToString();
        }

        foreach (var finding in stretch.Present.Where(f => !stretch.TakenByTheAir.Any(a => a.Finding.Rule.Id == f.Rule.Id)))
        {
            page.Text($"As it is 'recipelint check' calls it wrong, {finding.Rule.Id}: {finding.Message}");
            page.Blank();
        }

        Stronger(page, stretch);
        page.Blank();
        if (stretch.TakenByTheAir is [var air, ..])
        {
            page.Text("Strengths hold on one condition: only until the air has oxidised the iron. "
                + (air.Factor == 1 ? "" : $"At {Strength(stretch, air.Factor)}: ") + air.Finding.Message);
            page.Blank();
        }

        Table(page, stretch);
        page.Blank();
        Weaker(page, stretch);
        page.Blank();
        page.Text("* a temperature it is kept at. Near a limit nothing is promised: leave a tenth of room, and make a small batch first.");
        foreach (var hazard in HazardGate.Of(stock).Hazards)
        {
            page.Text(HazardWords.Caution(hazard));
        }

        if (!stock.IsComplete || !stock.Chemistry.IsComplete)
        {
            page.Text("Something in the file could not be read or its composition is not known: computed without it.");
        }

        return page.ToString();
    }

    /// <summary>Why no strength is advised; null where one is.</summary>
    private static IEnumerable<string>? WhyNot(StockStretch stretch) =>
        stretch.Refused is { } refused ? HazardWords.Refused(refused)
        : stretch.Unknown is { } unknown ? [HazardWords.Untold(unknown)]
        : stretch.Failure is { } failure ? [failure]
        : null;

    private static void Stronger(TablePage page, StockStretch stretch)
    {
        if (stretch.Binding is not { Highest.Factor: { } clear } row)
        {
            page.Text(stretch.Rows.FirstOrDefault(r => r is { IsJudged: true, Highest.Failure: not null }) is { } lost
                ? $"How strong it may get is not known: {lost.Highest.Failure}"
                : "It does not stay clear at any strength looked at, down to a sixty-fourth: what falls out does not depend on the "
                    + "strength.");
            return;
        }

        var first = stretch.Stronger.Count > 0 && stretch.Stronger[0].Factor < clear ? stretch.Stronger[0] : null;
        if (stretch.Danger is { } danger && danger.Factor <= (first?.Factor ?? clear))
        {
            page.Text($"Highest: {Strength(stretch, danger.Factor)}; above it somebody could be hurt. {HazardWords.Of(danger.Hazard)}");
            return;
        }

        var most = Strength(stretch, first?.Factor ?? clear);
        var why = first is { } objection
            ? $"just above it {objection.Finding.Rule.Name} objects: {Sentences.First(objection.Finding.Message)}"
            : row.Highest.Factor >= HighestConcentration.MostFactor
                ? "nothing stops it up to there; more is not looked at."
                : $"above it {StoppedBy(row)} at {Say.Number(row.At.Celsius)} °C.";
        page.Text(clear < 1 ? $"It is too strong already. Highest: {most}; {why}" : $"Highest: {most}; {why}");
        foreach (var next in stretch.Stronger.Where(o => o != first))
        {
            page.Text($"Above {Strength(stretch, next.Factor)} {next.Finding.Rule.Name} objects: {Sentences.First(next.Finding.Message)}");
        }
    }

    private static void Table(TablePage page, StockStretch stretch)
    {
        page.Head("kept at", ["highest"], "stopped by");
        foreach (var row in stretch.Rows)
        {
            page.Row(
                $"{(row.InStorage ? "* " : "  ")}{Say.Number(row.At.Celsius)} °C",
                [row.Highest.Factor is { } factor ? Strength(stretch, factor) : "none"],
                row.Highest.Failure ?? (row.Highest.Factor >= HighestConcentration.MostFactor ? "nothing up to there" : StoppedBy(row)));
        }
    }

    private static void Weaker(TablePage page, StockStretch stretch)
    {
        if (stretch.Weaker.Count == 0)
        {
            page.Text($"Weaker: nothing objects down to {Strength(stretch, stretch.LowestLooked, least: true)}; weaker is not looked at.");
            return;
        }

        page.Text($"Weakest: {Strength(stretch, stretch.Weaker[0].Factor, least: true)}.");
        foreach (var objection in stretch.Weaker)
        {
            page.Text($"Below {Strength(stretch, objection.Factor, least: true)} {objection.Finding.Rule.Name} objects: "
                + $"{Sentences.First(objection.Finding.Message)}");
        }
    }

    private static string StoppedBy(StretchRow row) => row switch
    {
        { NoRoom: true } => "no room is left for water",
        { Highest: { IsUntold: true, StoppedBy: [var untold, ..] } } =>
            $"whether {SolidWords.Called(untold)} stays dissolved cannot be told",
        { Highest.StoppedBy.Count: > 0 } => $"{SolidWords.Called(row.Highest.StoppedBy[0])} falls out",
        _ => "something falls out",
    };

    /// <summary>"1:214", or "2.14 x" of the present strength where no dose is stated; rounded to the safe side.</summary>
    private static string Strength(StockStretch stretch, double factor, bool least = false) =>
        stretch.Stock.Stock.Dose?.Value is { LitresPerLitre: > 0 } dose
        ? "1:" + Figure(dose.Dilution * factor, least ? Math.Ceiling : Math.Floor)
        : Figure(factor, least ? Math.Ceiling : Math.Floor) + " x";

    /// <summary>Three digits, without an exponent.</summary>
    private static string Figure(double value, Func<double, double> round)
    {
        var step = Math.Pow(10, Math.Max(-2, Math.Floor(Math.Log10(value)) - 2));

        // What is a round number but for the last bit stays one.
        return (round(Math.Round(value / step, 6)) * step).ToString("0.##", CultureInfo.InvariantCulture);
    }
}
