using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Phosphate beside unchelated zinc and copper in a trace stock.</summary>
public sealed class PhosphateInTraceStock : SolidRule
{
    /// <summary>How closely the pH is searched at which the phosphate begins to settle.</summary>
    private const double PhWidth = 0.02;

    private static readonly string[] TraceMetals = ["Zn+2", "Cu+2"];

    public override string Name => "phosphate-in-trace-stock";

    protected override bool BlamesTheAnion => true;

    protected override IReadOnlyList<string> Metals => TraceMetals;

    private protected override string Why(OwnedSolid owned) =>
        "The metal is then missing from every dose, and stirring does not bring it back.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers.Count == 0 ? "Keep phosphate out of the trace stock"
        : suppliers[0].IsAcid ? $"Acidify with sulfuric or citric acid instead of {suppliers[0].Name}"
        : $"Move {suppliers[0].Name} to a part that holds neither calcium nor unchelated trace metals";

    /// <summary>In a trace stock that is clear by its low pH alone: what the phosphate does when the pH rises.</summary>
    private protected override IEnumerable<Finding> Otherwise(StockFacts stock, IReadOnlyList<SolutionState> states, RuleContext context)
    {
        if (AtWorstPh(stock, context) is not { } then)
        {
            return [];
        }

        var mixing = stock.Chemistry.Mixing;
        return [KeptClearByPh(stock, mixing, then.Solid, then.Grams, StartsAt(stock, mixing, context.Number("worstCasePh"), context.Number("visible")), context)];
    }

    /// <summary>What settles in g/L when the pH rises to the worst case; null where it is no trace stock, not below that pH, or nothing does.</summary>
    internal (Solid Solid, double Grams)? AtWorstPh(StockFacts stock, RuleContext context)
    {
        var pH = context.Number("worstCasePh");
        return stock.Stock.Dose is { Value.LitresPerLitre: > 0 } dose && dose.Value.Dilution >= context.Number("traceDilution")
            && stock.Chemistry.Mixing is { IsSolved: true, Validity.Trust: not Trust.OutOfRange } mixing && mixing.PhBeforeDeposit < pH
            && SettledAt(stock, mixing, pH) is { } settled && settled.Grams >= context.Number("visible")
                ? settled
                : null;
    }

    /// <summary>Zinc and copper phosphate that settle at a pH, g/L; null when none does.</summary>
    private (Solid Solid, double Grams)? SettledAt(StockFacts stock, SolutionState state, double pH)
    {
        if (Settled(stock.Chemistry.Mix, state, pH) is not { } settled)
        {
            return null;
        }

        var own = settled.Deposits.Where(d => IsOwn(d.Solid)).OrderByDescending(d => d.GramsPerKgInitialWater).ToList();
        return own.Count == 0 ? null : (own[0].Solid, Rounding.SixDigits(own.Sum(d => d.GramsPerKgInitialWater) * state.KilogramsWaterPerLitre));
    }

    /// <summary>The lowest pH at which a visible amount settles.</summary>
    /// <param name="settles">A pH at which it does.</param>
    /// <param name="visible">g/L.</param>
    private double StartsAt(StockFacts stock, SolutionState state, double settles, double visible)
    {
        var clear = state.PhBeforeDeposit;
        while (settles - clear > PhWidth)
        {
            var middle = (settles + clear) / 2;
            if (SettledAt(stock, state, middle) is { } there && there.Grams >= visible)
            {
                settles = middle;
            }
            else
            {
                clear = middle;
            }
        }

        return settles;
    }

    /// <summary>The stock brought to a pH, what then falls out; null when there is no answer.</summary>
    private static PrecipitationResult? Settled(SolutionMix mix, SolutionState state, double pH)
    {
        var solver = EquilibriumSolver.Product;
        var input = mix.Input(state.Temperature.Celsius) with { FixedPh = pH };
        var allowed = solver.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily);
        return solver.Precipitate(input, allowed) is { Converged: true } settled ? settled : null;
    }

    /// <summary>A mineral acid neither evaporates nor feeds microbes: only then is it a note.</summary>
    private Finding KeptClearByPh(StockFacts stock, SolutionState state, Solid solid, double grams, double startsAt, RuleContext context)
    {
        var suppliers = Suppliers(stock, solid);
        var owned = SolidOwners.Of(solid)!;
        var metal = suppliers.Count > 1 ? suppliers[1].Brings : "the metal";
        var message = $"Phosphate stands beside {metal} in the trace stock '{stock.Stock.Name}', which is clear only as long as its pH stays low (now {Say.Number(Math.Round(state.PhBeforeDeposit, 1))}): "
            + $"from about pH {Say.Number(Math.Round(startsAt, 1))} {owned.Called} settles, {Say.Grams(grams)}/L of it at pH {context.Word("worstCasePh")}. "
            + $"{HowItRises(stock)}, and the {metal} is then missing from every dose. "
            + $"{Remedy(owned, suppliers)}.";
        return Raise(stock, context, suppliers, solid, message, HasMineralAcid(stock) ? Level.Note : Level.Warning, Certainty.Estimate) with
        {
            Measured = new Measured($"{owned.Called} at pH {context.Word("worstCasePh")}", grams, context.Number("visible"), "g/L"),
            Values =
            [
                new NamedValue($"falls out at pH {context.Word("worstCasePh")}", grams, "g/L"),
                new NamedValue("falls out from pH", Rounding.SixDigits(startsAt), ""),
                new NamedValue("pH", Rounding.SixDigits(state.PhBeforeDeposit), ""),
            ],
        };
    }

    private static string HowItRises(StockFacts stock)
    {
        if (HasMineralAcid(stock))
        {
            return "Less acid, hard water or an alkali added later brings it there";
        }

        return OrganicAcid(stock) is { } organic
            ? $"{char.ToUpperInvariant(organic.Name[0])}{organic.Name[1..]} that is weak, forgotten{(organic.Components.ContainsKey("Acetate-") ? ", evaporated" : "")} or eaten by moulds lets tap water or a little alkali bring it there"
            : "No acid holds it there, so tap water or a little alkali is enough to raise it";
    }

    private static bool HasMineralAcid(StockFacts stock) =>
        stock.Additions.Any(a => IsMineral(a.Substance, a.ComponentMoles)) || stock.Adjustments.Any(a => a.Reagent is { } acid && IsMineral(acid, a.ComponentMoles));

    private static bool IsMineral(Substance substance, IReadOnlyDictionary<string, double> components) =>
        substance is { Kind: SubstanceKind.Acid, FeedsMicrobes: false } && components.GetValueOrDefault("H+") > 0;

    private static (string Name, IReadOnlyDictionary<string, double> Components)? OrganicAcid(StockFacts stock) =>
        stock.Additions.Where(a => a.Substance is { Kind: SubstanceKind.Acid, FeedsMicrobes: true })
            .OrderByDescending(a => a.ComponentMoles.GetValueOrDefault("H+"))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .Select(a => ((string, IReadOnlyDictionary<string, double>)?)(a.Substance.Name, a.ComponentMoles))
            .FirstOrDefault();
}
