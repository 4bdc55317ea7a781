using System.Globalization;
using System.Runtime.CompilerServices;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using ModelComponents = RecipeLint.Chemistry.Equilibrium.Components;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// A solution as the solver wants it: mol per kg of water of every component, ions without constants, and the water a litre holds. Hydrogen
/// ions are not among the amounts: they follow from charge balance. Charge that what was put in leaves open (a label, a water analysis) is
/// closed by an unnamed ion, so that the acid and alkali put in stay what they are.
/// </summary>
public sealed record SolutionMix
{
    /// <summary>Name of the ion that closes an open charge.</summary>
    public const string Unmeasured = "unmeasured";

    /// <summary>What the bench fills volumes at, °C.</summary>
    public const double FilledAtCelsius = 20;

    /// <summary>Charge that rounding leaves, as a share of all charge put in.</summary>
    private const double RoundingShare = 1e-9;

    /// <summary>Less than a molecule per litre in effect: amounts below mean nothing (mol per kg of water).</summary>
    private const double Nothing = 1e-16;

    /// <summary>Acid or alkali above which its neutralisation changes the volume enough to count, mol/L.</summary>
    private const double AcidWorthCounting = 0.01;

    /// <summary>What is in a litre, hydrogen ions and inert ions included; mol/L at 20 °C, ordered by name.</summary>
    public required ComponentMoles MolesPerLitre { get; init; }

    /// <summary>kg of water in a litre of the solution at 20 °C; 0 when there is a failure.</summary>
    public double KilogramsWaterPerLitre { get; init; }

    /// <summary>mol per kg of water.</summary>
    public ComponentTotals Totals { get; init; } = new();

    /// <summary>mol per kg of water, the unmeasured ion included.</summary>
    public IReadOnlyList<InertIon> InertIons { get; init; } = [];

    /// <summary>Charge of the unmeasured ion, eq per kg of water; positive for a missing cation.</summary>
    public double UnmeasuredEquivalentsPerKg { get; init; }

    /// <summary>
    /// Whether the iron(II) put in counts as iron(III) in <see cref="Totals"/>; <see cref="MolesPerLitre"/> says what was put in.
    /// </summary>
    public bool IronOxidised { get; private init; }

    /// <summary>Share of the pyrophosphate put in that is counted as orthophosphate, 0 to 1.</summary>
    public double PyrophosphateTurned { get; private init; }

    /// <summary>Share of the sulfamate put in that is counted as ammonium and sulfate, 0 to 1.</summary>
    public double SulfamateTurned { get; private init; }

    /// <summary>Whether time has made something else of what was put in, in <see cref="Totals"/> alone.</summary>
    public bool IsTurned => PyrophosphateTurned > 0 || SulfamateTurned > 0;

    /// <summary>
    /// What the silicates put in bring of <see cref="MolesPerLitre"/>, their alkali included; empty without silicate, and where what came
    /// with it is not known. mol/L at 20 °C.
    /// </summary>
    public ComponentMoles SilicatesPerLitre { get; init; } = ComponentMoles.Empty;

    /// <summary>
    /// Substances of which nobody states the ions they set free, by their names: what they do to the pH is not in it. mol/L at 20 °C, of
    /// charge where not even a formula is known.
    /// </summary>
    public ComponentMoles UnreadPerLitre { get; init; } = ComponentMoles.Empty;

    /// <summary>Why there is no such solution; null when there is one.</summary>
    public string? Failure { get; init; }

    /// <summary>
    /// True while the silicate still stands in its own alkali: nothing else has lowered the pH at 20 °C by more than
    /// <see cref="Forming.PhTakenDown"/>.
    /// </summary>
    public bool StandsInItsSilicateAlkali =>
        SilicateIsHeld ?? (!SilicatesPerLitre.IsEmpty && Failure is null && Derived.Of(this, InItsAlkali).Value);

    /// <summary>Said of the whole where only part of what was put in is left in solution; null where it follows from the mix.</summary>
    internal bool? SilicateIsHeld { get; init; }

    internal Derived Derived { get; } = new();

