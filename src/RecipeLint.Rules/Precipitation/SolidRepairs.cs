using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Ways to keep a solid from falling out of a stock.</summary>
internal static class SolidRepairs
{
    private const string FactorName = "clear at this part of the strength", PhName = "clear at pH", TemperatureName = "clear at";

    /// <summary>A stock whose solid takes less strength than this is not kept clear by thinning.</summary>
    private const double WorthThinning = 0.02;

    public static IEnumerable<RepairProposal> Of(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        var suppliers = finding.Related.Select(r => r.Place).Prepend(finding.Place)
            .Where(p => p.File == stock.Stock.File)
            .Select(p => context.AdditionAt(stock, p)).OfType<AdditionFacts>().DistinctBy(a => a.Id).ToList();
        if (Waters.Distilled(context, stock) is { } distilled)
        {
            yield return distilled;
        }

        // The lesser of the two moves: the other is what the bottle is for.
        foreach (var proposal in suppliers.OrderBy(s => s.Mass).SelectMany(s => OtherPart.Moves(context, stock, s)).Concat(suppliers.SelectMany(s => Additions.OtherSalts(context, s))))
        {
            yield return proposal;
        }

        foreach (var proposal in suppliers.Where(s => s.ComponentMoles.GetValueOrDefault("Fe+3") + s.ComponentMoles.GetValueOrDefault("Fe+2") > 0).SelectMany(s => Additions.OtherIron(context, s)))
        {
            yield return proposal;
        }

        if (RepairContext.Value(finding, PhName) is { } ph && stock.Chemistry.Mixing.IsSolved && ph < stock.Chemistry.Mixing.PhBeforeDeposit)
        {
            foreach (var proposal in Additions.Acid(context, stock))
            {
                yield return proposal;
            }
        }

        if (RepairContext.Value(finding, FactorName) is not < WorthThinning
            && Strength.Weaker(context, stock, RepairContext.Value(finding, FactorName) ?? 1) is { } weaker)
        {
            yield return weaker;
        }

        if (RepairContext.Value(finding, TemperatureName) is { } celsius && celsius > stock.StorageTemperature.Low.Celsius)
        {
            yield return Keep.Warmer(context, stock);
        }

        foreach (var proposal in suppliers.OrderBy(s => s.Mass).Select(s => OwnBottle.Of(context, stock, s)).OfType<Repair>())
        {
            yield return proposal;
        }

        // Less of an acid or alkali moves the pH and hardly what the plants get; less of a salt is the last way out.
        foreach (var supplier in suppliers.OrderBy(s => s.Substance.Kind is not (SubstanceKind.Acid or SubstanceKind.Base)))
        {
            yield return Additions.Less(context, supplier);
        }
    }
}
