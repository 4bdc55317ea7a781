using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>
/// Whole answers of the commands that advise, word by word and figure by figure as a grower reads them, for bottles and tanks of many sorts;
/// all of them invented. With RECIPELINT_UPDATE=1 the files are written anew; read them before keeping them.
/// </summary>
public sealed class SpokenTests
{
    private const string Own = "tests/RecipeLint.Tests/Spoken/osierbeck/";

    private const string Draft = "examples/quillmere-first-draft/stocks/";

    private const string Shop = "examples/quillmere/stocks/";

    private const string Cellar = "tests/RecipeLint.Rules.Tests/Mutations/tarnhollow/";

    private static readonly string _folder = Path.Combine(Repository.Root, "tests", "RecipeLint.Tests", "Spoken");

    /// <summary>Stocks that order, stretch and proof are asked about.</summary>
    private static readonly (string Name, string File)[] _stocks =
    [
        ("trace", Shop + "trace.stock.json"), ("part-a", Shop + "part-a.stock.json"), ("draft-b", Draft + "part-b.stock.json"),
        ("draft-trace", Draft + "trace.stock.json"), ("cellar-trace", Cellar + "stocks/trace.stock.json"),
        ("cellar-phosphate", Cellar + "stocks/phosphate.stock.json"), ("garden-a", "examples/fennelwick/stocks/a.stock.json"),
        ("sour", Own + "sour.stock.json"), ("adjusted", Own + "adjusted.stock.json"), ("acid", Own + "acid.stock.json"),
        ("lye", Own + "lye.stock.json"), ("silica", Own + "silica.stock.json"), ("sugar", Own + "sugar.stock.json"),
        ("bleach", Own + "bleach.stock.json"), ("peroxide", Own + "peroxide.stock.json"), ("iron", Own + "iron.stock.json"),
        ("strange", Own + "strange.stock.json"), ("one", Own + "one.stock.json"), ("mo", Own + "mo.stock.json"),
        ("moles", Own + "moles.stock.json"),
        ("fizz", "rules/people/gas-or-heat-in-stock/failing-carbonate-with-citric-acid/a.stock.json"),
        ("too-strong", "rules/precipitation/solution-not-judged/failing-too-strong/a.stock.json"),
        ("iron-lye", "rules/procedure/metal-before-chelate-or-acid/failing-ferric-iron-and-lye-first/iron.stock.json"),
        ("saltpetre", "rules/precipitation/salt-past-its-solubility/failing-saltpetre-in-a-cold-shed/b.stock.json"),
        ("potash-last", "rules/procedure/slow-dissolver-last/failing-potassium-sulfate-last/b.stock.json"),
        ("cools", "rules/procedure/cools-on-dissolving/failing-potassium-nitrate/nitrate.stock.json"),
    ];

    private static readonly (string Name, string File)[] _mixtures =
    [
        ("lettuce", "examples/quillmere/recipes/lettuce.recipe.json"), ("cucumber", Cellar + "recipes/cucumber.recipe.json"),
        ("tank", Own + "tank.recipe.json"), ("alone", Own + "alone.recipe.json"), ("one", Own + "one.stock.json"),
        ("draft-b", Draft + "part-b.stock.json"), ("fizz", "rules/people/gas-or-heat-in-stock/failing-carbonate-with-citric-acid/a.stock.json"),
        ("strange", Own + "strange.stock.json"), ("sour", Own + "sour.stock.json"), ("garden", "examples/fennelwick/recipes/tomato.recipe.json"),
    ];

    public static TheoryData<string, string> Asked()
    {
        var data = new TheoryData<string, string>();
        foreach (var (name, file) in _stocks)
        {
            data.Add($"order-{name}", $"order {file}");
            data.Add($"stretching-{name}", $"stretch {file}");
            data.Add($"slips-proof-{name}", $"proof {file}");
        }

        foreach (var (name, file) in _mixtures)
        {
            data.Add($"splitting-{name}", $"split {file}");
        }

        return data;
    }

