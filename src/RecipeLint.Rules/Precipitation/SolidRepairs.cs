using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Ways to keep a solid from falling out of a stock.</summary>
internal static class SolidRepairs
{
    /// <summary>A stock whose solid takes less strength than this is not kept clear by thinning.</summary>
    private const double WorthThinning = 0.02;

    /// <param name="nearest">The nearest changes at which it stays clear; null where none were searched.</param>
    /// <param name="solid">What falls out; null for one that only can.</param>
    public static IEnumerable<RepairProposal> Of(NearestClear? nearest, Solid? solid, Finding finding, RepairContext context)
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
        foreach (var proposal in suppliers.OrderBy(s => s.Mass)
            .SelectMany(s => OtherPart.Moves(context, stock, s))
            .Concat(suppliers.SelectMany(s => Additions.OtherSalts(context, s))))
        {
            yield return proposal;
        }

        foreach (var proposal in suppliers.Where(s => s.ComponentMoles.GetValueOrDefault(Component.FerricIron)
            + s.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0).SelectMany(s => Additions.OtherIron(context, s)))
        {
            yield return proposal;
        }

        if (solid is not null && IsClearedByAcid(nearest, solid, stock))
        {
            foreach (var proposal in Additions.Acid(context, stock))
            {
                yield return proposal;
            }
        }

        if (nearest?.Factor is not < WorthThinning
            && Strength.Weaker(context, stock, nearest) is { } weaker)
        {
            yield return weaker;
        }

        if (nearest?.Temperature is { Celsius: var celsius } && celsius > stock.StorageTemperature.Low.Celsius)
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

    private static bool IsClearedByAcid(NearestClear? nearest, Solid solid, StockFacts stock) =>
        nearest?.Ph is { } ph && Wording.FollowsPh(solid)
            && stock.Chemistry.Mixing is { IsSolved: true } mixing && ph < mixing.PhBeforeDeposit;
}
