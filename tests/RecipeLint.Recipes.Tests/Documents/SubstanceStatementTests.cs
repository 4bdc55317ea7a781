using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>What a shop states of its own products is taken as stated; what it leaves out is taken from where the table says.</summary>
public sealed class SubstanceStatementTests
{
    private static InMemoryShop Shop(string entry) => InMemoryShop.Of(("s.substances.json", $$"""{"format": 1, "substances": [{{entry}}]}"""));

    private static ShopSubstance Read(string entry) => Assert.Single(Assert.Single(Shop(entry).Load().SubstanceFiles).Substances);

    [Theory]
    [InlineData("salt", SubstanceKind.Salt)]
    [InlineData("chelate", SubstanceKind.Chelate)]
    [InlineData("chelating-agent", SubstanceKind.ChelatingAgent)]
    [InlineData("acid", SubstanceKind.Acid)]
    [InlineData("base", SubstanceKind.Base)]
    [InlineData("preservative", SubstanceKind.Preservative)]
    [InlineData("dye", SubstanceKind.Dye)]
    [InlineData("organic", SubstanceKind.Organic)]
    [InlineData("oxidiser", SubstanceKind.Oxidiser)]
    [InlineData("silicate", SubstanceKind.Silicate)]
    [InlineData("product", SubstanceKind.Product)]
    [InlineData("extract", SubstanceKind.Extract)]
    public void TheKindThatIsStatedHolds(string word, SubstanceKind kind)
    {
        Assert.Equal(kind, Read($$"""{"id": "x", "kind": "{{word}}", "formula": "KNO3"}""").Substance.Kind);
        Assert.Equal(kind, Read($$"""{"id": "x", "kind": "{{word}}", "strengthOf": "HNO3", "strength": "10 % w/w", "density": "1.05 g/mL"}""").Substance.Kind);
        Assert.Equal(kind, Read($$"""{"id": "x", "kind": "{{word}}", "label": {"K2O": "10 %"} }""").Substance.Kind);
    }

    [Theory]
    [InlineData("\"formula\": \"KNO3\"", SubstanceKind.Salt, PhysicalForm.Solid)]
    [InlineData("\"formula\": \"C8H10N4O2\"", SubstanceKind.Salt, PhysicalForm.Solid)]
    [InlineData("\"formula\": \"KNO3\", \"density\": \"1.1 g/mL\"", SubstanceKind.Salt, PhysicalForm.Liquid)]
    [InlineData("\"formula\": \"KNO3\", \"form\": \"solid\", \"density\": \"2.1 g/mL\"", SubstanceKind.Salt, PhysicalForm.Solid)]
    [InlineData("\"label\": {\"K2O\": \"10 %\"}", SubstanceKind.Product, PhysicalForm.Solid)]
    [InlineData("\"label\": {\"K2O\": \"10 %\"}, \"density\": \"1.1 g/mL\"", SubstanceKind.Product, PhysicalForm.Liquid)]
    [InlineData("\"strengthOf\": \"HNO3\", \"strength\": \"10 % w/w\"", SubstanceKind.Acid, PhysicalForm.Liquid)]
    [InlineData("\"unknownComposition\": true", SubstanceKind.Product, PhysicalForm.Liquid)]
    [InlineData("\"unknownComposition\": true, \"name\": \"Red Colour\"", SubstanceKind.Dye, PhysicalForm.Liquid)]
    [InlineData("\"unknownComposition\": true, \"form\": \"solid\", \"name\": \"blue PIGMENT\"", SubstanceKind.Dye, PhysicalForm.Solid)]
    [InlineData("\"unknownComposition\": true, \"kind\": \"extract\"", SubstanceKind.Extract, PhysicalForm.Liquid)]
    public void WhatIsNotStatedIsTakenFromWhatItIs(string members, SubstanceKind kind, PhysicalForm form)
    {
        var substance = Read($$"""{"id": "x", {{members}} }""").Substance;
        Assert.Equal((kind, form), (substance.Kind, substance.Form));
    }

