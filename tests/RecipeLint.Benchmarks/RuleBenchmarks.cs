using BenchmarkDotNet.Attributes;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Benchmarks;

/// <summary>
/// What the rules of a family cost over the generated shops, with the states and uncertainties that they are the first to ask for: what is
/// left over when families are added up is what several of them ask for.
/// </summary>
[MemoryDiagnoser]
public class RuleBenchmarks
{
    private readonly Workspace _workspace = GeneratedShops.Read(GeneratedShops.Files());
    private Facts _facts = null!;
    private EngineOptions _engine = null!;

    [ParamsSource(nameof(Families))]
    public string Family { get; set; } = "";

    public static IEnumerable<string> Families => RuleList.All.Select(r => RuleBook.Of(r).Family).Distinct().Order(StringComparer.Ordinal);

    /// <summary>Facts keep what was computed of them, so that each round has new ones.</summary>
    [IterationSetup]
    public void Forget()
    {
        _engine = GeneratedShops.Engine(Family);
        _facts = Analyzer.Analyse(_workspace);
    }

    [Benchmark(Description = "rules of a family")]
    public int Judge() => LintEngine.Judge(_facts, _engine).Findings.Count;
}
