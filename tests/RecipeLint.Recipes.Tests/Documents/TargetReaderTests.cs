using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>Every element a target may name, on every basis: milligrams of the element.</summary>
public sealed class TargetReaderTests
{
    private static InMemoryShop Shop(string targets) => InMemoryShop.Of(
        ("r.recipe.json", $$"""{"format": 1, "final": "1 L", "doses": [{"add": "KNO3", "amount": "1 g"}], "targets": {{targets}} }"""));

    private static Target Read(string key, string value) =>
        Assert.Single(Assert.Single(Shop($$"""{"{{key}}": "{{value}}"}""").Load().Recipes).Targets);

    /// <summary>By hand from the standard atomic weights (CIAAW 2021, abridged; recalled): an element alone, its oxide, its moles and equivalents.</summary>
    [Theory]
    [InlineData("N", "100 mg/L", 100)]
    [InlineData("N", "1 mmol/L", 14.007)]
    [InlineData("NO3-N", "62.004 mg/L as NO3", 14.007)]
    [InlineData("NO3-N", "1 meq/L", 14.007)]
    [InlineData("NH4-N", "18.039 mg/L as NH4", 14.007)]
    [InlineData("P", "141.94 mg/L as P2O5", 61.948)]
    [InlineData("P", "94.97 mg/L as PO4", 30.974)]
    [InlineData("K", "94.195 mg/L as K2O", 78.196)]
    [InlineData("K", "1 meq/L", 39.098)]
    [InlineData("Ca", "56.077 mg/L as CaO", 40.078)]
    [InlineData("Ca", "2 meq/L", 40.078)]
    [InlineData("Mg", "40.304 mg/L as MgO", 24.305)]
    [InlineData("S", "80.06 mg/L as SO3", 32.06)]
    [InlineData("S", "96.06 mg/L as SO4", 32.06)]
    [InlineData("S", "2 meq/L", 32.06)]
    [InlineData("Fe", "1 mmol/L", 55.845)]
    [InlineData("Mn", "1 mmol/L", 54.938)]
    [InlineData("Zn", "1 mmol/L", 65.38)]
    [InlineData("Cu", "1 mmol/L", 63.546)]
    [InlineData("B", "69.62 mg/L as B2O3", 21.62)]
    [InlineData("Mo", "1 mmol/L", 95.95)]
    [InlineData("Si", "60.083 mg/L as SiO2", 28.085)]
    [InlineData("Cl", "1 meq/L", 35.45)]
    [InlineData("Na", "1 meq/L", 22.99)]
    [InlineData("Ni", "1 mmol/L", 58.693)]
    [InlineData("Co", "1 mmol/L", 58.933)]
    public void AnElementIsReadAsTheElement(string key, string value, double milligrams)
    {
        var target = Read(key, value);
        Assert.Equal(milligrams, target.Concentration!.Value.MilligramsPerLitre, milligrams * 2e-4);
        Assert.Equal((key, $"/targets/{key}"), (target.Key.Value, target.Place.Pointer.Value));
        Assert.Equal(PlacePart.Key, target.Key.Place.Part);
        Assert.Equal(value.Contains(" as ", StringComparison.Ordinal) ? value[(value.IndexOf(" as ", StringComparison.Ordinal) + 4)..] : null, target.Basis);
        Assert.Null(target.Number);
    }

    [Fact]
    public void TheElementItselfIsNoOtherBasis() => Assert.Null(Read("P", "10 mg/L as P").Basis);

    [Theory]
    [InlineData("{\"EC\": «\"0 mS/cm\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"EC\": «\"-1 mS/cm\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"pH\": «14.5»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"N\": «\"-1 mg/L\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("{\"Fe\": «\"1 meq/L\"»}", ProblemKind.WrongDimension)]
    [InlineData("{\"B\": «\"1 meq/L\"»}", ProblemKind.WrongDimension)]
    [InlineData("{\"K\": \"10 mg/L as «P2O5»\"}", ProblemKind.UnknownUnit)]
    public void WhatNoTargetCanBeIsReportedAndLeftOut(string targets, ProblemKind kind)
    {
        var shop = Shop(targets);
        shop.Single(kind);
        Assert.Empty(Assert.Single(shop.Load().Recipes).Targets);
    }

    [Fact]
    public void NothingOfAnElementMayBeATarget() => Assert.Equal(0, Read("Na", "0 mg/L").Concentration!.Value.MilligramsPerLitre);

    [Fact]
    public void OfATargetStatedTwiceTheLastStands()
    {
        var targets = Assert.Single(Shop("""{"N": "1 mg/L", "K": "5 mg/L", "N": "2 mg/L"}""").Load().Recipes).Targets;
        Assert.Equal(["K 5", "N 2"], targets.Select(t => $"{t.Key.Value} {Math.Round(t.Concentration!.Value.MilligramsPerLitre, 6)}").Order());
    }
}
