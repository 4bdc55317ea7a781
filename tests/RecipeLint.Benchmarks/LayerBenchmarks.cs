using System.Globalization;
using BenchmarkDotNet.Attributes;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports;
using RecipeLint.Reports.Formats;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Benchmarks;

/// <summary>What each layer of a check costs over the same generated shops, those below it done before and not counted.</summary>
[MemoryDiagnoser]
public class LayerBenchmarks
{
    private readonly IFileTree _files = GeneratedShops.Files();
    private Workspace _workspace = null!;
    private Report _report = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _workspace = GeneratedShops.Read(_files);
        var facts = Analyzer.Analyse(_workspace);
        _report = new Report
        {
            Result = LintEngine.Judge(facts, GeneratedShops.Engine()),
            Sources = _workspace.Sources,
            FilesChecked = _workspace.Asked.Count,
            ToolVersion = "0.1.0",
        };
    }

    [Benchmark(Description = "walk: find the files and resolve who names whom")]
    public int Walk() => WorkspacePieces.Find(_files, GeneratedShops.Asked, GeneratedShops.Load, 1, 48)!.Count;

    [Benchmark(Description = "read: schema, documents, references, settings")]
    public int Read() => GeneratedShops.Read(_files).Stocks.Count;

    [Benchmark(Description = "facts: what every vessel holds")]
    public int Facts() => Analyzer.Analyse(_workspace).Stocks.Count;

    [Benchmark(Description = "states: every stock and recipe from the bench to the tank")]
    public int States()
    {
        // Anew each time: facts keep the states that were asked for.
        var facts = Analyzer.Analyse(_workspace);
        return facts.Stocks.Sum(s => StockChemistry.Of(s).States.Count) + facts.Recipes.Sum(r => RecipeChemistry.Of(r).States.Count);
    }

    [Benchmark(Description = "report: text")]
    public int Text() => Written(ReportFormats.Text);

    [Benchmark(Description = "report: SARIF")]
    public int Sarif() => Written("sarif");

    private int Written(string format)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        ReportFormats.Write(format, writer, _report, new FormatOptions(new TextOptions()));
        return writer.GetStringBuilder().Length;
    }
}
