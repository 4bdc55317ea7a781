using CsCheck;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Tests.Composition;

public sealed class FormulaParserTests
{
    private static readonly string[] Fragments =
        ["Ca", "N", "O", "H2O", "(", ")", "[", "]", "2", "10", ".", "·", "*", "+", "-", "^", " ", "½", "/", "e", ",", "²", "₄"];

    private static readonly string[] Common = ["H", "C", "N", "O", "Na", "Mg", "P", "S", "Cl", "K", "Ca", "Fe", "Zn"];

    [Theory]
    [InlineData("Ca(NO3)2·4H2O")]
    [InlineData("Ca(NO3)2.4H2O")]
    [InlineData("Ca(NO3)2*4H2O")]
    [InlineData("Ca(NO3)2•4H2O")]
    [InlineData("Ca(NO3)2 · 4 H2O")]
    [InlineData("Ca[NO3]2×4H2O")]
    [InlineData("Ca{NO3}2 x 4H2O")]
    [InlineData("Ca(NO₃)₂·4H₂O")]
    [InlineData("  Ca(NO3)2.4H2O\t")]
    public void EverySpellingOfAHydrateIsTheSameFormula(string text)
    {
        var formula = FormulaParser.Parse(text);

        Assert.Equal(FormulaParser.Parse("Ca(NO3)2·4H2O"), formula);
        Assert.Equal("Ca(NO3)2·4H2O", formula.Text);
        Assert.Equal(4, formula.HydrateWater);
        Assert.Equal(2, formula.Atoms[Element.N]);
        Assert.Equal(10, formula.Atoms[new("O")]);
        Assert.Equal(8, formula.Atoms[new("H")]);
    }

    [Fact]
    public void ADoubleSaltMultipliesItsParts()
    {
        var formula = FormulaParser.Parse("5Ca(NO3)2.NH4NO3.10H2O");

        Assert.Equal("5Ca(NO3)2·NH4NO3·10H2O", formula.Text);
        Assert.Equal(5, formula.Atoms[Element.Ca]);
        Assert.Equal(12, formula.Atoms[Element.N]);
        Assert.Equal(24, formula.Atoms[new("H")]);
        Assert.Equal(43, formula.Atoms[new("O")]);
        Assert.Equal(10, formula.HydrateWater);
    }

    [Theory]
    [InlineData("CaSO4·0.5H2O", 0.5)]
    [InlineData("CaSO4.0.5H2O", 0.5)]
    [InlineData("CaSO4·1/2H2O", 0.5)]
    [InlineData("CaSO4·½H2O", 0.5)]
    [InlineData("K2CO3·1.5H2O", 1.5)]
    [InlineData("K2CO3·1½H2O", 1.5)]
    [InlineData("K2CO3.3/2H2O", 1.5)]
    [InlineData("CuSO4.5H2O", 5)]
    [InlineData("MgSO4", 0)]
    [InlineData("H2O", 0)]
    public void FractionalHydratesAreRead(string text, double water) =>
        Assert.Equal(water, FormulaParser.Parse(text).HydrateWater);

    [Theory]
    [InlineData("Ca2+", 2, "Ca+2")]
    [InlineData("Ca+2", 2, "Ca+2")]
    [InlineData("Ca^2+", 2, "Ca+2")]
    [InlineData("Ca++", 2, "Ca+2")]
    [InlineData("Ca²⁺", 2, "Ca+2")]
    [InlineData("NO3-", -1, "NO3-")]
    [InlineData("NH4+", 1, "NH4+")]
    [InlineData("H2PO4−", -1, "H2PO4-")]
    [InlineData("SO4-2", -2, "SO4-2")]
    [InlineData("SO4^2-", -2, "SO4-2")]
    [InlineData("SO4 2-", -2, "SO4-2")]
    [InlineData("SO₄²⁻", -2, "SO4-2")]
    [InlineData("[Fe(CN)6]4-", -4, "(Fe(CN)6)-4")]
    [InlineData("Fe(H2O)6+3", 3, "Fe(H2O)6+3")]
    public void AChargeIsReadInTheUsualSpellings(string text, int charge, string normal)
    {
        var formula = FormulaParser.Parse(text);

        Assert.Equal(charge, formula.Charge);
        Assert.Equal(normal, formula.Text);
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("   ", 0)]
    [InlineData("Kno3", 0)]
    [InlineData("kno3", 0)]
    [InlineData("Ca(NO3", 2)]
    [InlineData("Ca(NO3]2", 6)]
    [InlineData("CaNO3)2", 5)]
    [InlineData("Ca()2", 2)]
    [InlineData("CaCl2 2H2O", 5)]
    [InlineData("MgSO4·", 6)]
    [InlineData("MgSO4··7H2O", 6)]
    [InlineData("MgSO4·xH2O", 6)]
    [InlineData("CaSO4·0,5H2O", 7)]
    [InlineData("CaSO4·.5H2O", 6)]
    [InlineData("CaSO4·0H2O", 6)]
    [InlineData("CaSO4·1/0H2O", 8)]
    [InlineData("Fe0.95O", 2)]
    [InlineData("Na1.5O", 3)]
    [InlineData("SO42-", 2)]
    [InlineData("O2-", 1)]
    [InlineData("Fe+3+", 4)]
    [InlineData("Fe^", 3)]
    [InlineData("Na99999Cl", 2)]
    [InlineData("NaCl(aq)", 5)]
    [InlineData("Fe-EDTA", 3)]
    [InlineData("Tc2O7", 0)]
    [InlineData("Na2EDTA", 3)]
    [InlineData("NaCl\u0000", 4)]
    [InlineData("😀", 0)]
    public void WhatIsNotAFormulaSaysWhereAndWhy(string text, int position)
    {
        Assert.False(FormulaParser.TryParse(text, out var formula, out var error));
        Assert.Null(formula);
        Assert.NotEmpty(error.Reason);
        Assert.Equal(position, error.Position);
    }

