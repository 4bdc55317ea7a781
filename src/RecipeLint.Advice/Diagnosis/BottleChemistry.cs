using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>How far a solid is from falling out of this stock, at the worst of the moments that count.</summary>
public enum Standing
{
    /// <summary>It falls out.</summary>
    Forms,

    /// <summary>It is above saturation, though another solid takes its ions or it forms slowly.</summary>
    Above,

    /// <summary>Too near to saturation to promise either.</summary>
    Close,

    /// <summary>Up to tenfold below saturation.</summary>
    Below,

    /// <summary>Known to stay dissolved whatever the constants announce.</summary>
    Held,

    /// <summary>Far below saturation.</summary>
    FarBelow,

    /// <summary>Its ions are not all there.</summary>
    Absent,

    /// <summary>The state could not be computed.</summary>
    Unknown,
}

/// <summary>What the engine says of one cause's solids.</summary>
/// <param name="State">The state that decides; null when the ions are absent or there is no solid.</param>
/// <param name="Solid">The solid that decides.</param>
/// <param name="Deposits">What falls out of the solids of the cause; empty unless it forms.</param>
/// <param name="Index">Saturation index in that state.</param>
public sealed record SolidVerdict(
    Standing Standing, SolutionState? State, Solid? Solid, IReadOnlyList<SolidDeposit> Deposits, double? Index)
{
    public static SolidVerdict None { get; } = new(Standing.Unknown, null, null, [], null);

    /// <summary>g/L of all that falls out, six digits.</summary>
    public double GramsPerLitre => Rounding.SixDigits(Deposits.Sum(d => d.Mass.GramsPerLitre));

    /// <summary>True when the judgement of deposits counts it: it falls out, or is a salt that comes too close.</summary>
    public bool Counts { get; init; }

    /// <summary>What holds it dissolved against what the constants say; null where nothing is known to.</summary>
    public string? HeldBecause { get; init; }
}

/// <summary>The states of a stock that a deposit seen in the bottle can come from.</summary>
public sealed class BottleChemistry
{
    /// <summary>
    /// A bottle has warmed up between the cold night and the look at it; without a temperature the coldest storage counts.
    /// </summary>
    private BottleChemistry(StockFacts stock, SolutionState atSeen, IReadOnlyList<SolutionState> states)
    {
        Limits = DepositOptions.Of(stock.Settings);
        _judged = [.. states.Select(s => (s, DepositJudgement.Of(s, Limits).Deposits))];
        Stock = stock;
        AtSeen = atSeen;
        States = states;
    }

    private readonly IReadOnlyList<(SolutionState State, IReadOnlyList<JudgedDeposit> Deposits)> _judged;

    private IReadOnlyList<SolutionState> _poured = [];

    /// <summary>When a state is met, for the end of a sentence.</summary>
    internal string When(SolutionState state) => _poured.Contains(state)
        ? $"at the pH of {Say.Ph(Math.Round(state.Ph, 1))} that what was put in may bring"
        : DiagnosisWords.At(state);

    public StockFacts Stock { get; }

    /// <summary>From where on a deposit counts in the shop of the stock.</summary>
    public DepositLimits Limits { get; }

    /// <summary>At the temperature it was seen at, else at the coldest it is kept at.</summary>
    public SolutionState AtSeen { get; }

    /// <summary>The moments that count, the one seen first; solved ones only.</summary>
    public IReadOnlyList<SolutionState> States { get; }

    public SolutionState Mixing => Stock.Chemistry.Mixing;

    /// <summary>
    /// pH of a bottle into which somebody poured acid, or alkali, up to where people mostly stop (common practice, no source).
    /// </summary>
    private const double AcidPouredTo = 7, AlkaliPouredTo = 9;

    /// <param name="seenAt">Temperature it was seen at; null when it was not told.</param>
    /// <param name="putIn">What somebody put in beside the recipe; null for nothing.</param>
    public static BottleChemistry Of(StockFacts stock, Temperature? seenAt, IReadOnlyList<PutIn>? putIn = null)
    {
        var chemistry = stock.Chemistry;
        var seen = seenAt is { } at
            ? StateSolver.Solve(chemistry.Mix, new StateRequest(StateMoment.Coldest, at, false, []) { StartFrom = chemistry.Mixing.Clear })
            : chemistry.Coldest;
        var states = new List<SolutionState> { seen, chemistry.Mixing };
        if (seenAt is null)
        {
            states.Add(chemistry.Warmest);
        }

        if (chemistry.State(StateMoment.Turned) is { } turned)
        {
            states.Add(turned);
        }

        // Iron(II) meets air in any bottle that is opened, whatever shelf life it was made for.
        if (stock.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0)
        {
            states.Add(chemistry.Aged
                ?? StateSolver.Solve(
                    chemistry.Mix.WithIronOxidised(),
                    new StateRequest(StateMoment.Aged, new Temperature(SolutionMix.FilledAtCelsius), false, [])));
        }

        List<SolutionState> poured = [.. Poured(chemistry, putIn ?? []).Where(s => s.IsSolved)];
        return new BottleChemistry(stock, seen, [.. states.Where(s => s.IsSolved), .. poured]) { _poured = poured };
    }

