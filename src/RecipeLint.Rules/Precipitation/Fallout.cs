using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>How sure it is that a solid falls out.</summary>
internal enum Sureness
{
    /// <summary>Over the limit, but this solid usually needs more than that to start.</summary>
    MayStayClear,

    /// <summary>Over the limit by less than the model or the constant is good for.</summary>
    NearTheLimit,

    /// <summary>Over the limit by more.</summary>
    Clear,
}

/// <summary>What one rule's solids do in one state, the largest deposit first.</summary>
/// <param name="State">The moment at which most of it falls out.</param>
/// <param name="Deposits">Not empty.</param>
internal sealed record Fallout(SolutionState State, IReadOnlyList<SolidDeposit> Deposits)
{
    /// <summary>Error of a saturation index from ionic strength 3 to 6 mol/kg.</summary>
    private const double ErrorOfStrongSolutions = 0.3;

    /// <summary>Above ionic strength 6 mol/kg only a tenfold supersaturation is taken for one.</summary>
    private const double IndexBeyondTheModel = 1;

    private const double WeakIonicStrength = 3;

    public SolidDeposit Largest => Deposits[0];

    public OwnedSolid Owned => SolidOwners.Of(Largest.Solid)!;

    /// <summary>g/L of all of them together.</summary>
    public double GramsPerLitre => Rounding.SixDigits(Deposits.Sum(d => d.Mass.GramsPerLitre));

    public double Index => Rounding.SixDigits(Largest.Index);

    /// <summary>
    /// The moment at which the solids of a rule fall out most; null when there is none with a visible amount.
    /// </summary>
    /// <param name="states">Of one stock or tank, in their order: the first of equals counts.</param>
    /// <param name="visible">g/L from which a deposit counts.</param>
    public static Fallout? Worst(IEnumerable<SolutionState> states, Func<SolidDeposit, bool> isOwn, double visible) =>
        states
            .Select(s => new Fallout(s, [.. s.Deposits.Where(d => isOwn(d) && IsJudged(s, d)).OrderByDescending(d => d.Mass.GramsPerLitre)]))
            .Where(f => f.Deposits.Count > 0 && f.GramsPerLitre >= visible)
            .OrderByDescending(f => f.GramsPerLitre)
            .FirstOrDefault();

    /// <summary>How sure the largest deposit is.</summary>
    /// <param name="modelError">Of a saturation index below ionic strength 3 mol/kg.</param>
    public Sureness HowSure(double modelError)
    {
        if (Index <= Owned.StartsAt)
        {
            return Sureness.MayStayClear;
        }

        return Index <= Owned.StartsAt + Doubt(modelError) ? Sureness.NearTheLimit : Sureness.Clear;
    }

    /// <summary>What the index of the largest deposit is good for, either way.</summary>
    public double Doubt(double modelError)
    {
        var model = (State.Clear?.IonicStrength ?? 0) < WeakIonicStrength ? modelError : Math.Max(modelError, ErrorOfStrongSolutions);
        return Math.Max(model, Owned.Spread);
    }

    /// <summary>Share of a metal that leaves the solution with these deposits, 0 to 1.</summary>
    public double ShareOf(string metal)
    {
        var lost = Deposits.Sum(d => d.Amount.MolesPerLitre * d.Solid.Composition.Where(c => c.Key == metal).Sum(c => c.Value));
        var left = State.Metals.FirstOrDefault(m => m.Metal == metal)?.Dissolved.MolesPerLitre ?? 0;
        return lost > 0 ? Rounding.SixDigits(lost / (lost + left)) : 0;
    }

    /// <summary>Where activities are a guess, only what is far past its limit is spoken of.</summary>
    private static bool IsJudged(SolutionState state, SolidDeposit deposit) =>
        state.Validity.Trust != Trust.OutOfRange || deposit.ByHandbook || deposit.Index > IndexBeyondTheModel;
}
