using System.Collections.Concurrent;
using RecipeLint.Benchmarks.Repositories;
using RecipeLint.Recipes.Files;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Scale;

/// <summary>One file of a big repository costs what it costs in a small one.</summary>
public sealed class ReachTests
{
    [Fact]
    public void OneRecipeOfAThousandShopsReadsOnlyItsShop()
    {
        var (small, big) = (Watch(1), Watch(1000));
        Assert.Equal(small.Read, big.Read);
        Assert.Equal(
            ["lettuce.recipe.json", "molybdate-pre.stock.json", "part-a.stock.json", "part-b.stock.json", "rain.water.json",
                "recipelint.json", "trace.stock.json"],
            big.Read.Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal));
        Assert.All(big.Read, p => Assert.StartsWith(GeneratedRepository.Root + "/shop-000000/", p, StringComparison.Ordinal));
        Assert.Equal(small.Asked, big.Asked);
    }

    /// <summary>Each piece of a run read all of them again.</summary>
    [Fact]
    public void WhatServesManyFilesIsReadOnce()
    {
        var tree = new MemoryFileTree("/shop");
        void Add(string path, string text) => tree.Add(path, System.Text.Encoding.UTF8.GetBytes(text));
        Add("recipelint.json", "{}");
        Add("tall.rule.json", """
            {"format": 1, "id": "HR0001", "name": "tall", "level": "warning", "looksAt": "stock", "message": "Makes {0}.", "reason": "No.", "must": {"properties": {"name": {"const": "other"}}}}
            """);
        Add("bags.substances.json", """{"format": 1, "substances": []}""");
        Add("own.profile.json", """{"format": 1, "name": "own"}""");
        for (var i = 0; i < 200; i++)
        {
            Add($"s{i}.stock.json", $$"""{"format": 1, "name": "S{{i}}", "makes": "1 L", "steps": [{"add": "potassium-nitrate", "amount": "{{5 + i}} g"}, {"topUp": "1 L"}]}""");
        }

        var watched = new Watched(tree);
        var answer = Cli.RunOver(watched, "check", ".", "--threads", "4", "--format", "json", "--fail-on", "never");
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Equal(200, System.Text.RegularExpressions.Regex.Count(answer.Out, "\"HR0001\""));
        foreach (var file in (string[])["tall.rule.json", "bags.substances.json", "own.profile.json"])
        {
            Assert.Equal((file, 1), (file, watched.Read[$"/shop/{file}"]));
        }
    }

    [Fact]
    public void TimingsNamePhasesAndRules()
    {
        var answer = Cli.RunOver(GeneratedRepository.Of(14, RepositoryLayout.OneFolder), "check", ".", "--timings");
        foreach (var word in new[] { "whole run", "phase read", "phase facts", "phase judge", "rule RL0", "more rules", "MiB allocated" })
        {
            Assert.Contains(word, answer.Error, StringComparison.Ordinal);
        }

        Assert.Equal(Cli.RunOver(GeneratedRepository.Of(14, RepositoryLayout.OneFolder), "check", ".").Out, answer.Out);
    }

    /// <summary>A file that cannot be read among many costs its own finding and nothing of the others.</summary>
    [Fact]
    public void OnePoisonedFileCostsItsOwnFinding()
    {
        var files = GeneratedRepository.Of(14, RepositoryLayout.OneFolder, flawed: 0);
        var before = Cli.RunOver(files, "check", ".", "--format", "json", "--fail-on", "never");
        files.Add("poison.stock.json", "{\"format\": 1, \"makes\": \"1 L\", \"steps\": [" + new string('[', 60) + "1e999" + "\u0001");
        var after = Cli.RunOver(files, "check", ".", "--fail-on", "never");
        Assert.Equal(0, after.Code);
        Assert.Equal("", after.Error);
        Assert.Single(after.Findings, f => f.StartsWith("poison.stock.json", StringComparison.Ordinal));
        Assert.DoesNotContain("poison", before.Out, StringComparison.Ordinal);
        Assert.Equal(
            Cli.RunOver(GeneratedRepository.Of(14, RepositoryLayout.OneFolder, flawed: 0), "check", ".", "--fail-on", "never").Findings,
            after.Findings.Where(f => !f.StartsWith("poison.stock.json", StringComparison.Ordinal)));
    }

    /// <summary>Files that go or change between the walk and the reading are a finding or a clear line.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(40)]
    [InlineData(150)]
    public void AFolderThatChangesUnderTheRunNeverFails(int after)
    {
        var files = new Vanishing(GeneratedRepository.Of(14, RepositoryLayout.FolderForEachShop), after);
        var answer = Cli.RunOver(files, "check", ".", "--threads", "1");
        Assert.InRange(answer.Code, 0, 2);
        Assert.DoesNotContain("internal fault", answer.Error, StringComparison.Ordinal);
        Assert.True(answer.Error.Length == 0 || answer.Error.TrimEnd('\n').Split('\n').Length == 1, answer.Error);
        Assert.True(answer.Code == 2 || answer.Findings.Count > 0);
    }

    private static (IReadOnlyList<string> Read, int Asked) Watch(int shops)
    {
        var watched = new Watched(GeneratedRepository.Of(shops, RepositoryLayout.FolderForEachShop, flawed: 0));
        var answer = Cli.RunOver(watched, "check", "shop-000000/lettuce.recipe.json");
        Assert.Equal("", answer.Error);
        return ([.. watched.Read.Keys.Order(StringComparer.Ordinal)], watched.Asked);
    }

    /// <summary>Remembers what is read, and how often the tree is asked what a path is.</summary>
    private sealed class Watched(IFileTree under) : IFileTree
    {
        private int _asked;

        public ConcurrentDictionary<string, int> Read { get; } = new(StringComparer.Ordinal);

        public int Asked => _asked;

        public string CurrentFolder => under.CurrentFolder;

        public string FullPath(string path) => under.FullPath(path);

        public EntryKind Kind(string path)
        {
            Interlocked.Increment(ref _asked);
            return under.Kind(path);
        }

        public string ResolveLinks(string path) => under.ResolveLinks(path);

        public IReadOnlyList<string> Names(string folder) => under.Names(folder);

        FileBytes IFileTree.Read(string path, int sizeLimit)
        {
            Read.AddOrUpdate(path, 1, (_, n) => n + 1);
            return under.Read(path, sizeLimit);
        }
    }

    /// <summary>After so many files read, every second stock is gone and every third one holds something else.</summary>
    private sealed class Vanishing(IFileTree under, int after) : IFileTree
    {
        private int _read;

        public string CurrentFolder => under.CurrentFolder;

        public string FullPath(string path) => under.FullPath(path);

        public EntryKind Kind(string path) => under.Kind(path);

        public string ResolveLinks(string path) => under.ResolveLinks(path);

        public IReadOnlyList<string> Names(string folder) => under.Names(folder);

        public FileBytes Read(string path, int sizeLimit)
        {
            var n = Interlocked.Increment(ref _read);
            return n <= after || !path.EndsWith(".stock.json", StringComparison.Ordinal) ? under.Read(path, sizeLimit)
                : n % 2 == 0 ? new FileBytes(null, null, "it is not there any more")
                : n % 3 == 0 ? FileBytes.Of("{\"format\": 1}"u8.ToArray())
                : under.Read(path, sizeLimit);
        }
    }
}
