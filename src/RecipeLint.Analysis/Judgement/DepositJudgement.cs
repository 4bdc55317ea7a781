using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>
/// The one judgement of what falls out of a solution at one or several moments: which deposits count, how sure each is, and what cannot be
/// told. Rules, stretch, split, diagnose, order, proof, dissolve and the figures of repairs read it, so that they give one answer about one
/// bottle.
/// </summary>
public sealed class DepositJudgement
{
    private DepositJudgement(string? failure, IReadOnlyList<JudgedDeposit> deposits, IReadOnlyList<Solid> untold)
    {
        Failure = failure;
        Deposits = deposits;
        Untold = untold;
    }

    /// <summary>Why a moment could not be computed; null when all could.</summary>
    public string? Failure { get; }

    /// <summary>The deposits that count, each at the moment of its largest amount; the most first, then salts that come close.</summary>
    public IReadOnlyList<JudgedDeposit> Deposits { get; }

    /// <summary>Solids near their limit in a solution so strong that nothing can be told of them.</summary>
    public IReadOnlyList<Solid> Untold { get; }

    /// <summary>True when nothing that counts falls out or comes too close, and everything could be told.</summary>
    public bool IsClear => Failure is null && Deposits.Count == 0 && Untold.Count == 0;

    /// <summary>
    /// Everything that keeps it from being clear: what falls out, the most first, then what comes close, then what cannot be told.
    /// </summary>
    public IReadOnlyList<Solid> Against =>
        [.. Deposits.SelectMany(d => d.Deposits.Count > 0 ? d.Deposits.Select(s => s.Solid) : [d.Solid]).Concat(Untold).Distinct()];

    /// <summary>A stock in its bottle: as it is mixed, at its coldest and at its warmest.</summary>
    public static DepositJudgement Of(StockFacts stock, DepositLimits limits) => Of(MomentsOf(stock), limits);

    /// <summary>A solution at one moment.</summary>
    /// <param name="only">Looks at this solid alone; null for all.</param>
    public static DepositJudgement Of(SolutionState state, DepositLimits limits, Solid? only = null) => Of([state], limits, only);

    /// <summary>A solution at several moments.</summary>
    public static DepositJudgement Of(IReadOnlyList<SolutionState> states, DepositLimits limits, Solid? only = null)
    {
        var solved = states.Where(s => s.IsSolved).ToList();
        var counted = OwnersIn(solved, only)
            .SelectMany(o => LookedAt(solved, o, limits.Of(o.Name), only))
            .Where(d => d.Counts)
            .OrderByDescending(d => d.GramsPerLitre)
            .ThenByDescending(d => d.Index)
            .ThenBy(d => d.Solid.Name, StringComparer.Ordinal);
        return new DepositJudgement(
            states.FirstOrDefault(s => !s.IsSolved)?.Failure, [.. counted], [.. solved.SelectMany(s => UntoldIn(s, only)).Distinct()]);
    }

    /// <summary>
    /// The moments a stock is judged at. What falls out once the air has oxidised the iron is a matter of its protection and has rules
    /// there.
    /// </summary>
    public static IReadOnlyList<SolutionState> MomentsOf(StockFacts stock) =>
        [.. stock.Chemistry.States.Where(s => s.Moment != StateMoment.Aged)];

