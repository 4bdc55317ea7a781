using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>Products of a shop with what each was read as.</summary>
public static class ProductSheet
{
    public static Sheet Of(SubstanceFile file) => new("products", NameOf(file.File), file.File,
    [
        .. new[]
        {
            new SheetSection(
                "products", "Products", [],
                new Table(
                    [new("id"), new("name"), new("known by"), new("g/mL", true), new("elements, % by mass")],
                    [.. file.Substances.Select(Row)]),
                file.UnreadNames.Count == 0
                    ? []
                    : [$"Could not be read: {Say.List(file.UnreadNames.Order(StringComparer.Ordinal))}. 'recipelint check' says why."]),
            new SheetSection(
                "nitrogen", "Nitrogen by form, % by mass", [],
                new Table(
                    [new("id"), new("nitrate", true), new("ammonium", true), new("urea", true), new("organic", true)],
                    [.. file.Substances.Where(s => Forms(s.Substance).Any(f => f > 0)).Select(s => (IReadOnlyList<string>)
                        [s.Substance.Id, .. Forms(s.Substance).Select(f => f > 0 ? Say.Number(100 * f) : "")])])),
            new SheetSection(
                "water", "What goes into the water, mmol per gram", [],
                new Table(
                    [new("id"), new("as")],
                    [.. file.Substances.Where(s => s.Substance.Dissolves.Count > 0).Select(s => (IReadOnlyList<string>)
                        [
                            s.Substance.Id,
                            string.Join("; ", s.Substance.Dissolves.Select(
                                d => $"{RecipeSheet.Ion(d.Component)} {Say.Number(1000 * d.MolesPerGram)}")),
                        ])])),
            new SheetSection(
                "assumed", "Assumed",
                [
                    .. file.Substances.Where(s => s.Substance.Assumption is not null)
                        .Select(s => $"{s.Substance.Id}: {s.Substance.Assumption}"),
                ]),
        }.Where(s => !s.IsEmpty),
    ]);

    /// <summary>The file's name without folder and ending.</summary>
    private static string NameOf(string file) => Path.GetFileNameWithoutExtension(Path.GetFileNameWithoutExtension(file));

    private static IReadOnlyList<string> Row(ShopSubstance known) =>
    [
        known.Substance.Id, known.Substance.Name,
        known.UnknownComposition ? "nothing stated"
            : known.Substance.Formula is { } formula ? formula.ToString()
            : known.Substance.StrengthRecord?.Value ?? "",
        Cells.Number(known.Substance.Density?.Value.GramsPerMillilitre),
        Lists.Content(known.Substance),
    ];

    private static IEnumerable<double> Forms(Substance substance) =>
        new[] { NitrogenForm.Nitrate, NitrogenForm.Ammonium, NitrogenForm.Urea, NitrogenForm.Organic }.Select(f => substance.Content[f]);
}
