using System.Text.Json.Nodes;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Importing;

/// <summary>Tables become files that say the same: nothing is guessed and nothing is lost.</summary>
public sealed class ImportTests
{
    private const string Shed = "\uFEFFMixing table, shed;;;;\nTank;Salz;Menge (g);Lieferant;Bemerkung\n"
        + "A;calcium-nitrate-4h2o;62,5;Depot;\"first; warm\"\nA;KNO3;22;;\nB;MgSO4.7H2O;1.234,5;;\nTotal;;96;;\n";

    private static readonly string[] _maps =
        ["--map", "Tank=part", "--map", "Salz=substance", "--map", "Menge (g)=amount in g", "--map", "Bemerkung=note"];

    [Fact]
    public void EveryPartBecomesAStockAndNothingIsLost()
    {
        using var scratch = new Scratch();
        scratch.Write("shed.csv", Shed);
        var answer = Cli.RunIn(scratch.Path, null, ["import", "shed.csv", .. _maps, "--decimal", "comma", "--makes", "1 L", "--makes", "B=2 L"]);

        Assert.Equal((0, ""), (answer.Code, answer.Error));
        var (a, b) = (Read(scratch, "a.stock.json"), Read(scratch, "b.stock.json"));
        Assert.Equal("62.5 g", (string?)a["steps"]![0]!["amount"]);
        Assert.Equal("Lieferant: Depot; first; warm", (string?)a["steps"]![0]!["note"]);
        Assert.Equal("22 g", (string?)a["steps"]![1]!["amount"]);
        Assert.Equal("1 L", (string?)a["steps"]![2]!["topUp"]);
        Assert.Equal("1234.5 g", (string?)b["steps"]![0]!["amount"]);
        Assert.Equal("2 L", (string?)b["makes"]);
        Assert.Contains("Mixing table, shed", (string?)a["note"], StringComparison.Ordinal);
        Assert.Equal("row 6: Total | 96", (string?)b["notUnderstood"]![0]);
        Assert.Equal(3, Directory.GetFiles(scratch.Path).Length);
        var check = Cli.RunIn(scratch.Path, null, "check", "b.stock.json");
        Assert.Contains(check.Findings, f => f.Contains("RL0045 import-not-understood", StringComparison.Ordinal));
    }

