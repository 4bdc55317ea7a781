using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>What a deposit takes out of the liquid.</summary>
/// <param name="Key">Element ("Ca", "S").</param>
/// <param name="PerLitre">Per litre of stock.</param>
/// <param name="Share">Part of all of it in the stock, 0 to 1.</param>
public sealed record Loss(string Key, MassConcentration PerLitre, double Share);

/// <summary>What the engine says about saving a bottle and changing its recipe.</summary>
/// <param name="Losses">What is gone from the liquid when the deposit is filtered off; empty when nothing falls out.</param>
/// <param name="Suppliers">What brings the ions of the solid.</param>
/// <param name="Nearest">The nearest change at which it stays clear; null when nothing falls out.</param>
/// <param name="Highest">How strong the stock can be made; null when the solid does not decide it.</param>
/// <param name="Trial">What the usual rescue of the cause does to this stock; null where the engine has no say.</param>
/// <param name="ChangeTrial">What the acid of the advised change does to this stock; null where none is advised.</param>
public sealed record BottleAdvice(
    IReadOnlyList<Loss> Losses, IReadOnlyList<SolidSupplier> Suppliers, NearestClear? Nearest, HighestConcentration? Highest,
        StateTrial? Trial = null, StateTrial? ChangeTrial = null)
{
    /// <summary>What water does to the deposit; null where the cause has no use for it, or nothing of it is computed to fall out.</summary>
    public WaterAdvice? Water { get; init; }

    /// <summary>Less than this part of an element gone is not worth a word.</summary>
    private const double LeastShare = 0.002;

    public static BottleAdvice None { get; } = new([], [], null, null);

    /// <summary>For one ranked cause; searches the equilibrium, so ask only for what is shown.</summary>
    public static BottleAdvice Of(BottleChemistry chemistry, RankedCause cause)
    {
        if (cause.Solid is not { Solid: { } solid, State: { } state } verdict || verdict.Standing > Standing.Close)
        {
            return None with
            {
                // What is filtered or skimmed off takes along what falls out beside it.
                Losses = cause.Cause.Rescue is Rescue.Filter or Rescue.Skim
                    ? LossesOf(chemistry.Stock, [.. chemistry.DepositsSeen.SelectMany(d => d.Deposits)]) : [],
                Trial = RescueTrial.Of(chemistry, cause, null),
                ChangeTrial = RescueTrial.OfChange(chemistry, cause, null),
            };
        }

        var stock = chemistry.Stock;
        var suppliers = SuppliersOfSolid.In(stock, solid);
        var dose = stock.Stock.Dose?.Value;
        if (verdict.Deposits.Count == 0)
        {
            return new BottleAdvice(
                [], suppliers, null, solid.Role == SolidRole.SolubleSalt
                    ? HighestConcentration.Of(state.Mix, state.Temperature, dose, chemistry.Limits, solid)
                    : null,
                RescueTrial.Of(chemistry, cause, null), RescueTrial.OfChange(chemistry, cause, null));
        }

        var nearest = NearestClear.Of(state.Mix, state.Temperature, solid, dose, chemistry.Limits);
        var trial = RescueTrial.Of(chemistry, cause, nearest);
        nearest = nearest with { Ph = trial is { Helps: true, Ph: { } tried } ? tried : Confirmed(chemistry, state, solid, nearest.Ph) };
        return new BottleAdvice(LossesOf(stock, verdict.Deposits), suppliers, nearest, null, trial,
            RescueTrial.OfChange(chemistry, cause, nearest))
        {
            Water = RescueTrial.WithWater(chemistry, cause) is { } water ? WaterAdvice.Of(stock, water) : null,
        };
    }

    /// <summary>The nearest pH as it is printed, where acid or alkali does no harm on the way there; else null.</summary>
    private static double? Confirmed(BottleChemistry chemistry, SolutionState state, Solid solid, double? nearest)
    {
        if (nearest is not { } ph)
        {
            return null;
        }

        var sour = ph < state.PhBeforeDeposit;
        var shown = (sour ? Math.Floor(ph * 10) : Math.Ceiling(ph * 10)) / 10;
        var trial = sour
            ? AcidTrial.Of(chemistry.Stock, state, shown, [solid], chemistry.Limits)
            : AlkaliTrial.Of(state, shown, [solid], chemistry.Limits);
        return trial is { Helps: true } ? shown : null;
    }

    private static List<Loss> LossesOf(StockFacts stock, IReadOnlyList<SolidDeposit> deposits)
    {
        var losses = new List<Loss>();
        var gone = deposits
            .SelectMany(d => d.Solid.Composition.Select(c => (c.Key, Moles: c.Value * d.Amount.MolesPerLitre)))
            .Where(c => c.Key is not (Component.Water or Component.Hydrogen) && c.Moles > 0)
            .GroupBy(c => c.Key, c => c.Moles, StringComparer.Ordinal);
        foreach (var component in gone)
        {
            var all = Named(stock, component.Key);
            var moles = component.Sum();
            foreach (var (key, grams) in NutrientKeys.Grams(IonFacts.ElementsOf(component.Key, moles)))
            {
                var share = all > 0 ? Math.Min(1, moles / all) : 0;
                if (share >= LeastShare && !key.EndsWith("-N", StringComparison.Ordinal))
                {
                    losses.Add(new Loss(key, new MassConcentration(grams), share));
                }
            }
        }

        return [.. losses.OrderByDescending(l => l.Share).ThenBy(l => l.Key, StringComparer.Ordinal)];
    }

    /// <summary>mol/L of a component; iron counts in both its states.</summary>
    private static double Named(StockFacts stock, string component) => component switch
    {
        Component.FerricIron or Component.FerrousIron =>
            stock.Concentration(Component.FerrousIron).MolesPerLitre + stock.Concentration(Component.FerricIron).MolesPerLitre,
        _ => stock.Concentration(component).MolesPerLitre,
    };
}
