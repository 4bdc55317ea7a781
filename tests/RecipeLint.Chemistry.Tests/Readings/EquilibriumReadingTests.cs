using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Equilibrium;
using State = RecipeLint.Chemistry.Equilibrium.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>
/// What a caller gets of the solutions of stocks.list (mol per kg of water; °C, pH, air, "hold" and inert ions besides): state, doubts,
/// sources, what falls out and how near the soluble salts are.
/// </summary>
public sealed class EquilibriumReadingTests
{
    private static readonly MayForm Everything = MayForm.WhatFormsReadily.And(MayForm.Of(SolidRole.SolubleSalt));

    [Fact]
    public void EveryStateIsSo()
    {
        var text = new StringBuilder();
        foreach (var row in Hold.List("stocks.list"))
        {
            var clear = State.Ask(Input(row), MayForm.Nothing).Clear;
            text.Append($"\n[{row}]\n");
            if (!clear.Converged)
            {
                text.Append($"{clear.Failure}; {clear.Validity.Trust}; {string.Join("; ", clear.Validity.Reasons)}\n");
                continue;
            }

            text.Append(Hold.Line(
                ("pH", Short(clear.Ph)), ("I", Short(clear.IonicStrength)), ("aw", Short(clear.WaterActivity)),
                ("uncharged", Short(clear.UnchargedMolPerKg)), ("acids", Short(clear.UnchargedAcidMolPerKg)),
                ("gap", Small(clear.ChargeGapEquivalentsPerKg) is { } gap ? Short(gap) : null), ("trust", clear.Validity.Trust)));
            foreach (var reason in clear.Validity.Reasons) text.Append("\n  ").Append(reason);
            text.Append("\n ");
            foreach (var s in clear.Species.Where(s => s.MolPerKg > 1e-6).Take(12))
                text.Append($" {s.Name} {s.Charge} {Short(s.MolPerKg)} {Short(s.LogActivity)};");
            text.Append("\n ");
            foreach (var s in clear.Solids.Where(s => s.Index > -1)) text.Append($" {s.Solid} {Short(s.Index)};");
            foreach (var name in (string[])["H2PO4-", "NH4+"]) text.Append($" {name} {Short(clear.ProtonatedShare(name))}");
            text.Append('\n');
        }

        if (Hold.IteratedIsHeldHere) Hold.As("states.txt", text);
    }

    [Fact]
    public void EveryDepositIsSo()
    {
        var text = new StringBuilder();
        foreach (var row in Hold.List("stocks.list"))
        {
            var answer = State.Ask(Input(row), Everything);
            text.Append($"\n[{row}]\n");
            if (!answer.Converged)
            {
                text.Append($"{answer.Failure} {string.Join("; ", answer.Doubts)} {string.Join("; ", answer.Sources)}\n");
                continue;
            }

            text.Append($"pH {Short(answer.Left.Ph)}, water {Short(answer.WaterKg)}, gap {Short(Small(answer.Left.ChargeGapEquivalentsPerKg) ?? 0)}: ");
            text.AppendJoin("; ", answer.Deposits.Select(d => $"{d.Solid.Name} {Short(d.MolPerKgInitialWater)}")).Append('\n');
            text.Append("left ").AppendJoin(", ", answer.Remaining.Present.Select(p => $"{p.Key} {Short(p.Value)}")).Append('\n');
            foreach (var doubt in answer.Doubts) text.Append("? ").Append(doubt).Append('\n');
            foreach (var source in answer.Sources) text.Append("  [").Append(source).Append("]\n");
            Assert.True(answer is { MassResidual: < 1e-9, ChargeResidual: < 1e-9 and > -1e-9 }, row);
            Assert.All(answer.Deposits, d => Assert.Equal(d.MolPerKgInitialWater, answer.Formed(d.Solid.Name)));
        }

        if (Hold.IteratedIsHeldHere) Hold.As("deposits.txt", text);
    }

