using System.Globalization;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Physical;

/// <summary>Electrical conductivity of a solution, or the reason why none is given.</summary>
/// <param name="MilliSiemensPerCm">mS/cm (= dS/m) at the temperature asked for; null when not given.</param>
/// <param name="IonicStrengthMolPerKg">Ionic strength over the species as given, mol/kg.</param>
/// <param name="EstimateBecause">Reasons why the value is an estimate; empty when it is inside the checked range (then about ±3 %).</param>
/// <param name="NotGivenBecause">Why there is no value, or null.</param>
public sealed record ConductivityResult(
    double? MilliSiemensPerCm, double IonicStrengthMolPerKg, IReadOnlyList<string> EstimateBecause, string? NotGivenBecause);

/// <summary>
/// Conductivity as the sum of λ(t, I)·c over the ions of a speciated solution, bound once to a list of species; constants and
/// sources in conductivity.json. Checked at 0 to 45 °C and up to ionic strength 1 mol/kg; above that no number is given, because
/// no sum over ions holds there. Expects a speciation WITHOUT pairs of sodium, potassium or ammonium with sulfate (their effect
/// is inside λ of the fit) and WITH the sulfate pairs of the divalent metals. Immutable; safe to share between threads.
/// </summary>
public sealed class SolutionConductivity
{
    /// <summary>No value above this ionic strength, mol/kg.</summary>
    public const double MaxIonicStrength = 1;

    /// <summary>Temperatures the curves were fitted for, °C.</summary>
    public const double MinTemperatureC = 0, MaxTemperatureC = 45;

    private const double UnmeasuredShareToMention = 0.01;

    private readonly SolutionVolume _volume;
    private readonly int[] _charge;
    private readonly Carrier[] _carriers;

    private SolutionConductivity(SolutionVolume volume, int[] charge, Carrier[] carriers) =>
        (_volume, _charge, _carriers) = (volume, charge, carriers);

    private enum CarrierKind
    {
        Curve,
        Analog,
        Constant,
        ByCharge,
    }

    /// <summary>The species, in the order molalities are given in.</summary>
    public IReadOnlyList<string> Species => _volume.Species;

    /// <summary>Binds the model to species.</summary>
    public static SolutionConductivity For(IReadOnlyList<string> species) => For(SolutionVolume.For(species));

    /// <summary>Binds the model to the species of a volume model, which turns its molalities into mol/L.</summary>
    public static SolutionConductivity For(SolutionVolume volume)
    {
        ArgumentNullException.ThrowIfNull(volume);
        var species = volume.Species;
        var charge = new int[species.Count];
        var carriers = new List<Carrier>();
        for (var i = 0; i < species.Count; i++)
        {
            charge[i] = SpeciesName.Charge(species[i]);
            if (species[i] != Component.Water)
                AddCarriers(carriers, i, species[i], charge[i]);
        }

        return new SolutionConductivity(volume, charge, [.. carriers]);
    }

    /// <summary>
    /// Conductivity at <paramref name="temperatureC"/> (0 to 45 °C) for these molalities (mol/kg water, in the order of
    /// <see cref="Species"/>).
    /// </summary>
    /// <remarks>For EC at 25 °C pass the species as they are at 25 °C: pairs shift with temperature.</remarks>
    /// <exception cref="ArgumentException">The number of molalities differs from the number of species.</exception>
    public ConductivityResult Evaluate(ReadOnlySpan<double> molalities, double temperatureC)
    {
        if (molalities.Length != _charge.Length)
            throw new ArgumentException("One molality for each species is needed.", nameof(molalities));
        if (temperatureC is not (>= MinTemperatureC and <= MaxTemperatureC))
            return new ConductivityResult(null, 0, [], "ion conductivities are known here from 0 to 45 °C");
        var state = _volume.Evaluate(molalities, temperatureC);
        if (!state.IsGiven)
            return new ConductivityResult(null, 0, [], "the amounts are not those of a solution");

        var ionicStrength = 0.0;
        for (var i = 0; i < _charge.Length; i++)
            ionicStrength += 0.5 * molalities[i] * _charge[i] * _charge[i];
        if (ionicStrength > MaxIonicStrength * (1 + 1e-9))
        {
            return new ConductivityResult(null, ionicStrength, [], string.Create(
                CultureInfo.InvariantCulture,
                $"the ionic strength is {ionicStrength:0.##} mol/kg; above 1 mol/kg no sum over ions gives a conductivity"));
        }

        var root = Math.Sqrt(ionicStrength);
        double sum = 0, guessed = 0;
        foreach (ref readonly var carrier in _carriers.AsSpan())
        {
            var part = molalities[carrier.Species] * carrier.Count * carrier.LambdaAt(temperatureC, root);
            sum += part;
            if (carrier.Kind == CarrierKind.ByCharge)
                guessed += part;
        }

        var kappa = sum / state.LitresPerKgWater;
        return new ConductivityResult(kappa, ionicStrength, guessed > UnmeasuredShareToMention * sum ? [Guessed(molalities)] : [], null);
    }