    public static TheoryData<string, string> Wished() => new()
    {
        { "slips-proof-all-b", $"proof --all {Shop}part-b.stock.json" },
        { "slips-proof-all-sour", $"proof --all {Own}sour.stock.json" },
        { "slips-proof-all-adjusted", $"proof --all {Own}adjusted.stock.json" },
        { "slips-proof-all-acid", $"proof --all {Own}acid.stock.json" },
        { "splitting-two-parts", $"split {Own}alone.recipe.json --parts 2 --rejected" },
        { "splitting-four-parts", $"split {Own}alone.recipe.json --parts 4" },
        { "splitting-strength", $"split {Cellar}recipes/cucumber.recipe.json --strength 1:400 --batch 5 L" },
        { "splitting-weak", $"split {Own}tank.recipe.json --strength 1:50 --at 2..8 °C --rejected" },
        { "splitting-one-part", $"split examples/quillmere/recipes/lettuce.recipe.json --parts 1 --rejected" },
        { "scoring-garden", "score examples/fennelwick" },
        { "scoring-garden-json", "score examples/fennelwick --format json" },
    };

    /// <summary>What was seen or measured, of the bottle or the tank it was seen in.</summary>
    public static TheoryData<string, string, string[]> Told() => new()
    {
        { "gypsum", Draft + "part-b.stock.json", ["--seen", "white needles, no fizz with vinegar", "--after", "2 weeks", "--at", "6 °C"] },
        { "warm-gypsum", Draft + "part-b.stock.json", ["--seen", "white sand at the bottom, hot water does nothing", "--at", "30 °C"] },
        { "rust", Own + "iron.stock.json", ["--seen", "brown flakes at the bottom, vitamin c clears it", "--after", "a month"] },
        { "ice", Own + "iron.stock.json", ["--seen", "half of it is ice", "--after", "frost", "--at", "-6 °C"] },
        { "jelly", Own + "silica.stock.json", ["--seen", "it set like jelly after the acid went in", "--after", "an hour"] },
        { "beer", Own + "sugar.stock.json", ["--seen", "bottle is bulging, hisses, smells of beer", "--after", "10 days", "--at", "28 °C"] },
        { "mould", Own + "sour.stock.json", ["--seen", "furry grey skin on top, smells musty", "--after", "2 months"] },
        { "flakes", Own + "sour.stock.json", ["--seen", "pearly flakes float in the cold, gone when warm", "--at", "5 °C"] },
        { "pool", Own + "bleach.stock.json", ["--seen", "smells of chlorine and a gas comes off", "--after", "at once"] },
        { "foam", Own + "peroxide.stock.json", ["--seen", "foams and the bottle is swollen", "--after", "next day"] },
        { "crust", Own + "adjusted.stock.json", ["--seen", "white crust around the cap, dissolves in water"] },
        { "clear", Own + "adjusted.stock.json", ["--seen", "looks fine, perfectly clear", "--measured", "pH 5.5"] },
        { "milk", Own + "one.stock.json", ["--seen", "went milky at once, strong acid clears it", "--after", "at once", "--at", "20 °C"] },
        { "chalk", Own + "one.stock.json", ["--seen", "white chalk that fizzes with vinegar", "--after", "1 week"] },
        { "blue", Shop + "trace.stock.json", ["--seen", "blue green jelly flakes, gone with vinegar", "--after", "after the lye went in"] },
        { "faded", "examples/quillmere/stocks/part-a.stock.json", ["--seen", "stood in the sun, colour went pale, tan mud", "--after", "1 week"] },
        { "crystals", "rules/precipitation/salt-past-its-solubility/failing-saltpetre-in-a-cold-shed/b.stock.json", ["--seen", "long clear rods at the bottom, melt when warm", "--after", "a cold night"] },
        { "eye", Own + "lye.stock.json", ["--seen", "it splashed in my eye"] },
        { "lye", Own + "lye.stock.json", ["--seen", "glittering flakes like glass splinters", "--after", "a year"] },
        { "acid", Own + "acid.stock.json", ["--seen", "white powder settled", "--measured", "pH 1.0"] },
        { "strange", Own + "strange.stock.json", ["--seen", "white needles"] },
        { "vague", Shop + "part-b.stock.json", ["--seen", "hmm, strange frobnicated"] },
        { "eggs", Shop + "trace.stock.json", ["--seen", "smells of rotten eggs, black mud", "--after", "3 months"] },
        { "readings", Shop + "part-b.stock.json", ["--measured", "pH 4.4", "--measured", "EC 1.05 mS/cm at 1:100", "--measured", "1 L weighs 1.02 kg"] },
        { "readings-off", Shop + "part-b.stock.json", ["--measured", "pH 6.9", "--measured", "EC 3 mS/cm at 1:100"] },
        { "readings-sour", Own + "sour.stock.json", ["--measured", "pH 3.2", "--measured", "EC 0.01 mS/cm at 1:500"] },
        { "readings-adjusted", Own + "adjusted.stock.json", ["--measured", "pH 8.9"] },
        { "readings-heavy", Own + "acid.stock.json", ["--measured", "1 L weighs 1.2 kg", "--measured", "pH 2 at 1:100"] },
        { "readings-moles", Own + "moles.stock.json", ["--measured", "100 mL weighs 103 g", "--measured", "0.5 L weighs 0.52 kg", "--measured", "EC 0.52 mS/cm at 1:200"] },
        { "readings-of-one", Own + "one.stock.json", ["--measured", "pH 6.1", "--measured", "EC 2.9 mS/cm at 1:20", "--seen", "white sand at the bottom"] },
        { "tank-scale", Cellar + "recipes/cucumber.recipe.json", ["--seen", "white crust on the drippers, fizzes with vinegar"] },
        { "tank-rust", Own + "tank.recipe.json", ["--seen", "tank went brown over the weekend, rusty fluff", "--after", "2 days"] },
        { "tank-gel", Own + "tank.recipe.json", ["--seen", "gel flakes where the acid went in", "--at", "12 °C"] },
        { "tank-milk", Own + "alone.recipe.json", ["--seen", "white haze in the whole tank, acid clears it", "--after", "after the lye"] },
        { "tank-slime", Cellar + "recipes/cucumber.recipe.json", ["--seen", "slimy film, a bit pink, smells bad", "--after", "weeks"] },
        { "tank-met", Cellar + "recipes/cucumber.recipe.json", ["--seen", "both concentrates sucked through one hose and it blocked with white stuff"] },
        { "tank-readings", Cellar + "recipes/cucumber.recipe.json", ["--measured", "pH 7.4", "--measured", "EC 1.1 mS/cm"] },
        { "tank-fits", Cellar + "recipes/cucumber.recipe.json", ["--seen", "all clear", "--measured", "pH 5.8"] },
        { "tank-ammonia", Own + "alone.recipe.json", ["--seen", "stinks of ammonia"] },
    };

