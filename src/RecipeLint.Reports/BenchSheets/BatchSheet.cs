using System.Globalization;
using RecipeLint.Advice.Batches;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Batches;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>What a batch record comes to, as sentences and tables: use, mend or discard, what to put in, what the plants get.</summary>
public static class BatchSheet
{
    public static Sheet Of(BatchJudgement judged)
    {
        var batch = judged.Batch;
        var by = batch.By is { } who ? $" by {who}" : "";
        var made = batch.Made is { } day ? $", made {day.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{by}" : by;
        IEnumerable<SheetSection> sections =
        [
            new("verdict", Verdict(judged), [.. Reasons(judged)]),
            new("mend", "What to put in", [.. Mending(judged)]),
            new("weights", "What went in", [], Weights(judged)),
            new("plants", "What the plants get", Feeds(judged).IsEmpty ? [NoRecipe(judged)] : [], Feeds(judged)),
            new("bottle", "What the bottle holds", [], Bottle(judged)),
            new("readings", "Readings", [], Readings(judged)),
            new("seen", "What was seen", [.. Seen(batch)]),
            new("further", "Look further",
            [
                $"recipelint bench-sheet {judged.Planned.Stock.File}: the sheet it was mixed from",
                $"recipelint diagnose {judged.Planned.Stock.File} --measured ...: which slip explains a reading",
                "Safety data sheets, local codes and licensed practice come before this sheet.",
            ]),
        ];
        return new Sheet("batch", $"{judged.Planned.Stock.Name}, {Say.Litres(judged.Actual.Volume.Litres)}{made}", batch.File,
            [.. sections.Where(s => !s.IsEmpty)]);
    }

    private static string Verdict(BatchJudgement judged) => judged switch
    {
        { Refusal: not null } => "Do not use it: the danger comes first",
        { Fate: BatchFate.Use } => "Use it",
        { Fate: BatchFate.Mend } => "Mend it, then use it",
        { Fate: BatchFate.FindOut } => "Do not use it yet: find out what is in it",
        _ => "Discard it",
    };

    private static IEnumerable<string> Reasons(BatchJudgement judged)
    {
        if (judged.Refusal is { } refusal)
        {
            foreach (var line in HazardWords.Refused(refusal))
            {
                yield return line;
            }

            yield break;
        }

        var far = judged.Stock.Where(s => s.Off > judged.Allowed).OrderByDescending(s => s.Off).ToList();
        var most = judged.Stock.MaxBy(s => s.Off);
        yield return far.Count > 0
            ? $"{Say.List(far.Take(4).Select(s => $"{s.Key} {Change(s)}"))}: more than the {Say.Percent(judged.Allowed)} within which "
                + "a batch counts as made as planned (common practice)."
            : most is { Off: > 0 }
                ? $"Everything is within {Say.Percent(judged.Allowed)} of the plan; the farthest is {most.Key}, {Change(most)}."
                : "Everything is as planned.";
        foreach (var finding in judged.Brought.Take(5))
        {
            yield return $"{Words.Of(finding.Level)} {finding.Rule.Id} {finding.Rule.Name}, which the plan does not have: "
                + Sentences.First(finding.Message);
        }

        if (judged.Brought.Count > 5)
        {
            yield return $"{Say.Number(judged.Brought.Count - 5)} more findings like these.";
        }

        foreach (var line in judged.NotMended)
        {
            yield return line;
        }

        if (judged.Fate == BatchFate.FindOut && judged.Seen.Count > 0)
        {
            var seen = Say.List(judged.Seen.Select(s => $"'{Printable.Show(s.What.Value)}'"));
            yield return $"Something was seen in it: {seen}. Put nothing in and dose none of it; 'recipelint diagnose' with these words "
                + "says what it can be.";
        }

        if (judged.Fate == BatchFate.FindOut && judged.Readings.Any(r => !r.Fits))
        {
            yield return "A reading lies outside of what the record gives, so something else went in than is written. Rinse the meter, "
                + "calibrate it and measure again; what stays off is searched for with 'recipelint diagnose'.";
        }

        if (judged.Fate == BatchFate.Discard)
        {
            yield return "Label the bottle as waste with what is in it, and get rid of it as local rules say; concentrates do not go "
                + "down a drain.";
        }
    }

    private static IEnumerable<string> Mending(BatchJudgement judged)
    {
        if (judged.Mend is not { } mend)
        {
            yield break;
        }

        var number = 0;
        foreach (var part in mend.Parts)
        {
            var much = part.Litres is { } litres ? $"Measure {Say.Litres(litres)}" : $"Weigh {Say.Grams(part.Grams)}";
            yield return $"{Say.Number(++number)}. {much} of {part.Substance.Name}{With(judged, part)} and add it, stirring until it is "
                + "clear.";
        }

        if (mend.AddsWater)
        {
            yield return $"{Say.Number(++number)}. Fill up to {Say.Litres(mend.Mark.Litres)}{Vessel(judged, mend.Mark)}.";
        }

        if (mend.AdjustsAgain is { TargetPh: { } ph, Using: { } reagent })
        {
            yield return $"{Say.Number(++number)}. Bring it to pH {Cells.Ph(ph.Value)} again with {reagent.Value}, drop by drop.";
        }

        yield return "This was judged as a stock of its own: it brings no finding that the plan does not have. Write into the record what "
            + "really went in, and check the bottle as the bench sheet says.";
        if (mend.Parts.Any(p => p.Substance.Kind == SubstanceKind.Acid || p.Substance.Hazards?.Statements.Contains("H314") == true))
        {
            yield return "Goggles, gloves and apron; pour acid into the stock slowly and stirring, never the other way round.";
        }
    }

