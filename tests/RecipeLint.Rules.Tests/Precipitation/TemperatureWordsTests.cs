using System.Text.RegularExpressions;
using RecipeLint.Rules.Precipitation;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>Of a solid of which nothing tells how it changes with temperature no coldest, warmest, warmer or colder is said.</summary>
public sealed partial class TemperatureWordsTests
{
    [Fact]
    public void NoMessageOverTheExamplesAdvisesWarmthOrColdWhereNothingIsKnown()
    {
        var looked = RuleFolder.All.SelectMany(f => f.Failing.Concat(f.Passing)).SelectMany(e => ExampleRun.Of(e).Result.Findings.Select(f => (Example: e, Finding: f)))
            .Where(x => x.Finding.Verdict is DepositVerdict { Deposit: var d } && d.Deposits.Select(s => s.Solid).DefaultIfEmpty(d.Solid).First() is { TemperatureKnown: false })
            .ToList();

        Assert.NotEmpty(looked);
        Assert.All(looked, x => Assert.False(Words().IsMatch(x.Finding.Message), $"{x.Example}: {x.Finding.Message}"));
        Assert.All(looked, x => Assert.DoesNotContain(x.Finding.Values, v => v is { Name: "clear at", Unit: "°C" }));
    }

    /// <summary>Rust forms the sooner the warmer it is: warmth is no way out of it (hydrolysis takes up heat).</summary>
    [Fact]
    public void RustIsNeverSaidToClearWhenWarm()
    {
        var result = Lint.Files(Lint.Stock("Iron", "1:200", "5..25 °C", ("ferric-chloride-6h2o", 2), ("potassium-bicarbonate", 3)));
        var rust = result.OfTheFamily().Where(f => f.Rule.Name == "metal-hydroxide").ToList();
        Assert.NotEmpty(rust);
        Assert.All(rust, f => Assert.DoesNotContain("or warmer", f.Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("double-salt", "ammonium-sulfate", 100, "magnesium-sulfate-7h2o", 200)]
    [InlineData("double-salt", "potassium-sulfate", 60, "zinc-sulfate-7h2o", 60)]
    [InlineData("double-salt", "ammonium-sulfate", 100, "copper-sulfate-5h2o", 100)]
    [InlineData("double-salt", "ammonium-sulfate", 100, "nickel-sulfate-6h2o", 40)]
    [InlineData("salt-past-its-solubility", "disodium-edta-2h2o", 186, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "fe-edta-na-3h2o", 250, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "diammonium-phosphate", 900, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "potassium-carbonate", 1100, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "tetrapotassium-pyrophosphate", 1300, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "trisodium-citrate-2h2o", 700, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "sodium-acetate-anhydrous", 500, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "zn-edta", 900, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "cu-edta", 900, "potassium-chloride", 1)]
    [InlineData("salt-past-its-solubility", "tetrasodium-edta-4h2o", 900, "potassium-chloride", 1)]
    [InlineData("chelating-acid-drops-out", "dtpa-acid", 20, "potassium-chloride", 1)]
    [InlineData("preservative-drops-out", "calcium-chloride-2h2o", 60, "sodium-benzoate", 60)]
    public void WhatHadNoSolidIsFound(string rule, string first, double firstGrams, string second, double secondGrams)
    {
        var found = Lint.Files(Lint.Stock("Strong", "1:200", "5..25 °C", (first, firstGrams), (second, secondGrams))).OfTheFamily();
        Assert.Contains(found, f => f.Rule.Name == rule && f.Level == RecipeLint.Rules.Engine.Level.Error);
    }

    /// <summary>
    /// Green vitriol with as much DTPA as holds its iron: once the air has oxidised it the iron keeps the agent dissolved, as with EDTA; without
    /// the iron the acid lies on the bottom.
    /// </summary>
    [Fact]
    public void DtpaWithIronSulfateIsJudgedOnceTheAirHasOxidisedIt()
    {
        var held = Lint.Files(Lint.Stock("Held", "1:200", "5..25 °C", ("ferrous-sulfate-7h2o", 14), ("dtpa-acid", 20))).OfTheFamily();
        Assert.DoesNotContain(held, f => f.Rule.Name == "chelating-acid-drops-out" && f.Level == RecipeLint.Rules.Engine.Level.Error);
        var bare = Lint.Files(Lint.Stock("Bare", "1:200", "5..25 °C", ("dtpa-acid", 20))).OfTheFamily();
        Assert.Contains(bare, f => f.Rule.Name == "chelating-acid-drops-out" && f.Level == RecipeLint.Rules.Engine.Level.Error);
    }

    /// <summary>Each alone stays below its limit; mixed crystals of both would be past it: never called clear.</summary>
    [Fact]
    public void MixedCrystalsOfPotassiumAndAmmoniumAreNotCalledClear()
    {
        var found = Lint.Files(Lint.Stock("Both", "1:100", "18..25 °C", ("potassium-sulfate", 64), ("ammonium-sulfate", 330))).OfTheFamily();
        Assert.Contains(found, f => f.Rule.Name == "salt-past-its-solubility");
    }

    [GeneratedRegex("coldest|warmest|warmer|colder", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
