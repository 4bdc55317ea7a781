using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

/// <summary>What closes the charge of a label, by hand from the CIAAW weights.</summary>
public sealed class LabelClosureTests
{
    private const double K = 39.098, Cl = 35.45, Ca = 40.078;

    private static LabelResult Build(PhysicalForm form, string? counterIon, string? agent, params LabelEntry[] entries) => LabelProduct.Build(
        new LabelDeclaration { Id = "x", Name = "x", Form = form, CounterIon = counterIon, Agent = agent, Entries = entries });

    private static Substance Solid(params LabelEntry[] entries)
    {
        var result = Build(PhysicalForm.Solid, null, null, entries);
        Assert.Empty(result.Problems);
        return result.Substance!;
    }

    private static double Moles(Substance substance, string component) =>
        substance.Dissolves.FirstOrDefault(d => d.Component == component)?.MolesPerGram ?? 0;

    /// <summary>Rounding leaves two per cent of the charge open, on either side.</summary>
    [Theory]
    [InlineData(1.99, "The rounding of the label leaves 1.99 % of the charge open; an inert ion closes it.")]
    [InlineData(2.01, "The label leaves 2.01 % of the charge open; it is closed with sulfate.")]
    [InlineData(-1.99, "The rounding of the label leaves 1.99 % of the charge open; an inert ion closes it.")]
    [InlineData(-2.01, "The label leaves 2.01 % of the charge open; it is closed with sodium.")]
    public void RoundingIsTwoPerCent(double open, string words)
    {
        var moles = 0.1 / K;
        var substance = open > 0
            ? Solid(new("K", 10), new("Cl", 100 * moles * Cl * (1 - (open / 100))))
            : Solid(new("K", 100 * moles * K * (1 + (open / 100))), new("Cl", 100 * moles * Cl));
        Assert.Equal(words, substance.Assumption);
        Assert.Equal(0, SolutionComponent.NetChargePerGram(substance.Dissolves), 1e-15);
        Assert.Equal(words.Contains("rounding", StringComparison.Ordinal) ? 0 : moles * Math.Abs(open) / 100, substance.GuessedCharge, 1e-12);
    }

    [Fact]
    public void ALabelThatClosesSaysNothing() => Assert.Null(Solid(new("K", 10), new("Cl", 100 * 0.1 / K * Cl)).Assumption);

    [Fact]
    public void SulfateIsWhatLabelsLeaveOut()
    {
        var substance = Solid(new LabelEntry("K", 10));
        Assert.Equal("The label leaves 100 % of the charge open; it is closed with sulfate.", substance.Assumption);
        Assert.Equal(0.1 / K / 2, Moles(substance, "SO4-2"), 1e-12);
        Assert.Equal(0.1 / K, substance.GuessedCharge, 1e-12);
    }

    /// <summary>K 50 % leaves 505 mg of room: 453 mg of chloride, not 614 mg of sulfate. K 55 % leaves 455 mg, too little for 499 mg.</summary>
    [Theory]
    [InlineData(50, "Cl-", 1, "chloride")]
    [InlineData(55, "H+", -1, "hydroxide, for which alone the product has room")]
    public void WhatHasNoRoomIsNotAdded(double percent, string component, int sign, string words)
    {
        var substance = Solid(new LabelEntry("K", percent));
        Assert.Equal($"The label leaves 100 % of the charge open; it is closed with {words}.", substance.Assumption);
        Assert.Equal(sign * percent / 100 / K, Moles(substance, component), 1e-12);
    }

