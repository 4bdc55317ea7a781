using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests.Uncertainty;

/// <summary>The invented shop of the examples with its four stocks and one recipe, as documents.</summary>
internal static class Quillmere
{
    private static readonly Place Settings = Place.Whole("recipelint.json");

    public static Measure Cylinder100 { get; } = Measure("cylinder-100", MeasureKind.Cylinder, "100 mL", "1 mL", new Tolerance(null, 0.001));

    public static Measure Cylinder2000 { get; } = Measure("cylinder-2000", MeasureKind.Cylinder, "2 L", "20 mL", new Tolerance(null, 0.02));

    public static Measure Syringe60 { get; } = Measure("syringe-60", MeasureKind.Syringe, "60 mL", "1 mL", new Tolerance(0.04, null));

    public static ShopSettings Shop { get; } = new()
    {
        Scales = [Scale("bench-scale", "0.1 g", "3 kg"), Scale("pocket-scale", "0.01 g", "200 g"), Scale("fine-scale", "0.001 g", "50 g")],
        Measures = [Cylinder100, Cylinder2000, Syringe60],
        Vessels = [new Vessel("jug-3", Settings, Bench.VolumeOf("3 L"), MassOf("210 g")), new Vessel("bottle-250", Settings, Bench.VolumeOf("250 mL"), MassOf("85 g"))],
    };

    public static IReadOnlyList<StockDocument> Stocks { get; } =
    [
        In("jug-3", Bench.Stock(
            "part-a.stock.json",
            "2 L",
            Bench.Add("calcium-nitrate-fertiliser", "130 g", "99 %", with: "bench-scale"),
            Bench.Add("potassium-nitrate", "40 g", "99.5 %", with: "bench-scale"),
            Bench.Add("fe-dtpa-hna", "3.4 g", "98 %", with: "pocket-scale"),
            Bench.TopUp("2 L", "distilled"))),
        In("jug-3", Bench.Stock(
            "part-b.stock.json",
            "2 L",
            Bench.Add("monopotassium-phosphate", "35.2 g", "99 %", with: "bench-scale"),
            Bench.Add("magnesium-sulfate-7h2o", "71 g", "99 %", with: "bench-scale"),
            Bench.Add("potassium-nitrate", "44 g", "99.5 %", with: "bench-scale"),
            Bench.TopUp("2 L", "distilled"))),
        In("bottle-250", Bench.Stock(
            "molybdate-pre.stock.json",
            "250 mL",
            Bench.Add("sodium-molybdate-2h2o", "3.15 g", "99.5 %", with: "pocket-scale"),
            Bench.TopUp("250 mL", "distilled"))),
        In("jug-3", Bench.Stock(
            "trace.stock.json",
            "2 L",
            Bench.Add("potassium-sorbate", "2 g", "99 %", with: "pocket-scale"),
            Bench.Add("manganese-sulfate-h2o", "3.1 g", "98 %", with: "pocket-scale"),
            Bench.Add("zinc-sulfate-7h2o", "1.32 g", "99 %", with: "fine-scale"),
            Bench.Add("copper-sulfate-5h2o", "0.4 g", "99 %", with: "fine-scale"),
            Bench.Add("boric-acid", "3.44 g", "99.5 %", with: "pocket-scale"),
            (AliquotStep)Bench.Aliquot("molybdate-pre.stock.json", "20 mL", "molybdate") with { With = new("cylinder-100", Settings) },
            Bench.TopUp("2 L", "distilled"))),
    ];

    public static RecipeDocument Recipe { get; } = Bench.Recipe(
        "200 L",
        FinalVolumeMeaning.MadeUp,
        Bench.Dose("part-a.stock.json", "10 mL/L", with: "cylinder-2000"),
        Bench.Dose("part-b.stock.json", "10 mL/L", with: "cylinder-2000"),
        Bench.Dose("trace.stock.json", amount: "200 mL", with: "cylinder-100"));

    public static Facts Facts { get; } = Bench.Analyse(Stocks, Recipe, Shop);

    public static Scale Scale(string name, string readability, string? capacity = null, string? repeatability = null) =>
        new(name, Settings, capacity is null ? null : MassOf(capacity), MassOf(readability), repeatability is null ? null : MassOf(repeatability), null);

    public static Measure Measure(string name, MeasureKind kind, string capacity, string? readability = null, Tolerance? tolerance = null) =>
        new(name, Settings, kind, Bench.VolumeOf(capacity), readability is null ? null : Bench.VolumeOf(readability), tolerance);

    public static StockDocument In(string vessel, StockDocument stock) => stock with { Vessel = new Located<string>(vessel, stock.Place) };

    public static Mass MassOf(string text) => Bench.Read(text, Due.Portion).Mass;
}
