using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

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
/// <param name="Deposit">What falls out; null unless it forms.</param>
/// <param name="Index">Saturation index in that state.</param>
public sealed record SolidVerdict(Standing Standing, SolutionState? State, Solid? Solid, SolidDeposit? Deposit, double? Index)
{
    public static SolidVerdict None { get; } = new(Standing.Unknown, null, null, null, null);
}

/// <summary>The states of a stock that a deposit seen in the bottle can come from.</summary>
public sealed class BottleChemistry
{
    /// <summary>A bottle has warmed up between the cold night and the look at it; without a temperature the coldest storage counts.</summary>
    private BottleChemistry(StockFacts stock, SolutionState atSeen, IReadOnlyList<SolutionState> states)
    {
        Stock = stock;
        AtSeen = atSeen;
        States = states;
    }

    public StockFacts Stock { get; }

    /// <summary>At the temperature it was seen at, else at the coldest it is kept at.</summary>
    public SolutionState AtSeen { get; }

    /// <summary>The moments that count, the one seen first; solved ones only.</summary>
    public IReadOnlyList<SolutionState> States { get; }

    public SolutionState Mixing => Stock.Chemistry.Mixing;

    /// <param name="seenAt">Temperature it was seen at; null when it was not told.</param>
    public static BottleChemistry Of(StockFacts stock, Temperature? seenAt)
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

        // Iron(II) meets air in any bottle that is opened, whatever shelf life it was made for.
        if (stock.ComponentMoles.GetValueOrDefault("Fe+2") > 0)
        {
            states.Add(chemistry.Aged
                ?? StateSolver.Solve(chemistry.Mix.WithIronOxidised(), new StateRequest(StateMoment.Aged, new Temperature(SolutionMix.FilledAtCelsius), false, [])));
        }

        return new BottleChemistry(stock, seen, [.. states.Where(s => s.IsSolved)]);
    }

    /// <summary>The worst that the solids of a cause do in the moments that count.</summary>
    public SolidVerdict Of(Cause cause)
    {
        var best = SolidVerdict.None;
        if (States.Count == 0 || cause.Solids.Count == 0)
        {
            return best;
        }

        best = new SolidVerdict(Standing.Absent, null, null, null, null);
        foreach (var state in States)
        {
            foreach (var name in cause.Solids)
            {
                var verdict = Judge(state, name);
                if (verdict.Standing < best.Standing || (verdict.Standing == best.Standing && Amount(verdict) > Amount(best)))
                {
                    best = verdict;
                }
            }
        }

        return best;
    }

    private static double Amount(SolidVerdict verdict) => verdict.Deposit?.Mass.GramsPerLitre ?? verdict.Index ?? double.MinValue;

    private static SolidVerdict Judge(SolutionState state, string name)
    {
        if (state.Deposit(name) is { IsTrace: false } deposit)
        {
            return new SolidVerdict(Standing.Forms, state, deposit.Solid, deposit, deposit.Index);
        }

        var solid = ConstantSet.Product.FindSolid(name);
        foreach (var salt in state.Salts)
        {
            if (salt.Solid.Name == name)
            {
                var mean = ((salt.CalibratedIndex ?? salt.ProductIndex) + (salt.ProductIndex ?? salt.CalibratedIndex)) / 2 ?? -9;
                return new SolidVerdict(
                    salt.State switch
                    {
                        SaltState.Crystallises => Standing.Above,
                        SaltState.Close => Standing.Close,
                        _ => mean > -0.7 ? Standing.Below : Standing.FarBelow,
                    },
                    state, salt.Solid, null, mean);
            }
        }

        if (state.Index(name) is not { } index)
        {
            return new SolidVerdict(Standing.Absent, null, solid, null, null);
        }

        var standing = index > 0 ? Standing.Above : index > -0.25 ? Standing.Close : index > -1 ? Standing.Below : Standing.FarBelow;
        return new SolidVerdict(standing, state, solid, null, index);
    }
}
