using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

public sealed class SubstanceFileReaderTests
{
    [Fact]
    public void AFormulaGivesElementsIonsAndAnAssay()
    {
        var substance = Read("""{"id": "cal-tech", "aliases": ["cal bag"], "formula": "Ca(NO3)2.4H2O", "molarMass": "236.15 g/mol", "assay": "98 %", "cas": "13477-34-4", "hazards": ["H318", "H272"], "impurities": {"Cd": "0.5 mg/kg"}}""").Substance;
        // 40.078 / 236.15 = 16.97 % Ca and 11.86 % N in the pure salt (arithmetic on CIAAW weights).
        Assert.Equal(0.1697 * 0.98, substance.Content[Element.Ca], 1e-4);
        Assert.Equal(0.1186 * 0.98, substance.Content[NitrogenForm.Nitrate], 1e-4);
        Assert.Equal(substance.Content[Element.N], substance.Content[NitrogenForm.Nitrate], 1e-12);
        Assert.Equal(["Ca+2", "NO3-"], substance.Dissolves.Select(d => d.Component).Order(StringComparer.Ordinal));
        Assert.Equal(0, SolutionComponent.NetChargePerGram(substance.Dissolves), 1e-12);
        Assert.Equal(["H272", "H318"], substance.Hazards!.Statements);
        Assert.Equal(0.5e-6, Assert.Single(substance.Impurities).Content.Value.Value, 1e-15);
    }

    [Fact]
    public void NitrogenWithoutAKnownIonCountsAsOrganic()
    {
        // Caffeine: four nitrogen in 194.19 g/mol.
        var substance = Read("""{"id": "bitter", "formula": "C8H10N4O2"}""").Substance;
        Assert.Equal(4 * 14.007 / 194.19, substance.Content[NitrogenForm.Organic], 1e-4);
        Assert.Empty(substance.Dissolves);
        Assert.NotNull(substance.Assumption);
    }

    // The same acid by weight, by volume and in moles: 38 % w/w at 1.23 g/mL is 467 g/L and 7.42 mol/L of HNO3 (63.01 g/mol).
    [Theory]
    [InlineData("HNO3", "38 % w/w")]
    [InlineData("nitric-60", "38 % w/w")]
    [InlineData("HNO3", "46.74 % w/v")]
    [InlineData("HNO3", "7.418 mol/L")]
    [InlineData("HNO3", "7.418 M")]
    public void AStrengthIsTheSameOnEveryBasis(string of, string strength)
    {
        var acid = Read($$"""{"id": "my-acid", "strengthOf": "{{of}}", "strength": "{{strength}}", "density": "1.23 g/mL"}""").Substance;
        Assert.Equal(0.38, acid.Strength.Value, 1e-4);
        Assert.Equal(0.38 * 14.007 / 63.013, acid.Content[Element.N], 1e-5);
        Assert.Equal((SubstanceKind.Acid, PhysicalForm.Liquid, 1.23), (acid.Kind, acid.Form, acid.Density!.Value.GramsPerMillilitre));
        var catalogue = SubstanceCatalogue.BuiltIn.ById("nitric-38")!;
        Assert.Equal(
            catalogue.Dissolves.ToDictionary(d => d.Component, d => Math.Round(d.MolesPerGram, 5)),
            acid.Dissolves.ToDictionary(d => d.Component, d => Math.Round(d.MolesPerGram, 5)));
    }

    [Fact]
    public void ALabelGivesAProduct()
    {
        // "15.5-0-0 + 26.3 CaO", the calcium nitrate of the trade (common practice, no source): 26.3 % CaO is 18.8 % Ca.
        var product = Read("""{"id": "cal-bag", "label": {"basis": "oxide", "nitrogen": {"nitrate": "14.4 %", "ammonium": "1.1 %"}, "CaO": "26.3 %"}}""").Substance;
        Assert.Equal(0.188, product.Content[Element.Ca], 5e-4);
        Assert.Equal((0.144, 0.011), (Math.Round(product.Content[NitrogenForm.Nitrate], 6), Math.Round(product.Content[NitrogenForm.Ammonium], 6)));
        Assert.Equal((SubstanceKind.Product, PhysicalForm.Solid), (product.Kind, product.Form));
    }

    [Fact]
    public void ALiquidLabelByVolumeIsDividedByItsDensity()
    {
        var product = Read("""{"id": "iron", "form": "liquid", "density": "1.3 g/mL", "label": {"basis": "element", "percent": "w/v", "Fe": {"total": "7.8 %", "chelated": "6.5 %"}, "chelatedWith": "DTPA"}}""").Substance;
        Assert.Equal(0.06, product.Content[Element.Fe], 1e-9);
        Assert.Equal(0.05, product.Iron!.Chelated!.Value.Value, 1e-9);
        Assert.Equal("DTPA", product.Iron.Agent);
    }

