using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>What travels together when a recipe is divided, and what is one ingredient.</summary>
public sealed class SplitUnitTests
{
    /// <summary>"bulk: a, b" for each unit, in order.</summary>
    [Theory]
    [InlineData("potassium-nitrate 0.5 g/L, calcium-nitrate-4h2o 1 g/L", "Bulk calcium-nitrate-4h2o; Bulk potassium-nitrate")]
    [InlineData("calcium-chloride-2h2o 0.2 g/L, calcium-nitrate-4h2o 1 g/L", "Bulk calcium-nitrate-4h2o; Bulk calcium-chloride-2h2o")]
    [InlineData("magnesium-sulfate-h2o 0.5 g/L, potassium-nitrate 0.5 g/L, magnesium-sulfate-7h2o 0.2 g/L",
        "Bulk magnesium-sulfate-h2o magnesium-sulfate-7h2o; Bulk potassium-nitrate")]
    [InlineData("manganese-sulfate-h2o 2 mg/L, zinc-sulfate-7h2o 1 mg/L, potassium-nitrate 0.5 g/L",
        "Bulk potassium-nitrate; Trace manganese-sulfate-h2o zinc-sulfate-7h2o")]
    [InlineData("manganese-sulfate-h2o 50 mg/L", "Trace manganese-sulfate-h2o")]
    [InlineData("manganese-sulfate-h2o 51 mg/L", "Bulk manganese-sulfate-h2o")]
    [InlineData("potassium-chloride 10 mg/L, potassium-nitrate 11 mg/L", "Bulk potassium-nitrate; Trace potassium-chloride")]
    [InlineData("citric-acid-h2o 5 mg/L, potassium-nitrate 0.5 g/L", "Bulk citric-acid-h2o; Bulk potassium-nitrate")]
    [InlineData("fe-dtpa-hna 20 mg/L, potassium-nitrate 0.5 g/L", "Bulk potassium-nitrate; Iron fe-dtpa-hna")]
    [InlineData("ferrous-sulfate-7h2o 20 mg/L, disodium-edta-2h2o 30 mg/L, zinc-sulfate-7h2o 1 mg/L",
        "Iron ferrous-sulfate-7h2o disodium-edta-2h2o; Trace zinc-sulfate-7h2o")]
    [InlineData("disodium-edta-2h2o 30 mg/L, ferrous-sulfate-7h2o 20 mg/L, fe-dtpa-hna 10 mg/L, zinc-sulfate-7h2o 1 mg/L",
        "Iron disodium-edta-2h2o ferrous-sulfate-7h2o fe-dtpa-hna; Trace zinc-sulfate-7h2o")]
    [InlineData("fe-dtpa-hna 10 mg/L, disodium-edta-2h2o 30 mg/L, zinc-sulfate-7h2o 1 mg/L",
        "Iron fe-dtpa-hna; Trace disodium-edta-2h2o zinc-sulfate-7h2o")]
    [InlineData("fe-dtpa-hna 10 mg/L, disodium-edta-2h2o 30 mg/L", "Bulk disodium-edta-2h2o; Iron fe-dtpa-hna")]
    [InlineData("zinc-sulfate-7h2o 1 mg/L, citric-acid-h2o 20 mg/L", "Trace zinc-sulfate-7h2o citric-acid-h2o")]
    [InlineData("zinc-sulfate-7h2o 1 mg/L, potassium-sorbate 20 mg/L, tartrazine 1 mg/L", "Trace zinc-sulfate-7h2o potassium-sorbate tartrazine")]
    [InlineData("potassium-sorbate 20 mg/L, potassium-nitrate 0.5 g/L", "Bulk potassium-sorbate; Bulk potassium-nitrate")]
    [InlineData("zinc-sulfate-7h2o 1 mg/L, nitric-38 0.1 mL/L", "Bulk nitric-38; Trace zinc-sulfate-7h2o")]
    public void WhatTravelsTogetherIsOneUnit(string doses, string units) => Assert.Equal(units, Told(SplitIngredient.In(Bench.RecipeOf("100 L", Doses(doses)))));

    /// <summary>Acid goes with the traces where their stock alone held it, food and preservative where their stock held it too.</summary>
    [Theory]
    [InlineData("nitric-38 1 mL", "", "Bulk potassium-nitrate; Trace zinc-sulfate-7h2o nitric-38")]
    [InlineData("nitric-38 1 mL", "nitric-38 1 mL", "Bulk nitric-38; Bulk potassium-nitrate; Trace zinc-sulfate-7h2o")]
    [InlineData("", "nitric-38 1 mL", "Bulk potassium-nitrate; Bulk nitric-38; Trace zinc-sulfate-7h2o")]
    [InlineData("citric-acid-h2o 1 g", "citric-acid-h2o 1 g", "Bulk potassium-nitrate; Trace zinc-sulfate-7h2o citric-acid-h2o")]
    [InlineData("", "citric-acid-h2o 1 g", "Bulk potassium-nitrate; Bulk citric-acid-h2o; Trace zinc-sulfate-7h2o")]
    [InlineData("", "potassium-sorbate 1 g", "Bulk potassium-nitrate; Bulk potassium-sorbate; Trace zinc-sulfate-7h2o")]
    public void WhatKeepsTheTracesGoesWithThem(string inTraces, string inMain, string units)
    {
        var recipe = Bench.Analyse(
            [
                Bench.Stock("trace.stock.json", "1 L", [Bench.Add("zinc-sulfate-7h2o", "0.1 g"), .. Adds(inTraces), Bench.TopUp("1 L")]),
                Bench.Stock("main.stock.json", "1 L", [Bench.Add("potassium-nitrate", "50 g"), .. Adds(inMain), Bench.TopUp("1 L")]),
            ],
            Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, Bench.Dose("trace.stock.json", "1:100"), Bench.Dose("main.stock.json", "1:100"))).Recipes.Single();

