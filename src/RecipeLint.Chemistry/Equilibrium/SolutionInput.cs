namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// An ion the model has no constants for. It counts for charge, ionic strength and water activity and takes part in nothing else.
/// </summary>
/// <param name="Name">Its name, for messages.</param>
/// <param name="Charge">Charge number; 0 for a neutral solute such as urea.</param>
/// <param name="MolPerKg">mol per kg of water.</param>
public readonly record struct InertIon(string Name, int Charge, double MolPerKg);

/// <summary>A solution to solve: what is in it, how warm it is, and what decides its pH.</summary>
public sealed record SolutionInput
{
    /// <summary>Lowest temperature the model covers, °C.</summary>
    public const double LowestCelsius = 0;

    /// <summary>Highest temperature the model covers, °C.</summary>
    public const double HighestCelsius = 45;

    /// <summary>
    /// Lowest and highest pH that mean anything in the model: beyond them it says no more than that it is an acid or a lye.
    /// </summary>
    public const double LowestPh = -2, HighestPh = 16;

    /// <summary>Amounts in mol per kg of water. Iron is given as Fe+2 or Fe+3: fresh or aged is the caller's decision.</summary>
    public required ComponentTotals Totals { get; init; }

    /// <summary>Temperature in °C, 0 to 45.</summary>
    public double Celsius { get; init; } = 25;

    /// <summary>The pH when it is given (-2 to 16); null when it follows from charge balance.</summary>
    public double? FixedPh { get; init; }

    /// <summary>
    /// Whether the given pH is held while solids form, by acid or alkali that follows; the charge gap of what is left says how much that
    /// takes. Else it is the pH before anything falls out.
    /// </summary>
    public bool HoldPh { get; init; }

    /// <summary>
    /// Partial pressure of carbon dioxide in atm when the solution is open to air (outdoors about 4.2e-4); null when closed.
    /// </summary>
    public double? CarbonDioxideAtm { get; init; }

    /// <summary>Solutes without constants.</summary>
    public IReadOnlyList<InertIon> InertIons { get; init; } = [];

    /// <summary>
    /// A state to begin the iteration at: the same or a similar solution at another temperature, concentration or pH. It saves time and
    /// never changes the answer beyond what the iteration leaves of it (residuals below 1e-10); one that does not help is passed over.
    /// Null begins anew.
    /// </summary>
    public Equilibrium? StartFrom { get; init; }

    /// <summary>
    /// pH the iteration begins at, for the tests that hold that it never changes the answer.
    /// </summary>
    internal double StartPh { get; init; } = 6;
}
