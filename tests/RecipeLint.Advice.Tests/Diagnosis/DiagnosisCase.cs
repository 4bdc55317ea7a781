using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.OneLine;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>A bottle, what was seen in it, and what it was.</summary>
/// <param name="Mix">The stock in one line, in distilled water.</param>
/// <param name="Causes">Right answers; any of them counts.</param>
internal sealed record DiagnosisCase(string Mix, string Seen, string After, string At, params string[] Causes)
{
    /// <summary>Rank of the first right answer, from 1.</summary>
    public int Rank() => 1 + Diagnose().Causes.ToList().FindIndex(c => Causes.Contains(c.Cause.Id));

    public BottleDiagnosis Diagnose()
    {
        var at = Bench.Read(At, Due.Temperatures).Temperatures.Low;
        return Diagnoser.Of(StockOf(Mix), TimeWords.Read(After).With(ObservationReader.Read(Seen)), at);
    }

    public static StockFacts StockOf(string mix)
    {
        var (line, fault) = OneLineMix.Read(mix, SubstanceCatalogue.BuiltIn);
        Assert.True(line is not null, fault);
        var steps = line.Items.Select((item, i) => Bench.Add(item.Substance.Id, item.AmountText, id: $"{item.Substance.Id}-{i}")).ToArray();
        return Bench.Analyse([Bench.Stock("a.stock.json", line.VolumeText!, steps)]).Stocks.Single();
    }

    public override string ToString() => $"{string.Join('|', Causes)}: {Seen}";
}
