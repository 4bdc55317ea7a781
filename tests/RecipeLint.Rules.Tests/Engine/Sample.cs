using System.Collections.Immutable;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>Small hand-built facts, so that the engine is tested without reading a file.</summary>
internal static class Sample
{
    internal const string StockFile = "a.stock.json";
    internal const string RecipeFile = "tank.recipe.json";
    internal const string SettingsFile = "recipelint.json";

    internal static Place At(string file, string pointer) => new(file, new JsonPointer(pointer));

    internal static RuleSetting Setting(string rule, string? level, params (string Name, string Literal)[] options) =>
        new(
            rule,
            At(SettingsFile, "/rules/" + rule),
            level,
            options.ToDictionary(o => o.Name, o => new Located<string>(o.Literal, At(SettingsFile, $"/rules/{rule}/{o.Name}"))));

    internal static Suppression Suppress(
        string rule, string file, string? idPath = null, double? accepted = null, DateOnly? expires = null, int index = 0) =>
        new(At(SettingsFile, "/suppressions/" + index), rule, file, idPath, "looked at and found harmless", accepted, expires);

    internal static ShopSettings Shop(IReadOnlyList<RuleSetting>? rules = null, IReadOnlyList<Suppression>? suppressions = null) =>
        new() { File = SettingsFile, Rules = rules ?? [], Suppressions = suppressions ?? [] };

    internal static StockDocument Stock(string file = StockFile, Dose? dose = null, params Step[] steps) =>
        new()
        {
            File = file,
            Name = file,
            Makes = new Located<Volume>(new Volume(1), At(file, "/makes")),
            Dose = dose is { } stated ? new Located<Dose>(stated, At(file, "/dose")) : null,
            Steps = steps,
        };

    internal static StockFacts Facts(StockDocument stock, params AdditionFacts[] additions) =>
        new()
        {
            Stock = stock,
            Settings = new ShopSettings(),
            Volume = new Volume(1),
            Additions = additions,
            Totals = ElementTotals.Empty,
            ComponentMoles = ComponentMoles.Empty,
            StorageTemperature = new Interval<Temperature>(new Temperature(5), new Temperature(30)),
            IsComplete = true,
        };

    internal static AdditionFacts Addition(string id, Substance substance, double grams, string file = StockFile, int index = 0, bool assay = false) =>
        new()
        {
            Id = id,
            Place = At(file, "/steps/" + index),
            Substance = substance,
            Mass = new Mass(grams),
            AssayDeclared = assay,
            Elements = ElementTotals.Empty,
            ComponentMoles = ComponentMoles.Empty,
        };

    internal static Substance Substance(string id, bool needsAssay = false) =>
        new()
        {
            Id = id,
            Name = id.Replace('-', ' '),
            Kind = SubstanceKind.Salt,
            Content = RecipeLint.Chemistry.Composition.ElementContent.Empty,
            NeedsAssay = needsAssay,
        };

    internal static RecipeFacts Recipe(params DoseFacts[] doses) =>
        new()
        {
            Recipe = new RecipeDocument { File = RecipeFile, Name = "Tank", Doses = [.. doses.Select(d => d.Entry)] },
            Settings = new ShopSettings(),
            Profile = new CropProfile { Name = "generic", Stage = "", Elements = [], Ratios = [] },
            FinalVolume = new Volume(100),
            WaterVolume = new Volume(100),
            Doses = doses,
            Elements = ImmutableSortedDictionary<string, ElementFact>.Empty,
            ComponentMoles = ComponentMoles.Empty,
            Charge = new ChargeBalance(default, default, default),
            IsComplete = true,
        };

    /// <summary>A dose of a stock; <paramref name="millilitresPerLitre"/> null leaves it to the stock.</summary>
    internal static DoseFacts Dose(StockFacts stock, double? millilitresPerLitre, int index = 0)
    {
        var place = At(RecipeFile, "/doses/" + index);
        var used = millilitresPerLitre is { } rate ? RecipeLint.Chemistry.Quantities.Dose.FromMillilitresPerLitre(rate) : stock.Stock.Dose!.Value;
        return new DoseFacts
        {
            Entry = new StockDose(stock.Stock.File, place)
            {
                Stock = new Located<string>(stock.Stock.File, place.Child("stock")),
                StockFile = stock.Stock.File,
                Dose = millilitresPerLitre is null ? null : new Located<Dose>(used, place.Child("dose")),
            },
            Stock = stock,
            Volume = used * new Volume(100),
            Dose = used,
            Elements = ElementTotals.Empty,
            ComponentMoles = ComponentMoles.Empty,
        };
    }

    internal static Facts All(
        IReadOnlyList<StockFacts>? stocks = null,
        IReadOnlyList<RecipeFacts>? recipes = null,
        IReadOnlyList<Problem>? problems = null,
        ShopSettings? shop = null)
    {
        var files = (stocks ?? []).Select(s => s.Stock.File)
            .Concat((recipes ?? []).Select(r => r.Recipe.File))
            .Concat((problems ?? []).Select(p => p.Place.File))
            .Append(SettingsFile)
            .Distinct()
            .ToList();
        return new Facts
        {
            Workspace = new Workspace
            {
                Sources = files.ToDictionary(f => f, f => new SourceFile(f, "{}"u8.ToArray())),
                Asked = files.ToHashSet(),
                Stocks = [.. (stocks ?? []).Select(s => s.Stock)],
                Recipes = [.. (recipes ?? []).Select(r => r.Recipe)],
                Catalogue = SubstanceCatalogue.BuiltIn,
                SettingsFor = _ => shop ?? new ShopSettings(),
                Problems = problems ?? [],
            },
            Stocks = stocks ?? [],
            Recipes = recipes ?? [],
        };
    }
}
