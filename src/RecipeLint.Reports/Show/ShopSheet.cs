using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>A folder at a glance: what its recipes give, its bottles, waters and equipment.</summary>
public static class ShopSheet
{
    private static readonly string[] Shown = [NutrientKeys.Nitrogen, "P", "K", "Ca", "Mg"];

    /// <param name="name">The folder as it was named.</param>
    /// <param name="files">Those to show, relative to the workspace root.</param>
    public static Sheet Of(Facts facts, string name, IReadOnlySet<string> files)
    {
        var common = FolderNames.Common(files);
        return new Sheet("shop", name, $"{files.Count} file{(files.Count == 1 ? "" : "s")}",
        [
            .. new[]
            {
                Recipes(facts, files, common),
                Stocks(facts, files, common),
                Waters(facts, files, common),
                new SheetSection(
                    "products", "Products and profiles",
                    [
                        .. facts.Workspace.SubstanceFiles.Where(s => files.Contains(s.File)).Select(s =>
                            $"{FolderNames.Within(common, s.File)}: "
                                + $"{Say.List(s.Substances.Select(p => p.Substance.Id).DefaultIfEmpty("nothing that could be read"))}."),
                        .. facts.Workspace.Profiles.Where(p => files.Contains(p.File)).Select(p =>
                            $"{FolderNames.Within(common, p.File)}: the profile '{p.Name}'."),
                    ]),
                new SheetSection(
                    "equipment", "Equipment and sites", [],
                    Lists.Equipment(
                        files.Order(StringComparer.Ordinal).Select(facts.Workspace.SettingsFor).DistinctBy(s => s.File), [],
                        common)),
            }.Where(s => !s.IsEmpty),
        ]);
    }

    private static SheetSection Recipes(Facts facts, IReadOnlySet<string> files, string common) => new(
        "recipes", "Recipes, mg/L in the final solution", [],
        new Table(
            [
                new("recipe"), new("profile"), new("EC mS/cm", true), new("pH", true),
                .. Shown.Select(e => new Column(e, true)),
            ],
            [
                .. facts.Recipes.Where(r => files.Contains(r.Recipe.File)).Select(r => (IReadOnlyList<string>)
                [
                    FolderNames.Within(common, r.Recipe.File), r.Profile.Name,
                    Cells.Number(r.Chemistry.Final.IsSolved ? r.Chemistry.Final.Conductivity.At25?.MillisiemensPerCentimetre : null),
                    r.Chemistry.Final.IsSolved ? Cells.Ph(r.Chemistry.Final) : "",
                    .. Shown.Select(e => r.MilligramsPerLitre(e) is var value and > 0 ? Say.Number(value) : ""),
                ]),
            ]));

    private static SheetSection Stocks(Facts facts, IReadOnlySet<string> files, string common) => new(
        "stocks", "Stocks", [],
        new Table(
            [new("file"), new("stock"), new("makes", true), new("dose mL/L", true), new("pH", true), new("kept at °C", true)],
            [
                .. facts.Stocks.Where(s => files.Contains(s.Stock.File)).Select(s => (IReadOnlyList<string>)
                [
                    FolderNames.Within(common, s.Stock.File), s.Stock.Name, Say.Litres(s.Volume.Litres),
                    Cells.Number(s.Stock.Dose?.Value.MillilitresPerLitre),
                    s.Chemistry.Mixing.IsSolved ? Cells.Ph(s.Chemistry.Mixing) : "",
                    Cells.Range(s.StorageTemperature.Low.Celsius, s.StorageTemperature.High.Celsius),
                ]),
            ]));

    private static SheetSection Waters(Facts facts, IReadOnlySet<string> files, string common) => new(
        "waters", "Waters", [],
        new Table(
            [new("file"), new("water"), new("EC mS/cm", true), new("pH", true), new("alkalinity meq/L", true)],
            [
                .. facts.Workspace.Waters.Where(w => files.Contains(w.File)).Select(w => (IReadOnlyList<string>)
                [
                    FolderNames.Within(common, w.File), w.Name,
                    Cells.Range(w.Ec?.Value.Low.MillisiemensPerCentimetre, w.Ec?.Value.High.MillisiemensPerCentimetre),
                    Cells.Range(w.Ph?.Value.Low, w.Ph?.Value.High),
                    Cells.Range(w.Alkalinity?.Value.Low.MilliequivalentsPerLitre, w.Alkalinity?.Value.High.MilliequivalentsPerLitre),
                ]),
            ]));
}
