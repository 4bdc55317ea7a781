using RecipeLint.Analysis.Equilibria;
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
        var coldest = stock.Chemistry.Coldest;
        return !stock.IsComplete || !coldest.IsSolved || coldest.Preservatives.Count == 0
            ? null
            : coldest.Preservatives
                .Select(p => new PreservativeCrystals(p,
                    p.Index + (p.Component == Component.Benzoate ? SaltingOut * coldest.IonicStrengthMolPerKg : 0), coldest))
                .MaxBy(c => c.SaltedIndex);
    }
}