    [Fact]
    public void AnExtractByItsNameFeedsMicrobesAndSaysThatItIsOnlyByName()
    {
        var named = Read("""{"id": "x", "name": "Seaweed extract", "unknownComposition": true}""").Substance;
        Assert.Equal((SubstanceKind.Extract, true, true), (named.Kind, named.IsExtractByNameOnly, named.FeedsMicrobes));
        Assert.NotNull(named.Extract);
        var stated = Read("""{"id": "x", "name": "Green juice", "kind": "extract", "unknownComposition": true}""").Substance;
        Assert.Equal((false, true), (stated.IsExtractByNameOnly, stated.FeedsMicrobes));
        var dye = Read("""{"id": "x", "name": "Seaweed green", "kind": "dye", "unknownComposition": true}""").Substance;
        Assert.Equal((SubstanceKind.Dye, false, null), (dye.Kind, dye.FeedsMicrobes, dye.Extract));
    }

    [Fact]
    public void StatementsOfTheShopStandAndOthersComeFromTheCatalogue()
    {
        var stated = Read("""
            {"id": "x", "name": "Bag", "aliases": ["a", " ", 3, "b"], "formula": "KNO3", "cas": "7757-79-1", "colour": "white",
             "hazards": ["H272", "H272", "H200", 1], "impurities": {"note": "n", "Cd": "1 mg/kg", "Pb": "0 mg/kg"}}
            """).Substance;
        Assert.Equal(["a", "b"], stated.Aliases);
        Assert.Equal(("7757-79-1", "white", "Bag"), (stated.Cas, stated.Colour, stated.Name));
        Assert.Equal(["H200", "H272"], stated.Hazards!.Statements);
        Assert.Equal(["Cd", "Pb"], stated.Impurities.Select(i => i.Element.Symbol));
        Assert.Contains("s.substances.json", stated.Impurities[0].Content.Source, StringComparison.Ordinal);
        var bare = Read("""{"id": "x", "formula": "KNO3"}""").Substance;
        Assert.Equal(SubstanceCatalogue.BuiltIn.ById("potassium-nitrate")!.Hazards, bare.Hazards);
        Assert.Equal("x", bare.Name);
        Assert.Empty(bare.Aliases);
        Assert.Null(bare.StrengthRecord);
        Assert.Equal(1, bare.Strength.Value);
        Assert.Equal("98 %", Read("""{"id": "x", "formula": "KNO3", "assay": "98 %"}""").Substance.StrengthRecord!.Value);
    }

    [Theory]
    [InlineData("0.5 g/mL", true)]
    [InlineData("3 g/mL", true)]
    [InlineData("0.49 g/mL", false)]
    [InlineData("3.01 g/mL", false)]
    public void ADensityLiesBetweenHalfAndThree(string density, bool read)
    {
        var workspace = Shop($$"""{"id": "x", "formula": "KNO3", "density": "{{density}}"}""").Load();
        Assert.Equal(read, Assert.Single(workspace.SubstanceFiles[0].Substances).Substance.Density is not null);
        Assert.Equal(read ? 0 : 1, workspace.Problems.Count);
    }

    /// <summary>By hand: 0.5 % of 101.10 g/mol is 0.506.</summary>
    [Theory]
    [InlineData("101.10 g/mol", 0)]
    [InlineData("101.60 g/mol", 0)]
    [InlineData("100.60 g/mol", 0)]
    [InlineData("101.62 g/mol", 1)]
    [InlineData("100.58 g/mol", 1)]
    public void AMolarMassMayBeHalfAPerCentOff(string mass, int problems)
    {
        var found = Shop($$"""{"id": "x", "formula": "KNO3", "molarMass": "{{mass}}"}""").Load().Problems;
        Assert.Equal(problems, found.Count);
        Assert.All(found, p => Assert.Equal("/substances/0/formula", Assert.Single(p.Related).Place.Pointer.Value));
    }

