using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Phosphate beside unchelated zinc and copper in a trace stock.</summary>
internal sealed class PhosphateInTraceStock : SolidRule
{
    /// <summary>How closely the pH is searched at which the phosphate begins to settle.</summary>
    private const double PhWidth = 0.02;

    public const string RuleName = "phosphate-in-trace-stock";

    public override string Name => RuleName;

    protected override bool BlamesTheAnion => true;

    private protected override string Why(Solid solid) =>
        "The metal is then missing from every dose, and stirring does not bring it back.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        suppliers.Count == 0 ? new("keep phosphate out of the trace stock")
            : suppliers[0].IsAcid && AcidTrial.StaysClearWithAnother(
                stock, [.. stock.Additions.Where(a => a.Place == suppliers[0].Place)], solid, DepositLimits.Default)
                ? new($"acidify with sulfuric or citric acid instead of {suppliers[0].Name}", Puts.Acid) { Replaces = true }
            : new($"move {suppliers[0].Name} to a part that holds neither calcium nor unchelated trace metals"),
    ];

    /// <summary>In a trace stock that is clear by its low pH alone: what the phosphate does when the pH rises.</summary>
    private protected override SolidVerdict? Otherwise(StockFacts stock, OwnerLimits limits, RuleContext context)
    {
        var worst = Options(context).WorstCasePh;
        if (stock.Stock.Dose is not { Value: { LitresPerLitre: > 0 } dose } || dose.Dilution < Options(context).TraceDilution
            || stock.Chemistry.Mixing is not { TellsPh: true, IsBeyondTheModel: false } mixing || mixing.PhBeforeDeposit >= worst
            || SettledAt(mixing, worst) is not { } settled || settled.Grams < limits.Visible)
        {
            return null;
        }

        return new KeptByPhVerdict(stock, settled.Solid, settled.Grams)
        {
            Checks =
            [
                new Check("the pH can still rise", mixing.PhBeforeDeposit, Relation.Under, worst),
                new Check("a trace stock", dose.Dilution, Relation.AtLeast, Options(context).TraceDilution),
                new Check("enough to see", settled.Grams, Relation.AtLeast, limits.Visible, "g/L"),
            ],
        };
    }

    protected override Finding Describe(SolidVerdict verdict, RuleContext context) =>
        verdict is KeptByPhVerdict kept ? KeptClearByPh(kept, context) : base.Describe(verdict, context);

    protected override Working? Work(SolidVerdict verdict, RuleContext context)
    {
        if (verdict is not KeptByPhVerdict kept)
        {
            return base.Work(verdict, context);
        }

        var state = kept.Stock.Chemistry.Mixing;
        var work = new WorkingBuilder($"{kept.Solid.Called} in '{kept.Stock.Stock.Name}', kept dissolved by its pH alone");
        Write(work, state, kept.Solid);
        work.Remark("Now it stays dissolved. The same amounts at the pH of the worst case:");
        work.Check(
            kept.Checks[0],
            work.Given("pH now", state.PhBeforeDeposit, "", Saturation.Engine),
            work.Option("pH of the worst case", Options(context).WorstCasePh));
        work.Check(
            kept.Checks[1],
            work.Given("dilution it is made for, 1 to", kept.Stock.Stock.Dose!.Value.Dilution, "", "file"),
            work.Option("dilution of a trace stock", Options(context).TraceDilution));
        var settles = work.Given("settles at that pH", kept.Grams, "g/L", Saturation.Engine);
        return work.Check(kept.Checks[2], settles, work.Option("deposit from which a finding is given", Options(context).Visible))
            .Done(settles);
    }

    private static PhosphateInTraceStockOptions Options(RuleContext context) => context.Options<PhosphateInTraceStockOptions>();

    /// <summary>Zinc and copper phosphate that settle at a pH, g/L; null when none does.</summary>
    private (Solid Solid, double Grams)? SettledAt(SolutionState state, double pH)
    {
        var raised = StateSolver.Solve(state.Mix, new StateRequest(state.Moment, state.Temperature, false, []) { SetPh = pH });
        var own = raised.Deposits.Where(d => IsOwn(d.Solid)).ToList();
        return own.Count == 0 ? null : (own[0].Solid, Rounding.SixDigits(own.Sum(d => d.Mass.GramsPerLitre)));
    }

    /// <summary>The lowest pH at which a visible amount settles.</summary>
    /// <param name="settles">A pH at which it does.</param>
    /// <param name="visible">g/L.</param>
    private double StartsAt(SolutionState state, double settles, double visible)
    {
        var clear = state.PhBeforeDeposit;
        while (settles - clear > PhWidth)
        {
            var middle = (settles + clear) / 2;
            if (SettledAt(state, middle) is { } there && there.Grams >= visible)
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

    /// <summary>A mineral acid neither evaporates nor feeds microbes: only then is it a note.</summary>
    private Finding KeptClearByPh(KeptByPhVerdict verdict, RuleContext context)
    {
        var (stock, solid, grams) = (verdict.Stock, verdict.Solid, verdict.Grams);
        var state = stock.Chemistry.Mixing;
        var startsAt = StartsAt(state, Options(context).WorstCasePh, Options(context).Visible);
        var suppliers = Suppliers(stock, solid);
        var metal = suppliers.Count > 1 ? suppliers[1].Brings : "the metal";
        var message =
            $"Phosphate stands beside {metal} in the trace stock '{stock.Stock.Name}', which is clear only as long as its pH stays low "
                + $"(now {Say.Number(Math.Round(state.PhBeforeDeposit, 1))}): "
            + $"from about pH {Say.Number(Math.Round(startsAt, 1))} {solid.Called} settles, {Say.Grams(grams)}/L of it at pH "
                + $"{Say.Number(Options(context).WorstCasePh)}. "
            + $"{HowItRises(stock)}, and the {metal} is then missing from every dose. "
            + context.AdviceFor(stock).Sentence(Ways(stock, solid, suppliers));
        return Raise(
            stock, context, suppliers, solid, new(message), HasMineralAcid(stock) ? Odds.Possible : Odds.NearTheLimit,
            Certainty.Estimate) with
        {
            Measured =
                new Measured($"{solid.Called} at pH {Say.Number(Options(context).WorstCasePh)}", grams, Options(context).Visible, "g/L"),
            Values =
            [
                new NamedValue($"falls out at pH {Say.Number(Options(context).WorstCasePh)}", grams, "g/L"),
                new NamedValue("falls out from pH", Rounding.SixDigits(startsAt), ""),
                .. PhGuess.Values(state, before: true),
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
            ? $"{char.ToUpperInvariant(organic.Name[0])}{organic.Name[1..]} that is weak, "
                + $"forgotten{(organic.Components.ContainsKey(Component.Acetate) ? ", evaporated" : "")} or eaten by moulds lets tap "
                    + "water or a little alkali bring it there"
            : "No acid holds it there, so tap water or a little alkali is enough to raise it";
    }

    private static bool HasMineralAcid(StockFacts stock) =>
        stock.Additions.Any(a => IsMineral(a.Substance, a.ComponentMoles))
            || stock.Adjustments.Any(a => a.Reagent is { } acid && IsMineral(acid, a.ComponentMoles));

    private static bool IsMineral(Substance substance, IReadOnlyDictionary<string, double> components) =>
        substance is { Kind: SubstanceKind.Acid, FeedsMicrobes: false } && components.GetValueOrDefault(Component.Hydrogen) > 0;

    private static (string Name, IReadOnlyDictionary<string, double> Components)? OrganicAcid(StockFacts stock) =>
        stock.Additions.Where(a => a.Substance is { Kind: SubstanceKind.Acid, FeedsMicrobes: true })
            .OrderByDescending(a => a.ComponentMoles.GetValueOrDefault(Component.Hydrogen))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .Select(a => ((string, IReadOnlyDictionary<string, double>)?)(a.Substance.Name, a.ComponentMoles))
            .FirstOrDefault();
}
