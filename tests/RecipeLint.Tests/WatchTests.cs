using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Judging again while files change gives what judging from the start gives.</summary>
public sealed class WatchTests
{
    private static string Stock(int i, int grams, string more = "") =>
        $$"""{"format": 1, "name": "S{{i}}", "makes": "1 L", "dose": "10 mL/L", "steps": [{{more}}{"pour": "0.8 L"}, {"add": "potassium-nitrate", "amount": "{{grams}} g"}, {"topUp": "1 L"}]}""";

    private static string Recipe(int i) =>
        $$$"""{"format": 1, "name": "R{{{i}}}", "final": "100 L", "volume": "made up", "water": "w.water.json", "doses": [{"stock": "s{{{i}}}.stock.json"}], "targets": {"K": "150 mg/L ± 5 %"}}""";

    private static Scratch Shop(int count)
    {
        var shop = new Scratch();
        shop.Write("recipelint.json", "{}");
        shop.Write("w.water.json", """{"format": 1, "name": "W", "ions": {"Ca": "20 mg/L", "HCO3": "60 mg/L"}}""");
        for (var i = 0; i < count; i++)
        {
            shop.Write($"s{i}.stock.json", Stock(i, 30 + i));
            shop.Write($"r{i}.recipe.json", Recipe(i));
        }

        return shop;
    }

    [Fact]
    public void AfterEveryChangeTheFindingsAreThoseOfARunFromTheStart()
    {
        using var shop = Shop(12);
        var input = new Input(new DiskFileTree(shop.Path), ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames }, null);
        var engine = StandardEngine.On(Cli.Today);
        var run = new WatchRun(input, engine, 2);
        Same(run.Judge(null));
        var random = new Random(3);
        for (var i = 0; i < 25; i++)
        {
            var one = random.Next(12);
            var (name, text) = random.Next(7) switch
            {
                0 => ($"s{one}.stock.json", Stock(one, 30 + random.Next(50))),
                1 => ($"s{one}.stock.json", Stock(one, 30, $$"""{"add": "s{{(one + 1) % 12}}.stock.json", "amount": "5 mL"}, """)),
                2 => ($"s{one}.stock.json", "{\"format\": 1, \"makes\""),
                3 => ("w.water.json", $$"""{"format": 1, "name": "W", "ions": {"Ca": "{{10 + random.Next(90)}} mg/L", "HCO3": "60 mg/L"} }"""),
                4 => ($"r{one}.recipe.json", null),
                5 => ($"r{one}.recipe.json", Recipe((one + 1) % 12)),
                _ => ("recipelint.json", random.Next(2) == 0 ? "{}" : """{"rules": {"RL0505": "note"}, "ignore": ["r1.recipe.json"]}"""),
            };
            if (text is null)
            {
                File.Delete(Path.Combine(shop.Path, name));
            }
            else
            {
                shop.Write(name, text);
            }

            Same(run.Judge([input.Files.FullPath(name)]));
        }

        void Same(WatchResult now)
        {
            var whole = Judged.Of(input.Files, input.Asked, input.Load, engine);
            Assert.Equal(whole.Result.Findings.Select(Text), now.Result.Findings.Select(Text));
            Assert.Equal(whole.Workspace.Asked.Count, now.FilesChecked);
        }
    }

    [Fact]
    public async Task ASavedFileIsAnsweredWithWhatItReaches()
    {
        using var shop = Shop(3);
        using var stop = new CancellationTokenSource();
        var (output, said) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var error = TextWriter.Synchronized(said);
        var world = new Surroundings(output, error, () => new MemoryStream(), shop.Path, _ => null, false, Cli.Today) { Stop = stop.Token };
        var run = Task.Run(() => CommandLine.Run(["check", ".", "--watch"], world));
        await Until(() => Said().Contains("watching 8 files", StringComparison.Ordinal));
        shop.Write("s1.stock.json", Stock(1, 90));
        await Until(() => Said().Contains("s1.stock.json changed; in all ", StringComparison.Ordinal));
        await stop.CancelAsync();
        Assert.Equal(1, await run);
        Assert.Contains("r1.recipe.json:1:", output.ToString(), StringComparison.Ordinal);

        string Said()
        {
            // The synchronised writer locks itself.
            lock (error)
            {
                return said.ToString();
            }
        }

        async Task Until(Func<bool> holds)
        {
            for (var i = 0; i < 600 && !holds(); i++)
            {
                await Task.Delay(50);
            }

            Assert.True(holds(), Said());
        }
    }

    [Theory]
    [InlineData("--watch", "--fix")]
    [InlineData("--watch", "--format", "sarif")]
    [InlineData("--watch", "--staged")]
    public void WhatHasAnEndDoesNotGoWithIt(params string[] options) =>
        Assert.Contains("do not go with it", Cli.Run(["check", "examples", .. options]).Error, StringComparison.Ordinal);

    private static string Text(Finding finding) => $"{finding.Place} {finding.Level} {finding.Rule.Id} {finding.Message} {string.Join(' ', finding.Related)}";
}