    /// <summary>The mix of a whole batch.</summary>
    /// <param name="moles">Components in the batch, hydrogen ions and "inert:" names included.</param>
    /// <param name="volume">What the batch is filled up to at 20 °C.</param>
    public static SolutionMix Of(ComponentMoles moles, Volume volume)
    {
        if (!(volume.Litres > 0) || !double.IsFinite(volume.Litres))
        {
            return new SolutionMix { MolesPerLitre = ComponentMoles.Empty, Failure = "The volume of the solution is not known." };
        }

        var perLitre = moles.Over(volume.Litres);
        if (Refuse(perLitre) is { } refusal)
        {
            return new SolutionMix { MolesPerLitre = perLitre, Failure = refusal };
        }

        if (MixVolume.KilogramsWaterPerLitre(perLitre) is not { } water)
        {
            return new SolutionMix
            {
                MolesPerLitre = perLitre,
                Failure = "What is put in fills the volume by itself: no room is left for water.",
            };
        }

        var mix = Balanced(perLitre, water);

        // The fit of volumes takes salts as free ions; an acid that stays whole (acetic, phosphoric) fills another volume than its ions.
        for (var round = 0; round < 2 && Math.Abs(perLitre.GetValueOrDefault(Component.Hydrogen)) > AcidWorthCounting; round++)
        {
            var state = EquilibriumSolver.Product.Solve(mix.Input(FilledAtCelsius));
            if (!state.Converged || MixVolume.LitresPerKilogramWater(state, FilledAtCelsius) is not { } litres)
            {
                break;
            }

            mix = Balanced(perLitre, 1 / litres);
        }

        return mix;
    }

    /// <summary>The mix of components with a known mass of water; concentrations per litre follow from the volume model.</summary>
    public static SolutionMix InWater(ComponentMoles moles, Mass water)
    {
        var kilograms = water.Grams / 1000;
        if (!(kilograms > 0) || !double.IsFinite(kilograms))
        {
            return new SolutionMix { MolesPerLitre = ComponentMoles.Empty, Failure = "There is no water in it." };
        }

        if (Refuse(moles) is { } refusal)
        {
            return new SolutionMix { MolesPerLitre = ComponentMoles.Empty, Failure = refusal };
        }

        var perKilogram = moles.Over(kilograms);
        if (MixVolume.LitresPerKilogramWater(perKilogram, FilledAtCelsius) is not { } litres)
        {
            return new SolutionMix { MolesPerLitre = ComponentMoles.Empty, Failure = "The amounts are not those of a solution." };
        }

        var perLitre = perKilogram.Over(litres);
        return Balanced(perLitre, 1 / litres);
    }

    /// <summary>The same solution, diluted (below 1) or made stronger (above 1) at the same proportions.</summary>
    public SolutionMix Times(double factor)
    {
        var other = Of(MolesPerLitre, new Volume(1 / factor)) with
        {
            SilicatesPerLitre = SilicatesPerLitre.Times(factor),
            UnreadPerLitre = UnreadPerLitre.Times(factor),
        };
        other = PyrophosphateTurned > 0 ? other.WithPyrophosphateTurned(PyrophosphateTurned) : other;
        other = SulfamateTurned > 0 ? other.WithSulfamateTurned(SulfamateTurned) : other;
        return IronOxidised ? other.WithIronOxidised() : other;
    }

    /// <summary>
    /// The same solution after a share of its pyrophosphate has taken up water: two of orthophosphate from each. The charge balance
    /// follows.
    /// </summary>
    /// <param name="share">0 to 1.</param>
    public SolutionMix WithPyrophosphateTurned(double share)
    {
        var turned = share * Totals[Component.Pyrophosphate];
        return this with
        {
            Totals = Totals.With(Component.Pyrophosphate, Totals[Component.Pyrophosphate] - turned)
                .With(Component.Phosphate, Totals[Component.Phosphate] + (2 * turned)),
            PyrophosphateTurned = share,
        };
    }

    /// <summary>
    /// The same solution after a share of its sulfamate has taken up water: ammonium and sulfate, one of each. The charge balance follows.
    /// </summary>
    /// <param name="share">0 to 1.</param>
    public SolutionMix WithSulfamateTurned(double share)
    {
        var turned = share * Totals[Component.Sulfamate];
        return this with
        {
            Totals = Totals.With(Component.Sulfamate, Totals[Component.Sulfamate] - turned)
                .With(Component.Ammonium, Totals[Component.Ammonium] + turned)
                .With(Component.Sulfate, Totals[Component.Sulfate] + turned),
            SulfamateTurned = share,
        };
    }

    /// <summary>
    /// The same solution after the air has turned all iron(II) to iron(III). The hydrogen ion that takes up is left to the charge balance.
    /// </summary>
    public SolutionMix WithIronOxidised()
    {
        var ferrous = Totals[Component.FerrousIron];
        return ferrous > 0
            ? this with
            {
                Totals = Totals.With(Component.FerrousIron, 0)
                .With(Component.FerricIron, Totals[Component.FerricIron] + ferrous),
                IronOxidised = true
            }
            : this;
    }

