using RecipeLint.Recipes.Schema;

namespace RecipeLint.Recipes.Tests.Schema;

public sealed class DocumentKindTests
{
    [Theory]
    [InlineData("a.stock.json", DocumentKind.Stock)]
    [InlineData("shop/tank one.recipe.json", DocumentKind.Recipe)]
    [InlineData("shop\\rain.water.json", DocumentKind.Water)]
    [InlineData("bags.substances.json", DocumentKind.Substances)]
    [InlineData("shop/recipelint.json", DocumentKind.Settings)]
    [InlineData("profiles/winter.profile.json", DocumentKind.Profile)]
    [InlineData("house-rules/small.rule.json", DocumentKind.HouseRule)]
    [InlineData("rules/plant/low/rule.json", null)]
    [InlineData("2026-03-01.batch.json", DocumentKind.Batch)]
    [InlineData("A.STOCK.JSON", DocumentKind.Stock)]
    [InlineData("a.water.stock.json", DocumentKind.Stock)]
    [InlineData("package.json", null)]
    [InlineData("stock.json", null)]
    [InlineData("my-recipelint.json", null)]
    [InlineData("recipelint.json/readme.txt", null)]
    [InlineData("a.stock.json.bak", null)]
    [InlineData("", null)]
    public void TheNameOfAFileSaysItsKind(string path, DocumentKind? kind) => Assert.Equal(kind, DocumentKinds.FromFileName(path));
}
