using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Phosphate beside unchelated zinc and copper in a trace stock.</summary>
public sealed class PhosphateInTraceStock : SolidRule
{
    private static readonly string[] TraceMetals = ["Zn+2", "Cu+2"];

    public override string Name => "phosphate-in-trace-stock";

    protected override bool BlamesTheAnion => true;

    protected override IReadOnlyList<string> Metals => TraceMetals;

    private protected override string Why(OwnedSolid owned) =>
        "The metal is then missing from every dose and the sludge does not dissolve again.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count > 0 ? $"Move {suppliers[0].Name} to the part that holds no trace metals" : "Keep phosphate out of the trace stock";

    /// <summary>In a trace stock that is clear by its acid alone: what the phosphate does when the acid goes.</summary>
    private protected override IEnumerable<Finding> Otherwise(StockFacts stock, IReadOnlyList<SolutionState> states, RuleContext context)
    {
        var mixing = stock.Chemistry.Mixing;
        var pH = context.Number("worstCasePh");
        if (stock.Stock.Dose is not { Value.LitresPerLitre: > 0 } dose || dose.Value.Dilution < context.Number("traceDilution")
            || mixing is not { IsSolved: true, Validity.Trust: not Trust.OutOfRange } || mixing.PhBeforeDeposit >= pH
            || Settled(stock.Chemistry.Mix, mixing, pH) is not { } settled)
        {
            return [];
        }

        var own = settled.Deposits.Where(d => IsOwn(d.Solid)).OrderByDescending(d => d.GramsPerKgInitialWater).ToList();
        var grams = Rounding.SixDigits(own.Sum(d => d.GramsPerKgInitialWater) * mixing.KilogramsWaterPerLitre);
        return own.Count > 0 && grams >= context.Number("visible") ? [KeptClearByAcid(stock, own[0].Solid, grams, mixing.PhBeforeDeposit, context)] : [];
    }

    /// <summary>The stock brought to a pH, what then falls out; null when there is no answer.</summary>
    private static PrecipitationResult? Settled(SolutionMix mix, SolutionState state, double pH)
    {
        var solver = EquilibriumSolver.Product;
        var input = mix.Input(state.Temperature.Celsius) with { FixedPh = pH };
        var allowed = solver.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily);
        return solver.Precipitate(input, allowed) is { Converged: true } settled ? settled : null;
    }

    private Finding KeptClearByAcid(StockFacts stock, Solid solid, double grams, double pH, RuleContext context)
    {
        var suppliers = Suppliers(stock, solid);
        var owned = SolidOwners.Of(solid)!;
        var metal = suppliers.Count > 1 ? $" beside {suppliers[1].Brings}" : "";
        var message = $"Phosphate stands{metal} in the trace stock '{stock.Stock.Name}' and only its acid (pH {Say.Number(Math.Round(pH, 1))}) keeps it clear: "
            + $"at pH {context.Word("worstCasePh")} up to {Say.Grams(grams)}/L of {owned.Called} settles. "
            + "An acid that is forgotten, evaporates or feeds moulds takes the metals out of every dose. "
            + $"{Remedy(owned, suppliers)}.";
        return Raise(stock, context, suppliers, solid, message, Level.Note, Certainty.Estimate) with
        {
            Measured = new Measured($"{owned.Called} at pH {context.Word("worstCasePh")}", grams, context.Number("visible"), "g/L"),
            Values =
            [
                new NamedValue("falls out without the acid", grams, "g/L"),
                new NamedValue("pH", Rounding.SixDigits(pH), ""),
            ],
        };
    }
}
