using System.Collections.Immutable;
using System.Globalization;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>What to look at.</summary>
/// <param name="Moment">What the state is called.</param>
/// <param name="At">Temperature.</param>
/// <param name="OpenToAir">At rest with the carbon dioxide of the air.</param>
/// <param name="Doubts">What already makes it an estimate.</param>
public sealed record StateRequest(StateMoment Moment, Temperature At, bool OpenToAir, IReadOnlyList<string> Doubts)
{
    /// <summary>
    /// The pH before anything falls out, set by an acid or alkali that is not named; null when it follows from what is put in.
    /// </summary>
    public double? SetPh { get; init; }

    /// <summary>A state of the same solution, or nearly, to begin the iteration at: it saves time and changes no answer.</summary>
    public Equilibrium? StartFrom { get; init; }
}

/// <summary>From a mix to its state at one temperature. Pure.</summary>
public static class StateSolver
{
    /// <summary>Outdoor air holds about 420 ppm carbon dioxide (NOAA Global Monitoring Laboratory, annual mean of 2023: 419 ppm; recalled).</summary>
    public const double CarbonDioxideOfAirAtm = 4.2e-4;

    /// <summary>Solids from this index on are listed as near saturation.</summary>
    public const double NearFromIndex = -0.5;

    /// <summary>Charge that nobody measured counts from this share of the ionic strength on.</summary>
    private const double UnmeasuredShare = 0.01;

    private const double TemperatureOfMeters = 25;

    /// <summary>mol per mol of ionic strength below which a species cannot be told from none by its conductivity.</summary>
    private const double NegligibleShare = 1e-7;

    /// <summary>The state of a mix; one that cannot be computed says why.</summary>
    public static SolutionState Solve(SolutionMix mix, StateRequest request)
    {
        var celsius = Math.Clamp(request.At.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);
        var empty = new SolutionState
        {
            Moment = request.Moment,
            Temperature = new Temperature(double.IsFinite(celsius) ? celsius : 0),
            OpenToAir = request.OpenToAir,
            KilogramsWaterPerLitre = mix.KilogramsWaterPerLitre,
        };
        if (mix.Failure is { } failure)
        {
            return Failed(empty, failure);
        }

        if (!double.IsFinite(celsius))
        {
            return Failed(empty, "The temperature is not known.");
        }

        var solver = EquilibriumSolver.Product;
        double? air = request.OpenToAir ? CarbonDioxideOfAirAtm : null;
        var input = mix.Input(celsius, air) with { FixedPh = request.SetPh, StartFrom = request.StartFrom };
        var clear = solver.Solve(input);
        if (!clear.Converged)
        {
            return Failed(empty, clear.Failure!);
        }

        var salts = SaltVerdicts.Of(input, clear);
        var allowed = solver.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily || Crystallises(s, salts));
        var settled = solver.Precipitate(input with { StartFrom = clear }, allowed);
        if (!settled.Converged)
        {
            return Failed(empty, settled.Failure!);
        }