    private static string With(BatchJudgement judged, MendPart part)
    {
        var tool = part.Litres is { } litres
            ? Tool.ForVolume(judged.Actual.Settings, new Volume(litres), null)
            : Tool.ForMass(judged.Actual.Settings, new Mass(part.Grams));
        return tool is null ? "" : $" with '{tool.Name}'";
    }

    private static string Vessel(BatchJudgement judged, Volume mark) =>
        judged.Planned.Stock.Vessel is { } named
        && judged.Planned.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value) is { Capacity: { } capacity } && capacity < mark
            ? $", in a vessel larger than '{named.Value}', which holds {Say.Litres(capacity.Litres)}"
            : "";

    private static Table Weights(BatchJudgement judged)
    {
        var lots = judged.Batch.Recorded();
        var (plan, made) = (Own(judged.Planned), Own(judged.Actual));
        var ids = plan.Select(p => p.Id).Concat(made.Select(m => m.Id)).Distinct(StringComparer.Ordinal);
        return new Table(
            [new("step"), new("what"), new("planned", true), new("went in", true), new("difference", true), new("lot")],
            [.. ids.Select(id => Row(id, plan.Find(p => p.Id == id), made.Find(m => m.Id == id), lots.GetValueOrDefault(id)))]);

        static List<AdditionFacts> Own(StockFacts stock) => [.. stock.Additions.Where(a => !a.ThroughAliquot)];
    }

    private static IReadOnlyList<string> Row(string id, AdditionFacts? plan, AdditionFacts? made, BatchStep? entry)
    {
        var swapped = plan is not null && made is not null && plan.Substance.Id != made.Substance.Id;
        return
        [
            id,
            swapped ? $"{made!.Substance.Name} instead of {plan!.Substance.Name}" : (made ?? plan)!.Substance.Name,
            plan is null ? "nothing" : Say.Grams(plan.Mass.Grams),
            made is null ? "nothing" : Say.Grams(made.Mass.Grams),
            swapped || plan is not { Mass.Grams: > 0 } ? "" : Signed(((made?.Mass.Grams ?? 0) - plan.Mass.Grams) / plan.Mass.Grams),
            entry?.Lot ?? "",
        ];
    }

    private static Table Feeds(BatchJudgement judged)
    {
        var mended = judged.Mend is not null;
        var columns = new List<Column>
        {
            new("recipe"), new("element"), new("planned, mg/L", true), new("with this batch, mg/L", true), new("difference", true),
        };
        if (mended)
        {
            columns.Add(new("once mended, mg/L", true));
        }

        return new Table(
            columns,
            [
                .. judged.Feeds.Select(f =>
                {
                    List<string> row =
                    [
                        f.Recipe, f.Key, Say.Number(f.Planned), Say.Number(f.Actual),
                        f.Planned > 0 ? Signed((f.Actual - f.Planned) / f.Planned) : "not planned",
                    ];
                    return (IReadOnlyList<string>)(mended ? [.. row, Cells.Number(f.Mended)] : row);
                }),
            ]);
    }

    private static string NoRecipe(BatchJudgement judged) => judged.Stock.Any(s => s.Off > 0)
        ? "No recipe of the shop doses this stock, so only the bottle is judged."
        : "What was planned.";

    private static Table Bottle(BatchJudgement judged)
    {
        var mended = judged.Mend is not null;
        var columns = new List<Column> { new("element"), new("planned, g/L", true), new("made, g/L", true), new("difference", true) };
        if (mended)
        {
            columns.Add(new("once mended, g/L", true));
        }

        return new Table(
            columns,
            [
                .. judged.Stock.Where(s => s.IsPlanned || s.Off > 1e-6).Select(s =>
                {
                    List<string> row = [s.Key, Say.Number(s.Planned), Say.Number(s.Actual), Change(s)];
                    return (IReadOnlyList<string>)(mended ? [.. row, Cells.Number(s.Mended)] : row);
                }),
            ]);
    }

    private static Table Readings(BatchJudgement judged) => new(
        [new("reading"), new("read", true), new("should read", true), new("fits")],
        [
            .. judged.Readings.Select(r =>
            {
                var what = r.Reading switch
                {
                    PhReading => ReadingKind.Ph,
                    ConductivityReading => ReadingKind.Conductivity,
                    _ => ReadingKind.Density,
                };
                var reading = new Reading(what, r.Reading.Dilution);
                return (IReadOnlyList<string>)
                [
                    ReadingWords.Name(reading), ReadingWords.Value(reading, r.Value, r.Expected?.HalfWidth ?? 0.01),
                    r.Expected is { } window ? ReadingWords.Window(reading, window) : "not computed",
                    r.Expected is null ? "cannot be said" : r.Fits ? "yes" : "no",
                ];
            }),
        ]);

    /// <summary>One line for each sight.</summary>
    internal static IEnumerable<string> Seen(BatchDocument batch) => batch.Seen.Select(s =>
        $"{(s.After is { } after ? $"After {Say.Days(after.Value.Days)}" : "At once")}"
        + $"{(s.At is { } at ? $" at {Cells.Range(at.Value.Low.Celsius, at.Value.High.Celsius)} °C" : "")}: {s.What.Value}");

    private static string Change(NutrientShift shift) => shift.IsPlanned
        ? Signed((shift.Actual - shift.Planned) / shift.Planned)
        : $"{Say.Number(shift.Actual)} g/L, not planned";

    private static string Signed(double share) => Math.Abs(share) < 5e-7 ? "0 %" : (share > 0 ? "+" : "") + Say.Percent(share);
}
