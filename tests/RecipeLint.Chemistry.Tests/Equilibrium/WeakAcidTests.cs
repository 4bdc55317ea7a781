using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Lactic, malic and sulfamic acid, thiosulfate, nitrite and IDHA: what their constants come to in a solution.</summary>
public sealed class WeakAcidTests
{
    /// <summary>
    /// Mass action with the published acidity constants and activity coefficients after Davies, worked out by bisection: pKa 3.860 (lactic),
    /// 3.459 and 5.097 (malic), all at 25 °C and zero ionic strength, NIST SRD 46.
    /// </summary>
    [Theory]
    [InlineData(Component.Lactate, 0.1, new[] { 3.860 })]
    [InlineData(Component.Lactate, 0.01, new[] { 3.860 })]
    [InlineData(Component.Malate, 0.1, new[] { 3.459, 5.097 })]
    [InlineData(Component.Malate, 0.01, new[] { 3.459, 5.097 })]
    public void TheAcidAloneHasThePhOfItsPublishedConstants(string anion, double molPerKg, double[] pKa) =>
        Assert.Equal(ByHand(molPerKg, pKa), Solve(null, (anion, molPerKg)).Ph, 0.02);

    /// <summary>1 % of sulfamic acid has pH 1.18 (The Merck Index, recalled); it is a strong acid nearly.</summary>
    [Fact]
    public void OnePerCentOfSulfamicAcidHasThePhOfTheHandbook() =>
        Assert.Equal(1.18, Solve(null, (Component.Sulfamate, 10 / 97.09 / 0.99)).Ph, 0.1);

    /// <summary>At the pH of the constant half of it carries the proton, but for what activity takes: 0.1 at 0.01 mol/kg.</summary>
    [Theory]
    [InlineData(Component.Nitrite, "HNO2", 3.15)]
    [InlineData(Component.Thiosulfate, "H(S2O3)-", 1.6)]
    [InlineData(Component.Lactate, "H(Lactate)", 3.86)]
    public void HalfOfItCarriesTheProtonAtItsConstant(string anion, string acid, double pKa)
    {
        var state = Solve(pKa, (anion, 0.01), (Component.Sodium, 0.02));
        Assert.InRange(state.Molality(acid) / 0.01, 0.3, 0.6);
        Assert.True(Solve(pKa + 3, (anion, 0.01), (Component.Sodium, 0.02)).Molality(acid) < 1e-4);
    }

    /// <summary>
    /// Makers of IDHA sell its iron chelate for pH 3 to 7 (recalled). Fresh rust is no question at pH 4, begins near pH 5 and is sure at pH 8,
    /// where EDDHA still holds the iron; EDTA holds it firmer at every pH.
    /// </summary>
    [Fact]
    public void IronIsHeldByIdhaInAcidFeedsOnly()
    {
        double Rust(string agent, double ph) => Solve(
            ph, (Component.FerricIron, 4e-5), (agent, 4e-5), (Component.Nitrate, 0.01), (Component.Potassium, 0.01))
            .SaturationIndex("Ferrihydrite (amorphous)")!.Value;
        Assert.True(Rust(Component.Idha, 4) < 0);
        Assert.InRange(Rust(Component.Idha, 5), -0.5, 0.5);
        Assert.True(Rust(Component.Idha, 8) > 1);
        Assert.True(Rust(Component.Idha, 6) > Rust(Component.Edta, 6));
        Assert.True(Rust(Component.Eddha, 8) < 0);
    }

    [Fact]
    public void OfTheOtherTracesIdhaHoldsCopperFirmestAndManganeseLeast()
    {
        double Held(string metal, string complex) =>
            Solve(6, (metal, 1e-5), (Component.Idha, 2e-5), (Component.Sodium, 1e-3), (Component.Chloride, 1e-3)).Molality(complex) / 1e-5;
        var (copper, zinc, manganese) = (Held(Component.Copper, "Cu(IDHA)-2"), Held(Component.Zinc, "Zn(IDHA)-2"), Held(Component.Manganese, "Mn(IDHA)-2"));
        Assert.True(copper > 0.99, $"{copper}");
        Assert.InRange(zinc, 0.9, copper);
        Assert.InRange(manganese, 0.05, zinc);
    }

    /// <summary>Malic acid holds iron(III) in sour solutions and lets it go in neutral ones; lactic acid hardly holds it.</summary>
    [Fact]
    public void MalicAcidKeepsIronDissolvedBelowPhFive()
    {
        double Rust(string agent, double ph) => Solve(
            ph, (Component.FerricIron, 1e-3), (agent, 1e-2), (Component.Sodium, 2e-2)).SaturationIndex("Ferrihydrite (amorphous)")!.Value;
        Assert.True(Rust(Component.Malate, 4) < 0);
        Assert.True(Rust(Component.Malate, 7) > 1);
        Assert.True(Rust(Component.Lactate, 4) > Rust(Component.Malate, 4));
    }

    private static RecipeLint.Chemistry.Equilibrium.Equilibrium Solve(double? ph, params (string Name, double MolPerKg)[] totals)
    {
        var state = EquilibriumSolver.Product.Solve(new SolutionInput
        {
            Totals = new ComponentTotals(totals.Select(t => KeyValuePair.Create(t.Name, t.MolPerKg))),
            Celsius = 25,
            FixedPh = ph,
        });
        Assert.True(state.Converged, state.Failure);
        return state;
    }

    /// <summary>pH of an acid alone in water.</summary>
    private static double ByHand(double molPerKg, double[] pKa)
    {
        double low = 1, high = 7;
        for (var i = 0; i < 60; i++)
        {
            var ph = (low + high) / 2;
            if (Charge(ph, molPerKg, pKa) > 0) low = ph;
            else high = ph;
        }

        return low;
    }

    /// <summary>Hydrogen ions less the charge of the anions, mol/kg.</summary>
    private static double Charge(double ph, double molPerKg, double[] pKa)
    {
        double strength = 0, charge = 0;
        for (var round = 0; round < 40; round++)
        {
            // log10 of the activity coefficient of a single charge, Davies 1962.
            var gamma = -0.509 * ((Math.Sqrt(strength) / (1 + Math.Sqrt(strength))) - (0.3 * strength));
            var hydrogen = Math.Pow(10, -ph - gamma);
            var ratios = new double[pKa.Length + 1];
            ratios[0] = 1;
            for (var z = 1; z <= pKa.Length; z++)
            {
                ratios[z] = ratios[z - 1] * Math.Pow(10, ph - pKa[z - 1] + (gamma * (((z - 1) * (z - 1)) - (z * z))));
            }

            var share = ratios.Select(r => molPerKg * r / ratios.Sum()).ToArray();
            charge = hydrogen - share.Select((s, z) => s * z).Sum();
            strength = (hydrogen + share.Select((s, z) => s * z * z).Sum()) / 2;
        }

        return charge;
    }
}
