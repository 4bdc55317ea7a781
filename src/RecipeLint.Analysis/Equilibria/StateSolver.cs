using System.Collections.Concurrent;
using RecipeLint.Chemistry.Equilibrium;
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

    /// <summary>The set pH is held while things fall out, by dosing an acid or alkali that is not named.</summary>
    public bool HoldPh { get; init; }

    /// <summary>A state of the same solution, or nearly, to begin the iteration at: it saves time and changes no answer.</summary>
    public Equilibrium? StartFrom { get; init; }

    /// <summary>Narrows what may form, such as to what does within minutes; null for all that <see cref="Forming"/> lets form.</summary>
    public Func<SolidIndex, bool>? Narrow { get; init; }

    /// <summary>A solid that may form too although it does so slowly; null for none.</summary>
    public Solid? Besides { get; init; }

    /// <summary>Whose constants are used; those that verdicts rest on unless a doubt of a constant is followed.</summary>
    public EquilibriumSolver Solver { get; init; } = EquilibriumSolver.Product;

    internal double? AirAtm => OpenToAir ? StateSolver.CarbonDioxideOfAirAtm : null;
}

/// <summary>
/// From a mix to its state at one temperature: the one question that is asked of the equilibrium engine about deposits. Pure.
/// </summary>
public static class StateSolver
{
    /// <summary>
    /// Outdoor air holds about 420 ppm carbon dioxide (NOAA Global Monitoring Laboratory, annual mean of 2023: 419 ppm; recalled).
    /// </summary>
    public const double CarbonDioxideOfAirAtm = 4.2e-4;

    /// <summary>Solids from this index on are listed as near saturation.</summary>
    public const double NearFromIndex = -0.5;

    /// <summary>The state of a mix at a temperature, closed to the air.</summary>
    public static SolutionState Solve(SolutionMix mix, double celsius, Equilibrium? startFrom = null) =>
        Solve(mix, new StateRequest(StateMoment.Mixing, new Temperature(celsius), false, []) { StartFrom = startFrom });

    /// <summary>
    /// As <see cref="Solve(SolutionMix, double, Equilibrium?)"/>, computed once for a mix and a temperature and kept beside the mix:
    /// several solids of one stock ask about the same temperatures.
    /// </summary>
    public static SolutionState At(SolutionMix mix, double celsius, Equilibrium? startFrom = null) =>
        mix.Derived.Of(mix, static _ => new ConcurrentDictionary<double, SolutionState>())
            .GetOrAdd(celsius, static (c, asked) => Solve(asked.mix, c, asked.startFrom), (mix, startFrom));

    /// <summary>The solution from which nothing has fallen out yet; one that cannot be computed says why.</summary>
    public static Equilibrium Clear(SolutionMix mix, StateRequest request) =>
        SolverOf(mix.WithPhSet(request.SetPh), request).Solve(mix.Input(
            Bounded(request.At.Celsius), request.AirAtm) with
        { FixedPh = request.SetPh, StartFrom = request.StartFrom });

