using System.Globalization;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>How much of a reagent brings a solution to a pH, or why none does.</summary>
/// <param name="Mass">As bought; null when <paramref name="Reason"/> says why.</param>
/// <param name="Volume">Of a liquid reagent with a known density.</param>
/// <param name="PhBefore">Null when not even that could be computed.</param>
public sealed record ReagentDemand(
    Substance Reagent, double TargetPh, Mass? Mass, Volume? Volume, double? PhBefore, string? Reason)
{
    /// <summary>Element masses the reagent adds.</summary>
    public ElementTotals Elements { get; init; } = ElementTotals.Empty;

    /// <summary>Moles of components the reagent adds.</summary>
    public ComponentMoles ComponentMoles { get; init; } = Solutions.ComponentMoles.Empty;
}

/// <summary>Acid or alkali that a pH takes.</summary>
public static class PhDemand
{
    /// <summary>pH differences below this are none: better than any meter.</summary>
    private const double PhTolerance = 0.005;

    /// <summary>Reagent per kg of water beyond which it is no adjustment any more, g.</summary>
    private const double MostGramsPerKilogramWater = 1000;

    private const int MostSteps = 100;

    /// <summary>Of pure water near room temperature; half of the logarithm of its ion product.</summary>
    private const double NeutralPh = 7;

    /// <summary>
    /// The amount of a reagent that brings a solution to a pH. Solids that would form or dissolve on the way are not waited for: it is what
    /// the clear solution takes.
    /// </summary>
    /// <param name="moles">Components of the whole solution, hydrogen ions included.</param>
    /// <param name="water">Water in it.</param>
    /// <param name="reagent">Anything whose components are known; at its nominal strength.</param>
    /// <param name="at">0 to 45 °C.</param>
    /// <param name="openToAir">True when the solution comes to rest with the carbon dioxide of the air.</param>
    public static ReagentDemand Find(
        ComponentMoles moles, Mass water, Substance reagent, double targetPh, Temperature at,
        bool openToAir = false)
    {
        ReagentDemand No(string reason, double? before = null) => new(reagent, targetPh, null, null, before, reason);

        if (targetPh is not (>= 0 and <= 14))
        {
            return No(string.Create(CultureInfo.InvariantCulture, $"pH {targetPh:0.##} is outside 0 to 14."));
        }

        if (reagent.Dissolves.Count == 0)
        {
            return No($"What '{reagent.Id}' dissolves into is not known.");
        }

        var vessel = new Vessel(moles, water.Grams / 1000, reagent, at.Celsius, openToAir ? StateSolver.CarbonDioxideOfAirAtm : null);
        var before = vessel.Natural();
        if (before.Failure is { } failure)
        {
            return No(failure);
        }

        if (Math.Abs(before.Ph - targetPh) <= PhTolerance)
        {
            return Done(reagent, targetPh, 0, before.Ph);
        }

        var first = vessel.Excess(0, targetPh);
        var step = vessel.FirstStep(first.Equivalents);
        var next = vessel.Excess(step, targetPh);
        if ((first.Failure ?? next.Failure) is { } lost)
        {
            return No(lost, before.Ph);
        }

        if (Math.Abs(next.Equivalents) >= Math.Abs(first.Equivalents) && Math.Sign(next.Equivalents) == Math.Sign(first.Equivalents))
        {
            return No(Unreachable(reagent, targetPh, before.Ph), before.Ph);
        }

        var (low, high, stuck) = Bracket(vessel, targetPh, (0, first.Equivalents), (step, next.Equivalents));
        if (stuck is not null || Math.Sign(high.Excess) == Math.Sign(low.Excess))
        {
            return No(stuck ?? Unreachable(reagent, targetPh, before.Ph), before.Ph);
        }

        return Close(vessel, targetPh, low, high) is { } grams
            ? Done(reagent, targetPh, grams, before.Ph)
            : No("The amount was not found: the equilibrium on the way did not converge.", before.Ph);
    }

    /// <summary>Two amounts between which the excess changes its sign; it keeps its sign where no amount that is allowed does.</summary>
    private static ((double Grams, double Excess) Low, (double Grams, double Excess) High, string? Failure) Bracket(
        Vessel vessel, double ph, (double Grams, double Excess) low, (double Grams, double Excess) high)
    {
        var most = MostGramsPerKilogramWater * vessel.KilogramsWater;
        while (Math.Sign(high.Excess) == Math.Sign(low.Excess) && high.Grams < most)
        {
            low = high;
            var grams = Math.Min(high.Grams * 3, most);
            var point = vessel.Excess(grams, ph);
            if (point.Failure is { } stuck)
            {
                return (low, high, stuck);
            }

            high = (grams, point.Equivalents);
        }

        return (low, high, null);
    }

