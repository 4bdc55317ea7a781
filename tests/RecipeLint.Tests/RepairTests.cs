using System.Diagnostics;
using System.Text;
using System.Text.Json;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Mending files from the command line.</summary>
public sealed class RepairTests
{
    private const string PartA = """
        {
          "format": 1,
          "name": "Part A",
          "makes": "2 L",
          "dose": "10 mL/L",
          "keep": { "at": "8..25 °C", "for": "3 months", "light": "dark" },
          "steps": [
            { "pour": "1.5 L", "of": "distilled" },
            { "add": "calcium-nitrate-4h2o", "amount": "180 g", "assay": "99 %" },
            { "add": "magnesium-sulfate-7h2o", "amount": "60 g", "assay": "99 %" },
            { "stir": "until clear" },
            { "topUp": "2 L", "of": "distilled" }
          ]
        }

        """;

    private const string PartB = """
        {
          "format": 1,
          "name": "Part B",
          "makes": "1 L",
          "dose": "5 mL/L",
          "keep": { "at": "8..25 °C", "for": "3 months", "light": "dark" },
          "steps": [
            { "pour": "0.7 L", "of": "distilled" },
            { "add": "potassium-nitrate", "amount": "60 g", "assay": "99 %" },
            { "topUp": "1 L", "of": "distilled" }
          ]
        }

        """;

    private const string Tank = """
        {
          "format": 1,
          "name": "Tank",
          "final": "100 L",
          "volume": "made up",
          "doses": [
            { "stock": "../stocks/a.stock.json" },
            { "stock": "../stocks/b.stock.json" },
            { "add": "potassium-sulfate", "amount": "20 g", "assay": "99 %" }
          ]
        }

        """;

    /// <summary>Slips of every safe kind, in the layout of another system: CRLF, tabs, a mark, a comment, a comma too many.</summary>
    private static readonly string _sloppy =
        "\uFEFF{\r\n\t\"name\": \"Nitrate\",\r\n\t\"makes\": \"1 L\",\r\n\t\"steps\": [\r\n\t\t{\"pour\": \"800 mL\"}, // rain is fine\r\n"
        + "\t\t{\"add\": \"potasium-nitrate\",  \"amount\":\"60 g\", \"remark\": \"99 % pure\"},\r\n\t\t{\"topUp\": \"1 L\"},\r\n\t]\r\n}";

