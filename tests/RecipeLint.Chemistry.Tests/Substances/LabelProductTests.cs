using CsCheck;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

public sealed class LabelProductTests
{
    /// <summary>What a plain lignosulfonate brings of its cation is the charge that one on a label is taken to hold metals by.</summary>
    [Theory]
    [InlineData("sodium-lignosulfonate", "Na+", 1)]
    [InlineData("calcium-lignosulfonate", "Ca+2", 2)]
    [InlineData("magnesium-lignosulfonate", "Mg+2", 2)]
    [InlineData("ammonium-lignosulfonate", "NH4+", 1)]
    public void APlainLignosulfonateHasTheChargeOfALabelledOne(string id, string cation, int charge)
    {
        var substance = SubstanceCatalogue.BuiltIn.ById(id)!;

        Assert.Equal(HeldByCharge.EquivalentsPerGram("lignosulfonate")!.Value, charge * Moles(substance, cation), 0.02e-3);
        Assert.True(substance.FeedsMicrobes);
    }

    [Fact]
    public void CalciumNitrateFertiliserFollowsItsLabel()
    {
        // 15.5 % N (14.4 nitrate, 1.1 ammonium), 19 % Ca: the usual label of the greenhouse grade (common practice, no source).
        var substance = SubstanceCatalogue.BuiltIn.ById("calcium-nitrate-fertiliser")!;

        Assert.Equal(0.155, substance.Content[Element.N], 1e-12);
        Assert.Equal(0.144, substance.Content[NitrogenForm.Nitrate], 1e-12);
        Assert.Equal(0.011, substance.Content[NitrogenForm.Ammonium], 1e-12);
        Assert.Equal(0.19, substance.Content[Element.Ca], 1e-12);
        Assert.Equal(0.19 / 40.078, Moles(substance, "Ca+2"), 1e-12);
        Assert.Equal(0.144 / 14.007, Moles(substance, "NO3-"), 1e-12);
        Assert.Contains("0.13 %", substance.Assumption, StringComparison.Ordinal);
        Assert.Equal(0, SolutionComponent.NetChargePerGram(substance.Dissolves), 1e-15);
    }

    [Fact]
    public void OxidesBecomeElements()
    {
        // MKP as its label 0-52-34: the pure salt is 52.15 % P2O5 and 34.61 % K2O (arithmetic from the CIAAW weights).
        var result = Build([new("P2O5", 52.15), new("K2O", 34.61)]);

        Assert.Empty(result.Problems);
        var pure = SubstanceCatalogue.BuiltIn.ById("monopotassium-phosphate")!;
        Assert.Equal(pure.Content[Element.P], result.Substance!.Content[Element.P], 2e-5);
        Assert.Equal(pure.Content[Element.K], result.Substance.Content[Element.K], 2e-5);
        Assert.Equal(Moles(pure, "H2PO4-"), Moles(result.Substance, "H2PO4-"), 1e-6);
    }

    [Fact]
    public void VolumePerCentNeedsAndUsesTheDensity()
    {
        var label = Label([new("K2O", 10)]) with { Percent = LabelPercent.WeightPerVolume };
        Assert.Equal(LabelProblemKind.MissingDensity, Assert.Single(LabelProduct.Build(label).Problems).Kind);
        Assert.Null(LabelProduct.Build(label).Substance);

        var dense = label with { Density = new(new Density(1.25), "bottle", Confidence.Found) };
        Assert.Equal(0.08 * 78.196 / 94.195, LabelProduct.Build(dense).Substance!.Content[Element.K], 1e-9);
    }

    /// <summary>
    /// 12-0-0-26S is 60 % of (NH4)2S2O3: as sulfate its sulfur asked for twice the ammonium there is, and a mix with calcium for gypsum.
    /// </summary>
    [Theory]
    [InlineData("Ammonium thiosulfate 12-0-0-26S", true)]
    [InlineData("ammonium thiosulphate", true)]
    [InlineData("Ammonium sulfate with thiosulfate", false)]
    [InlineData("Ammonium sulfate", false)]
    public void SulfurOfAThiosulfateIsNoSulfate(string name, bool thiosulfate)
    {
        var result = LabelProduct.Build(Label([new("N", 12, LabelShare.Ammonium), new("S", 26)]) with { Name = name });
        Assert.Equal(thiosulfate ? 0.26 / 32.06 / 2 : 0, Moles(result.Substance!, "S2O3-2"), 1e-6);
        Assert.Equal(thiosulfate ? 0 : 0.26 / 32.06, Moles(result.Substance!, "SO4-2"), 1e-6);
        Assert.All(result.Substance!.Dissolves, d => Assert.NotEqual(0, d.MolesPerGram));
        Assert.Equal(thiosulfate, result.Substance!.Assumption?.Contains("thiosulfate", StringComparison.Ordinal) == true);
    }

