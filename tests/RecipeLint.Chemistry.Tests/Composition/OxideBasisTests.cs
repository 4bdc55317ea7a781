using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Tests.Composition;

public sealed class OxideBasisTests
{
    // Regulation (EU) 2019/1009, Annex III part I point 6 (oxide to element): P 0.436, K 0.830, Ca 0.715, Mg 0.603, Na 0.742, S 0.400;
    // recalled (same factors as Regulation (EC) 2003/2003, Art. 6). Three decimals as printed.
    [Theory]
    [InlineData("P2O5", 0.436)]
    [InlineData("K2O", 0.830)]
    [InlineData("CaO", 0.715)]
    [InlineData("MgO", 0.603)]
    [InlineData("Na2O", 0.742)]
    [InlineData("SO3", 0.400)]
    public void FactorsRoundToThoseOfTheFertiliserLaw(string form, double factor) =>
        Assert.Equal(factor, OxideBasis.GramsElementPerGram(form), 0.0006);

    // Arithmetic by hand from the CIAAW weights: 2 x 30.974 / 141.943 and so on.
    [Theory]
    [InlineData("P2O5", 61.948 / 141.943)]
    [InlineData("K2O", 78.196 / 94.195)]
    [InlineData("SiO2", 28.085 / 60.083)]
    [InlineData("B2O3", 21.62 / 69.617)]
    [InlineData("Fe2O3", 111.69 / 159.687)]
    [InlineData("MnO", 54.938 / 70.937)]
    [InlineData("ZnO", 65.38 / 81.379)]
    [InlineData("CuO", 63.546 / 79.545)]
    [InlineData("SO4", 32.06 / 96.056)]
    [InlineData("NO3", 14.007 / 62.004)]
    [InlineData("NH4", 14.007 / 18.039)]
    [InlineData("P", 1)]
    [InlineData("Fe", 1)]
    public void FactorsAreThoseOfTheAtomicWeights(string form, double factor) =>
        Assert.Equal(factor, OxideBasis.GramsElementPerGram(form), 1e-9);

    [Fact]
    public void TheFactorsOfP2O5AndK2OAre04364And08301()
    {
        // Common practice, no source; the second is 0.83015, cut rather than rounded in most tables.
        Assert.Equal(0.4364, OxideBasis.GramsElementPerGram("P2O5"), 4);
        Assert.Equal(0.8301, OxideBasis.GramsElementPerGram("K2O"), 0.0001);

        // The same as factors the other way (common practice: 2.29 and 1.205), and nitrate to nitrogen (4.43).
        Assert.Equal(2.291, 1 / OxideBasis.GramsElementPerGram("P2O5"), 3);
        Assert.Equal(1.205, 1 / OxideBasis.GramsElementPerGram("K2O"), 3);
        Assert.Equal(4.43, 1 / OxideBasis.GramsElementPerGram("NO3"), 2);
    }

    [Fact]
    public void EveryFormHoldsTheElementItStandsFor()
    {
        Assert.All(OxideBasis.Forms, form =>
        {
            Assert.True(OxideBasis.TryRead(form, out var element, out var factor));
            Assert.True(FormulaParser.Parse(form).Atoms.ContainsKey(element));
            Assert.InRange(factor, 0.05, 1);
        });
        Assert.True(OxideBasis.TryUsualForm(Element.P, out var usual));
        Assert.Equal("P2O5", usual);
        Assert.False(OxideBasis.TryUsualForm(Element.N, out _));
    }

    [Theory]
    [InlineData("P2O5", "P")]
    [InlineData("PO4", "P")]
    [InlineData("K2O", "K")]
    [InlineData("CaO", "Ca")]
    [InlineData("CaCO3", "Ca")]
    [InlineData("MgO", "Mg")]
    [InlineData("Na2O", "Na")]
    [InlineData("SO3", "S")]
    [InlineData("SO4", "S")]
    [InlineData("SiO2", "Si")]
    [InlineData("B2O3", "B")]
    [InlineData("FeO", "Fe")]
    [InlineData("Fe2O3", "Fe")]
    [InlineData("MnO", "Mn")]
    [InlineData("MnO2", "Mn")]
    [InlineData("ZnO", "Zn")]
    [InlineData("CuO", "Cu")]
    [InlineData("MoO3", "Mo")]
    [InlineData("CoO", "Co")]
    [InlineData("NiO", "Ni")]
    [InlineData("NO3", "N")]
    [InlineData("NH4", "N")]
    [InlineData("NH3", "N")]
    [InlineData("Se", "Se")]
    public void AFormStandsForItsElement(string form, string symbol)
    {
        Assert.True(OxideBasis.TryRead(form, out var element, out _));
        Assert.Equal(symbol, element.Symbol);
    }

    [Theory]
    [InlineData("P", "P2O5")]
    [InlineData("K", "K2O")]
    [InlineData("Ca", "CaO")]
    [InlineData("Mg", "MgO")]
    [InlineData("Na", "Na2O")]
    [InlineData("S", "SO3")]
    [InlineData("Si", "SiO2")]
    [InlineData("B", "B2O3")]
    [InlineData("Fe", "Fe2O3")]
    [InlineData("Mn", "MnO")]
    [InlineData("Zn", "ZnO")]
    [InlineData("Cu", "CuO")]
    [InlineData("Mo", "MoO3")]
    [InlineData("Cl", null)]
    [InlineData("Co", null)]
    public void LabelsPrintOneFormOfAnElement(string symbol, string? form) =>
        Assert.Equal(form is not null, OxideBasis.TryUsualForm(new Element(symbol), out var usual) && usual == form);

    [Fact]
    public void FormsComeInOrder() => Assert.Equal(
        ["B2O3", "CaCO3", "CaO", "CoO", "CuO", "Fe2O3", "FeO", "K2O", "MgO", "MnO", "MnO2", "MoO3", "NH3", "NH4", "NO3", "Na2O", "NiO", "P2O5", "PO4", "SO3", "SO4", "SiO2", "ZnO"],
        OxideBasis.Forms);

    [Fact]
    public void AnUnknownFormIsNamed() => Assert.Equal(
        "'P2O7' is not a form this table knows. (Parameter 'form')",
        Assert.Throws<ArgumentException>(() => OxideBasis.GramsElementPerGram("P2O7")).Message);

    [Theory]
    [InlineData("")]
    [InlineData("p2o5")]
    [InlineData("Xx")]
    [InlineData("P2O7")]
    public void WhatNoLabelWritesIsRefused(string form)
    {
        Assert.False(OxideBasis.TryRead(form, out _, out _));
        Assert.Throws<ArgumentException>(() => OxideBasis.GramsElementPerGram(form));
    }
}
