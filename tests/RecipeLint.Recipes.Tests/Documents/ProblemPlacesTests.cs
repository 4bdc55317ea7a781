using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>Every kind of problem that reading and resolving finds, in a hand-written file, at its exact line and column.</summary>
public sealed class ProblemPlacesTests
{
    [Theory]
    [InlineData("«24»", ProblemKind.NumberWithoutUnit)]
    [InlineData("«\"24\"»", ProblemKind.NumberWithoutUnit)]
    [InlineData("\"24 «handfuls»\"", ProblemKind.UnknownUnit)]
    [InlineData("\"24 «µgg»\"", ProblemKind.UnknownUnit)]
    [InlineData("\"«7,5» g\"", ProblemKind.AmbiguousNumber)]
    [InlineData("\"«1,000» g\"", ProblemKind.AmbiguousNumber)]
    [InlineData("\"24 «ppm»\"", ProblemKind.AmbiguousUnit)]
    [InlineData("\"24 «%»\"", ProblemKind.AmbiguousUnit)]
    [InlineData("\"1 «oz/100 gal»\"", ProblemKind.AmbiguousUnit)]
    [InlineData("«\"5 °C\"»", ProblemKind.WrongDimension)]
    [InlineData("«\"20 mL\"»", ProblemKind.WrongDimension)]
    [InlineData("«\"some\"»", ProblemKind.WrongShape)]
    [InlineData("\"24 g «or so»\"", ProblemKind.WrongShape)]
    [InlineData("«\"0 g\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("«\"-3 g\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"«1e999» g\"", ProblemKind.ImplausibleAmount)]
    [InlineData("«\"40 kg\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("«\"2.1 kg/L\"»", ProblemKind.ImplausibleAmount)]
    public void AnAmountIsRefusedWhereItStands(string amount, ProblemKind kind) =>
        InMemoryShop.Of(("b.stock.json", $$"""
            {
              "format": 1, "makes": "1 L",
              "steps": [
                {"add": "boric-acid", "note": "ä 𝄞", "amount": {{amount}}}
              ]
            }
            """)).Single(kind);

    [Fact]
    public void AnEscapedTextIsMarkedWhole() =>
        InMemoryShop.Of(("b.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "boric-acid", "amount": «"24\u0020handfuls"»}]}"""))
            .Single(ProblemKind.UnknownUnit);

    [Theory]
    [InlineData("\"makes\": «\"0 mL\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": «\"0.5 mL\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": «\"200 m³\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": \"5 «gal»\"", ProblemKind.AmbiguousUnit)]
    [InlineData("\"makes\": «\"2 kg\"»", ProblemKind.WrongDimension)]
    [InlineData("\"makes\": \"1 L\", \"dose\": «\"2:1\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": \"1 L\", \"dose\": «\"10 mL\"»", ProblemKind.WrongDimension)]
    [InlineData("\"makes\": \"1 L\", \"keep\": {\"at\": «\"4..70 °C\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": \"1 L\", \"keep\": {\"at\": «\"-80 °C\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": \"1 L\", \"keep\": {\"at\": «\"6 months\"»}", ProblemKind.WrongDimension)]
    [InlineData("\"makes\": \"1 L\", \"keep\": {\"for\": «\"0 days\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("\"makes\": \"1 L\", \"keep\": {\"at\": «\"cellar\"»}", ProblemKind.UnknownEquipment)]
    [InlineData("\"makes\": \"1 L\", \"vessel\": «\"jar\"»", ProblemKind.UnknownEquipment)]
    public void WhatAStockStatesIsRefusedWhereItStands(string members, ProblemKind kind) =>
        InMemoryShop.Of(("b.stock.json", $$"""{"format": 1, {{members}}, "steps": [{"stir": "well"}]}""")).Single(kind);

