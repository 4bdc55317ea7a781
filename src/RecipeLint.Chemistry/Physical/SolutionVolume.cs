using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Physical;

/// <summary>Volume and mass of the solution that holds 1 kg of water.</summary>
/// <param name="MlPerKgWater">Volume of the solution, mL per kg of water.</param>
/// <param name="GramsPerKgWater">Mass of the solution, water included, g per kg of water.</param>
/// <param name="IonicStrengthMolPerKg">Ionic strength with every pair taken apart, mol/kg: the one the volume fit is made for.</param>
public readonly record struct VolumeState(double MlPerKgWater, double GramsPerKgWater, double IonicStrengthMolPerKg)
{
    /// <summary>False when there is no answer: a molality that is negative or no number, or a temperature outside 0 to 100 °C.</summary>
    public bool IsGiven => MlPerKgWater > 0;

    /// <summary>Density in g/mL; 0 when not given.</summary>
    public double DensityGramsPerMl => IsGiven ? GramsPerKgWater / MlPerKgWater : 0;

    /// <summary>Multiply a molarity (mol/L) by this to get a molality (mol/kg water).</summary>
    public double LitresPerKgWater => MlPerKgWater / 1000;

    /// <summary>Mass of everything but water, as a share of the solution (0 to 1).</summary>
    public double DissolvedMassFraction => IsGiven ? 1 - (1000 / GramsPerKgWater) : 0;
}

/// <summary>
/// Volume and density of an aqueous solution from apparent molar volumes, bound once to a list of species.
/// Ion-additive: V per kg of water = 1000/ρ(t) + Σ mᵢ·(vᵢ + (zᵢ²/2)·1.83·√I/(1+√I) + bᵢ·I + drift), see volumes.json for
/// the sources. Within 0.5 % of the CRC Handbook at 20 °C for its solutes up to 20 mass %; meant for 0 to 45 °C.
/// A complex counts as the parts it is built from, because the fit took every salt as free ions.
/// Immutable; safe to share between threads.
/// </summary>
public sealed class SolutionVolume
{
    /// <summary>Temperatures the model was checked for, °C.</summary>
    public const double MinCheckedTemperatureC = 0, MaxCheckedTemperatureC = 45;

    /// <summary>Share of dissolved mass up to which the fit holds (0 to 1).</summary>
    public const double MaxCheckedMassFraction = 0.25;

    /// <summary>Room that a dissolved solid takes up where the volume of its ions is not measured, mL/g.</summary>
    public const double MillilitresPerGramUnmeasured = PhysicalConstants.MassRuleMlPerGram;

    private readonly string[] _species;
    private readonly Constituent[] _constituents;
    private readonly int[] _partStart;
    private readonly int[] _partIndex;
    private readonly double[] _partCount;
    private readonly bool[] _withoutVolume;

    private SolutionVolume(
        string[] species, Constituent[] constituents, int[] partStart, int[] partIndex, double[] partCount, bool[] withoutVolume) =>
        (_species, _constituents, _partStart, _partIndex, _partCount, _withoutVolume) =
            (species, constituents, partStart, partIndex, partCount, withoutVolume);

    /// <summary>The species, in the order molalities are given in.</summary>
    public IReadOnlyList<string> Species => _species;

    /// <summary>
    /// Species whose volume nobody measured: they count with 0.55 cm³ per gram, or with nothing at all when their molar mass is unknown
    /// too.
    /// </summary>
    public IReadOnlyList<string> SpeciesWithoutVolume => [.. _species.Where((_, i) => _withoutVolume[i])];

    /// <summary>Binds the model to species. "H2O" is the solvent itself and is skipped wherever it stands.</summary>
    /// <param name="species">Names such as "K+", "SO4-2", "CaSO4", "Fe(EDTA)-", "Urea".</param>
    /// <param name="gramsPerMolOfOthers">Molar mass of species this table does not know, for the 0.55 cm³/g rule.</param>
    public static SolutionVolume For(IReadOnlyList<string> species, IReadOnlyDictionary<string, double>? gramsPerMolOfOthers = null)
    {
        ArgumentNullException.ThrowIfNull(species);
        var used = new List<Constituent>();
        var slots = new Dictionary<string, int>(StringComparer.Ordinal);
        var names = new string[species.Count];
        var start = new int[species.Count + 1];
        var index = new List<int>();
        var count = new List<double>();
        var without = new bool[species.Count];
        for (var i = 0; i < species.Count; i++)
        {
            var name = names[i] = species[i];
            start[i] = index.Count;
            if (name == Component.Water)
                continue;
            var found = VolumeTable.FindConstituent(name);
            var parts = found < 0 ? VolumeTable.PartsOf(name) : [];
            if (found >= 0)
            {
                Add(VolumeTable.Constituents[found], 1);
                without[i] = !VolumeTable.Constituents[found].Measured;
            }
            else if (!parts.IsEmpty)
            {
                for (var p = 0; p < parts.Length; p += 2)
                {
                    Add(VolumeTable.Constituents[parts[p]], parts[p + 1]);
                    without[i] |= !VolumeTable.Constituents[parts[p]].Measured;
                }
            }
            else
            {
                Add(Unmeasured(name, gramsPerMolOfOthers?.GetValueOrDefault(name) ?? 0), 1);
                without[i] = true;
            }
        }

        start[species.Count] = index.Count;
        return new SolutionVolume(names, [.. used], start, [.. index], [.. count], without);

        void Add(in Constituent constituent, double n)
        {
            if (!slots.TryGetValue(constituent.Name, out var slot))
            {
                slots.Add(constituent.Name, slot = used.Count);
                used.Add(constituent);
            }

            index.Add(slot);
            count.Add(n);
        }
    }

