using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Tests.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Files;

public sealed class WorkspaceLoaderTests
{
    private const string Stock = """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "1 g"}]}""";
    private const string StockOfMine = """{"format": 1, "makes": "1 L", "steps": [{"add": "mine", "amount": "1 g"}]}""";
    private const string BadStock = """{"format": 1, "makes": "1 gal", "steps": [{"add": "KNO3", "amount": "7,5 g"}]}""";
    private const string Mine = """{"format": 1, "substances": [{"id": "mine", "formula": "KCl"}]}""";

    [Fact]
    public void ReferencesAreFollowedAndToldApartFromWhatWasAsked()
    {
        var workspace = InMemoryShop.Of(
            ("recipes/r.recipe.json", """{"format": 1, "final": "10 L", "water": "../w.water.json", "doses": [{"stock": "../stocks/a.stock.json", "dose": "1:100"}]}"""),
            ("stocks/a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "pre.stock.json", "amount": "1 mL"}]}"""),
            ("stocks/pre.stock.json", Stock),
            ("stocks/other.stock.json", BadStock),
            ("w.water.json", """{"format": 1, "ec": "0.5 mS/cm"}""")).Load("recipes");
        Assert.Empty(workspace.Problems);
        Assert.Equal("/shop", workspace.Root);
        Assert.Equal(["recipes/r.recipe.json"], workspace.Asked);
        Assert.Equal(["stocks/a.stock.json", "stocks/pre.stock.json"], workspace.Stocks.Select(s => s.File));
        Assert.Equal(["w.water.json"], workspace.Waters.Select(s => s.File));
        Assert.Equal(["recipes/r.recipe.json", "stocks/a.stock.json", "stocks/pre.stock.json", "w.water.json"], workspace.Sources.Keys);
    }

    [Fact]
    public void OneBadFileNeverHidesAnother()
    {
        var shop = InMemoryShop.Of(
            ("a.stock.json", """{"format": 1, "makes": """),
            ("b.stock.json", "[]"),
            ("c.stock.json", BadStock),
            ("d.water.json", """{"format": 1, "ec": "700 ppm"}"""),
            ("e.substances.json", """{"format": 1, "substances": [{"id": "x", "formula": "Zz"}]}"""),
            ("recipelint.json", """{"scales": 4}"""),
            ("f.recipe.json", """{"format": 1, "final": "1 L", "doses": [{"stock": "a.stock.json", "dose": "1:100"}, {"add": "nitrte", "amount": "1 g"}]}"""));
        shop.Files.Add("/shop/g.stock.json", [0xFF, 0xFE, 0x41, 0x00]);
        var workspace = shop.Load();
        Assert.Equal(
            ["a.stock.json", "b.stock.json", "c.stock.json", "d.water.json", "e.substances.json", "f.recipe.json", "g.stock.json", "recipelint.json"],
            workspace.Problems.Select(p => p.Place.File).Distinct());
        Assert.Equal(["c.stock.json"], workspace.Stocks.Select(s => s.File));
        Assert.Equal([ProblemKind.AmbiguousUnit, ProblemKind.AmbiguousNumber], workspace.Problems.Where(p => p.Place.File == "c.stock.json").Select(p => p.Kind));
    }

    [Fact]
    public void TheNearestSettingsHold()
    {
        var shop = InMemoryShop.Of(
            ("recipelint.json", """{"profile": "outer"}"""),
            ("a.stock.json", Stock),
            ("inner/recipelint.json", """{"profile": "inner"}"""),
            ("inner/deep/b.stock.json", Stock));
        var workspace = shop.Load();
        Assert.Equal("outer", workspace.SettingsFor("a.stock.json").Profile!.Value);
        Assert.Equal("inner", workspace.SettingsFor("inner/deep/b.stock.json").Profile!.Value);
        Assert.Equal("inner", shop.Load("inner/deep/b.stock.json").SettingsFor("inner/deep/b.stock.json").Profile!.Value);
    }

    [Fact]
    public void SettingsAboveTheRepositoryAreNoneOfIt()
    {
        var files = new MemoryFileTree("/home").Add("recipelint.json", """{"profile": "home"}""").AddFolder("/home/shop/.git").Add("/home/shop/a.stock.json", Stock);
        var workspace = WorkspaceLoader.Load(files, ["shop"], new LoadOptions());
        Assert.Equal("/home/shop", workspace.Root);
        Assert.Null(workspace.SettingsFor("a.stock.json").File);
    }

