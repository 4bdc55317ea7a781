using System.Globalization;
using System.Text.Json;
using RecipeLint.Reports;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class ShowTests
{
    private const string Lettuce = "examples/quillmere/recipes/lettuce.recipe.json";

    private const string PartB = "examples/quillmere/stocks/part-b.stock.json";

    private const string Rain = "examples/quillmere/water/rain.water.json";

    /// <summary>Every recipe, stock and water of the examples and of the rules.</summary>
    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.json", SearchOption.AllDirectories)
        .Where(f => f.EndsWith(".recipe.json", StringComparison.Ordinal) || f.EndsWith(".stock.json", StringComparison.Ordinal)
            || f.EndsWith(".water.json", StringComparison.Ordinal))
        .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
        .Order(StringComparer.Ordinal)];

    /// <summary>Arithmetic by hand: 100 g of 25 kg at 50, 20 mL of 10 L at 30; a salt without a price is left out and named.</summary>
    [Fact]
    public void PricesOfTheShopTellWhatABatchCosts()
    {
        using var folder = new Scratch();
        folder.Write("recipelint.json", """{"currency": "EUR", "prices": [{"of": "KNO3", "cost": 50, "for": "25 kg"}, {"of": "nitric-38", "cost": 30, "for": "10 L"}]}""");
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "2 L", "dose": "10 mL/L", "steps": [ { "pour": "1.5 L", "of": "distilled" }, { "add": "nitric-38", "amount": "20 mL" },
              { "add": "potassium-nitrate", "amount": "100 g" }, { "add": "magnesium-nitrate-6h2o", "amount": "10 g" }, { "topUp": "2 L" } ] }
            """);
        folder.Write("t.recipe.json", """{ "format": 1, "water": "distilled", "final": "100 L", "volume": "made up", "doses": [ { "stock": "a.stock.json", "dose": "10 mL/L" } ] }""");
        var stock = Cli.RunIn(folder.Path, null, "show", "a.stock.json").Out;
        Assert.Contains("0.26 EUR for 2 L, 0.13 EUR a litre, 1.3 EUR for 1000 L of solution.", stock, StringComparison.Ordinal);
        Assert.Contains("Without a price, and not counted: magnesium nitrate", stock, StringComparison.Ordinal);
        Assert.Contains("0.13 EUR for 100 L, 0.0013 EUR a litre, 1.3 EUR for 1000 L.", Cli.RunIn(folder.Path, null, "show", "t.recipe.json").Out, StringComparison.Ordinal);
        Assert.Contains("price of KNO3", Cli.RunIn(folder.Path, null, "settings", "a.stock.json").Out, StringComparison.Ordinal);
        folder.Write("recipelint.json", "{}");
        Assert.DoesNotContain("Cost", Cli.RunIn(folder.Path, null, "show", "a.stock.json").Out, StringComparison.Ordinal);
    }

    /// <summary>By hand: 100 g of a bag of 25 kg at 50 are 0.2; what has no price is named with null and the whole is not whole.</summary>
    [Fact]
    public void TheFactsHoldTheSameCostAsTheTable()
    {
        using var folder = new Scratch();
        folder.Write("recipelint.json", """{"currency": "EUR", "prices": [{"of": "KNO3", "cost": 50, "for": "25 kg"}]}""");
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "2 L", "dose": "10 mL/L", "steps": [ { "pour": "1.5 L", "of": "distilled" },
              { "add": "potassium-nitrate", "amount": "100 g" }, { "add": "magnesium-nitrate-6h2o", "amount": "10 g" }, { "topUp": "2 L" } ] }
            """);
        folder.Write("t.recipe.json", """{ "format": 1, "water": "distilled", "final": "100 L", "volume": "made up", "doses": [ { "stock": "a.stock.json", "dose": "10 mL/L" } ] }""");
        var cost = Cost("a.stock.json");
        Assert.Equal("EUR", cost.GetProperty("currency").GetString());
        Assert.Equal(0.2, cost.GetProperty("batch").GetDouble(), 12);
        Assert.Equal(0.1, cost.GetProperty("perLitre").GetDouble(), 12);
        Assert.False(cost.GetProperty("whole").GetBoolean());
        Assert.Equal(["potassium-nitrate", "magnesium-nitrate-6h2o"], cost.GetProperty("shares").EnumerateArray().Select(s => s.GetProperty("substance").GetString()!));
        Assert.Equal(JsonValueKind.Null, cost.GetProperty("shares")[1].GetProperty("cost").ValueKind);
        Assert.Equal(0.1, Cost("t.recipe.json").GetProperty("batch").GetDouble(), 12);
        folder.Write("recipelint.json", "{}");
        Assert.DoesNotContain("\"cost\"", Cli.RunIn(folder.Path, null, "facts", "a.stock.json").Out, StringComparison.Ordinal);

        JsonElement Cost(string file) => JsonDocument.Parse(Cli.RunIn(folder.Path, null, "facts", file).Out).RootElement.GetProperty("cost");
    }

    /// <summary>A price that fits nothing counts for nothing, and nobody would see it: it is told at its place, whatever file is checked.</summary>
    [Theory]
    [InlineData("potasium-nitrat", "RL0021", "'potassium-nitrate'")]
    [InlineData("K2O", "RL0021", "potassium")]
    [InlineData("zinc sulphate", "RL0022", "zinc-sulfate-7h2o")]
    public void APriceWhoseNameFitsNothingIsAFinding(string name, string rule, string says)
    {
        using var folder = new Scratch();
        folder.Write("recipelint.json", $$"""
            {
              "prices": [
                {"of": "KNO3", "cost": 50, "for": "25 kg"},
                {"of": "{{name}}", "cost": 30, "for": "25 kg"}
              ]
            }
            """);
        folder.Write("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "pour": "0.8 L", "of": "distilled" }, { "add": "potassium-nitrate", "amount": "100 g" }, { "topUp": "1 L" } ] }""");
        foreach (var path in new[] { ".", "recipelint.json", "a.stock.json" })
        {
            var checkedOut = Cli.RunIn(folder.Path, null, "check", path, "--quiet").Out;
            var line = Assert.Single(checkedOut.Split('\n'), l => l.StartsWith("recipelint.json:", StringComparison.Ordinal));
            Assert.StartsWith("recipelint.json:4:", line, StringComparison.Ordinal);
            Assert.Contains(rule, line, StringComparison.Ordinal);
            Assert.Contains("warning", line, StringComparison.Ordinal);
        }

        Assert.Contains(says, Cli.RunIn(folder.Path, null, "check", ".").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ASecondPriceOfOneSubstanceIsAFindingAndAProductOfTheShopMayHaveAPrice()
    {
        using var folder = new Scratch();
        folder.Write("lists/own.substances.json", """{ "format": 1, "substances": [ { "id": "blue-bag", "name": "Blue bag", "label": { "N": "10 %", "K": { "as": "K2O", "value": "5 %" } } } ] }""");
        folder.Write("recipelint.json", """
            { "prices": [
                {"of": "KNO3", "cost": 50, "for": "25 kg"},
                {"of": "blue-bag", "cost": 20, "for": "10 kg"},
                {"of": "potassium-nitrate", "cost": 45, "for": "25 kg"} ] }
            """);
        var lines = Cli.RunIn(folder.Path, null, "check", "recipelint.json", "--quiet").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Where(l => l.StartsWith("recipelint.json:", StringComparison.Ordinal)).ToList();
        var line = Assert.Single(lines);
        Assert.StartsWith("recipelint.json:4:", line, StringComparison.Ordinal);
        Assert.Contains("has a price already", line, StringComparison.Ordinal);
    }

    [Fact]
    public void ARecipeShowsEveryElementOfItsFactsWithItsFigure()
    {
        using var facts = JsonDocument.Parse(Cli.Run("facts", Lettuce).Out);
        var lines = Cli.Run("show", Lettuce).Out.Split('\n');
        foreach (var element in facts.RootElement.GetProperty("elements").EnumerateObject())
        {
            var milligrams = Rules.Engine.Say.Number(element.Value.GetProperty("concentration_mg_per_L").GetDouble());
            Assert.Contains(lines, l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var key, var value, ..] && key == element.Name && value == milligrams);
        }

        var ph = facts.RootElement.GetProperty("chemistry").GetProperty("states").EnumerateArray().Last().GetProperty("pH").GetDouble();
        Assert.Contains(lines, l => l.Contains("pH ", StringComparison.Ordinal) && l.Contains(ph.ToString("0.00", CultureInfo.InvariantCulture), StringComparison.Ordinal));
    }

    [Fact]
    public void TheBarShowsWhereAValueLiesAgainstItsRange()
    {
        using var folder = new Scratch();
        folder.Write("a.recipe.json", """
            { "format": 1, "crop": "lettuce", "water": "distilled", "final": "100 L",
              "doses": [ { "add": "potassium-nitrate", "amount": "40 g" }, { "add": "calcium-nitrate-4h2o", "amount": "400 g" } ] }
            """);
        var lines = Cli.RunIn(folder.Path, null, "show", "a.recipe.json").Out.Split('\n');

        // 40 g of KNO3 hold 15.5 g of K: 155 mg/L, just inside 150 to 399; 400 g of the calcium salt hold 67.9 g of Ca: 679 mg/L, far above 250.
        Assert.Contains(lines, l => l.TrimStart().StartsWith("K ", StringComparison.Ordinal) && l.Contains('●') && l.EndsWith("inside", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.TrimStart().StartsWith("Ca ", StringComparison.Ordinal) && l.Contains('►') && l.EndsWith("over 250", StringComparison.Ordinal));
    }

    /// <summary>Everyone's terminal has 80 columns: what the plants get is a table there and no list of lines.</summary>
    [Theory]
    [InlineData("examples/quillmere/recipes/lettuce.recipe.json")]
    [InlineData("examples/quillmere-first-draft/recipes/spinach.recipe.json")]
    [InlineData("examples/fennelwick/recipes/tomato.recipe.json")]
    public void ThePlantsTableIsWholeInEightyColumns(string file)
    {
        var lines = Cli.Run("show", file, "--width", "80").Out.Split('\n');
        Assert.Contains(lines, l => l.TrimStart().StartsWith("K ", StringComparison.Ordinal) && l.Contains('┤', StringComparison.Ordinal) && l.Contains('●', StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.TrimStart().StartsWith("mg/L: ", StringComparison.Ordinal));
    }

    [Fact]
    public void AStockShowsItsRoomAsStretchSaysIt()
    {
        var shown = Cli.Run("show", PartB).Out;
        var stretch = Cli.Run("stretch", PartB).Out;
        Assert.Contains("newberyite", shown, StringComparison.Ordinal);
        Assert.Contains("newberyite", stretch, StringComparison.Ordinal);

        // 1:100 at 2.2 times the strength is 1:220.
        Assert.Contains("2.2  newberyite", shown, StringComparison.Ordinal);
        Assert.Contains("1:22", stretch, StringComparison.Ordinal);
    }

    [Fact]
    public void ARecipeShowsWhatItTakesToHoldItsPh()
    {
        var shown = Cli.Run("show", "examples/quillmere/recipes").Out;
        Assert.Contains("Held at pH", shown, StringComparison.Ordinal);
        Assert.Contains("pH it drifts to", shown, StringComparison.Ordinal);
        Assert.Contains("ammonium that stands as ammonia, %", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void AWaterShowsWhatEachValueWasReadAs()
    {
        using var folder = new Scratch();
        folder.Write("tap.water.json", """{ "format": 1, "ions": { "Ca": "100 mg/L as CaCO3", "HCO3": "122 mg/L", "Cl": "1..2 mmol/L" } }""");
        var shown = Cli.RunIn(folder.Path, null, "show", "tap.water.json").Out;

        // 100 mg/L of CaCO3 (100.09 g/mol) are 0.999 mmol/L of calcium.
        Assert.Matches("""Ca +100 mg/L as CaCO3 +Ca2\+, calcium +0\.999""", shown);
        Assert.Contains("1 to 2", shown, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void TablesFitAndKeepEveryWord(string file)
    {
        var whole = Cli.Run("show", file, "--width", "1000");
        if (whole.Code == 2)
        {
            // A draft whose volume cannot be read: said in one line.
            Assert.Contains("'recipelint check' says why", whole.Error, StringComparison.Ordinal);
            return;
        }

        var wide = Words(whole);
        foreach (var width in new[] { 60, 80, 100 })
        {
            var answer = Cli.Run("show", file, "--width", width.ToString(CultureInfo.InvariantCulture));
            Assert.All(answer.Out.Split('\n'), l => Assert.True(DisplayWidth.Of(l) <= width, $"{DisplayWidth.Of(l)} of {width} columns: {l}"));
            Assert.Subset(Words(answer), wide);
        }

        static SortedSet<string> Words(Answer answer)
        {
            Assert.Equal(0, answer.Code);
            var words = answer.Out.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd(':'));
            return [.. words.Where(w => !w.Contains('─') && !w.Contains('/'))];
        }
    }

    [Theory]
    [InlineData("../fennelwick/batches/a-2026-03-02.batch.json")]
    [InlineData("../tarnbeck-house-rules/house-rules/scale-not-named.rule.json")]
    public void WhatHasNoFiguresIsRefusedInOneLine(string file)
    {
        var answer = Cli.RunIn(Path.Combine(Repository.Root, "examples", "quillmere"), null, "show", file);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Empty(answer.Out);
    }

    [Fact]
    public void AProductIsShownAsItWasRead()
    {
        using var folder = new Scratch();
        folder.Write("own.substances.json", """
            {"format": 1, "substances": [{"id": "cal", "form": "liquid", "density": "1.25 g/mL",
             "label": {"basis": "element", "N": "10 % w/v", "NO3-N": "7.5 % w/v", "NH4-N": "2.5 % w/v"}}]}
            """);
        var shown = Cli.RunIn(folder.Path, null, "show", "own.substances.json").Out;
        // 10 g in 100 mL that weigh 125 g.
        Assert.Matches(@"cal +cal +guaranteed analysis +1\.25 +N 8\b", shown);
        Assert.Matches(@"\n +cal +6 +2\b", shown);
    }

    [Fact]
    public void AProfileIsShownOverTheOneItExtends()
    {
        var shown = Cli.Run("show", "examples/fennelwick/profiles/tomato.profile.json").Out;
        Assert.Matches(@"\n +Ca +80 +140 to 220 .*this file\n", shown);
        Assert.Matches(@"\n +K .*120 to 371 .*tomato\n", shown);
        Assert.Contains("Otherwise at stage 'early'", shown, StringComparison.Ordinal);
        Assert.Contains("fennelwick-tomato", Cli.Run("list", "profiles", "--shop", "examples/fennelwick").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderIsShownAtAGlance()
    {
        var shown = Cli.Run("show", "examples/fennelwick", "--width", "140").Out;
        Assert.Matches(@"recipes/tomato\.recipe\.json +.*2\.39 +5\.80 +192", shown);
        Assert.Matches(@"stocks/b\.stock\.json +B +5 L +10 +4\.21", shown);
        Assert.Contains("pH-pen", Cli.Run("show", "examples/fennelwick/recipelint.json").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("39")]
    [InlineData("1001")]
    [InlineData("-80")]
    [InlineData("eighty")]
    public void AWidthThatNobodyReadsIsRefused(string width)
    {
        var answer = Cli.Run("show", Lettuce, "--width", width);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void ATerminalTellsItsWidthAndThePipeHasAHundred()
    {
        string[] check = ["check", "examples/quillmere-first-draft", "--color", "never"];
        var narrow = Cli.RunOn(60, check).Out;
        Assert.All(narrow.Split('\n'), l => Assert.True(DisplayWidth.Of(l) <= 60 || l.Contains(".json:", StringComparison.Ordinal), l));
        Assert.Equal(Cli.Run(check).Out, Cli.RunOn(100, check).Out);
        Assert.Equal(Cli.Run([.. check, "--width", "60"]).Out, narrow);
    }

    [Fact]
    public void QuietIsOneLineForEachFindingAndNothingElse()
    {
        var whole = Cli.Run("check", "examples/quillmere-first-draft");
        var quiet = Cli.Run("check", "examples/quillmere-first-draft", "--quiet", "--width", "60");
        Assert.NotEmpty(whole.Findings);
        Assert.Equal(whole.Findings.Count, quiet.Out.TrimEnd('\n').Split('\n').Length);
        Assert.Equal(whole.Findings.Count, quiet.Findings.Count);
        Assert.Equal(whole.Code, quiet.Code);
    }

    [Theory]
    [InlineData("substances", "calcium nitrate tetrahydrate", "calcium-nitrate-4h2o")]
    [InlineData("substances", "13477-34-4", "calcium-nitrate-4h2o")]
    [InlineData("units", "gallon", "US gal")]
    [InlineData("profiles", "lettuce", "leafy-greens")]
    [InlineData("rules", "gypsum", "RL0101")]
    public void ListsAreSearchedByWords(string what, string words, string found)
    {
        var answer = Cli.Run(["list", what, .. words.Split(' '), "--width", "80"]);
        Assert.Equal(0, answer.Code);
        Assert.Contains(found, answer.Out, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), l => Assert.True(DisplayWidth.Of(l) <= 80, l));
    }

    [Fact]
    public void EquipmentIsThatOfTheShop()
    {
        var answer = Cli.Run("list", "equipment", "cylinder", "--shop", "examples/quillmere");
        Assert.Contains("cylinder-100", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("fine-scale", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingFoundIsSaidInOneLine()
    {
        var answer = Cli.Run("list", "substances", "unobtainium");
        Assert.Equal(2, answer.Code);
        Assert.Equal("recipelint: no substances fit 'unobtainium'.\n", answer.Error);
    }

    [Fact]
    public void AHostileNameStaysText()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """{ "format": 1, "name": "\u001b[31m::error::\u202ex", "makes": "1 L", "steps": [ { "add": "potassium-nitrate", "amount": "10 g" } ] }""");
        var answer = Cli.RunIn(folder.Path, null, "show", "a.stock.json");
        Assert.Equal(0, answer.Code);
        Assert.DoesNotContain(answer.Out.Replace("\n", "", StringComparison.Ordinal).EnumerateRunes(), Printable.IsHazard);
        Assert.DoesNotContain(answer.Out.Split('\n'), l => l.TrimStart().StartsWith("::", StringComparison.Ordinal));
    }
}