    /// <summary>The deposits of one owner, whether they count or not, each at its worst moment.</summary>
    /// <param name="states">Of one stock or tank, in their order: the first of equals counts.</param>
    public static IEnumerable<JudgedDeposit> LookedAt(
        IReadOnlyList<SolutionState> states, DepositOwner owner, OwnerLimits limits, Solid? only = null)
    {
        // Most stocks are clear, and every rule on solids asks of each.
        if (!owner.IsOfSalts && states.All(s => !s.IsSolved || (s.Deposits.Count == 0 && s.Mix.Totals[Component.FerrousIron] == 0)))
        {
            return [];
        }

        var moments = states.Where(s => s.IsSolved).Select(s => AirFirst(s, owner)).Where(s => s.IsSolved).ToList();
        if (owner.IsOfSalts)
        {
            return moments
                .SelectMany(s => SaltJudgement.In(s, owner, limits, only))
                .GroupBy(s => s.Solid)
                .Select(group => group
                    .OrderByDescending(s => s.Counts)
                    .ThenByDescending(s => s.FallsOut)
                    .ThenByDescending(s => s.GramsPerLitre)
                    .ThenByDescending(s => s.Index)
                    .First());
        }

        var own = moments.SelectMany(s => s.Deposits).Select(d => d.Solid).Where(IsWanted).Distinct().ToList();
        var groups = owner.EachSolidApart ? own.Select(s => new List<Solid> { s }) : own.Count > 0 ? [own] : [];
        return groups.Select(g => Worst(moments, g.Contains, owner, limits)).OfType<JudgedDeposit>();

        bool IsWanted(Solid solid) => (only is null || solid == only) && solid.Owner == owner.Name;
    }

    /// <summary>The moment at which some solids fall out most, one at which they count first; null when none of them does.</summary>
    internal static JudgedDeposit? Worst(
        IEnumerable<SolutionState> states, Func<Solid, bool> isOwn, DepositOwner owner, OwnerLimits limits) =>
        states
            .Select(s => (State: s, Deposits: s.Deposits
                .Where(d => isOwn(d.Solid))
                .OrderByDescending(d => d.Mass.GramsPerLitre)
                .ToList()))
            .Where(f => f.Deposits.Count > 0)
            .Select(f => Of(f.State, f.Deposits, owner, limits))
            .OrderByDescending(f => f.Counts)
            // Where nearly all of it falls out at every moment, the one at which it is furthest past its limit is the worst.
            .ThenByDescending(f => Rounding.TwoDigitsDown(f.GramsPerLitre))
            .ThenByDescending(f => f.Index)
            .FirstOrDefault();

    private static JudgedDeposit Of(SolutionState state, List<SolidDeposit> deposits, DepositOwner owner, OwnerLimits limits)
    {
        var largest = deposits[0];
        var index = Rounding.SixDigits(largest.Index);
        var doubt = JudgedDeposit.DoubtOf(state, largest.Solid, limits.NearLimit);

        // A solid of the rule that holds none of its metals counts by its weight.
        var byMetal = owner.Metals.Count > 0 && deposits.TrueForAll(d => d.Solid.Composition.Any(c => owner.Metals.Contains(c.Key)));
        var loss = byMetal
            ? owner.Metals
                .Select(m => ((string Metal, double Share)?)(m, JudgedDeposit.ShareOf(m, state, deposits)))
                .MaxBy(l => l!.Value.Share)
            : null;
        var tests = new List<DepositTest>(3);
        if (index > 0)
        {
            tests.Add(new DepositTest(DepositBar.PastTheLimit, Math.Pow(10, largest.Index), 1));
        }

        tests.Add(new DepositTest(DepositBar.EnoughToSee, Rounding.SixDigits(deposits.Sum(d => d.Mass.GramsPerLitre)), limits.Visible));
        if (loss is { } lost)
        {
            tests.Add(new DepositTest(DepositBar.EnoughOfTheMetal, Rounding.SixDigits(100 * lost.Share), 100 * limits.MetalShare));
        }

        return new JudgedDeposit
        {
            Owner = owner,
            State = state,
            Solid = largest.Solid,
            Index = index,
            Deposits = deposits,
            Here = JudgedDeposit.SurenessOf(index, largest.Solid, doubt),
            Weaker = new(
                () => JudgedDeposit.Diluted(state) is { IsSolved: true } weaker
                    ? Worst([weaker], s => s == largest.Solid, owner, limits)
                    : null,
                LazyThreadSafetyMode.PublicationOnly),
            Doubt = doubt,
            Loss = loss,
            Tests = tests,
        };
    }