    /// <summary>A species of which only the molar mass is known, g/mol, or not even that.</summary>
    private static Constituent Unmeasured(string name, double gramsPerMole)
    {
        var grams = gramsPerMole > 0 && double.IsFinite(gramsPerMole) ? gramsPerMole : 0;
        return new Constituent(
            name, (sbyte)SpeciesName.Charge(name), grams, MillilitresPerGramUnmeasured * grams, false, 0, 0, 0, 0, 0, 0, false);
    }

    /// <summary>
    /// Volume and mass at <paramref name="temperatureC"/> of a solution with these molalities (mol per kg of water, in the order of
    /// <see cref="Species"/>).
    /// </summary>
    /// <returns>A state whose <see cref="VolumeState.IsGiven"/> is false when the input is no composition or the temperature lies outside 0
    /// to 100 °C.</returns>
    /// <exception cref="ArgumentException">The number of molalities differs from the number of species.</exception>
    public VolumeState Evaluate(ReadOnlySpan<double> molalities, double temperatureC)
    {
        if (molalities.Length != _species.Length)
            throw new ArgumentException("One molality for each species is needed.", nameof(molalities));
        if (!Water.InRange(temperatureC))
            return default;
        Span<double> amounts = _constituents.Length <= 256 ? stackalloc double[_constituents.Length] : new double[_constituents.Length];
        return Collect(molalities, amounts) ? Sum(amounts, temperatureC) : default;
    }

    /// <summary>
    /// Kilograms of water in 1 L of a solution with these molarities (mol/L, in the order of <see cref="Species"/>) at
    /// <paramref name="temperatureC"/>.
    /// </summary>
    /// <returns>Null when the input is no composition, the temperature lies outside 0 to 100 °C, or the solutes leave no room for
    /// water.</returns>
    public double? KilogramsWaterPerLitre(ReadOnlySpan<double> molarities, double temperatureC)
    {
        if (molarities.Length != _species.Length)
            throw new ArgumentException("One molarity for each species is needed.", nameof(molarities));
        if (!Water.InRange(temperatureC))
            return null;
        var molalities = new double[molarities.Length];

        // The litre that w kg of water and the solutes fill rises with w: bracket the 1 L and close in by bisection.
        double low = 0.02, high = 1.2;
        if (LitresFilled(molarities, molalities, low, temperatureC) is not (> 0 and <= 1)
            || LitresFilled(molarities, molalities, high, temperatureC) is not >= 1)
            return null;
        for (var step = 0; step < 60 && high - low > 1e-15; step++)
        {
            var middle = (low + high) / 2;
            if (LitresFilled(molarities, molalities, middle, temperatureC) < 1)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }

    private double LitresFilled(ReadOnlySpan<double> molarities, double[] molalities, double kilogramsWater, double temperatureC)
    {
        for (var i = 0; i < molalities.Length; i++)
            molalities[i] = molarities[i] / kilogramsWater;
        return Evaluate(molalities, temperatureC).LitresPerKgWater * kilogramsWater;
    }

    private bool Collect(ReadOnlySpan<double> molalities, Span<double> amounts)
    {
        amounts.Clear();
        for (var i = 0; i < molalities.Length; i++)
        {
            if (_partStart[i] == _partStart[i + 1])
                continue;
            if (!(molalities[i] >= 0) || double.IsInfinity(molalities[i]))
                return false;
            for (var p = _partStart[i]; p < _partStart[i + 1]; p++)
                amounts[_partIndex[p]] += _partCount[p] * molalities[i];
        }

        return true;
    }

    private VolumeState Sum(ReadOnlySpan<double> amounts, double temperatureC)
    {
        var ionicStrength = 0.0;
        for (var k = 0; k < amounts.Length; k++)
            ionicStrength += 0.5 * amounts[k] * _constituents[k].Charge * _constituents[k].Charge;
        var root = Math.Sqrt(ionicStrength);
        var debyeHueckel = PhysicalConstants.VolumeDebyeHueckelSlope * root / (1 + root);
        var damping = 1 / (1 + (PhysicalConstants.VolumeDriftDamping * ionicStrength));
        var dt = temperatureC - 20;

        double ml = 1000 / Water.Density(temperatureC), grams = 1000;
        for (var k = 0; k < amounts.Length; k++)
        {
            ref readonly var c = ref _constituents[k];
            var v = c.V20
                + (c.DebyeHueckel ? c.Charge * c.Charge / 2.0 * debyeHueckel : 0)
                + (c.B * Math.Min(ionicStrength, c.BUpToI))
                + (c.Slope * Math.Min(amounts[k], c.SlopeUpTo))
                + (((c.Drift1 * dt) + (c.Drift2 * dt * dt)) * damping);
            ml += amounts[k] * v;
            grams += amounts[k] * c.GramsPerMol;
        }

        // An absurd composition (thousands of moles of a shrinking ion) can empty the volume: then there is no answer.
        return ml > 0 && double.IsFinite(ml) && double.IsFinite(grams) ? new VolumeState(ml, grams, ionicStrength) : default;
    }
}
