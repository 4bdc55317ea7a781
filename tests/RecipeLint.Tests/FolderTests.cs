using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>The same files give the same findings from whatever folder the program is run.</summary>
public sealed class FolderTests
{
    [Fact]
    public void FiveFoldersOneReport()
    {
        using var scratch = new Scratch();
        scratch.Write("shop/recipelint.json", """{ "scales": [{ "name": "bench", "capacity": "600 g", "readability": "0.1 g" }] }""");
        scratch.Write("shop/waters/well.water.json", """{ "format": 1, "name": "Well", "ions": { "Ca": "60 mg/L", "HCO3": "183 mg/L" } }""");
        scratch.Write("shop/products/bag.substances.json", """{ "format": 1, "substances": [{ "id": "bag", "name": "Bag", "formula": "KNO3" }] }""");
        scratch.Write("shop/stocks/a.stock.json", """{ "format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "steps": [{ "add": "bag", "amount": "60 g", "with": "bench" }, { "add": "humic acid", "amount": "1 g" }, { "topUp": "1 L", "of": "../waters/well.water.json" }] }""");
        scratch.Write("shop/recipes/tank.recipe.json", """{ "format": 1, "name": "Tank", "final": "100 L", "volume": "made up", "water": "../waters/well.water.json", "doses": [{ "stock": "../stocks/a.stock.json" }] }""");
        Directory.CreateDirectory(Path.Combine(scratch.Path, "elsewhere"));
        foreach (var asked in new[] { "shop", "shop/recipes/tank.recipe.json", "shop/stocks" })
        {
            var full = Path.Combine(scratch.Path, asked);
            string[] folders = ["", "shop", "shop/stocks", "shop/recipes", "elsewhere"];
            var answers = folders.Select(f => Path.Combine(scratch.Path, f)).SelectMany(f => new[] { Cli.RunIn(f, null, "check", full), Cli.RunIn(f, null, "check", Path.GetRelativePath(f, full)) });
            var answer = Assert.Single(answers.Distinct());
            Assert.Contains("humic acid", answer.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("climbs out", answer.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("RL0036", answer.Out, StringComparison.Ordinal);
        }
    }
}
