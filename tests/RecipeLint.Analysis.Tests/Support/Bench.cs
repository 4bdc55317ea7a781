using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests.Support;

/// <summary>Documents written as the bench writes them, without files.</summary>
internal static class Bench
{
    public static Substance Substance(string id) =>
        SubstanceCatalogue.BuiltIn.ById(id) ?? throw new ArgumentException($"'{id}' is not in the catalogue.", nameof(id));

    public static Step Add(string substance, string amount, string? assay = null, string? id = null, string? with = null) =>
        new AddStep(id ?? substance, Nowhere)
        {
            What = At(substance),
            Substance = Substance(substance),
            Amount = At(Portion(amount)),
            Assay = assay is null ? null : At(Read(assay, Due.Assay).MassFraction),
            With = with is null ? null : At(with),
        };

    public static Step Aliquot(string stock, string amount, string id) =>
        new AliquotStep(id, Nowhere) { What = At(stock), StockFile = stock, Amount = At(Portion(amount)) };

    public static Step Pour(string volume, string? water = null) =>
        new PourStep("pour", Nowhere) { Volume = At(VolumeOf(volume)), Of = Water(water) };

    public static Step TopUp(string mark, string? water = null) =>
        new TopUpStep("top-up", Nowhere) { To = At(VolumeOf(mark)), Of = Water(water) };

    public static Step Adjust(double ph, string reagent) =>
        new AdjustStep("adjust", Nowhere) { TargetPh = At(ph), Using = At(reagent), Reagent = Substance(reagent) };

    /// <summary>A stock whose steps stand where the list says.</summary>
    public static StockDocument Stock(string file, string makes, params Step[] steps) => new()
    {
        File = file,
        Name = file.Replace(".stock.json", "", StringComparison.Ordinal),
        Makes = new Located<Volume>(VolumeOf(makes), Place.Whole(file).Child("makes")),
        Steps = [.. steps.Select((s, i) => s with { Place = Place.Whole(file).Child("steps").Child(i) })],
    };

    public static DoseEntry Dose(string stock, string? dose = null, string? amount = null, int? strokes = null, string? with = null) =>
        new StockDose(stock.Replace(".stock.json", "", StringComparison.Ordinal), Nowhere)
        {
            Stock = At(stock),
            StockFile = stock,
            Dose = dose is null ? null : At(DoseOf(dose)),
            Amount = amount is null ? null : At(VolumeOf(amount)),
            Strokes = strokes is { } count ? At(count) : null,
            With = with is null ? null : At(with),
        };

    public static DoseEntry Direct(string substance, string amount, string? assay = null) => Direct(Substance(substance), amount, assay);

    public static DoseEntry Direct(Substance substance, string amount, string? assay = null) =>
        new DirectDose(substance.Id, Nowhere)
        {
            What = At(substance.Id),
            Substance = substance,
            Amount = At(Portion(amount)),
            Assay = assay is null ? null : At(Read(assay, Due.Assay).MassFraction),
        };

    public static RecipeDocument Recipe(string final, FinalVolumeMeaning? meaning, params DoseEntry[] doses)
    {
        const string File = "tank.recipe.json";
        return new RecipeDocument
        {
            File = File,
            Name = "tank",
            Final = new Located<Volume>(VolumeOf(final), Place.Whole(File).Child("final")),
            VolumeMeaning = meaning is { } m ? At(m) : null,
            Doses = [.. doses.Select((d, i) => d with { Place = Place.Whole(File).Child("doses").Child(i) })],
        };
    }

    public static Facts Analyse(IEnumerable<StockDocument> stocks, RecipeDocument? recipe = null, ShopSettings? shop = null, params WaterDocument[] waters) =>
        Analyzer.Analyse(new Workspace
        {
            Stocks = [.. stocks],
            Recipes = recipe is null ? [] : [recipe],
            Waters = waters,
            Catalogue = SubstanceCatalogue.BuiltIn,
            SettingsFor = _ => shop ?? new ShopSettings(),
        });

    public static StockFacts StockOf(params Step[] steps) => Analyse([Stock("a.stock.json", "2 L", steps)]).Stocks.Single();

    public static RecipeFacts RecipeOf(string final, params DoseEntry[] doses) =>
        Analyse([], Recipe(final, FinalVolumeMeaning.MadeUp, doses)).Recipes.Single();

    public static Portion Portion(string text)
    {
        var quantity = Read(text, Due.Portion);
        return quantity.Dimension switch
        {
            Dimension.Mass => new Portion.ByMass(quantity.Mass),
            Dimension.Volume => new Portion.ByVolume(quantity.Volume),
            Dimension.Drops => new Portion.ByDrops(quantity.Drops),
            Dimension.Amount => new Portion.ByAmount(quantity.Amount),
            Dimension.MassConcentration => new Portion.PerLitreMass(quantity.MassConcentration),
            Dimension.AmountConcentration => new Portion.PerLitreAmount(quantity.AmountConcentration),
            _ => new Portion.PerLitreVolume(quantity.Dose),
        };
    }

    public static Volume VolumeOf(string text) => Read(text, Due.Volume).Volume;

    public static Dose DoseOf(string text) => Read(text, Due.Dose).Dose;

    public static Quantity Read(string text, Due due) =>
        QuantityReader.TryRead(text, due, out var quantity, out var fault) ? quantity : throw new FormatException(fault.Message);

    private static Place Nowhere { get; } = Place.Whole("bench");

    private static Located<T> At<T>(T value) => new(value, Nowhere);

    private static Located<WaterReference>? Water(string? file) =>
        file is null ? null : At(new WaterReference(file, file.EndsWith(".json", StringComparison.Ordinal) ? file : null));
}