    [Fact]
    public void SettingsCanBeNamedOrLeftOut()
    {
        var files = InMemoryShop.Of(("recipelint.json", """{"profile": "near"}"""), ("a.stock.json", """{"format": 1, "makes": "1 L", "vessel": "jar", "steps": [{"stir": "well"}]}""")).Files;
        files.Add("/elsewhere/strict.json", """{"profile": "named", "vessels": [{"name": "jar"}]}""");
        var named = WorkspaceLoader.Load(files, ["a.stock.json"], new LoadOptions { ConfigFile = "../elsewhere/strict.json" });
        Assert.Equal("named", named.SettingsFor("a.stock.json").Profile!.Value);
        Assert.Empty(named.Problems);
        var without = WorkspaceLoader.Load(files, ["a.stock.json"], new LoadOptions { NoConfig = true });
        Assert.Null(without.SettingsFor("a.stock.json").File);
        Assert.Empty(without.Problems);
        var missing = WorkspaceLoader.Load(files, ["a.stock.json"], new LoadOptions { ConfigFile = "none.json" });
        Assert.Equal(new UnusablePath("none.json", "does not exist"), Assert.Single(missing.Unusable));
    }

    [Theory]
    [InlineData("shop.substances.json", "stocks/a.stock.json", true)]
    [InlineData("stocks/shop.substances.json", "stocks/deep/a.stock.json", true)]
    [InlineData("products/shop.substances.json", "stocks/a.stock.json", false)]
    [InlineData("stocks/deep/shop.substances.json", "stocks/a.stock.json", false)]
    public void AListOfSubstancesServesItsFolderAndBelow(string list, string stock, bool serves)
    {
        var shop = InMemoryShop.Of((list, Mine), (stock, StockOfMine));
        Assert.Equal(serves, shop.Load().Problems.Count == 0);
        Assert.Equal(serves, shop.Load(stock).Problems.Count == 0);
    }

    [Fact]
    public void BelowSettingsAListServesTheWholeShop()
    {
        var shop = InMemoryShop.Of(
            ("one/recipelint.json", "{}"),
            ("one/products/shop.substances.json", Mine),
            ("one/stocks/a.stock.json", StockOfMine),
            ("two/recipelint.json", "{}"),
            ("two/stocks/b.stock.json", StockOfMine));
        Assert.Empty(shop.Load("one/stocks/a.stock.json").Problems);
        Assert.Equal("two/stocks/b.stock.json", Assert.Single(shop.Load().Problems).Place.File);
    }

    [Fact]
    public void TwoListsWithOneIdAreReportedOnce()
    {
        var problem = InMemoryShop.Of(
            ("a.substances.json", Mine),
            ("b.substances.json", """{"format": 1, "substances": [{"id": «"mine"», "formula": "NaCl"}]}"""),
            ("a.stock.json", StockOfMine),
            ("b.stock.json", Stock)).Single(ProblemKind.DuplicateKey);
        Assert.Equal("a.substances.json", Assert.Single(problem.Related).Place.File);
    }

    [Fact]
    public void FoldersAreWalkedWithoutBuildOutputAndHiddenOnes()
    {
        var shop = InMemoryShop.Of(
            ("x/a.stock.json", Stock),
            ("x/bin/b.stock.json", BadStock),
            ("x/obj/b.stock.json", BadStock),
            ("x/node_modules/p/b.stock.json", BadStock),
            ("x/.hidden/b.stock.json", BadStock),
            ("x/package.json", "{}"),
            ("x/run.batch.json", "{}"));
        var workspace = shop.Load("x");
        Assert.Equal(["x/a.stock.json", "x/run.batch.json"], workspace.Sources.Keys);
        Assert.Empty(workspace.Unrecognised);
    }

    [Fact]
    public void WhatIsAskedForByNameIsAnsweredFor()
    {
        var shop = InMemoryShop.Of(("package.json", "{}"), ("run.batch.json", "{}"), ("bin/b.stock.json", Stock));
        var workspace = shop.Load("package.json", "run.batch.json", "bin/b.stock.json", "none.stock.json", "*.none", "x*.stock.json");
        Assert.Equal(["package.json"], workspace.Unrecognised);
        Assert.Equal(["bin/b.stock.json", "run.batch.json"], workspace.Asked);
        Assert.Equal(
            [new("none.stock.json", "does not exist"), new("*.none", "matches no file"), new UnusablePath("x*.stock.json", "matches no file")],
            workspace.Unusable);
    }

