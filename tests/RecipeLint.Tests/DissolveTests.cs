using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class DissolveTests
{
    [Fact]
    public void ATraineeSeesWhatAMixComesTo()
    {
        var answer = Cli.Run("dissolve", "2 g/L K2SO4 + 1.5 g/L MgSO4.7H2O", "--at", "5 °C", "--ph", "5.8");

        Assert.Equal(0, answer.Code);
        Assert.Empty(answer.Error);
        Assert.Contains("nothing falls out", answer.Out, StringComparison.Ordinal);
        Assert.Contains("5.80", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("xyz 4 g/L", "20 °C", "6", "'xyz'")]
    [InlineData("KNO3 5 g", "20 °C", "6", "filled up to")]
    [InlineData("KNO3 5 g/L", "warm", "6", "'warm'")]
    [InlineData("KNO3 5 g/L", "4..30 °C", "6", "one temperature")]
    [InlineData("KNO3 5 g/L", "60 °C", "6", "0 to 45 °C")]
    [InlineData("KNO3 5 g/L", "20 °C", "15", "outside 0 to 14")]
    [InlineData("KNO3 9 kg/L", "20 °C", "6", "no room")]
    [InlineData("100 g", "20 °C", "6", "'100 g' is an amount of nothing: say of what, such as \"KNO3 100 g\".")]
    [InlineData("KNO3 5 g/L, 3 g/L", "20 °C", "6", "'3 g/L' is an amount of nothing")]
    public void WhatCannotBeComputedIsOneLineAndWrongUsage(string mix, string at, string ph, string part)
    {
        var answer = Cli.Run("dissolve", mix, "--at", at, "--ph", ph);

        Assert.Equal(2, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Contains(part, answer.Error, StringComparison.Ordinal);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }

    /// <summary>However the bench writes how much it makes, it is the same mix.</summary>
    [Theory]
    [InlineData("MKP 50 g per 2 L")]
    [InlineData("50 g MKP into 2 L")]
    [InlineData("MKP 50 g, made up to 2 L")]
    [InlineData("MKP 50 g / 2 L")]
    [InlineData("MKP 50 g to 2 L")]
    public void TheVolumeMayBeSaidInOtherWords(string mix) =>
        Assert.Equal(Cli.Run("dissolve", "MKP 50 g in 2 L").Out, Cli.Run("dissolve", mix).Out);

    /// <summary>Whoever leaves the quotes away, or puts each salt into its own, means one mix.</summary>
    [Theory]
    [InlineData("KNO3", "1", "g/L", "+", "MKP", "1", "g/L")]
    [InlineData("KNO3 1 g/L", "MKP 1 g/L")]
    public void TheMixMayComeInPieces(params string[] pieces) =>
        Assert.Equal(Cli.Run("dissolve", "KNO3 1 g/L, MKP 1 g/L").Out, Cli.Run(["dissolve", .. pieces]).Out);

    /// <summary>Silicate stays dissolved in its own alkali; a pH that is set or held by acid takes the alkali away.</summary>
    [Theory]
    [InlineData("5 g/L potassium-silicate-powder", "20 °C", "--hold-ph", "6", "Amorphous silica")]
    [InlineData("5 g/L potassium-silicate-powder", "20 °C", "--ph", "6", "Amorphous silica")]
    [InlineData("5 g/L potassium-silicate-powder", "20 °C", "--hold-ph", "11", null)]
    [InlineData("100 mg/L potassium-silicate-powder", "20 °C", "--hold-ph", "6", null)]
    public void SilicateFallsOutWhereAPhThatIsSetTakesItsAlkaliAway(string mix, string at, string option, string ph, string? falls) =>
        Falls(Cli.Run("dissolve", mix, "--at", at, option, ph), falls);

    /// <summary>85 g of urea dissolve in 100 g of water at 10 °C, 119 at 25 °C (handbook, recalled): about 515 and 625 g/L.</summary>
    [Theory]
    [InlineData("600 g/L urea", "10 °C", true)]
    [InlineData("450 g/L urea", "10 °C", false)]
    [InlineData("580 g/L urea", "25 °C", false)]
    [InlineData("1300 g/L urea", "20 °C", true)]
    public void MoreUreaThanWaterHoldsIsNotCalledDissolved(string mix, string at, bool past)
    {
        var answer = Cli.Run("dissolve", mix, "--at", at);
        Assert.Equal(0, answer.Code);
        Assert.Equal(!past, answer.Out.Contains("Everything dissolves", StringComparison.Ordinal));
        Assert.DoesNotContain("Inside the range of the model", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>No enthalpy of DTPA, HEDTA and EDDHA is in the constants; those of EDTA are.</summary>
    [Theory]
    [InlineData("1 g/L fe-dtpa-hna", "5 °C", true)]
    [InlineData("1 g/L fe-dtpa-hna", "25 °C", false)]
    [InlineData("1 g/L fe-eddha-na", "40 °C", true)]
    [InlineData("1 g/L fe-edta-na-3h2o", "5 °C", false)]
    public void AChelateOfWhichNoHeatIsKnownSaysSo(string mix, string at, bool says) =>
        Assert.Equal(says, Cli.Run("dissolve", mix, "--at", at).Out.Contains("holds metals is known at 25 °C only", StringComparison.Ordinal));

    /// <summary>
    /// Solubilities of the same handbooks as in solubility.json: 1.3 to 2 times the strength falls out, 0.7 times stays. What calibrates is
    /// the solubility; that a solid is there at all, in mixtures too, is held here.
    /// </summary>
    [Theory]
    [InlineData("1000 g/L citric-acid-h2o", "10 °C", "Citric acid")]
    [InlineData("550 g/L citric-acid-h2o", "10 °C", null)]
    [InlineData("600 g/L sodium-dihydrogen-phosphate", "5 °C", "Sodium dihydrogen phosphate")]
    [InlineData("350 g/L sodium-dihydrogen-phosphate", "5 °C", null)]
    [InlineData("100 g/L NaCl + 100 g/L DAP", "5 °C", "Disodium phosphate")]
    [InlineData("10 g/L NaCl + 15 g/L DAP", "5 °C", null)]
    [InlineData("150 g/L sodium-carbonate", "5 °C", "Natron")]
    [InlineData("60 g/L sodium-carbonate", "5 °C", null)]
    [InlineData("300 g/L glycine", "20 °C", "Glycine")]
    [InlineData("150 g/L glycine", "20 °C", null)]
    [InlineData("100 g/L DAP + 150 g/L potassium-bicarbonate + 200 g/L NH4Cl", "5 °C", "Teschemacherite")]
    [InlineData("50 g/L borax-10h2o + 100 g/L calcium-nitrate-4h2o", "20 °C", "Calcium borate")]
    [InlineData("3 g/L boric-acid + 200 g/L calcium-nitrate-4h2o", "20 °C", null)]
    public void WhatPureWaterDoesNotHoldFallsOut(string mix, string at, string? falls) => Falls(Cli.Run("dissolve", mix, "--at", at), falls);

    private static void Falls(Answer answer, string? what)
    {
        Assert.Equal(0, answer.Code);
        if (what is null)
        {
            Assert.Contains("nothing falls out", answer.Out, StringComparison.Ordinal);
            return;
        }

        Assert.DoesNotContain("nothing falls out", answer.Out, StringComparison.Ordinal);
        var fallen = answer.Out[answer.Out.IndexOf("falls out", StringComparison.Ordinal)..answer.Out.IndexOf("the solution", StringComparison.Ordinal)];
        Assert.Contains(what, fallen, StringComparison.Ordinal);
    }
}
