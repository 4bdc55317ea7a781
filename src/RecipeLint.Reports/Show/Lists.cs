using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>
/// What files may name, as tables. Search words are looked for in every cell and in other names; all of them have to be there.
/// </summary>
public static class Lists
{
    public static Table Substances(SubstanceCatalogue catalogue, IReadOnlyList<string> words) => Searched(
        [new("id"), new("name"), new("formula or kind"), new("elements, % by mass")],
        catalogue.Substances.OrderBy(s => s.Id, StringComparer.Ordinal).Select(s => (
            (IReadOnlyList<string>)[s.Id, s.Name, s.Formula?.ToString() ?? Kind(s.Kind), Content(s)],
            (IReadOnlyList<string>)[.. s.Aliases, s.Cas ?? "", Kind(s.Kind)])),
        words);

    /// <param name="own">Profiles of a shop, listed behind the built-in ones.</param>
    public static Table Profiles(IReadOnlyList<ProfileDocument> own, IReadOnlyList<string> words) => Searched(
        [
            new("profile"), new("stages"), new("EC mS/cm", true), new("pH", true), new("N mg/L", true), new("K mg/L", true),
            new("Ca mg/L", true),
        ],
        ProfileLibrary.Names.Select(name => ProfileLibrary.Find(name)!).Select(p => (
            (IReadOnlyList<string>)
            [
                p.Name, string.Join(", ", ProfileLibrary.Stages(p.Name)), Cells.Range(p.Ec?.Low, p.Ec?.High),
                Cells.Range(p.Ph?.Low, p.Ph?.High),
                Range(p, "N"), Range(p, "K"), Range(p, "Ca"),
            ],
            (IReadOnlyList<string>)[.. ProfileLibrary.AllNames.Where(n => ProfileLibrary.Find(n)?.Name == p.Name)]))
            .Concat(own.Select(d => (Document: d, Profile: ShopProfile.Of(d, null))).Select(p => (
                (IReadOnlyList<string>)
                [
                    p.Profile.Name, string.Join(", ", p.Document.Stages.Keys), Cells.Range(p.Profile.Ec?.Low, p.Profile.Ec?.High),
                    Cells.Range(p.Profile.Ph?.Low, p.Profile.Ph?.High), Range(p.Profile, "N"), Range(p.Profile, "K"),
                    Range(p.Profile, "Ca"),
                ],
                (IReadOnlyList<string>)[p.Document.File, p.Document.Extends?.Value ?? ""]))),
        words);

    public static Table Units(IReadOnlyList<string> words) => Searched(
        [new("unit"), new("is"), new("is worth", true), new("also written"), new("source")],
        UnitList.All.Select(u => (
            (IReadOnlyList<string>)
            [
                u.Symbol, u.Measures,
                (u.Factor is { } factor ? $"{Say.Number(factor)} {u.BaseUnit}" : "")
                    + (u.Uncertainty is { } doubt ? $" ± {Say.Percent(doubt)}" : ""),
                string.Join(", ", u.Spellings), u.Source,
            ],
            (IReadOnlyList<string>)[])),
        words);

    /// <param name="shop">Whose own rules are listed behind the others; null for none.</param>
    public static Table Rules(ShopSettings? shop, IReadOnlyList<string> words) => Searched(
        [new("rule"), new("level"), new("name"), new("family"), new("what it says")],
        RuleBook.Descriptors.Concat(shop?.HouseRules.Select(RecipeLint.Rules.Engine.HouseRules.Descriptor) ?? []).Select(r => (
            (IReadOnlyList<string>)[r.Id, Words.Of(r.Level), r.Name, r.Family, r.Title],
            (IReadOnlyList<string>)[Words.Of(r.Certainty)])),
        words);

    /// <param name="shops">Settings of the files looked at; those without equipment are passed over.</param>
    /// <param name="folder">Left out of the names of files; ends with a slash.</param>
    public static Table Equipment(IEnumerable<ShopSettings> shops, IReadOnlyList<string> words, string folder = "") => Searched(
        [new("name"), new("is"), new("holds", true), new("reads to", true), new("good to"), new("stated in")],
        shops.SelectMany(s => OfShop(s, folder)).Select(row => (row, (IReadOnlyList<string>)[])),
        words);

    private static IEnumerable<IReadOnlyList<string>> OfShop(ShopSettings shop, string folder)
    {
        var file = FolderNames.Within(folder, shop.File ?? "");
        foreach (var scale in shop.Scales)
        {
            yield return
            [
                scale.Name, "scale", scale.Capacity is { } capacity ? Say.Grams(capacity.Grams) : "", Say.Grams(scale.Readability.Grams),
                scale.Repeatability is { } repeatability ? $"repeats to {Say.Grams(repeatability.Grams)}" : "", file,
            ];
        }

        foreach (var measure in shop.Measures)
        {
            yield return
            [
                measure.Name, measure.Kind.ToString().ToLowerInvariant(),
                measure.Capacity is { } capacity ? Say.Litres(capacity.Litres) : "",
                measure.Readability is { } readability ? Say.Litres(readability.Litres) : "", Tolerance(measure.Tolerance, "L"), file,
            ];
        }

        foreach (var meter in shop.Meters)
        {
            yield return [meter.Name, meter.Kind == MeterKind.Ph
                ? "pH meter"
                : "EC meter", "", "", Tolerance(meter.Accuracy, meter.Kind == MeterKind.Ph ? "pH" : "mS/cm"), file];
        }

        foreach (var vessel in shop.Vessels)
        {
            yield return
            [
                vessel.Name, "vessel", vessel.Capacity is { } capacity ? Say.Litres(capacity.Litres) : "", "",
                vessel.Tare is { } tare ? $"weighs {Say.Grams(tare.Grams)} empty" : "", file,
            ];
        }

        foreach (var site in shop.Sites)
        {
            yield return [site.Name, "site", $"{Say.Number(site.At.Low.Celsius)} to {Say.Number(site.At.High.Celsius)} °C", "", "", file];
        }
    }

    private static string Tolerance(Tolerance? tolerance, string unit) => tolerance switch
    {
        { Relative: { } share } => $"± {Say.Percent(share)}",
        { Absolute: { } litres } when unit == "L" => $"± {Say.Litres(litres)}",
        { Absolute: { } value } => $"± {Say.Number(value)} {unit}",
        _ => "",
    };

    private static string Range(CropProfile profile, string key) =>
        profile.Find(key) is { } range ? Cells.Range(range.SufficientLow, range.SufficientHigh) : "";

    private static string Kind(SubstanceKind kind) => kind switch
    {
        SubstanceKind.ChelatingAgent => "chelating agent",
        _ => kind.ToString().ToLowerInvariant(),
    };

    internal static string Content(Substance substance) => string.Join(
        ", ",
        substance.Content.Elements
            .Where(e => e.Symbol is not ("H" or "O" or "C"))
            .Select(e => $"{e.Symbol} {Say.Number(100 * substance.Content[e])}"));

    private static Table Searched(
        IReadOnlyList<Column> columns, IEnumerable<(IReadOnlyList<string> Row, IReadOnlyList<string> Also)> rows,
        IReadOnlyList<string> words) => new(
        columns,
        [
            .. rows.Where(r => words.All(w => r.Row.Concat(r.Also).Any(c => c.Contains(w, StringComparison.OrdinalIgnoreCase))))
                .Select(r => r.Row),
        ]);
}
