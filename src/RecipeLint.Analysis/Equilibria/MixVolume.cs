using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>Volumes of mixes given by component names, and of solved solutions.</summary>
internal static class MixVolume
{
    /// <summary>Molar masses of what the volume tables do not know.</summary>
    private static readonly Lazy<Dictionary<string, double>> GramsPerMole = new(() =>
        SolutionComponent.Known
            .Where(c => c.IsInert && c.Formula is not null)
            .ToDictionary(c => SpeciesOf(c.Name), c => c.Formula!.MolarMass.GramsPerMole, StringComparer.Ordinal));

    private static readonly BoundVolumes Bound = new();

    /// <summary>kg of water in a litre at 20 °C; null when the solutes leave no room.</summary>
    public static double? KilogramsWaterPerLitre(ComponentMoles molesPerLitre)
    {
        var (names, amounts) = Split(molesPerLitre);
        return Bound.To(names, GramsPerMole.Value).KilogramsWaterPerLitre(amounts, SolutionMix.FilledAtCelsius);
    }

    /// <summary>Litres that 1 kg of water with these solutes (mol per kg) fills; null when there is no such solution.</summary>
    public static double? LitresPerKilogramWater(ComponentMoles molality, double celsius)
    {
        var (names, amounts) = Split(molality);
        var state = Bound.To(names, GramsPerMole.Value).Evaluate(amounts, celsius);
        return state.IsGiven ? state.LitresPerKgWater : null;
    }

    /// <summary>Litres that 1 kg of water with its solved species fills; null when there is no such solution.</summary>
    public static double? LitresPerKilogramWater(Equilibrium state, double celsius)
    {
        var names = new string[state.Species.Count];
        var amounts = new double[names.Length];
        for (var i = 0; i < names.Length; i++)
        {
            (names[i], amounts[i]) = (SpeciesOf(state.Species[i].Name), state.Species[i].MolPerKg);
        }

        var volume = Bound.To(names, GramsPerMole.Value).Evaluate(amounts, celsius);
        return volume.IsGiven ? volume.LitresPerKgWater : null;
    }

    /// <summary>Density of a solved solution at its own temperature, with the reasons for doubt.</summary>
    public static DensityResult Density(Equilibrium state) =>
        SolutionDensity.Of(Molalities(state), state.Celsius, GramsPerMole.Value);

    /// <summary>Species by the names the physical tables use, mol per kg of water.</summary>
    public static Dictionary<string, double> Molalities(Equilibrium state)
    {
        var result = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var species in state.Species)
        {
            // An ion without a name of its own conducts by its charge, which the tables read from the name.
            var name = species.Name == SolutionMix.Unmeasured ? species.Name + (species.Charge > 0 ? "+" : "-") : SpeciesOf(species.Name);
            result[name] = result.GetValueOrDefault(name) + species.MolPerKg;
        }

        return result;
    }

    private static (string[] Names, double[] Amounts) Split(ComponentMoles amounts)
    {
        var count = 0;
        foreach (var (_, value) in amounts)
        {
            count += value != 0 ? 1 : 0;
        }

        var (names, values) = (new string[count], new double[count]);
        var at = 0;
        foreach (var (name, value) in amounts)
        {
            if (value != 0)
            {
                (names[at], values[at]) = name == Component.Hydrogen && value < 0 ? ("OH-", -value) : (SpeciesOf(name), value);
                at++;
            }
        }

        return (names, values);
    }

    /// <summary>The physical tables write charges without a figure for one and know two neutral solutes by their names.</summary>
    private static string SpeciesOf(string component)
    {
        var name = component.StartsWith(SolutionComponent.InertPrefix, StringComparison.Ordinal)
            ? component[SolutionComponent.InertPrefix.Length..]
            : component;
        return name switch
        {
            "urea" => "Urea",
            "sucrose" => "Sucrose",
            _ when name.EndsWith("+1", StringComparison.Ordinal) || name.EndsWith("-1", StringComparison.Ordinal) => name[..^1],
            _ => name,
        };
    }
}
