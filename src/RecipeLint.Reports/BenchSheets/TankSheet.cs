using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Analysis.Readings;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>What the record of a tank comes to: what went in, what the plants get of it, what should have been read.</summary>
public static class TankSheet
{
    /// <summary>A difference smaller than this is not told; relative.</summary>
    private const double Untold = 0.001;

    public static Sheet Of(TankForecast tank)
    {
        var (asked, made) = (tank.Asked, tank.Made);
        var by = tank.Batch.By is { } who ? $" by {who}" : "";
        var day = tank.Batch.Made is { } date ? $", mixed {date.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{by}" : by;
        IEnumerable<SheetSection> sections =
        [
            new("hazards", "Cautions", [.. tank.Hazards.Hazards.Select(HazardWords.Caution)]),
            new("weights", "What went in", tank.Additions.Count == 0 ? ["Nothing is recorded: all of it counts as dosed as written."] : [],
                WentIn(tank)),
            new("plants", "What the plants get", [], Elements(asked, made)),
            new("readings", "Readings", [], Readings(tank)),
            new("seen", "What was seen", [.. BatchSheet.Seen(tank.Batch)]),
            new("further", "Look further",
            [
                $"recipelint show {asked.Recipe.File}: what the recipe should give",
                $"recipelint diagnose {asked.Recipe.File} --measured ...: which slip explains a reading",
                $"recipelint check {tank.Batch.File}: what of this record does not fit",
            ]),
        ];
        return new Sheet("tank", $"{asked.Recipe.Name}, {Say.Litres(made.FinalVolume.Litres)}{day}", tank.Batch.File,
            [.. sections.Where(s => !s.IsEmpty)]);
    }

    private static Table WentIn(TankForecast tank) => new(
        [new("dose"), new("asked for", true), new("went in", true), new("difference", true)],
        [
            .. tank.Additions.Select(a => (IReadOnlyList<string>)
            [
                a.Name.Trim('\''), Much(a, 1), a.Entry.LeftOut ? "left out" : a.Part == 0 ? "something else" : Much(a, a.Part),
                Signed(a.Part - 1),
            ]),
        ]);

    private static string Much(RecordedAddition addition, double part) => addition switch
    {
        { Volume: { } volume } => Say.Litres(volume.Litres * part),
        { Mass: { } mass } => Say.Grams(mass.Grams * part),
        _ => "",
    };

    private static Table Elements(RecipeFacts asked, RecipeFacts made) => new(
        [new("element"), new("recipe, mg/L", true), new("this tank, mg/L", true), new("difference", true)],
        [
            .. asked.Elements.Keys.Union(made.Elements.Keys)
                .Select(k => (Key: k, Asked: asked.MilligramsPerLitre(k), Made: made.MilligramsPerLitre(k)))
                .Where(e => e.Asked > 0 || e.Made > 0)
                .OrderByDescending(e => Math.Max(e.Asked, e.Made))
                .Select(e => (IReadOnlyList<string>)
                [
                    e.Key, Say.Number(e.Asked), Say.Number(e.Made), e.Asked > 0 ? Signed((e.Made / e.Asked) - 1) : "not planned",
                ]),
        ]);

    private static Table Readings(TankForecast tank) => new(
        [new("reading"), new("read", true), new("should read", true), new("fits")],
        [
            .. tank.Readings.Select(r =>
            {
                var reading = new Reading(r.Kind, 1);
                return (IReadOnlyList<string>)
                [
                    r.Name, ReadingWords.Value(reading, r.Value, r.Expected?.HalfWidth ?? 0.01),
                    r.Expected is { } window ? ReadingWords.Window(reading, window) : "not computed",
                    r.Expected is { } holds ? holds.Holds(r.Value) ? "yes" : "no" : "cannot be said",
                ];
            }),
        ]);

    private static string Signed(double share) => Math.Abs(share) < Untold ? "0 %" : (share > 0 ? "+" : "") + Say.Percent(share);
}
