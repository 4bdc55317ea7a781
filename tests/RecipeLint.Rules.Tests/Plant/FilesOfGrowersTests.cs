using System.Text;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Tests.Precipitation;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>Files as growers write them: sound ones that were called errors, flawed ones that passed.</summary>
public sealed class FilesOfGrowersTests
{
    private const string Traces = """
        {"add": "mn-edta", "amount": "0.42 g"}, {"add": "zn-edta", "amount": "0.23 g"}, {"add": "boric-acid", "amount": "0.17 g"},
        {"add": "cu-edta", "amount": "0.036 g"}, {"add": "sodium-molybdate-2h2o", "amount": "0.013 g"}
        """;

    private const string Main = """
        {"add": "calcium-nitrate-4h2o", "amount": "80 g"}, {"add": "potassium-nitrate", "amount": "40 g"},
        {"add": "monopotassium-phosphate", "amount": "18 g"}
        """;

    private const string Epsom = """{"add": "magnesium-sulfate-7h2o", "amount": "40 g"}""";

    private const string Iron = """{"add": "fe-dtpa-hna", "amount": "1.8 g"}""";

    private const string SoftTap = """
        {"format": 1, "name": "Soft tap", "pH": 7.2, "ions": {"Ca": "18 mg/L", "Mg": "3 mg/L", "Na": "9 mg/L", "K": "1 mg/L",
        "Cl": "12 mg/L", "SO4": "10 mg/L", "HCO3": "55 mg/L"}}
        """;

