using System.Text;
using System.Text.Json;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>What is made of formulas as people type them: atoms, charge, water, keys and weight, the ions, or where and why it is none.</summary>
public sealed class FormulaReadingTests
{
    /// <summary>Of formulas.list, a line each as JSON writes texts but without quotes; '#' begins a heading.</summary>
    [Fact]
    public void EveryFormulaIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var line in Hold.List("formulas.list"))
        {
            text.Append('[').Append(line).Append("] ");
            Write(text, JsonSerializer.Deserialize<string>($"\"{line}\""));
        }

        Hold.As("formulas.txt", text);
    }

    [Fact]
    public void ATextThatIsTooLongIsNotRead()
    {
        Assert.True(FormulaParser.TryParse(new string('H', FormulaParser.MaxLength), out var longest, out _));
        Assert.Equal(200, longest.Atoms[new("H")]);
        Assert.False(FormulaParser.TryParse(new string('H', FormulaParser.MaxLength + 1), out _, out var error));
        Assert.Equal(new FormulaError(200, "A formula is at most 200 characters long"), error);
        Assert.False(FormulaParser.TryParse(null, out _, out error));
        Assert.Equal(new FormulaError(0, "There is no formula here"), error);
        Assert.Equal(
            "'Kx' at 0: 'Kx' is not the symbol of an element.", Assert.Throws<FormatException>(() => FormulaParser.Parse("Kx")).Message);
    }

    [Theory]
    [InlineData(16, true)]
    [InlineData(17, false)]
    public void BracketsNestSixteenDeep(int depth, bool read)
    {
        Assert.Equal(read, FormulaParser.TryParse(new string('(', depth) + "H" + new string(')', depth), out _, out var error));
        if (!read) Assert.Equal(new FormulaError(16, "Brackets nest at most 16 deep"), error);
    }

    [Fact]
    public void AFormulaIsItsText()
    {
        Formula one = FormulaParser.Parse("CaCl2.2H2O"), again = FormulaParser.Parse("CaCl2*2H2O"), other = FormulaParser.Parse("CaCl2");
        Assert.True(one.Equals(again) && !one.Equals(other) && !one.Equals(null));
        Assert.Equal(one.GetHashCode(), again.GetHashCode());
        Assert.Equal("CaCl2·2H2O", one.ToString());
        Assert.Equal(0, one.FractionOf(Element.K).Value);
        Assert.Equal(40.078 / one.MolarMass.GramsPerMole, one.FractionOf(Element.Ca).Value);
    }

    /// <summary>Atoms and charge that a list of ions leaves over, or has too many of.</summary>
    [Fact]
    public void IonsThatDoNotMakeUpAFormulaAreNamed()
    {
        static string Left(string formula, params (string Name, double Moles)[] ions) => string.Join("; ", Dissolution.Check(
            FormulaParser.Parse(formula), ions.Select(i => KeyValuePair.Create(i.Name, i.Moles))));
        Assert.Equal("", Left("KCl", ("K+", 1), ("Cl-", 1)));
        Assert.Equal("", Left("KOH", ("K+", 1), ("H+", -1)));
        Assert.Equal("'Kalium' is not a component; a charge of -1 is left; K: +1 atoms are left", Left("KCl", ("Kalium", 1), ("Cl-", 1)));
        Assert.Equal("a charge of +1 is left; Cl: +1 atoms are left", Left("KCl", ("K+", 1)));
        Assert.Equal("a charge of -0.5 is left; Cl: -0.5 atoms are left", Left("KCl", ("K+", 1), ("Cl-", 1.5)));
        Assert.Equal("C: -1 atoms are left; H: +2 atoms are left; K: -1 atoms are left; N: +1 atoms are left; S: +1 atoms are left",
            Left("(NH4)2SO4", ("K+", 1), ("NH4+", 1), ("CO3-2", 1)));
    }

    private static void Write(StringBuilder text, string? written)
    {
        if (!FormulaParser.TryParse(written, out var formula, out var error))
        {
            text.Append($"at {error.Position}: {error.Reason}\n");
            return;
        }

        text.Append($"{formula.Text}: {formula.Hill}").Append(formula.AnhydrousHill == formula.Hill ? "" : $", dry {formula.AnhydrousHill}");
        text.Append($"; {Hold.Line(("charge", formula.Charge == 0 ? null : formula.Charge), ("water", Positive(formula.HydrateWater)))}");
        text.Append($"; {Hold.Number(formula.MolarMass.GramsPerMole)} g/mol");
        if (IonReading.TryRead(formula, SubstanceCatalogue.Empty, out var ions)) text.Append($"; ions {Ions(ions)}");
        if (IonReading.TryRead(formula, SubstanceCatalogue.BuiltIn, out var known) && (ions is null || Ions(known) != Ions(ions)))
            text.Append($"; known as {Ions(known)}");
        text.Append('\n');
    }

    private static double? Positive(double value) => value > 0 ? value : null;

    private static string Ions(IReadOnlyDictionary<string, double> ions) =>
        string.Join(' ', ions.OrderBy(i => i.Key, StringComparer.Ordinal).Select(i => $"{i.Key}:{Hold.Number(i.Value)}"));
}
