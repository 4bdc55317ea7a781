using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Procedure;

/// <summary>The equilibrium of what stands in the vessel.</summary>
internal static class BenchChemistry
{
    /// <summary>Partial pressure of carbon dioxide in outdoor air, atm.</summary>
    private const double AirCarbonDioxide = 4.2e-4;

    /// <summary>The contents as the solver wants them, at the bench temperature; null without water.</summary>
    /// <param name="extraWaterGrams">Pure water added to what stands there.</param>
    /// <param name="openToAir">True for water that has taken up the carbon dioxide of the air, as water on a bench has.</param>
    internal static SolutionInput? Input(VesselContents contents, double extraWaterGrams = 0, bool openToAir = false)
    {
        var kilograms = (contents.FreeWaterGrams + contents.CrystalWaterGrams + extraWaterGrams) / 1000;
        if (kilograms <= 0)
        {
            return null;
        }

        var known = new List<KeyValuePair<string, double>>();
        var inert = new List<InertIon>();
        foreach (var (name, moles) in contents.Moles)
        {
            var molality = moles / kilograms;
            if (molality < 1e-12 || name is "H+" or "H2O")
            {
                continue;
            }

            if (Components.Find(name) >= 0)
            {
                known.Add(KeyValuePair.Create(name, molality));
            }
            else if (SolutionComponent.TryParse(name, out var component))
            {
                inert.Add(new InertIon(name, component.Charge, molality));
            }
        }

        return new SolutionInput { Totals = new ComponentTotals(known), InertIons = inert, Celsius = VesselContents.BenchCelsius, CarbonDioxideAtm = openToAir ? AirCarbonDioxide : null };
    }

    /// <summary>The dissolved state; null where the solver has no answer a verdict may rest on.</summary>
    internal static Equilibrium? Solve(VesselContents contents, double extraWaterGrams = 0, bool openToAir = false) =>
        Input(contents, extraWaterGrams, openToAir) is { } input
        && EquilibriumSolver.Product.Solve(input) is { Converged: true } state
        && state.Validity.Trust != Trust.OutOfRange
            ? state
            : null;

    /// <summary>Solids that form while one looks on, and how far the solution is past each; worst first.</summary>
    internal static IEnumerable<SolidIndex> FormingReadily(Equilibrium state, Func<Solid, bool> fits) =>
        state.Solids.Where(s => s.Solid.Role == SolidRole.FormsReadily && fits(s.Solid)).OrderByDescending(s => s.Index).ThenBy(s => s.Solid.Name, StringComparer.Ordinal);

    internal static bool Holds(Solid solid, string component) => solid.Composition.Any(c => c.Key == component && c.Value > 0);

    /// <summary>g of one solid that falls out of the contents before they are clear again; 0 when the solver has no answer.</summary>
    internal static double GramsOf(VesselContents contents, Solid solid)
    {
        if (Input(contents) is not { } input || EquilibriumSolver.Product.Precipitate(input, [solid]) is not { Converged: true } result)
        {
            return 0;
        }

        return result.Deposits.Sum(d => d.GramsPerKgInitialWater) * (contents.FreeWaterGrams + contents.CrystalWaterGrams) / 1000;
    }
}