    /// <summary>
    /// An orchid bag without sulfur on its label: bags need not declare it, and their trace salts are often sulfates. So it is asked, not
    /// stated.
    /// </summary>
    [Fact]
    public void WhatALabelDoesNotDeclareIsNotCalledMissingForSure()
    {
        var finding = Of("element-missing", ("bags.substances.json", """
            {"format": 1, "substances": [{"id": "orchid", "label": {"basis": "element", "N": "13 %", "NO3-N": "12 %", "NH4-N": "1 %",
            "P": "1.3 %", "K": "12.4 %", "Ca": "8 %", "Mg": "2 %", "Fe": "0.2 %", "Mn": "0.1 %", "Zn": "0.01 %", "Cu": "0.01 %",
            "B": "0.01 %", "Mo": "0.005 %", "chelatedWith": "EDTA"}}]}
            """), Feed("""{"add": "orchid", "amount": "70 g"}"""));

        Assert.Equal(Level.Warning, finding.Level);
        Assert.Contains("no label declares", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>All other traces are weighed one by one, so the iron was forgotten: leaves yellow within two weeks.</summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o")]
    [InlineData("calcium-nitrate-fertiliser")]
    public void AFeedWithAllTracesButIronIsAnError(string nitrate) => Assert.Equal(Level.Error, Of("element-missing", Feed(
        $"{Main.Replace("calcium-nitrate-4h2o", nitrate, StringComparison.Ordinal)}, {Epsom}, {Traces}")).Level);

    /// <summary>Nitrogen, phosphorus, potassium, calcium and iron make a whole feed; without Epsom salt it has neither Mg nor S.</summary>
    [Fact]
    public void AFeedOfFourSaltsWithIronAndNoMagnesiumIsAnError() =>
        Assert.Equal(Level.Error, Of("element-missing", Feed($"{Main}, {Iron}")).Level);

    [Theory]
    [InlineData("""{"add": "calcium-nitrate-4h2o", "amount": "80 g"}, {"add": "fe-dtpa-hna", "amount": "1.8 g"}""")]
    [InlineData("""{"add": "monopotassium-phosphate", "amount": "18 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "40 g"}""")]
    public void AFeedForOnePurposeIsAWarning(string doses) => Assert.Equal(Level.Warning, Of("element-missing", Feed(doses)).Level);

    /// <summary>2.3 mS/cm where 0.8 was asked: no model, meter or reference temperature is off by a half.</summary>
    [Theory]
    [InlineData("0.8 mS/cm", Level.Error)]
    [InlineData("1.4 mS/cm", Level.Warning)]
    public void AnEcThatIsNowhereNearWhatTheFileSaysIsAnError(string target, Level level) =>
        Assert.Equal(level, Of("ec-outside-window", Feed(
            $"{Main}, {Epsom}, {Iron}, {Traces}", $$""", "targets": {"EC": "{{target}}"}""")).Level);

    /// <summary>
    /// Plug feed 20-10-20 on soft tap water, as it is mixed every day: as poured its pH is near 7 and EDTA holds the iron; only a tank that
    /// stands until the carbon dioxide has left loses it.
    /// </summary>
    [Fact]
    public void IronThatOnlyALongStandingTankLosesIsNoError()
    {
        var finding = Of("chelate-outside-its-ph", ("tap.water.json", SoftTap), ("bags.substances.json", """
            {"format": 1, "substances": [{"id": "plug", "label": {"basis": "oxide", "N": "20 %", "NO3-N": "12 %", "NH4-N": "8 %",
            "P2O5": "10 %", "K2O": "20 %", "MgO": "0.3 %", "Fe": "0.1 %", "Mn": "0.05 %", "Zn": "0.05 %", "Cu": "0.05 %", "B": "0.02 %",
            "Mo": "0.01 %", "chelatedWith": "EDTA"}}]}
            """), Feed("""{"add": "plug", "amount": "37 g"}""", water: "tap.water.json"));

        Assert.Equal(Level.Warning, finding.Level);
        Assert.Contains("As it is poured", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// 100 g/L of a 15-5-15 whose label leaves a ninth of the charge open: the acid is a guess, the deposit of EDTA hangs on it, and the
    /// little bicarbonate of the water has no part in it.
    /// </summary>
    [Fact]
    public void AnAcidOnALabelThatIsGuessedMakesNoErrorAndBlamesNoWater()
    {
        var finding = Of("chelating-acid-drops-out", ("tap.water.json", SoftTap), ("bags.substances.json", """
            {"format": 1, "substances": [{"id": "bag", "name": "Invented 15-5-15", "label": {"basis": "oxide", "N": "15 %",
            "NO3-N": "11.8 %", "NH4-N": "1.1 %", "urea-N": "2.1 %", "P2O5": "5 %", "K2O": "15 %", "CaO": "7 %", "MgO": "3.3 %",
            "Fe": "0.1 %", "Mn": "0.05 %", "Zn": "0.05 %", "Cu": "0.02 %", "B": "0.02 %", "Mo": "0.01 %", "chelatedWith": "EDTA"}}]}
            """), ("feed.stock.json", """
            {"format": 1, "makes": "20 L", "dose": "1:100", "keep": {"at": "10..26 °C", "for": "14 days", "light": "dark"}, "steps": [
            {"pour": "16 L", "of": "tap.water.json"}, {"add": "bag", "amount": "2 kg"}, {"stir": "until clear"},
            {"topUp": "20 L", "of": "tap.water.json"}]}
            """));

        Assert.Equal(Level.Warning, finding.Level);
        Assert.Contains("This pH is a guess", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("the water 'Soft tap'", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// 1 kg of greenhouse calcium nitrate in 10 L of water: 160 g of it is water of its crystals, the 778 g of calcium nitrate take up 0.23
    /// to 0.25 mL/g (CRC density of calcium nitrate solutions), the 63 g of ammonium nitrate about 0.55: 10.37 to 10.39 L.
    /// </summary>
    [Fact]
    public void TheCrystalWaterOfALabelledSaltTakesUpRoom()
    {
        var facts = Lint.FactsOf(("a.stock.json", """
            {"format": 1, "makes": "10 L", "steps": [{"pour": "10 L"}, {"add": "calcium-nitrate-fertiliser", "amount": "1 kg",
            "assay": "100 %"}]}
            """));

        Assert.InRange(facts.Stocks.Single().Mixing.Steps[^1].After.Litres, 10.36, 10.41);
    }

    /// <summary>A tenth too much water is no slip of a thousand: 11 mL would be as wrong.</summary>
    [Fact]
    public void AThousandthIsOnlyProposedWhereAThousandFits()
    {
        Assert.DoesNotContain("smaller-unit", Repairs("11 L"));
        Assert.Contains("smaller-unit", Repairs("8000 L"));

        static IReadOnlyList<string> Repairs(string water)
        {
            var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add("a.stock.json", Encoding.UTF8.GetBytes($$"""
                {"format": 1, "makes": "10 L", "steps": [{"pour": "{{water}}"}, {"add": "potassium-nitrate", "amount": "650 g"},
                {"topUp": "10 L"}]}
                """));
            var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
            var finding = Assert.Single(judged.Result.Findings, f => f.Rule.Name == "implausible-amount");
            return [.. new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged).For(finding).Select(r => r.Repair.Key)];
        }
    }

    /// <summary>Nitrogen of which the label names no form is taken as the trade would; nobody knows that it is urea.</summary>
    [Fact]
    public void UreaThatIsOnlyTakenForGrantedIsANoteThatSaysSo()
    {
        var finding = Of("urea-as-main-nitrogen", ("bags.substances.json", """
            {"format": 1, "substances": [{"id": "bag", "label": {"basis": "oxide", "N": "15 %", "P2O5": "5 %", "K2O": "15 %"}}]}
            """), Feed("""{"add": "bag", "amount": "100 g"}"""));

        Assert.Equal(Level.Note, finding.Level);
        Assert.Contains("does not say in which forms", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>EDDHA at pH 3.2: the constants hold the iron, the makers do not; one sentence may not deny the other.</summary>
    [Fact]
    public void AChelateBelowItsWindowIsNotSaidToHoldAllOfItsIron()
    {
        var finding = Of("chelate-outside-its-ph", ("a.stock.json", """
            {"format": 1, "makes": "20 L", "dose": "1:100", "keep": {"at": "10..26 °C", "for": "1 months", "light": "dark"}, "steps": [
            {"pour": "14 L"}, {"add": "calcium-nitrate-fertiliser", "amount": "1000 g"}, {"add": "fe-eddha-na", "amount": "15 g"},
            {"add": "fe-dtpa-hna", "amount": "20 g"}, {"topUp": "20 L"}]}
            """));

        Assert.DoesNotContain("100 % of the iron is still held. The acid", finding.Message, StringComparison.Ordinal);
        Assert.Contains("although the constants", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A tap of 0.9 mS/cm, most of it calcium bicarbonate as a rule: as sodium chloride it is the worst case, not a reading.
    /// </summary>
    [Fact]
    public void SodiumThatNobodyMeasuredIsAskedForAndNotWarnedOf()
    {
        var findings = Lint.Files(("tap.water.json", """{"format": 1, "name": "Tap", "EC": "0.9 mS/cm"}"""), Feed(
                $"{Main}, {Epsom}, {Iron}, {Traces}", water: "tap.water.json"))
            .Findings.Where(f => f.Rule.Name == "sodium-or-chloride-load").ToList();

        Assert.NotEmpty(findings);
        Assert.All(findings, f => Assert.Equal(Level.Note, f.Level));
        Assert.All(findings, f => Assert.Contains("Have the water analysed", f.Message, StringComparison.Ordinal));
    }

    /// <summary>
    /// Potassium silicate is what makes a tank alkaline, by its ratio of potash to silica: 1 L in 1 m³ without an acid drops the phosphate.
    /// </summary>
    [Fact]
    public void TheAlkalinityOfASilicateIsNoGuess()
    {
        var finding = Lint.Files(Feed(
            $$"""{{Main}}, {{Epsom}}, {{Iron}}, {"add": "potassium-silicate-29be", "amount": "100 mL"}""")).Findings.First(f =>
                f.Rule.Name == "tank-precipitate" && f.Message.Contains("phosphate", StringComparison.Ordinal));

        Assert.Equal(Level.Error, finding.Level);
        Assert.DoesNotContain("guess", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Water acidified before anything goes in: pH 2.5 in 6.99 kg is 10^-2.5 / 0.94 (Davies) = 3.36 mmol/kg or 23.5 mmol of nitric acid,
    /// 2.47 g at 60 %.
    /// </summary>
    [Fact]
    public void WaterIsAcidifiedBeforeTheSalts()
    {
        var facts = Lint.FactsOf(("b.stock.json", """
            {"format": 1, "makes": "10 L", "steps": [{"pour": "7 L"}, {"adjust": "pH 2.5", "using": "nitric-60"},
            {"add": "magnesium-sulfate-7h2o", "amount": "400 g"}, {"topUp": "10 L"}]}
            """));

        Assert.Equal(2.47, facts.Stocks.Single().Adjustments.Single().Amount!.Value.Grams, 0.05);
    }

    /// <summary>Iron sulfate in water that sulfuric acid holds at pH 1.8 keeps from the air; it was told to be acidified.</summary>
    [Fact]
    public void IronInAcidifiedWaterIsNotToldToBeAcidified() =>
        Assert.DoesNotContain(Lint.Files(("trace.stock.json", """
            {"format": 1, "makes": "1 L", "dose": "1:1000", "keep": {"at": "10..26 °C", "for": "2 months", "light": "dark"}, "steps": [
            {"pour": "800 mL"}, {"adjust": "pH 1.8", "using": "sulfuric-37"}, {"add": "ferrous-sulfate-7h2o", "amount": "10 g"},
            {"add": "manganese-sulfate-h2o", "amount": "1.5 g"}, {"topUp": "1 L"}]}
            """)).Findings, f => f.Rule.Name == "unprotected-ferrous-iron");

    /// <summary>Coir soaked with calcium, an iron tonic: no crop is named and nearly all main nutrients are left to the feed.</summary>
    [Theory]
    [InlineData("""{"add": "calcium-nitrate-4h2o", "amount": "150 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "40 g"}""", Level.Note)]
    [InlineData("""{"add": "calcium-nitrate-4h2o", "amount": "80 g"}, {"add": "fe-dtpa-hna", "amount": "1.8 g"}""", Level.Note)]
    [InlineData(Main, Level.Warning)]
    public void ASoakWithoutACropIsASupplement(string doses, Level level) => Assert.Equal(level, Of("element-missing", NoCrop(doses)).Level);

    /// <summary>0.6 mS/cm of everything, and nobody said for what: seedlings, orchids and cuttings get as much.</summary>
    [Fact]
    public void AThinFeedForNobodyInParticularIsANote()
    {
        var finding = Of("ec-outside-window", NoCrop("""
            {"add": "calcium-nitrate-4h2o", "amount": "22 g"}, {"add": "potassium-nitrate", "amount": "14 g"},
            {"add": "monopotassium-phosphate", "amount": "6 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "14 g"}
            """));

        Assert.Equal(Level.Note, finding.Level);
    }

    /// <summary>
    /// 12 mg/L of sulfur is under what is usual and over where plants go short; a note says so, and the ratio to nitrogen is the same thing.
    /// </summary>
    [Fact]
    public void ARatioThatFollowsFromALittleOfOneIsANote()
    {
        var finding = Of("ratio-out-of-range", ("bags.substances.json", """
            {"format": 1, "substances": [{"id": "bag", "label": {"basis": "oxide", "NO3-N": "12 %", "NH4-N": "1 %", "P2O5": "5 %",
            "K2O": "20 %", "CaO": "10 %", "MgO": "3.5 %", "SO3": "3 %", "Fe": "0.15 %", "Mn": "0.06 %", "Zn": "0.03 %", "Cu": "0.01 %",
            "B": "0.03 %", "Mo": "0.008 %", "chelatedWith": "EDTA"}}]}
            """), Feed("""{"add": "bag", "amount": "100 g"}"""));

        Assert.Equal(Level.Note, finding.Level);
        Assert.StartsWith("N to S is", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Fish water brings a little iron of its own: it is the DTPA that the plants live on, and it is held while the tank is stirred.</summary>
    [Fact]
    public void ALittleIronOfTheWaterMakesNoLossOfTheChelate()
    {
        var finding = Of("chelate-outside-its-ph", ("fish.water.json", """
            {"format": 1, "name": "Fish water", "pH": 6.8, "ions": {"Ca": "70 mg/L", "Mg": "18 mg/L", "Na": "30 mg/L", "K": "35 mg/L",
            "Cl": "40 mg/L", "SO4": "60 mg/L", "NO3-N": "38 mg/L", "P": "8 mg/L", "HCO3": "92 mg/L", "Fe": "0.1 mg/L"}}
            """), Feed(Iron, water: "fish.water.json"));

        Assert.Equal(Level.Warning, finding.Level);
        Assert.Contains("As it is poured", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Ten times as strong is no feed for seedlings.</summary>
    [Theory]
    [InlineData("1:10", Level.Warning, "1:10 for 1:100")]
    [InlineData("1:200", Level.Note, "as for seedlings")]
    public void AllStocksAtTenTimesTheirDoseAreASlip(string dose, Level level, string words)
    {
        const string keep = """ "dose": "1:100", "makes": "10 L" """;
        var finding = Of(
            "dose-contradicts-dilution",
            ("a.stock.json", $$"""{"format": 1, {{keep}}, "steps": [{"pour": "8 L"}, {"add": "calcium-nitrate-4h2o", "amount": "800 g"}]}"""),
            ("b.stock.json", $$"""{"format": 1, {{keep}}, "steps": [{"pour": "8 L"}, {"add": "potassium-nitrate", "amount": "400 g"}]}"""),
            Feed($$"""{"stock": "a.stock.json", "dose": "{{dose}}"}, {"stock": "b.stock.json", "dose": "{{dose}}"}"""));

        Assert.Equal(level, finding.Level);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Silica gel is brought by one: there are no two of which less could be dosed.</summary>
    [Fact]
    public void OfOneThatFallsOutAloneIsNotSaidOneOfTheTwo()
    {
        var findings = Lint.Files(Feed($$"""{{Main}}, {{Epsom}}, {{Iron}}, {"add": "potassium-silicate-40be", "amount": "100 mL"}""")).Findings
            .Where(f => f.Rule.Name == "tank-precipitate" && f.Message.Contains("silica gel", StringComparison.Ordinal)).ToList();

        Assert.All(findings, f => Assert.DoesNotContain("one of the two", f.Message, StringComparison.Ordinal));
        Assert.NotEmpty(findings);
    }

    /// <summary>A filter of 0.2 µm into boiled bottles keeps what feeds microbes, until one is opened.</summary>
    [Theory]
    [InlineData("0.2 µm sterile filter into autoclaved bottles", Level.Note)]
    [InlineData("coffee filter, not sterile", Level.Warning)]
    public void WhatIsMadeSterileIsANote(string filter, Level level) => Assert.Equal(level, Of("carbon-without-preservative", ("t.stock.json", $$"""
        {"format": 1, "makes": "1 L", "keep": {"at": "2..8 °C", "for": "6 months", "light": "dark"}, "steps": [{"pour": "0.8 L"},
        {"add": "citric-acid-h2o", "amount": "1 g"}, {"add": "manganese-sulfate-h2o", "amount": "1.7 g"}, {"filter": "{{filter}}"},
        {"topUp": "1 L"}]}
        """)).Level);

    /// <summary>A bottle of bleach has its strength on the label and no purity.</summary>
    [Fact]
    public void ASolutionIsAskedForItsStrength()
    {
        static string Stock(string what, string much) =>
            $$"""{"format": 1, "makes": "1 L", "steps": [{"pour": "0.8 L"}, {"add": "{{what}}", "amount": "{{much}}"}, {"topUp": "1 L"}]}""";

        Assert.Contains("\"strength\"", Of("undeclared-assay", ("b.stock.json", Stock("sodium-hypochlorite-12.5", "40 mL"))).Message, StringComparison.Ordinal);
        Assert.Contains("\"98 %\"", Of("undeclared-assay", ("k.stock.json", Stock("potassium-hydroxide", "4 g"))).Message, StringComparison.Ordinal);
    }

    /// <summary>A nought typed for the letter looks the same in print, and the message has to say what is meant.</summary>
    [Theory]
    [InlineData("KH2P04", "monopotassium-phosphate")]
    [InlineData("MgSO4.7H20", "magnesium-sulfate-7h2o")]
    [InlineData("H3B03", "boric-acid")]
    public void ANoughtInAFormulaIsTheLetter(string written, string meant) => Assert.Contains(
        $"Did you mean '{meant}'", Of("unknown-substance", Feed($$"""{"add": "{{written}}", "amount": "18 g"}""")).Message, StringComparison.Ordinal);

    private static (string Name, string Text) NoCrop(string doses) => (
        "feed.recipe.json",
        $$"""{"format": 1, "name": "Feed", "water": "reverse-osmosis", "final": "100 L", "volume": "made up", "doses": [{{doses}}]}""");

    private static (string Name, string Text) Feed(string doses, string more = "", string water = "reverse-osmosis") => (
        "feed.recipe.json",
        $$"""
        {"format": 1, "name": "Feed", "crop": "leafy-greens", "water": "{{water}}", "final": "100 L", "volume": "made up",
        "doses": [{{doses}}]{{more}}}
        """);

    private static Finding Of(string rule, params (string Name, string Text)[] files) =>
        Assert.Single(Lint.Files(files).Findings, f => f.Rule.Name == rule);
}