    /// <summary>A solid that waits for the air is judged once the iron is oxidised.</summary>
    private static SolutionState AirFirst(SolutionState state, DepositOwner owner) =>
        state.Mix.Totals[Component.FerrousIron] > 0
        && state.Clear!.Solids.Any(s => s.Index > 0 && s.Solid.Owner == owner.Name && Forming.WaitsForTheAir(state.Mix, s.Solid))
            ? state.OnceIronIsOxidised()
            : state;

    /// <summary>Owners of which anything falls out or may be close.</summary>
    private static IEnumerable<DepositOwner> OwnersIn(IReadOnlyList<SolutionState> states, Solid? only)
    {
        var names = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var state in states)
        {
            foreach (var (solid, index) in state.Clear!.Solids)
            {
                if ((only is null || solid == only)
                    && (index > SaltJudgement.UnfittedFrom || Forming.WaitsForTheAir(state.Mix, solid))
                    && solid.Owner is { } owner)
                {
                    names.Add(owner);
                }
            }

            foreach (var solid in state.Deposits
                .Select(d => d.Solid)
                .Concat(state.Salts.Where(s => s.State != SaltState.Clear).Select(s => s.Solid)))
            {
                if ((only is null || solid == only) && solid.Owner is { } owner)
                {
                    names.Add(owner);
                }
            }
        }

        return names.Select(DepositOwner.Named);
    }

    /// <summary>
    /// The highest saturation index of a solid that may form or of a soluble salt, for a salt the mean of its two measures: 0 is saturated.
    /// Negative infinity when no such solid has all its ions there.
    /// </summary>
    public static double HighestIndex(SolutionState state) =>
        Indexes(state).Select(s => s.Index).DefaultIfEmpty(double.NegativeInfinity).Max();

    /// <summary>
    /// The saturation index of every solid that may form and of every soluble salt, for a salt the mean of its two measures.
    /// </summary>
    public static IEnumerable<SolidIndex> Indexes(SolutionState state) => (state.Clear?.Solids ?? [])
        .Where(s => s.Solid.Role == SolidRole.FormsReadily && Forming.StaysDissolvedBecause(state.Mix, s.Solid) is null)
        .Concat(state.Salts.Where(v => v.Solid.Role == SolidRole.SolubleSalt).Select(v => new SolidIndex(v.Solid, v.Index)));

    /// <summary>
    /// How far the index of a solid may be off, either way, log10 units: of a soluble salt as far as from saturated to where it is called
    /// close.
    /// </summary>
    public static double DoubtOf(SolutionState state, Solid solid, DepositLimits limits) => solid.Role == SolidRole.SolubleSalt
        ? -state.Salts.Where(v => v.Solid == solid).Select(v => v.CloseFrom).DefaultIfEmpty(SaltVerdicts.CloseFromIndex(solid)).First()
        : JudgedDeposit.DoubtOf(state, solid, limits.Of(solid.Owner ?? "").NearLimit);

    /// <summary>
    /// Sparingly soluble solids that do not fall out of a solution that the model does not cover, and could within its doubt there.
    /// </summary>
    public static IReadOnlyList<Solid> UntoldIn(SolutionState state, Solid? only = null) => !state.IsSolved || !state.IsBeyondTheModel
        ? []
        :
        [
            .. state.NearSaturation
                .Where(n => n.Solid.Role == SolidRole.FormsReadily && (only is null || n.Solid == only)
                    && n.Index <= JudgedDeposit.DoubtOf(state, n.Solid, OwnerLimits.ModelError)
                    && state.Deposit(n.Solid.Name) is null
                    && state.Salts.All(v => v.Solid != n.Solid)
                    && n.Solid.Owner is not null
                    && Forming.StaysDissolvedBecause(state.Mix, n.Solid) is null)
                .Select(n => n.Solid),
        ];
}
