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
/// log10 of the activity product over the constant that returns the handbook solubility; null above the ionic strength it can be trusted
/// to, unless it is the only measure there is.
/// </param>
/// <param name="ProductIndex">
/// log10 of the product of total molalities over the same product in the saturated pure solution of the handbook; null for solids of acids
/// and bases, where the product of totals means nothing.
/// </param>
/// <param name="HandbookMolPerKg">Solubility of the pure salt at this temperature, mol per kg of water.</param>
/// <param name="CalibratedShare">Weight of the calibrated index, 0 to 1; the product index has the rest.</param>
public readonly record struct SaltVerdict(
    Solid Solid, SaltState State, double? CalibratedIndex, double? ProductIndex, double HandbookMolPerKg, double CalibratedShare)
{
    /// <summary>The two measures as one figure, weighted: 0 is saturated, positive above. What crystallises brings it to 0.</summary>
    public double Index => (CalibratedShare > 0 ? CalibratedShare * CalibratedIndex!.Value : 0)
        + (CalibratedShare < 1 ? (1 - CalibratedShare) * ProductIndex!.Value : 0);

    /// <summary>
    /// log10 by which the product of totals at saturation is known to lie above that of the pure solution, for what else is dissolved; the
    /// product index is counted from there.
    /// </summary>
    public double LogHeld { get; init; }

    /// <summary>
    /// The mean of the two measures above which it is close: nearest to saturation where it is alone in the water, as its handbook table
    /// was measured.
    /// </summary>
    public double CloseFrom { get; init; }

    /// <summary>It is close as well where either measure is above this.</summary>
    public double CloseByEither => Math.Max(SaltVerdicts.NearestByEither, CloseFrom);

    /// <summary>Where it may fall out as mixed crystals with its kin, also where neither would alone; else null.</summary>
    public MixedCrystal? Mixed { get; init; }

    /// <summary>
    /// Whether it crystallises beyond doubt: both measures say so, or the mean is past saturation by more than measured mixtures stray from
    /// it. Where the calibrated index has no full weight the mean has to be past by more, so that a stronger solution is never less sure.
    /// </summary>
    public bool IsSure => State == SaltState.Crystallises
        && (Index > SaltVerdicts.SureFrom
            || (CalibratedIndex > 0
                && (ProductIndex is null || (ProductIndex > 0 && Index > SaltVerdicts.SureFrom * (1 - 2 * CalibratedShare)))));
}

/// <summary>
/// Verdicts on soluble salts. In a mixture the calibrated index errs to the optimistic side and the product of totals to either, so both
/// are asked: what crystallises is what brings their mean to saturation, and silence is kept only when the mean is well below and neither
/// is near. Above an ionic strength of 4 mol/kg the calibrated index loses weight, at 6 it has none: one measure turns into the other
/// without a step.
/// </summary>
public static class SaltVerdicts
{
    /// <summary>Above this ionic strength, mol/kg, the calibrated index is not asked.</summary>
    public const double HighestIonicStrength = 6;

    /// <summary>Up to this ionic strength, mol/kg, both measures count alike.</summary>
    public const double AlikeUpTo = 4;

    /// <summary>
    /// From this mean on a salt crystallises whatever one measure alone says: as far as measured mixtures stray from the mean.
    /// </summary>
    internal const double SureFrom = 0.15;

    /// <summary>A salt of which either measure is above this is close.</summary>
    public const double NearestByEither = -0.10;

    /// <summary>
    /// Per ion of the formula: tables of one salt in water lie up to 10 % of its solubility apart (K2SO4 by the CRC Handbook and by Pabalan
    /// and Pitzer 1987, KNO3 at 0 °C by the CRC Handbook and by the IUPAC-NIST series 66).
    /// </summary>
    private const double TableDoubtPerIon = 0.04;

    /// <summary>Share of other substances, by moles, from which the doubt is that of the measured mixtures, which hold as much.</summary>
    private const double ShareOfMixtures = 0.5;

    // Measured two-salt saturated solutions (KNO3-KH2PO4, NH4H2PO4-KNO3) have the mean of the two measures between -0.25 and +0.03;
    // for the phosphates, whose index is the lower the more nitrate there is, "close" therefore begins further down.
    // Where sodium and potassium chloride saturate together (25 °C, Seidell & Linke) that of sylvite is at -0.16.
    private const double CloseFrom = -0.15, CloseFromDihydrogenPhosphate = -0.30, CloseFromSylvite = -0.20;

