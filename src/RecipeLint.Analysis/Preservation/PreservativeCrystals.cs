using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Preservation;

/// <summary>How near the acid of a preservative stands to crystallising.</summary>
/// <param name="Acid">The one that stands nearest.</param>
/// <param name="SaltedIndex">Its saturation index, with what the salts push out of solution.</param>
/// <param name="State">The coldest the stock is kept at.</param>
public sealed record PreservativeCrystals(PreservativeAcid Acid, double SaltedIndex, SolutionState State)
{
    /// <summary>
    /// Setschenow constant of benzoic acid in salts of the kind of NaCl and KCl, L/mol; 0.14 to 0.19 are published (recalled). Sorbic acid:
    /// none known.
    /// </summary>
    public const double SaltingOut = 0.16;

    /// <summary>Per cent of what stays dissolved, to six digits.</summary>
    public double UsedPercent { get; } = Rounding.SixDigits(Math.Pow(10, SaltedIndex) * 100);

    /// <summary>Whether the salts count: only benzoic acid has a known constant.</summary>
    public bool IsSalted => Acid.Component == Component.Benzoate;

    /// <summary>Null where the stock cannot be computed or holds none.</summary>
    public static PreservativeCrystals? Of(StockFacts stock)
    {
        return stock.IsComplete ? Of(stock.Chemistry.Coldest) : null;
    }

    /// <summary>
    /// The lowest whole °C, above the coldest that the stock is kept at and no higher than the warmest, at which no more than so much of
    /// what stays dissolved is used and nothing else falls out; null for none.
    /// </summary>
    /// <param name="percent">Of what stays dissolved.</param>
    public static double? ClearFrom(StockFacts stock, double percent, DepositLimits limits)
    {
        var coldest = stock.Chemistry.Coldest;
        var warmest = Math.Min(stock.StorageTemperature.High.Celsius, SolutionInput.HighestCelsius);
        for (var celsius = Math.Floor(coldest.Temperature.Celsius) + 1; celsius <= warmest; celsius++)
        {
            var there = StateSolver.Solve(coldest.Mix, new StateRequest(coldest.Moment, new Temperature(celsius), coldest.OpenToAir, []));
            if (Of(there) is { } crystals && crystals.UsedPercent <= percent)
            {
                return StateTrial.Compare(coldest, there, [], limits) is { Helps: true } ? celsius : null;
            }
        }

        return null;
    }

    private static PreservativeCrystals? Of(SolutionState state) => !state.IsSolved || state.Preservatives.Count == 0
        ? null
        : state.Preservatives
            .Select(p => new PreservativeCrystals(p,
                p.Index + (p.Component == Component.Benzoate ? SaltingOut * state.IonicStrengthMolPerKg : 0), state))
            .MaxBy(c => c.SaltedIndex);
}
