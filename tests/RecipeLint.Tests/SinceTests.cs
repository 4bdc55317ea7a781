using System.Diagnostics;
using System.Text.Json.Nodes;
using RecipeLint.Recipes.Files;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Only what changed: what git says has changed, and everything that draws on it.</summary>
public sealed class SinceTests
{
    private const string Recipe = """
        {"format": 1, "name": "R", "final": "100 L", "volume": "made up", "water": "well.water.json",
         "doses": [{"stock": "a.stock.json", "dose": "10 mL/L"}], "targets": {"K": "232 mg/L ± 5 %"}}
        """;

    private static string Stock(string amount = "60 g", string name = "A", string with = "potassium-nitrate") =>
        $$"""{"format": 1, "name": "{{name}}", "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "0.8 L"}, {"add": "{{with}}", "amount": "{{amount}}"}, {"topUp": "1 L"}]}""";

    private static string Water(int calcium) => $$"""{"format": 1, "name": "Well", "ions": { "Ca": "{{calcium}} mg/L", "HCO3": "{{calcium * 3}} mg/L" } }""";

    /// <summary>What git may be told; false on a machine without it, where there is nothing to test.</summary>
    private static bool Git(Scratch folder, params string[] arguments)
    {
        try
        {
            using var git = Process.Start(new ProcessStartInfo("git", ["-c", "user.name=Test", "-c", "user.email=test@example.org", "-c", "commit.gpgsign=false", .. arguments])
            {
                WorkingDirectory = folder.Path,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            git.StandardOutput.ReadToEnd();
            git.WaitForExit();
            return git.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static bool Commit(Scratch folder) =>
        Git(folder, "init", "-q", "-b", "main") && Git(folder, "add", "-A") && Git(folder, "commit", "-q", "-m", "as it was");

    private static Scratch? Shop()
    {
        var shop = new Scratch();
        shop.Write("recipelint.json", "{}");
        shop.Write("well.water.json", Water(20));
        shop.Write("a.stock.json", Stock());
        shop.Write("b.stock.json", Stock("40 g", "B"));
        shop.Write("r.recipe.json", Recipe);
        shop.Write("s.recipe.json", Recipe.Replace("a.stock.json", "b.stock.json", StringComparison.Ordinal).Replace("232", "155", StringComparison.Ordinal));
        if (Commit(shop))
        {
            return shop;
        }

        shop.Dispose();
        return null;
    }

    private static List<string> Reached(Scratch folder, string? since) =>
        [.. ChangedFiles.Of(new Input(new DiskFileTree(folder.Path), ["."], new LoadOptions(), null), since, 2).Reached
            .Select(f => Path.GetRelativePath(folder.Path, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Fact]
    public void OfThreeHundredRecipesExactlyTheAffectedOnesAreChecked()
    {
        using var shop = new Scratch();
        var random = new Random(7);
        var uses = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        shop.Write("recipelint.json", "{}");
        for (var i = 0; i < 5; i++)
        {
            shop.Write($"w{i}.water.json", Water(20 + i));
        }

        for (var i = 0; i < 60; i++)
        {
            // Every third stock takes a part of one before it, so that changes travel.
            var own = uses[$"s{i}.stock.json"] = [];
            var part = i % 3 == 2 ? $"s{random.Next(i)}.stock.json" : null;
            var drawn = part is null ? "" : $$"""{"add": "{{part}}", "amount": "5 mL"}, """;
            own.UnionWith(part is null ? [] : [part]);
            shop.Write($"s{i}.stock.json", $$"""{"format": 1, "name": "S{{i}}", "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "0.8 L"}, {{drawn}}{"add": "potassium-nitrate", "amount": "{{30 + i}} g"}, {"topUp": "1 L"}]}""");
        }

        for (var i = 0; i < 300; i++)
        {
            var stocks = Enumerable.Range(0, 1 + random.Next(3)).Select(_ => $"s{random.Next(60)}.stock.json").Distinct().ToList();
            var water = $"w{random.Next(5)}.water.json";
            uses[$"r{i}.recipe.json"] = [.. stocks, water];
            shop.Write($"r{i}.recipe.json", $$"""{"format": 1, "name": "R{{i}}", "final": "100 L", "volume": "made up", "water": "{{water}}", "doses": [{{string.Join(", ", stocks.Select(s => $$"""{"stock": "{{s}}"}"""))}}]}""");
        }

        if (!Commit(shop))
        {
            return;
        }

        List<string> Expected(params string[] changed)
        {
            var reached = changed.ToHashSet(StringComparer.Ordinal);
            while (uses.Where(u => !reached.Contains(u.Key) && u.Value.Overlaps(reached)).Select(u => u.Key).ToList() is { Count: > 0 } more)
            {
                reached.UnionWith(more);
            }

            return [.. reached.Where(f => File.Exists(Path.Combine(shop.Path, f))).Order(StringComparer.Ordinal)];
        }

        Assert.Empty(Reached(shop, "HEAD"));
        shop.Write("s4.stock.json", Stock("1 g", "S4"));
        shop.Write("r17.recipe.json", Recipe.Replace("a.stock.json", "s9.stock.json", StringComparison.Ordinal).Replace("well.", "w1.", StringComparison.Ordinal));
        var expected = Expected("s4.stock.json", "r17.recipe.json");
        Assert.InRange(expected.Count, 3, 100);
        Assert.Equal(expected, Reached(shop, "HEAD"));

        // A water, a stock that is gone, and one that is not known to git yet.
        Assert.True(Git(shop, "checkout", "-q", "."));
        shop.Write("w3.water.json", Water(90));
        File.Delete(Path.Combine(shop.Path, "s11.stock.json"));
        shop.Write("new.stock.json", Stock("5 g", "New"));
        expected = Expected("w3.water.json", "s11.stock.json", "new.stock.json");
        Assert.Equal(expected, Reached(shop, "HEAD"));

        // Nothing is staged until it is; what is staged is judged as it is staged.
        Assert.Empty(Reached(shop, null));
        Assert.True(Git(shop, "add", "s11.stock.json"));
        Assert.Equal(Expected("s11.stock.json"), Reached(shop, null));

        // Settings reach everything that they serve.
        Assert.True(Git(shop, "reset", "-q", "--hard"));
        shop.Write("recipelint.json", """{"rules": {"RL0034": "off"}}""");
        Assert.Equal(366, Reached(shop, "HEAD").Count(f => f != "new.stock.json"));
    }

    [Fact]
    public void ARecipeMovedOutOfRangeNamesTheChangedPlaceInTheStock()
    {
        if (Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            shop.Write("a.stock.json", Stock("80 g"));
            var answer = Cli.RunIn(shop.Path, null, "check", ".", "--since", "HEAD", "--format", "json", "--fail-on", "never");
            Assert.Equal((0, ""), (answer.Code, answer.Error));
            var findings = JsonNode.Parse(answer.Out)!["findings"]!.AsArray();
            var missed = Assert.Single(findings, f => f!["rule"]!["name"]!.GetValue<string>() == "target-missed")!;
            Assert.Equal("r.recipe.json", missed["file"]!.GetValue<string>());
            Assert.Contains("\"changed since 'HEAD'; before, this was not found\"", missed.ToJsonString().Replace("\\u0027", "'", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.All(findings, f => Assert.Contains(f!["file"]!.GetValue<string>(), (string[])["r.recipe.json", "a.stock.json"]));
            var text = Cli.RunIn(shop.Path, null, "check", ".", "--since", "HEAD").Out;
            Assert.Contains("a.stock.json:1:", text, StringComparison.Ordinal);
            Assert.Contains("changed since 'HEAD'", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void WhatIsStagedIsReadFromTheIndexAndNotFromTheFolder()
    {
        if (Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            shop.Write("a.stock.json", Stock(with: "potasium-nitrate-x"));
            Assert.True(Git(shop, "add", "a.stock.json"));
            shop.Write("a.stock.json", Stock());
            Assert.Equal(1, Cli.RunIn(shop.Path, null, "check", "--staged").Code);
            Assert.Contains("unknown-substance", Cli.RunIn(shop.Path, null, "check", "--staged").Out, StringComparison.Ordinal);
            Assert.Equal(0, Cli.RunIn(shop.Path, null, "check", "--since", "HEAD").Code);
            var answer = Cli.RunIn(shop.Path, null, "check", "--staged", "--fix");
            Assert.Equal(2, answer.Code);
            Assert.Contains("'--staged' judges what is staged", answer.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void NamesAreComparedWithFilesThatHaveNotChanged()
    {
        if (Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            shop.Write("b.stock.json", Stock("40 g", "a", "KNO3"));
            var found = Cli.RunIn(shop.Path, null, "check", "--since", "HEAD").Findings;
            Assert.Contains(found, f => f.Contains("two-stocks-of-one-name", StringComparison.Ordinal));
            Assert.Contains(found, f => f.StartsWith("b.stock.json", StringComparison.Ordinal) && f.Contains("substance-named-two-ways", StringComparison.Ordinal));
            shop.Write("recipelint.json", """{"rules": {"RL0051": "off"}}""");
            Assert.DoesNotContain(Cli.RunIn(shop.Path, null, "check", "--since", "HEAD").Findings, f => f.Contains("RL0051", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void WhatABranchDidNotDoItselfIsLeftOut()
    {
        if (Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            Assert.True(Git(shop, "checkout", "-q", "-b", "mine"));
            Assert.True(Git(shop, "checkout", "-q", "main"));
            shop.Write("b.stock.json", Stock("41 g", "B"));
            Assert.True(Git(shop, "commit", "-q", "-a", "-m", "theirs") && Git(shop, "checkout", "-q", "mine"));
            Assert.Empty(Reached(shop, "main"));
            shop.Write("r.recipe.json", Recipe.Replace("100 L", "90 L", StringComparison.Ordinal));
            Assert.Equal(["r.recipe.json"], Reached(shop, "main"));
        }
    }

    [Theory]
    [InlineData("no-such-branch", "the repository knows no revision 'no-such-branch'; it has the branch 'main'.")]
    [InlineData("--upload-pack=x", "the repository knows no revision '--upload-pack=x'")]
    public void AMissingRevisionIsSaidInOneLine(string revision, string said)
    {
        if (Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            var answer = Cli.RunIn(shop.Path, null, "check", ".", $"--since={revision}");
            Assert.Equal((2, ""), (answer.Code, answer.Out));
            Assert.Contains(said, Assert.Single(answer.Error.TrimEnd().Split('\n')), StringComparison.Ordinal);
            Assert.Equal("recipelint: nothing of ours has changed since 'HEAD'.\n", Cli.RunIn(shop.Path, null, "check", ".", "--since", "HEAD").Error);
        }
    }

    /// <summary>A clean filter ran under '--since', even where nothing but a listing was asked of git.</summary>
    [Theory]
    [InlineData("--since=HEAD")]
    [InlineData("--staged")]
    public void NoProgramThatTheRepositoryNamesIsRun(string asked)
    {
        if (OperatingSystem.IsWindows() || Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            string Trap(string name) => $"touch '{shop.Path}/RAN-{name}'; cat";
            var hook = shop.Write("hooks/post-index-change", "#!/bin/sh\n" + Trap("hook") + " < /dev/null\n");
            File.SetUnixFileMode(hook, UnixFileMode.UserRead | UnixFileMode.UserExecute);
            foreach (var (name, value) in ((string, string)[])
            [
                ("filter.x.clean", Trap("clean")), ("filter.x.smudge", Trap("smudge")), ("diff.x.textconv", Trap("textconv")),
                ("diff.x.command", Trap("command")), ("diff.external", Trap("external")), ("core.fsmonitor", Trap("monitor")),
                ("core.pager", Trap("pager")), ("core.sshCommand", Trap("ssh")), ("core.hooksPath", Path.GetDirectoryName(hook)!),
                ("remote.origin.url", "ssh://nobody.invalid/x"), ("remote.origin.promisor", "true"),
            ])
            {
                Assert.True(Git(shop, "config", name, value));
            }

            Directory.CreateDirectory(Path.Combine(shop.Path, ".git", "info"));
            shop.Write(".git/info/attributes", "* filter=x diff=x\n");
            shop.Write("a.stock.json", Stock("61 g"));
            Assert.True(Git(shop, "add", "a.stock.json"));
            Assert.NotEmpty(Directory.GetFiles(shop.Path, "RAN-clean"));
            foreach (var ran in Directory.GetFiles(shop.Path, "RAN-*"))
            {
                File.Delete(ran);
            }

            // What is as old as the index is looked at again by git.
            foreach (var file in Directory.GetFiles(shop.Path, "*.json"))
            {
                File.SetLastWriteTimeUtc(file, DateTime.UtcNow);
            }

            var answer = Cli.RunIn(shop.Path, null, "check", ".", asked, "--format", "json", "--fail-on", "never");
            Assert.Equal((0, ""), (answer.Code, answer.Error));
            Assert.Equal(["a.stock.json", "r.recipe.json"], Reached(shop, asked == "--staged" ? null : "HEAD"));
            Assert.Equal([], Directory.GetFiles(shop.Path, "RAN-*").Select(Path.GetFileName));
        }
    }

    [Fact]
    public void LineEndsThatGitMadeAreNoChange()
    {
        if (Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            var text = Stock().Replace(", ", ",\n", StringComparison.Ordinal);
            shop.Write("a.stock.json", text);
            Assert.True(Git(shop, "commit", "-q", "-a", "-m", "lines"));
            shop.Write("a.stock.json", text.Replace("\n", "\r\n", StringComparison.Ordinal));
            Assert.Empty(Reached(shop, "HEAD"));
            shop.Write("a.stock.json", text.Replace("60 g", "61 g", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal));
            Assert.Equal(["a.stock.json", "r.recipe.json"], Reached(shop, "HEAD"));
        }
    }

    [Fact]
    public void ALinkThatLeadsElsewhereHasChanged()
    {
        if (OperatingSystem.IsWindows() || Shop() is not { } shop)
        {
            return;
        }

        using (shop)
        {
            var link = Path.Combine(shop.Path, "l.stock.json");
            File.CreateSymbolicLink(link, "a.stock.json");
            shop.Write("t.recipe.json", Recipe.Replace("a.stock.json", "l.stock.json", StringComparison.Ordinal));
            Assert.True(Git(shop, "add", "-A") && Git(shop, "commit", "-q", "-m", "a link"));
            Assert.Empty(Reached(shop, "HEAD"));
            File.Delete(link);
            File.CreateSymbolicLink(link, "b.stock.json");
            Assert.Contains("t.recipe.json", Reached(shop, "HEAD"));
            File.Delete(link);
            File.Copy(Path.Combine(shop.Path, "a.stock.json"), link);
            Assert.Contains("t.recipe.json", Reached(shop, "HEAD"));
        }
    }

    [Fact]
    public void OutsideOfARepositoryOneLineSaysSo()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", Stock());
        var answer = Cli.RunIn(folder.Path, null, "check", "--since", "HEAD");
        Assert.Equal((2, ""), (answer.Code, answer.Out));
        Assert.Matches("(?s)^recipelint: ('.*' lies in no repository|there is no git)[^\n]*\n$", answer.Error);
        Assert.Contains("exclude each other", Cli.RunIn(folder.Path, null, "check", "--since", "HEAD", "--staged").Error, StringComparison.Ordinal);
        Assert.Contains("needs a <path>", Cli.RunIn(folder.Path, null, "check").Error, StringComparison.Ordinal);
    }
}
