namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>One dissolved species at equilibrium.</summary>
/// <param name="Name">Component or complex, for example "Ca+2" or "Fe(EDTA)-".</param>
/// <param name="Charge">Charge number.</param>
/// <param name="MolPerKg">Molality, mol per kg of water.</param>
/// <param name="LogActivity">log10 of the activity on the molal scale.</param>
public readonly record struct SpeciesAmount(string Name, int Charge, double MolPerKg, double LogActivity);

/// <summary>How a solution stands to a solid.</summary>
/// <param name="Solid">The solid.</param>
/// <param name="Index">Saturation index: log10 of ion activity product over constant; 0 saturated, positive supersaturated.</param>
public readonly record struct SolidIndex(Solid Solid, double Index);

/// <summary>How far a result can be trusted.</summary>
public enum Trust
{
    /// <summary>Inside the range the constants and the activity model are good for.</summary>
    InRange,

    /// <summary>A number worth showing with its reason for doubt.</summary>
    Estimate,

    /// <summary>Too far outside: a verdict must not rest on activities.</summary>
    OutOfRange,
}

/// <summary>The verdict on the model's range with its reasons.</summary>
public sealed record Validity(Trust Trust, IReadOnlyList<string> Reasons);

/// <summary>
/// The equilibrium state of a solution. Values other than <see cref="Failure"/> mean nothing unless <see cref="Converged"/>.
/// </summary>
public sealed class Equilibrium
{
    private readonly SpeciesAmount[] _species;
    private readonly SolidIndex[] _solids;

    internal Equilibrium(string failure, int iterations)
    {
        Failure = failure;
        Iterations = iterations;
        _species = [];
        _solids = [];
        Validity = new Validity(Trust.OutOfRange, [failure]);
    }

    internal Equilibrium(SpeciesAmount[] species, SolidIndex[] solids, Validity validity, int iterations)
    {
        Converged = true;
        _species = species;
        _solids = solids;
        Validity = validity;
        Iterations = iterations;
    }

    /// <summary>
    /// The one question to the solver: what becomes of a solution under its conditions when some solids may form. Pure: the same question
    /// gives the same answer, and one that has none says why.
    /// </summary>
    /// <param name="input">What is dissolved (mol per kg of water), how warm it is (0 to 45 °C) and what decides its pH.</param>
    /// <param name="mayForm">What may fall out; nothing for the clear solution.</param>
    public static EquilibriumAnswer Ask(SolutionInput input, MayForm mayForm)
    {
        var solver = EquilibriumSolver.Product;
        var allowed = solver.Constants.Solids.Where(mayForm.Allows).ToList();
        var result = allowed.Count == 0 ? new PrecipitationResult(solver.Solve(input), input.Totals) : solver.Precipitate(input, allowed);
        return new EquilibriumAnswer(result, input.Celsius);
    }

    public bool Converged { get; }

    /// <summary>Why there is no result; null when there is one.</summary>
    public string? Failure { get; }

    public double Celsius { get; internal init; }

    /// <summary>-log10 of the activity of H+.</summary>
    public double Ph { get; internal init; }

    /// <summary>Ionic strength of the speciated solution, mol per kg of water.</summary>
    public double IonicStrength { get; internal init; }

    /// <summary>Activity of water, mole fraction scale.</summary>
    public double WaterActivity { get; internal init; }

    /// <summary>
    /// Molecules without a charge, mol per kg of water: undissociated acids and bases, urea, sugars; not pairs of ions, which the constants
    /// follow.
    /// </summary>
    public double UnchargedMolPerKg { get; internal init; }

    /// <summary>Those of them that are acids, mol per kg of water.</summary>
    public double UnchargedAcidMolPerKg { get; internal init; }

    /// <summary>Largest relative difference between a component's total and what the species add up to.</summary>
    public double MassResidual { get; internal init; }

    /// <summary>Sum of charges over the sum of their magnitudes; meaningful when the pH follows from charge balance.</summary>
    public double ChargeResidual { get; internal init; }

    /// <summary>Charge that is missing (positive: anions needed) in eq per kg of water; not zero when the pH was given.</summary>
    public double ChargeGapEquivalentsPerKg { get; internal init; }

    /// <summary>Newton steps taken.</summary>
    public int Iterations { get; }

    /// <summary>
    /// Newton steps that the whole question cost, those on the way from weaker solutions and to a second set of solids among them.
    /// </summary>
    public int Effort { get; internal init; }

    public Validity Validity { get; }

    /// <summary>Every dissolved species, components first, in table order; inert ions last.</summary>
    public IReadOnlyList<SpeciesAmount> Species => _species;

    /// <summary>Every solid whose components are present.</summary>
    public IReadOnlyList<SolidIndex> Solids => _solids;

    /// <summary>The same lists for loops that run over every state.</summary>
    public ReadOnlySpan<SpeciesAmount> AllSpecies => _species;

    /// <inheritdoc cref="AllSpecies"/>
    public ReadOnlySpan<SolidIndex> AllSolids => _solids;

    /// <summary>
    /// log10 of the share of each component, by number, that still has its protons: of phosphate what is not HPO4-2 or PO4-3, of ammonium
    /// what is not ammonia. 0 for what cannot lose any, and where a twentieth at most has lost them, as in the solutions of the pure salts.
    /// </summary>
    internal double[] LogProtonated { get; init; } = [];

    /// <summary>Share of a component that still has its protons, over 0.95 and at most 1: see <see cref="SaltVerdicts"/>.</summary>
    public double ProtonatedShare(string component) => Math.Pow(10, LogProtonated[Components.Find(component)]);

    /// <summary>mol per kg of water of a species; 0 when it takes no part.</summary>
    public double Molality(string species)
    {
        foreach (var s in _species) if (s.Name == species) return s.MolPerKg;
        return 0;
    }

    /// <summary>log10 activity of a species; null when it takes no part.</summary>
    public double? LogActivity(string species)
    {
        foreach (var s in _species) if (s.Name == species) return s.LogActivity;
        return null;
    }

    /// <summary>Saturation index of a solid; null when one of its components is absent.</summary>
    public double? SaturationIndex(string solid)
    {
        foreach (var s in _solids) if (s.Solid.Name == solid) return s.Index;
        return null;
    }
}