    [Theory]
    [InlineData("EDDHMA")]
    [InlineData("EDDHSA")]
    [InlineData("EDDCHA")]
    public void AnAgentBuiltLikeEddhaIsTakenAsItAndSaysSo(string agent)
    {
        var result = LabelProduct.Build(Label([new("Fe", 6), new("Fe", 6, LabelShare.Chelated)]) with { Agent = agent });
        Assert.Empty(result.Problems);
        Assert.Equal(0.06 / 55.845, Moles(result.Substance!, "EDDHA-4"), 1e-12);
        Assert.Contains(agent + " is taken as EDDHA", result.Substance!.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void AWeakAgentWithoutConstantsIsNamedAsTheDoubt()
    {
        var result = LabelProduct.Build(Label([new("Fe", 6), new("Fe", 6, LabelShare.Chelated)]) with { Agent = "heptagluconate" });
        Assert.Empty(result.Problems);
        Assert.Contains("Of heptagluconate no constants are known here", result.Substance!.Assumption, StringComparison.Ordinal);
        Assert.Contains("pH 7", result.Substance.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void IdhaHasConstantsAndComesAlong()
    {
        var substance = SubstanceCatalogue.BuiltIn.ById("fe-idha-9")!;

        Assert.Equal(0.09 / 55.845, Moles(substance, "Fe+3"), 1e-12);
        Assert.Equal(Moles(substance, "Fe+3"), Moles(substance, "IDHA-4"), 1e-15);
        Assert.Equal(Moles(substance, "Fe+3"), Moles(substance, "Na+"), 1e-12);
    }

    /// <summary>
    /// 8 % of zinc are 2.447 meq in a gram; the 0.92 g beside it hold 1.84 at 2 meq/g, three quarters. 2 % it holds whole.
    /// </summary>
    [Theory]
    [InlineData(8, 0.92 * 2 / (2000 * 0.08 / 65.38))]
    [InlineData(2, 1)]
    public void LignosulfonateHoldsWhatItsChargeReaches(double percent, double share)
    {
        var zinc = LabelProduct.Build(Label([new("Zn", percent), new("Zn", percent, LabelShare.Chelated)]) with { Agent = "lignosulfonate" }).Substance!;
        var all = percent / 100 / 65.38;
        Assert.Equal(share * all, Moles(zinc, "inert:Zn-complex"), 1e-9);
        Assert.Equal((1 - share) * all, Moles(zinc, "Zn+2"), 1e-9);
        Assert.Contains("Lignosulfonate is taken to hold metals by its charge, 2 meq in a gram of it (an estimate)", zinc.Assumption, StringComparison.Ordinal);
        Assert.Contains("no constants are known here", zinc.Assumption, StringComparison.Ordinal);
    }

    /// <summary>In the plural or as a complex it was taken to hold everything, and nothing was said of its charge.</summary>
    [Theory]
    [InlineData("lignosulfonates")]
    [InlineData("Lignosulfonate complex")]
    [InlineData("lignosulfonate-chelate")]
    public void AnAgentThatHoldsByItsChargeIsReadAsLabelsWriteIt(string agent)
    {
        LabelEntry[] entries = [new("Zn", 8), new("Zn", 8, LabelShare.Chelated)];
        var plain = LabelProduct.Build(Label(entries) with { Agent = "lignosulfonate" }).Substance!;
        var written = LabelProduct.Build(Label(entries) with { Agent = agent }).Substance!;
        Assert.Equal(Moles(plain, "inert:Zn-complex"), Moles(written, "inert:Zn-complex"));
        Assert.Contains("lignosulfonate is taken to hold metals by its charge", written.Assumption, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void ChelatedIronBringsItsAgentAndSodium()
    {
        var substance = SubstanceCatalogue.BuiltIn.ById("fe-dtpa-liquid-6")!;

        Assert.Equal(0.06 / 55.845, Moles(substance, "Fe+3"), 1e-12);
        Assert.Equal(Moles(substance, "Fe+3"), Moles(substance, "DTPA-5"), 1e-15);
        Assert.Equal(2 * Moles(substance, "Fe+3"), Moles(substance, "Na+"), 1e-12);
        Assert.Equal("DTPA", substance.Iron!.Agent);
        Assert.Equal(0, substance.Content[Element.Na]);
        Assert.Contains("sodium", substance.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void TotalChelatedAndOrthoOrthoIronAreKeptApart()
    {
        var result = LabelProduct.Build(Label([new("Fe", 6), new("Fe", 5.5, LabelShare.Chelated), new("Fe", 4.8, LabelShare.OrthoOrtho)]) with { Agent = "EDDHA" });

        Assert.Empty(result.Problems);
        var iron = result.Substance!.Iron!;
        Assert.Equal((6.0, 5.5, 4.8), (iron.Total.Percent, iron.Chelated!.Value.Percent, iron.OrthoOrtho!.Value.Percent));
        Assert.Equal(0.055 / 55.845, Moles(result.Substance, "EDDHA-4"), 1e-12);
        Assert.Equal(0.055 / 55.845, Moles(result.Substance, "Fe+3"), 1e-12);
        Assert.Equal(0.005 / 55.845, Moles(result.Substance, "Fe+2"), 1e-12);
    }

    [Fact]
    public void ABagOfPremixedFertiliserClosesWithSulfateAndSaysSo()
    {
        // An invented 15-5-30 bag with micronutrients.
        var result = LabelProduct.Build(Label(
        [
            new("N", 15), new("N", 9, LabelShare.Nitrate), new("N", 2, LabelShare.Ammonium), new("N", 4, LabelShare.Urea),
            new("P2O5", 5), new("K2O", 30), new("MgO", 2), new("Fe", 0.1, LabelShare.Chelated), new("B", 0.02), new("Mo", 0.002),
        ]) with
        { Agent = "EDTA" });

        Assert.Empty(result.Problems);
        var substance = result.Substance!;
        Assert.Contains("sulfate", substance.Assumption, StringComparison.Ordinal);
        Assert.Equal(0, substance.Content[Element.S]);
        Assert.True(Moles(substance, "SO4-2") > 0);
        Assert.Equal(0.04 / 14.007 / 2, Moles(substance, "inert:urea"), 1e-12);
        Assert.Equal(0, SolutionComponent.NetChargePerGram(substance.Dissolves), 1e-15);
    }

    [Fact]
    public void NitrogenWithoutAFormIsTakenAsNitrateFirst()
    {
        var result = Build([new("N", 13.85), new("K2O", 46.6)]);
        var nitrate = result.Substance!;

        Assert.Contains("which form", nitrate.Assumption, StringComparison.Ordinal);
        Assert.True(nitrate.Content[NitrogenForm.Nitrate] > 0.138);
        Assert.Equal(nitrate.Content[Element.N], nitrate.Content[NitrogenForm.Nitrate] + nitrate.Content[NitrogenForm.Ammonium], 1e-12);
    }

    /// <summary>Ordinary bags whose labels state nitrogen as one figure: what the salts of the trade would be, in per cent N.</summary>
    [Theory]
    [InlineData(20, 20, 20, 0, 0, 5.95, 3.95, 10.1)]
    [InlineData(30, 10, 10, 0, 0, 2.97, 1.97, 25.05)]
    [InlineData(28, 14, 14, 0, 0, 4.16, 2.76, 21.07)]
    [InlineData(12, 61, 0, 0, 0, 0, 12, 0)]
    [InlineData(46, 0, 0, 0, 0, 0, 0, 46)]
    [InlineData(21, 0, 0, 0, 60, 0, 21, 0)]
    [InlineData(13, 0, 45, 0, 0, 13, 0, 0)]
    [InlineData(15.5, 0, 0, 26.5, 0, 14.4, 1.1, 0)]
    [InlineData(34, 0, 0, 0, 0, 17, 17, 0)]
    [InlineData(82, 0, 0, 0, 0, 0, 82, 0)]
    public void UntoldNitrogenIsWhatTheSaltsOfTheTradeBring(
        double n, double p2o5, double k2o, double cao, double so3, double nitrate, double ammonium, double urea)
    {
        var lines = new LabelEntry[] { new("N", n), new("P2O5", p2o5), new("K2O", k2o), new("CaO", cao), new("SO3", so3) };
        var result = Build([.. lines.Where(l => l.Percent > 0)]);

        Assert.Empty(result.Problems);
        var content = result.Substance!.Content;
        Assert.Equal(nitrate, 100 * content[NitrogenForm.Nitrate], 0.06);
        Assert.Equal(ammonium, 100 * content[NitrogenForm.Ammonium], 0.06);
        Assert.Equal(urea, 100 * content[NitrogenForm.Urea], 0.06);
        Assert.Equal(content[NitrogenForm.Urea] / 14.007 / 2, Moles(result.Substance, "inert:urea"), 1e-12);
        Assert.Contains("write its forms", result.Substance.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void ABagFullOfSaltsAndTracesIsPossible()
    {
        var result = LabelProduct.Build(Label(
        [
            new("N", 20), new("P2O5", 20), new("K2O", 20), new("Fe", 0.1, LabelShare.Chelated), new("Mn", 0.05, LabelShare.Chelated),
            new("Zn", 0.05, LabelShare.Chelated), new("Cu", 0.05, LabelShare.Chelated), new("B", 0.02), new("Mo", 0.0005),
        ]) with
        { Agent = "EDTA" });
        Assert.Empty(result.Problems);
    }

    [Theory]
    [InlineData("K2O", 60)]
    [InlineData("K2O", 68)]
    [InlineData("MgO", 96)]
    [InlineData("CaO", 95)]
    public void AnIonThatIsOnlyAssumedMakesNoBagImpossible(string form, double percent) => Assert.Empty(Build([new(form, percent)]).Problems);

    [Theory]
    [InlineData(27, 27, 27)]
    [InlineData(47.5, 0, 0)]
    [InlineData(40, 20, 20)]
    public void WhatNoFormOfNitrogenMakesPossibleStaysImpossible(double n, double p2o5, double k2o)
    {
        var lines = new LabelEntry[] { new("N", n), new("P2O5", p2o5), new("K2O", k2o) };
        Assert.Equal(LabelProblemKind.Over100AsSalts, Assert.Single(Build([.. lines.Where(l => l.Percent > 0)]).Problems).Kind);
    }

    [Theory]
    [InlineData("EDTA and DTPA", "EDTA-4", "weakest of them, EDTA")]
    [InlineData("EDDHA, EDTA", "EDTA-4", "weakest of them, EDTA")]
    [InlineData("DTPA/HEDTA", "HEDTA-3", "weakest of them, HEDTA")]
    [InlineData("EDDHA + EDDHSA", "EDDHA-4", "built alike")]
    [InlineData("amino acids", "Glycinate-", "taken as glycine")]
    [InlineData("Amino acid chelate", "Glycinate-", "taken as glycine")]
    [InlineData("dtpa", "DTPA-5", null)]
    public void AgentsAreReadAsLabelsWriteThem(string agent, string component, string? said)
    {
        var result = LabelProduct.Build(Label([new("Fe", 1), new("Fe", 1, LabelShare.Chelated)]) with { Agent = agent });
        Assert.Empty(result.Problems);
        Assert.Equal(0.01 / 55.845, Moles(result.Substance!, component), 1e-12);
        if (said is not null)
        {
            Assert.Contains(said, result.Substance!.Assumption, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AnAgentNobodyKnowsInAMixtureIsNamed()
    {
        var result = LabelProduct.Build(Label([new("Fe", 1, LabelShare.Chelated)]) with { Agent = "EDTA and wonderbind" });
        Assert.Contains("'wonderbind'", Assert.Single(result.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheDeclaredCounterIonIsUsed()
    {
        var chloride = LabelProduct.Build(Label([new("K2O", 20)]) with { CounterIon = "Cl-" });
        Assert.Equal(Moles(chloride.Substance!, "K+"), Moles(chloride.Substance!, "Cl-"), 1e-15);
        Assert.Empty(chloride.Problems);

        var wrong = LabelProduct.Build(Label([new("K2O", 20)]) with { CounterIon = "Na+" });
        Assert.Equal(LabelProblemKind.BadCounterIon, Assert.Single(wrong.Problems).Kind);
        Assert.Equal(0, SolutionComponent.NetChargePerGram(wrong.Substance!.Dissolves), 1e-15);
    }

    [Fact]
    public void WrongLabelsAreToldWhatIsWrong()
    {
        AssertProblem(LabelProblemKind.UnknownForm, new("K20", 10), new("P2O5", 5));
        AssertProblem(LabelProblemKind.BadPercent, new("K2O", -1), new("P2O5", 5));
        AssertProblem(LabelProblemKind.BadPercent, new("K2O", 140), new("P2O5", 5));
        AssertProblem(LabelProblemKind.BadPercent, new("K2O", double.NaN), new("P2O5", 5));
        AssertProblem(LabelProblemKind.Contradiction, new("P2O5", 20), new("P", 20), new("K2O", 20));
        AssertProblem(LabelProblemKind.NitrogenForms, new("N", 15), new("N", 9, LabelShare.Nitrate), new("N", 2, LabelShare.Ammonium));
        AssertProblem(LabelProblemKind.MisplacedShare, new("K", 15, LabelShare.Nitrate), new("P2O5", 5));
        AssertProblem(LabelProblemKind.MisplacedShare, new("N", 5, LabelShare.Chelated), new("P2O5", 5));
        AssertProblem(LabelProblemKind.ShareOverTotal, new("Fe", 5), new("Fe", 6, LabelShare.Chelated));
        AssertProblem(LabelProblemKind.UnknownAgent, new LabelEntry("Fe", 6, LabelShare.Chelated));

        // K2O and N of potassium nitrate cannot both be this high: 60 % K2O alone is 128 g of KNO3 in 100 g.
        AssertProblem(LabelProblemKind.Over100AsSalts, new("K2O", 60), new("N", 17.8, LabelShare.Nitrate));
        Assert.Null(Build([]).Substance);
        Assert.Equal(LabelProblemKind.Empty, Assert.Single(Build([]).Problems).Kind);
    }

    [Theory]
    [InlineData("potassium-nitrate")]
    [InlineData("monoammonium-phosphate")]
    [InlineData("ammonium-sulfate")]
    [InlineData("urea")]
    [InlineData("boric-acid")]
    [InlineData("potassium-silicate-powder")]
    [InlineData("magnesium-sulfate-anhydrous")]
    public void RealSaltsWrittenAsLabelsDoNotExceed100PerCent(string id)
    {
        var salt = SubstanceCatalogue.BuiltIn.ById(id)!;
        var entries = salt.Content.Elements
            .Where(e => e.Symbol is not ("O" or "H" or "C" or "N"))
            .Select(e => new LabelEntry(e.Symbol, 100 * salt.Content[e]))
            .Concat(new (NitrogenForm Form, LabelShare Share)[] { (NitrogenForm.Nitrate, LabelShare.Nitrate), (NitrogenForm.Ammonium, LabelShare.Ammonium), (NitrogenForm.Urea, LabelShare.Urea) }
                .Where(n => salt.Content[n.Form] > 0)
                .Select(n => new LabelEntry("N", 100 * salt.Content[n.Form], n.Share)));
        Assert.Empty(Build([.. entries]).Problems);
    }

    [Fact]
    public void WhateverTheLabelSaysTheChargeCloses()
    {
        var forms = OxideBasis.Forms.Concat(["N", "P", "K", "Ca", "Mg", "S", "Cl", "Na", "Fe", "Mn", "Zn", "Cu", "B", "Mo", "Si", "I", "Se"]).ToArray();
        var entry = Gen.Select(Gen.Int[0, forms.Length - 1], Gen.Double[0, 20], Gen.Enum<LabelShare>()).Select((f, p, s) => new LabelEntry(forms[f], p, s));
        var agents = new string?[] { null, "EDTA", "DTPA", "HEDTA", "EDDHA", "citrate", "gluconate", "HBED", "something" };
        Gen.Select(entry.Array[1, 8], Gen.Int[0, agents.Length - 1], Gen.Enum<PhysicalForm>()).Sample((entries, agent, form) =>
        {
            var result = LabelProduct.Build(Label(entries) with { Agent = agents[agent], Form = form });
            if (result.Substance is { } substance)
            {
                Assert.Equal(0, SolutionComponent.NetChargePerGram(substance.Dissolves), 1e-12);
                Assert.All(substance.Dissolves, d => Assert.True(double.IsFinite(d.MolesPerGram) && (d.MolesPerGram > 0 || d.Component == "H+")));
                Assert.Equal(entries.Length > 0 && substance.Dissolves.Any(d => d.Component is "inert:cation+1" or "inert:anion-1"), substance.Assumption?.Contains("rounding", StringComparison.Ordinal) ?? false);
            }
            else
            {
                Assert.NotEmpty(result.Problems);
            }
        });
    }

    private static void AssertProblem(LabelProblemKind kind, params LabelEntry[] entries) =>
        Assert.Contains(Build(entries).Problems, p => p.Kind == kind && p.Message.Length > 10);

    private static LabelDeclaration Label(IReadOnlyList<LabelEntry> entries) => new() { Id = "test", Name = "test", Entries = entries };

    private static LabelResult Build(IReadOnlyList<LabelEntry> entries) => LabelProduct.Build(Label(entries));

    private static double Moles(Substance substance, string component) =>
        substance.Dissolves.SingleOrDefault(d => d.Component == component)?.MolesPerGram ?? 0;
}
