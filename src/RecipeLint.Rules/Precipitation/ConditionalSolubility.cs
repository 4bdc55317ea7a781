using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// Solubility limits on total concentrations, for the precipitation rules that judge without an equilibrium calculation.
/// Every verdict that rests on them is an estimate and says so.
/// </summary>
internal static class ConditionalSolubility
{
    /// <summary>g/mol of CaSO4·2H2O, from CIAAW weights.</summary>
    public const double GypsumMolarMass = 172.164;

    /// <summary>
    /// Gypsum solubility in NaCl solutions at 25 °C, mol/kg: (NaCl, CaSO4). Marshall &amp; Slusher, J. Phys. Chem. 70 (1966) 4015.
    /// Sodium chloride stands in for the other salts of a stock at the same ionic strength.
    /// </summary>
    private static readonly (double Salt, double Gypsum)[] _gypsumInSalt =
    [
        (0, 0.0151), (0.0117, 0.0162), (0.0257, 0.0175), (0.0513, 0.0194), (0.1147, 0.0231), (0.1921, 0.0266), (0.2319, 0.0281),
        (0.548, 0.0372), (0.834, 0.0430), (1.024, 0.0452), (2.024, 0.0540), (2.87, 0.0560), (4.125, 0.0560), (6.13, 0.0489),
    ];

    /// <summary>Ionic strength in mol/L when every component is a free ion.</summary>
    public static double IonicStrength(StockFacts stock) =>
        0.5 * stock.ComponentMoles.Sum(c => c.Value / stock.Volume.Litres * Math.Pow(Components.Charge(c.Key), 2));

    /// <summary>Product of total calcium and total sulfate, (mol/L)², at which gypsum is saturated in a salt solution of this ionic strength.</summary>
    public static double GypsumProduct(double ionicStrength)
    {
        var table = _gypsumInSalt;
        var salt = Math.Clamp(ionicStrength, table[0].Salt, table[^1].Salt);
        var upper = Array.FindIndex(table, row => row.Salt >= salt);
        if (upper <= 0)
        {
            return table[0].Gypsum * table[0].Gypsum;
        }

        var (low, high) = (table[upper - 1], table[upper]);
        var solubility = low.Gypsum + ((high.Gypsum - low.Gypsum) * (salt - low.Salt) / (high.Salt - low.Salt));
        return solubility * solubility;
    }

    /// <summary>Moles per litre of a 1:1 solid that leave a solution before the product of what is left meets the limit.</summary>
    public static double Excess(double first, double second, double product)
    {
        var sum = first + second;
        var root = Math.Sqrt(Math.Max(0, ((first - second) * (first - second)) + (4 * product)));
        return Math.Max(0, (sum - root) / 2);
    }

    /// <summary>log10 of an activity coefficient by the Davies equation at 25 °C; past 0.5 mol/L it is held at the value there.</summary>
    public static double LogActivityCoefficient(int charge, double ionicStrength)
    {
        var strength = Math.Min(ionicStrength, 0.5);
        var root = Math.Sqrt(strength);
        return -0.51 * charge * charge * ((root / (1 + root)) - (0.3 * strength));
    }

    /// <summary>Fraction of total phosphate present as H2PO4- (pK 2.14 and 7.21; Powell et al., Pure Appl. Chem. 77 (2005) 739).</summary>
    public static double DihydrogenPhosphateFraction(double pH)
    {
        var h = Math.Pow(10, -pH);
        return 1 / (1 + (h * Math.Pow(10, 2.14)) + (Math.Pow(10, -7.21) / h));
    }
}
