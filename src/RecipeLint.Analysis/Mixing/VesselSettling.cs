using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Mixing;

/// <summary>The equilibrium of a vessel, with what earlier steps dropped and the solution cannot take up in time. Pure.</summary>
internal static class VesselSettling
{
    private const string WaterComponent = Component.Water;

    /// <summary>Iron(II) below this is none, mol per kg of water.</summary>
    private const double NoIron = 1e-9;

    /// <summary>Nothing locked.</summary>
    public static ComponentMoles NothingLocked => ComponentMoles.Empty;

    /// <summary>The state of a vessel.</summary>
    /// <param name="locked">Moles of solids, by name, that formed earlier and dissolve again only slowly.</param>
    /// <param name="startFrom">A similar solution to begin the iteration at.</param>
    /// <param name="inTime">False to wait for all that falls out in the end; true for what forms within the minutes of mixing.</param>
    public static MixingState Settle(
        VesselContents contents, ComponentMoles locked, double celsius, bool inTime = true,
        Equilibrium? startFrom = null)
    {
        var at = new Temperature(Math.Clamp(celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius));
        var (dissolved, water) = Dissolved(contents, locked);
        var lying = locked.Where(l => l.Value > 0).Select(l => Lying(l.Key, l.Value)).ToList();
        if (water <= 0 || contents.FreeWaterGrams <= 0 || !dissolved.Any(m => m.Key != Component.Hydrogen && m.Value > 0))
        {
            return new MixingState { At = at, IsEmpty = true, Solids = lying };
        }

        var mix = MixOf(contents, dissolved, water);
        var state = StateSolver.Solve(mix, new StateRequest(StateMoment.Mixing, at, false, [])
        {
            StartFrom = startFrom,
            Narrow = s => MayForm(s, contents, locked, inTime),
        });
        if (state is not { Clear: { } clear, Solution: { } solution })
        {
            return Failed(at, state.Failure!, lying) with { Effort = state.Effort };
        }

        var solids = new List<VesselSolid>();
        foreach (var deposit in state.Deposits)
        {
            var moles = deposit.Amount.MolesPerLitre / mix.KilogramsWaterPerLitre * water / 1000;
            solids.Add(Add(
                contents, deposit.Solid, state.Index(deposit.Solid.Name) ?? 0, moles, locked.GetValueOrDefault(deposit.Solid.Name)));
        }

        solids.AddRange(lying.Where(l => solids.All(s => s.Name != l.Name)));
        solids.AddRange(BeyondTheConstants(contents, at.Celsius));
        var tells = !PhDoubt.In(contents.Additions, contents.Litres);
        var air = tells ? Oxidised(solution, mix, at.Celsius, water) : (Ph: null, Share: 0, Rust: Mass.Zero);
        return new MixingState
        {
            At = at,
            Ph = tells ? solution.Ph : null,
            IonicStrengthMolPerKg = solution.IonicStrength,
            Solids = [.. solids.OrderByDescending(s => s.Mass).ThenBy(s => s.Name, StringComparer.Ordinal)],
            PhInAir = air.Ph,
            IronOxidised = air.Share,
            Rust = air.Rust,
            Validity = clear.Validity,
            Clear = clear,
            Solution = solution,
            Effort = state.Effort,
        };
    }

    /// <summary>A vessel that is not followed so far: what lies in it is what earlier steps left.</summary>
    public static MixingState NotFollowed(ComponentMoles locked, double celsius)
    {
        var lying = locked.Where(l => l.Value > 0).Select(l => Lying(l.Key, l.Value)).ToList();
        return Failed(new Temperature(celsius), "The steps before it took all the work that is spent on one stock.", lying) with
        {
            IsNotFollowed = true,
        };
    }

    /// <summary>What a state adds to the locked solids.</summary>
    public static ComponentMoles LockedAfter(MixingState state, ComponentMoles locked)
    {
        foreach (var solid in state.Solids.Where(s => s.Solid is not null && s.Locked > Mass.Zero))
        {
            locked = locked.With(solid.Name, solid.Locked.Grams / solid.Solid!.MolarMassGramsPerMole);
        }

        return locked;
    }

