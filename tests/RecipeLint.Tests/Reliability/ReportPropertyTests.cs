using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using Json.Schema;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>
/// What holds for every answer whatever shop was asked about: it is the same in every culture, each finding stands where it says, the formats for
/// machines fit their schemas, a baseline of a run empties the next one, and a safe repair changes how a file says something and nothing else.
/// </summary>
public sealed class ReportPropertyTests
{
    private static readonly long _iterations = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 500 : 12;

    private static readonly JsonSchema _report = JsonSchema.FromText(
        File.ReadAllText(Path.Combine(Repository.Root, "schema", "report.schema.json")), new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    [Fact]
    public void EveryCultureGetsTheSameBytes() => Gen.Select(GeneratedShops.Any, Gen.Int[1, 1_000_000]).Sample(
        (shop, seed) =>
        {
            var tree = GeneratedShops.Tree(shop, new ShopWriting(seed, 1));
            foreach (var format in (string[])["text", "json", "csv"])
            {
                var answers = ((CultureInfo[])[CultureInfo.InvariantCulture, TestCultures.Of("tr-TR"), TestCultures.Of("de-DE"), TestCultures.Of("ar-SA")]).Select(c => In(c, () => Cli.RunOver(tree, "check", ".", "--format", format))).Distinct().ToList();
                Assert.Single(answers);
            }
        },
        iter: _iterations);

    /// <summary>One, two and eight threads, and two parts of the shop put together again, say the same to the byte.</summary>
    [Fact]
    public void ThreadsAndPartsSayWhatTheWholeSays() => Gen.Select(GeneratedShops.Any, GeneratedShops.Any, Gen.Int[0, 1_000_000]).Sample(
        (one, other, seed) =>
        {
            var tree = new MemoryFileTree("/shop").Add("/shop/.git/HEAD", "");
            foreach (var (folder, shop) in new[] { ("a", one), ("b", other) })
            {
                var own = GeneratedShops.Tree(shop, new ShopWriting(seed, 1));
                foreach (var name in own.Names("/shop").Where(n => n != ".git"))
                {
                    tree.Add($"{folder}/{name}", own.Read("/shop/" + name, 1_000_000).Bytes!);
                }
            }

            Answer Sarif(params string[] more) => Cli.RunOver(tree, ["check", ".", "--format", "sarif", .. more]);
            var whole = Sarif("--threads", "1");
            Assert.Equal(whole, Sarif("--threads", "2"));
            Assert.Equal(whole, Sarif("--threads", "8"));
            var logs = new MemoryFileTree("/logs").Add("1.sarif", Sarif("--shard", "1/2").Out).Add("2.sarif", Sarif("--shard", "2/2").Out);
            Assert.Equal(whole.Out, Cli.RunOver(logs, "merge", "2.sarif", "1.sarif").Out);
        },
        iter: _iterations);

    [Fact]
    public void EveryFindingStandsInsideItsFile() => Gen.Select(GeneratedShops.Any, Gen.Int[0, 1_000_000]).Sample(
        (shop, seed) =>
        {
            var tree = GeneratedShops.Tree(shop, new ShopWriting(seed, 1));
            using var log = JsonDocument.Parse(Cli.RunOver(tree, "check", ".", "--format", "sarif").Out);
            foreach (var place in log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().SelectMany(r => r.GetProperty("locations").EnumerateArray()).Select(l => l.GetProperty("physicalLocation")))
            {
                var file = Uri.UnescapeDataString(place.GetProperty("artifactLocation").GetProperty("uri").GetString()!);
                var lines = Encoding.UTF8.GetString(tree.Read("/shop/" + file, 1_000_000).Bytes!).Split(["\r\n", "\n", "\r"], StringSplitOptions.None);
                if (!place.TryGetProperty("region", out var region))
                {
                    continue;
                }

                var (line, column) = (region.GetProperty("startLine").GetInt32(), Number(region, "startColumn", 1));
                var endLine = Number(region, "endLine", line);
                var endColumn = Number(region, "endColumn", lines[endLine - 1].Length + 1);
                Assert.InRange(line, 1, lines.Length);
                Assert.InRange(endLine, line, lines.Length);
                Assert.InRange(column, 1, lines[line - 1].Length + 1);
                Assert.InRange(endColumn, endLine == line ? column : 1, lines[endLine - 1].Length + 1);
                if (line == endLine && region.TryGetProperty("snippet", out var snippet))
                {
                    Assert.Equal(lines[line - 1][(column - 1)..(endColumn - 1)], snippet.GetProperty("text").GetString());
                }
            }
        },
        iter: _iterations);

    [Fact]
    public void FormatsForMachinesFitTheirSchemas() => Gen.Select(GeneratedShops.Any, Gen.Int[0, 1_000_000]).Sample(
        (shop, seed) =>
        {
            var tree = GeneratedShops.Tree(shop, new ShopWriting(seed, 1));
            Assert.Equal([], SarifSchema.Problems(Cli.RunOver(tree, "check", ".", "--format", "sarif", "--repairs").Out));
            using var report = JsonDocument.Parse(Cli.RunOver(tree, "check", ".", "--format", "json").Out);
            Assert.True(_report.Evaluate(report.RootElement).IsValid);
        },
        iter: _iterations);

    [Fact]
    public void ABaselineOfARunEmptiesTheNextOne() => GeneratedShops.Any.Sample(
        shop =>
        {
            using var scratch = new Scratch();
            Write(scratch, shop, new ShopWriting(0, 1));
            Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "update", ".").Code);
            var next = Cli.RunIn(scratch.Path, null, "check", ".", "--baseline", "recipelint.baseline.json", "--fail-on", "note");
            Assert.Equal((0, ""), (next.Code, next.Error));
            Assert.Empty(next.Findings);
            var again = File.ReadAllText(Path.Combine(scratch.Path, "recipelint.baseline.json"));
            Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "update", ".").Code);
            Assert.Equal(again, File.ReadAllText(Path.Combine(scratch.Path, "recipelint.baseline.json")));
        },
        iter: _iterations);

    /// <summary>A comma too many and a key in another's spelling are mended; twice is once; every figure stays.</summary>
    [Fact]
    public void ASafeRepairIsDoneOnceAndChangesNoFigure() => GeneratedShops.Any.Sample(
        shop =>
        {
            using var scratch = new Scratch();
            var files = Write(scratch, shop, new ShopWriting(0, 1));
            var facts = files.ConvertAll(f => Cli.RunIn(scratch.Path, null, "facts", f).Out);
            foreach (var file in files)
            {
                var full = Path.Combine(scratch.Path, file);
                File.WriteAllText(full, File.ReadAllText(full).Replace("}]", "},]", StringComparison.Ordinal));
            }

            var before = Rules(Cli.RunIn(scratch.Path, null, "check", "."));
            Assert.Contains("malformed-file", before);
            Cli.RunIn(scratch.Path, null, "check", ".", "--fix");
            var once = files.ConvertAll(f => File.ReadAllText(Path.Combine(scratch.Path, f)));
            Assert.DoesNotContain("malformed-file", Rules(Cli.RunIn(scratch.Path, null, "check", ".")));
            Assert.Equal(facts, files.ConvertAll(f => Cli.RunIn(scratch.Path, null, "facts", f).Out));
            Cli.RunIn(scratch.Path, null, "check", ".", "--fix");
            Assert.Equal(once, files.ConvertAll(f => File.ReadAllText(Path.Combine(scratch.Path, f))));
        },
        iter: _iterations);

    private static List<string> Write(Scratch scratch, GeneratedStock[] shop, ShopWriting writing)
    {
        Directory.CreateDirectory(Path.Combine(scratch.Path, ".git"));
        var tree = GeneratedShops.Tree(shop, writing);
        var files = tree.Names("/shop").Where(n => n.EndsWith(".json", StringComparison.Ordinal)).ToList();
        files.ForEach(f => scratch.Write(f, Encoding.UTF8.GetString(tree.Read("/shop/" + f, 1_000_000).Bytes!)));
        return files;
    }

    private static HashSet<string> Rules(Answer answer) => [.. answer.Findings.Select(f => f[(f.IndexOf(" RL", StringComparison.Ordinal) + 8)..].Split(' ', ':', '(')[0])];

    private static int Number(JsonElement region, string key, int otherwise) => region.TryGetProperty(key, out var value) ? value.GetInt32() : otherwise;

    private static Answer In(CultureInfo culture, Func<Answer> run)
    {
        var (before, ui) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = culture;
            return run();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, ui);
        }
    }
}
