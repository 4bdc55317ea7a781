using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Show;

/// <summary>A water analysis with what each value was read as.</summary>
public static class WaterSheet
{
    /// <param name="source">The file, for the values as written.</param>
    public static Sheet Of(WaterDocument water, SourceFile source) => new("water", water.Name, water.File,
    [
        .. new[]
        {
            new SheetSection("about", "About", About(water)),
            Values(water, source),
            Balance(water),
            new SheetSection("estimated", "Estimated", water.Estimates),
        }.Where(s => !s.IsEmpty),
    ]);

    private static List<string> About(WaterDocument water)
    {
        var says = new List<string>();
        Add(
            "EC",
            water.Ec?.Value is { } ec ? Cells.Range(ec.Low.MillisiemensPerCentimetre, ec.High.MillisiemensPerCentimetre) : null,
            " mS/cm at 25 °C");
        Add("pH", water.Ph is { } ph ? Cells.Range(ph.Value) : null, "");
        Add("Alkalinity", water.Alkalinity?.Value is { } alkalinity
            ? Cells.Range(alkalinity.Low.MilliequivalentsPerLitre, alkalinity.High.MilliequivalentsPerLitre) : null, " meq/L");
        Add("Hardness", water.Hardness?.Value is { } hardness
            ? Cells.Range(hardness.Low.MilliequivalentsPerLitre, hardness.High.MilliequivalentsPerLitre) : null,
            " meq/L of calcium and magnesium");
        if (!water.IsComplete)
        {
            says.Add("Something in it could not be read: 'recipelint check' says what.");
        }

        return says;

        void Add(string what, string? value, string unit)
        {
            if (value is not null)
            {
                says.Add($"{what} {value}{unit}.");
            }
        }
    }

    private static SheetSection Values(WaterDocument water, SourceFile source) => new(
        "values", "Ions", [],
        new Table(
            [new("key"), new("as written"), new("read as"), new("mmol/L", true)],
            [
                .. water.Values.Select(v => (IReadOnlyList<string>)
                [
                    v.Key.Value,
                    Written(source, v.Key.Place),
                    RecipeSheet.Ion(v.Component),
                    Cells.Range(v.Concentration.Low.MillimolesPerLitre, v.Concentration.High.MillimolesPerLitre),
                ]),
            ]));

    private static string Written(SourceFile source, Place place) => source.Excerpt(source.Resolve(place)).Trim().Trim('"');

    private static SheetSection Balance(WaterDocument water)
    {
        if (water.Stated is not { Ions.Count: > 0 } stated)
        {
            return new SheetSection("balance", "Balance", []);
        }

        var rows = stated.Ions.Where(i => i.Charge != 0)
            .OrderByDescending(i => Math.Sign(i.Charge))
            .ThenByDescending(i => i.Equivalents.High)
            .Select(i => (IReadOnlyList<string>)[i.Key, i.Charge > 0 ? Range(i) : "", i.Charge < 0 ? Range(i) : ""])
            .ToList();
        rows.Add(["together", Sum(i => i.Charge > 0), Sum(i => i.Charge < 0)]);
        return new SheetSection(
            "balance", "Ions in charge", [], new Table([new("ion"), new("cations meq/L", true), new("anions meq/L", true)], rows));

        string Sum(Func<StatedIon, bool> which) => Cells.Range(
            stated.Ions.Where(which).Sum(i => i.Equivalents.Low.MilliequivalentsPerLitre),
            stated.Ions.Where(which).Sum(i => i.Equivalents.High.MilliequivalentsPerLitre));
    }

    private static string Range(StatedIon ion) =>
        Cells.Range(ion.Equivalents.Low.MilliequivalentsPerLitre, ion.Equivalents.High.MilliequivalentsPerLitre);
}
