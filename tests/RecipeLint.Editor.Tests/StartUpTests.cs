using System.Diagnostics;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Sessions;
using RecipeLint.Editor.Tests.Support;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Editor.Tests;

/// <summary>Who does not ask for the editor does not pay for it; and an edit computes what it touches.</summary>
public sealed class StartUpTests
{
    /// <summary>The runtime itself tells which assemblies a check loads.</summary>
    [Theory]
    [InlineData("check", false)]
    [InlineData("language-server", true)]
    public async Task OnlyTheServerLoadsTheEditor(string command, bool isLoaded)
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = Repository.Root, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "recipelint.dll"));
        start.ArgumentList.Add(command);
        if (command == "check")
        {
            start.ArgumentList.Add("examples/quillmere");
        }

        // A start-up hook of the runtime prints the list when the process ends.
        start.Environment["DOTNET_STARTUP_HOOKS"] = Path.Combine(AppContext.BaseDirectory, "RecipeLint.Editor.Tests.dll");
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = await process.StandardError.ReadToEndAsync();
        Assert.True(process.WaitForExit(Client.Patience));
        var loaded = error.Split('\n').Where(l => l.StartsWith(StartupHook.Mark, StringComparison.Ordinal)).Select(l => l[StartupHook.Mark.Length..].Trim()).ToList();
        Assert.True(loaded.Contains("recipelint"), error + await output);
        Assert.Equal(isLoaded, loaded.Contains("RecipeLint.Editor"));
        Assert.DoesNotContain("StreamJsonRpc", loaded);
    }

    [Fact]
    public void AnEditComputesWhatItTouchesAndNothingElse()
    {
        var documents = new DocumentStore(Shop.InMemory());
        var desk = new Desk(documents, StandardEngine.On(null));
        var stock = documents.Add(Shop.PartA, 1, Shop.Text(Shop.PartA))!;
        var first = desk.ViewOf(stock.Path)!;
        Assert.Equal(first.Facts.Stocks.Count + first.Facts.Recipes.Count, desk.Computed);

        // One stock and the one recipe that doses it.
        var before = desk.Computed;
        documents.Add(Shop.PartA, 2, Shop.Text(Shop.PartA).Replace("\"130 g\"", "\"131 g\"", StringComparison.Ordinal));
        desk.Touch();
        var second = desk.ViewOf(stock.Path)!;
        Assert.Equal(before + 2, desk.Computed);
        Assert.All(
            second.Facts.Stocks.Where(s => s.Stock.File != "stocks/part-a.stock.json"),
            s => Assert.Same(first.Facts.FindStock(s.Stock.File), s));

        // Nothing at all.
        desk.Touch();
        desk.ViewOf(stock.Path);
        Assert.Equal(before + 2, desk.Computed);
    }

    /// <summary>A shop too large to be judged whole: a stock is judged with all that draw on it, and as a run over everything judges it.</summary>
    [Fact]
    public void InALargeShopAFileIsJudgedWithWhoeverUsesIt()
    {
        var files = Shop.InMemory();
        for (var i = 0; i < Desk.WholeShop; i++)
        {
            files.Add($"{Shop.Root}/more/s{i}.stock.json", $$"""{"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "0.7 L"}, {"add": "KNO3", "amount": "{{i + 1}} g"}, {"topUp": "1 L"}]}""");
        }

        var documents = new DocumentStore(files);
        var desk = new Desk(documents, StandardEngine.On(null));
        var stock = documents.Add(Shop.PartA, 1, Shop.Text(Shop.PartA).Replace("\"130 g\"", "\"230 g\"", StringComparison.Ordinal))!;
        var recipe = documents.Add(Shop.Lettuce, 1, Shop.Text(Shop.Lettuce))!;
        var view = desk.ViewOf(stock.Path)!;
        Assert.Single(view.Facts.Recipes);
        Assert.True(view.Facts.Stocks.Count < 10, $"{view.Facts.Stocks.Count} stocks");
        Assert.Contains(desk.ViewOf(recipe.Path)!.Findings, f => f.Rule.Name == "target-missed");
    }
}