    [Fact]
    public void WithCalciumOrSulfurItIsChloride()
    {
        var calcium = Solid(new LabelEntry("Ca", 10));
        Assert.Equal("The label leaves 100 % of the charge open; it is closed with chloride.", calcium.Assumption);
        Assert.Equal(2 * 0.1 / Ca, Moles(calcium, "Cl-"), 1e-12);
        var sulfur = Solid(new("K", 20), new("S", 1));
        Assert.EndsWith("it is closed with chloride.", sulfur.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void GlassIsAlkaliItself()
    {
        var glass = Solid(new("K", 10), new("Si", 10));
        Assert.Equal("The label leaves 100 % of the charge open; it is closed with the alkalinity of the silicate (as hydroxide).", glass.Assumption);
        Assert.Equal(-0.1 / K, Moles(glass, "H+"), 1e-12);
        Assert.Equal(0, glass.GuessedCharge);
    }

    /// <summary>P 1 % in a liquid takes up 0.323 mmol/g; K 2 % brings 0.512.</summary>
    [Theory]
    [InlineData(PhysicalForm.Liquid, 2, "hydrogen phosphate instead of dihydrogen phosphate")]
    [InlineData(PhysicalForm.Liquid, 4, "hydrogen phosphate instead of dihydrogen phosphate, then sulfate")]
    [InlineData(PhysicalForm.Solid, 2, "sulfate")]
    public void APhosphateOfALiquidTakesTheRest(PhysicalForm form, double potassium, string words)
    {
        var substance = Build(form, null, null, new("P", 1), new("K", potassium)).Substance!;
        Assert.EndsWith($"it is closed with {words}.", substance.Assumption, StringComparison.Ordinal);
        var open = (potassium / 100 / K) - (0.01 / 30.974);
        Assert.Equal(form == PhysicalForm.Liquid ? -Math.Min(open, 0.01 / 30.974) : 0, Moles(substance, "H+"), 1e-12);
    }

    [Fact]
    public void CationsAreSodiumOrFreeAcid()
    {
        var nitrate = Solid(new LabelEntry("N", 10, LabelShare.Nitrate));
        Assert.Equal("The label leaves 100 % of the charge open; it is closed with sodium.", nitrate.Assumption);
        Assert.Equal(0.1 / 14.007, Moles(nitrate, "Na+"), 1e-12);
        var acid = Solid(new LabelEntry("P", 10));
        Assert.Equal("The label leaves 100 % of the charge open; it is closed with free phosphoric acid.", acid.Assumption);
        Assert.Equal(0.1 / 30.974, Moles(acid, "H+"), 1e-12);
        var both = Solid(new("P", 1), new("N", 10, LabelShare.Nitrate));
        Assert.EndsWith("it is closed with free phosphoric acid, then sodium.", both.Assumption, StringComparison.Ordinal);
    }

    /// <summary>Fe+3 with EDTA-4 lacks one charge.</summary>
    [Fact]
    public void AChelateBringsItsSodium()
    {
        var iron = Build(PhysicalForm.Solid, null, "EDTA", new("Fe", 6), new("Fe", 6, LabelShare.Chelated)).Substance!;
        Assert.EndsWith("it is closed with sodium of the chelate.", iron.Assumption, StringComparison.Ordinal);
        Assert.Equal(0.06 / 55.845, Moles(iron, "Na+"), 1e-12);
    }

    [Theory]
    [InlineData("NO3-", "The label leaves 100 % of the charge open; it is closed with NO3- as declared.", null)]
    [InlineData("SO4-2", "The label leaves 100 % of the charge open; it is closed with SO4-2 as declared.", null)]
    [InlineData("Na+", "The label leaves 100 % of the charge open; it is closed with sulfate.", "'Na+' cannot close this label: an anion is missing")]
    [InlineData("magic", "The label leaves 100 % of the charge open; it is closed with sulfate.", "'magic' cannot close this label: an anion is missing")]
    public void ADeclaredCounterIonHasTheOtherCharge(string ion, string words, string? problem)
    {
        var result = Build(PhysicalForm.Solid, ion, null, new LabelEntry("K", 10));
        Assert.Equal(words, result.Substance!.Assumption);
        Assert.Equal(problem is null ? [] : [problem], result.Problems.Select(p => p.Message));
        Assert.Equal(0, SolutionComponent.NetChargePerGram(result.Substance.Dissolves), 1e-15);
    }

    [Fact]
    public void OfAnAnionACationIsMissing() => Assert.Equal(
        ["'Cl-' cannot close this label: a cation is missing"],
        Build(PhysicalForm.Solid, "Cl-", null, new LabelEntry("N", 10, LabelShare.Nitrate)).Problems.Select(p => p.Message));
}