    /// <summary>The state of a mix; one that cannot be computed says why.</summary>
    public static SolutionState Solve(SolutionMix mix, StateRequest request)
    {
        mix = mix.WithPhSet(request.SetPh);
        var celsius = Bounded(request.At.Celsius);
        var empty = new SolutionState
        {
            Mix = mix,
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

        var input =
            mix.Input(celsius, request.AirAtm) with { FixedPh = request.SetPh, HoldPh = request.HoldPh, StartFrom = request.StartFrom };
        var solver = SolverOf(mix, request);
        var clear = solver.Solve(input);
        empty = empty with { Effort = clear.Effort };
        if (!clear.Converged)
        {
            return Failed(empty, clear.Failure!);
        }

        var salts = SaltVerdicts.Of(input, clear);

        // Where nothing that may form is past its limit, the clear solution is the answer.
        PrecipitationResult? settled = null;
        if (MayForm(mix, request, clear, salts, pastItsLimit: true).Count > 0)
        {
            settled = solver.Precipitate(
                input with { StartFrom = clear }, MayForm(mix, request, clear, salts, pastItsLimit: false));
            empty = empty with { Effort = clear.Effort + settled.Effort };
            if (!settled.Converged)
            {
                return Failed(empty, settled.Failure!);
            }

            salts = SaltVerdicts.Of(input, clear, settled);
        }

        return With(empty, request, clear, settled, salts);
    }

    /// <summary>Silica in its own alkali is there as grains too; where a doubt of a constant is followed it is passed over.</summary>
    private static EquilibriumSolver SolverOf(SolutionMix mix, StateRequest request) =>
        ReferenceEquals(request.Solver, EquilibriumSolver.Product) && mix.StandsInItsSilicateAlkali
            ? EquilibriumSolver.InSilicateAlkali
            : request.Solver;

    /// <summary>What may form of a solution, or the first of it that is past its limit.</summary>
    /// <param name="salts">In the order of the solids, as <see cref="SaltVerdicts"/> gives them.</param>
    private static List<Solid> MayForm(
        SolutionMix mix, StateRequest request, Equilibrium clear, IReadOnlyList<SaltVerdict> salts, bool pastItsLimit)
    {
        var result = new List<Solid>();
        var salt = 0;
        foreach (var solid in clear.AllSolids)
        {
            var isSalt = salt < salts.Count && ReferenceEquals(salts[salt].Solid, solid.Solid);
            var index = isSalt ? salts[salt++].Index : solid.Index;
            if (pastItsLimit && !(index > 0))
            {
                continue;
            }

            if ((solid.Solid == request.Besides || Forming.May(mix, solid.Solid, isSalt)) && request.Narrow?.Invoke(solid) != false)
            {
                result.Add(solid.Solid);
                if (pastItsLimit)
                {
                    return result;
                }
            }
        }

        return result;
    }

    private static SolutionState With(
        SolutionState empty, StateRequest request, Equilibrium clear, PrecipitationResult? settled, IReadOnlyList<SaltVerdict> salts)
    {
        var mix = empty.Mix;
        var deposits = Deposits(mix, clear, settled, salts);
        var water = settled?.FinalWaterKg ?? 1;
        var left = new StateResidue(
            settled?.Remaining ?? mix.Totals,
            [.. mix.InertIons.Select(i => i with { MolPerKg = i.MolPerKg / water })],
            mix.KilogramsWaterPerLitre * water);
        var final = settled?.Final ?? clear;
        return empty with
        {
            Ph = final.Ph,
            PhBeforeDeposit = clear.Ph,
            IonicStrengthMolPerKg = final.IonicStrength,
            WaterActivity = final.WaterActivity,
            Deposits = deposits,
            Salts = salts,
            Solution = final,
            Clear = clear,
            Details = new StateDetails(mix, request, clear, final, left, deposits),
        };
    }

    private static double Bounded(double celsius) => Math.Clamp(celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);

    /// <summary>How far a solid is past saturation: its index, and for a soluble salt the two measures together.</summary>
    private static double Standing(Solid solid, double index, IReadOnlyList<SaltVerdict> salts)
    {
        foreach (var salt in salts)
        {
            if (salt.Solid == solid)
            {
                return salt.Index;
            }
        }

        return index;
    }

    private static SolutionState Failed(SolutionState empty, string why) =>
        empty with { Failure = why };

    private static List<SolidDeposit> Deposits(
        SolutionMix mix, Equilibrium clear, PrecipitationResult? settled, IReadOnlyList<SaltVerdict> salts)
    {
        var deposits = new List<SolidDeposit>();
        foreach (var d in settled?.Deposits ?? [])
        {
            var moles = d.MolPerKgInitialWater * mix.KilogramsWaterPerLitre;
            deposits.Add(new SolidDeposit(
                d.Solid,
                Standing(d.Solid, clear.SaturationIndex(d.Solid.Name) ?? 0, salts),
                new AmountConcentration(moles),
                new MassConcentration(moles * d.Solid.MolarMassGramsPerMole),
                salts.Any(s => s.Solid == d.Solid && s.ProductIndex is not null)
                    && settled!.Final.IonicStrength >= SaltVerdicts.HighestIonicStrength));
        }

        return deposits.Count < 2
            ? deposits
            : [.. deposits.OrderByDescending(d => d.Mass).ThenBy(d => d.Solid.Name, StringComparer.Ordinal)];
    }
}
