using System.Text;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>What --fix writes: how a file says something, never what is in the bottle.</summary>
public sealed class FixTests
{
    /// <summary>Fewer than the problems of one kind that are listed for a file.</summary>
    private const int PerFile = 90;

    private static readonly string[] _symbols =
        [.. "H He Li Be B C N O F Ne Na Mg Al Si P S Cl Ar K Ca Sc Ti V Cr Mn Fe Co Ni Cu Zn Ga Ge As Se Br Kr Rb Sr Y Zr Nb Mo Tc Ru Rh Pd Ag Cd In Sn Sb Te I Xe Cs Ba La Ce Pr Nd Pm Sm Eu Gd Tb Dy Ho Er Tm Yb Lu Hf Ta W Re Os Ir Pt Au Hg Tl Pb Bi Po At Rn Fr Ra Ac Th Pa U Np Pu Am Cm Bk Cf Es Fm Md No Lr Rf Db Sg Bh Hs Mt Ds Rg Cn Nh Fl Mc Lv Ts Og".Split(' ')];

    private static readonly string[] _chemicals = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "../../../Repairs/chemicals.txt"));

    /// <summary>Kitchen, customary and SI units, and those of the table, as people write them.</summary>
    private static readonly string[] _units =
    [
        .. "kg g mg µg ug ng t lb oz grain tbsp tsp cup cups pint pt quart qt gill dram drachm scruple minim pinch dash handful scoop capful stone cwt ton tonne carat ct L l mL ml ML Ml cL dL hL kL µL uL nL m3 m³ cm3 dm3 in ft yd acre ha bushel peck barrel drops drop mol mmol µmol nmol kmol Mmol eq meq µeq M mM µM nM N osm s ms min h d wk mo yr Pa kPa MPa bar mbar psi atm J kJ cal kcal W kW V mV A mA Hz S mS µS K °C °F °R °dH °fH ppm ppb ppt % NTU IU Mg Gg Tg pg fg mm cm km MM KG GM".Split(' '),
        "US gal", "UK gal", "US fl oz", "UK fl oz", "fl oz", "gal", "mg/L", "g/L", "µg/L", "mg/kg", "mmol/L", "meq/L", "g/mL", "kg/m³", "mS/cm", "µS/cm", "dS/m", "ms/cm",
        "grains/gal", "lb/gal", "oz/gal", "cu ft", "troy oz", "mg/m3", "mol/kg", "tablespoon", "teaspoon", "dessertspoon", "tablespoons", "heaped teaspoon",
    ];

    public static TheoryData<string, string> Slips => new()
    {
        { "potasium-nitrate", "potassium-nitrate" },
        { "potassium-nitrat", "potassium-nitrate" },
        { "amonium nitrate", "ammonium-nitrate" },
        { "magnesium-sulfate-heptahydrat", "magnesium-sulfate-7h2o" },
        { "dipotasium phosphate", "dipotassium-phosphate" },
    };

    [Fact]
    public void ElementsOfAWaterStayWhatTheyAre()
    {
        var text = $"{{\"format\": 1, \"name\": \"Well\", \"ions\": {{{string.Join(", ", _symbols.Select(s => $"\"{s}\": \"1 mg/L\""))}}}}}";
        Assert.Equal(text, Fixed("well.water.json", text));
    }

    [Fact]
    public void ElementsOfTargetsAndLabelsStayWhatTheyAre()
    {
        var members = string.Join(", ", _symbols.Select(s => $"\"{s}\": \"1 mg/L\""));
        var recipe = $"{{\"format\": 1, \"final\": \"10 L\", \"volume\": \"made up\", \"doses\": [], \"targets\": {{{members}}}}}";
        Assert.Equal(recipe, Fixed("tank.recipe.json", recipe));
        var label = $"{{\"format\": 1, \"substances\": [{{\"id\": \"bag\", \"label\": {{\"basis\": \"element\", {members.Replace("1 mg/L", "0.1 %")}}}}}]}}";
        Assert.Equal(label, Fixed("bag.substances.json", label));
    }

    [Fact]
    public void UnitsStayWhatTheyAre() => Unchanged(_units.Select(u => ("potassium-nitrate", $"1 {u}")));

    [Fact]
    public void SubstancesOfTheCatalogueStayWhatTheyAre() => Unchanged(SubstanceCatalogue.BuiltIn.Ids.Select(id => (id, "1 g")));

    [Fact]
    public void ChemicalsOutsideTheCatalogueStayWhatTheyAre()
    {
        Assert.True(_chemicals.Length >= 300, $"{_chemicals.Length} chemicals");
        Unchanged(_chemicals.Select(c => (c, "1 g")));
        Unchanged(_chemicals.Select(c => (c.Replace(' ', '-'), "1 g")));
    }

    /// <summary>The list by which a written word counts as a known thing; where it comes from stands in names.json.</summary>
    [Fact]
    public void KnownNamesAreMoreThanAThousandAndStayWhatTheyAre()
    {
        var names = KnownNames.BuiltIn.Names;
        Assert.True(names.Count >= 1000, $"{names.Count} names");
        Unchanged(names.Where((_, i) => i % (names.Count / 900) == 0).Select(n => (n, "1 g")));
        Unchanged(_symbols.Select(s => (s, "1 g")));
    }

    [Theory]
    [InlineData("humic acid")]
    [InlineData("humic-acid")]
    [InlineData("fe-edta-na")]
    [InlineData("fe-edta")]
    [InlineData("Ca(NO3)2·3H2O")]
    [InlineData("calcium nitrate trihydrate")]
    [InlineData("zinc sulfate hexahydrate")]
    [InlineData("zinc-sulfate-6h2o")]
    [InlineData("KNO2")]
    [InlineData("potassium nitrte")]
    [InlineData("iron(III) sulfate")]
    [InlineData("mn-dtpa")]
    [InlineData("zn-hedta")]
    [InlineData("sulfurous acid")]
    [InlineData("nitric-63")]
    [InlineData("phosphoric-58")]
    [InlineData("sodium-selenite")]
    public void AnotherSubstanceIsAQuestion(string written) => Unchanged([(written, "1 g")]);

    [Theory]
    [MemberData(nameof(Slips))]
    public void ASlipOfThePenIsMended(string written, string meant)
    {
        var text = Stock([(written, "1 g")]);
        Assert.Equal(text.Replace(written, meant), Fixed("a.stock.json", text));
    }

    [Theory]
    [InlineData("1 gramms", "1 g")]
    [InlineData("1 Kilogrm", "1 kg")]
    [InlineData("10 mililiter", "10 mL")]
    [InlineData("5 G", "5 g")]
    public void AMisspeltUnitThatCanOnlyBeOneIsMended(string written, string meant)
    {
        var text = Stock([("nitric-60", written)]);
        Assert.Equal(text.Replace(written, meant), Fixed("a.stock.json", text));
    }

    [Theory]
    [InlineData("~5 g")]
    [InlineData("≈ 5 g")]
    [InlineData("about 5 g")]
    [InlineData("ca. 5 g")]
    [InlineData("5 g approx")]
    public void WhatIsOnlyAboutStaysAbout(string written) => Unchanged([("potassium-nitrate", written)]);

    [Theory]
    [InlineData("MgSO₄·7H₂O", "Magnesium Sulphate Heptahydrate")]
    [InlineData("KNO3", "potassium-nitrate")]
    [InlineData("ZnSO4·7H2O", "ZnSO4 . 7 H2O")]
    public void AFormulaWrittenAsFormulasAreIsLeftAlone(string formula, string other)
    {
        var text = Stock([(other, "1 g"), (other, "2 g"), (formula, "3 g")]);
        Assert.Contains($"\"{formula}\"", Fixed("a.stock.json", text), StringComparison.Ordinal);
    }

    /// <summary>An ide or ite is another ion than the ate: no slip, and some of them poison or explode.</summary>
    [Theory]
    [InlineData("potassium sulfide", "sulfate")]
    [InlineData("magnesium sulfite", "sulfate")]
    [InlineData("sodium sulfide", "sulfate")]
    [InlineData("potassium phosphite", "phosphate")]
    [InlineData("calcium chlorate", "chloride")]
    [InlineData("potassium chlorate", "chloride")]
    [InlineData("calcium nitrite", "nitrate")]
    [InlineData("ammonium nitrite", "nitrate")]
    public void AnotherIonIsNotOffered(string written, string near)
    {
        var finding = Assert.Single(Run("a.stock.json", Stock([(written, "1 g")])).Result.Findings, f => f.Rule.Name == "unknown-substance");
        Assert.DoesNotContain(finding.Suggestions, s => s.Contains(near, StringComparison.Ordinal));
        Assert.DoesNotContain(near, finding.Message, StringComparison.Ordinal);
        Assert.True(
            finding.Suggestions.Count > 0 || finding.Message.Contains("a substance of its own", StringComparison.Ordinal), finding.Message);
    }

    [Fact]
    public void ATablespoonIsAUnitAndNoTeaspoon()
    {
        var run = Run("a.stock.json", Stock([("nitric-60", "1 tbsp")]));
        var addition = Assert.Single(run.Facts.Stocks.Single().Additions);
        Assert.Equal(15, addition.Volume!.Value.Litres * 1000, 9);
        Assert.DoesNotContain(run.Result.Findings, f => f.Rule.Name == "unknown-unit");
    }

    [Fact]
    public void ABasisIsNeverExchangedForAnother()
    {
        const string text = """{"format": 1, "final": "10 L", "volume": "made up", "doses": [], "targets": {"N": "100 mg/L as NO3", "P": "30 mg/L as P2O3"}}""";
        Assert.Equal(text, Fixed("tank.recipe.json", text));
    }

    [Fact]
    public void AKeyThatChangesAFigureIsLeftToItsName()
    {
        var text = Stock([("potassium-nitrate", "60 g\", \"asay\": \"90 %")]);
        Assert.Equal(text, Fixed("a.stock.json", text));
        var desk = Desk("a.stock.json", text, out var judged);
        var finding = judged.Result.Findings.Single(f => f.Rule.Name == "unknown-key");
        Assert.Equal(RepairKind.Chemistry, Assert.Single(desk.For(finding)).Repair.Kind);
    }

    [Fact]
    public void OnlyFilesAskedForAreChanged()
    {
        var tree = Tree(("a.stock.json", Stock([("bag", "1 g")])), ("bags.substances.json", """{"format": 1, "substances": [{"id": "bag", "nmae": "Bag", "formula": "KNO3"}]}"""));
        var session = Session(tree, ["a.stock.json"]);
        session.FixSafe();
        Assert.Empty(session.Changed);
        Assert.Equal(["bags.substances.json"], session.LeftInOthers.Keys);
        session = Session(tree, ["."]);
        session.FixSafe();
        Assert.Equal(["bags.substances.json"], session.Changed.Keys);
    }

    /// <summary>Files made of slips, marks and words that are none: whatever is written, the figures that were there stay.</summary>
    [Fact]
    public void NoFixChangesAFigure()
    {
        var random = new Random(20261129);
        var fixes = 0;
        for (var i = 0; i < 60; i++)
        {
            var tree = Tree(("a.stock.json", SloppyStock(random)), ("tank.recipe.json", SloppyRecipe(random)), ("well.water.json", SloppyWater(random)));
            var session = Session(tree, ["."]);
            var before = session.Now.Facts;
            session.FixSafe();
            fixes += session.Applied.Count;
            Same(before, session.Now.Facts);
        }

        Assert.True(fixes > 100, $"{fixes} fixes");
    }

    private static void Same(Analysis.Facts before, Analysis.Facts after)
    {
        foreach (var was in before.Stocks)
        {
            var now = after.FindStock(was.Stock.File)!;
            foreach (var addition in was.Additions)
            {
                // An id follows from the substance, so an addition found again is the same line of the file.
                var other = now.Additions.SingleOrDefault(a => a.Place == addition.Place);
                Assert.NotNull(other);
                Assert.Equal(addition.Substance.Id, other.Substance.Id);
                Assert.Equal(addition.Mass.Grams, other.Mass.Grams, 9);
                Assert.Equal(addition.Assay.Value, other.Assay.Value, 9);
            }

            if (was.IsComplete)
            {
                Assert.True(now.IsComplete);
                Assert.Equal(was.Volume.Litres, now.Volume.Litres, 9);
                Assert.Equal(was.StorageTemperature, now.StorageTemperature);
                Assert.All(was.Totals.Elements.Union(now.Totals.Elements), e => Assert.Equal(was.Totals[e].Grams, now.Totals[e].Grams, 9));
            }
        }

        foreach (var was in before.Recipes.Where(r => r.IsComplete))
        {
            var now = after.Recipes.Single(r => r.Recipe.File == was.Recipe.File);
            Assert.All(was.Elements.Keys.Union(now.Elements.Keys), k => Assert.Equal(was.MilligramsPerLitre(k), now.MilligramsPerLitre(k), 9));
            Assert.Equal(was.FinalVolume.Litres, now.FinalVolume.Litres, 9);
        }
    }

    private static string SloppyStock(Random random)
    {
        string[] substances =
        [
            "potassium-nitrate", "Potassium Nitrate", "potasium-nitrate", "KNO3", "humic acid", "magnesium-sulfate-7h2o", "magnesium sulfat", "calcium-nitrate-4h2o", "boric-acid",
            "fe-edta-na", "monopotasium-phosphate", "zinc-sulfate-7h20", "sodium molibdate", "urea", "nitric acid", "nitric-60", .. _chemicals.Take(20),
        ];
        string[] amounts = ["5 g", "5 G", "5 gramms", "5 MG", "5 mg", "1 tbsp", "1 tsp", "2,5 g", "1.000 g", "7", "3 handfuls", "5 g roughly", "10 ml", "10 Ml", "1/2 g", "4-5 g"];
        string[] extras = ["", ", \"asay\": \"97 %\"", ", \"Assay\": \"97 %\"", ", \"comment\": \"fine\"", ", \"nots\": \"fine\"", ", \"assay\": \"97%\"", ", \"wiht\": \"scale\"", ", \"assya\": \"0.97\""];
        string[] keys = ["amount", "amout", "Amount", "ammount", "mass"];
        var steps = Enumerable.Range(0, random.Next(1, 5)).Select(_ =>
            $"{{\"add\": \"{Pick(random, substances)}\", \"{Pick(random, keys)}\": \"{Pick(random, amounts)}\"{Pick(random, extras)}}}");
        string[] keeps = ["", "\"keep\": {\"at\": \"8..25 °C\"}, ", "\"kep\": {\"at\": \"8..25 °C\"}, ", "\"keep\": {\"at\": \"8-25 °C\"}, ", "\"Keep\": {\"At\": \"8..25 c\"}, "];
        string[] volumes = ["1 L", "1 l", "1 Litr", "1 liter", "1 gal", "1 Ltr"];
        return $"{{\"format\": 1, \"{Pick(random, ["makes", "make", "Makes"])}\": \"{Pick(random, volumes)}\", \"dose\": \"10 mL/L\", {Pick(random, keeps)}\"steps\": [{string.Join(", ", steps)}]}}";
    }

    private static string SloppyRecipe(Random random) =>
        $"{{\"format\": 1, \"{Pick(random, ["final", "Final", "finl"])}\": \"100 L\", \"volume\": \"{Pick(random, ["made up", "made-up", "Made up", "added to"])}\", "
        + $"\"{Pick(random, ["water", "Water", "watter"])}\": \"{Pick(random, ["well.water.json", "distilled", "destilled", "rain"])}\", \"crop\": \"{Pick(random, ["lettuce", "lettuse", "tomato"])}\", "
        + $"\"doses\": [{{\"stock\": \"a.stock.json\", \"{Pick(random, ["dose", "Dose", "doze"])}\": \"{Pick(random, ["5 mL/L", "5 ml/l", "1:200", "5"])}\"}}], "
        + $"\"targets\": {{\"{Pick(random, ["N", "n", "NO3", "no3-n", "Hg"])}\": \"100 mg/L\", \"{Pick(random, ["K", "k", "K20", "Ka"])}\": \"100 {Pick(random, ["mg/L", "mg/l", "MG/L", "ppm"])}\"}}}}";

    private static string SloppyWater(Random random) =>
        $"{{\"format\": 1, \"name\": \"Well\", \"ions\": {{\"{Pick(random, ["Ca", "ca", "Hg", "As"])}\": \"60 mg/L\", \"{Pick(random, ["HCO3", "hco3", "HC03", "Br"])}\": \"120 mg/L\"}}, \"{Pick(random, ["EC", "ec", "Ec"])}\": \"{Pick(random, ["0.4 mS/cm", "0.4 ms/cm", "0.4 MS/cm"])}\"}}";

    private static string Pick(Random random, string[] texts) => texts[random.Next(texts.Length)];

    private static void Unchanged(IEnumerable<(string Add, string Amount)> additions)
    {
        foreach (var chunk in additions.Chunk(PerFile))
        {
            var text = Stock(chunk);
            Assert.Equal(text, Fixed("a.stock.json", text));
        }
    }

    private static string Stock(IEnumerable<(string Add, string Amount)> additions) =>
        "{\"format\": 1, \"makes\": \"1000 L\", \"steps\": [\n"
        + string.Join(",\n", additions.Select((a, i) => $"  {{\"add\": \"{a.Add}\", \"amount\": \"{a.Amount}\", \"id\": \"s{i}\"}}")) + "\n]}";

    private static string Fixed(string name, string text)
    {
        var session = Session(Tree((name, text)), [name]);
        session.FixSafe();
        return session.Changed.TryGetValue(name, out var bytes) ? Encoding.UTF8.GetString(bytes) : text;
    }

    private static RepairSession Session(MemoryFileTree tree, string[] asked) =>
        new(tree, asked, ExampleRun.Load, ExampleRun.Engine, Judged.Of(tree, asked, ExampleRun.Load, ExampleRun.Engine));

    private static Judged Run(string name, string text) => Judged.Of(Tree((name, text)), [name], ExampleRun.Load, ExampleRun.Engine);

    private static RepairDesk Desk(string name, string text, out Judged judged)
    {
        var tree = Tree((name, text));
        judged = Judged.Of(tree, [name], ExampleRun.Load, ExampleRun.Engine);
        return new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
    }

    private static MemoryFileTree Tree(params (string Name, string Text)[] files)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop");
        foreach (var (name, text) in files)
        {
            tree.Add(name, Encoding.UTF8.GetBytes(text));
        }

        return tree;
    }
}