    [Theory]
    [InlineData("*.stock.json", new[] { "a.stock.json", "b.stock.json" })]
    [InlineData("**/*.stock.json", new[] { "a.stock.json", "b.stock.json", "s/c.stock.json", "s/t/d.stock.json" })]
    [InlineData("s/**", new[] { "s/c.stock.json", "s/t/d.stock.json" })]
    [InlineData("?.stock.json", new[] { "a.stock.json", "b.stock.json" })]
    [InlineData("*/*/d*", new[] { "s/t/d.stock.json" })]
    [InlineData("s/../a*", new[] { "a.stock.json" })]
    public void PatternsAreExpanded(string pattern, string[] expected)
    {
        var shop = InMemoryShop.Of(("a.stock.json", Stock), ("b.stock.json", Stock), ("s/c.stock.json", Stock), ("s/t/d.stock.json", Stock), ("s/e.json", "{}"));
        Assert.Equal(expected, shop.Load(pattern).Asked);
    }

    [Fact]
    public void APatternOfManyStarsCostsNothing()
    {
        var name = new string('a', 120) + ".stock.json";
        Assert.Single(InMemoryShop.Of((name, Stock)).Load(string.Concat(Enumerable.Repeat("*a", 40)) + "*b", "*.stock.json").Asked);
    }

