using System.Globalization;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>What <see cref="Equilibrium.Ask"/> answers: the state with its residuals, its doubts and its sources.</summary>
public sealed class EquilibriumAnswer
{
    /// <summary>A species counts for the sources from this share of one of its components on.</summary>
    private const double NamedShare = 0.01;

    private const double ReferenceCelsius = 25;

    private readonly PrecipitationResult _result;
    private readonly double _celsius;

    internal EquilibriumAnswer(PrecipitationResult result, double celsius) => (_result, _celsius) = (result, celsius);

    /// <summary>Whether there is an answer.</summary>
    public bool Converged => _result.Converged;

    /// <summary>Why there is none, in one sentence; null when there is one.</summary>
    public string? Failure => _result.Failure;

    /// <summary>The clear, possibly supersaturated solution, per kg of water.</summary>
    public Equilibrium Clear => _result.Initial;

    /// <summary>The solution left over the deposit, per kg of the water left.</summary>
    public Equilibrium Left => _result.Final;

    /// <summary>What fell out, mol per kg of initial water, in table order; empty when nothing does.</summary>
    public IReadOnlyList<Deposit> Deposits => _result.Deposits;

    /// <summary>What is left dissolved, mol per kg of the water left.</summary>
    public ComponentTotals Remaining => _result.Remaining;

    /// <summary>kg of water left of 1 kg: hydrates take some, amorphous silica gives some back.</summary>
    public double WaterKg => _result.FinalWaterKg;

    /// <summary>mol of a solid per kg of initial water; 0 when it does not form.</summary>
    public double Formed(string solid) => _result.Formed(solid);

    /// <summary>Largest relative difference between what was put in of a component and what is dissolved and deposited of it.</summary>
    public double MassResidual => Left.MassResidual;

    /// <summary>Sum of charges over the sum of their magnitudes; 0 when the pH was given.</summary>
    public double ChargeResidual => Left.ChargeResidual;

    /// <summary>Why the figures may be off, one sentence each: range of the model, spread of constants, temperature not known.</summary>
    public IReadOnlyList<string> Doubts => !Converged ? [Failure!]
        : [.. Clear.Validity.Reasons.Concat(Left.Validity.Reasons).Concat(Deposits.SelectMany(d => DoubtsOf(d.Solid))).Distinct()];

    /// <summary>Where the constants come from: of each deposit everything that is said of it, and of the species that matter.</summary>
    public IReadOnlyList<string> Sources => !Converged ? []
        : [.. Deposits.SelectMany(d => d.Solid.Sources)
            .Concat(MainSpecies().Select(SpeciesComposition.SourceOf).OfType<string>())
            .Distinct()];

    private IEnumerable<string> DoubtsOf(Solid solid)
    {
        if (solid.Spread > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Published constants of {solid.Called} lie {solid.Spread:0.0#} log10 units apart ({solid.SpreadBecause}).");
        }

        if (!solid.TemperatureKnown && _celsius != ReferenceCelsius)
        {
            yield return $"How {solid.Called} changes with temperature is not known: its constant is that of 25 °C.";
        }
    }

    private IEnumerable<string> MainSpecies() => Left.Species
        .Where(s => SpeciesComposition.Of(s.Name).Any(c =>
            c.Key is not (Component.Hydrogen or Component.Water) && c.Value * s.MolPerKg > NamedShare * Remaining[c.Key]))
        .Select(s => s.Name);
}
