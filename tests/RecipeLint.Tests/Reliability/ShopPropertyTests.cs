using System.Buffers;
using System.Globalization;
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
    private static readonly string[] _salts =
    [
        "calcium-nitrate-4h2o", "potassium-nitrate", "magnesium-sulfate-7h2o", "monopotassium-phosphate", "potassium-sulfate", "ammonium-nitrate", "iron-edta", "boric-acid", "manganese-sulfate-1h2o", "no-such-salt",
    ];

    private static readonly double[] _litres = [0.5, 1, 2, 10];

    private static readonly long _iterations = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 1000 : 25;

    private static readonly Gen<GeneratedStock> _stock =
        Gen.Select(Gen.Int[0, _salts.Length - 1].Array[1, 5], Gen.Int[1, 900].Array[5], Gen.Int[0, 3]).Select((salts, tenths, size) => Sized(salts, tenths, _litres[size]));

    private static readonly Gen<GeneratedStock[]> _shop = _stock.Array[1, 3];

    [Fact]
    public void OrderOfMembersWhiteSpaceEscapesAndLineEndsChangeNoFinding() => Gen.Select(_shop, Gen.Int[1, 1_000_000]).Sample(
        (shop, seed) =>
        {
            var plain = Findings(Tree(shop, new Writing(0, 1)));
            Assert.Equal(plain, Findings(Tree(shop, new Writing(seed, 1))));
        },
        iter: _iterations);

    /// <summary>Files under other names are the same shop, to the digit. A message leaves its reason out where a long name makes it too long.</summary>
    [Fact]
    public void OtherFileNamesChangeNothingElse() => _shop.Sample(
        shop =>
        {
            const string Prefix = "of-the-north-house-";
            var renamed = Judge(Tree(shop, new Writing(0, 1) { Prefix = Prefix })).Findings.Select(f => Figures(f).Replace(Prefix, "", StringComparison.Ordinal));
            Assert.Equal(string.Join('\n', Judge(Tree(shop, new Writing(0, 1))).Findings.Select(Figures)), string.Join('\n', renamed));
        },
        iter: _iterations);

    /// <summary>Twice of everything in twice the water is the same solution; what hangs on scales and vessels is left out.</summary>
    [Fact]
    public void ABatchOfTwiceTheSizeIsTheSameChemistry() => _shop.Sample(
        shop => Assert.Equal(Chemistry(Tree(shop, new Writing(0, 1))), Chemistry(Tree(shop, new Writing(0, 2)))),
        iter: _iterations);

    [Fact]
    public void ASuppressionOnlyTakesAway() => Gen.Select(_shop, Gen.Int[0, 1000]).Sample(
        (shop, pick) =>
        {
            var before = Judge(Tree(shop, new Writing(0, 1))).Findings;
            if (before.Count == 0)
            {
                return;
            }

            var chosen = before[pick % before.Count];
            var settings = $$"""{"suppressions": [{"rule": "{{chosen.Rule.Name}}", "file": "{{chosen.Place.File}}", "reason": "A test of what it takes away."}]}""";
            var after = Judge(Tree(shop, new Writing(0, 1)).Add("recipelint.json", settings)).Findings;
            Assert.DoesNotContain(after.Select(Key).Except(before.Select(Key)), k => !k.Contains("suppression-unused", StringComparison.Ordinal));
            Assert.DoesNotContain(after, f => f.Rule.Name == chosen.Rule.Name && f.Place.File == chosen.Place.File);
        },
        iter: _iterations);

    [Fact]
    public void AFileHasTheSameFactsAloneAndAmongOthers() => _shop.Sample(
        shop =>
        {
            var tree = Tree(shop, new Writing(0, 1));
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
            var tree = Tree(shop, new Writing(0, 1));
            var alone = Findings(tree);
            var answers = new string[8];
            Parallel.For(0, 8, i => answers[i] = string.Join('\n', Findings(tree)));
            Assert.All(answers, a => Assert.Equal(string.Join('\n', alone), a));
        },
        iter: _iterations);

    private static GeneratedStock Sized(int[] salts, int[] tenths, double litres) =>
        new(litres, [.. salts.Select((s, i) => (_salts[s], Math.Round(tenths[i] * litres / 10, 2)))]);

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

    private static MemoryFileTree Tree(GeneratedStock[] shop, Writing writing)
    {
        var tree = new MemoryFileTree("/shop").Add("/shop/.git/HEAD", "");
        var doses = new List<string>();
        for (var i = 0; i < shop.Length; i++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"{writing.Prefix}s{i}.stock.json");
            tree.Add(name, writing.Stock(shop[i]));
            doses.Add(writing.Members([("stock", writing.Text(name)), ("dose", writing.Text("1:100"))]));
        }

        return tree.Add(
            writing.Prefix + "r.recipe.json",
            writing.Members([("format", "1"), ("final", writing.Text(writing.Litres(10))), ("doses", "[" + string.Join(",", doses) + "]")]));
    }

    private sealed record GeneratedStock(double Litres, IReadOnlyList<(string Substance, double Grams)> Additions);

    /// <summary>One way to write the same shop. Seed 0 is the plain one.</summary>
    private sealed record Writing(int Seed, double Scale)
    {
        private readonly Random _random = new(Seed);

        public string Prefix { get; init; } = "";

        public string Stock(GeneratedStock stock) => Members(
        [
            ("format", "1"), ("makes", Text(Litres(stock.Litres))),
            ("steps", "[" + string.Join(
                ",",
                stock.Additions.Select(a => Members([("add", Text(a.Substance)), ("amount", Text(Number(a.Grams * Scale) + " g")), ("assay", Text("99 %"))]))
                    .Prepend(Members([("pour", Text(Litres(stock.Litres * 0.7))), ("of", Text("distilled"))]))
                    .Append(Members([("topUp", Text(Litres(stock.Litres))), ("of", Text("distilled"))]))) + "]"),
        ]);

        public string Litres(double litres) => Number(litres * Scale) + " L";

        public string Members((string Name, string Value)[] members)
        {
            if (Seed != 0)
            {
                _random.Shuffle(members);
            }

            return "{" + string.Join(",", members.Select(m => Space() + Text(m.Name) + Space() + ":" + Space() + m.Value + Space())) + "}";
        }

        public string Text(string text) => "\"" + string.Concat(text.Select(c => Seed != 0 && _random.Next(4) == 0 ? string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}") : c.ToString())) + "\"";

        private static string Number(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);

        private string Space() => Seed == 0 ? "" : new[] { "", " ", "\n", "\r\n", "\t", "   " }[_random.Next(6)];
    }
}
