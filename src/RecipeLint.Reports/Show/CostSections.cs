using RecipeLint.Analysis;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>What a stock or a tank costs, where the shop declares prices.</summary>
internal static class CostSections
{
    private const string Key = "cost";

    private static readonly SheetSection Nothing = new(Key, "Cost", []);

    public static SheetSection Of(StockFacts stock) => CostFacts.Of(stock) is not { } cost
        ? Nothing
        : new SheetSection(
            Key, "Cost",
            [
                $"{Money(cost.Batch, cost)} for {Say.Litres(cost.Volume.Litres)}, {Money(cost.PerLitre, cost)} a litre"
                    + $"{Diluted(stock, cost)}.",
            ],
            Shares(cost), [.. Left(cost)]);

    public static SheetSection Of(RecipeFacts recipe) => CostFacts.Of(recipe) is not { } cost
        ? Nothing
        : new SheetSection(
            Key, "Cost",
            [
                $"{Money(cost.Batch, cost)} for {Say.Litres(cost.Volume.Litres)}, {Money(cost.PerLitre, cost)} a litre, "
                    + $"{Money(cost.PerLitre * 1000, cost)} for 1000 L.",
            ],
            Shares(cost), [.. Left(cost)]);

    private static Table Shares(CostFacts cost) => new(
        [new("what"), new("amount", true), new(cost.Currency.Length > 0 ? $"cost, {cost.Currency}" : "cost", true), new("share", true)],
        [
            .. cost.Shares.Where(s => s.Cost is not null).Select(s => (IReadOnlyList<string>)
            [
                s.Substance.Name, Say.Grams(s.Mass.Grams), Say.Number(s.Cost!.Value),
                cost.Batch > 0 ? Say.Percent(s.Cost.Value / cost.Batch) : "",
            ]),
        ]);

    private static IEnumerable<string> Left(CostFacts cost)
    {
        if (cost.Unpriced.Any())
        {
            yield return $"Without a price, and not counted: {Say.List(cost.Unpriced.Select(s => s.Name))}.";
        }

        yield return "Water, work and bottles are not counted.";
    }

    private static string Diluted(StockFacts stock, CostFacts cost) => stock.Stock.Dose?.Value is { LitresPerLitre: > 0 } dose
        ? $", {Money(cost.PerLitre * dose.LitresPerLitre * 1000, cost)} for 1000 L of solution"
        : "";

    private static string Money(double value, CostFacts cost) =>
        $"{Say.Number(value)}{(cost.Currency.Length > 0 ? " " + cost.Currency : "")}";
}
