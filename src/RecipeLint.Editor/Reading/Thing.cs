using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Editor.Reading;

/// <summary>What names in files speak of.</summary>
internal enum ThingKind
{
    /// <summary>A file of the workspace: a stock, a water, a profile.</summary>
    File,

    /// <summary>A substance by its id.</summary>
    Substance,

    /// <summary>A scale, measure, vessel or site by its name, of one settings file.</summary>
    Equipment,

    /// <summary>A rule by its id.</summary>
    Rule,
}

/// <param name="Key">Path, id or name.</param>
/// <param name="Owner">The settings file of equipment; empty for everything else.</param>
internal readonly record struct Thing(ThingKind Kind, string Key, string Owner = "");

/// <summary>A place at which a thing is named.</summary>
internal sealed record Use(Thing Thing, Place Place);

/// <summary>Finds what is named where, from the documents as the reader has resolved them.</summary>
internal static class Things
{
    /// <summary>Every name of every file of a workspace, in the order of the files.</summary>
    public static IEnumerable<Use> UsesIn(Workspace workspace) =>
        workspace.Stocks.SelectMany(s => UsesIn(workspace, s))
            .Concat(workspace.Recipes.SelectMany(r => UsesIn(workspace, r)))
            .Concat(SettingsOf(workspace).SelectMany(UsesIn));

    /// <summary>Where a thing is described; null for what is built in and for rules.</summary>
    public static Place? Home(Workspace workspace, Thing thing) => thing.Kind switch
    {
        ThingKind.File => Place.Whole(thing.Key),
        ThingKind.Substance => workspace.SubstanceFiles.SelectMany(f => f.Substances)
            .FirstOrDefault(s => s.Substance.Id == thing.Key)?.Place.Child("id"),
        ThingKind.Equipment => SettingsOf(workspace).FirstOrDefault(s => s.File == thing.Owner) is { } shop ? HomeOf(shop, thing.Key)
            : null,
        _ => null,
    };

    /// <summary>The thing that is named, or described, at a point; null where none is.</summary>
    public static Thing? At(Workspace workspace, string file, Under under)
    {
        var pointer = under.Item.Pointer.Value;
        var part = under.OnKey ? PlacePart.Key : PlacePart.Value;
        if (UsesIn(workspace).FirstOrDefault(u => u.Place.File == file && u.Place.Part == part
            && u.Place.Pointer.Value == pointer) is { } use)
        {
            return use.Thing;
        }

        if (under.OnKey)
        {
            return null;
        }

        if (workspace.SubstanceFiles.FirstOrDefault(f => f.File == file)?.Substances.FirstOrDefault(s =>
            s.Place.Child("id").Pointer.Value == pointer) is { } own)
        {
            return new Thing(ThingKind.Substance, own.Substance.Id);
        }

        if (under.Tokens is [_, _, "name"] && SettingsOf(workspace).FirstOrDefault(s => s.File == file) is { } shop)
        {
            return HomeOf(shop, under.Item.Text)?.Pointer.Value == pointer ? new Thing(ThingKind.Equipment, under.Item.Text, file) : null;
        }

        return under.Tokens is ["name"] or [] && workspace.FindStock(file) is not null ? new Thing(ThingKind.File, file) : null;
    }

    /// <summary>The settings that hold for any file of a workspace.</summary>
    public static IEnumerable<ShopSettings> SettingsOf(Workspace workspace) =>
        workspace.Sources.Keys.Select(workspace.SettingsFor).Where(s => s.File is not null).DistinctBy(s => s.File);

    private static IEnumerable<Use> UsesIn(Workspace workspace, StockDocument stock)
    {
        var shop = workspace.SettingsFor(stock.File);
        foreach (var use in stock.Steps.SelectMany(s => UsesIn(shop, s)))
        {
            yield return use;
        }

        foreach (var use in Equipment(shop, stock.Vessel))
        {
            yield return use;
        }
    }

    private static Use[] UsesIn(ShopSettings shop, Step step) => step switch
    {
        AddStep add => [.. Named(add.Substance, add.What), .. Equipment(shop, add.With)],
        AliquotStep aliquot => [.. Named(aliquot.StockFile, aliquot.What.Place), .. Equipment(shop, aliquot.With)],
        PourStep pour => [.. Named(pour.Of?.Value.File, pour.Of?.Place), .. Equipment(shop, pour.With)],
        TopUpStep topUp => Named(topUp.Of?.Value.File, topUp.Of?.Place),
        AdjustStep adjust => Named(adjust.Reagent, adjust.Using),
        _ => [],
    };

    private static IEnumerable<Use> UsesIn(Workspace workspace, RecipeDocument recipe)
    {
        var shop = workspace.SettingsFor(recipe.File);
        var uses = recipe.Doses.SelectMany(d => d switch
        {
            StockDose dose => [.. Named(dose.StockFile, dose.Stock.Place), .. Equipment(shop, d.With)],
            DirectDose direct => [.. Named(direct.Substance, direct.What), .. Equipment(shop, d.With)],
            _ => Array.Empty<Use>(),
        });
        return [.. uses, .. Named(recipe.Water?.Value.File, recipe.Water?.Place), .. Named(recipe.ProfileFile, recipe.Crop?.Place),
            .. Named(recipe.Adjust?.Reagent, recipe.Adjust?.Using)];
    }

    private static IEnumerable<Use> UsesIn(ShopSettings shop) =>
        shop.Suppressions.SelectMany(s => Named(s.File, s.Place.Child("file")).Concat(Rule(shop, s.Rule, s.Place.Child("rule"))))
            .Concat(shop.Rules.SelectMany(r => Rule(shop, r.Rule, r.Place.Key)));

    private static IEnumerable<Use> Rule(ShopSettings shop, string name, Place place) =>
        RecipeLint.Rules.Engine.HouseRules.Find(shop, name) is { } rule ? [new Use(new Thing(ThingKind.Rule, rule.Id), place)] : [];

    private static Use[] Named(string? file, Place? place) => file is null || place is null ? []
        : [new Use(new Thing(ThingKind.File, file), place)];

    private static Use[] Named(Substance? substance, Located<string>? written) =>
        substance is null || written is null ? [] : [new Use(new Thing(ThingKind.Substance, substance.Id), written.Place)];

    private static Use[] Equipment(ShopSettings shop, Located<string>? name) =>
        name is null || shop.File is not { } owner || HomeOf(shop, name.Value) is null ? []
            : [new Use(new Thing(ThingKind.Equipment, name.Value, owner), name.Place)];

    private static Place? HomeOf(ShopSettings shop, string name)
    {
        var places = shop.Scales.Select(s => (s.Name, s.Place)).Concat(shop.Measures.Select(m => (m.Name, m.Place)))
            .Concat(shop.Vessels.Select(v => (v.Name, v.Place))).Concat(shop.Sites.Select(s => (s.Name, s.Place)));
        var found = places.FirstOrDefault(p => p.Name == name);
        return found.Place is null ? null : found.Place.Child("name");
    }
}
