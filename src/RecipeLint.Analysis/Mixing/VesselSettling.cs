using System.Collections.Immutable;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using Components = RecipeLint.Analysis.Solutions.Components;

namespace RecipeLint.Analysis.Mixing;

/// <summary>The equilibrium of a vessel, with what earlier steps dropped and the solution cannot take up in time. Pure.</summary>
internal static class VesselSettling
{
    private const string WaterComponent = "H2O";

    /// <summary>Iron(II) below this is none, mol per kg of water.</summary>
    private const double NoIron = 1e-9;

    /// <summary>Nothing locked.</summary>
    public static ImmutableSortedDictionary<string, double> NothingLocked { get; } =
        ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);

    /// <summary>The state of a vessel.</summary>
    /// <param name="locked">Moles of solids, by name, that formed earlier and dissolve again only slowly.</param>
    /// <param name="startFrom">A similar solution to begin the iteration at.</param>
    /// <param name="inTime">False to wait for all that falls out in the end; true for what forms within the minutes of mixing.</param>
    public static MixingState Settle(
        VesselContents contents, ImmutableSortedDictionary<string, double> locked, double celsius, bool inTime = true, Equilibrium? startFrom = null)
    {
        var at = new Temperature(Math.Clamp(celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius));
        var (moles, water) = Dissolved(contents, locked);
        var lying = locked.Where(l => l.Value > 0).Select(l => Lying(l.Key, l.Value)).ToList();
        if (water <= 0 || !moles.Any(m => m.Key != Components.Hydrogen && m.Value > 0))
        {
            return new MixingState { At = at, IsEmpty = true, Solids = lying };
        }

        var mix = SolutionMix.InWater(moles, new Mass(water));
        var input = mix.Input(at.Celsius) with { StartFrom = startFrom };
        var clear = mix.Failure is null ? EquilibriumSolver.Product.Solve(input) : null;
        if (clear is not { Converged: true })
        {
            return Failed(at, mix.Failure ?? clear!.Failure!, lying);
        }

        var salts = SaltVerdicts.Of(input, clear);
        var allowed = clear.Solids.Where(s => MayForm(s, contents, locked, salts, inTime)).Select(s => s.Solid).ToList();
        var settled = allowed.Count == 0 ? null : EquilibriumSolver.Product.Precipitate(input with { StartFrom = clear }, allowed);
        if (settled is { Converged: false })
        {
            return Failed(at, settled.Failure!, lying);
        }

        var solids = new List<VesselSolid>();
        foreach (var (solid, molPerKg) in Formed(settled, salts, mix.Totals))
        {
            solids.Add(Add(contents, solid, clear.SaturationIndex(solid.Name) ?? 0, molPerKg * water / 1000, locked.GetValueOrDefault(solid.Name)));
        }

        solids.AddRange(lying.Where(l => solids.All(s => s.Name != l.Name)));
        solids.AddRange(BeyondTheConstants(contents, at.Celsius));
        var solution = settled?.Final ?? clear;
        var air = Oxidised(solution, mix, at.Celsius, water);
        return new MixingState
        {
            At = at,
            Ph = solution.Ph,
            IonicStrengthMolPerKg = solution.IonicStrength,
            Solids = [.. solids.OrderByDescending(s => s.Mass).ThenBy(s => s.Name, StringComparer.Ordinal)],
            PhInAir = air.Ph,
            IronOxidised = air.Share,
            Rust = air.Rust,
            Validity = clear.Validity,
            Clear = clear,
            Solution = solution,
        };
    }

    /// <summary>What a state adds to the locked solids.</summary>
    public static ImmutableSortedDictionary<string, double> LockedAfter(MixingState state, ImmutableSortedDictionary<string, double> locked)
    {
        foreach (var solid in state.Solids.Where(s => s.Solid is not null && s.Locked > Mass.Zero))
        {
            locked = locked.SetItem(solid.Name, solid.Locked.Grams / solid.Solid!.MolarMassGramsPerMole);
        }

        return locked;
    }

    /// <summary>What the solution has to itself: all moles and g of water, without those of the locked solids.</summary>
    public static (ImmutableSortedDictionary<string, double> Moles, double WaterGrams) Dissolved(
        VesselContents contents, ImmutableSortedDictionary<string, double> locked)
    {
        var water = contents.Solvent.Grams;
        if (locked.IsEmpty)
        {
            return (contents.Moles, water);
        }

        var moles = contents.Moles.ToBuilder();
        foreach (var (name, amount) in locked)
        {
            foreach (var (component, count) in ConstantSet.Product.FindSolid(name)!.Composition)
            {
                if (component == WaterComponent)
                {
                    water -= count * amount * Water.GramsPerMol;
                    continue;
                }

                var left = moles.GetValueOrDefault(component) - (count * amount);
                moles[component] = component == Components.Hydrogen ? left : Math.Max(0, left);
            }
        }

        return (moles.ToImmutable(), water);
    }

    /// <summary>The solid put in as a salt whose own solid this is; null for a solid of parts that came with different salts.</summary>
    public static AdditionFacts? SaltOf(VesselContents contents, Solid solid)
    {
        var ions = solid.Composition.Where(c => c.Key is not (WaterComponent or Components.Hydrogen)).ToList();
        return contents.Additions
            .Where(a => a.Substance.Form == PhysicalForm.Solid && !a.ThroughAliquot && ions.All(i => a.ComponentMoles.GetValueOrDefault(i.Key) > 0))
            .Where(a => solid.Role == SolidRole.SolubleSalt || IsItself(a, ions))
            .OrderByDescending(a => a.Mass.Grams)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static bool IsItself(AdditionFacts addition, List<KeyValuePair<string, double>> ions)
    {
        var first = addition.ComponentMoles[ions[0].Key] / ions[0].Value;
        return addition.ComponentMoles.Count(c => c.Key != Components.Hydrogen && c.Value != 0) == ions.Count
            && ions.All(i => Math.Abs((addition.ComponentMoles[i.Key] / i.Value / first) - 1) < 0.01);
    }

    private static bool MayForm(
        SolidIndex s, VesselContents contents, ImmutableSortedDictionary<string, double> locked, IReadOnlyList<SaltVerdict> salts, bool inTime) =>
        s.Solid.Role switch
        {
            // A salt that lies there, or a seed of an earlier step, needs no supersaturation to start from.
            SolidRole.FormsReadily => s.Index > 0
                && !WaitsForTheAir(s.Solid, contents)
                && (!inTime || s.Index > Redissolving.Of(s.Solid).StartsAt || locked.ContainsKey(s.Solid.Name) || SaltOf(contents, s.Solid) is not null),
            SolidRole.SolubleSalt => StateSolver.Crystallises(s.Solid, salts),
            _ => false,
        };

    /// <summary>
    /// The acid of EDTA crystallises slower than the air oxidises iron(II) in its hold, and iron(III) is held in stronger acid: the classical
    /// iron stock of Murashige and Skoog (Physiol. Plant. 15 (1962) 473) is mixed from both at pH 2 to 3 and stays clear.
    /// </summary>
    internal static bool WaitsForTheAir(Solid solid, VesselContents contents) => solid.Name == "EDTA acid" && contents.Moles.GetValueOrDefault("Fe+2") > 0;

    private static IEnumerable<(Solid Solid, double MolPerKg)> Formed(PrecipitationResult? settled, IReadOnlyList<SaltVerdict> salts, ComponentTotals totals)
    {
        foreach (var deposit in settled?.Deposits ?? [])
        {
            yield return (deposit.Solid, deposit.MolPerKgInitialWater);
        }

        foreach (var (salt, molPerKg) in StateSolver.ByHandbook(salts, name => settled?.Formed(name) ?? 0, totals))
        {
            yield return (salt.Solid, molPerKg);
        }
    }

    private static VesselSolid Add(VesselContents contents, Solid solid, double index, double moles, double lockedMoles)
    {
        var salt = SaltOf(contents, solid);
        var all = new Mass((moles + lockedMoles) * solid.MolarMassGramsPerMole);

        // A salt that has not dissolved yet waits for more water; only what formed in the vessel is lost.
        return new VesselSolid(solid, salt?.Substance, index, all, salt is null && Redissolving.Of(solid).Slowly ? all : new Mass(lockedMoles * solid.MolarMassGramsPerMole));
    }

    private static VesselSolid Lying(string name, double moles)
    {
        var solid = ConstantSet.Product.FindSolid(name)!;
        var mass = new Mass(moles * solid.MolarMassGramsPerMole);
        return new VesselSolid(solid, null, 0, mass, mass);
    }

    /// <summary>Salts without a solid in the constants, by their handbook solubility in the water there.</summary>
    private static IEnumerable<VesselSolid> BeyondTheConstants(VesselContents contents, double celsius)
    {
        foreach (var same in contents.Additions.Where(a => a.Substance is { Form: PhysicalForm.Solid, Solubility: not null } && !a.ThroughAliquot).GroupBy(a => a.Substance.Id))
        {
            var substance = same.First().Substance;
            if (HandbookSolubility.GramsPer100GramsWater(substance, celsius) is { } solubility
                && same.Sum(VesselContents.PureGrams) - (solubility * contents.FreeWaterGrams / 100) is > 0 and var grams
                && !HasSolid(same.First()))
            {
                yield return new VesselSolid(null, substance, 0, new Mass(grams), Mass.Zero);
            }
        }
    }

    /// <summary>True when the constants know a solid of just these ions.</summary>
    private static bool HasSolid(AdditionFacts addition) =>
        ConstantSet.Product.Solids.Any(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt
            && s.Composition.Where(c => c.Key is not (WaterComponent or Components.Hydrogen)).ToList() is { Count: > 0 } ions
            && ions.All(i => addition.ComponentMoles.GetValueOrDefault(i.Key) > 0)
            && IsItself(addition, ions));

    /// <summary>The iron(II) that no chelate holds, and what the air makes of it until the next step.</summary>
    private static (double? Ph, double Share, Mass Rust) Oxidised(Equilibrium solution, SolutionMix mix, double celsius, double water)
    {
        if (mix.Totals["Fe+2"] < NoIron)
        {
            return default;
        }

        var free = MetalBook.Of(solution, 1).Metals.FirstOrDefault(m => m.Metal == "Fe+2")?.Unchelated.MolesPerLitre ?? 0;
        var open = EquilibriumSolver.Product.Solve(mix.Input(celsius, StateSolver.CarbonDioxideOfAirAtm) with { StartFrom = solution });
        if (free < NoIron || !open.Converged)
        {
            return default;
        }

        var share = FerrousOxidation.Share(open.Ph, FerrousOxidation.StandingMinutes);
        return (open.Ph, share, new Mass(share * free * water / 1000 * FerrousOxidation.RustGramsPerMole));
    }

    private static MixingState Failed(Temperature at, string why, IReadOnlyList<VesselSolid> lying) =>
        new() { At = at, Failure = why, Solids = lying, Validity = new Validity(Trust.OutOfRange, [why]) };
}
