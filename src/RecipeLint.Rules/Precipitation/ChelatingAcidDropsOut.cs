using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A chelating agent falls out as its acid because the stock is too acid.</summary>
public sealed class ChelatingAcidDropsOut : SolidRule
{
    private const string FerrousIron = "Fe+2";

    public override string Name => "chelating-acid-drops-out";

    private protected override string Why(OwnedSolid owned) =>
        "The white powder redissolves only slowly, and meanwhile the metals stand unprotected.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [var agent, var acid, ..]
            ? $"Use less {acid.Name}, or dissolve {agent.Name} with alkali and the metals before the acid goes in"
            : "Use less acid, or dissolve the agent with alkali and the metals before the acid goes in";

    /// <summary>
    /// Iron(II) in the hold of EDTA takes up oxygen within hours, sooner than the acid crystallises, and EDTA holds iron(III) in stronger acid
    /// (the classical iron stock of Murashige and Skoog stays clear at pH 2): with iron(II) it counts only if it stays after that.
    /// </summary>
    private protected override bool IsPossible(StockFacts stock, Solid solid)
    {
        if (!(stock.ComponentMoles.GetValueOrDefault(FerrousIron) > 0))
        {
            return true;
        }

        var coldest = Math.Clamp(stock.StorageTemperature.Low.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);
        return !Clearness.Of(stock.Chemistry.Mix.WithIronOxidised(), coldest, solid).IsClear;
    }
}
