using System.Text;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Tests.Support;

/// <summary>A pair of substances as somebody writes it down: a stock of 50 g of each in a litre, and a tank that both are dosed into.</summary>
internal sealed class PairOnPaper
{
    private const string StockFile = "pair.stock.json", RecipeFile = "pair.recipe.json";

    private static readonly LoadOptions Load = new() { Profiles = ProfileLibrary.AllNames };

    private static readonly EngineOptions Engine = new() { Today = new(2026, 3, 1), Rules = RuleList.All };

    private readonly MemoryFileTree _files;

    public PairOnPaper(string one, string other)
    {
        var lines = $$"""{"add": "{{one}}", "amount": "50 g"}, {"add": "{{other}}", "amount": "50 g"}""";
        _files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add(StockFile, Encoding.UTF8.GetBytes($$"""
                {"format": 1, "name": "Pair", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "8..25 °C", "for": "3 months"},
                "steps": [{"pour": "700 mL", "of": "distilled"}, {{lines}}, {"topUp": "1 L", "of": "distilled"}]}
                """))
            .Add(RecipeFile, Encoding.UTF8.GetBytes($$"""
                {"format": 1, "name": "Tank", "water": "reverse-osmosis", "final": "1 L", "volume": "made up", "doses": [{{lines}}]}
                """));
        Now = Judged.Of(_files, ["."], Load, Engine);
    }

    public Judged Now { get; }

    /// <summary>Whether check calls either of the two an error.</summary>
    public bool IsError => Now.Result.Findings.Any(f => f.Level == Level.Error && f.Rule.Family == "people");

    /// <summary>
    /// Repairs that put more into a danger, warm it or keep it for another time, and leave it one: none may be shown.
    /// </summary>
    public IEnumerable<string> HarmfulRepairs()
    {
        var desk = new RepairDesk(_files, Load, Engine, Now);
        foreach (var repair in Now.Result.Findings.SelectMany(f => desk.For(f)).DistinctBy(r => r.Repair.Title))
        {
            var files = repair.Patches.Where(p => p.Value.Bytes is not null)
                .Aggregate((IFileTree)_files, (tree, p) => new OverlayFileTree(tree, "/shop/" + p.Key, p.Value.Bytes!));
            var after = Judged.Of(files, ["."], Load, Engine);
            foreach (var stock in after.Facts.Stocks)
            {
                var (was, now) = (Now.Facts.FindStock(stock.Stock.File), HazardGate.Of(stock));
                var left = VesselAdvice.Dangers(now).Select(h => h.Kind).ToHashSet();
                var grows = stock.Additions.Any(a => a.Mass.Grams
                    > 1.001 * (was?.Additions.Where(b => b.Substance.Id == a.Substance.Id).Sum(b => b.Mass.Grams) ?? 0));
                var warms = was is not null && stock.Stock.Steps.Count > was.Stock.Steps.Count;
                if (left.Count > 0 && (grows || warms || was?.StorageTemperature != stock.StorageTemperature))
                {
                    yield return $"{repair.Name}: {repair.Repair.Title}";
                }
            }
        }
    }

    /// <summary>What is said of the tank somebody looks into.</summary>
    public string TankText(string seen) =>
        TankReport.Write(TankDiagnoser.Of(Now.Facts.Recipes.Single(), ObservationReader.Read(seen)));
}
