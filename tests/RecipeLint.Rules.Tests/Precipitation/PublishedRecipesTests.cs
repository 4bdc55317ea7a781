using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>
/// No false alarm: solutions that crops were grown in for decades stay clear, in the tank and as the stocks a grower would make of them.
/// The citations stand beside the recipe files (*.published.json).
/// </summary>
public sealed class PublishedRecipesTests
{
    /// <summary>A line of a data sheet without the rest of its feed.</summary>
    private static readonly string[] NoFeeds = ["teaching-sheet-fe-eddha", "hoagland-arnon-1938-molybdenum", "johnson-type-micronutrient-stock"];

    private static readonly string[] TraceMetals = ["Mn+2", "Zn+2", "Cu+2", "Co+2", "Ni+2"];

    private static readonly string Folder = Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Analysis.Tests", "Published");

    private static readonly string Products = Read("published.substances.json");

    public static TheoryData<string> Ids =>
        [.. Directory.GetFiles(Folder, "*.recipe.json").Select(f => Path.GetFileName(f).Replace(".recipe.json", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    [Fact]
    public void ThereAreAsManyAsThereWere() => Assert.Equal(18, Ids.Count);

    [Theory]
    [MemberData(nameof(Ids))]
    public void StaysClearInTheTank(string id) => Assert.Empty(Describe(Lint.Files(Recipe(id)).OfTheFamily()));

    /// <summary>
    /// Calcium and iron in part A at 1:100, phosphate, sulfate and the rest in part B at 1:100, trace salts at 1:1000 with 2 g/L of citric
    /// acid and 1 g/L of sorbate: common practice, no source. Half of the potassium nitrate goes into each part.
    /// </summary>
    [Theory]
    [MemberData(nameof(Ids))]
    public void StaysClearAsStocks(string id)
    {
        if (NoFeeds.Contains(id))
        {
            return;
        }

        var stocks = Stocks(id);
        var result = Lint.Files([.. stocks, ("published.substances.json", Products)]);

        Assert.True(stocks.Length >= 2, id);
        Assert.Empty(Describe(result.OfTheFamily()));
    }

    /// <summary>As stocks no rule of any family has an error or a warning against one of them.</summary>
    [Theory]
    [MemberData(nameof(Ids))]
    public void RaisesNoErrorAsStocksFromAnyRule(string id)
    {
        if (NoFeeds.Contains(id))
        {
            return;
        }

        var result = Lint.Files([.. Stocks(id), ("published.substances.json", Products)]);

        Assert.Empty(result.Faults);
        Assert.Empty(Describe(result.Findings.Where(f => f.Level == Level.Error)));
        Assert.Empty(Describe(result.Findings.Where(f => f.Level == Level.Warning)));
    }

    /// <summary>Poured into one bottle at 1:100, every complete one of them falls out: the rules do look.</summary>
    [Theory]
    [InlineData("steiner-1984")]
    [InlineData("cooper-1979-nft")]
    [InlineData("hoagland-arnon-1950-solution-1")]
    [InlineData("long-ashton-hewitt-1966")]
    public void DoesNotStayClearInOneBottle(string id)
    {
        var all = Additions(id).Select(a => (a.Substance, a.Grams * 100)).ToArray();
        var findings = Lint.Files(Lint.Stock("all", "10 mL/L", "5..25 °C", all), ("published.substances.json", Products)).OfTheFamily();

        Assert.Contains(findings, f => f.Rule.Name == "calcium-with-sulfate" && f.Level == Level.Error);
    }

    /// <summary>The clean example and the shop a newcomer starts from.</summary>
    [Theory]
    [InlineData("examples/quillmere", 7)]
    [InlineData("src/RecipeLint/Shop", 6)]
    public void ExamplesStayClear(string folder, int count)
    {
        var root = Path.GetFullPath(Path.Combine(Folder, "..", "..", "..", folder));
        var files = Directory.GetFiles(root, "*.json", SearchOption.AllDirectories)
            .Select(f => (Path.GetRelativePath(root, f).Replace('\\', '/'), File.ReadAllText(f)))
            .ToArray();

        Assert.Equal(count, files.Length);
        Assert.Empty(Describe(Lint.Files(files).OfTheFamily()));
    }

    private static IEnumerable<string> Describe(IEnumerable<Finding> findings) => findings.Select(f => $"{f.Level} {f.Rule.Name} {f.IdPath}: {f.Message}");

    private static (string Name, string Text)[] Stocks(string id)
    {
        // Media for plant tissue are several times as strong as a feed; their stocks are made for 1:20 (common practice, no source).
        var times = id is "murashige-skoog-1962" or "gamborg-b5" ? 20 : 100;
        var dose = times == 20 ? "50 mL/L" : "10 mL/L";
        List<(string, double)> a = [], b = [], trace = [];
        foreach (var (substance, grams, facts) in Additions(id))
        {
            bool Has(string component) => facts.ComponentMoles.GetValueOrDefault(component) > 0;
            if (substance == "potassium-nitrate")
            {
                a.Add((substance, grams * times / 2));
                b.Add((substance, grams * times / 2));
            }
            else if (Has("Ca+2") || Has("Fe+2") || Has("Fe+3") || Has("EDTA-4"))
            {
                a.Add((substance, grams * times));
            }
            else if (TraceMetals.Any(Has) || Has("B(OH)3") || Has("MoO4-2"))
            {
                trace.Add((substance, grams * 1000));
            }
            else
            {
                b.Add((substance, grams * times));
            }
        }

        if (trace.Count > 0)
        {
            trace.InsertRange(0, [("potassium-sorbate", 1), ("citric-acid-h2o", 2)]);
        }

        return
        [
            .. new[] { ("a", dose, a), ("b", dose, b), ("trace", "1 mL/L", trace) }
                .Where(p => p.Item3.Count > 0)
                .Select(p => Lint.Stock(p.Item1, p.Item2, "8..25 °C", [.. p.Item3])),
        ];
    }

    /// <summary>g per litre of feed, by substance.</summary>
    private static List<(string Substance, double Grams, AdditionFacts Facts)> Additions(string id)
    {
        var recipe = Lint.FactsOf(Recipe(id)).Recipes.Single();
        return
        [
            .. recipe.Doses.Select(d => d.Direct).OfType<AdditionFacts>()
                .Select(d => (d.Substance.Id, d.Mass.Grams / recipe.FinalVolume.Litres, d)),
        ];
    }

    private static (string, string)[] Recipe(string id) =>
        [($"{id}.recipe.json", Read($"{id}.recipe.json")), ("published.substances.json", Products)];

    /// <summary>A product named after its percentage has a point in its id there, which a file of the workspace may not have.</summary>
    private static string Read(string file) => File.ReadAllText(Path.Combine(Folder, file)).Replace("-20.5\"", "-20-5\"", StringComparison.Ordinal);
}