    [Fact]
    public void EverySaltIsJudgedSo()
    {
        var text = new StringBuilder();
        foreach (var row in Hold.List("stocks.list"))
        {
            var input = Input(row);
            var solver = EquilibriumSolver.Product;
            var settled = solver.Precipitate(input, SolidRole.SolubleSalt);
            if (!settled.Initial.Converged) continue;
            text.Append($"\n[{row}]\n");
            foreach (var v in SaltVerdicts.Of(input, settled.Initial, settled)) Write(text, v);
            if (!settled.Converged) continue;
            foreach (var v in SaltVerdicts.Of(input with { Totals = settled.Remaining }, settled.Final, input.Totals).Where(v => v.State != SaltState.Clear))
                Write(text.Append("left: "), v);
        }

        if (Hold.IteratedIsHeldHere) Hold.As("salts.txt", text);
    }

    [Fact]
    public void EverySolidIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var s in ConstantSet.Product.Solids)
        {
            text.Append($"\n{s.Name}: {s.Formula}, {s.Called}\n").Append(Hold.Line(
                ("role", s.Role), ("g/mol", s.MolarMassGramsPerMole), ("owner", s.Owner), ("spread", s.Spread > 0 ? s.Spread : null),
                ("starts in storage", s.StartsInStorage > 0 ? s.StartsInStorage : null), ("while mixing", s.StartsWhileMixing),
                ("redissolves slowly", s.Redissolves?.Slowly), ("look", s.Look), ("temperature known", s.TemperatureKnown)));
            text.Append($"\nmade of {string.Join(", ", s.Composition.Select(c => $"{c.Key} {Hold.Number(c.Value)}"))}");
            foreach (var t in (double[])[0, 7, 25, 33, 45])
                if (SaltVerdicts.Solubility(s, t) is { } m) text.Append($"; {t} °C {Hold.Number(m)}");
            text.Append($"; {s.Sources.Count()} sources\n");
            Assert.All(s.Sources, source => Assert.NotEmpty(source));
        }

        Hold.As("solids.txt", text);
    }

    [Fact]
    public void EveryComponentAndSpeciesIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var c in Components.All)
        {
            text.Append($"{c.Name}: {c.Word} {c.Formula} {c.Charge} {c.FeedCharge} {Hold.Number(c.MolarMassGramsPerMole)} {c.Roles} {c.Rank} {c.Nitrogen}; ");
            text.Append($"changes {ConstantSet.Product.ChangesWithTemperature(c.Name)}; with {string.Join(", ", Components.PartnersOf(c.Name))}\n");
        }

        foreach (var (name, list) in (ReadOnlySpan<(string, IReadOnlyList<string>)>)
            [("metals", Components.Metals), ("traces", Components.TraceMetals), ("chelators", Components.Chelators), ("holders", Components.Holders),
            ("preservatives", Components.Preservatives)])
            text.Append($"{name}: {string.Join(", ", list)}\n");
        foreach (var species in ThermoTables.SpeciesNames)
        {
            text.Append($"{species}: {string.Join(", ", SpeciesComposition.Of(species).Select(p => $"{p.Key} {Hold.Number(p.Value)}"))}; ");
            text.Append($"doubt {Hold.Number(FormationDoubt.Of(species))}\n");
            Assert.NotEmpty(SpeciesComposition.SourceOf(species)!);
        }

        Hold.As("species.txt", text);
    }

    [Fact]
    public void WhatIsNoComponentHasNothing()
    {
        Assert.False(ConstantSet.Product.ChangesWithTemperature("inert:I-1"));
        Assert.Equal(0, FormationDoubt.Of("Ca+2"));
        Assert.Null(SpeciesComposition.SourceOf("Ca+2"));
        Assert.Contains(SpeciesComposition.SourceOf("Ca(EDTA)-2"), ThermoTables.SpeciesSources);
        Assert.Empty(SpeciesComposition.Of("inert:I-1"));
        Assert.Equal([KeyValuePair.Create("Ca+2", 1.0)], SpeciesComposition.Of("Ca+2"));
        Assert.Empty(Components.PartnersOf("inert:I-1"));
        Assert.Null(Components.Row("inert:I-1"));
        Assert.Equal(("calcium", "urea"), (Components.Word("Ca+2"), Components.Word("urea")));
        Assert.True(Components.Row("Ca+2")!.Is(ComponentRoles.None) is false && Components.Row("Fe+3")!.Is(ComponentRoles.Metal | ComponentRoles.Food));
        Assert.Null(ConstantSet.Product.FindSolid("Cheese"));
    }

    /// <summary>Constants of a set moved by what was asked, and no others.</summary>
    [Fact]
    public void ConstantsAreMovedOneByOne()
    {
        var set = ConstantSet.Product;
        Assert.Same(set, set.ShiftSolid("Cheese", 1));
        var moved = set.ShiftSolid("Gypsum", 0.5);
        var place = set.PlaceOf(set.FindSolid("Gypsum")!);
        Assert.Equal("product, Gypsum shifted", moved.Name);
        for (var i = 0; i < set.SolidLogK.Length; i++)
            Assert.Equal(set.SolidLogK[i] + (i == 6 * place ? 0.5 : 0), moved.SolidLogK[i]);
        Assert.Equal(set.SpeciesLogK, moved.SpeciesLogK);
        var complexes = set.ShiftComplexes("Fe+3", "EDTA-4", 2);
        Assert.Equal("product, Fe+3 with EDTA-4 shifted", complexes.Name);
        for (var i = 0; i < set.SpeciesLogK.Length; i++)
        {
            var name = ThermoTables.SpeciesNames[i / 6];
            var parts = SpeciesComposition.Of(name).Select(p => p.Key).Except(["H+", "H2O"]).Order(StringComparer.Ordinal).ToArray();
            var by = i % 6 == 0 && parts is ["EDTA-4", "Fe+3"] ? 2 * FormationDoubt.Of(name) : 0;
            Assert.Equal(set.SpeciesLogK[i] + by, complexes.SpeciesLogK[i]);
        }

        Assert.Equal(set.SolidLogK, complexes.SolidLogK);
        Assert.Equal("product, silica in its alkali", ConstantSet.InSilicateAlkali.Name);
        for (var i = 0; i < set.Solids.Count; i++) Assert.Equal(i, set.PlaceOf(set.Solids[i]));
        for (var i = 0; i < ConstantSet.ReferenceExtended.Solids.Count; i++)
            Assert.Equal(i, ConstantSet.ReferenceExtended.PlaceOf(ConstantSet.ReferenceExtended.Solids[i]));
        Assert.Equal(-1, set.PlaceOf(ConstantSet.ReferencePlain.Solids[0]));
    }

    [Fact]
    public void SolidsOfAnotherSetAreRefused()
    {
        var input = Input("K+ 0.1, Cl- 0.1");
        var foreign = ConstantSet.ReferencePlain.Solids[0];
        Assert.Equal(
            $"{foreign.Name} is not a solid of the constant set 'product'.", EquilibriumSolver.Product.Precipitate(input, [foreign]).Failure);
    }

    [Fact]
    public void SolidsAreChosen()
    {
        var gypsum = ConstantSet.Product.FindSolid("Gypsum")!;
        var calcite = ConstantSet.Product.FindSolid("Calcite")!;
        Assert.Equal((true, false), (MayForm.Only([gypsum]).Allows(gypsum), MayForm.Only([gypsum]).Allows(calcite)));
        Assert.Equal((false, true), (MayForm.Where(s => s.Name != "Gypsum").Allows(gypsum), MayForm.Where(s => s.Name != "Gypsum").Allows(calcite)));
        Assert.Equal((true, true), (MayForm.Only([gypsum]).And(MayForm.Only([calcite])).Allows(gypsum), MayForm.Only([gypsum]).And(MayForm.Only([calcite])).Allows(calcite)));
        Assert.False(MayForm.Nothing.Allows(gypsum));
    }

    /// <summary>Between the points of the table a straight line, beyond its last the slope of its end; twice as much nitrate holds twice as much.</summary>
    [Theory]
    [InlineData(0, 0, 670)]
    [InlineData(5, 0, 760)]
    [InlineData(10, 0, 850)]
    [InlineData(35, 0, 1505)]
    [InlineData(45, 0, 1835)]
    [InlineData(0, 5, 670 * (1 + (5 * 3.18 / 55.508)))]
    [InlineData(40, 10, 1670 * (1 + (10 * 1.18 / 55.508)))]
    public void UreaDissolvesSo(double celsius, double nitrate, double grams)
    {
        var totals = new ComponentTotals([new("NH4+", nitrate), new("NO3-", nitrate + 1)]);
        var holds = UreaSolubility.MolPerKg(celsius, totals);
        Assert.Equal(grams / 60.056, holds, 1e-4 * holds);
        bool Passed(double urea)
        {
            var input = new SolutionInput { Totals = totals, Celsius = celsius, FixedPh = 6, InertIons = [new("urea", 0, urea)] };
            return UreaSolubility.IsPassed(EquilibriumSolver.Product.Solve(input), totals);
        }

        Assert.Equal((false, true), (Passed(holds * 0.999), Passed(holds * 1.001)));
    }

    private static void Write(StringBuilder text, SaltVerdict v)
    {
        // What lies there is saturated: on which side the iteration left the last digits says nothing.
        if (Math.Abs(v.Index) < 1e-9)
        {
            text.Append($"{v.Solid}: saturated\n");
            return;
        }

        text.Append($"{v.Solid}: {v.State}{(v.IsSure ? ", sure" : "")}; ").Append(Hold.Line(
            ("index", Short(v.Index)), ("calibrated", v.CalibratedIndex is { } c ? Short(c) : null), ("product", v.ProductIndex is { } p ? Short(p) : null),
            ("share", Short(v.CalibratedShare)), ("held", v.LogHeld == 0 ? null : Short(v.LogHeld)), ("close from", Short(v.CloseFrom)),
            ("by either", Short(v.CloseByEither)), ("handbook", Short(v.HandbookMolPerKg))));
        if (v.Mixed is { } m) text.Append($"; mixed with {m.With} {Short(m.IndexAlone)} {Short(m.IndexOfKin)} {Short(m.Index)} {Short(m.MostGramsPerKg)} g");
        text.Append('\n');
    }

    /// <summary>Five digits: what the iteration leaves of the last ones differs from one beginning to the next.</summary>
    private static string Short(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    private static double? Small(double gap) => Math.Abs(gap) < 1e-9 ? null : gap;

    internal static SolutionInput Input(string row)
    {
        var totals = new List<KeyValuePair<string, double>>();
        var inert = new List<InertIon>();
        var input = new SolutionInput { Totals = new ComponentTotals() };
        foreach (var part in row.Split(", ").Select(p => p.Split(' ')))
        {
            double Number(int i) => double.Parse(part[i], CultureInfo.InvariantCulture);
            switch (part[0])
            {
                case "°C": input = input with { Celsius = Number(1) }; break;
                case "pH": input = input with { FixedPh = Number(1) }; break;
                case "air": input = input with { CarbonDioxideAtm = Number(1) }; break;
                case "hold": input = input with { HoldPh = true }; break;
                case "inert": inert.Add(new InertIon(part[1], (int)Number(2), Number(3))); break;
                case "nothing": break;
                default: totals.Add(KeyValuePair.Create(part[0], Number(1))); break;
            }
        }

        return input with { Totals = new ComponentTotals(totals), InertIons = inert };
    }
}