    [Theory]
    [InlineData("{\"add\": \"boric-acid\", \"amount\": \"1 g\", \"assay\": «\"120 %\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"add\": \"boric-acid\", \"amount\": \"1 g\", \"assay\": «\"0 %\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"add\": \"boric-acid\", \"amount\": \"1 g\", \"with\": «\"scale-9\"»}", ProblemKind.UnknownEquipment)]
    [InlineData("{\"add\": «\"borik acid\"», \"amount\": \"1 g\"}", ProblemKind.UnknownSubstance)]
    [InlineData("{\"add\": «\"magnesium sulfate\"», \"amount\": \"1 g\"}", ProblemKind.AmbiguousSubstance)]
    [InlineData("{\"add\": «\"pre.stock.json\"», \"amount\": \"1 mL\"}", ProblemKind.MissingReference)]
    [InlineData("{\"add\": «\"well.water.json\"», \"amount\": \"1 mL\"}", ProblemKind.MissingReference)]
    [InlineData("{\"pour\": \"500 mL\", \"of\": «\"well.water.json\"»}", ProblemKind.MissingReference)]
    [InlineData("{\"pour\": \"500 mL\", \"of\": «\"destilled\"»}", ProblemKind.MissingReference)]
    [InlineData("{\"pour\": «\"1.2 L\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"add\": \"vinegar-5\", \"amount\": «\"1.2 L\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"add\": \"boric-acid\", \"amount\": «\"3 drops\"»}", ProblemKind.WrongDimension)]
    [InlineData("{\"adjust\": «\"pH 15\"», \"using\": \"koh-10\"}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"adjust\": «\"3.0\"», \"using\": \"koh-10\"}", ProblemKind.WrongShape)]
    [InlineData("{\"adjust\": \"pH «3,0»\", \"using\": \"koh-10\"}", ProblemKind.AmbiguousNumber)]
    [InlineData("{\"adjust\": \"pH 3.0\", \"using\": «\"koh-11\"»}", ProblemKind.UnknownSubstance)]
    public void WhatAStepStatesIsRefusedWhereItStands(string step, ProblemKind kind) =>
        InMemoryShop.Of(("b.stock.json", $$"""
            {
              "format": 1, "makes": "1 L",
              "steps": [
                {{step}}
              ]
            }
            """)).Single(kind);