    /// <summary>Regula falsi with the weight of a stale end halved (Illinois), which needs no derivative and keeps the bracket.</summary>
    private static double? Close(Vessel vessel, double ph, (double Grams, double Excess) low, (double Grams, double Excess) high)
    {
        var side = 0;
        for (var i = 0; i < MostSteps && high.Grams - low.Grams > 1e-10 * high.Grams; i++)
        {
            var grams = ((low.Grams * high.Excess) - (high.Grams * low.Excess)) / (high.Excess - low.Excess);
            if (!(grams > low.Grams && grams < high.Grams))
            {
                break;
            }

            var point = vessel.Excess(grams, ph);
            if (point.Failure is not null)
            {
                return null;
            }

            if (point.Equivalents == 0)
            {
                return grams;
            }

            if (Math.Sign(point.Equivalents) == Math.Sign(high.Excess))
            {
                high = (grams, point.Equivalents);
                low = side == -1 ? (low.Grams, low.Excess / 2) : low;
                side = -1;
            }
            else
            {
                low = (grams, point.Equivalents);
                high = side == 1 ? (high.Grams, high.Excess / 2) : high;
                side = 1;
            }
        }

        return Math.Abs(low.Excess) < Math.Abs(high.Excess) ? low.Grams : high.Grams;
    }

    private static ReagentDemand Done(Substance reagent, double targetPh, double grams, double before)
    {
        var mass = new Mass(grams);
        return new ReagentDemand(
            reagent, targetPh, mass, reagent.Form == PhysicalForm.Liquid && reagent.Density is { } d ? mass / d.Value : null, before, null)
        {
            Elements = ElementTotals.Of(reagent.Content, mass),
            ComponentMoles =
                Solutions.ComponentMoles.Of(reagent.Dissolves.Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * grams))),
        };
    }

    private static string Unreachable(Substance reagent, double target, double before)
    {
        var from = PhDoubt.OffTheScale(before) ?? before.ToString("0.##", CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"pH {target:0.##} cannot be reached with '{reagent.Id}' from pH {from}.");
    }

    /// <summary>The solution with some reagent in it.</summary>
    private sealed class Vessel(
        ComponentMoles moles, double kilogramsWater, Substance reagent, double celsius, double? carbonDioxide)
    {
        public double KilogramsWater => kilogramsWater;

        /// <summary>Water that somebody brings to a pH before anything goes in, closed to the air.</summary>
        private bool IsPureWater => carbonDioxide is null && !moles.Any(m => m.Value > 0 && m.Key != Component.Hydrogen);

        public (double Ph, string? Failure) Natural()
        {
            // Pure water holds nothing that could decide a pH but itself.
            if (IsPureWater)
            {
                return (NeutralPh, null);
            }

            var (input, failure) = With(0);
            if (input is null)
            {
                return (0, failure);
            }

            var state = EquilibriumSolver.Product.Solve(input);
            return state.Converged ? (state.Ph, null) : (0, state.Failure);
        }

        /// <summary>Charge, in eq, that stays open at the pH: positive where anions are missing, so where acid is needed.</summary>
        public (double Equivalents, string? Failure) Excess(double grams, double ph)
        {
            if (grams == 0 && IsPureWater)
            {
                return ((Math.Pow(10, -ph) - Math.Pow(10, ph - (2 * NeutralPh))) * kilogramsWater, null);
            }

            var (input, failure) = With(grams);
            if (input is null)
            {
                return (0, failure);
            }

            var state = EquilibriumSolver.Product.Solve(input with { FixedPh = ph });
            return state.Converged ? (state.ChargeGapEquivalentsPerKg * Water(grams), null) : (0, state.Failure);
        }

        /// <summary>Grams that would close half the gap if each mole carried one charge.</summary>
        public double FirstStep(double equivalents)
        {
            var most = reagent.Dissolves.Max(y => y.MolesPerGram);
            return Math.Max(0.5 * Math.Abs(equivalents) / Math.Max(most, 1e-9), 1e-9 * kilogramsWater);
        }

        private double Water(double grams) =>
            kilogramsWater + (reagent.Form == PhysicalForm.Liquid ? grams * (1 - reagent.Strength.Value) / 1000 : 0);

        private (SolutionInput? Input, string? Failure) With(double grams)
        {
            var all = Solutions.ComponentMoles.Sum(
                [
                    moles,
                    Solutions.ComponentMoles.Of(reagent.Dissolves.Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * grams))),
                ]);
            if (grams == 0 && carbonDioxide is not null && !all.Any(m => m.Value > 0 && m.Key != Component.Hydrogen))
            {
                return (new SolutionInput { Totals = new ComponentTotals(), Celsius = celsius, CarbonDioxideAtm = carbonDioxide }, null);
            }

            var mix = SolutionMix.InWater(all, Mass.FromMilligrams(Water(grams) * 1e6));
            return mix.Failure is { } failure ? (null, failure) : (mix.Input(celsius, carbonDioxide), null);
        }
    }
}