    /// <summary>Without a word on the decimal sign the number stands as it is, and the check asks which one is meant.</summary>
    [Fact]
    public void ADecimalCommaIsNotGuessed()
    {
        using var scratch = new Scratch();
        scratch.Write("shed.csv", Shed);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, ["import", "shed.csv", .. _maps, "--makes", "1 L"]).Code);

        Assert.Equal("62,5 g", (string?)Read(scratch, "a.stock.json")["steps"]![0]!["amount"]);
        var check = Cli.RunIn(scratch.Path, null, "check", "a.stock.json");
        Assert.Contains(check.Findings, f => f.StartsWith("a.stock.json:7:49: error RL0013", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatWasSaidOnceIsRememberedWhereAsked()
    {
        using var scratch = new Scratch();
        scratch.Write("shed.csv", Shed);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, ["import", "shed.csv", .. _maps, "--decimal", "comma", "--into", "one", "--remember", "shed-columns.json"]).Code);
        var again = Cli.RunIn(scratch.Path, null, "import", "shed.csv", "--mapping", "shed-columns.json", "--into", "two");

        Assert.Equal(0, again.Code);
        foreach (var file in Directory.GetFiles(Path.Combine(scratch.Path, "one")))
        {
            Assert.Equal(File.ReadAllText(file), File.ReadAllText(file.Replace("/one/", "/two/", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void QuestionsAreAskedAndTheirAnswersUsed()
    {
        using var scratch = new Scratch();
        scratch.Write("shed.csv", "Salt,Weight\nKNO3,\"7,5\"\n");
        var answers = "substance\namount in g\ncomma\n2 L\n"u8.ToArray();
        var answer = Cli.RunIn(scratch.Path, answers, "import", "shed.csv", "--ask");

        Assert.Equal(0, answer.Code);
        Assert.Contains("Often it is 'substance'.", answer.Out, StringComparison.Ordinal);
        var stock = Read(scratch, "shed.stock.json");
        Assert.Equal(("7.5 g", "2 L"), ((string?)stock["steps"]![0]!["amount"], (string?)stock["makes"]));
    }

    [Fact]
    public void NothingIsOverwritten()
    {
        using var scratch = new Scratch();
        scratch.Write("shed.csv", Shed);
        scratch.Write("b.stock.json", "mine");
        var answer = Cli.RunIn(scratch.Path, null, ["import", "shed.csv", .. _maps, "--remember", "columns.json"]);

        Assert.Equal(2, answer.Code);
        Assert.Contains("b.stock.json", answer.Error, StringComparison.Ordinal);
        Assert.Equal(["b.stock.json", "shed.csv"], Directory.GetFiles(scratch.Path).Select(Path.GetFileName).Order());
    }

    [Theory]
    [InlineData("Part,Salt,Weight\nA,KNO3,1 g\n", "--map \"Salt=substance\"")]
    [InlineData("substance,mass\nKNO3,1 g\n", "--map \"mass=amount\"")]
    [InlineData("x\n1\n", "single column")]
    [InlineData("", "single column")]
    [InlineData("substance;amount,b\nKNO3;1 g,2\n", "--separator")]
    [InlineData("substance,amount\n\"KNO3,1 g\n", "never closed")]
    [InlineData("substance,amount\n,\n", "no row has both")]
    public void WhatIsUnclearIsOneLine(string table, string hint)
    {
        using var scratch = new Scratch();
        scratch.Write("t.csv", table);
        var answer = Cli.RunIn(scratch.Path, null, "import", "t.csv");

        Assert.Equal(2, answer.Code);
        Assert.Contains(hint, answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Single(Directory.GetFileSystemEntries(scratch.Path));
    }

    /// <summary>A cell that a spreadsheet would run is a name like any other, and nobody's substance.</summary>
    [Theory]
    [InlineData("=cmd|' /C calc'!A0")]
    [InlineData("@SUM(1+1)*cmd|' /C calc'!A0")]
    [InlineData("\u001B[2J")]
    [InlineData("../../etc/passwd.stock.json")]
    public void CellsThatMeanHarmAreText(string cell)
    {
        using var scratch = new Scratch();
        scratch.Write("t.csv", $"substance,amount\n\"{cell}\",1 g\nKNO3,2 g\n");
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "import", "t.csv", "--makes", "1 L").Code);
        var check = Cli.RunIn(scratch.Path, null, "check", "t.stock.json");

        Assert.Equal(1, check.Code);
        Assert.DoesNotContain('\u001B', check.Out);
        Assert.Contains(check.Findings, f => f.Contains("t.stock.json:7:14", StringComparison.Ordinal));
    }

    /// <summary>Every example stock, written as a table and read again, is the same stock.</summary>
    [Theory]
    [InlineData("quillmere", "csv")]
    [InlineData("quillmere", "xlsx")]
    [InlineData("quillmere-first-draft", "csv")]
    [InlineData("quillmere-first-draft", "xlsx")]
    public void AStockWrittenAsATableComesBack(string shop, string form)
    {
        string[] keys = ["step", "substance", "amount", "with", "assay", "strength", "id", "note", "makes", "dose"];
        foreach (var file in Directory.GetFiles(Path.Combine(Reports.Tests.Support.Repository.Root, "examples", shop, "stocks"), "*.stock.json"))
        {
            using var scratch = new Scratch();
            var stock = JsonNode.Parse(File.ReadAllText(file))!;
            string[][] rows = [keys, .. stock["steps"]!.AsArray().Select(s => Row(s!.AsObject(), stock))];
            var table = Path.Combine(scratch.Path, "t." + form);
            if (form == "csv")
            {
                File.WriteAllLines(table, rows.Select(r => string.Join(',', r.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\""))));
            }
            else
            {
                File.WriteAllBytes(table, new WorkbookMaker().Sheet("One", rows).Pack());
            }

            var answer = Cli.RunIn(scratch.Path, null, "import", table, "--name", (string)stock["name"]!);
            Assert.Equal((0, ""), (answer.Code, answer.Error));
            var back = JsonNode.Parse(File.ReadAllText(Directory.GetFiles(scratch.Path, "*.stock.json").Single()))!;
            Assert.Null(back["notUnderstood"]);
            foreach (var key in (string[])["name", "makes", "dose"])
            {
                Assert.Equal((string?)stock[key], (string?)back[key]);
            }

            Assert.Equal(Plain(stock["steps"]!), Plain(back["steps"]!));
        }
    }

    [Theory]
    [InlineData("analyte,value,unit,basis,sample\nCa,82,mg/L,,Well\nHCO3,180,mg/L,CaCO3,Well\npH,7.4,,,Well\nNitrate,12,mg/L,,Well\n")]
    [InlineData("sample,Ca (mg/L),HCO3 [mg/L as CaCO3],pH,Nitrate\nWell,82,180,7.4,12 mg/L\n")]
    public void AnAnalysisComesInRowsOrColumns(string table)
    {
        using var scratch = new Scratch();
        scratch.Write("lab.csv", table);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "import", "lab.csv").Code);
        var water = Read(scratch, "well.water.json");

        Assert.Equal("82 mg/L", (string?)water["ions"]!["Ca"]);
        Assert.Equal("180 mg/L as CaCO3", (string?)water["ions"]!["HCO3"]);
        Assert.Equal("7.4", (string?)water["pH"]);

        // Whether nitrate counts as N or as NO3 is not guessed: it is asked on the file, or kept in its note.
        var said = (string?)water["ions"]!["Nitrate"] ?? (string?)water["note"];
        Assert.Contains("12 mg/L", said, StringComparison.Ordinal);
    }

    /// <summary>What the check will not understand is not counted as understood; the name of an element is its symbol by any reading.</summary>
    [Fact]
    public void OnlyWhatTheCheckUnderstandsIsCountedAsUnderstood()
    {
        using var scratch = new Scratch();
        scratch.Write("lab.csv", "analyte,value,unit\nCalcium,95,mg/L\nNitrate,5,mg/L\nSulfur,15,mg/L\nhardness,250,mg/l CaCO3\npH,7.4,\n");
        var run = Cli.RunIn(scratch.Path, null, "import", "lab.csv");
        Assert.Contains("3 entries understood; 2 not understood", run.Out, StringComparison.Ordinal);
        var water = Read(scratch, "lab.water.json");
        Assert.Equal("95 mg/L", (string?)water["ions"]!["Ca"]);
        Assert.Equal("5 mg/L", (string?)water["ions"]!["Nitrate"]);
        var check = Cli.RunIn(scratch.Path, null, "check", "lab.water.json");
        Assert.DoesNotContain("\"Calcium\"", check.Out, StringComparison.Ordinal);
        Assert.Contains("\"Nitrate\"", check.Out, StringComparison.Ordinal);
    }

    /// <summary>A cell with a unit of its own does not get that of its heading as well; an amount that cannot be read is not understood.</summary>
    [Fact]
    public void AUnitInTheCellHoldsAndNotThatOfTheHeading()
    {
        using var scratch = new Scratch();
        scratch.Write("mix.csv", "substance,amount (lb)\nKNO3,8\nMgSO4.7H2O,4 lbs\nKH2PO4,1.5kg\nCa(NO3)2.4H2O,a handful\n");
        var run = Cli.RunIn(scratch.Path, null, "import", "mix.csv", "--makes", "100 L");
        var amounts = Read(scratch, "mix.stock.json")["steps"]!.AsArray().Select(s => (string?)s!["amount"]).ToList();
        Assert.Equal(["8 lb", "4 lbs", "1.5kg"], amounts.Take(3));
        Assert.Contains("; 1 not understood, a finding now", run.Out, StringComparison.Ordinal);
    }

    /// <summary>The water of an example as a table with one value a row comes back as it was.</summary>
    [Fact]
    public void AnAnalysisWrittenAsATableComesBack()
    {
        using var scratch = new Scratch();
        var file = Path.Combine(Reports.Tests.Support.Repository.Root, "examples", "quillmere", "water", "rain.water.json");
        var ions = JsonNode.Parse(File.ReadAllText(file))!["ions"]!.AsObject();
        scratch.Write("lab.csv", "analyte,value\n" + string.Concat(ions.Select(i => $"{i.Key},{i.Value}\n")));
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "import", "lab.csv").Code);

        Assert.Equal(ions.ToJsonString(), Read(scratch, "lab.water.json")["ions"]!.ToJsonString());
    }

    private static JsonNode Read(Scratch scratch, string name) => JsonNode.Parse(File.ReadAllText(Path.Combine(scratch.Path, name)))!;

    private static string[] Row(JsonObject step, JsonNode stock)
    {
        string Text(string key) => step[key]?.ToString() ?? "";
        string[] verbs = ["add", "pour", "topUp", "adjust", "stir", "filter", "warm", "cool", "rest", "rinse"];
        var verb = verbs.First(step.ContainsKey);
        var (what, amount) = verb switch
        {
            "add" => (Text("add"), Text("amount")),
            "pour" or "topUp" => (Text("of"), Text(verb)),
            "adjust" => (Text("using"), Text(verb)),
            _ => (Text(verb), ""),
        };
        return [verb, what, amount, Text("with"), Text("assay"), Text("strength"), Text("id"), Text("note"), (string?)stock["makes"] ?? "", (string?)stock["dose"] ?? ""];
    }

    /// <summary>Steps with their keys in one order.</summary>
    private static string Plain(JsonNode steps) => string.Join(
        '\n', steps.AsArray().Select(s => string.Join(", ", s!.AsObject().OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => $"{m.Key}={m.Value}"))));
}