    // Beside magnesium nitrate, for each mol/kg, and up to how many.
    private const double CloserPerMol = 0.17, MostMagnesiumNitrate = 2.5;

    /// <summary>A verdict for every calibrated salt whose ions are present, in table order.</summary>
    /// <param name="input">The solution as given.</param>
    /// <param name="state">Its equilibrium from <see cref="EquilibriumSolver.Product"/>.</param>
    /// <param name="before">What the solution was put together from, where the state is what was left of it.</param>
    public static IReadOnlyList<SaltVerdict> Of(SolutionInput input, Equilibrium state, ComponentTotals? before = null) =>
        Of(input, state, before, null);

    /// <summary>
    /// The same of a solution from before anything fell out of it, where it is known what did. Far past saturation the model's clear
    /// solution is none that can be, and may take the protons of what falls out as an acid salt. Such a salt brings its protons along: of
    /// what fell out the share that has them counts at least as in what is left.
    /// </summary>
    /// <param name="input">The solution as given.</param>
    /// <param name="clear">Its equilibrium before anything fell out.</param>
    /// <param name="settled">What fell out of it and what is left.</param>
    public static IReadOnlyList<SaltVerdict> Of(SolutionInput input, Equilibrium clear, PrecipitationResult settled) =>
        Of(input, clear, null, settled);

    private static List<SaltVerdict> Of(
        SolutionInput input, Equilibrium state, ComponentTotals? before, PrecipitationResult? settled)
    {
        if (!state.Converged) return [];
        var count = 0;
        foreach (var (solid, _) in state.AllSolids) if (solid.CalibratedRow >= 0) count++;
        var result = new List<SaltVerdict>(count);
        var moles = MolesIn(input);
        foreach (var (solid, index) in state.AllSolids)
        {
            if (Solubility(solid, input.Celsius) is not { } handbook) continue;
            var ofTotals = IsOfTotals(solid) && !IsSetByTheAir(solid, input);
            var protonated = ofTotals && settled?.Formed(solid.Name) > 0
                ? AtLeast(state.LogProtonated, settled.Final.LogProtonated)
                : state.LogProtonated;
            var held = ofTotals ? SaltsInCompany.LogHeld(solid, input, before ?? input.Totals, protonated) : 0;
            double? product = ofTotals ? ProductIndex(solid, input.Totals, handbook, protonated) - held : null;
            var share = product is null ? 1 : CalibratedShare(state.IonicStrength);
            var verdict = new SaltVerdict(solid, SaltState.Clear, share > 0 ? index : null, product, handbook, share)
            {
                LogHeld = held,
                CloseFrom = CloseFromIndex(solid, input.Totals, moles),
            };
            result.Add(verdict with { State = StateOf(verdict) });
        }
        MixedCrystals.Mark(result, input.Totals);
        return result;
    }

    private static double[] AtLeast(double[] clear, double[] left)
    {
        var most = new double[clear.Length];
        for (var a = 0; a < most.Length; a++) most[a] = Math.Max(clear[a], left[a]);
        return most;
    }

    /// <summary>
    /// Weight of the calibrated index beside the product of totals: one half up to <see cref="AlikeUpTo"/>, none from
    /// <see cref="HighestIonicStrength"/> on, smooth between.
    /// </summary>
    /// <param name="ionic">mol/kg.</param>
    internal static double CalibratedShare(double ionic)
    {
        var u = Math.Clamp((ionic - AlikeUpTo) / (HighestIonicStrength - AlikeUpTo), 0, 1);
        return 0.5 * (1 - u * u * (3 - 2 * u));
    }

    /// <summary>Derivative of <see cref="CalibratedShare"/> by the ionic strength, kg/mol.</summary>
    internal static double CalibratedShareSlope(double ionic)
    {
        const double Width = HighestIonicStrength - AlikeUpTo;
        var u = Math.Clamp((ionic - AlikeUpTo) / Width, 0, 1);
        return -3 * u * (1 - u) / Width;
    }

    /// <summary>
    /// Whether the product of totals measures a solid: a soluble salt of ions that stay what they are. Of an acid, a base or a neutral
    /// molecule the total says little of how much is there in that form.
    /// </summary>
    internal static bool IsOfTotals(Solid solid)
    {
        if (solid.Role != SolidRole.SolubleSalt) return false;
        foreach (var (component, _) in solid.Terms) if (component == Components.Hydrogen) return false;
        return true;
    }