    /// <summary>What the solution has to itself: all moles and g of water, without those of the locked solids.</summary>
    public static (ComponentMoles Moles, double WaterGrams) Dissolved(
        VesselContents contents, ComponentMoles locked)
    {
        var water = contents.Solvent.Grams;
        if (locked.IsEmpty)
        {
            return (contents.Moles, water);
        }

        var moles = contents.Moles;
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
                moles = moles.With(component, component == Component.Hydrogen ? left : Math.Max(0, left));
            }
        }

        return (moles, water);
    }

    /// <summary>The solid put in as a salt whose own solid this is; null for a solid of parts that came with different salts.</summary>
    public static AdditionFacts? SaltOf(VesselContents contents, Solid solid)
    {
        var ions = solid.Composition.Where(c => c.Key is not (WaterComponent or Component.Hydrogen)).ToList();
        return contents.Additions
            .Where(a => a.Substance.Form == PhysicalForm.Solid
                && !a.ThroughAliquot
                && ions.All(i => a.ComponentMoles.GetValueOrDefault(i.Key) > 0))
            .Where(a => solid.Role == SolidRole.SolubleSalt || IsItself(a, ions))
            .OrderByDescending(a => a.Mass.Grams)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static bool IsItself(AdditionFacts addition, List<KeyValuePair<string, double>> ions)
    {
        var first = addition.ComponentMoles[ions[0].Key] / ions[0].Value;
        return addition.ComponentMoles.Count(c => c.Key != Component.Hydrogen && c.Value != 0) == ions.Count
            && ions.All(i => Math.Abs((addition.ComponentMoles[i.Key] / i.Value / first) - 1) < 0.01);
    }

    /// <summary>A salt that lies there, or a seed of an earlier step, needs no supersaturation to start from.</summary>
    private static bool MayForm(SolidIndex s, VesselContents contents, ComponentMoles locked, bool inTime) =>
        s.Solid.Role != SolidRole.FormsReadily
        || (s.Index > 0
            && (!inTime
                || s.Index > Redissolving.Of(s.Solid).StartsAt
                || locked.ContainsKey(s.Solid.Name)
                || SaltOf(contents, s.Solid) is not null));

    /// <summary>The solution in a vessel, with what is known of its silicate.</summary>
    public static SolutionMix MixOf(VesselContents contents, ComponentMoles moles, double waterGrams)
    {
        var mix = SolutionMix.InWater(moles, new Mass(waterGrams));
        if (mix.Failure is not null || !contents.Additions.Any(a => a.ComponentMoles.GetValueOrDefault(Component.Silicate) > 0))
        {
            return mix;
        }

        // What lies at the bottom took its alkali with it: the silicate is judged by all that was put in.
        var whole = ReferenceEquals(moles, contents.Moles) ? mix : SolutionMix.InWater(contents.Moles, contents.Solvent);
        return whole.Failure is null
            ? mix with
            {
                SilicateIsHeld = whole
                    .WithSilicates(
                        contents.Additions.Select(a => a.ComponentMoles),
                        new Volume(contents.Solvent.Grams / 1000 / whole.KilogramsWaterPerLitre))
                    .StandsInItsSilicateAlkali,
            }
            : mix;
    }

    private static VesselSolid Add(VesselContents contents, Solid solid, double index, double moles, double lockedMoles)
    {
        var salt = SaltOf(contents, solid);
        var all = new Mass((moles + lockedMoles) * solid.MolarMassGramsPerMole);

        // A salt that has not dissolved yet waits for more water; only what formed in the vessel is lost.
        return new VesselSolid(
            solid,
            salt?.Substance,
            index,
            all,
            salt is null && Redissolving.Of(solid).Slowly ? all : new Mass(lockedMoles * solid.MolarMassGramsPerMole));
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
        foreach (var same in contents.Additions
            .Where(a => a.Substance is { Form: PhysicalForm.Solid, Solubility: not null } && !a.ThroughAliquot)
            .GroupBy(a => a.Substance.Id))
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
            && s.Composition.Where(c => c.Key is not (WaterComponent or Component.Hydrogen)).ToList() is { Count: > 0 } ions
            && ions.All(i => addition.ComponentMoles.GetValueOrDefault(i.Key) > 0)
            && IsItself(addition, ions));

    /// <summary>The iron(II) that no chelate holds, and what the air makes of it until the next step.</summary>
    private static (double? Ph, double Share, Mass Rust) Oxidised(Equilibrium solution, SolutionMix mix, double celsius, double water)
    {
        if (mix.Totals[Component.FerrousIron] < NoIron)
        {
            return default;
        }

        var free = MetalBook.Of(solution, 1).Metals.FirstOrDefault(m => m.Metal == Component.FerrousIron)?.Unchelated.MolesPerLitre ?? 0;
        var open =
            StateSolver.Clear(mix, new StateRequest(StateMoment.Mixing, new Temperature(celsius), true, []) { StartFrom = solution });
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
