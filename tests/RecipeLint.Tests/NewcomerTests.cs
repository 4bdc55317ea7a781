using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What someone meets who has never used the program: slips of the keyboard, words of the trade, habits from elsewhere.</summary>
public sealed class NewcomerTests
{
    [Theory]
    [InlineData("chek .", "no command 'chek'. Did you mean 'check'?")]
    [InlineData("CHECK .", "Did you mean 'check'?")]
    [InlineData("examples/quillmere", "To check it: 'recipelint check examples/quillmere'")]
    [InlineData("frobnicate", "no command 'frobnicate'. Commands are check, ")]
    [InlineData("", "say what to do: check, ")]
    [InlineData("check", "'check' needs a <path>: files, folders")]
    [InlineData("check . --formt text", "'check' has no option '--formt'. Did you mean '--format'?")]
    [InlineData("check --formt=text .", "'check' has no option '--formt'. Did you mean '--format'?")]
    [InlineData("check -z .", "'check' has no option '-z'. A file of that name goes behind '--'.")]
    [InlineData("show -w 80 .", "'show' has no option '-w'. Did you mean '--width'?")]
    [InlineData("lint .", "no command 'lint'. Did you mean 'check'?")]
    [InlineData("validate examples", "Did you mean 'check'?")]
    [InlineData("diff a b", "Did you mean 'compare'?")]
    [InlineData("check . --json", "'check' has no option '--json'. Did you mean '--format json'?")]
    [InlineData("check . --sarif", "Did you mean '--format sarif'?")]
    [InlineData("score examples/quillmere", "'recipelint bench-sheet STOCK --record run.batch.json' begins one")]
    [InlineData("handbook book", "What is written goes behind '--output', such as 'handbook --output book'.")]
    [InlineData("dissolve CaNO3 1 g/L", "did you mean 'calcium-nitrate")]
    [InlineData("dissolve NH4SO4 1 g/L", "did you mean 'ammonium-sulfate'")]
    [InlineData("check . --format srif", "'--format' takes text, sarif, json, markdown, github, junit or csv, not 'srif'. Did you mean 'sarif'?")]
    [InlineData("check . --format=SARIF", "Did you mean 'sarif'?")]
    [InlineData("check . --fail-on warn", "'--fail-on' takes error, warning, note or never, not 'warn'. Did you mean 'warning'?")]
    [InlineData("check . --format", "'--format' needs a value: text, sarif, json, markdown, github, junit or csv.")]
    [InlineData("check . --output", "'--output' needs a value: <file>.")]
    [InlineData("--verson", "no option '--verson'. Did you mean '--version'?")]
    [InlineData("handbook", "'handbook' needs '--output': the folder to write to")]
    [InlineData("facts a.stock.json b.stock.json", "'b.stock.json' is more than 'facts' takes. It takes <file>.")]
    [InlineData("order", "'order' needs a <file>: a stock file.")]
    [InlineData("check examples --threads many", "'--threads' takes a number from 1 to 256, not 'many'")]
    [InlineData("baseline updat", "'baseline' takes compare, prune or update, not 'updat'. Did you mean 'update'?")]
    [InlineData("completion tcsh", "'completion' takes bash, ")]
    [InlineData("list substanzes", "Did you mean 'substances'?")]
    [InlineData("explain gypsum", "'recipelint list rules gypsum' searches them")]
    [InlineData("rules gypsum", "'recipelint explain gypsum' tells of one rule")]
    [InlineData("check schema", "'recipelint init my-shop' writes some to start from")]
    [InlineData("check examples/lettuce.recipe.json", "does not exist")]
    [InlineData("check examples/quillmere/lettuce.recipe.json", "there is 'recipes/lettuce.recipe.json'")]
    [InlineData("check examples\\quillmere\\recipes", "write 'examples/quillmere/recipes'")]
    [InlineData("check examples/quilmere", "'examples/quilmere' does not exist; its folder has 'quillmere'")]
    [InlineData("check examples/quillmere/recipes/letuce.recipe.json", "does not exist; its folder has 'lettuce.recipe.json'")]
    public void ASlipIsAnsweredWithWhatWasMeant(string line, string said)
    {
        var answer = Cli.Run(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        Assert.Equal(2, answer.Code);
        Assert.Contains(said, answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    /// <summary>A table of one's own, the first time: the line to type is in the answer.</summary>
    [Fact]
    public void ATableIsAnsweredWithTheLineToType()
    {
        using var folder = new Scratch();
        folder.Write("shed.csv", "Tank;Salt;Weight (g)\nA;KNO3;52\nA;MgSO4.7H2O;30\n");
        var answer = Cli.RunIn(folder.Path, null, "import", "shed.csv");
        Assert.Equal(2, answer.Code);
        Assert.Contains("--map \"Tank=part\" --map \"Salt=substance\" --map \"Weight (g)=amount in g\"", answer.Error, StringComparison.Ordinal);
        string[] mapped = ["import", "shed.csv", "--map", "Tank=part", "--map", "Salt=substance", "--map", "Weight (g)=amount in g"];
        Assert.Equal(0, Cli.RunIn(folder.Path, null, mapped).Code);
    }

    /// <summary>A sheet that lists salts and then the volume: the warning says what is odd about that, not that 5 L is not 5 L.</summary>
    [Fact]
    public void ATopUpOnDrySaltsIsExplained()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "5 L", "steps": [ { "add": "KNO3", "amount": "900 g" },
              { "add": "fe-dtpa-hna", "amount": "9.5 g" }, { "topUp": "5 L", "of": "distilled" } ] }
            """);
        var said = string.Join(' ', Cli.RunIn(folder.Path, null, "check", ".").Out.Split('\n', StringSplitOptions.TrimEntries));
        Assert.Contains("the top-up to 5 L comes while salts lie undissolved, and dissolved they take up less room", said, StringComparison.Ordinal);
        Assert.DoesNotContain("the last top-up stops at 5 L", said, StringComparison.Ordinal);
    }

    [Fact]
    public void AssumptionsNameTheStockAsItIsCalled()
    {
        var shown = string.Join(' ', Cli.Run("show", "examples/fennelwick/stocks/b.stock.json").Out.Split('\n', StringSplitOptions.TrimEntries));
        Assert.Contains("the finished volume of 'B' is measured", shown, StringComparison.Ordinal);
        Assert.DoesNotContain('{', shown);
    }

    [Fact]
    public void AnEmptyNameIsNoFolder()
    {
        var answer = Cli.Run("check", "");

        Assert.Equal(2, answer.Code);
        Assert.Contains("is an empty name", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("help", "Commands:")]
    [InlineData("help check", "Files, folders or patterns")]
    [InlineData("version", ".")]
    public void WordsOtherProgramsTakeAreUnderstood(string line, string said)
    {
        var answer = Cli.Run(line.Split(' '));

        Assert.Equal(0, answer.Code);
        Assert.Contains(said, answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void BehindTwoHyphensEverythingIsAFile()
    {
        using var scratch = new Scratch();
        scratch.Write("--formt.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");

        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "check", "--", "--formt.stock.json").Code);
    }

    [Fact]
    public void InitNamesEverythingItCannotUseAtOnce()
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, null, "init", "--from", "Foozle 3 g, KNO3 100 g, Calcium 4 g, KH2PO4 12 in 2 L");

        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains("'Foozle' is not in the catalogue", answer.Error, StringComparison.Ordinal);
        Assert.Contains("'Calcium' says what is wanted, not what is weighed", answer.Error, StringComparison.Ordinal);
        Assert.Contains("'12' has no unit", answer.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(scratch.Path));
    }

    [Theory]
    [InlineData("\"add\": \"SiO2\", \"amount\": \"3 g\"", "says what is wanted, not what is weighed", "potassium-silicate-29be")]
    [InlineData("\"add\": \"Calcium\", \"amount\": \"3 g\"", "says what is wanted, not what is weighed", "calcium-nitrate-4h2o")]
    [InlineData("\"add\": \"KNO3\", \"amount\": \"3 lb 4 oz\"", "one amount in two units", "'3.25 lb'")]
    [InlineData("\"add\": \"KNO3\", \"amount\": \"1 kg 250 g\"", "one amount in two units", "'1.25 kg'")]
    [InlineData("\"add\": \"nitric-38\", \"amount\": \"2 cups\"", "A US cup is 236.6 mL and a metric cup 250 mL", "'US cups'")]
    [InlineData("\"add\": \"nitric-38\", \"amount\": \"1 quart\"", "A US quart is 0.946 L and a UK quart 1.137 L", "'UK qt'")]
    [InlineData("\"add\": \"nitric-38\", \"amount\": \"1 pint\"", "A US pint is 473 mL and a UK pint 568 mL", "'US pt'")]
    [InlineData("\"add\": \"KNO3\", \"amount\": \"1 pinch\"", "Weigh it once, and write the mass", "'pinch'")]
    [InlineData("\"add\": \"KNO3\", \"amount\": \"about 3 g\"", "says nothing that can be computed", "'3 g ± 5 %'")]
    [InlineData("\"add\": \"KNO3\", \"amount\": \"ca. 3 g\"", "says nothing that can be computed", "'3 g'")]
    [InlineData("\"add\": \"KNO3\", \"amount\": \"500000 kg\"", "500 t of a solid in 1 L", "250|500 t for each litre")]
    [InlineData("\"add\": \"KNO3\", \"grams\": \"3 g\"", "\"grams\" is not known here", "\"amount\"")]
    [InlineData("\"add\": \"water\", \"amount\": \"500 mL\"", "Water is not added but poured", "{\"pour\": \"500 mL\"")]
    [InlineData("\"add\": \"RO water\", \"amount\": \"500 mL\"", "Water is not added but poured", "{\"topUp\": \"1 L\"}")]
    [InlineData("\"add\": \"distilled water\", \"amount\": \"500 mL\"", "Water is not added but poured", "\"distilled\"")]
    [InlineData("\"add\": \"pH down\", \"amount\": \"5 mL\"", "what it does, not what it is", "'nitric-38'")]
    [InlineData("\"add\": \"cal nitrate\", \"amount\": \"5 g\"", "Did you mean", "'calcium-nitrate-4h2o'")]
    [InlineData("\"add\": \"mag-sulf\", \"amount\": \"5 g\"", "Did you mean", "'magnesium-sulfate-7h2o'")]
    [InlineData("\"add\": \"pot sil\", \"amount\": \"5 g\"", "Did you mean", "'potassium-silicate")]
    [InlineData("\"add\": \"chelated iron\", \"amount\": \"5 g\"", "Did you mean", "'fe-dtpa-hna'")]
    [InlineData("\"water\": \"500 mL\"", "\"water\" is not known here", "\"pour\"")]
    [InlineData("\"salt\": \"KNO3\", \"amount\": \"3 g\"", "\"salt\" is not known here", "\"add\"")]
    public void AStepAsANewcomerWritesIt(string step, string said, string offered)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", $$"""{ "format": 1, "makes": "1 L", "steps": [ { "pour": "500 mL" }, { {{step}} }, { "topUp": "1 L" } ] }""");
        var text = Flowing(Cli.RunIn(scratch.Path, null, "check", "a.stock.json").Out);

        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Contains(offered.Split('|'), o => text.Contains(o, StringComparison.Ordinal));
        Assert.DoesNotContain("E+", text, StringComparison.Ordinal);
    }

    /// <summary>The shape is shown, not only named: a bag as a key, a step as a sentence, a place as a word.</summary>
    [Theory]
    [InlineData("\"steps\": [ { \"KNO3\": \"10 g\" } ]", "write { \"add\": \"KNO3\", \"amount\": \"10 g\" }")]
    [InlineData("\"steps\": [ \"KNO3 10 g\" ]", "such as {\"add\": ")]
    [InlineData("\"keep\": \"fridge\", \"steps\": [ { \"topUp\": \"1 L\" } ]", "such as {\"at\": ")]
    public void AShapeIsShown(string body, string said)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", $$"""{ "format": 1, "makes": "1 L", {{body}} }""");

        Assert.Contains(said, Flowing(Cli.RunIn(scratch.Path, null, "check", "a.stock.json").Out), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2", "a newer form of this file; this program reads 1")]
    [InlineData("0", "\"format\" must be 1, not 0")]
    public void AFormatOfTomorrowAsksForANewerProgram(string format, string said)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", $$"""{ "format": {{format}}, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");

        Assert.Contains(said, Flowing(Cli.RunIn(scratch.Path, null, "check", "a.stock.json").Out), StringComparison.Ordinal);
    }

    [Fact]
    public void AFileOfAnotherNameIsToldWhatToBeCalled()
    {
        using var scratch = new Scratch();
        scratch.Write("part-a.json", "{ }");
        Assert.Contains("call it 'part-a.stock.json'", Cli.RunIn(scratch.Path, null, "check", "part-a.json").Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"P2O5\": \"90 mg/L\"", "write \"P\": \"90 mg/L as P2O5\"")]
    [InlineData("\"K2O\": \"200 mg/L\"", "write \"K\": \"200 mg/L as K2O\"")]
    [InlineData("\"SiO2\": \"30 mg/L\"", "write \"Si\": \"30 mg/L as SiO2\"")]
    [InlineData("\"NO3\": \"500 mg/L\"", "write \"NO3-N\": \"500 mg/L as NO3\"")]
    [InlineData("\"P\": \"40 mg/L P2O5\"", "'40 mg/L as P2O5'")]
    [InlineData("\"P\": \"40 mg/L of P2O5\"", "'40 mg/L as P2O5'")]
    [InlineData("\"Nitrogen\": \"150 mg/L\"", "Did you mean \"N\"?")]
    [InlineData("\"ec\": \"2.0 mS/cm\"", "Did you mean \"EC\"?")]
    public void ATargetAsANewcomerWritesIt(string target, string said)
    {
        using var scratch = new Scratch();
        scratch.Write("a.recipe.json", Recipe("\"crop\": \"lettuce\"", target));

        Assert.Contains(said, Flowing(Cli.RunIn(scratch.Path, null, "check", "a.recipe.json").Out), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"ions\": { \"Ca\": \"80 mg/L\", \"N-NO3\": \"5 mg/L\" }", "Did you mean \"NO3-N\"?")]
    [InlineData("\"ions\": { \"Ca\": \"80 mg/L\" }, \"alkalinity\": \"210 mg/L CaCO3\"", "'210 mg/L as CaCO3'")]
    [InlineData("\"ions\": { \"Ca\": \"80 mg/L\", \"Alk\": \"210 mg/L as CaCO3\" }", "\"alkalinity\" belongs one level up, beside \"ions\"")]
    [InlineData("\"ions\": { \"Mg\": \"8 mg/L\" }, \"Ca\": \"80 mg/L\"", "It belongs into \"ions\"")]
    [InlineData("\"ions\": { \"Ca\": \"80 mg/L\" }, \"TDS\": \"300 ppm\"", "write \"EC\" in mS/cm")]
    [InlineData("\"ions\": { \"calcium\": \"80 mg/L\" }", "Did you mean \"Ca\"?")]
    [InlineData("\"ions\": { \"Ca2+\": \"80 mg/L\" }", "Did you mean \"Ca\"?")]
    [InlineData("\"ions\": { \"Fe\": \"n.d.\" }", "as a range up to the least the method finds, such as '0..0.1 mg/L'")]
    [InlineData("\"ions\": { \"Fe\": \"trace\" }", "Leave the key out")]
    [InlineData("\"EC\": \"650 µS\"", "Did you mean 'µS/cm'?")]
    [InlineData("\"ions\": { \"NO3-\": \"8 mg/L\" }", "Did you mean \"NO3\"?")]
    [InlineData("\"ions\": { \"SO4 2-\": \"8 mg/L\" }", "Did you mean \"SO4\"?")]
    [InlineData("\"ions\": { \"Mg\": \"8 mg/L\" }, \"calcium\": \"80 mg/L\"", "It belongs into \"ions\", as \"Ca\".")]
    [InlineData("\"ions\": { \"Mg\": \"8 mg/L\" }, \"Ca2+\": \"80 mg/L\"", "It belongs into \"ions\", as \"Ca\".")]
    [InlineData("\"alkalinity\": \"3 meq/L\", \"gh\": \"10 °dH\"", "Did you mean \"hardness\"?")]
    public void AnAnalysisAsANewcomerWritesIt(string body, string said)
    {
        using var scratch = new Scratch();
        scratch.Write("tap.water.json", $$"""{ "format": 1, {{body}} }""");

        Assert.Contains(said, Flowing(Cli.RunIn(scratch.Path, null, "check", "tap.water.json").Out), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("RO", "'reverse-osmosis'")]
    [InlineData("R.O. water", "'reverse-osmosis'")]
    [InlineData("DI", "'distilled'")]
    [InlineData("deionised water", "'distilled'")]
    [InlineData("rainwater", "'rain'")]
    [InlineData("city", "'recipelint init --water' asks for what its report says")]
    public void AWaterIsKnownByItsOtherNames(string written, string meant)
    {
        using var scratch = new Scratch();
        scratch.Write("tap.water.json", """{ "format": 1 }""");
        scratch.Write("a.recipe.json", Recipe("\"crop\": \"lettuce\"", "\"K\": \"50 mg/L\"").Replace("\"final\"", $"\"water\": \"{written}\", \"final\"", StringComparison.Ordinal));

        Assert.Contains(!meant.Contains(' ') ? $"Did you mean {meant}?" : meant, Flowing(Cli.RunIn(scratch.Path, null, "check", "a.recipe.json").Out), StringComparison.Ordinal);
    }

    /// <summary>Nitrite is no mistyped nitrate, nor aluminium a mistyped chloride: to rename one would change what the file says.</summary>
    [Theory]
    [InlineData("NO2")]
    [InlineData("Al")]
    [InlineData("Se")]
    [InlineData("SO3")]
    public void AFormulaIsNoSlipOfAnother(string key)
    {
        using var scratch = new Scratch();
        scratch.Write("tap.water.json", $$"""{ "format": 1, "ions": { "{{key}}": "1 mg/L" } }""");
        var answer = Cli.RunIn(scratch.Path, null, "check", "tap.water.json", "--fix", "--dry-run");

        Assert.Equal("", answer.Out);
        Assert.DoesNotContain("Did you mean", Cli.RunIn(scratch.Path, null, "check", "tap.water.json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AConductivityIsReadInBothSpellingsAndFixWritesTheOneOfToday()
    {
        using var scratch = new Scratch();
        scratch.Write("tap.water.json", """{ "format": 1, "EC": "0.5 mS/cm" }""");
        scratch.Write("old.water.json", """{ "format": 1, "ec": "0.5 mS/cm" }""");

        var finding = Assert.Single(Cli.RunIn(scratch.Path, null, "check", ".").Findings);
        Assert.StartsWith("old.water.json:1:16: note RL0053 older-spelling", finding, StringComparison.Ordinal);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "check", ".", "--fix", "--fail-on", "note").Code);
        Assert.Equal(File.ReadAllText(Path.Combine(scratch.Path, "tap.water.json")), File.ReadAllText(Path.Combine(scratch.Path, "old.water.json")));
    }

    [Fact]
    public void EveryKeyThatTheSchemasCallOlderIsWrittenAnewByFix()
    {
        foreach (var file in Directory.GetFiles(Path.Combine(Reports.Tests.Support.Repository.Root, "schema"), "*.schema.json"))
        {
            var properties = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(file))!["properties"]?.AsObject() ?? [];
            var older = properties.Where(p => p.Value?["deprecated"]?.GetValue<bool>() == true).Select(p => p.Key);
            Assert.All(older, key => Assert.Contains(Recipes.Schema.OlderKeys.All, k => k.Old == key && Path.GetFileName(file).StartsWith(k.Kind.ToString().ToLowerInvariant(), StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void ANameForAFileIsAnsweredWithTheFile()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{ \"format\": 1 }");
        scratch.Write("water/tap.water.json", """{ "format": 1, "EC": "0.5 mS/cm" }""");
        scratch.Write("stocks/a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");
        scratch.Write("recipes/r.recipe.json", Recipe("\"crop\": \"Lettuce\", \"water\": \"tap\"", "\"N\": \"100 mg/L\"").Replace("{ \"add\"", "{ \"stock\": \"A\" }, { \"add\""));
        var text = Flowing(Cli.RunIn(scratch.Path, null, "check", ".").Out);

        Assert.Contains("Did you mean '../water/tap.water.json'?", text, StringComparison.Ordinal);
        Assert.Contains("Did you mean '../stocks/a.stock.json'?", text, StringComparison.Ordinal);
        Assert.Contains("Did you mean 'lettuce'?", text, StringComparison.Ordinal);
        Assert.DoesNotContain("recipelint.json:", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AByteOrderMarkIsANote()
    {
        using var scratch = new Scratch();
        File.WriteAllBytes(Path.Combine(scratch.Path, "tap.water.json"), [0xEF, 0xBB, 0xBF, .. """{ "format": 1, "EC": "0.5 mS/cm" }"""u8]);
        var answer = Cli.RunIn(scratch.Path, null, "check", "tap.water.json");

        Assert.Equal(0, answer.Code);
        Assert.Contains("note RL0002", Assert.Single(answer.Findings), StringComparison.Ordinal);
    }

    [Fact]
    public void AnAssumptionNamesItsFile()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "add": "KNO3", "amount": "3 g" }, { "topUp": "1 L" } ] }""");
        scratch.Write("b.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");
        var text = Flowing(Cli.RunIn(scratch.Path, null, "check", ".").Out);

        Assert.Contains("a.stock.json: No assay is declared", text, StringComparison.Ordinal);
        Assert.Contains("a.stock.json: No storage temperature is stated: 5 to 30 °C is taken (and alike in 1 more file).", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AFullDeviceIsOneLineAndAPipeIsWrittenAsItIs()
    {
        if (!File.Exists("/dev/full"))
        {
            return;
        }

        var full = Cli.Run("check", "examples/quillmere", "--output", "/dev/full");
        Assert.Equal(2, full.Code);
        Assert.Single(full.Error.TrimEnd('\n').Split('\n'));
        Assert.Equal(0, Cli.Run("check", "examples/quillmere", "--output", "/dev/null").Code);
        Assert.True(File.Exists("/dev/null"));
        Assert.Empty(Directory.EnumerateFiles("/dev", "*.partial"));
    }

    [Fact]
    public void ALinkedFolderInsideIsFollowedAndOneThatLeadsOutIsNot()
    {
        using var scratch = new Scratch();
        scratch.Write("shop/recipelint.json", "{ }");
        scratch.Write("shop/common/a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");
        scratch.Write("shop/here/b.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "add": "shared/a.stock.json", "amount": "10 mL" }, { "topUp": "1 L" } ] }""");
        scratch.Write("other/c.stock.json", "{ }");
        Directory.CreateSymbolicLink(Path.Combine(scratch.Path, "shop/here/shared"), "../common");
        Directory.CreateSymbolicLink(Path.Combine(scratch.Path, "shop/here/up"), "..");
        Directory.CreateSymbolicLink(Path.Combine(scratch.Path, "shop/here/out"), "../../other");

        foreach (var (asked, files) in new[] { ("shop", "3 files"), ("shop/here", "2 files"), ("shop/here/shared", "1 file") })
        {
            var answer = Cli.RunIn(scratch.Path, null, "check", asked);
            Assert.Equal(0, answer.Code);
            Assert.Contains(files, answer.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("shared/", answer.Out, StringComparison.Ordinal);
        }

        var refused = Cli.RunIn(scratch.Path, null, "check", "shop/here/out");
        Assert.Equal(2, refused.Code);
        Assert.Contains("is a link that leads out of the repository", refused.Error, StringComparison.Ordinal);
    }

    private static string Recipe(string head, string target) =>
        $$"""{ "format": 1, "name": "x", {{head}}, "final": "100 L", "volume": "made up", "doses": [ { "add": "KNO3", "amount": "10 g", "assay": "99 %" } ], "targets": { {{target}} } }""";

    /// <summary>The report without its line breaks, so that wrapping does not matter.</summary>
    private static string Flowing(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