    [Fact]
    public void AColourOfUnknownCompositionComesInDrops()
    {
        var shop = Read("""{"id": "red", "kind": "dye", "unknownComposition": true, "drop": "0.04 mL ± 10 %", "certificate": "none", "colour": "red"}""");
        Assert.True(shop.UnknownComposition);
        Assert.Equal((0.04, 0.1), (shop.Drop!.Value.Millilitres, shop.DropTolerance!.Value.Relative));
        Assert.Equal(("red", "none", SubstanceKind.Dye), (shop.Substance.Colour, shop.Certificate, shop.Substance.Kind));
        Assert.Empty(shop.Substance.Dissolves);
    }

    [Theory]
    [InlineData("\"formula\": \"Ca(NO3)2.4H2O\", \"molarMass\": «\"164.09 g/mol\"»", ProblemKind.FormulaMassDisagrees)]
    [InlineData("\"formula\": \"Ca(NO3)2.4H2O\", \"molarMass\": «\"236.15 g\"»", ProblemKind.WrongDimension)]
    [InlineData("\"formula\": \"Ca«(»NO3\"", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"formula\": \"«X»y2\"", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"formula\": \"KNO3\", \"assay\": «\"101 %\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"formula\": \"KNO3\", \"cas\": «\"7757-79-2\"»", ProblemKind.WrongShape)]
    [InlineData("\"formula\": \"KNO3\", \"impurities\": {\"Cd\": «\"120 %\"»}", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"formula\": \"KNO3\", \"impurities\": {«\"Xx\"»: \"1 mg/kg\"}", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"strengthOf\": «\"nitrik acid\"», \"strength\": \"38 % w/w\", \"density\": \"1.23 g/mL\"", ProblemKind.UnknownSubstance)]
    [InlineData("\"strengthOf\": \"HNO3\", \"strength\": \"38 «%»\", \"density\": \"1.23 g/mL\"", ProblemKind.AmbiguousUnit)]
    [InlineData("\"strengthOf\": \"HNO3\", \"strength\": «\"20 mol/L\"», \"density\": \"1.23 g/mL\"", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"strengthOf\": \"HNO3\", \"strength\": \"38 % w/w\", \"density\": «\"1230 g/mL\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("«\"label\"»: {\"basis\": \"oxide\", \"P2O5\": \"60 %\", \"K2O\": \"55 %\"}", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"label\": {\"basis\": \"oxide\", \"K2O\": «\"140 %\"»}", ProblemKind.ImpossibleAnalysis)]
    [InlineData("\"label\": {\"basis\": \"oxide\", «\"P\"»: \"13 %\", \"N\": \"5 %\"}", ProblemKind.AmbiguousUnit)]
    [InlineData("\"label\": {\"basis\": \"element\", \"Fe\": {\"total\": \"6 %\", \"chelated\": \"6 %\"}, \"chelatedWith\": «\"XYZT\"»}", ProblemKind.UnknownSubstance)]
    [InlineData("«\"label\"»: {\"basis\": \"element\"}", ProblemKind.ImpossibleAnalysis)]
    public void WhatAProductStatesIsRefusedWhereItStands(string members, ProblemKind kind) =>
        InMemoryShop.Of(("shop.substances.json", $$"""{"format": 1, "substances": [{"id": "mine", {{members}} }]}""")).Single(kind);

    [Fact]
    public void AMolarMassOfAnotherHydrateNamesIt() =>
        Assert.Contains(
            "With 7 H2O",
            InMemoryShop.Of(("s.substances.json", """{"format": 1, "substances": [{"id": "mine", "formula": "MgSO4.H2O", "molarMass": «"246.47 g/mol"»}]}"""))
                .Single(ProblemKind.FormulaMassDisagrees).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("""[{"id": "mine", "formula": "KNO3"}, {"id": «"mine"», "formula": "KCl"}]""")]
    [InlineData("""[{"id": «"potassium-nitrate"», "formula": "KNO3"}]""")]
    public void AnIdIsTakenOnce(string list) =>
        InMemoryShop.Of(("s.substances.json", $$"""{"format": 1, "substances": {{list}} }""")).Single(ProblemKind.DuplicateKey);

    [Fact]
    public void ALiquidNeedsADensity() =>
        InMemoryShop.Of(("s.substances.json", """{"format": 1, "substances": [«{"id": "mine", "formula": "H3PO4", "form": "liquid"}»]}"""))
            .Single(ProblemKind.MissingKey);

    [Fact]
    public void AProductThatCannotBeReadIsReportedOnceWhereItIsDescribed() =>
        InMemoryShop.Of(
            ("s.substances.json", """{"format": 1, "substances": [{"id": "mine", "label": {"basis": "oxide", "K2O": «"140 %"»}}]}"""),
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "mine", "amount": "1 g"}]}"""))
            .Single(ProblemKind.ImpossibleAnalysis);

    private static ShopSubstance Read(string entry) =>
        Assert.Single(Assert.Single(InMemoryShop.Of(("shop.substances.json", $$"""{"format": 1, "substances": [{{entry}}]}""")).Clean().SubstanceFiles).Substances);
}
