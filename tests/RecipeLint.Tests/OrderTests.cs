using System.Globalization;
using System.Text.Json;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>The mixing order from outside: `order` and the steps in `facts`.</summary>
public sealed class OrderTests
{
    private const string Trace = "examples/quillmere/stocks/trace.stock.json";

    [Fact]
    public void AGrowerSeesTheOrderAndWhy() => Golden("order-trace.txt", Cli.Run("order", Trace).Out);

    /// <summary>The steps as the facts give them, to four digits, so that the last bit of a solve never changes the file.</summary>
    [Fact]
    public void FactsNameEveryStep()
    {
        using var document = JsonDocument.Parse(Cli.Run("facts", "examples/quillmere-first-draft/stocks/part-b.stock.json").Out);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            Rounded(document.RootElement.GetProperty("mixing"), json);
        }

        Golden("facts-mixing.json", System.Text.Encoding.UTF8.GetString(stream.ToArray()) + "\n");
    }

    /// <summary>One thing with a name beside one that nobody can name: that there is nothing to order is no answer.</summary>
    [Fact]
    public void BesideWhatNobodyCanNameNothingToOrderIsNoAnswer()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "name": "A", "makes": "1 L", "steps": [ { "pour": "500 mL", "of": "distilled" },
              { "add": "miracle powder", "amount": "100 g" }, { "add": "ammonium-sulfate", "amount": "50 g" }, { "topUp": "1 L", "of": "distilled" } ] }
            """);
        var answer = Cli.RunIn(folder.Path, null, "order", "a.stock.json");
        Assert.Equal(1, answer.Code);
        Assert.Contains("is not known", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("nothing to order", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NoLineIsWiderThanAHundredColumns()
    {
        foreach (var file in new[] { Trace, "examples/quillmere/stocks/part-a.stock.json", "examples/quillmere-first-draft/stocks/part-b.stock.json" })
        {
            var answer = Cli.Run("order", file);
            Assert.Equal(file.Contains("first-draft", StringComparison.Ordinal) ? 1 : 0, answer.Code);
            Assert.All(answer.Out.Split('\n'), l => Assert.True(l.Length <= 100, l));
        }
    }

    [Fact]
    public void ABetterOrderSaysWhatTheFilesOwnDoes()
    {
        using var scratch = new Scratch();
        scratch.Write("iron.stock.json", """
            {"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "ferrous-sulfate-7h2o", "amount": "5 g"},
              {"add": "disodium-edta-2h2o", "amount": "6.7 g"}, {"topUp": "1 L"}]}
            """);
        var answer = Cli.RunIn(scratch.Path, null, "order", "iron.stock.json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("better than the file's", answer.Out, StringComparison.Ordinal);
        Assert.Contains("rust", answer.Out, StringComparison.Ordinal);
        Assert.True(answer.Out.IndexOf("2. disodium EDTA", StringComparison.Ordinal) < answer.Out.IndexOf("3. iron(II) sulfate", StringComparison.Ordinal));
    }

    [Fact]
    public void OneAdditionIsNothingToOrder()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "potassium-nitrate", "amount": "5 g"}, {"topUp": "1 L"}]}""");
        var answer = Cli.RunIn(scratch.Path, null, "order", "a.stock.json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("nothing to order", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotBeReadIsLeftOutAndSaidSo()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """
            {"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "potassium-nitrate", "amount": "5 g"},
              {"add": "no-such-salt", "amount": "5 g"}, {"add": "boric-acid", "amount": "2 g"}, {"topUp": "1 L"}]}
            """);
        var answer = Cli.RunIn(scratch.Path, null, "order", "a.stock.json");
        Assert.Equal(1, answer.Code);
        Assert.Contains("could not be read", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("examples/quillmere/recipes/lettuce.recipe.json", "is a recipe")]
    [InlineData("examples/quillmere/stocks", "takes one stock file")]
    [InlineData("no-such.stock.json", "no-such.stock.json")]
    [InlineData("README.md", "README.md")]
    public void WhatIsNoStockIsOneLineAndWrongUsage(string path, string part)
    {
        var answer = Cli.Run("order", path);
        Assert.Equal(2, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Contains(part, answer.Error, StringComparison.Ordinal);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }

    [Theory]
    [InlineData("{\"format\": 1, \"makes\": \"1 L\", \"steps\": [{\"pour\"")]
    [InlineData("{\"format\": 1, \"makes\": \"much\", \"steps\": []}")]
    [InlineData("[]")]
    public void ABrokenStockIsOneLine(string text)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", text);
        var answer = Cli.RunIn(scratch.Path, null, "order", "a.stock.json");
        Assert.Equal(2, answer.Code);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }

    [Fact]
    public void MoreThanAVesselHoldsIsToldNotThrown()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """
            {"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "potassium-nitrate", "amount": "5 kg"},
              {"add": "calcium-nitrate-4h2o", "amount": "9 kg"}, {"topUp": "1 L"}]}
            """);
        var answer = Cli.RunIn(scratch.Path, null, "order", "a.stock.json");
        Assert.Equal(1, answer.Code);
        Assert.NotEmpty(answer.Out);
    }

    private static void Golden(string name, string text)
    {
        var path = Path.Combine(Repository.Root, "tests", "RecipeLint.Tests", "Golden", name);
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path), text);
    }

    private static void Rounded(JsonElement element, Utf8JsonWriter json)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                json.WriteStartObject();
                foreach (var property in element.EnumerateObject())
                {
                    json.WritePropertyName(property.Name);
                    Rounded(property.Value, json);
                }

                json.WriteEndObject();
                break;
            case JsonValueKind.Array:
                json.WriteStartArray();
                foreach (var item in element.EnumerateArray())
                {
                    Rounded(item, json);
                }

                json.WriteEndArray();
                break;
            case JsonValueKind.Number:
                json.WriteNumberValue(double.Parse(element.GetDouble().ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
                break;
            default:
                element.WriteTo(json);
                break;
        }
    }
}
