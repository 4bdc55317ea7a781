using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using static RecipeLint.Rules.Tests.Figures.SummedFigures;

namespace RecipeLint.Rules.Tests.Figures;

/// <summary>What the engine gives for the solutions that explanations speak of.</summary>
internal static class SolvedFigures
{
    public static double Soluble(string solid, double celsius, Func<double, IEnumerable<(string, double)>> with)
    {
        double low = 1e-6, high = 2;
        for (var k = 0; k < 50; k++)
        {
            var middle = Math.Sqrt(low * high);
            if (Solve(celsius, null, [.. with(middle)]).SaturationIndex(solid) is <= 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    public static double Gypsum(params (string Ion, double MolPerKg)[] salt) =>
        Soluble("Gypsum", 25, m => salt.Append(("Ca+2", m)).Append(("SO4-2", m)));

    /// <summary>Share of the solubility at 25 °C that is left at 5 °C.</summary>
    public static double Handbook(string solid)
    {
        var salt = ConstantSet.Product.FindSolid(solid)!;
        return SaltVerdicts.Solubility(salt, 5)!.Value / SaltVerdicts.Solubility(salt, 25)!.Value;
    }

    /// <summary>Potassium sulfate, mol/kg, from which on syngenite is past its limit before gypsum.</summary>
    public static double ChangePoint()
    {
        double low = 0.02, high = 1;
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            var calcium = Gypsum(("K+", 2 * middle), ("SO4-2", middle));
            var state = Solve(25, null, [("K+", 2 * middle), ("SO4-2", middle + calcium), ("Ca+2", calcium)]);
            if (state.SaturationIndex("Syngenite") is <= 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>
    /// pH from which on 30 mmol/kg of a metal as its sulfate, a strong trace stock, are past the limit of a hydroxide that forms readily, 25 °C.
    /// </summary>
    public static double FirstHydroxide(string metal, int charge) =>
        FirstPh(s => s.Solid is { Role: SolidRole.FormsReadily, Owner: "metal-hydroxide" }, (metal, 0.03), ("SO4-2", 0.015 * charge));

    public static double LowestPh(string solid, params (string, double)[] totals) => FirstPh(s => s.Solid.Name == solid, totals);

    public static double FirstPh(Func<SolidIndex, bool> isMeant, params (string, double)[] totals)
    {
        double low = 0, high = 13;
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            if (Solve(25, middle, totals).Solids.Any(s => isMeant(s) && s.Index > 0))
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return low;
    }

    public static double Boussingaultite()
    {
        (string Id, double Grams)[] items = [("ammonium-sulfate", 100), ("magnesium-sulfate-7h2o", 200)];
        var mix = SolutionMix.Of(
            ComponentMoles.Sum(items.Select(x => ComponentMoles.Of(SubstanceCatalogue.BuiltIn.Substances.Single(s => s.Id == x.Id).Dissolves
                .Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * x.Grams))))),
            new Volume(1));
        return StateSolver.Solve(mix, 5).Deposit("Boussingaultite")!.Mass.GramsPerLitre;
    }

    /// <summary>log10 K in concentrations at an ionic strength of 0.1, as tables print it.</summary>
    public static double LogKWithEdta(string metal, string complex)
    {
        var state = Solve(25, 2, (metal, 1e-4), ("EDTA-4", 1e-4), ("K+", 0.1), ("NO3-", 0.1));
        return Math.Log10(state.Molality(complex) / state.Molality(metal) / state.Molality("EDTA-4"));
    }

    /// <summary>mg/L of iron(III) that fresh rust leaves dissolved at pH 5.8, 20 °C.</summary>
    public static double IronWithoutHolder()
    {
        var input = Input(20, 5.8, ("Fe+3", 1e-4), ("NO3-", 0.01), ("K+", 0.01)) with { HoldPh = true };
        var answer = Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily));
        return 55845 * (1e-4 - answer.Formed("Ferrihydrite (amorphous)") - answer.Formed("Ferrihydrite (aged)"));
    }

    /// <summary>pH at which calcium holds half the EDTA of 36 µmol/kg of Fe-EDTA in a feed with 4 mmol/kg of calcium, rust falling out.</summary>
    public static double CalciumTakesEdta()
    {
        double low = 4, high = 9;
        for (var k = 0; k < 20; k++)
        {
            var middle = (low + high) / 2;
            var input = Input(20, middle, ("Fe+3", 3.6e-5), ("EDTA-4", 3.6e-5), ("Na+", 3.6e-5), ("Ca+2", 4e-3), ("NO3-", 8e-3)) with { HoldPh = true };
            var left = Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily)).Left;
            if (left.Molality("Ca(EDTA)-2") + left.Molality("CaH(EDTA)-") < 1.8e-5)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>Share of 36 µmol/kg of Fe-IDHA that a feed with calcium and phosphate leaves on the agent, per cent.</summary>
    public static double HeldByIdha(double ph)
    {
        var input = Input(
            20, ph, ("Fe+3", 3.6e-5), ("IDHA-4", 3.6e-5), ("Na+", 3.6e-5), ("Ca+2", 4e-3), ("K+", 5e-3), ("NO3-", 11.5e-3), ("H2PO4-", 1.5e-3));
        var left = Equilibrium.Ask(input with { HoldPh = true }, MayForm.Of(SolidRole.FormsReadily)).Left;
        return 100 * (left.Molality("Fe(IDHA)-") + left.Molality("Fe(OH)(IDHA)-2") + left.Molality("Fe(OH)2(IDHA)-3")) / 3.6e-5;
    }

    public static double Uncharged(string ion, string acid, double ph) => Solve(25, ph, (ion, 1e-3), ("Na+", 1e-3)).Molality(acid) / 1e-3;

    /// <summary>4 mmol/kg of calcium nitrate, 5 of potassium nitrate and 1 of potassium dihydrogen phosphate.</summary>
    public static double RestingFeed() => Solve(25, null, ("Ca+2", 4e-3), ("K+", 6e-3), ("NO3-", 13e-3), ("H2PO4-", 1e-3)).Ph;

    /// <summary>Litres of a kilogram of water with a salt in it, 20 °C.</summary>
    public static double Litres(double molPerKg, params (string Ion, double Count)[] ions) =>
        SolutionDensity.Of(ions.ToDictionary(i => i.Ion, i => i.Count * molPerKg, StringComparer.Ordinal), 20).State!.Value.LitresPerKgWater;

    /// <summary>Litres of a kilogram of water with 100 g of Epsom salt, whose crystal water becomes water.</summary>
    public static double Epsom()
    {
        var moles = 100 / Mass("MgSO4·7H2O");
        var water = 1 + (moles * 7 * 0.018015);
        return water * Litres(moles / water, ("Mg+2", 1), ("SO4-2", 1));
    }

    /// <summary>Share of 36 µmol/kg of Fe-EDTA that a feed with calcium and phosphate leaves on the agent, per cent.</summary>
    public static double HeldByEdta(double ph)
    {
        var input = Input(
            20, ph, ("Fe+3", 3.6e-5), ("EDTA-4", 3.6e-5), ("Na+", 3.6e-5), ("Ca+2", 4e-3), ("K+", 5e-3), ("NO3-", 11.5e-3), ("H2PO4-", 1.5e-3));
        var left = Equilibrium.Ask(input with { HoldPh = true }, MayForm.Of(SolidRole.FormsReadily)).Left;
        return 100 * (left.Molality("Fe(EDTA)-") + left.Molality("Fe(OH)(EDTA)-2")) / 3.6e-5;
    }

    /// <summary>Share of dissolved iron(III) without an agent that hydroxide holds, 0 to 1.</summary>
    public static double HydrolysedIron(double ph) => 1 - (Solve(25, ph, ("Fe+3", 1e-9), ("NO3-", 1e-2), ("K+", 1e-2)).Molality("Fe+3") / 1e-9);

    /// <summary>
    /// pH from which on a hydroxide or basic salt of a trace stock of 10 mmol/kg of manganese, 3 of zinc and 0.3 of copper as sulfates is
    /// past its limit, 25 °C.
    /// </summary>
    public static double TraceHydroxide() => FirstPh(
        s => s.Solid is { Role: SolidRole.FormsReadily, Owner: "metal-hydroxide" },
        ("Mn+2", 0.01), ("Zn+2", 0.003), ("Cu+2", 0.0003), ("SO4-2", 0.0133));

    /// <summary>Charges of a mole of phosphate at pH 5.8 in a feed.</summary>
    public static double PhosphateCharge()
    {
        var state = Solve(20, 5.8, ("H2PO4-", 1.5e-3), ("K+", 6e-3), ("NO3-", 4.5e-3));
        return 1 + (state.Molality("HPO4-2") / 1.5e-3);
    }

    /// <summary>pH of so much bicarbonate, mol/kg, in balance with the carbon dioxide of the air, 20 °C.</summary>
    public static double InAir(double alkalinity) => EquilibriumSolver.Product.Solve(
        Input(20, null, ("Na+", alkalinity)) with { CarbonDioxideAtm = StateSolver.CarbonDioxideOfAirAtm }).Ph;

    /// <summary>pH of a trace stock of 10 mmol/kg of manganese and 3 of zinc with so many g/L of citric acid.</summary>
    public static double CitricPh(double grams) => Solve(
        20, null, ("Mn+2", 0.01), ("Zn+2", 0.003), ("SO4-2", 0.013), ("Citrate-3", grams / 192.12)).Ph;

    /// <summary>pH from which on calcium and phosphate of a feed in hard water are past the limit of a solid that forms readily.</summary>
    public static double HazeFrom() => FirstPh(
        s => s.Solid is { Role: SolidRole.FormsReadily, Owner: "calcium-with-phosphate" },
        ("Ca+2", 5e-3), ("K+", 5e-3), ("NO3-", 13.5e-3), ("H2PO4-", 1.5e-3));

    /// <summary>Difference of the index of a salt that counts once when ten times as much of it is dissolved.</summary>
    public static double IndexOfTenTimes()
    {
        double Index(double moles) => Solve(25, 3, ("Fe+3", moles), ("NO3-", 0.1), ("K+", 0.1)).SaturationIndex("Ferrihydrite (aged)")!.Value;
        return Index(1e-8) - Index(1e-9);
    }

    /// <summary>pH below which a solid is past its limit, 25 °C.</summary>
    public static double HighestPh(string solid, params (string, double)[] totals)
    {
        double low = 0, high = 13;
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            if (Solve(25, middle, totals).SaturationIndex(solid) is > 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    public static Equilibrium Solve(double celsius, double? ph, params (string Ion, double MolPerKg)[] totals) =>
        EquilibriumSolver.Product.Solve(Input(celsius, ph, totals));

    private static SolutionInput Input(double celsius, double? ph, params (string Ion, double MolPerKg)[] totals) => new()
    {
        Totals = new ComponentTotals(totals.GroupBy(t => t.Ion).Select(g => KeyValuePair.Create(g.Key, g.Sum(t => t.MolPerKg)))),
        Celsius = celsius,
        FixedPh = ph,
    };
}