    /// <summary>164.09 g/mol is the nitrate without water, 236.15 with four of it (standard atomic weights; arithmetic).</summary>
    [Theory]
    [InlineData("Ca(NO3)2.4H2O", "164.09 g/mol", "With 0 H2O", "less")]
    [InlineData("Ca(NO3)2", "236.15 g/mol", "With 4 H2O", "more")]
    [InlineData("CaSO4", "145.15 g/mol", "With 0.5 H2O", "more")]
    [InlineData("KNO3", "500 g/mol", "Check the formula", "more")]
    public void AnotherHydrateIsNamedWhereOneFits(string formula, string mass, string hint, string more)
    {
        var problem = Assert.Single(Shop($$"""{"id": "x", "formula": "{{formula}}", "molarMass": "{{mass}}"}""").Load().Problems);
        Assert.Contains(hint, problem.Message, StringComparison.Ordinal);
        Assert.Contains($" % {more}.", problem.Message, StringComparison.Ordinal);
        var values = problem.Values.ToDictionary(v => v.Name, v => v.Value);
        Assert.Equal(values["stated"] / values["computed"], values["factor"], 1e-12);
        Assert.Equal(FormulaParser.Parse(formula).MolarMass.GramsPerMole, values["computed"], 1e-9);
    }

    [Theory]
    [InlineData("0 %", false)]
    [InlineData("100 %", true)]
    [InlineData("100.1 %", false)]
    public void AStrengthIsMoreThanNothingAndAtMostAll(string strength, bool read) => Assert.Equal(
        read ? 1 : 0,
        Assert.Single(Shop($$"""{"id": "x", "strengthOf": "HNO3", "strength": "{{strength}} w/w", "density": "1.2 g/mL"}""").Load().SubstanceFiles)
            .Substances.Count);

    /// <summary>The weakest grade of a name is listed first; its hazards are not those of a drum of strong acid.</summary>
    [Theory]
    [InlineData("HNO3", "38 %", "nitric-38")]
    [InlineData("HNO3", "38.1 %", "nitric-53")]
    [InlineData("HNO3", "65 %", "nitric-65")]
    [InlineData("HNO3", "70 %", "nitric-68")]
    [InlineData("nitric-38", "66 %", "nitric-68")]
    [InlineData("hydrogen peroxide", "35 %", "hydrogen-peroxide-35")]
    [InlineData("hydrogen peroxide", "3 %", "hydrogen-peroxide-3")]
    [InlineData("hydrochloric acid", "31 %", "hydrochloric-31")]
    [InlineData("vinegar", "20 %", "acetic-acid-25")]
    [InlineData("KOH", "30 %", "potassium-hydroxide")]
    public void HazardsAreThoseOfTheGradeThatIsAsStrong(string of, string strength, string grade) => Assert.Equal(
        SubstanceCatalogue.BuiltIn.ById(grade)!.Hazards,
        Read($$"""{"id": "x", "strengthOf": "{{of}}", "strength": "{{strength}} w/w", "density": "1.2 g/mL"}""").Substance.Hazards);

    [Fact]
    public void NobodyCountsTheMolesOfALabel()
    {
        var problem = Assert.Single(Shop("""
            {"id": "x", "strengthOf": "humic-acid-liquid", "strength": "1 mol/L", "density": "1.1 g/mL"}
            """).Load().Problems);
        Assert.True(problem.Kind is ProblemKind.WrongDimension or ProblemKind.UnknownSubstance);
    }

    [Fact]
    public void WhatCouldNotBeReadKeepsItsNames()
    {
        var file = Assert.Single(Shop("""
            {"id": "x", "aliases": ["the bag"], "formula": "Xy2"}, {"id": "y", "formula": "KCl"}, {"id": ""}, {"id": "z"}
            """).Load().SubstanceFiles);
        Assert.Equal(["the bag", "x", "z"], file.UnreadNames.Order(StringComparer.Ordinal));
        Assert.Equal(["y"], file.Substances.Select(s => s.Substance.Id));
    }

    [Fact]
    public void OfTwoWithOneIdTheFirstStands()
    {
        var workspace = Shop("""{"id": "x", "formula": "KNO3"}, {"id": "x", "formula": "KCl"}""").Load();
        Assert.Equal("KNO3", Assert.Single(workspace.SubstanceFiles[0].Substances).Substance.Formula!.Text);
        Assert.Equal("/substances/0/id", Assert.Single(Assert.Single(workspace.Problems).Related).Place.Pointer.Value);
    }

