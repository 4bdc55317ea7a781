using System.Text;
using CsCheck;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests;

public sealed class IdPathTests
{
    private static readonly StockDocument Stock = Bench.Stock("a.stock.json", "1 L", Bench.Add("boric-acid", "3 g"), Bench.Add("disodium-edta-2h2o", "24 g", id: "edta"));

    [Theory]
    [InlineData("", "")]
    [InlineData("/makes", "makes")]
    [InlineData("/steps", "steps")]
    [InlineData("/steps/1", "steps/edta")]
    [InlineData("/steps/1/amount", "steps/edta/amount")]
    [InlineData("/steps/0/amount", "steps/boric-acid/amount")]
    [InlineData("/steps/7/amount", "steps/7/amount")]
    [InlineData("/keep/at", "keep/at")]
    [InlineData("/odd~1key/~0", "odd/key/~")]
    public void StepsAreNamedByTheirIds(string pointer, string path) => Assert.Equal(path, IdPath.Of(Stock, new JsonPointer(pointer)));

    [Fact]
    public void DosesAreNamedByTheirIds()
    {
        var recipe = Bench.Recipe("1 L", FinalVolumeMeaning.MadeUp, Bench.Dose("trace.stock.json", "1 mL/L"));

        Assert.Equal("doses/trace/dose", IdPath.Of(recipe, new JsonPointer("/doses/0/dose")));
        Assert.Equal("targets/N", IdPath.Of(recipe, new JsonPointer("/targets/N")));
    }

    [Fact]
    public void OtherFilesAreAskedForIdOrName()
    {
        var bytes = Encoding.UTF8.GetBytes("""{"substances": [{"id": "mine", "label": {"Fe": "6 %"}}], "scales": [{"name": "pocket"}], "list": [1, {}]}""");
        var source = JsonReading.Read("shop.substances.json", bytes).Source;
        var workspace = new Workspace
        {
            Sources = new Dictionary<string, SourceFile> { ["shop.substances.json"] = source },
            Catalogue = SubstanceCatalogue.BuiltIn,
            SettingsFor = _ => new ShopSettings(),
        };

        Assert.Equal("substances/mine/label/Fe", Path("/substances/0/label/Fe"));
        Assert.Equal("scales/pocket", Path("/scales/0"));
        Assert.Equal("list/1/x", Path("/list/1/x"));
        Assert.Equal("substances/5/label", Path("/substances/5/label"));
        Assert.Equal("no/such/0", IdPath.Of(workspace, new Place("absent.json", new JsonPointer("/no/such/0"))));

        string Path(string pointer) => IdPath.Of(workspace, new Place("shop.substances.json", new JsonPointer(pointer)));
    }

    [Fact]
    public void NoPointerMakesItThrow() =>
        Gen.String.Sample(text => Assert.NotNull(IdPath.Of(Stock, new JsonPointer("/" + text))));
}
