using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

public sealed class IonReadingTests
{
    // Textbook dissociation, written out by hand.
    [Theory]
    [InlineData("K2HPO4", "H+ -1, H2PO4- 1, K+ 2")]
    [InlineData("K3PO4·H2O", "H+ -2, H2PO4- 1, K+ 3")]
    [InlineData("Fe2(SO4)3·9H2O", "Fe+3 2, SO4-2 3")]
    [InlineData("FeSO4·4H2O", "Fe+2 1, SO4-2 1")]
    [InlineData("KAl(SO4)2·12H2O", "Al+3 1, K+ 1, SO4-2 2")]
    [InlineData("5Ca(NO3)2·NH4NO3·10H2O", "Ca+2 5, NH4+ 1, NO3- 11")]
    [InlineData("Mg(OH)2", "H+ -2, Mg+2 1")]
    [InlineData("Zn(CH3COO)2·2H2O", "Acetate- 2, Zn+2 1")]
    [InlineData("Ca(HCO3)2", "CO3-2 2, Ca+2 1, H+ 2")]
    [InlineData("NH4HCO3", "CO3-2 1, H+ 1, NH4+ 1")]
    [InlineData("KHSO4", "H+ 1, K+ 1, SO4-2 1")]
    [InlineData("2MgSO4·K2SO4", "K+ 2, Mg+2 2, SO4-2 3")]
    [InlineData("MgSO4·3.5H2O", "Mg+2 1, SO4-2 1")]
    [InlineData("HNO3", "H+ 1, NO3- 1")]
    [InlineData("CH4N2O", "inert:urea 1")]
    public void IonsAreReadFromTheFormula(string text, string expected)
    {
        Assert.True(IonReading.TryRead(FormulaParser.Parse(text), SubstanceCatalogue.BuiltIn, out var moles));
        Assert.Equal(expected, string.Join(", ", moles.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => $"{m.Key} {m.Value}")));
    }

    [Theory]
    [InlineData("C6H12N4")]
    [InlineData("U3O8")]
    [InlineData("Na2S2O5")]
    [InlineData("NaSO4")]
    [InlineData("Fe3O4")]
    public void WhatCannotBeToldIsNotGuessed(string text) =>
        Assert.False(IonReading.TryRead(FormulaParser.Parse(text), SubstanceCatalogue.BuiltIn, out _));

    [Fact]
    public void TheGroupsAloneAgreeWithTheCatalogue()
    {
        // Read without the catalogue's help, the mineral salts come out as the data files say.
        var mineral = SubstanceCatalogue.BuiltIn.Substances.Where(s => s.Formula is not null && s.Kind == SubstanceKind.Salt).ToArray();
        var read = 0;
        foreach (var salt in mineral)
        {
            if (IonReading.TryRead(salt.Formula!, SubstanceCatalogue.Empty, out var moles))
            {
                read++;
                var perMole = salt.Formula!.MolarMass.GramsPerMole / salt.Strength.Value;
                Assert.Equal(
                    salt.Dissolves.OrderBy(d => d.Component, StringComparer.Ordinal).Select(d => (d.Component, Math.Round(d.MolesPerGram * perMole, 6))),
                    moles.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => (m.Key, m.Value)));
            }
        }

        Assert.True(read >= 45, $"{read} of {mineral.Length}");
    }
}