    [Theory]
    [InlineData("\"drop\": \"0.05 mL ± 20 %\"", 0.05, 0.2)]
    [InlineData("\"drop\": \"0.05 mL\"", 0.05, null)]
    [InlineData("\"drop\": \"0 mL\"", null, null)]
    [InlineData("\"note\": \"n\"", null, null)]
    public void ADropHasASize(string member, double? millilitres, double? tolerance)
    {
        var read = Read($$"""{"id": "x", "unknownComposition": true, {{member}} }""");
        Assert.Equal(millilitres, read.Drop is { } drop ? Math.Round(drop.Value.Millilitres, 9) : null);
        Assert.Equal(tolerance, read.DropTolerance?.Relative);
    }

    /// <summary>By hand: P2O5 is 2.291 times its phosphorus, K2O 1.205 times its potassium.</summary>
    [Theory]
    [InlineData("\"basis\": \"oxide\", «\"P\"»: \"13 %\"", "P2O5", 2.291)]
    [InlineData("\"basis\": \"element\", «\"P2O5\"»: \"13 %\"", "P", 2.291)]
    [InlineData("\"basis\": \"oxide\", «\"K\"»: \"13 %\"", "K2O", 1.205)]
    [InlineData("\"basis\": \"element\", «\"K2O\"»: \"13 %\"", "K", 1.205)]
    public void ABasisThatTheKeyDeniesIsAskedAboutWithItsFactor(string label, string meant, double factor)
    {
        var problem = Shop($$"""{"id": "x", "label": { {{label}} } }""").Single(ProblemKind.AmbiguousUnit);
        Assert.Equal([meant], problem.Suggestions);
        Assert.Equal(factor, Assert.Single(problem.Values).Value, 1e-3);
    }

    [Theory]
    [InlineData("\"basis\": \"oxide\", \"Ca\": \"13 %\", \"P2O5\": \"5 %\"")]
    [InlineData("\"basis\": \"element\", \"CaO\": \"13 %\", \"P\": \"5 %\"")]
    [InlineData("\"basis\": \"oxide\", \"K2O\": \"0 %\", \"N\": \"5 %\"")]
    public void SecondaryNutrientsStandInEitherWay(string label) => Shop($$"""{"id": "x", "label": { {{label}} } }""").Clean();

    [Fact]
    public void EveryShareOfNitrogenIsRead()
    {
        var content = Read("""
            {"id": "x", "label": {"nitrogen": {"total": "10 %", "nitrate": "4 %", "ammonium": "3 %", "urea": "2 %", "organic": "1 %"}}}
            """).Substance.Content;
        Assert.Equal((0.1, 0.04, 0.03, 0.02, 0.01), (
            Math.Round(content[Element.N], 9), Math.Round(content[NitrogenForm.Nitrate], 9), Math.Round(content[NitrogenForm.Ammonium], 9),
            Math.Round(content[NitrogenForm.Urea], 9), Math.Round(content[NitrogenForm.Organic], 9)));
        var beside = Read("""{"id": "x", "label": {"NO3-N": "4 %", "NH4-N": "3 %", "urea-N": "2 %"}}""").Substance.Content;
        Assert.Equal((0.04, 0.03, 0.02), (
            Math.Round(beside[NitrogenForm.Nitrate], 9), Math.Round(beside[NitrogenForm.Ammonium], 9), Math.Round(beside[NitrogenForm.Urea], 9)));
    }

    /// <summary>52 % P and 34 % K are a phosphate of potash as oxides (P2O5, K2O), and more than the bag holds as elements.</summary>
    [Fact]
    public void FiguresOfOxidesUnderElementsAreToldApart()
    {
        var problem = Assert.Single(
            Shop("""{"id": "x", "label": {"basis": "element", "P": "52 %", "K": "34 %"}}""").Load().Problems, p => p.Kind == ProblemKind.ImpossibleAnalysis);
        Assert.Equal(["P2O5", "K2O"], problem.Suggestions);
        Assert.Contains("Read as P2O5 and K2O the same figures are possible", problem.Message, StringComparison.Ordinal);
    }
}