    /// <summary>The same solution, with what is known of how its silicate was put in.</summary>
    /// <param name="contributions">What each thing put in brings to the whole; those without silicon are passed over. mol.</param>
    /// <param name="volume">What they were put into.</param>
    public SolutionMix WithSilicates(IEnumerable<ComponentMoles> contributions, Volume volume)
    {
        var silicates = contributions.Where(c => c.GetValueOrDefault(Component.Silicate) > 0).ToList();
        return silicates.Count == 0 ? this : this with { SilicatesPerLitre = ComponentMoles.Sum(silicates).Times(1 / volume.Litres) };
    }

    /// <summary>What the solver is asked.</summary>
    /// <param name="celsius">0 to 45 °C.</param>
    /// <param name="carbonDioxideAtm">Partial pressure when it stands open to air; null when closed.</param>
    public SolutionInput Input(double celsius, double? carbonDioxideAtm = null) =>
        new() { Totals = Totals, InertIons = InertIons, Celsius = celsius, CarbonDioxideAtm = carbonDioxideAtm };

    /// <summary>Whether the pH at 20 °C is that of the silicate by itself, or nearly.</summary>
    private static StrongBox<bool> InItsAlkali(SolutionMix mix) =>
        new(OwnPhOfSilicate(mix, EquilibriumSolver.Product) is { } own
            && EquilibriumSolver.Product.Solve(mix.Input(FilledAtCelsius)) is { Converged: true } now
            && now.Ph >= own - Forming.PhTakenDown);

    /// <summary>The pH that the silicates would give alone in as much solution, at 20 °C; null where it cannot be computed.</summary>
    private static double? OwnPhOfSilicate(SolutionMix mix, EquilibriumSolver solver) =>
        Of(mix.SilicatesPerLitre, new Volume(1)) is { Failure: null } alone
        && solver.Solve(alone.Input(FilledAtCelsius)) is { Converged: true } own
            ? own.Ph
            : null;

    /// <summary>
    /// The same mix with its pH set or held by an acid or alkali that is not named: whether its silicate still stands in its own alkali
    /// goes by that pH.
    /// </summary>
    internal SolutionMix WithPhSet(double? ph) =>
        ph is { } set && !SilicatesPerLitre.IsEmpty && Failure is null && StandsInItsSilicateAlkali
            ? this with
            {
                SilicateIsHeld = OwnPhOfSilicate(this, EquilibriumSolver.InSilicateAlkali) is { } own && set >= own - Forming.PhTakenDown,
            }
            : this;

    private static int BySize(KeyValuePair<string, double> a, KeyValuePair<string, double> b) =>
        Math.Abs(a.Value).CompareTo(Math.Abs(b.Value)) is not 0 and var size ? size : string.CompareOrdinal(a.Key, b.Key);

    private static SolutionMix Balanced(ComponentMoles perLitre, double kilogramsPerLitre)
    {
        var known = new List<KeyValuePair<string, double>>();
        var inert = new List<InertIon>();
        double open = 0, all = 0;
        KeyValuePair<string, double>[] smallestFirst = [.. perLitre];
        Array.Sort(smallestFirst, BySize);
        foreach (var (name, moles) in smallestFirst)
        {
            var molality = moles / kilogramsPerLitre;
            var charge = IonFacts.Charge(name);
            open += charge * molality;
            all += Math.Abs(charge * molality);
            if (name == Component.Hydrogen || Math.Abs(molality) < Nothing)
            {
                continue;
            }

            if (ModelComponents.Find(name) >= 0)
            {
                known.Add(KeyValuePair.Create(name, molality));
            }
            else
            {
                inert.Add(new InertIon(Plain(name), charge, molality));
            }
        }

        var closing = Math.Abs(open) > RoundingShare * all ? -open : 0;
        if (closing != 0)
        {
            inert.Add(new InertIon(Unmeasured, Math.Sign(closing), Math.Abs(closing)));
        }

        return new SolutionMix
        {
            MolesPerLitre = perLitre,
            KilogramsWaterPerLitre = kilogramsPerLitre,
            Totals = new ComponentTotals(known),
            InertIons = [.. inert.OrderBy(i => i.Name, StringComparer.Ordinal)],
            UnmeasuredEquivalentsPerKg = closing,
        };
    }

    private static string Plain(string name) =>
        name.StartsWith(SolutionComponent.InertPrefix, StringComparison.Ordinal) ? name[SolutionComponent.InertPrefix.Length..] : name;

    private static string? Refuse(ComponentMoles moles)
    {
        foreach (var (name, amount) in moles)
        {
            if (!double.IsFinite(amount) || (amount < 0 && name != Component.Hydrogen))
            {
                return string.Create(
                    CultureInfo.InvariantCulture, $"The amount of {Plain(name)} is not an amount of matter: {amount:0.###} mol.");
            }
        }

        return moles.Any(m => m.Key != Component.Hydrogen && m.Value > 0) ? null : "There is nothing in this solution.";
    }
}
