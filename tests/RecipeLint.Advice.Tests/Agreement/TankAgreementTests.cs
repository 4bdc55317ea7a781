using System.Globalization;
using System.Text;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Tests.Published;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Tests.Agreement;

/// <summary>
/// One tank, one answer: a finding on what falls out ⇔ a deposit that counts ⇔ 'diagnose' of the recipe names it, and its figure is the same
/// to the digit.
/// </summary>
public sealed class TankAgreementTests
{
    private static int Generated { get; } = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 1000 : 80;

    [Fact]
    public void OfEveryExampleAndGoodRecipe()
    {
        var shops = Bottle.Folders.Select(f => (Name: f, Facts: Bottle.FactsOf(f))).Where(s => s.Facts.Recipes.Count > 0).ToList();
        Assert.True(shops.Sum(s => s.Facts.Recipes.Count) > 100, $"{shops.Sum(s => s.Facts.Recipes.Count)} recipes");
        Holds([.. shops.SelectMany(s => s.Facts.Recipes.Select(r => ($"{s.Name}: {r.Recipe.File}", s.Facts, r)))]);
    }

    [Fact]
    public void OfPublishedRecipes() =>
        Holds([.. PublishedRecipe.Ids.Select(PublishedRecipe.Read).Select(p => (p.Id, (Facts?)null, p.Facts))]);

    /// <summary>Hard water, phosphate, trace metals without or with a chelating agent: some clear, some not.</summary>
    [Fact]
    public void OfGeneratedTanks()
    {
        var tanks = Enumerable.Range(1, Generated).Select(RandomTank).ToList();
        Assert.InRange(tanks.Count(t => TankJudgement.Of(t.Recipe, new OwnerLimits()).Count == 0), Generated / 8, Generated * 7 / 8);
        Holds([.. tanks.Select(t => (t.Name, (Facts?)t.Facts, t.Recipe))]);
    }

    private static void Holds(List<(string Name, Facts? Facts, RecipeFacts Recipe)> tanks)
    {
        var differences = tanks.AsParallel().AsOrdered().SelectMany(t => Differences(t.Name, t.Facts, t.Recipe)).ToList();
        Assert.True(differences.Count == 0, $"{differences.Count} differences over {tanks.Count} tanks:\n{string.Join("\n", differences.Take(40))}");
    }

    private static IEnumerable<string> Differences(string name, Facts? facts, RecipeFacts recipe)
    {
        if (TankJudgement.MomentsOf(recipe).Count == 0)
        {
            yield break;
        }

        var limits = DepositOptions.OfTank(recipe.Settings);
        var judged = TankJudgement.LookedAt(recipe, limits);
        if (facts is not null)
        {
            var found = LintEngine.Judge(facts, new EngineOptions { Today = new(2026, 11, 25), Rules = RuleList.All }).Findings
                .Count(f => f.Rule.Name == RuleNames.TankPrecipitate && f.Place.File == recipe.Recipe.File);
            var counted = judged.Count(d => d.Counts);
            if (found != counted)
            {
                yield return $"{name}: {found} findings, {counted} deposits that count";
            }
        }

        var told = TankChemistry.Of(recipe);
        TankMoment[] moments = recipe.Chemistry.TankAdjusted is null ? [TankMoment.Poured, TankMoment.Air] : [TankMoment.Adjusted];
        var named = moments.SelectMany(told.DepositsAt).GroupBy(d => d.Owner.Name).ToDictionary(g => g.Key, g => g.Max(d => d.GramsPerLitre));

        // Iron(II) is looked at once the air has oxidised it; then there may be more of it, never less.
        var ages = recipe.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0;
        foreach (var deposit in judged.Select(d => d.Deposit).Where(d => d.Counts))
        {
            var here = named.GetValueOrDefault(deposit.Owner.Name);
            if (here == 0 || (!ages && here != deposit.GramsPerLitre))
            {
                yield return $"{name}: {deposit.Owner.Name} {deposit.GramsPerLitre} g/L by the rule, {here} by the diagnosis";
            }
        }

        foreach (var extra in named.Keys.Except(judged.Where(d => d.Deposit.Counts).Select(d => d.Deposit.Owner.Name)).Where(_ => !ages))
        {
            yield return $"{name}: {extra} {named[extra]} g/L by the diagnosis alone";
        }
    }

    private static (string Name, Facts Facts, RecipeFacts Recipe) RandomTank(int seed)
    {
        var random = new Random(seed);
        string Number(double least, double most) => (least * Math.Pow(most / least, random.NextDouble())).ToString("0.####", CultureInfo.InvariantCulture);
        var doses = new List<string>();
        foreach (var (substance, least, most) in Doses)
        {
            if (random.Next(2) == 0)
            {
                doses.Add($$"""{"add": "{{substance}}", "amount": "{{Number(least, most)}} g"}""");
            }
        }

        var water = $$"""
            {"format": 1, "name": "well", "pH": {{Number(6.5, 8.5)}}, "ions": {"Ca": "{{Number(5, 160)}} mg/L", "Mg": "{{Number(1, 40)}} mg/L", "HCO3": "{{Number(20, 400)}} mg/L"} }
            """;
        var recipe = $$"""
            {"format": 1, "name": "tank {{seed}}", "water": "w.water.json", "final": "100 L", "volume": "made up", "doses": [{{string.Join(", ", doses.DefaultIfEmpty("""{"add": "potassium-nitrate", "amount": "10 g"}"""))}}]}
            """;
        var files = new MemoryFileTree("/shop").AddFolder("/shop")
            .Add("w.water.json", Encoding.UTF8.GetBytes(water)).Add("r.recipe.json", Encoding.UTF8.GetBytes(recipe));
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], Bottle.Load));
        return ($"seed-{seed}", facts, facts.Recipes.Single());
    }

    private static (string Substance, double Least, double Most)[] Doses { get; } =
    [
        ("calcium-nitrate-4h2o", 10, 200), ("magnesium-sulfate-7h2o", 5, 80), ("monopotassium-phosphate", 2, 60), ("potassium-nitrate", 5, 80),
        ("manganese-sulfate-h2o", 0.05, 0.5), ("zinc-sulfate-7h2o", 0.02, 0.3), ("copper-sulfate-5h2o", 0.01, 0.1), ("ferrous-sulfate-7h2o", 0.3, 3),
        ("fe-edta-na-3h2o", 0.3, 5), ("fe-dtpa-hna", 0.3, 5), ("nitric-38", 1, 30), ("phosphoric-75", 1, 30), ("potassium-bicarbonate", 1, 40),
    ];
}
