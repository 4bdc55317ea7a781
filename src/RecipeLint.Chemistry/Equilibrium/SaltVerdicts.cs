namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>How near a soluble salt is to crystallising.</summary>
public enum SaltState
{
    /// <summary>Well below saturation.</summary>
    Clear,

    /// <summary>Too near to saturation to promise either.</summary>
    Close,

    /// <summary>Above saturation by both measures.</summary>
    Crystallises,
}

/// <summary>The bracketed verdict on one soluble salt.</summary>
/// <param name="Solid">The salt.</param>
/// <param name="State">What follows from both measures.</param>
/// <param name="CalibratedIndex">
/// log10 of the activity product over the constant that returns the handbook solubility; null above the ionic strength it can be trusted to.
/// </param>
/// <param name="ProductIndex">
/// log10 of the product of total molalities over the same product in the saturated pure solution of the handbook; null for solids of acids
/// and bases, where the product of totals means nothing.
/// </param>
/// <param name="HandbookMolPerKg">Solubility of the pure salt at this temperature, mol per kg of water.</param>
public readonly record struct SaltVerdict(Solid Solid, SaltState State, double? CalibratedIndex, double? ProductIndex, double HandbookMolPerKg);

/// <summary>
/// Verdicts on soluble salts. In a mixture the calibrated index errs to the optimistic side and the product of totals to either, so both
/// are asked: crystals are announced when both or clearly their mean are above saturation, and silence is kept only when the mean is well
/// below and neither is near.
/// </summary>
public static class SaltVerdicts
{
    /// <summary>Above this ionic strength, mol/kg, the calibrated index is not asked.</summary>
    public const double HighestIonicStrength = 6;

    // Measured two-salt saturated solutions (KNO3-KH2PO4, NH4H2PO4-KNO3) have the mean of the two measures between -0.25 and +0.03;
    // for the phosphates, whose index is the lower the more nitrate there is, "close" therefore begins further down.
    private const double CertainFrom = 0.02;

    /// <summary>A salt of which either measure is above this is close.</summary>
    public const double NearestByEither = -0.10;

    private const double CloseFrom = -0.15, CloseFromDihydrogenPhosphate = -0.30, BeyondTableCelsius = 5;

    /// <summary>A verdict for every calibrated salt whose ions are present, in table order.</summary>
    /// <param name="input">The solution as given.</param>
    /// <param name="state">Its equilibrium from <see cref="EquilibriumSolver.Product"/>.</param>
    public static IReadOnlyList<SaltVerdict> Of(SolutionInput input, Equilibrium state)
    {
        var result = new List<SaltVerdict>();
        if (!state.Converged) return result;
        foreach (var (solid, index) in state.Solids)
        {
            var row = CalibratedSalts.Solids.IndexOf((ushort)solid.Table);
            if (row < 0 || Solubility(row, input.Celsius) is not { } handbook) continue;
            double? calibrated = state.IonicStrength <= HighestIonicStrength ? index : null;
            var product = ProductIndex(solid, input.Totals, handbook);
            if (calibrated is null && product is null) continue;
            var limit = CloseFromIndex(solid);
            double first = calibrated ?? product!.Value, second = product ?? calibrated!.Value, mean = (first + second) / 2;
            var verdict = Math.Min(first, second) > 0 || mean > CertainFrom ? SaltState.Crystallises
                : mean > limit || Math.Max(first, second) > NearestByEither ? SaltState.Close : SaltState.Clear;
            result.Add(new SaltVerdict(solid, verdict, calibrated, product, handbook));
        }
        return result;
    }

    /// <summary>Handbook solubility of a calibrated salt in pure water, mol per kg, at a temperature in °C; null where the handbook has none.</summary>
    public static double? Solubility(Solid solid, double celsius) =>
        CalibratedSalts.Solids.IndexOf((ushort)solid.Table) is >= 0 and var row ? Solubility(row, celsius) : null;

    /// <summary>The mean of the two measures above which a salt is close.</summary>
    public static double CloseFromIndex(Solid solid) => solid.Name is "MKP" or "MAP" ? CloseFromDihydrogenPhosphate : CloseFrom;

    private static double? Solubility(int row, double celsius)
    {
        int from = CalibratedSalts.Start[row], to = CalibratedSalts.Start[row + 1];
        var t = CalibratedSalts.Celsius[from..to];
        var m = CalibratedSalts.MolPerKg[from..to];
        if (celsius < t[0] - BeyondTableCelsius || celsius > t[^1] + BeyondTableCelsius) return null;
        if (t.Length == 1) return m[0];
        var i = 0;
        while (i < t.Length - 2 && celsius > t[i + 1]) i++;
        return m[i] * Math.Pow(m[i + 1] / m[i], (celsius - t[i]) / (t[i + 1] - t[i]));
    }

    private static double? ProductIndex(Solid solid, ComponentTotals totals, double handbook)
    {
        double index = 0;
        foreach (var (component, n) in solid.Terms)
        {
            if (component == Components.Hydrogen) return null;
            if (component == Components.Water) continue;
            // In the pure solution one formula unit brings n of each component.
            index += n * Math.Log10(totals.MolPerKg[component] / (n * handbook));
        }
        return index;
    }
}