    [Theory]
    [InlineData("../../outside.stock.json")]
    [InlineData("../../shop/a.stock.json")]
    [InlineData("/shop/a.stock.json")]
    [InlineData("..\\\\a.stock.json")]
    [InlineData("C:/a.stock.json")]
    [InlineData("c:a.stock.json")]
    [InlineData("\\\\\\\\server\\\\a.stock.json")]
    [InlineData("//server/a.stock.json")]
    [InlineData("https://example.org/a.stock.json")]
    [InlineData("file:///shop/a.stock.json")]
    [InlineData("~/a.stock.json")]
    [InlineData("link.stock.json")]
    public void AReferenceNeverLeavesTheRepository(string reference)
    {
        var shop = InMemoryShop.Of(
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}"""),
            ("recipes/r.recipe.json", $$"""{"format": 1, "final": "10 L", "doses": [{"stock": «"{{reference}}"», "dose": "1:100"}]}"""));
        shop.Files.Add("/outside.stock.json", "not to be read").AddLink("/shop/recipes/link.stock.json", "/outside.stock.json");
        var workspace = shop.Load("a.stock.json", "recipes/r.recipe.json");
        Assert.Equal(ProblemKind.ReferenceLeavesRepository, Assert.Single(workspace.Problems).Kind);
        Assert.Equal(["a.stock.json", "recipes/r.recipe.json"], workspace.Sources.Keys);
    }

    [Fact]
    public void AMissingFileSuggestsTheOnesThatAreThere()
    {
        var problem = InMemoryShop.Of(
            ("stocks/trace.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}"""),
            ("recipes/r.recipe.json", """{"format": 1, "final": "10 L", "doses": [{"stock": «"../stocks/trase.stock.json"», "dose": "1:100"}]}"""))
            .Single(ProblemKind.MissingReference);
        Assert.Equal(["../stocks/trace.stock.json"], problem.Suggestions);
    }

    [Fact]
    public void ALoopIsReportedOnceWithTheOtherStepsBesideIt()
    {
        var shop = InMemoryShop.Of(
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": «"b.stock.json"», "amount": "1 mL"}]}"""),
            ("b.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "c.stock.json", "amount": "1 mL"}]}"""),
            ("c.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}, {"add": "a.stock.json", "amount": "1 mL"}]}"""),
            ("d.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "a.stock.json", "amount": "1 mL"}]}"""));
        var problem = shop.Single(ProblemKind.ReferenceLoop);
        Assert.Equal(["b.stock.json", "c.stock.json"], problem.Related.Select(r => r.Place.File));

        // Following references now comes to an end.
        var stocks = shop.Load().Stocks;
        var seen = new List<string>();
        for (var at = stocks.Single(s => s.File == "d.stock.json"); at is not null; at = Next(stocks, at))
        {
            seen.Add(at.File);
            Assert.True(seen.Count < 9);
        }

        Assert.Equal(["d.stock.json", "a.stock.json"], seen);

        static Recipes.Documents.StockDocument? Next(IReadOnlyList<Recipes.Documents.StockDocument> stocks, Recipes.Documents.StockDocument stock) =>
            stock.Steps.OfType<Recipes.Documents.AliquotStep>().Select(s => stocks.FirstOrDefault(x => x.File == s.StockFile)).FirstOrDefault();
    }

    [Fact]
    public void AStockMadeFromItselfIsALoop() =>
        InMemoryShop.Of(("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": «"a.stock.json"», "amount": "1 mL"}]}"""))
            .Single(ProblemKind.ReferenceLoop);

    [Theory]
    [InlineData("\"N\": «\"2 L\"»", ProblemKind.WrongDimension)]
    [InlineData("\"P\": \"71 mg/L as «P205»\"", ProblemKind.UnknownUnit)]
    [InlineData("\"K\": \"240 mg/L as «CaO»\"", ProblemKind.UnknownUnit)]
    [InlineData("\"N\": «\"-1 mg/L\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"N\": «\"10 meq/L\"»", ProblemKind.WrongDimension)]
    [InlineData("\"EC\": \"1400 «ppm»\"", ProblemKind.AmbiguousUnit)]
    [InlineData("\"EC\": «\"0 mS/cm\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"pH\": «\"58\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"pH\": «58»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"N\": \"150 mg/L «± 200 %»\"", ProblemKind.ImplausibleAmount)]
    [InlineData("\"N\": «\"100..150 mg/L\"»", ProblemKind.WrongShape)]
    public void WhatATargetStatesIsRefusedWhereItStands(string target, ProblemKind kind) =>
        InMemoryShop.Of(("r.recipe.json", $$"""
            {
              "format": 1, "final": "10 L", "doses": [{"add": "KNO3", "amount": "1 g/L"}],
              "targets": { {{target}} }
            }
            """)).Single(kind);

    [Theory]
    [InlineData("\"crop\": «\"letuce\"», \"final\": \"10 L\", \"doses\": [{\"add\": \"KNO3\", \"amount\": \"1 g\"}]", ProblemKind.UnknownProfile)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"add\": \"KNO3\", \"amount\": «\"30 kg\"»}]", ProblemKind.ImplausibleAmount)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"add\": \"KNO3\", \"amount\": \"100 «ppm»\"}]", ProblemKind.AmbiguousUnit)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"stock\": \"a.stock.json\", \"dose\": «\"1 g/L\"»}]", ProblemKind.WrongDimension)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"stock\": \"a.stock.json\", \"amount\": «\"11 L\"»}]", ProblemKind.ImplausibleAmount)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"stock\": \"a.stock.json\", \"amount\": «\"1 g\"»}]", ProblemKind.WrongDimension)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"stock\": \"a.stock.json\", \"with\": «\"syringe\"», \"strokes\": 4}]", ProblemKind.UnknownEquipment)]
    [InlineData("\"final\": «\"10 g\"», \"doses\": [{\"stock\": \"a.stock.json\", \"dose\": \"1:100\"}]", ProblemKind.WrongDimension)]
    [InlineData("\"final\": \"10 L\", \"water\": «\"tap\"», \"doses\": [{\"stock\": \"a.stock.json\", \"dose\": \"1:100\"}]", ProblemKind.MissingReference)]
    [InlineData("\"final\": \"10 L\", \"adjust\": {\"pH\": \"5.8\", \"using\": «\"HNO3\"»}, \"doses\": [{\"stock\": \"a.stock.json\", \"dose\": \"1:100\"}]", ProblemKind.AmbiguousSubstance)]
    [InlineData("\"final\": \"10 L\", \"doses\": [{\"stock\": \"a.stock.json\", \"dose\": \"1:100\", \"id\": \"x\"}, {\"stock\": \"a.stock.json\", \"dose\": \"1:100\", \"id\": «\"x\"»}]", ProblemKind.DuplicateKey)]
    public void WhatARecipeStatesIsRefusedWhereItStands(string members, ProblemKind kind)
    {
        var shop = new InMemoryShop { Options = new LoadOptions { Profiles = ["lettuce", "tomato"] } };
        shop.Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}""");
        shop.Add("r.recipe.json", $$"""{"format": 1, {{members}}}""");
        shop.Single(kind);
    }

    [Fact]
    public void NothingTheSchemaHasSaidIsSaidAgain()
    {
        var shop = InMemoryShop.Of(("b.stock.json", """{"format": 1, "makes": 2, "steps": [{"add": "boric-acid", "amount": 3}, {"add": 4, "amount": "1 g"}, 5], "keep": {"at": 4, "light": "gloomy"}}"""));
        var problems = shop.Load().Problems;
        Assert.Equal(problems.Count, problems.Select(p => p.Place.Pointer).Distinct().Count());
        Assert.Equal(3, problems.Count(p => p.Kind == ProblemKind.NumberWithoutUnit));
    }
}