    [Theory]
    [MemberData(nameof(Asked))]
    public void AGrowerReadsThis(string name, string asked) => Hold(name, asked.Split(' ', 2));

    [Theory]
    [MemberData(nameof(Wished))]
    public void WhoWishesMoreReadsThis(string name, string asked) => Hold(name, Words(asked));

    [Theory]
    [MemberData(nameof(Told))]
    public void WhoAsksForADiagnosisReadsThis(string name, string file, string[] told) => Hold($"diagnosis-{name}", ["diagnose", file, .. told]);

    /// <summary>Nothing is kept of questions that nobody asks any more.</summary>
    [Fact]
    public void EveryAnswerHasItsQuestion() => Assert.Empty(Directory.GetFiles(_folder, "*.txt").Select(f => Path.GetFileNameWithoutExtension(f))
        .Except(Asked().Concat(Wished()).Select(r => (string)r[0])).Except(Told().Select(r => $"diagnosis-{r[0]}")));

    /// <summary>What stands between spaces, a number and its unit together.</summary>
    private static string[] Words(string asked) => asked.Replace(" L", "\u00a0L", StringComparison.Ordinal)
        .Replace(" °C", "\u00a0°C", StringComparison.Ordinal).Split(' ').Select(w => w.Replace('\u00a0', ' ')).ToArray();

    private static void Hold(string name, string[] arguments)
    {
        var answer = Cli.Run(arguments);
        var said = $"{answer.Out}{answer.Error}exit {answer.Code}\n";
        var path = Path.Combine(_folder, name + ".txt");
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(path, said);
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), said);
    }
}
