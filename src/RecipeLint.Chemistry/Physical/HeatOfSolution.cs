using System.Globalization;

namespace RecipeLint.Chemistry.Physical;

/// <summary>Enthalpy of solution of one substance.</summary>
/// <param name="Formula">Formula with its water of crystallisation after a dot: "Ca(NO3)2.4H2O".</param>
/// <param name="GramsPerMol">Molar mass, g/mol.</param>
/// <param name="AtInfiniteDilution">kJ/mol near 25 °C. Positive: the water cools. Negative: it warms.</param>
/// <param name="More">
/// kJ/mol by which it takes more at 0.14 mol/kg than at infinite dilution, where known: of sulfates of two charges it is much the same from
/// 0.05 to 2 mol/kg. 0 where it is not known.
/// </param>
/// <param name="CrystalWater">Moles of water per mole of formula, which join the solvent.</param>
/// <param name="Source">Where the value comes from.</param>
/// <param name="Recalled">True when the value was recalled and not read or derived.</param>
public sealed record HeatOfSolution(
    string Formula, double GramsPerMol, double AtInfiniteDilution, double More, int CrystalWater, string Source, bool Recalled)
{
    /// <summary>kJ/mol in much water, 0.14 mol/kg where that is known to matter. Positive: the water cools. Negative: it warms.</summary>
    public double KilojoulesPerMol => Math.Round(AtInfiniteDilution + More, 2);

    /// <summary>Every substance with a known heat.</summary>
    public static IReadOnlyList<HeatOfSolution> All => HeatTable.All;

    /// <summary>The heat of a substance by its formula; "·", "*" and "•" before the water are understood. Null when unknown.</summary>
    public static HeatOfSolution? Find(string formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var wanted = formula.Replace(" ", "", StringComparison.Ordinal).Replace('·', '.').Replace('*', '.').Replace('•', '.');
        foreach (var heat in HeatTable.All)
        {
            if (string.Equals(heat.Formula, wanted, StringComparison.Ordinal))
                return heat;
        }

        return null;
    }
}

/// <summary>Mass of a substance, by formula, that goes into the water.</summary>
public sealed record DissolvedMass(string Formula, double Grams);

/// <summary>What dissolving does to the temperature of a batch.</summary>
/// <param name="ChangeKelvin">Negative when the batch cools; null when not given.</param>
/// <param name="EndTemperatureC">Temperature right after dissolving, before the room warms it, °C.</param>
/// <param name="HeatTakenKilojoules">Heat the solid takes from the water; negative when it gives heat.</param>
/// <param name="EstimateBecause">Never empty: this is a bench estimate, and each reason says how far.</param>
/// <param name="NotGivenBecause">Why there is no value, or null.</param>
public sealed record BatchTemperature(
    double? ChangeKelvin, double? EndTemperatureC, double? HeatTakenKilojoules, IReadOnlyList<string> EstimateBecause,
    string? NotGivenBecause)
{
    /// <summary>
    /// Above this molality (mol/kg) the heat at great dilution overstates the change: a classic freezing mixture, one part ammonium
    /// nitrate to one part water, cools by 25.5 K where this gives more than twice as much.
    /// </summary>
    public const double MaxMolality = 2;

    /// <summary>J per g and K, at 20 °C (as in the data of this model).</summary>
    public const double WaterHeatCapacity = PhysicalConstants.WaterHeatCapacity;

    /// <summary>
    /// Temperature change when substances dissolve in water without exchange of heat. The heat is that at great dilution; the heat
    /// capacity is that of the water alone (crystal water included), which for salts is the solution's own within about 6 % up to
    /// 20 mass % (Laliberté 2009).
    /// </summary>
    /// <param name="substances">What is dissolved.</param>
    /// <param name="waterGrams">Water in the vessel, g, above zero.</param>
    /// <param name="startTemperatureC">Temperature of the water, 0 to 100 °C.</param>
    public static BatchTemperature AfterDissolving(IReadOnlyList<DissolvedMass> substances, double waterGrams, double startTemperatureC)
    {
        ArgumentNullException.ThrowIfNull(substances);
        if (!(waterGrams > 0) || double.IsInfinity(waterGrams))
            return NotGiven("there is no water to dissolve in");
        if (!Water.InRange(startTemperatureC))
            return NotGiven("the temperature lies outside 0 to 100 °C");

        double kilojoules = 0, solvent = waterGrams, mol = 0;
        var because = new List<string> { "heat at great dilution, no exchange with the room" };
        foreach (var (formula, grams) in substances)
        {
            if (!(grams >= 0) || double.IsInfinity(grams))
                return NotGiven($"the mass of {formula} is not a number of grams");
            if (HeatOfSolution.Find(formula) is not { } heat)
                return NotGiven($"no heat of solution is known for {formula}");
            var amount = grams / heat.GramsPerMol;
            mol += amount;
            kilojoules += amount * heat.KilojoulesPerMol;
            solvent += amount * heat.CrystalWater * Water.GramsPerMol;
            if (heat.Recalled)
                because.Add($"the heat of {heat.Formula} is recalled, not read");
        }

        var change = -1000 * kilojoules / (PhysicalConstants.WaterHeatCapacity * solvent);
        var end = startTemperatureC + change;
        if (!double.IsFinite(end))
            return NotGiven("the masses are not those of a batch");
        if (1000 * mol / solvent > MaxMolality)
            because.Add(string.Create(
                CultureInfo.InvariantCulture, $"above {MaxMolality:0} mol per kg of water the real change is smaller"));
        if (end is < 0 or > 100)
            because.Add("the water would freeze or boil first: dissolving stops before that");
        return new BatchTemperature(change, end, kilojoules, because, null);
    }

    private static BatchTemperature NotGiven(string because) => new(null, null, null, [], because);
}