    private static bool IsSetByTheAir(Solid solid, SolutionInput input) =>
        input.CarbonDioxideAtm is not null && solid.Composition.Any(c => c.Key == Component.Carbonate);

    private static SaltState StateOf(SaltVerdict salt)
    {
        var mean = salt.Index;
        var highest = Math.Max(salt.CalibratedIndex ?? double.NegativeInfinity, salt.ProductIndex ?? double.NegativeInfinity);
        return mean > 0 ? SaltState.Crystallises
            : mean > salt.CloseFrom || highest > salt.CloseByEither ? SaltState.Close : SaltState.Clear;
    }

    /// <summary>
    /// Handbook solubility of a calibrated salt in pure water, mol per kg, at a temperature in °C; null where the handbook has none.
    /// Where it has only one temperature, <see cref="Solid.TemperatureKnown"/> is false and that value is given at every temperature.
    /// </summary>
    public static double? Solubility(Solid solid, double celsius) =>
        solid.CalibratedRow is >= 0 and var row ? Solubility(row, celsius) : null;

    /// <summary>Where a salt is close in this company: its table's doubt alone, growing to that of measured mixtures.</summary>
    private static double CloseFromIndex(Solid solid, ComponentTotals totals, double moles)
    {
        var inMixtures = CloseFromIndex(solid) - BesideMagnesiumNitrate(solid, totals);
        if (!solid.TemperatureKnown) return inMixtures;
        double formulas = double.PositiveInfinity, ions = 0;
        foreach (var (component, n) in solid.Terms)
        {
            if (component is Components.Hydrogen or Components.Water) continue;
            formulas = Math.Min(formulas, totals.MolPerKg[component] / n);
            ions += n;
        }

        var alone = Math.Max(inMixtures, -TableDoubtPerIon * ions);
        var others = Math.Clamp(1 - ions * formulas / moles, 0, ShareOfMixtures) / ShareOfMixtures;
        return alone + (inMixtures - alone) * others;
    }

    /// <summary>
    /// How much further down potassium nitrate is close beside magnesium nitrate: Pitzer's equations with the parameters of Pitzer and
    /// Mayorga 1973 (recalled; no terms of mixing) let 1 and 2 mol/kg of it hold 1.7 to 1.9 and 0.9 to 1.1 mol/kg at 25 °C, where the mean
    /// of the two measures is -0.2 and -0.45. Nothing measured is at hand, so it is called close, not full.
    /// </summary>
    private static double BesideMagnesiumNitrate(Solid solid, ComponentTotals totals) => solid.Name != "Niter" ? 0
        : CloserPerMol * Math.Min(MostMagnesiumNitrate, Math.Min(totals[Component.Magnesium], totals[Component.Nitrate] / 2));

    private static double MolesIn(SolutionInput input)
    {
        double sum = 0;
        foreach (var molality in input.Totals.MolPerKg) sum += molality;
        foreach (var ion in input.InertIons) sum += ion.MolPerKg;
        return sum;
    }

    /// <summary>The mean of the two measures above which a salt is close in whatever company.</summary>
    public static double CloseFromIndex(Solid solid) => solid.Name switch
    {
        "MKP" or "MAP" => CloseFromDihydrogenPhosphate,
        "Sylvite" => CloseFromSylvite,
        _ => CloseFrom,
    };

    private static double? Solubility(int row, double celsius)
    {
        int from = CalibratedSalts.Start[row], to = CalibratedSalts.Start[row + 1];
        var t = CalibratedSalts.Celsius[from..to];
        var m = CalibratedSalts.MolPerKg[from..to];
        // Of one temperature nothing follows for another: its constant stands still, and so does what the handbook says.
        if (t.Length == 1) return m[0];
        var i = 0;
        while (i < t.Length - 2 && celsius > t[i + 1]) i++;
        return m[i] * Math.Pow(m[i + 1] / m[i], (celsius - t[i]) / (t[i + 1] - t[i]));
    }

    private static double ProductIndex(Solid solid, ComponentTotals totals, double handbook, double[] logProtonated)
    {
        double index = 0;
        foreach (var (component, n) in solid.Terms)
        {
            if (component == Components.Water) continue;
            // In the pure solution one formula unit brings n of each component.
            index += n * (Math.Log10(totals.MolPerKg[component] / (n * handbook)) + logProtonated[component]);
        }
        return index;
    }
}
