using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Documents;
using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Show;

/// <summary>What a crop of the shop wants, as recipes are held against it: the file laid over the profile it extends.</summary>
public static class ProfileSheet
{
    public static Sheet Of(ProfileDocument document)
    {
        var any = ShopProfile.Of(document, null);
        var stages = document.Stages.Keys.Concat(ProfileLibrary.Stages(BaseOf(document))).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(s => (Name: s, Profile: ShopProfile.Of(document, s)))
            .ToList();
        return new Sheet("profile", document.Name, document.File,
        [
            .. new[]
            {
                new SheetSection("about", "About", About(document)),
                Windows(any, stages),
                new SheetSection(
                    "elements", "Elements in the final solution, mg/L", [], Elements(document, any, any.Elements),
                    "What the file does not say is taken from the profile it extends."),
            }
                .Concat(stages.Select(s => new SheetSection(
                    $"stage-{s.Name}",
                    $"Otherwise at stage '{s.Name}', mg/L",
                    [],
                    Elements(document, s.Profile, Differing(any, s.Profile)))))
                .Append(Ratios(document, any))
                .Where(s => !s.IsEmpty),
        ]);
    }

    private static string BaseOf(ProfileDocument document) => document.Extends?.Value ?? ProfileLibrary.GenericName;

    private static List<string> About(ProfileDocument document)
    {
        var says = new List<string> { $"Written over the built-in profile '{BaseOf(document)}'." };
        if (document.Source is { } source)
        {
            says.Add($"Its own figures come from: {source}.");
        }

        return says;
    }

    private static SheetSection Windows(CropProfile any, IReadOnlyList<(string Name, CropProfile Profile)> stages) => new(
        "windows", "EC and pH", [],
        new Table(
            [new("stage"), new("EC mS/cm", true), new("pH", true)],
            [
                .. stages.Prepend((Name: "any", Profile: any)).Select(s => (IReadOnlyList<string>)
                [
                    s.Name, Cells.Range(s.Profile.Ec?.Low, s.Profile.Ec?.High), Cells.Range(s.Profile.Ph?.Low, s.Profile.Ph?.High),
                ]),
            ]));

    private static IEnumerable<ElementRange> Differing(CropProfile any, CropProfile stage) =>
        stage.Elements.Where(e => any.Find(e.Key) is not { } plain || Figures(plain) != Figures(e));

    private static (double? DeficientBelow, double? Low, double? High, double? Upper, double? Toxic) Figures(ElementRange range) =>
        (range.DeficientBelow, range.SufficientLow, range.SufficientHigh, range.Upper, range.ToxicAbove);

    private static Table Elements(ProfileDocument document, CropProfile profile, IEnumerable<ElementRange> ranges)
    {
        var own = document.Any.Elements
            .Concat(document.Stages.Where(s => s.Key.Equals(profile.Stage, StringComparison.OrdinalIgnoreCase))
                .SelectMany(s => s.Value.Elements))
            .Select(e => e.Key)
            .ToHashSet(StringComparer.Ordinal);
        return new Table(
            [
                new("element"), new("short below", true), new("usual", true), new("still run up to", true), new("harmful above", true),
                new("stated in"),
            ],
            [
                .. ranges.Select(e => (IReadOnlyList<string>)
                [
                    e.Key, Cells.Number(e.DeficientBelow), Cells.Range(e.SufficientLow, e.SufficientHigh), Cells.Number(e.Upper),
                    Cells.Number(e.ToxicAbove), own.Contains(e.Key) ? "this file" : BaseOf(document),
                ]),
            ]);
    }

    private static SheetSection Ratios(ProfileDocument document, CropProfile profile) => new(
        "ratios", "Ratios", [],
        new Table(
            [new("ratio"), new("by"), new("usual", true), new("stated in")],
            [
                .. profile.Ratios.Select(r => (IReadOnlyList<string>)
                [
                    $"{r.Numerator} : {r.Denominator}", r.Basis, Cells.Range(r.Low, r.High),
                    document.Ratios.Any(o => o.Of == r.Numerator && o.To == r.Denominator) ? "this file" : BaseOf(document),
                ]),
            ]));
}
