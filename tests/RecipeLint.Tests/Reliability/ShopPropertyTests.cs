using System.Buffers;
using System.Text;
using CsCheck;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>
/// What holds for every shop whatever stands in it: the way a file is written changes nothing, a batch of another size is the same chemistry, a
/// suppression only takes away, and a file has the same facts alone and among others. Seeds are printed by CsCheck.
/// </summary>
public sealed class ShopPropertyTests
{
    private static readonly long _iterations = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 1000 : 25;

    private static readonly Gen<GeneratedStock[]> _shop = GeneratedShops.Any;

    [Fact]
    public void OrderOfMembersWhiteSpaceEscapesAndLineEndsChangeNoFinding() => Gen.Select(_shop, Gen.Int[1, 1_000_000]).Sample(
        (shop, seed) =>
        {
            var plain = Findings(GeneratedShops.Tree(shop, new ShopWriting(0, 1)));
            Assert.Equal(plain, Findings(GeneratedShops.Tree(shop, new ShopWriting(seed, 1))));
        },
        iter: _iterations);

    /// <summary>Files under other names are the same shop, to the digit. A message leaves its reason out where a long name makes it too long.</summary>
    [Fact]
    public void OtherFileNamesChangeNothingElse() => _shop.Sample(
        shop =>
        {
            const string Prefix = "of-the-north-house-";
            var renamed = Judge(GeneratedShops.Tree(shop, new ShopWriting(0, 1) { Prefix = Prefix })).Findings.Select(f => Figures(f).Replace(Prefix, "", StringComparison.Ordinal));
            Assert.Equal(string.Join('\n', Judge(GeneratedShops.Tree(shop, new ShopWriting(0, 1))).Findings.Select(Figures)), string.Join('\n', renamed));
        },
        iter: _iterations);

    /// <summary>Twice of everything in twice the water is the same solution; what hangs on scales and vessels is left out.</summary>
    [Fact]
    public void ABatchOfTwiceTheSizeIsTheSameChemistry() => _shop.Sample(
        shop => Assert.Equal(Chemistry(GeneratedShops.Tree(shop, new ShopWriting(0, 1))), Chemistry(GeneratedShops.Tree(shop, new ShopWriting(0, 2)))),
        iter: _iterations);

    [Fact]
    public void ASuppressionOnlyTakesAway() => Gen.Select(_shop, Gen.Int[0, 1000]).Sample(
        (shop, pick) =>
        {
            var before = Judge(GeneratedShops.Tree(shop, new ShopWriting(0, 1))).Findings;
            if (before.Count == 0)
            {
                return;
            }

            var chosen = before[pick % before.Count];
            var settings = $$"""{"suppressions": [{"rule": "{{chosen.Rule.Name}}", "file": "{{chosen.Place.File}}", "reason": "A test of what it takes away."}]}""";
            var after = Judge(GeneratedShops.Tree(shop, new ShopWriting(0, 1)).Add("recipelint.json", settings)).Findings;
            Assert.DoesNotContain(after.Select(Key).Except(before.Select(Key)), k => !k.Contains("suppression-unused", StringComparison.Ordinal));
            Assert.DoesNotContain(after, f => f.Rule.Name == chosen.Rule.Name && f.Place.File == chosen.Place.File);
        },
        iter: _iterations);

    [Fact]
    public void AFileHasTheSameFactsAloneAndAmongOthers() => _shop.Sample(
        shop =>
        {
            var tree = GeneratedShops.Tree(shop, new ShopWriting(0, 1));
            var whole = Analyse(tree, ".");
            foreach (var file in whole.Stocks.Select(s => s.Stock.File).Concat(whole.Recipes.Select(r => r.Recipe.File)))
            {
                Assert.Equal(FactsOf(whole, file), FactsOf(Analyse(tree, file), file));
            }
        },
        iter: _iterations);

    /// <summary>Rules share nothing: eight at once, over the same facts and over facts of their own, say what one alone says.</summary>
    [Fact]
    public void EightAtOnceSayWhatOneSays() => _shop.Sample(
        shop =>
        {
            var tree = GeneratedShops.Tree(shop, new ShopWriting(0, 1));
            var alone = Findings(tree);
            var answers = new string[8];
            Parallel.For(0, 8, i => answers[i] = string.Join('\n', Findings(tree)));
            Assert.All(answers, a => Assert.Equal(string.Join('\n', alone), a));
        },
        iter: _iterations);

    private static Facts Analyse(IFileTree tree, string asked) =>
        Analyzer.Analyse(WorkspaceLoader.Load(tree, [asked], new LoadOptions { Profiles = ProfileLibrary.AllNames }));

    private static LintResult Judge(IFileTree tree) => LintEngine.Judge(Analyse(tree, "."), new EngineOptions { Today = Cli.Today, Rules = RuleList.All });

    private static List<string> Findings(IFileTree tree)
    {
        var result = Judge(tree);
        Assert.Empty(result.Faults);
        return [.. result.Findings.Select(Key)];
    }

    private static string Key(Finding finding) => $"{finding.Rule.Name} {finding.Level} {finding.Place.File} {finding.IdPath} {finding.Message}";

    private static string Figures(Finding finding) =>
        $"{finding.Rule.Name} {finding.Level} {finding.Place.File} {finding.IdPath} {finding.Measured} {string.Join(' ', finding.Values)}";

    private static List<string> Chemistry(IFileTree tree) =>
    [
        .. Judge(tree).Findings.Where(f => f.Rule.Id.StartsWith("RL01", StringComparison.Ordinal) || f.Rule.Id.StartsWith("RL02", StringComparison.Ordinal) || f.Rule.Id.StartsWith("RL05", StringComparison.Ordinal))
            .Select(f => $"{f.Rule.Name} {f.Level} {f.Place.File} {f.IdPath}").Order(StringComparer.Ordinal),
    ];

    private static string FactsOf(Facts facts, string file)
    {
        var buffer = new ArrayBufferWriter<byte>();
        return FactsWriter.TryWrite(facts, file, buffer) ? Encoding.UTF8.GetString(buffer.WrittenSpan) : "none";
    }
}
