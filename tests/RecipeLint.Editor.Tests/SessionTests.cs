using System.Diagnostics;
using System.Text.Json.Nodes;
using RecipeLint.Editor.Tests.Support;
using RecipeLint.Reports.Tests.Support;
using Xunit.Abstractions;

namespace RecipeLint.Editor.Tests;

/// <summary>A session with the program as an editor starts it: another process, over standard input and output.</summary>
public sealed class SessionTests(ITestOutputHelper output)
{
    private static readonly string _shop = Path.Combine(Repository.Root, "examples", "quillmere");

    private static string UriOf(string file) => new Uri(Path.Combine(_shop, file)).AbsoluteUri;

    [Fact]
    public void AnEditorOpensEditsAndLeaves()
    {
        using var client = Client.OfProcess(_shop);
        var capabilities = client.Initialize()["result"]!["capabilities"]!;
        Assert.Equal("utf-16", capabilities["positionEncoding"]!.GetValue<string>());
        client.Notify("initialized", new JsonObject());

        var recipe = UriOf("recipes/lettuce.recipe.json");
        var text = File.ReadAllText(Path.Combine(_shop, "recipes", "lettuce.recipe.json"));
        client.Open(recipe, text);
        Assert.Empty(client.Diagnostics(recipe, 1));

        // 10 mL/L of part A becomes 100 mL/L: the targets of what it brings are missed.
        client.Replace(recipe, 2, text.Replace("part-a.stock.json\", \"dose\": \"10 mL/L\"", "part-a.stock.json\", \"dose\": \"100 mL/L\"", StringComparison.Ordinal));
        var found = client.Diagnostics(recipe, 2);
        Assert.Contains(found, d => d["code"]!.GetValue<string>() == "RL0501" || d["message"]!.GetValue<string>().Contains("(target-missed)", StringComparison.Ordinal));
        Assert.All(found, d => Assert.Equal("recipelint", d["source"]!.GetValue<string>()));
        Assert.All(found, d => Assert.StartsWith("urn:recipelint:rule:RL", d["codeDescription"]!["href"]!.GetValue<string>(), StringComparison.Ordinal));

        client.Replace(recipe, 3, text);
        Assert.Empty(client.Diagnostics(recipe, 3));
        Assert.Equal(0, client.End());
    }

    /// <summary>A recipe with three stocks; every edit changes what the solver has to work out. Measured, not asserted: the machine may be busy.</summary>
    [Fact]
    public void DiagnosticsComeWhileOneTypes()
    {
        using var client = Client.OfProcess(_shop);
        client.Initialize();
        var recipe = UriOf("recipes/lettuce.recipe.json");
        var stock = UriOf("stocks/part-a.stock.json");
        var text = File.ReadAllText(Path.Combine(_shop, "stocks", "part-a.stock.json"));
        client.Open(recipe, File.ReadAllText(Path.Combine(_shop, "recipes", "lettuce.recipe.json")));
        client.Open(stock, text);
        client.Diagnostics(stock, 1);
        var (recipes, stocks) = (new List<double>(), new List<double>());
        for (var version = 2; version < 42; version++)
        {
            var watch = Stopwatch.StartNew();
            client.Replace(stock, version, text.Replace("\"130 g\"", $"\"{130 + (version % 20)}.{version} g\"", StringComparison.Ordinal));
            client.Diagnostics(stock, version);
            stocks.Add(watch.Elapsed.TotalMilliseconds);
        }

        var recipeText = File.ReadAllText(Path.Combine(_shop, "recipes", "lettuce.recipe.json"));
        for (var version = 2; version < 42; version++)
        {
            var watch = Stopwatch.StartNew();
            client.Replace(recipe, version, recipeText.Replace("\"10 mL/L\"", $"\"10.{version} mL/L\"", StringComparison.Ordinal));
            client.Diagnostics(recipe, version);
            recipes.Add(watch.Elapsed.TotalMilliseconds);
        }

        output.WriteLine($"from an edit to its diagnostics, median of 40: in a stock {Median(stocks):F0} ms, in a recipe with three stocks {Median(recipes):F0} ms");
        Assert.Equal(0, client.End());
        Assert.True(Median(recipes) < 5000, "an edit takes seconds");
    }

    [Fact]
    public void LeavingWithoutAShutdownIsToldByTheExitCode()
    {
        using var client = Client.OfProcess(_shop);
        client.Initialize();
        client.Notify("exit", new JsonObject());
        Assert.Equal(1, client.ExitCode());
    }

    [Fact]
    public void AClientThatIsGoneEndsTheServer()
    {
        using var client = Client.OfProcess(_shop);
        client.Initialize();
        client.HangUp();
        Assert.Equal(1, client.ExitCode());
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