    [Fact]
    public void LengthAndNestingAreCapped()
    {
        Assert.False(FormulaParser.TryParse(new string('H', FormulaParser.MaxLength + 1), out _, out _));
        Assert.False(FormulaParser.TryParse(new string('(', 90) + "H" + new string(')', 90), out _, out var error));
        Assert.Contains("nest", error.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void SpellingsOfOneCompositionShareTheHillKey()
    {
        Assert.Equal("C2 H4 O2", FormulaParser.Parse("CH3COOH").Hill);
        Assert.True(FormulaParser.Parse("CH3COOH").HasCompositionOf(FormulaParser.Parse("C2H4O2")));
        Assert.NotEqual(FormulaParser.Parse("CH3COOH"), FormulaParser.Parse("C2H4O2"));
        Assert.Equal(FormulaParser.Parse("MgSO4").Hill, FormulaParser.Parse("MgSO4·7H2O").AnhydrousHill);
        Assert.False(FormulaParser.Parse("NO2").HasCompositionOf(FormulaParser.Parse("NO2-")));
    }

    [Fact]
    public void AnyTextGivesAFormulaOrAnErrorInsideTheText()
    {
        var alphabet = Gen.Int[0, Fragments.Length - 1].Select(i => Fragments[i]);
        Gen.OneOf(alphabet.Array[0, 12].Select(string.Concat), Gen.String[0, 40]).Sample(text =>
        {
            if (FormulaParser.TryParse(text, out var formula, out var error))
            {
                Assert.Null(error);
                Assert.True(double.IsFinite(formula.MolarMass.GramsPerMole) && formula.MolarMass.GramsPerMole > 0);
                Assert.Equal(formula, FormulaParser.Parse(formula.Text));
                Assert.Equal(formula.Hill, FormulaParser.Parse(formula.Text).Hill);
            }
            else
            {
                Assert.InRange(error.Position, 0, text.Length);
            }
        });
    }

    [Fact]
    public void CountsAreThoseOfTheTreeThatWasWritten()
    {
        var elements = Gen.Int[0, Common.Length - 1].Select(i => Common[i]);
        var atom = Gen.Select(elements, Gen.Int[1, 12]).Select((e, n) => (Text: n == 1 ? e : $"{e}{n}", Atoms: new Dictionary<string, int> { [e] = n }));
        var group = Gen.Select(atom.Array[1, 4], Gen.Int[1, 9]).Select((parts, n) => (
            Text: "(" + string.Concat(parts.Select(p => p.Text)) + ")" + (n == 1 ? string.Empty : n.ToString()),
            Atoms: parts.SelectMany(p => p.Atoms).GroupBy(p => p.Key).ToDictionary(p => p.Key, p => p.Sum(a => a.Value) * n)));
        Gen.OneOf(atom, group).Array[1, 6].Sample(parts =>
        {
            var formula = FormulaParser.Parse(string.Concat(parts.Select(p => p.Text)));
            var expected = parts.SelectMany(p => p.Atoms).GroupBy(p => p.Key).ToDictionary(p => p.Key, p => (double)p.Sum(a => a.Value));
            Assert.Equal(expected.Count, formula.Atoms.Count);
            Assert.All(expected, e => Assert.Equal(e.Value, formula.Atoms[new(e.Key)]));
        });
    }
}
