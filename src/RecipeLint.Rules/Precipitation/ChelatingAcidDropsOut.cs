using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A chelating agent falls out as its acid because the stock is too acid.</summary>
public sealed class ChelatingAcidDropsOut : SolidRule
{
    private const string FerrousIron = "Fe+2";

    private const string AirFirst = "The air is taken to have oxidised the iron by then.";

    public override string Name => "chelating-acid-drops-out";

    private protected override string Why(OwnedSolid owned) =>
        "The white powder redissolves only slowly, and what lies on the bottom holds no metal.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [var agent, var acid, ..]
            ? $"Use less {acid.Name}, or dissolve {agent.Name} with alkali and the metals before the acid goes in"
            : "Use less acid, or dissolve the agent with alkali and the metals before the acid goes in";

    /// <summary>
    /// Iron(II) in the hold of EDTA takes up oxygen within hours, sooner than the acid crystallises, and EDTA holds iron(III) in stronger acid
    /// (the classical iron stock of Murashige and Skoog stays clear at pH 2): with iron(II) only what falls out after that counts.
    /// </summary>
    internal override List<SolutionState> StatesOf(StockFacts stock)
    {
        var fresh = JudgedStates(stock);
        return HoldsFerrousIron(stock) && fresh.Exists(s => s.Deposits.Any(d => IsOwn(d.Solid)))
            ? [.. fresh.Select(s => Oxidised(stock, s)).Where(s => s.IsSolved)]
            : fresh;
    }

    private protected override SolutionMix MixOf(StockFacts stock) =>
        HoldsFerrousIron(stock) ? stock.Chemistry.Mix.WithIronOxidised() : stock.Chemistry.Mix;

    private SolutionState Oxidised(StockFacts stock, SolutionState fresh) =>
        StateSolver.Solve(MixOf(stock), new StateRequest(fresh.Moment, fresh.Temperature, false, [.. fresh.Validity.Reasons, AirFirst]));

    private static bool HoldsFerrousIron(StockFacts stock) => stock.ComponentMoles.GetValueOrDefault(FerrousIron) > 0;
}