    /// <summary>The same liquid once somebody's acid or alkali has changed its pH.</summary>
    private static IEnumerable<SolutionState> Poured(StockChemistry chemistry, IReadOnlyList<PutIn> putIn)
    {
        // Silicate whose alkali was taken away has nothing that holds it.
        SolutionState At(double ph) => StateSolver.Solve(
            chemistry.Mix with { SilicateIsHeld = false },
            new StateRequest(StateMoment.Mixing, new Temperature(SolutionMix.FilledAtCelsius), false, []) { SetPh = ph });
        bool Went(HazardRole role) => putIn.Any(p => p.Substance is { } substance && HazardRoles.Of(substance).Contains(role));
        if (chemistry.Mixing is not { IsSolved: true, Ph: var now })
        {
            yield break;
        }

        if (now > AcidPouredTo && Went(HazardRole.Acid))
        {
            yield return At(AcidPouredTo);
        }

        if (now < AlkaliPouredTo && (Went(HazardRole.Alkali) || Went(HazardRole.Carbonate)))
        {
            yield return At(AlkaliPouredTo);
        }
    }

    /// <summary>What counts as a deposit at the moment it was seen, the most first.</summary>
    public IReadOnlyList<JudgedDeposit> DepositsSeen => DepositsAt(AtSeen);

    /// <summary>What counts as a deposit at one of the moments that count.</summary>
    public IReadOnlyList<JudgedDeposit> DepositsAt(SolutionState state) => _judged.FirstOrDefault(j => j.State == state).Deposits ?? [];

    /// <summary>The worst that the solids of a cause do in the moments that count.</summary>
    public SolidVerdict Of(Cause cause) => Of(cause, _judged);

    /// <summary>The worst that the solids of a cause do in some solutions that have been judged.</summary>
    internal static SolidVerdict Of(Cause cause, IReadOnlyList<(SolutionState State, IReadOnlyList<JudgedDeposit> Deposits)> judged)
    {
        var best = SolidVerdict.None;
        if (judged.Count == 0 || cause.Solids.Count == 0)
        {
            return best;
        }

        best = new SolidVerdict(Standing.Absent, null, null, [], null);
        foreach (var (state, deposits) in judged)
        {
            foreach (var name in cause.Solids)
            {
                var verdict = Judge(state, deposits, name, cause);
                if (verdict.Standing < best.Standing || (verdict.Standing == best.Standing && Amount(verdict) > Amount(best)))
                {
                    best = verdict;
                }
            }
        }

        return best;
    }

    private static double Amount(SolidVerdict verdict) =>
        verdict.Deposits.Count > 0 ? verdict.GramsPerLitre : verdict.Index ?? double.MinValue;

    private static SolidVerdict Judge(SolutionState state, IReadOnlyList<JudgedDeposit> deposits, string name, Cause cause)
    {
        if (deposits.FirstOrDefault(d => d.Deposits.Any(s => s.Solid.Name == name)) is { } fallen)
        {
            var own = fallen.Deposits.Where(d => cause.Solids.Contains(d.Solid.Name)).ToList();
            return new SolidVerdict(Standing.Forms, fallen.State, own[0].Solid, own, own[0].Index) { Counts = true };
        }

        if (deposits.FirstOrDefault(d => d.Solid.Name == name) is { } close)
        {
            return new SolidVerdict(
                close.FallsOut ? Standing.Above : Standing.Close, close.State, close.Solid, [], close.Index)
            { Counts = true };
        }

        var solid = ConstantSet.Product.FindSolid(name);
        if (state.Salts.Where(s => s.Solid.Name == name).Select(s => (SaltVerdict?)s).FirstOrDefault() is { } salt)
        {
            var mean = salt.Index;
            return new SolidVerdict(mean > -0.7 ? Standing.Below : Standing.FarBelow, state, salt.Solid, [], mean);
        }

        if (solid is null || state.Index(name) is not { } index)
        {
            return new SolidVerdict(Standing.Absent, null, solid, [], null);
        }

        if (index > -0.25 && Forming.StaysDissolvedBecause(state.Mix, solid) is { } held)
        {
            return new SolidVerdict(Standing.Held, state, solid, [], index) { HeldBecause = held };
        }

        var standing = index > 0 ? Standing.Above : index > -0.25 ? Standing.Close : index > -1 ? Standing.Below : Standing.FarBelow;
        return new SolidVerdict(standing, state, solid, [], index);
    }
}
