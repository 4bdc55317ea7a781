using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Readings;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>The check to do after mixing, and what it can and cannot show. Pure.</summary>
public static class ProofReport
{
    private const int SlipWidth = 52, CellWidth = 12;

    /// <summary>Lines that fit on one screen of the bench.</summary>
    private const int Screen = 40;

    /// <summary>Why nothing is advised of this stock, nor of one that must not be mixed as written; null when it may be checked.</summary>
    public static Refusal? Refused(Proof proof) => HazardGate.Of(proof.Stock).Forbids(VesselAction.Order);

    /// <summary>The report, at most 100 columns wide.</summary>
    /// <param name="all">Every slip with its figures; else what matters, on one screen.</param>
    public static string Write(Proof proof, bool all)
    {
        var page = new BenchPage();
        if (Refused(proof) is { } refusal)
        {
            foreach (var sentence in HazardWords.Refused(refusal))
            {
                page.Text(sentence);
            }

            return page.ToString();
        }

        if (UnknownContents.Of(proof.Stock) is { } unknown)
        {
            page.Text(HazardWords.Untold(unknown));
            return page.ToString();
        }

        foreach (var finding in proof.Objections)
        {
            page.Text($"No reading mends what 'recipelint check' calls wrong in it, {finding.Rule.Id}: {Sentences.First(finding.Message)}");
        }

        if (proof.Objections.Count > 0)
        {
            page.Blank();
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
        if (!all)
        {
            return OneScreen(page, proof);
        }

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

    /// <summary>How many slips show, by kind, and by name those that do not: these are left to the eye and the tick on the sheet.</summary>
    private static string OneScreen(BenchPage page, Proof proof)
    {
        var rows = proof.Rows;
        var own = rows.Count(r => proof.ShownByOwn(r) == Showing.Yes);
        var lacking = proof.Checks
            .Where(c => !c.IsOwned)
            .Select(c => c.Reading.Kind == ReadingKind.Conductivity ? "an EC meter" : "a pH meter")
            .Distinct()
            .ToList();
        page.Text(lacking.Count == 0
            ? $"Slips that show: {own} of {rows.Count} single slips, in one of these readings at least."
            : $"Slips that show: {own} of {rows.Count} single slips, with the scales and meters that this shop lists; "
                + $"{rows.Count(r => r.Shows == Showing.Yes)} with {Say.List(lacking)} besides.");
        foreach (var kind in rows.GroupBy(r => r.Slip.Kind).Where(k => k.Any(r => r.Shows == Showing.Yes)))
        {
            var by =
                proof.Checks.Select((c, i) => (Check: c, Count: kind.Count(r => r.Cells[i].Shows == Showing.Yes))).Where(c => c.Count > 0)
                .Select(c => $"{Head(c.Check.Reading).Trim()} {c.Count}{(c.Check.IsOwned ? "" : "?")}");
            page.Item($"{Kind(kind.Key)}: {kind.Count(r => proof.ShownByOwn(r) == Showing.Yes)} of {kind.Count()}", string.Join(", ", by));
        }

        if (lacking.Count > 0)
        {
            page.Text("   ? only with the meter that is not listed");
        }

        List<string> hidden = [.. rows.Where(r => r.Shows == Showing.No).Select(r => r.Slip.Text)];
        var closing = Closing(proof);
        if (hidden.Count > 0)
        {
            page.Blank();
            page.Text("Show in none of these readings: tick off each line while weighing, and read every bag twice.");
            var room = Screen - Lines(page) - closing.Sum(c => TextWrap.Wrap(c, BenchPage.Width).Count) - 2;
            var shown = 0;
            foreach (var text in hidden)
            {
                room -= TextWrap.Wrap(text, BenchPage.Width - 7).Count;
                if (room < 0)
                {
                    break;
                }

                page.Item(text, "");
                shown++;
            }

            if (shown < hidden.Count)
            {
                page.Text($"   and {hidden.Count - shown} more.");
            }
        }

        foreach (var line in closing)
        {
            page.Text(line);
        }

        return page.ToString();
    }

    private static List<string> Closing(Proof proof) =>
        [.. proof.Assumptions, $"Every slip with its figures: recipelint proof {Printable.Show(proof.Stock.Stock.File)} --all"];

    private static int Lines(BenchPage page) => page.ToString().Count(c => c == '\n');

    private static string Kind(SlipKind kind) => kind switch
    {
        SlipKind.LeftOut => "a line left out",
        SlipKind.Twice => "twice of it",
        SlipKind.Half => "half of it",
        SlipKind.OtherHydrate => "another hydrate",
        SlipKind.OtherStrength => "another strength",
        SlipKind.OtherWater => "another water",
        SlipKind.VolumeOver => "filled too far",
        SlipKind.VolumeShort => "filled short",
        SlipKind.PhNotSet => "the pH not set",
        SlipKind.Exchanged => "two weights exchanged",
        SlipKind.OtherSubstance => "a neighbour on the shelf",
        SlipKind.TenTimes => "ten times",
        _ => "a tenth",
    };

    private static string How(ProofCheck check, StockFacts stock)
    {
        var window = check.Window;
        if (check.Weighing is { } weighing)
        {
            var what = weighing.With is { } measure
                ? $"{Say.Litres(weighing.Volume.Litres)} of it in '{Printable.Show(measure.Name)}'"
                : $"the full {Say.Litres(stock.Volume.Litres)} bottle's contents, without the bottle,";
            return $"{what} {(weighing.With is null ? "weigh" : "weighs")} {ReadingWords.Rounded(window.Value, window.HalfWidth)} ± "
                + $"{ReadingWords.Width(window.HalfWidth)} g on '{Printable.Show(weighing.Scale.Name)}'";
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
        ? ReadingWords.Change(change, check.Window.HalfWidth)
            + (check.Weighing is null ? "" : " g")
            + cell.Shows switch { Showing.Yes => " *", Showing.Perhaps => " ?", _ => "  " }
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
