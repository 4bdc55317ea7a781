using System.Globalization;
using RecipeLint.Benchmarks.Repositories;
using RecipeLint.Recipes.Files;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Scale;

/// <summary>A run in shards, its logs put together, is the whole run byte for byte.</summary>
public sealed class ShardTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void LogsOfShardsMakeTheLogOfTheWholeRun(int shards)
    {
        AssertMerges(shards, arguments => Cli.Run(["check", "examples", "rules/precipitation", "rules/weighing", .. arguments]));
        var files = GeneratedRepository.Of(9, RepositoryLayout.FolderForEachShop);
        AssertMerges(shards, arguments => Cli.RunOver(files, ["check", ".", .. arguments]));
    }

    [Fact]
    public void EveryFileIsInOneShard()
    {
        var files = GeneratedRepository.Of(9, RepositoryLayout.FolderForEachShop);
        var checkedFiles = Enumerable.Range(1, 4)
            .Select(i => WorkspacePieces.Find(files, ["."], new LoadOptions(), 1, 1000, new Shard(i, 4))!.FileCount)
            .ToList();
        Assert.Equal(WorkspacePieces.Find(files, ["."], new LoadOptions(), 1, 1000)!.FileCount, checkedFiles.Sum());
        Assert.All(checkedFiles, n => Assert.InRange(n, 14, 21));
    }

    /// <summary>What one shop says of another's water or list has to be seen beside it.</summary>
    [Fact]
    public void ShopsThatShareFilesStayTogether()
    {
        var files = GeneratedRepository.Of(3, RepositoryLayout.FolderForEachShop, flawed: 0);
        files.Add("shop-000002/shared.recipe.json", """{ "format": 1, "final": "10 L", "water": "../shop-000000/water/rain.water.json", "doses": [] }""");
        var sizes = Enumerable.Range(1, 3)
            .Select(i => WorkspacePieces.Find(files, ["."], new LoadOptions(), 1, 1000, new Shard(i, 3))!.FileCount);
        Assert.Equal([0, 7, 15], sizes.Order());
    }

    [Fact]
    public void BaselineHoldsInEveryShard()
    {
        using var scratch = new Scratch();
        foreach (var (path, text) in RepositoryGenerator.Files(new RepositoryWish(6, RepositoryLayout.FolderForEachShop, 1, 5)))
        {
            scratch.Write(path, text);
        }

        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "update", ".").Code);
        for (var i = 1; i <= 3; i++)
        {
            var answer = Cli.RunIn(
                scratch.Path, null, "check", ".", "--shard", $"{i}/3", "--baseline", "recipelint.baseline.json", "--fail-on", "note");
            Assert.Equal((0, ""), (answer.Code, answer.Error));
        }
    }

    [Theory]
    [InlineData("0/3")]
    [InlineData("4/3")]
    [InlineData("1")]
    [InlineData("1/1001")]
    [InlineData("-1/2")]
    public void OnlyAPartOfSoManyIsTaken(string shard)
    {
        var answer = Cli.Run("check", "examples", "--shard", shard);
        Assert.Equal(2, answer.Code);
        Assert.Contains("--shard", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--repairs")]
    [InlineData("--statistics")]
    public void ShardsGoWithReportsOnly(string option) =>
        Assert.Equal(2, Cli.Run("check", "examples", "--shard", "1/2", option).Code);

    [Theory]
    [InlineData("{}")]
    [InlineData("no json")]
    [InlineData("""{"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "Other", "rules": []}}, "results": []}]}""")]
    public void OnlyLogsOfOursAreMerged(string text)
    {
        using var scratch = new Scratch();
        var answer = Cli.Run("merge", scratch.Write("a.sarif", text));
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    private static void AssertMerges(int shards, Func<string[], Answer> check)
    {
        using var scratch = new Scratch();
        var whole = check(["--format", "sarif"]);
        var codes = new List<int>();
        var logs = new List<string>();
        for (var i = shards; i >= 1; i--)
        {
            var part = check(["--format", "sarif", "--shard", string.Create(CultureInfo.InvariantCulture, $"{i}/{shards}")]);
            Assert.Equal("", part.Error);
            codes.Add(part.Code);
            logs.Add(scratch.Write($"{i}.sarif", part.Out));
        }

        var merged = Cli.Run(["merge", .. logs]);
        Assert.Equal(whole.Out, merged.Out);
        Assert.Equal(whole.Code, merged.Code);
        Assert.Equal(whole.Code, codes.Max());
    }
}
