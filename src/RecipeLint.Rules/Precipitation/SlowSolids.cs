using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Remarks on solids that form over weeks: a note about storage, never more.</summary>
internal static class SlowSolids
{
    /// <summary>The largest slow deposit of a rule in a stock that is kept; nothing when the stock is used up before.</summary>
    /// <param name="rule">Owner of the solids.</param>
    /// <param name="states">Solved states of the stock.</param>
    /// <param name="keptDays">Stocks kept no longer than this give no remark.</param>
    public static IEnumerable<Finding> Remarks(
        string rule, StockFacts stock, IReadOnlyList<SolutionState> states, RuleContext context, double keptDays)
    {
        if (Worst(rule, stock, states, context, keptDays) is not { } worst)
        {
            yield break;
        }

        var owned = SolidOwners.Of(worst.Solid)!;
        var suppliers = Supplier.In(stock, worst.Solid);
        var kept = stock.Stock.Keep?.For is { } time ? $"kept for {Say.Days(time.Value.Days)}" : "kept for long";
        var message = $"Up to {Say.Grams(worst.Grams)}/L of {owned.Called} can grow in '{stock.Stock.Name}' over weeks: {Wording.Brings(suppliers)}, "
            + $"together {Wording.Times(Rounding.SixDigits(worst.Index))} at {Wording.Celsius(worst.State.Temperature)}. "
            + $"It forms slowly, so a fresh stock looks clear; one {kept} may not. "
            + (suppliers.Count == 2 ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts, or mix less at a time." : "Mix less at a time.");
        yield return context.Find(suppliers.Count > 0 ? suppliers[0].Place : stock.Stock.Place, message, Level.Note, Certainty.Estimate) with
        {
            Related = [.. suppliers.Skip(1).Select(s => new RelatedPlace(s.Place, $"brings the {s.Brings}"))],
            Measured = new Measured($"{owned.Called} that can form", worst.Grams, context.Number("visible"), "g/L"),
            Values =
            [
                new NamedValue("can fall out", worst.Grams, "g/L"),
                new NamedValue("saturation index", Rounding.SixDigits(worst.Index), ""),
                new NamedValue("temperature", worst.State.Temperature.Celsius, "°C"),
            ],
        };
    }

    /// <summary>The largest slow deposit of a rule worth a remark; null when there is none or the stock is used up before.</summary>
    internal static (SolutionState State, Solid Solid, double Index, double Grams)? Worst(
        string rule, StockFacts stock, IReadOnlyList<SolutionState> states, RuleContext context, double keptDays)
    {
        if (stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= keptDays)
        {
            return null;
        }

        var worst = states
            .Where(s => s.Moment is StateMoment.Coldest or StateMoment.Warmest && s.Validity.Trust != Trust.OutOfRange)
            .SelectMany(s => s.NearSaturation
                .Where(n => n.Solid.Role == SolidRole.FormsSlowly && SolidOwners.Of(n.Solid) is { } owned && owned.Rule == rule
                    && n.Index > Math.Max(context.Number("nearLimit"), owned.Spread))
                .Select(n => (State: s, n.Solid, n.Index, Grams: Amount(stock, s, n.Solid))))
            .Where(c => c.Grams >= context.Number("visible"))
            .OrderByDescending(c => c.Grams)
            .FirstOrDefault();
        return worst.Solid is null ? null : worst;
    }

    /// <summary>g/L at equilibrium beside everything that forms readily.</summary>
    private static double Amount(StockFacts stock, SolutionState state, Solid solid)
    {
        var mix = stock.Chemistry.Mix;
        var solver = EquilibriumSolver.Product;
        var allowed = solver.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily).Append(solid);
        var settled = solver.Precipitate(mix.Input(state.Temperature.Celsius), allowed);
        return settled.Converged
            ? Rounding.SixDigits(settled.Formed(solid.Name) * mix.KilogramsWaterPerLitre * solid.MolarMassGramsPerMole)
            : 0;
    }
}