        var deposits = Deposits(mix, clear, settled, salts);
        var left = new Residue(
            settled.Remaining,
            [.. mix.InertIons.Select(i => i with { MolPerKg = i.MolPerKg / settled.FinalWaterKg })],
            mix.KilogramsWaterPerLitre * settled.FinalWaterKg);
        var final = settled.Final;
        var metals = MetalBook.Of(final, left.KilogramsWaterPerLitre);
        return empty with
        {
            Ph = final.Ph,
            PhBeforeDeposit = clear.Ph,
            IonicStrengthMolPerKg = final.IonicStrength,
            WaterActivity = final.WaterActivity,
            Density = MixVolume.Density(final).GramsPerMl is { } density ? new Density(density) : null,
            Conductivity = ConductivityOf(final, left, air, request.SetPh is null ? null : final.Ph),
            OsmoticPotentialMPa = Osmosis.PotentialMPa(final.WaterActivity, celsius),
            Deposits = deposits,
            NearSaturation = Near(clear),
            Salts = salts,
            DissolvedMolesPerLitre = Dissolved(left),
            Chelates = metals.Shares,
            Metals = metals.Metals,
            Preservatives = PreservativeBook.Of(clear, final, left.KilogramsWaterPerLitre),
            CarbonateAlkalinity = new ChargeConcentration(Alkalinity.OfCarbonates(final) * left.KilogramsWaterPerLitre),
            Validity = Judge(mix, request, celsius, clear, deposits),
            Solution = final,
            Clear = clear,
        };
    }

    /// <summary>True for a soluble salt past saturation whose activity product can be trusted.</summary>
    internal static bool Crystallises(Solid solid, IReadOnlyList<SaltVerdict> salts) =>
        solid.Role == SolidRole.SolubleSalt && salts.Any(v => v.Solid == solid && v is { State: SaltState.Crystallises, CalibratedIndex: > 0 });

    /// <summary>Salts that crystallise although the activities do not say so, with mol per kg of water by the handbook alone.</summary>
    /// <param name="formed">mol per kg of a solid, by name, that the equilibrium gives already.</param>
    internal static IEnumerable<(SaltVerdict Salt, double MolPerKg)> ByHandbook(
        IReadOnlyList<SaltVerdict> salts, Func<string, double> formed, ComponentTotals totals)
    {
        foreach (var salt in salts.Where(v => v.State == SaltState.Crystallises && formed(v.Solid.Name) <= 0))
        {
            if (salt.ProductIndex is not null && HandbookDeposit.MolPerKg(salt, totals) is > 0 and var moles)
            {
                yield return (salt, moles);
            }
        }
    }

    private static SolutionState Failed(SolutionState empty, string why) =>
        empty with { Failure = why, Validity = new Validity(Trust.OutOfRange, [why]) };

    private static List<SolidDeposit> Deposits(SolutionMix mix, Equilibrium clear, PrecipitationResult settled, IReadOnlyList<SaltVerdict> salts)
    {
        var deposits = settled.Deposits
            .Select(d => Deposit(d.Solid, clear.SaturationIndex(d.Solid.Name) ?? 0, d.MolPerKgInitialWater, byHandbook: false))
            .ToList();
        foreach (var (salt, molPerKg) in ByHandbook(salts, settled.Formed, mix.Totals))
        {
            deposits.Add(Deposit(salt.Solid, salt.ProductIndex!.Value, molPerKg, byHandbook: true));
        }

        return [.. deposits.OrderByDescending(d => d.Mass).ThenBy(d => d.Solid.Name, StringComparer.Ordinal)];

        SolidDeposit Deposit(Solid solid, double index, double molPerKg, bool byHandbook)
        {
            var moles = molPerKg * mix.KilogramsWaterPerLitre;
            return new SolidDeposit(
                solid, index, new AmountConcentration(moles), new MassConcentration(moles * solid.MolarMassGramsPerMole), byHandbook);
        }
    }

    private static List<SolidStanding> Near(Equilibrium clear) =>
    [
        .. clear.Solids
            .Where(s => s.Index >= NearFromIndex && s.Solid.Role is (SolidRole.FormsReadily or SolidRole.FormsSlowly))
            .Select(s => new SolidStanding(s.Solid, s.Index))
            .OrderByDescending(s => s.Index)
            .ThenBy(s => s.Solid.Name, StringComparer.Ordinal),
    ];

    private static ImmutableSortedDictionary<string, double> Dissolved(Residue left) =>
        ComponentMoles.Of(
            left.Totals.Present
                .Concat(left.Inert.Select(i => KeyValuePair.Create(i.Name, i.MolPerKg)))
                .Select(p => KeyValuePair.Create(p.Key, p.Value * left.KilogramsWaterPerLitre)));

    /// <summary>Ion pairs shift with temperature, so what a meter shows at 25 °C needs the species at 25 °C.</summary>
    private static ConductivityAt25 ConductivityOf(Equilibrium final, Residue left, double? air, double? setPh)
    {
        // A little beyond the limit, because the ionic strength at 25 °C differs a little.
        if (final.IonicStrength > 1.1 * SolutionConductivity.MaxIonicStrength)
        {
            return new ConductivityAt25(null, [], string.Create(
                CultureInfo.InvariantCulture, $"the ionic strength is {final.IonicStrength:0.##} mol/kg; above 1 mol/kg no sum over ions gives a conductivity"));
        }

        var at25 = final;
        if (final.Celsius != TemperatureOfMeters)
        {
            at25 = EquilibriumSolver.Product.Solve(new SolutionInput
            {
                Totals = left.Totals,
                InertIons = left.Inert,
                Celsius = TemperatureOfMeters,
                CarbonDioxideAtm = air,
                FixedPh = setPh,
                StartFrom = final,
            });
        }

        if (!at25.Converged)
        {
            return new ConductivityAt25(null, [], "the species at 25 °C were not found");
        }

        // Traces carry nothing; leaving them out keeps them out of the reasons for doubt.
        var counted = MixVolume.Molalities(at25).Where(s => s.Value > NegligibleShare * at25.IonicStrength).ToDictionary(s => s.Key, s => s.Value, StringComparer.Ordinal);
        var result = SolutionConductivity.Of(counted, TemperatureOfMeters);
        return new ConductivityAt25(
            result.MilliSiemensPerCm is { } value ? new Conductivity(value) : null, result.EstimateBecause, result.NotGivenBecause);
    }

    private static Validity Judge(SolutionMix mix, StateRequest request, double celsius, Equilibrium clear, IReadOnlyList<SolidDeposit> deposits)
    {
        var trust = clear.Validity.Trust;
        var reasons = new List<string>(clear.Validity.Reasons);
        if (celsius != request.At.Celsius)
        {
            Doubt(string.Create(CultureInfo.InvariantCulture, $"Computed at {celsius:0} °C: {request.At.Celsius:0.##} °C is outside the range of the model."));
        }

        var unmeasured = Math.Abs(mix.UnmeasuredEquivalentsPerKg) / 2;
        if (unmeasured > UnmeasuredShare * clear.IonicStrength)
        {
            Doubt(string.Create(
                CultureInfo.InvariantCulture,
                $"The charges of what is put in do not close (a label or a water analysis leaves ions out): {100 * unmeasured / clear.IonicStrength:0.#} % of the ionic strength is an ion that is not named."));
        }

        if (deposits.Any(d => d.ByHandbook))
        {
            Doubt("How much of a soluble salt crystallises rests on its solubility in pure water.");
        }

        foreach (var doubt in request.Doubts)
        {
            Doubt(doubt);
        }

        return new Validity(trust, reasons);

        void Doubt(string reason)
        {
            reasons.Add(reason);
            trust = trust == Trust.InRange ? Trust.Estimate : trust;
        }
    }

    /// <summary>What is left over a deposit, mol per kg of the water left, and that water per litre as filled.</summary>
    private readonly record struct Residue(ComponentTotals Totals, IReadOnlyList<InertIon> Inert, double KilogramsWaterPerLitre);
}