    [Fact]
    public void RepairsAreListedWithFiguresBeforeAndAfter()
    {
        using var shop = Shop();
        var answer = Run(shop, "check", ".", "--repairs");
        Assert.Equal(1, answer.Code);
        Assert.Contains("repair RL0101:move-magnesium-sulfate-7h2o-to-b (changes the chemistry; --apply", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Move magnesium sulfate heptahydrate to 'Part B', 60 g there.", answer.Out, StringComparison.Ordinal);
        Assert.Contains(" that falls out", answer.Out, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n').Where(l => l.StartsWith("    ", StringComparison.Ordinal)), l => Assert.True(l.Length <= 100, l));
    }

    [Fact]
    public void APlainCheckKnowsNothingOfRepairs()
    {
        using var shop = Shop();
        Assert.DoesNotContain("repair", Run(shop, "check", ".").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatMovesToAnotherPartReachesThePlantsAsBefore()
    {
        using var shop = Shop();
        var answer = Run(shop, "check", ".", "--apply", "RL0101");
        Assert.DoesNotContain("RL0101", answer.Out, StringComparison.Ordinal);
        Assert.Contains("RL0101:move-magnesium-sulfate-7h2o-to-b: Move", answer.Error, StringComparison.Ordinal);

        // 60 g in 2 L at 10 mL/L are 0.3 g/L; in 1 L at 5 mL/L they are 0.3 g/L again.
        Assert.Equal(PartA.Replace("    { \"add\": \"magnesium-sulfate-7h2o\", \"amount\": \"60 g\", \"assay\": \"99 %\" },\n", ""), shop.Read("stocks/a.stock.json"));
        Assert.Contains("\"99 %\" },\n    { \"add\": \"magnesium-sulfate-7h2o\", \"amount\": \"60 g\", \"assay\": \"99 %\" },\n    { \"topUp\"", shop.Read("stocks/b.stock.json"), StringComparison.Ordinal);
        Assert.Equal(Tank, shop.Read("recipes/tank.recipe.json"));
        Assert.Contains("nothing to mend", Run(shop, "check", ".", "--apply", "RL0101").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ARepairIsChosenByItsKey()
    {
        using var shop = Shop();
        Run(shop, "check", "stocks/a.stock.json", "--apply", "calcium-with-sulfate:use-magnesium-nitrate-6h2o");
        Assert.Contains("\"add\": \"magnesium-nitrate-6h2o\"", shop.Read("stocks/a.stock.json"), StringComparison.Ordinal);
    }

    [Fact]
    public void SafeRepairsAreWrittenAndTheLayoutStays()
    {
        using var scratch = new ShopFolder();
        scratch.Write("nitrate.stock.json", _sloppy);
        var answer = Run(scratch, "check", ".", "--fix");
        Assert.Equal(0, answer.Code);
        Assert.Equal(
            "{\r\n\t\"format\": 1,\r\n\t\"name\": \"Nitrate\",\r\n\t\"makes\": \"1 L\",\r\n\t\"steps\": [\r\n\t\t{\"pour\": \"800 mL\", \"note\": \"rain is fine\"},\r\n"
            + "\t\t{\"add\": \"potassium-nitrate\",  \"amount\":\"60 g\", \"note\": \"99 % pure\"},\r\n\t\t{\"topUp\": \"1 L\"}\r\n\t]\r\n}",
            scratch.Read("nitrate.stock.json"));
        Assert.Equal(6, answer.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Equal("recipelint: nitrate.stock.json: nothing to fix.\n", Run(scratch, "check", ".", "--fix").Error);
    }

    /// <summary>The other name kept what stood there, and nobody was told.</summary>
    [Fact]
    public void OtherNamesOfAFileKeepWhatItWasAndThatIsSaid()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var scratch = new ShopFolder();
        scratch.Write("nitrate.stock.json", _sloppy);
        var other = Path.Combine(scratch.Path, "kept.txt");
        Assert.True(HardLink.TryMake(Path.Combine(scratch.Path, "nitrate.stock.json"), other));
        var before = File.ReadAllBytes(other);
        var answer = Run(scratch, "check", ".", "--fix");
        Assert.Equal(0, answer.Code);
        Assert.Equal(before, File.ReadAllBytes(other));
        Assert.NotEqual(before, File.ReadAllBytes(Path.Combine(scratch.Path, "nitrate.stock.json")));
        Assert.Equal(
            "recipelint: nitrate.stock.json: this file had other names on the disk (hard links); they still hold what it was before.",
            Assert.Single(answer.Error.Split('\n'), l => l.Contains("names", StringComparison.Ordinal)));
    }

    [Fact]
    public void EachFileIsToldWhatWasDoneToItAndOthersStay()
    {
        using var shop = Shop();
        shop.Write("bags.substances.json", """{"format": 1, "substances": [{"id": "bag", "nmae": "Bag", "formula": "KNO3"}]}""");
        shop.Write("stocks/a.stock.json", PartA.Replace("magnesium-sulfate-7h2o", "bag"));
        var before = shop.All();
        var answer = Run(shop, "check", "stocks/a.stock.json", "--fix");
        Assert.Equal(
            "recipelint: bags.substances.json: one repair is left, because this file was not asked for.\nrecipelint: stocks/a.stock.json: nothing to fix.\n", answer.Error);
        Assert.Equal(before, shop.All());
    }

    [Fact]
    public void GitAppliesWhatADryRunPrintsAndItIsWhatWouldBeWritten()
    {
        using var shop = Shop();
        shop.Write("stocks/with blank.stock.json", _sloppy.Replace("\uFEFF", ""));
        shop.Write("stocks/phosphate.stock.json", PartB.Replace("potassium-nitrate", "potasium-nitrate").TrimEnd('\n'));
        var before = shop.All();
        string[] wishes = ["check", ".", "--fix", "--apply", "RL0101"];
        var dry = Run(shop, [.. wishes, "--dry-run"]);
        Assert.Equal(before, shop.All());
        Assert.StartsWith("diff --git a/stocks/", dry.Out, StringComparison.Ordinal);

        using var copy = new ShopFolder(before);
        copy.Git("init", "-q");
        File.WriteAllText(Path.Combine(copy.Path, "change.diff"), dry.Out);
        copy.Git("apply", "--check", "change.diff");
        copy.Git("apply", "change.diff");
        File.Delete(Path.Combine(copy.Path, "change.diff"));

        var written = Run(shop, wishes);
        Assert.Equal(shop.All(), copy.All());
        Assert.Equal(written.Code, dry.Code);
    }

    [Fact]
    public void ANewBottleIsANewFileThatGitAppliesToo()
    {
        using var shop = Shop();
        string[] wishes = ["check", ".", "--apply", "RL0101:own-bottle-magnesium-sulfate-7h2o"];
        var dry = Run(shop, [.. wishes, "--dry-run"]);
        Assert.Contains("new file mode 100644", dry.Out, StringComparison.Ordinal);
        using var copy = new ShopFolder(shop.All());
        copy.Git("init", "-q");
        File.WriteAllText(Path.Combine(copy.Path, "change.diff"), dry.Out);
        copy.Git("apply", "change.diff");
        Run(shop, wishes);
        Assert.Equal(shop.Read("stocks/magnesium-sulfate-7h2o.stock.json"), copy.Read("stocks/magnesium-sulfate-7h2o.stock.json"));
        Assert.Contains("{ \"stock\": \"../stocks/magnesium-sulfate-7h2o.stock.json\" }", shop.Read("recipes/tank.recipe.json"), StringComparison.Ordinal);
    }

    [Fact]
    public void AnExplanationWithTheNumbersOfAFileListsItsRepairs()
    {
        using var shop = Shop();
        var answer = Run(shop, "explain", "RL0101", "--for", "stocks/a.stock.json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("repair RL0101:move-magnesium-sulfate-7h2o-to-b (changes the chemistry; --apply", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("repair RL", Run(shop, "explain", "RL0101", "--for", "stocks/b.stock.json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void EitherEveryFileIsWrittenOrNone()
    {
        using var shop = Shop();
        var before = shop.All();
        var guarded = Path.Combine(shop.Path, "stocks/b.stock.json");
        File.SetAttributes(guarded, FileAttributes.ReadOnly);
        var answer = Run(shop, "check", ".", "--apply", "RL0101:move-magnesium-sulfate-7h2o-to-b");
        File.SetAttributes(guarded, FileAttributes.Normal);
        Assert.Equal(2, answer.Code);
        Assert.Contains("write-protected", answer.Error, StringComparison.Ordinal);
        Assert.Equal(before, shop.All());
    }

    [Fact]
    public void PermissionsStay()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new ShopFolder();
        scratch.Write("nitrate.stock.json", _sloppy);
        var file = Path.Combine(scratch.Path, "nitrate.stock.json");
        const UnixFileMode mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead;
        File.SetUnixFileMode(file, mode);
        Run(scratch, "check", ".", "--fix");
        Assert.DoesNotContain("potasium", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Equal(mode, File.GetUnixFileMode(file));
    }

    [Fact]
    public void ALinkOutOfTheRepositoryIsNeverWrittenThrough()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var outside = new ShopFolder();
        outside.Write("nitrate.stock.json", _sloppy);
        using var shop = Shop();
        File.CreateSymbolicLink(Path.Combine(shop.Path, "stocks/link.stock.json"), Path.Combine(outside.Path, "nitrate.stock.json"));
        Run(shop, "check", ".", "--fix");
        Assert.Equal(_sloppy, outside.Read("nitrate.stock.json"));
    }

    [Fact]
    public void ALinkInsideStaysALink()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var shop = Shop();
        shop.Write("kept/nitrate.stock.json", _sloppy);
        var link = Path.Combine(shop.Path, "stocks/link.stock.json");
        File.CreateSymbolicLink(link, "../kept/nitrate.stock.json");
        Run(shop, "check", "stocks/link.stock.json", "--fix");
        Assert.NotNull(new FileInfo(link).LinkTarget);
        Assert.DoesNotContain("potasium", shop.Read("kept/nitrate.stock.json"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("'--dry-run' goes with", "check", ".", "--dry-run")]
    [InlineData("There is no rule 'RL9999'", "check", ".", "--apply", "RL9999")]
    [InlineData("calcium-with-sulfate", "check", ".", "--apply", "calcium-with-sulfat:weaker")]
    [InlineData("standard input cannot be mended", "check", "-", "--stdin-name", "stocks/a.stock.json", "--fix")]
    public void WrongUseIsTold(string told, params string[] arguments)
    {
        using var shop = Shop();
        var answer = Cli.RunIn(shop.Path, Encoding.UTF8.GetBytes(PartA), arguments);
        Assert.Equal(2, answer.Code);
        Assert.Contains(told, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void StandardInputGetsItsDifference()
    {
        using var shop = Shop();
        var answer = Cli.RunIn(shop.Path, Encoding.UTF8.GetBytes(_sloppy), "check", "-", "--stdin-name", "stocks/a.stock.json", "--fix", "--dry-run");
        Assert.Contains("+\t\t{\"add\": \"potassium-nitrate\",  \"amount\":\"60 g\", \"note\": \"99 % pure\"},\r\n", answer.Out, StringComparison.Ordinal);
        Assert.Equal(PartA, shop.Read("stocks/a.stock.json"));
    }

    [Fact]
    public void SarifCarriesTheRepairsAsFixesThatGiveWhatIsWritten()
    {
        using var shop = Shop();
        shop.Write("stocks/sloppy.stock.json", _sloppy.Replace("\uFEFF", ""));
        var log = Run(shop, "check", ".", "--repairs", "--format", "sarif").Out;
        Assert.Empty(SarifSchema.Problems(log));
        using var json = JsonDocument.Parse(log);
        var fix = json.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray()
            .Where(r => r.TryGetProperty("fixes", out _)).SelectMany(r => r.GetProperty("fixes").EnumerateArray())
            .Single(f => f.GetProperty("properties").GetProperty("repair").GetString() == "RL0101:use-magnesium-nitrate-6h2o");
        var change = Assert.Single(fix.GetProperty("artifactChanges").EnumerateArray());
        Assert.Equal("stocks/a.stock.json", change.GetProperty("artifactLocation").GetProperty("uri").GetString());
        var text = Replace(PartA, change.GetProperty("replacements"));
        Run(shop, "check", ".", "--apply", "RL0101:use-magnesium-nitrate-6h2o");
        Assert.Equal(shop.Read("stocks/a.stock.json"), text);
        Assert.DoesNotContain("\"fixes\"", Run(shop, "check", ".", "--format", "sarif").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{\"steps\": [{}, {}], \"steps\": 1, \"steps\": {}}")]
    [InlineData("{\"format\": 1, \"makes\": \"1 L\", \"steps\": [{\"add\": \"\\ud800\", \"amount\": \"1e999 g\"},,]}")]
    [InlineData("// nothing but a remark")]
    [InlineData("{\"form\u202Eat\": 1, \"note\": \"\\u0000\", /* \u001b[31m */ \"makes\": 1e400, \"steps\": [null, 7, []]}")]
    [InlineData("{\"format\": 1, /**/ \"makes\": \"1 L\", /**/ \"steps\": [ /* a */ /* b */ ] } // c")]
    public void HostileFilesAreMendedOrLeftAlone(string text)
    {
        using var scratch = new ShopFolder();
        scratch.Write("x.stock.json", text);
        var first = Run(scratch, "check", ".", "--fix", "--repairs");
        Assert.InRange(first.Code, 0, 1);
        Assert.DoesNotContain('\u001b', first.Out);
        var mended = scratch.Read("x.stock.json");
        Run(scratch, "check", ".", "--fix");
        Assert.Equal(mended, scratch.Read("x.stock.json"));
    }

    private static ShopFolder Shop()
    {
        var shop = new ShopFolder();
        shop.Write("recipelint.json", """{ "format": 1 }""");
        shop.Write("stocks/a.stock.json", PartA);
        shop.Write("stocks/b.stock.json", PartB);
        shop.Write("recipes/tank.recipe.json", Tank);
        return shop;
    }

    private static Answer Run(ShopFolder folder, params string[] arguments) => Cli.RunIn(folder.Path, null, arguments);

    /// <summary>SARIF replacements done by hand: lines and columns count from one, columns in UTF-16 units.</summary>
    private static string Replace(string text, JsonElement replacements)
    {
        var starts = new List<int> { 0 };
        starts.AddRange(text.Select((c, i) => (c, i)).Where(p => p.c == '\n').Select(p => p.i + 1));
        int Offset(JsonElement region, string line, string column) => starts[region.GetProperty(line).GetInt32() - 1] + region.GetProperty(column).GetInt32() - 1;
        foreach (var replacement in replacements.EnumerateArray().Reverse())
        {
            var region = replacement.GetProperty("deletedRegion");
            var (start, end) = (Offset(region, "startLine", "startColumn"), Offset(region, region.TryGetProperty("endLine", out _) ? "endLine" : "startLine", "endColumn"));
            var inserted = replacement.TryGetProperty("insertedContent", out var content) ? content.GetProperty("text").GetString() : "";
            text = text[..start] + inserted + text[end..];
        }

        return text;
    }

    /// <summary>A shop in a folder of its own, which is the root of a repository.</summary>
    private sealed class ShopFolder : IDisposable
    {
        private readonly Scratch _scratch = new();

        public ShopFolder()
        {
        }

        public ShopFolder(IReadOnlyDictionary<string, string> files)
        {
            foreach (var (name, text) in files)
            {
                Write(name, text);
            }
        }

        public string Path => _scratch.Path;

        /// <summary>Written as it is: a mark in the text is a mark in the file.</summary>
        public void Write(string name, string text) => _scratch.Write(name, text);

        public string Read(string name) => Encoding.UTF8.GetString(File.ReadAllBytes(System.IO.Path.Combine(Path, name)));

        public SortedDictionary<string, string> All() => new(
            Directory.GetFiles(Path, "*", SearchOption.AllDirectories)
                .Select(f => System.IO.Path.GetRelativePath(Path, f))
                .Where(f => !f.StartsWith(".git", StringComparison.Ordinal))
                .ToDictionary(f => f, Read),
            StringComparer.Ordinal);

        public void Git(params string[] arguments)
        {
            using var git = Process.Start(new ProcessStartInfo("git", arguments) { WorkingDirectory = Path, RedirectStandardError = true })!;
            var error = git.StandardError.ReadToEnd();
            git.WaitForExit();
            Assert.True(git.ExitCode == 0, error);
        }

        public void Dispose() => _scratch.Dispose();
    }

    [Fact]
    public void AFileAndALinkToItAreMendedOnce()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        var file = scratch.Write("a.stock.json", PartA.Replace("\"amount\": \"60 g\"", "\"ammount\": \"60 g\"", StringComparison.Ordinal));
        File.CreateSymbolicLink(Path.Combine(scratch.Path, "b.stock.json"), file);
        var answer = Cli.RunIn(scratch.Path, null, "check", ".", "--fix");
        Assert.InRange(answer.Code, 0, 1);
        Assert.Contains("b.stock.json: leads to the same file as 'a.stock.json', which was written.", answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("ammount", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.NotNull(new FileInfo(Path.Combine(scratch.Path, "b.stock.json")).LinkTarget);
    }

    [Fact]
    public void AWholeDiskIsNotWalked()
    {
        var root = Path.GetPathRoot(Repository.Root)!;
        var answer = Cli.Run("check", root);
        Assert.Equal((2, ""), (answer.Code, answer.Out));
        Assert.Contains("is a whole disk; name the folder of your recipes.", answer.Error, StringComparison.Ordinal);
    }
}
