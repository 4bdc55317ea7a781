using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Components and solids as one catalogue: what everybody else reads of them.</summary>
public sealed class CatalogueTests
{
    [Fact]
    public void EveryComponentHasOneRowWithAWordAndKnownRoles()
    {
        var data = ThermoData.Load().Components;
        Assert.Equal(Components.Names, Components.All.Select(c => c.Name));
        Assert.Equal(data.Count, data.Select(c => c.Id).Distinct().Count());
        Assert.All(data, c => Assert.All(c.Roles, r => Assert.Contains(r, RowWriter.KnownRoles)));
        Assert.All(Components.All, c => Assert.False(string.IsNullOrWhiteSpace(c.Word), c.Name));
        Assert.All(Components.All, c => Assert.Equal(Components.Charge(Components.Find(c.Name)), c.Charge));
    }

    [Fact]
    public void EveryComponentButWaterIsSomethingSubstancesSetFree()
    {
        foreach (var row in Components.All.Where(c => c.Name != Component.Water))
        {
            Assert.True(SolutionComponent.TryGet(row.Name, out var known), row.Name);
            Assert.Equal(row.Charge, known.Charge);
            Assert.Equal(row.MolarMassGramsPerMole, known.Formula!.MolarMass.GramsPerMole, 0.002);
        }

        Assert.False(SolutionComponent.TryGet(Component.Water, out _));
    }

    [Fact]
    public void MetalsAndHoldersStandInTheOrderOfTheirStrength()
    {
        Assert.Equal([Component.Eddha, Component.Dtpa, Component.Edta, Component.Hedta, Component.Idha], Components.Chelators);
        Assert.Equal(
            [Component.FerricIron, Component.Copper, Component.Nickel, Component.Zinc, Component.Cobalt, Component.FerrousIron, Component.Manganese],
            Components.TraceMetals);
        Assert.Equal(Component.Citrate, Components.Holders[5]);
        Assert.Equal(10, Components.Metals.Count);
        Assert.All(Components.Holders.Concat(Components.Metals), n => Assert.NotNull(Components.Row(n)!.Rank));
    }

    /// <summary>The constants themselves know it: the agent holds iron as firmly at pH 7 as its place in the order says.</summary>
    [Theory]
    [InlineData(Component.Eddha, Component.Dtpa)]
    [InlineData(Component.Dtpa, Component.Hedta)]
    [InlineData(Component.Edta, Component.Citrate)]
    public void OfTwoHoldersTheStrongerTakesTheIron(string stronger, string weaker)
    {
        var state = EquilibriumSolver.Product.Solve(new SolutionInput
        {
            Totals = new ComponentTotals([new(Component.FerricIron, 1e-4), new(stronger, 1e-4), new(weaker, 1e-4), new(Component.Sodium, 1e-3)]),
            FixedPh = 7,
        });
        double Held(string by) => state.Species
            .Where(s => SpeciesComposition.Of(s.Name) is var parts && parts.Any(p => p.Key == Component.FerricIron) && parts.Any(p => p.Key == by))
            .Sum(s => s.MolPerKg);
        Assert.True(Held(stronger) > Held(weaker), $"{Held(stronger)} against {Held(weaker)}");
    }

    [Fact]
    public void PartnersFollowFromTheSolids()
    {
        Assert.Equal(
            [Component.Sulfate, Component.Phosphate, Component.Carbonate, Component.Boron, Component.Molybdate, Component.Silicate,
                Component.Citrate, Component.Benzoate, Component.Oxalate, Component.Pyrophosphate],
            Components.PartnersOf(Component.Calcium));
        Assert.Contains(Component.Calcium, Components.PartnersOf(Component.Sulfate));
        Assert.Empty(Components.PartnersOf(Component.Nitrate));
        Assert.Empty(Components.PartnersOf("inert:urea"));
    }

    [Fact]
    public void EverySolidThatCanBeFoundSaysWhoOwnsItAndHowItBehaves()
    {
        var judged = ConstantSet.Product.Solids.Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt).ToList();
        Assert.True(judged.Count >= 70, $"{judged.Count} solids");
        Assert.All(judged, s => Assert.True(
            s is { Owner: not null, StartsWhileMixing: not null, Redissolves: not null, Look: not null } && s.Called.Length > 0, s.Name));
        Assert.All(judged.Where(s => s.Spread > 0), s => Assert.NotNull(s.SpreadBecause));
        Assert.All(judged, s => Assert.All(s.Sources, text => Assert.NotEqual("", text)));
        Assert.All(
            ConstantSet.Product.Solids.Where(s => s.Role is SolidRole.Excluded or SolidRole.WeakConstant), s => Assert.Null(s.Owner));
    }

    /// <summary>A constant of 25 °C alone says nothing about the cold: its saturation index may not be read as advice to warm or cool.</summary>
    [Fact]
    public void WhereNothingTellsTheTemperatureTheConstantStandsStillAndTheSolidSaysSo()
    {
        var set = ConstantSet.Product;
        for (var k = 0; k < set.Solids.Count; k++)
        {
            var c = set.SolidLogK.AsSpan(6 * k, 6);
            // Of calcium citrate it is known that it stays: the same at 21 and 95 °C (Boulet & Marier 1960).
            var moves = c[1..].IndexOfAnyExcept(0.0) >= 0 || set.Solids[k].Name.StartsWith("Calcium citrate", StringComparison.Ordinal);
            Assert.True(moves == set.Solids[k].TemperatureKnown, $"{set.Solids[k].Name}: moves {moves}, known {set.Solids[k].TemperatureKnown}");
        }

        Assert.False(set.FindSolid("K-struvite")!.TemperatureKnown);
        Assert.False(set.FindSolid("Zinc EDTA sodium")!.TemperatureKnown);
        Assert.True(set.FindSolid("Newberyite")!.TemperatureKnown);
        Assert.True(set.FindSolid("Zn4(OH)6SO4")!.TemperatureKnown);
        Assert.True(set.FindSolid("Syngenite")!.TemperatureKnown);
        Assert.False(set.FindSolid("Iron EDTA sodium")!.TemperatureKnown);
        Assert.True(set.FindSolid("Ferrihydrite (amorphous)")!.TemperatureKnown);
        Assert.True(set.FindSolid("Gypsum")!.TemperatureKnown);
        Assert.True(set.FindSolid("Niter")!.TemperatureKnown);
    }
}
