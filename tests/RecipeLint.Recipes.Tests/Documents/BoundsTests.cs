using System.Diagnostics;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>What a file or a graph of files may ask for is bounded by a finding, not by time.</summary>
public sealed class BoundsTests
{
    /// <summary>Far above what any of these takes, far below what they took when every entry was read.</summary>
    private static readonly TimeSpan _ample = TimeSpan.FromSeconds(60);

    [Fact]
    public void AChainOfAThousandStocksIsFollowedTwelveLevelsAtATime()
    {
        var workspace = Graph(1000, i => i < 999 ? [i + 1] : []);
        Assert.All(workspace.Problems, p => Assert.Contains("13 stocks one above the other", p.Message, StringComparison.Ordinal));
        Assert.Equal(1000 / ReferenceBounds.MostLevels, workspace.Problems.Count);
        Assert.Contains("which is made from", workspace.Problems[0].Message, StringComparison.Ordinal);
        Assert.Equal(workspace.Problems.Count, workspace.Stocks.Count(s => !s.IsComplete));
    }

    [Theory]
    [InlineData(14)]
    [InlineData(40)]
    [InlineData(200)]
    public void WaysThatDoubleWithEveryLevelAreCutWithTheWayThatIsTooMuch(int stocks)
    {
        var workspace = Graph(stocks, i => Enumerable.Range(i + 1, stocks - i - 1));
        Assert.NotEmpty(workspace.Problems);
        Assert.All(workspace.Problems, p => Assert.Equal(ProblemKind.WrongShape, p.Kind));
        Assert.Single(workspace.Problems, p => p.Place.File == "s0.stock.json");
        var entries = new Dictionary<string, long>(StringComparer.Ordinal);
        Assert.All(workspace.Stocks, s => Assert.InRange(Entries(s), 0, ReferenceBounds.MostEntries + s.Steps.Count));

        long Entries(StockDocument stock) => entries.TryGetValue(stock.File, out var known)
            ? known
            : entries[stock.File] = stock.Steps.Sum(s => s is AliquotStep { StockFile: { } below } ? Entries(workspace.FindStock(below)!) : s is AliquotStep ? 0 : 1);
    }

    [Fact]
    public void AFanIsFollowedWhole() => Assert.Empty(Graph(26, i => i == 0 ? Enumerable.Range(1, 25) : []).Problems);

    [Fact]
    public void StocksThatAllDrawOnEachOtherAreToldOfAHundredTimesAndFollowedNoFurther()
    {
        var workspace = Graph(60, i => Enumerable.Range(0, 60).Where(j => j != i));
        var loops = workspace.Problems.Where(p => p.Kind == ProblemKind.ReferenceLoop).ToList();
        Assert.Equal(101, loops.Count);
        Assert.Single(loops, p => p.Message.Contains("60 stocks draw on each other in circles", StringComparison.Ordinal));
        Assert.Empty(ReferenceLoops.Break(workspace.Stocks).Problems);
    }

    [Theory]
    [InlineData("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [#] }""", """{ "add": "no-such-%", "amount": "1 g" }""")]
    [InlineData("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [{ # }] }""", "\"kex%\": 1")]
    [InlineData("a.recipe.json", """{ "format": 1, "final": "1 L", "doses": [#] }""", """{ "add": "boric-acid", "amount": "1 g" }""")]
    [InlineData("a.recipe.json", """{ "format": 1, "final": "1 L", "doses": [], "targets": { # } }""", "\"Q%\": \"1 mg/L\"")]
    [InlineData("a.water.json", """{ "format": 1, "ions": { # } }""", "\"Q%\": \"1 mg/L\"")]
    [InlineData("a.substances.json", """{ "format": 1, "substances": [#] }""", """{ "id": "p%", "name": "P%", "formula": "KNO3" }""")]
    [InlineData("recipelint.json", """{ "scales": [#] }""", """{ "name": "s%", "readability": "0.1 g" }""")]
    [InlineData("recipelint.json", """{ "measures": [#] }""", """{ "name": "s%", "kind": "jug", "capacity": "1 L" }""")]
    [InlineData("recipelint.json", """{ "vessels": [#] }""", """{ "name": "s%", "capacity": "1 L" }""")]
    [InlineData("recipelint.json", """{ "sites": [#] }""", """{ "name": "s%", "at": "8..25 °C" }""")]
    [InlineData("recipelint.json", """{ "rules": { # } }""", "\"rule-%\": \"off\"")]
    [InlineData("recipelint.json", """{ "suppressions": [#] }""", """{ "rule": "unused-stock", "file": "a%.stock.json", "reason": "x" }""")]
    public void TenThousandEntriesAreOneFindingAndAreNotRead(string file, string frame, string entry)
    {
        var text = frame.Replace("#", string.Join(", ", Enumerable.Range(0, 10_000).Select(i => entry.Replace("%", $"{i}", StringComparison.Ordinal))), StringComparison.Ordinal);
        var watch = Stopwatch.StartNew();
        var workspace = InMemoryShop.Of((file, text)).Load();
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, _ample);
        var problem = Assert.Single(workspace.Problems);
        Assert.Contains("Nothing in this file was read", problem.Message, StringComparison.Ordinal);
        Assert.Empty(workspace.Stocks);
        Assert.Empty(workspace.Recipes);
        Assert.Empty(workspace.Waters);
        Assert.Empty(workspace.SubstanceFiles);
    }

    private static Workspace Graph(int stocks, Func<int, IEnumerable<int>> below)
    {
        var shop = InMemoryShop.Of();
        for (var i = 0; i < stocks; i++)
        {
            var steps = below(i).Select(j => $$"""{ "add": "s{{j}}.stock.json", "amount": "1 mL" }""").Prepend("""{ "add": "boric-acid", "amount": "1 g" }""");
            shop.Add($"s{i}.stock.json", $$"""{ "format": 1, "makes": "1 L", "steps": [{{string.Join(", ", steps)}}] }""");
        }

        return shop.Load();
    }
}
