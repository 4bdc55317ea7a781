using RecipeLint.Analysis;
using RecipeLint.Analysis.Trials;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Show;

/// <summary>What became of a stock that was mixed many times over, in words.</summary>
internal static class TrialWords
{
    private const int Named = 3;

    private const string Drawn = "Drawn are the errors of weights, volumes and assays. Wrong constants and slips of the hand are not.";

    /// <summary>For each bottle of a recipe what became of it, by its name; what holds for all of them once.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<(MixingTrials Trials, StockFacts Stock)> bottles)
    {
        var said = bottles.Select(b => (b.Stock.Stock.Name, Lines: Of(b.Trials, b.Stock))).ToList();
        return
        [
            .. said.SelectMany(b => b.Lines.Where(l => l != Drawn).Select(l => $"'{b.Name}': {l}")),
            .. said.Any(b => b.Lines.Contains(Drawn)) ? [Drawn] : Array.Empty<string>(),
        ];
    }

    public static IReadOnlyList<string> Of(MixingTrials trials, StockFacts stock)
    {
        var clear = trials.Clear;
        if (clear.Of == 0)
        {
            return ["None of the mixings could be computed."];
        }

        var (low, high) = clear.Interval;
        var says = new List<string>
        {
            $"Clear in {clear.Hits} of {clear.Of} mixings with your scales and measures, {KeptWords.Span(stock)} "
                + $"(so many mixings tell the share to {Say.Percent(low)} to {Say.Percent(high)}; seed {Say.Number(trials.Seed)}).",
        };
        says.AddRange(trials.Causes.Take(Named).Select(c =>
            $"In {c.Count} of them {SolidWords.Called(c.Solid)} does not stay dissolved for sure."));
        if (trials.NotComputed > 0)
        {
            says.Add($"{trials.NotComputed} more could not be computed.");
        }

        says.Add(Drawn);
        return says;
    }
}
