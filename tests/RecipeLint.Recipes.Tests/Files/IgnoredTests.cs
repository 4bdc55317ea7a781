using System.Diagnostics;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Recipes.Tests.Files;

/// <summary>What is ignored, held against git itself where it is installed.</summary>
public sealed class IgnoredTests
{
    private static readonly string[] _names = ["a", "b", "ab", "build", "x.stock.json", "a.stock.json", "b.stock.json", "draft 1", "a-b"];

    private static readonly string[] _patterns =
    [
        "a", "b/", "/a", "a/b", "*.json", "!a.stock.json", "**/b", "a/**", "a/**/b", "/build/", "[ab].stock.json", "?b", "*b", "!ab", "# c", "\\#x",
        "draft 1", "a/*", "!/a/b", "**/a/b/", "*.stock.json", "x.stock.json ", "[!a].stock.json", "a*b", "/*/b", "**", "!b/", "[a-c]", "[]a]", "\\a", "a/**/", "/**/a",
    ];

    [Fact]
    public void GitIgnoresTheSame()
    {
        var random = new Random(5);
        var folder = Directory.CreateTempSubdirectory("recipelint-ignored-").FullName;
        try
        {
            if (Git(folder, "", "init", "-q") is null)
            {
                return;
            }

            string[] paths = [.. Enumerable.Range(0, 60).Select(_ => string.Join('/', Enumerable.Range(0, random.Next(1, 4)).Select(_ => _names[random.Next(_names.Length)]))).Distinct()];
            var compared = 0;
            for (var round = 0; round < 150; round++)
            {
                string[] patterns = [.. Enumerable.Range(0, random.Next(1, 5)).Select(_ => _patterns[random.Next(_patterns.Length)])];
                File.WriteAllLines(Path.Combine(folder, ".gitignore"), patterns);
                var theirs = Git(folder, string.Join('\n', paths) + "\n", "check-ignore", "--no-index", "--stdin")!
                    .Split('\n', StringSplitOptions.RemoveEmptyEntries).ToHashSet();
                var ours = new Ignored(new DiskFileTree(folder), folder);
                foreach (var path in paths)
                {
                    var parts = path.Split('/');
                    var ignored = Enumerable.Range(1, parts.Length - 1).Any(n => ours.IsIgnored($"{folder}/{string.Join('/', parts[..n])}", true)) || ours.IsIgnored($"{folder}/{path}", false);
                    Assert.True(ignored == theirs.Contains(path), $"{string.Join(" | ", patterns)}: '{path}' is {(ignored ? "" : "not ")}ignored here");
                    compared++;
                }
            }

            Assert.True(compared > 5000);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void AWalkLeavesOutWhatGitAndTheShopIgnore()
    {
        var files = new MemoryFileTree("/shop");
        foreach (var path in new[] { "a.stock.json", "build/b.stock.json", "drafts/c.stock.json", "drafts/keep/d.stock.json", "old.stock.json", "deep/e.stock.json", "deep/f.stock.json" })
        {
            files.Add("/shop/" + path, "{}");
        }

        files.Add("/shop/.gitignore", "build/\n/old.*\n");
        files.Add("/shop/recipelint.json", """{ "ignore": ["drafts/*", "!drafts/keep"] }""");
        files.Add("/shop/deep/.gitignore", "f.*");
        var walked = FolderWalk.Files(files, "/shop", _ => true, ignored: new Ignored(files, "/shop")).Where(f => f.EndsWith(".stock.json", StringComparison.Ordinal)).Order();
        Assert.Equal(["/shop/a.stock.json", "/shop/deep/e.stock.json", "/shop/drafts/keep/d.stock.json"], walked);
        Assert.True(new Ignored(files, "/shop").Covers("/shop/build"));
        Assert.False(new Ignored(files, "/shop").Covers("/shop/deep"));
    }

    private static string? Git(string folder, string input, params string[] arguments)
    {
        try
        {
            using var git = Process.Start(new ProcessStartInfo("git", ["-c", "core.quotePath=false", .. arguments])
            {
                WorkingDirectory = folder,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            git.StandardInput.Write(input);
            git.StandardInput.Close();
            var answer = git.StandardOutput.ReadToEnd();
            git.WaitForExit();
            return answer;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // No git on this machine: nothing to hold it against.
            return null;
        }
    }
}
