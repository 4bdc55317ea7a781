using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>How much of a soluble salt crystallises where activities cannot be trusted.</summary>
internal static class HandbookDeposit
{
    /// <summary>
    /// mol per kg of water that must leave until the product of the total molalities is that of the saturated pure solution; 0 when it is
    /// not above it, or when the salt holds ions whose totals say nothing (hydrogen).
    /// </summary>
    public static double MolPerKg(SaltVerdict salt, ComponentTotals totals)
    {
        if (salt.ProductIndex is not > 0)
        {
            return 0;
        }

        var terms = salt.Solid.Composition.Where(c => c.Key != Component.Water).ToList();
        if (terms.Count == 0 || terms.Any(t => t.Key == Component.Hydrogen || t.Value <= 0))
        {
            return 0;
        }

        double low = 0, high = terms.Min(t => totals[t.Key] / t.Value);
        for (var step = 0; step < 80; step++)
        {
            var middle = (low + high) / 2;
            var index = terms.Sum(t => t.Value * Math.Log10((totals[t.Key] - (t.Value * middle)) / (t.Value * salt.HandbookMolPerKg)));
            if (index > 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }
}
