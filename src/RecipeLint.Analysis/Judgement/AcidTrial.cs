using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Judgement;

/// <summary>A pH that is promised to keep a stock clear, tried with the acid in that it takes. Pure; never throws.</summary>
public static class AcidTrial
{
    /// <summary>
    /// True when the solid falls out at neither end of the storage temperatures once the acid has brought the stock to the pH. The acid is
    /// a mineral one whose salts all dissolve, nitric acid: what another brings along can only be worse.
    /// </summary>
    /// <param name="ph">Below that of the stock.</param>
    public static bool StaysClear(StockFacts stock, Solid solid, double ph, DepositLimits limits)
    {
        if (SubstanceCatalogue.BuiltIn.ById("nitric-38") is not { } acid || stock.Chemistry.Mix is not { Failure: null } mix)
        {
            return false;
        }

        var water = new Mass(mix.KilogramsWaterPerLitre * 1000 * stock.Volume.Litres);
        var demand = PhDemand.Find(stock.ComponentMoles, water, acid, ph, new Temperature(SolutionMix.FilledAtCelsius));
        if (demand.Mass is null)
        {
            return false;
        }

        var soured = SolutionMix.Of(ComponentMoles.Sum([stock.ComponentMoles, demand.ComponentMoles]), stock.Volume);
        double[] ends = [stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius];
        return soured.Failure is null && Array.TrueForAll(ends, at => DepositJudgement.Of(
            StateSolver.Solve(soured, Math.Clamp(at, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius)), limits, solid).IsClear);
    }
}