    [Fact]
    public void WithoutAnyMarkTheFilesAskedForAndWhatTheyNameAreTheRoot()
    {
        var files = new MemoryFileTree("/home").Add("shop/stocks/a.stock.json", Stock).Add("/other/b.stock.json", Stock)
            .Add("shop/recipes/r.recipe.json", """{"format": 1, "final": "10 L", "doses": [{"stock": "../stocks/a.stock.json", "dose": "1:100"}]}""");
        Assert.Equal("/home/shop", WorkspaceLoader.Load(files, ["shop"], new LoadOptions()).Root);
        Assert.Equal("/other", WorkspaceLoader.Load(files, ["/other"], new LoadOptions()).Root);
        Assert.Equal("/home/shop/stocks", WorkspaceLoader.Load(files, ["shop/stocks/a.stock.json"], new LoadOptions()).Root);
        var recipe = WorkspaceLoader.Load(files, ["shop/recipes/r.recipe.json"], new LoadOptions());
        Assert.Equal("/home/shop", recipe.Root);
        Assert.Empty(recipe.Problems);
        var both = WorkspaceLoader.Load(files, ["shop/stocks/a.stock.json", "/other"], new LoadOptions());
        Assert.Equal("/", both.Root);
        Assert.Equal(["home/shop/stocks/a.stock.json", "other/b.stock.json"], both.Asked);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/home")]
    [InlineData("/home/shop")]
    [InlineData("/home/shop/recipes")]
    [InlineData("/home/shop/stocks/deep")]
    [InlineData("/elsewhere")]
    public void TheSameFilesGiveTheSameWorkspaceFromAnyFolder(string from)
    {
        var files = new MemoryFileTree(from).Add("/home/shop/recipelint.json", """{"vessels": [{"name": "jar"}]}""")
            .Add("/home/shop/stocks/deep/a.stock.json", StockOfMine).Add("/home/shop/products/mine.substances.json", Mine).Add("/home/shop/rain.water.json", """{"format": 1, "ec": "0.5 mS/cm"}""")
            .Add("/home/shop/recipes/r.recipe.json", """{"format": 1, "final": "10 L", "water": "../rain.water.json", "doses": [{"stock": "../stocks/deep/a.stock.json", "dose": "1:100"}]}""");
        foreach (var asked in new[] { "/home/shop/recipes/r.recipe.json", "/home/shop/recipes", "/home/shop" })
        {
            var workspace = WorkspaceLoader.Load(files, [asked], new LoadOptions());
            Assert.Empty(workspace.Problems);
            Assert.Equal("/home/shop", workspace.Root);
            Assert.Equal("recipelint.json", workspace.SettingsFor("recipes/r.recipe.json").File);
            Assert.Equal(["stocks/deep/a.stock.json"], workspace.Stocks.Select(s => s.File));
        }
    }

    [Fact]
    public void AShopInsideAShopMayDrawOnIt()
    {
        var files = new MemoryFileTree("/home/shop/trace").Add("/home/shop/recipelint.json", """{}""").Add("/home/shop/trace/recipelint.json", """{}""")
            .Add("/home/shop/rain.water.json", """{"format": 1, "ec": "0.5 mS/cm"}""")
            .Add("/home/shop/trace/a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "1 L", "of": "../rain.water.json"}]}""");
        var workspace = WorkspaceLoader.Load(files, ["a.stock.json"], new LoadOptions());
        Assert.Empty(workspace.Problems);
        Assert.Equal("trace/recipelint.json", workspace.SettingsFor("trace/a.stock.json").File);
    }

    [Fact]
    public void TheOrderOfThePathsChangesNothing()
    {
        var shop = InMemoryShop.Of(("a.stock.json", BadStock), ("b.stock.json", BadStock), ("c/d.stock.json", StockOfMine), ("r.recipe.json", """{"format": 1, "final": "1 L", "doses": [{"stock": "c/d.stock.json", "dose": "1:100"}]}"""));
        var one = shop.Load("a.stock.json", "r.recipe.json", "b.stock.json");
        var other = shop.Load("b.stock.json", "a.stock.json", "r.recipe.json", "a.stock.json");
        Assert.Equal(one.Problems.Select(p => p.ToString()), other.Problems.Select(p => p.ToString()));
        Assert.Equal(one.Sources.Keys, other.Sources.Keys);
        Assert.Equal(one.Asked, other.Asked);
    }

    [Fact]
    public void AFileTooLargeIsSaidToBeAndNotParsed()
    {
        var shop = new InMemoryShop { Options = new LoadOptions { SizeLimit = 100 } };
        shop.Add("a.stock.json", Stock + new string(' ', 100));
        Assert.Equal(ProblemKind.FileTooLarge, Assert.Single(shop.Load().Problems).Kind);
    }

    [Fact]
    public void TextCanStandInForAFile()
    {
        var shop = InMemoryShop.Of(("a.stock.json", BadStock), ("b.stock.json", Stock));
        var overlay = new OverlayFileTree(shop.Files, "a.stock.json", System.Text.Encoding.UTF8.GetBytes(Stock));
        Assert.Empty(WorkspaceLoader.Load(overlay, ["."], new LoadOptions()).Problems);
        var added = new OverlayFileTree(shop.Files, "sub/new.stock.json", System.Text.Encoding.UTF8.GetBytes(BadStock));
        Assert.Equal("sub/new.stock.json", WorkspaceLoader.Load(added, ["sub/new.stock.json"], new LoadOptions()).Problems[0].Place.File);
    }

    [Fact]
    public void TheMachineSLanguageChangesNothing()
    {
        var shop = InMemoryShop.Of(
            ("a.stock.json", BadStock),
            ("b.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "40 kg"}, {"add": "magnesium sulfate", "amount": "-1.5 g"}]}"""),
            ("c.water.json", """{"format": 1, "ions": {"Ca": "2.5 meq/L", "Cl": "0.5 meq/L", "SO4": "0.5 meq/L"}}"""),
            ("s.substances.json", """{"format": 1, "substances": [{"id": "mine", "formula": "MgSO4.H2O", "molarMass": "246.47 g/mol"}]}"""));
        var expected = shop.Load().Problems.Select(p => p.Message).ToArray();
        Assert.NotEmpty(expected);
        var before = CultureInfo.CurrentCulture;
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NumberGroupSeparator = ".";
        foreign.NumberFormat.NegativeSign = "\u061C-";
        foreign.NumberFormat.DigitSubstitution = DigitShapes.NativeNational;
        try
        {
            CultureInfo.CurrentCulture = foreign;
            Assert.Equal(expected, shop.Load().Problems.Select(p => p.Message));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void AFileThatCannotBeReadIsUnusableWhenItWasNamed()
    {
        var files = new Unreadable(InMemoryShop.Of(("a.stock.json", Stock), ("b.stock.json", BadStock)).Files, "/shop/a.stock.json");
        var walked = WorkspaceLoader.Load(files, ["."], new LoadOptions());
        Assert.Empty(walked.Unusable);
        Assert.Equal(["a.stock.json", "b.stock.json"], walked.Problems.Select(p => p.Place.File).Distinct());
        var named = WorkspaceLoader.Load(files, ["./a.stock.json", "b.stock.json"], new LoadOptions());
        Assert.Equal([new UnusablePath("./a.stock.json", "cannot be read: permission is denied")], named.Unusable);
    }

    private sealed class Unreadable(IFileTree under, string locked) : IFileTree
    {
        public string CurrentFolder => under.CurrentFolder;

        public string FullPath(string path) => under.FullPath(path);

        public EntryKind Kind(string path) => under.Kind(path);

        public string ResolveLinks(string path) => under.ResolveLinks(path);

        public IReadOnlyList<string> Names(string folder) => under.Names(folder);

        public FileBytes Read(string path, int sizeLimit) =>
            path == locked ? new FileBytes(null, null, "permission is denied") : under.Read(path, sizeLimit);
    }
}