    /// <summary>
    /// Conductivity at <paramref name="temperatureC"/> of a solution with these molalities (mol per kg of water) by species name.
    /// </summary>
    public static ConductivityResult Of(IReadOnlyDictionary<string, double> molality, double temperatureC)
    {
        ArgumentNullException.ThrowIfNull(molality);
        string[] names = [.. molality.Keys.Order(StringComparer.Ordinal)];
        return For(names).Evaluate([.. names.Select(n => molality[n])], temperatureC);
    }

    private string Guessed(ReadOnlySpan<double> molalities)
    {
        var names = new List<string>();
        foreach (var carrier in _carriers)
        {
            if (carrier.Kind == CarrierKind.ByCharge && molalities[carrier.Species] > 0)
                names.Add(Species[carrier.Species]);
        }

        return $"no measured conductivity for {string.Join(", ", names)}: taken by charge";
    }

    private static void AddCarriers(List<Carrier> carriers, int index, string name, int charge)
    {
        if (FindIon(name) is { } ion)
        {
            carriers.Add(ion with { Species = index });
            return;
        }

        foreach (var pair in ConductivityTable.SulfatePairs)
        {
            if (pair.Pair == name)
            {
                carriers.Add(new Carrier(index, 1, CarrierKind.Constant, default, pair.Lambda));
                return;
            }
        }

        if (AddDissociated(carriers, index, name) || AddThiosulfatePair(carriers, index, name) || charge == 0)
            return;
        ChargeConductivity best = default;
        foreach (var row in ConductivityTable.ByCharge)
        {
            if (Math.Sign(row.Charge) == Math.Sign(charge)
                && Math.Abs(row.Charge) <= Math.Abs(charge)
                && Math.Abs(row.Charge) > Math.Abs(best.Charge))
                best = row;
        }

        carriers.Add(new Carrier(index, 1, CarrierKind.ByCharge, ConductivityTable.Curves[best.Curve], best.Lambda25));
    }

    // Pairs of sodium and potassium with thiosulfate conduct as their ions do, as with sulfate, of which the fit has no such pairs: taken
    // by charge 1 % of Na2S2O3 conducted an eighth too little.
    private static bool AddThiosulfatePair(List<Carrier> carriers, int index, string name)
    {
        var metal = name switch { "Na(S2O3)-" => Component.Sodium, "K(S2O3)-" => Component.Potassium, _ => null };
        if (metal is null)
            return false;
        foreach (var ion in (string[])[metal, Component.Thiosulfate])
            carriers.Add(FindIon(ion)!.Value with { Species = index });
        return true;
    }

    // Chloride and nitrate pairs: the fit took these salts as fully dissociated, so the pair conducts as its ions.
    private static bool AddDissociated(List<Carrier> carriers, int index, string name)
    {
        var parts = VolumeTable.PartsOf(name);
        if (parts.IsEmpty)
            return false;
        for (var p = 0; p < parts.Length; p += 2)
        {
            var part = VolumeTable.Constituents[parts[p]];
            if (part.Name is not (Component.Chloride or Component.Nitrate)
                && (part.Charge <= 0 || part.Name == Component.Hydrogen || FindIon(part.Name) is null))
                return false;
        }

        for (var p = 0; p < parts.Length; p += 2)
            carriers.Add(FindIon(VolumeTable.Constituents[parts[p]].Name)!.Value with { Species = index, Count = parts[p + 1] });
        return true;
    }

    private static Carrier? FindIon(string name)
    {
        foreach (var curve in ConductivityTable.Curves)
        {
            if (curve.Ion == name)
                return new Carrier(0, 1, CarrierKind.Curve, curve, curve.Lambda25);
        }

        foreach (var analog in ConductivityTable.Analogs)
        {
            if (analog.Ion == name)
                return new Carrier(0, 1, CarrierKind.Analog, ConductivityTable.Curves[analog.Curve], analog.Lambda25);
        }

        return null;
    }

    private readonly record struct Carrier(int Species, int Count, CarrierKind Kind, IonCurve Curve, double Lambda25)
    {
        public double LambdaAt(double t, double rootI) => Kind switch
        {
            CarrierKind.Curve => Curve.At(t, rootI),
            CarrierKind.Constant => Lambda25,
            _ => Lambda25 * Curve.At(t, rootI) / Curve.Lambda25,
        };
    }
}
