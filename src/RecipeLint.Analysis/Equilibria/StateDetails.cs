using System.Globalization;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// What is derived of a solved state when it is first asked for: searches over hundreds of states need only what falls out. Threads that
/// ask at once may compute a figure twice and get the same.
/// </summary>
internal sealed class StateDetails(
    SolutionMix mix, StateRequest request, Equilibrium clear, Equilibrium final, StateResidue left, IReadOnlyList<SolidDeposit> deposits)
{
    /// <summary>Charge that nobody measured counts from this share of the ionic strength on.</summary>
    private const double UnmeasuredShare = 0.01;

    private const double TemperatureOfMeters = 25;

    private const string AirFirst = "The air is taken to have oxidised the iron by then.";

    /// <summary>mol per mol of ionic strength below which a species cannot be told from none by its conductivity.</summary>
    private const double NegligibleShare = 1e-7;

    /// <summary>
    /// Undissociated acid, mol/kg, from which a conductivity is an estimate and above which none is given: of phosphoric acid 5, 10 and 20
    /// % by mass conduct 31.5, 57 and 113 mS/cm (CRC Handbook, recalled) where the sum over ions gives a fifth to a half less.
    /// </summary>
    private const double SomeAcid = 0.1, MostAcid = 0.3;

    /// <summary>Molecules without a charge, mol/kg, above which no conductivity is given: they thicken the solution (no source).</summary>
    private const double MostUncharged = 2;

    private ConductivityAt25? _conductivity;
    private IReadOnlyList<SolidStanding>? _near;
    private ComponentMoles? _dissolved;
    private Holders? _holders;
    private IReadOnlyList<PreservativeAcid>? _preservatives;
    private Validity? _validity;
    private SolutionState? _oxidised;

    internal Derived Derived { get; } = new();

    public bool PhIsSet => request.SetPh is not null;

    public double KilogramsWaterLeftPerLitre => left.KilogramsWaterPerLitre;

    public ConductivityAt25 Conductivity => _conductivity ??= ConductivityOf();

    public Density? Density => DensityOf() is { } density ? new Density(density) : null;

    public double? OsmoticPotentialMPa => Osmosis.PotentialMPa(final.WaterActivity, clear.Celsius);

    public IReadOnlyList<SolidStanding> NearSaturation => _near ??= Near();

    public ComponentMoles DissolvedMolesPerLitre => _dissolved ??= Dissolved();

    public IReadOnlyList<ChelateShare> Chelates => Held.Shares;

    public IReadOnlyList<DissolvedMetal> Metals => Held.Metals;

    public IReadOnlyList<PreservativeAcid> Preservatives =>
        _preservatives ??= PreservativeBook.Of(clear, final, left.KilogramsWaterPerLitre);

    public ChargeConcentration CarbonateAlkalinity => new(Alkalinity.OfCarbonates(final) * left.KilogramsWaterPerLitre);

    public Validity Validity => _validity ??= Judge();

    public SolutionState OnceIronIsOxidised(SolutionState fresh) =>
        _oxidised ??= mix.WithIronOxidised() is var oxidised && ReferenceEquals(oxidised, mix)
        ? fresh
        : StateSolver.Solve(oxidised, request with { Doubts = [.. Validity.Reasons, AirFirst], StartFrom = null });

    private Holders Held => _holders ??= new Holders(MetalBook.Of(final, left.KilogramsWaterPerLitre));

    private double? DensityOf() => LyeDensity.IsStrong(mix)
        ? deposits.Count == 0 ? LyeDensity.GramsPerMl(mix, final.Celsius) : null
        : MixVolume.Density(final).GramsPerMl;

    private List<SolidStanding> Near() =>
    [
        .. clear.Solids
            .Where(s => s.Index >= StateSolver.NearFromIndex && s.Solid.Role is (SolidRole.FormsReadily or SolidRole.FormsSlowly))
            .Select(s => new SolidStanding(s.Solid, s.Index))
            .OrderByDescending(s => s.Index)
            .ThenBy(s => s.Solid.Name, StringComparer.Ordinal),
    ];

    private ComponentMoles Dissolved() =>
        ComponentMoles.Of(
            left.Totals.Present
                .Concat(left.Inert.Select(i => KeyValuePair.Create(i.Name, i.MolPerKg)))
                .Select(p => KeyValuePair.Create(p.Key, p.Value * left.KilogramsWaterPerLitre)));

    /// <summary>Ion pairs shift with temperature, so what a meter shows at 25 °C needs the species at 25 °C.</summary>
    private ConductivityAt25 ConductivityOf()
    {
        // A little beyond the limit, because the ionic strength at 25 °C differs a little.
        if (final.IonicStrength > 1.1 * SolutionConductivity.MaxIonicStrength)
        {
            return new ConductivityAt25(null, [], string.Create(
                CultureInfo.InvariantCulture,
                $"the ionic strength is {final.IonicStrength:0.##} mol/kg; above 1 mol/kg no sum over ions gives a conductivity"));
        }

        if (final.UnchargedAcidMolPerKg > MostAcid || final.UnchargedMolPerKg > MostUncharged)
        {
            return new ConductivityAt25(null, [], string.Create(
                CultureInfo.InvariantCulture,
                $"{final.UnchargedMolPerKg:0.##} mol/kg are molecules without a charge; what moves among so many no sum over ions gives"));
        }

        var at25 = final.Celsius == TemperatureOfMeters
            ? final
            : request.Solver.Solve(new SolutionInput
            {
                Totals = left.Totals,
                InertIons = left.Inert,
                Celsius = TemperatureOfMeters,
                CarbonDioxideAtm = request.AirAtm,
                FixedPh = request.SetPh is null ? null : final.Ph,
                StartFrom = final,
            });
        if (!at25.Converged)
        {
            return new ConductivityAt25(null, [], "the species at 25 °C were not found");
        }

        // Traces carry nothing; leaving them out keeps them out of the reasons for doubt.
        var counted = MixVolume.Molalities(at25)
            .Where(s => s.Value > NegligibleShare * at25.IonicStrength)
            .ToDictionary(s => s.Key, s => s.Value, StringComparer.Ordinal);
        var result = SolutionConductivity.Of(counted, TemperatureOfMeters);
        IReadOnlyList<string> doubts = final.UnchargedAcidMolPerKg > SomeAcid
            ? [.. result.EstimateBecause, "much of the acid is undissociated: the true figure may be a fifth higher"]
            : result.EstimateBecause;
        return new ConductivityAt25(
            result.MilliSiemensPerCm is { } value ? new Conductivity(value) : null, doubts, result.NotGivenBecause);
    }

    private Validity Judge()
    {
        var trust = final.Validity.Trust;
        var reasons = new List<string>(final.Validity.Reasons);
        if (trust != Trust.OutOfRange && clear.Validity.Trust == Trust.OutOfRange)
        {
            Doubt(string.Create(
                CultureInfo.InvariantCulture,
                $"Before anything falls out the ionic strength is {clear.IonicStrength:0.0} mol/kg: the indexes there are a guess, what "
                    + $"falls out and what is left are not."));
        }

        if (clear.Celsius != request.At.Celsius)
        {
            Doubt(string.Create(
                CultureInfo.InvariantCulture,
                $"Computed at {clear.Celsius:0} °C: {request.At.Celsius:0.##} °C is outside the range of the model."));
        }

        var unmeasured = Math.Abs(mix.UnmeasuredEquivalentsPerKg) / 2;
        if (unmeasured > UnmeasuredShare * clear.IonicStrength)
        {
            Doubt(string.Create(
                CultureInfo.InvariantCulture,
                $"The charges of what is put in do not close (a label or a water analysis leaves ions out): "
                    + $"{100 * unmeasured / clear.IonicStrength:0.#} % of the ionic strength is an ion that is not named."));
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

    private sealed record Holders(IReadOnlyList<ChelateShare> Shares, IReadOnlyList<DissolvedMetal> Metals)
    {
        public Holders((IReadOnlyList<ChelateShare> Shares, IReadOnlyList<DissolvedMetal> Metals) book)
            : this(book.Shares, book.Metals)
        {
        }
    }
}

/// <summary>What is left over a deposit, mol per kg of the water left, and that water per litre as filled.</summary>
internal sealed record StateResidue(ComponentTotals Totals, IReadOnlyList<InertIon> Inert, double KilogramsWaterPerLitre);
