using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Tests.Hazards;

public sealed class HazardGateTests
{
    [Theory]
    [InlineData("sodium-hypochlorite-5", "vinegar-5", HazardKind.Chlorine)]
    [InlineData("sodium-hypochlorite-5", "monopotassium-phosphate", HazardKind.Chlorine)]
    [InlineData("calcium-hypochlorite", "ferrous-sulfate-7h2o", HazardKind.Chlorine)]
    [InlineData("sodium-hypochlorite-5", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("sodium-hypochlorite-5", "urea", HazardKind.Chloramines)]
    [InlineData("sodium-hypochlorite-5", "glycine", HazardKind.Chloramines)]
    [InlineData("sodium-hypochlorite-12.5", "hydrogen-peroxide-3", HazardKind.OxygenPressure)]
    [InlineData("hydrogen-peroxide-3", "copper-sulfate-5h2o", HazardKind.OxygenPressure)]
    [InlineData("hydrogen-peroxide-3", "fe-dtpa-hna", HazardKind.OxygenPressure)]
    [InlineData("hydrogen-peroxide-35", "potassium-hydroxide", HazardKind.OxygenPressure)]
    [InlineData("potassium-bicarbonate", "citric-acid-h2o", HazardKind.CarbonDioxidePressure)]
    [InlineData("potassium-carbonate", "nitric-38", HazardKind.CarbonDioxidePressure)]
    [InlineData("sodium-thiosulfate-5h2o", "nitric-38", HazardKind.SulfurDioxide)]
    [InlineData("ammonium-thiosulfate-60", "phosphoric-75", HazardKind.SulfurDioxide)]
    [InlineData("potassium-thiosulfate-50", "citric-acid-h2o", HazardKind.SulfurDioxide)]
    [InlineData("potassium-thiosulfate-50", "ferric-citrate", HazardKind.SulfurDioxide)]
    [InlineData("sodium-thiosulfate-5h2o", "ferric-nitrate-9h2o", HazardKind.SulfurDioxide)]
    [InlineData("potassium-nitrite", "vinegar-5", HazardKind.NitrogenOxides)]
    [InlineData("sodium-nitrite", "ammonium-sulfate", HazardKind.NitrogenPressure)]
    [InlineData("sodium-nitrite", "sulfamic-acid", HazardKind.NitrogenOxides)]
    [InlineData("sodium-hypochlorite-5", "sulfamic-acid", HazardKind.Chlorine)]
    [InlineData("sodium-hypochlorite-5", "sulfamic-acid", HazardKind.Chloramines)]
    [InlineData("sodium-hypochlorite-5", "fe-idha-9", HazardKind.Chloramines)]
    [InlineData("hydrogen-peroxide-3", "mn-lignosulfonate-8", HazardKind.OxygenPressure)]
    [InlineData("ammonium-nitrate", "potassium-hydroxide", HazardKind.Ammonia)]
    [InlineData("ammonium-sulfate", "potassium-silicate-29be", HazardKind.Ammonia)]
    [InlineData("sodium-hypochlorite-5", "potassium-iodide", HazardKind.Iodine)]
    [InlineData("calcium-hypochlorite", "potassium-iodide", HazardKind.Iodine)]
    public void TwoThatMustNotMeetAreAHazard(string one, string other, HazardKind kind)
    {
        var report = HazardGate.Of(Bottle((one, 100), (other, 100)));

        Assert.Contains(report.Present, h => h.Kind == kind);
        Assert.NotNull(report.Forbids(kind == HazardKind.Ammonia ? VesselAction.KeepTogether : VesselAction.Cap));
        Assert.NotNull(report.Forbids(VesselAction.Heat));
    }

    [Theory]
    [InlineData("calcium-nitrate-4h2o", "potassium-nitrate")]
    [InlineData("magnesium-sulfate-7h2o", "monopotassium-phosphate")]
    [InlineData("fe-edta-na-3h2o", "vinegar-5")]
    [InlineData("potassium-hydroxide", "monopotassium-phosphate")]
    [InlineData("calcium-carbonate", "ammonium-nitrate")]
    [InlineData("borax-10h2o", "ferrous-sulfate-7h2o")]
    public void WhatStocksHoldEveryDayIsNone(string one, string other)
    {
        var report = HazardGate.Of(Bottle((one, 50), (other, 20)));

        Assert.Empty(report.Present);
        Assert.Null(report.Forbids(VesselAction.Order));
        Assert.Null(report.Forbids(Bench.Substance("vinegar-5"), pinch: true));
    }

    /// <summary>
    /// By hand: 15 mg/L are 0.2116 mmol/L, with as much chloride again and 0.2 mmol/L of the feed 2.18e-9 mol/L of Cl2 at pH 5 (hydrolysis
    /// constant 4e-4), 0.024 ppm over it by Henry's law; 50 mg/L at pH 3 without other chloride 13.8 ppm, past what is dangerous at once.
    /// </summary>
    [Theory]
    [InlineData(15, 7.09, 5, 0.0242)]
    [InlineData(50, 0, 3, 13.8)]
    public void ChlorineOverATankFollowsFromPhAndChloride(double chlorine, double chloride, double ph, double expected) =>
        Assert.Equal(expected, ChlorineInTank.PartsPerMillion(chlorine, chloride, ph), expected / 100);

    /// <summary>
    /// 3 FeSO4 and 4 HNO3 give one NO: 100 g of the heptahydrate in a litre, 0.36 mol, 2.9 litres (24.06 L/mol at 20 °C). Acid for pH 2 is
    /// none of it, and nitrite with a salt of iron gives brown fumes by itself.
    /// </summary>
    [Theory]
    [InlineData("ferrous-sulfate-7h2o", 100, "nitric-38", 300, 2.885)]
    [InlineData("ferrous-sulfate-7h2o", 100, "nitric-38", 20, null)]
    [InlineData("ferric-chloride-6h2o", 100, "nitric-38", 300, null)]
    public void WeakNitricAcidWithIronIsGasThatComesLater(string iron, double grams, string acid, double acidGrams, double? litres)
    {
        var found = HazardGate.Of(Bottle((iron, grams), (acid, acidGrams))).Present.FirstOrDefault(h => h.Kind == HazardKind.NitrogenOxides);

        Assert.Equal(litres, found is null ? null : Math.Round(found.Value, 3));
    }

    /// <summary>
    /// By hand: 1 g/L of potassium iodide is 6.02 mmol/L (166.0 g/mol), half of it 3.01 mmol/L or 764 mg/L of iodine (253.8 g/mol); bleach of 5 %, 100 g
    /// in a litre, has 70.5 mmol/L to do it. A milligram makes 0.77 mg/L, below the 2 mg/L that count.
    /// </summary>
    [Theory]
    [InlineData(1, 764.0)]
    [InlineData(0.001, null)]
    public void BleachSetsIodineFree(double grams, double? milligrams)
    {
        var found = HazardGate.Of(Bottle(("potassium-iodide", grams), ("sodium-hypochlorite-5", 100))).Find(HazardKind.Iodine);

        Assert.Equal(milligrams, found is null ? null : Math.Round(found.Value));
        Assert.True(found is null || found is { IsNeverTogether: true, IsForLeaving: true });
    }

    /// <summary>Phosphide and what water takes apart need no partner; metals, iodide and sound salts do.</summary>
    [Theory]
    [InlineData("AlP", HazardKind.Phosphine)]
    [InlineData("CaC2", HazardKind.FlammableGas)]
    [InlineData("NaBH4", HazardKind.FlammableGas)]
    [InlineData("Na", HazardKind.FlammableGas)]
    [InlineData("Zn", null)]
    [InlineData("KI", null)]
    [InlineData("CaCO3", null)]
    [InlineData("NaCl", null)]
    [InlineData("Ca3(PO4)2", null)]
    public void WhatWaterAloneTakesApartIsAHazard(string formula, HazardKind? kind) =>
        Assert.Equal(kind, HazardGate.Of(Holding.Of([Held.Of(Shop("shop-salt", formula), 5)], 1)).Present.FirstOrDefault()?.Kind);

    [Fact]
    public void NitriteWithIronIsBrownFumesWithoutAnyAcid()
    {
        var nitrite = Shop("shop-salt", "NaNO2");
        Assert.Contains(
            HazardGate.Of(Holding.Of([Held.Of(nitrite, 1), Held.Of(Bench.Substance("ferrous-sulfate-7h2o"), 20)], 1)).Present,
            h => h.Kind == HazardKind.NitrogenOxides);
    }

    /// <summary>A bottle of thiosulfate takes no acid and no bleach, and takes what is neither.</summary>
    [Theory]
    [InlineData("potassium-thiosulfate-50", "nitric-38", HazardKind.SulfurDioxide)]
    [InlineData("ammonium-thiosulfate-60", "ferrous-sulfate-7h2o", HazardKind.SulfurDioxide)]
    [InlineData("sodium-nitrite", "sulfuric-37", HazardKind.NitrogenOxides)]
    [InlineData("sodium-nitrite", "citric-acid-anhydrous", HazardKind.NitrogenOxides)]
    [InlineData("potassium-thiosulfate-50", "potassium-nitrate", null)]
    [InlineData("sodium-nitrite", "potassium-hydroxide", null)]
    public void AcidMayNotGoIntoThiosulfateOrNitrite(string there, string reagent, HazardKind? kind) =>
        Assert.Equal(kind, HazardGate.Of(Bottle((there, 100))).Forbids(Bench.Substance(reagent), 20)?.Hazard.Kind);

    /// <summary>
    /// 1 L of bleach of 12.5 % holds 1.76 mol of hypochlorite for 0.44 mol of thiosulfate: 546 kJ in 1250 g at 3.3 J per g and K, 132 K.
    /// </summary>
    [Fact]
    public void BleachWithThiosulfateBoils()
    {
        var refusal = HazardGate.Of(Bottle(("sodium-hypochlorite-12.5", 1000))).Forbids(Bench.Substance("potassium-thiosulfate-50"), 250)!;
        Assert.Equal((HazardKind.Heat, HazardGrade.Grave), (refusal.Hazard.Kind, refusal.Hazard.Grade));
        Assert.InRange(refusal.Hazard.Value, 151, 153);
    }

    /// <summary>A mole of each gives a mole of nitrogen: 69 g of sodium nitrite with 97.1 g of sulfamic acid in a litre, 24 litres.</summary>
    [Fact]
    public void NitrogenOfNitriteIsToldInLitresOfGasPerLitre()
    {
        var gas = HazardGate.Of(Bottle(("sodium-nitrite", 68.995), ("sulfamic-acid", 97.09))).Find(HazardKind.NitrogenPressure)!;
        Assert.Equal(24.06, gas.Value, 0.02);
        Assert.Equal(HazardGrade.Grave, gas.Grade);
        Assert.Null(HazardGate.Of(Bottle(("sodium-nitrite", 0.1), ("ammonium-sulfate", 100))).Find(HazardKind.NitrogenPressure));
    }

    /// <summary>A shop's own bag, told by its formula alone, is seen as the same.</summary>
    [Theory]
    [InlineData("K2S2O3", "nitric-38", HazardKind.SulfurDioxide)]
    [InlineData("KNO2", "vinegar-5", HazardKind.NitrogenOxides)]
    public void AShopsOwnThiosulfateAndNitriteAreSeenByTheirFormula(string formula, string acid, HazardKind kind) => Assert.Contains(
        HazardGate.Of(Holding.Of([Held.Of(Shop("shop-bag", formula), 100), Held.Of(Bench.Substance(acid), 100)], 1)).Present,
        h => h.Kind == kind);

    [Fact]
    public void SulfamicAcidOfAShopIsNoSulfite() =>
        Assert.DoesNotContain(HazardRole.Sulfite, HazardRoles.Of(Shop("shop-descaler", "NH2SO3H")));

    [Fact]
    public void OxygenIsToldInLitresOfGasPerLitre()
    {
        var oxygen = HazardGate.Of(Bottle(("hydrogen-peroxide-3", 1000), ("ferrous-sulfate-7h2o", 1))).Find(HazardKind.OxygenPressure)!;

        // 30 g of peroxide are 0.882 mol and half as much oxygen: 10.6 L (the trade calls 3 % "10 volumes").
        Assert.Equal(10.6, oxygen.Value, 0.1);
        Assert.Equal("L/L", oxygen.Unit);
    }

    [Fact]
    public void TreatedWaterBesideAcidIsNoHazard() =>
        Assert.Empty(HazardGate.Of(Bottle(("sodium-hypochlorite-5", 0.05), ("nitric-38", 1))).Present);

    [Theory]
    [InlineData("vinegar-5")]
    [InlineData("hydrochloric-10")]
    [InlineData("citric-acid-h2o")]
    [InlineData("ammonium-sulfate")]
    public void NothingAcidOrWithAmmoniumGoesIntoBleach(string reagent)
    {
        var refusal = HazardGate.Of(Bottle(("sodium-hypochlorite-5", 50))).Forbids(Bench.Substance(reagent), pinch: true);

        Assert.NotNull(refusal);
        Assert.True(refusal.ByReagent);
    }

    [Theory]
    [InlineData("K2S")]
    [InlineData("Na2S·9H2O")]
    [InlineData("CaS5")]
    [InlineData("(NH4)2S")]
    public void NoAcidGoesIntoSulfide(string formula)
    {
        var sulfide = Shop("shop-salt", formula);
        var report = HazardGate.Of(Holding.Of([Held.Of(sulfide, 5)], 1));

        Assert.NotNull(report.Forbids(Bench.Substance("vinegar-5"), pinch: true));
        Assert.Contains(HazardGate.Of(Holding.Of([Held.Of(sulfide, 5), Held.Of(Bench.Substance("nitric-38"), 20)], 1)).Present, h => h.Kind == HazardKind.HydrogenSulfide);
    }

    [Theory]
    [InlineData("KNO2", HazardKind.NitrogenOxides)]
    [InlineData("Na2SO3", HazardKind.SulfurDioxide)]
    [InlineData("Na2S2O3·5H2O", HazardKind.SulfurDioxide)]
    [InlineData("KCN", HazardKind.HydrogenCyanide)]
    [InlineData("Ca(CN)2", HazardKind.HydrogenCyanide)]
    [InlineData("KMnO4", HazardKind.Runaway)]
    [InlineData("NaClO2", HazardKind.Runaway)]
    [InlineData("NaClO2", HazardKind.ChlorineDioxide)]
    [InlineData("KClO3", HazardKind.ChlorineDioxide)]
    [InlineData("NH4HF2", HazardKind.HydrogenFluoride)]
    [InlineData("NaF", HazardKind.HydrogenFluoride)]
    [InlineData("Zn3P2", HazardKind.Phosphine)]
    [InlineData("NaN3", HazardKind.Explosive)]
    [InlineData("Mg", HazardKind.Hydrogen)]
    [InlineData("Zn", HazardKind.Hydrogen)]
    [InlineData("Fe", HazardKind.Hydrogen)]
    [InlineData("NaOCl", HazardKind.Chlorine)]
    public void ASubstanceOfTheShopIsToldByItsFormula(string formula, HazardKind kind) => Assert.Contains(
        HazardGate.Of(Holding.Of([Held.Of(Shop("shop-salt", formula), 20), Held.Of(Bench.Substance("hydrochloric-31"), 50)], 1)).Present, h => h.Kind == kind);

    [Theory]
    [InlineData("Pool bleach", "vinegar-5", HazardKind.Chlorine)]
    [InlineData("Lime sulfur", "nitric-38", HazardKind.HydrogenSulfide)]
    [InlineData("Bubble peroxide cleaner", "ferrous-sulfate-7h2o", HazardKind.OxygenPressure)]
    [InlineData("pool chlorine", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("pool chlorine", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("Pool Shock", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("Pool Shock", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("Household bleach", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("Household bleach", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("thick-bleach", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("thick-bleach", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("eau de javel", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("eau de javel", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("Chlor tablets", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("Chlor tablets", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("hypo chlorite 12 %", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("hypo chlorite 12 %", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("sodium hypoclorite", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("sodium hypoclorite", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("Trichlor granules", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("Trichlor granules", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("dairy sanitiser", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("dairy sanitiser", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("disinfectant gel", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("disinfectant gel", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("battery acid", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("battery acid", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("pH Down", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("pH Down", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("pH-Down", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("pH-Down", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("PHDOWN", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("PHDOWN", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("ph minus", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("ph minus", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("descaler", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("descaler", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("De-scaler", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("De-scaler", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("muriatic", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("muriatic", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("Spirits of salt", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("Spirits of salt", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("brick cleaner", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("brick cleaner", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("Lime scale remover", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("Lime scale remover", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("cleaning vinegar", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("cleaning vinegar", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("etching acid", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("etching acid", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("Salzsäure", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("Salzsäure", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("ácido cítrico", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("ácido cítrico", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("Drain cleaner", "sodium-hypochlorite-5", HazardKind.Chlorine)]
    [InlineData("Drain cleaner", "potassium-carbonate", HazardKind.CarbonDioxidePressure)]
    [InlineData("caustic flakes", "ammonium-sulfate", HazardKind.Ammonia)]
    [InlineData("H2O2 12 %", "ferrous-sulfate-7h2o", HazardKind.OxygenPressure)]
    [InlineData("hydrogen peroxid", "copper-sulfate-5h2o", HazardKind.OxygenPressure)]
    [InlineData("Perhydrol", "manganese-sulfate-h2o", HazardKind.OxygenPressure)]
    [InlineData("Lime-sulphur wash", "citric-acid-h2o", HazardKind.HydrogenSulfide)]
    [InlineData("potassium cyanide", "citric-acid-h2o", HazardKind.HydrogenCyanide)]
    [InlineData("liver of sulphur", "nitric-38", HazardKind.HydrogenSulfide)]
    [InlineData("Sodium-nitrite pickling salt", "nitric-38", HazardKind.NitrogenOxides)]
    [InlineData("Condy's crystals", "sucrose", HazardKind.Runaway)]
    [InlineData("potassium permanganat", "citric-acid-h2o", HazardKind.Runaway)]
    [InlineData("household ammonia", "sodium-hypochlorite-5", HazardKind.Chloramines)]
    [InlineData("amonia water", "sodium-hypochlorite-5", HazardKind.Chloramines)]
    [InlineData("chloride of lime", "ammonium-sulfate", HazardKind.Chloramines)]
    [InlineData("chlorinated lime", "citric-acid-h2o", HazardKind.Chlorine)]
    [InlineData("Lugol's iodine", "sodium-hypochlorite-5", HazardKind.Iodine)]
    [InlineData("tincture of iodine", "ammonia-25", HazardKind.Explosive)]
    [InlineData("iodine crystals", "ammonia-10", HazardKind.Explosive)]
    [InlineData("potassium iodate", "sodium-hypochlorite-5", HazardKind.Runaway)]
    [InlineData("potassium iodate", "potassium-iodide", HazardKind.Runaway)]
    [InlineData("sodium chlorite solution", "citric-acid-h2o", HazardKind.ChlorineDioxide)]
    [InlineData("aluminium phosphide tablets", "citric-acid-h2o", HazardKind.Phosphine)]
    [InlineData("zinc phosphide bait", "vinegar-5", HazardKind.Phosphine)]
    [InlineData("hydrofluoric acid", "potassium-nitrate", HazardKind.HydrogenFluoride)]
    [InlineData("ammonium bifluoride", "nitric-38", HazardKind.HydrogenFluoride)]
    [InlineData("sodium azide", "phosphoric-75", HazardKind.Explosive)]
    [InlineData("sodium azide", "copper-sulfate-5h2o", HazardKind.Explosive)]
    [InlineData("calcium carbide", "potassium-nitrate", HazardKind.FlammableGas)]
    [InlineData("magnesium turnings", "citric-acid-h2o", HazardKind.Hydrogen)]
    public void AProductWithoutCompositionIsToldByItsName(string name, string other, HazardKind kind)
    {
        var product = new Substance { Id = "shop-product", Name = name, Kind = SubstanceKind.Product, Content = ElementContent.Empty };

        Assert.Contains(HazardGate.Of(Holding.Of([Held.Of(product, 50), Held.Of(Bench.Substance(other), 50)], 1)).Present, h => h.Kind == kind);
    }

    /// <summary>Names that only sound like it: nothing is forbidden of them that is not forbidden of any unknown product.</summary>
    [Theory]
    [InlineData("Root tonic")]
    [InlineData("Iron chelate, acid stable")]
    [InlineData("Humic acids 12 %")]
    [InlineData("Silicic acid concentrate")]
    [InlineData("Calcium chloride flakes")]
    [InlineData("Chlorophyll drops")]
    [InlineData("Bloom booster")]
    public void AnInnocentNameGivesNoRole(string name)
    {
        var product = new Substance { Id = "shop-product", Name = name, Kind = SubstanceKind.Product, Content = ElementContent.Empty };

        Assert.Empty(HazardRoles.Of(product).Except([HazardRole.Unknown, HazardRole.Organic, HazardRole.Amine]));
    }

    /// <summary>A product of both kinds does not gas off in its own bottle; the next acid makes it.</summary>
    [Fact]
    public void ADrainCleanerWaitsForAnother()
    {
        var product = new Substance { Id = "shop-product", Name = "Drain cleaner", Kind = SubstanceKind.Product, Content = ElementContent.Empty };

        Assert.Equal(HazardGrade.Possible, HazardGate.Of(Holding.Of([Held.Of(product, 50)], 1)).Find(HazardKind.Chlorine)?.Grade);
    }

    [Fact]
    public void NothingThatAddsAcidAlkaliOrHeatGoesToUnknownContents()
    {
        var product = new Substance { Id = "shop-product", Name = "Tonic", Kind = SubstanceKind.Product, Content = ElementContent.Empty };
        var report = HazardGate.Of(Holding.Of([Held.Of(product, 50)], 1));

        Assert.NotNull(report.Forbids(VesselAction.Heat));
        Assert.All(
            (string[])["vinegar-5", "hydrochloric-10", "koh-10", "potassium-bicarbonate", "hydrogen-peroxide-3"],
            id => Assert.NotNull(report.Forbids(Bench.Substance(id), pinch: true)));
        Assert.Null(report.Forbids(VesselAction.Order));
    }

    [Fact]
    public void StrongNitricAcidMeetsOrganicMatterWhereItIsPoured()
    {
        var stock = Bench.StockOf(Bench.Pour("0.2 L"), Bench.Add("acetic-acid-80", "200 mL"), Bench.Add("nitric-65", "200 mL"));

        Assert.Contains(HazardGate.Of(stock).Present, h => h.Kind == HazardKind.NitrogenOxides && Math.Abs(h.Value - 65) < 0.01);
        Assert.DoesNotContain(
            HazardGate.Of(Bench.StockOf(Bench.Pour("1.5 L"), Bench.Add("vinegar-5", "90 mL"), Bench.Add("nitric-38", "20 mL"), Bench.TopUp("2 L"))).Present,
            h => h.Kind == HazardKind.NitrogenOxides);
    }

    [Fact]
    public void DryNitrateAndSugarCanBurn() => Assert.Contains(
        HazardGate.Of(Bench.StockOf(Bench.Add("potassium-nitrate", "100 g"), Bench.Add("sucrose", "20 g"), Bench.Pour("1 L"))).Present,
        h => h.Kind == HazardKind.Fire);

    [Fact]
    public void LyeIntoStrongAcidBoils() => Assert.Contains(
        HazardGate.Of(Bench.StockOf(Bench.Pour("0.2 L"), Bench.Add("sulfuric-96", "200 mL"), Bench.Add("koh-50", "400 mL"))).Present,
        h => h is { Kind: HazardKind.Heat, Grade: HazardGrade.Grave });

    [Fact]
    public void AnAdjustmentWithAcidCounts() => Assert.Contains(
        HazardGate.Of(Bench.StockOf(Bench.Pour("1.8 L"), Bench.Add("sodium-hypochlorite-5", "20 mL"), Bench.Adjust(6, "hydrochloric-31"), Bench.TopUp("2 L"))).Present,
        h => h.Kind == HazardKind.Chlorine);

    private static Substance Shop(string id, string formula) => new()
    {
        Id = id,
        Name = id,
        Kind = SubstanceKind.Salt,
        Formula = FormulaParser.Parse(formula),
        Content = ElementContent.Empty,
        Dissolves = IonReading.TryRead(FormulaParser.Parse(formula), SubstanceCatalogue.BuiltIn, out var ions)
            ? [.. ions.Select(i => new ComponentYield(i.Key, i.Value / FormulaParser.Parse(formula).MolarMass.GramsPerMole))]
            : [],
    };

    /// <summary>A litre that holds these, in grams.</summary>
    private static Holding Bottle(params (string Id, double Grams)[] items) => Holding.Of(items.Select(i => Held.Of(Bench.Substance(i.Id), i.Grams)), 1);
}