        Assert.Equal(units, Told(SplitIngredient.In(recipe)));
    }

    [Theory]
    [InlineData("potassium-nitrate 0.5 g/L", true, "potassium nitrate")]
    [InlineData("calcium-nitrate-4h2o 0.5 g/L", false, "calcium nitrate tetrahydrate")]
    [InlineData("nitric-38 0.5 mL/L", false, "nitric acid 38 %")]
    [InlineData("zinc-sulfate-7h2o 1 mg/L", false, "zinc sulfate heptahydrate")]
    [InlineData("zinc-sulfate-7h2o 1 mg/L, boric-acid 2 mg/L", false, "the trace elements")]
    [InlineData("magnesium-sulfate-h2o 0.5 g/L, magnesium-sulfate-7h2o 0.2 g/L", false, "magnesium sulfate monohydrate with magnesium sulfate heptahydrate")]
    public void OneSaltWithoutCalciumCanBeDivided(string doses, bool divided, string name)
    {
        var unit = Assert.Single(SplitUnit.Of(SplitIngredient.In(Bench.RecipeOf("100 L", Doses(doses)))));

        Assert.Equal(divided, unit.CanBeDivided);
        Assert.Equal(name, unit.Name);
    }

    /// <summary>The same salt from a stock, a dose and a reagent is one ingredient; another assay is another.</summary>
    [Fact]
    public void TheSameSubstanceFromSeveralPlacesIsOneIngredient()
    {
        var recipe = Bench.Analyse(
            [
                Bench.Stock("b.stock.json", "1 L", Bench.Add("potassium-nitrate", "50 g"), Bench.Add("potassium-nitrate", "10 g", id: "more"), Bench.TopUp("1 L")),
                Bench.Stock("a.stock.json", "1 L", Bench.Add("potassium-nitrate", "5 g"), Bench.Adjust(3, "nitric-38"), Bench.TopUp("1 L")),
            ],
            Bench.Recipe(
                "100 L", FinalVolumeMeaning.MadeUp, Bench.Dose("b.stock.json", "1:100"), Bench.Dose("a.stock.json", "1:50"),
                Bench.Direct("potassium-nitrate", "20 g"), Bench.Direct("potassium-nitrate", "30 g", "90 %"), Bench.Direct("urea", "0 g"))).Recipes.Single();
        var found = SplitIngredient.In(recipe);

        Assert.Equal(["potassium-nitrate", "nitric-38", "potassium-nitrate"], found.Select(f => f.Substance.Id));
        Assert.Equal([null, null, 0.9], found.Select(f => f.Assay?.Value));
        Assert.Equal(0.6 + 0.1 + 0.2, found[0].Mass.GramsPerLitre, 9);
        Assert.Equal(0.3, found[2].Mass.GramsPerLitre, 9);
        Assert.Equal(["a", "b"], found[0].From);
        Assert.Equal(["a"], found[1].From);
        Assert.Empty(found[2].From);
        Assert.Equal(0.9 / 101.1, found[0].MolesPerLitre.GetValueOrDefault("K+"), 4);
        Assert.Equal(1000 * 0.9 * 39.1 / 101.1, found[0].MilligramsPerLitre(new Element("K")), 0);
        Assert.Equal(1000 * 0.3 * 0.9 * 39.1 / 101.1, found[2].MilligramsPerLitre(new Element("K")), 0);
        Assert.InRange(found[1].Mass.GramsPerLitre, 0.001, 0.1);
    }

    /// <summary>What the hazard gate holds of a litre at a hundred times the strength.</summary>
    [Theory]
    [InlineData("nitric-38 1 mL/L", 1.0)]
    [InlineData("potassium-nitrate 1 g/L", 1.0)]
    public void TheGateSeesWhatIsInIt(string doses, double assay)
    {
        var one = Assert.Single(SplitIngredient.In(Bench.RecipeOf("100 L", Doses(doses))));
        var held = one.HeldAt(100);

        Assert.Equal(100 * one.Mass.GramsPerLitre, held.Grams, 9);
        Assert.Equal(held.Grams * one.Substance.Strength.Value * assay, held.PureGrams, 9);
        Assert.Equal(100 * one.MolesPerLitre.Values.Sum(), held.Moles.Values.Sum(), 9);
        Assert.Equal(one.HeldAt(100).PureGrams * 0.5, (one with { Assay = new(0.5) }).HeldAt(100).PureGrams, 9);
    }

    private static string Told(IReadOnlyList<SplitIngredient> ingredients) => string.Join(
        "; ", SplitUnit.Of(ingredients).Select(u => $"{u.Kind} {string.Join(' ', u.Ingredients.Select(i => i.Substance.Id))}"));

    private static DoseEntry[] Doses(string doses) =>
        [.. doses.Split(", ").Select(d => d.Split(' ', 2)).Select(d => Bench.Direct(d[0], d[1]))];

    private static IEnumerable<Step> Adds(string adds) =>
        adds.Length == 0 ? [] : adds.Split(", ").Select(d => d.Split(' ', 2)).Select(d => Bench.Add(d[0], d[1]));
}
