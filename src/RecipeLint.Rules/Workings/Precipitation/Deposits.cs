using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Rules.Workings.Precipitation;

/// <summary>From what settles in moles to the grams a finding names and the share of a metal that goes with it.</summary>
internal static class Deposits
{
    private const int MostShown = 3;

    /// <summary>Writes the weight of a fallout.</summary>
    /// <returns>g/L of all of it, as printed.</returns>
    public static Term Weight(WorkingBuilder work, Fallout fallout)
    {
        var grams = new List<Term>();
        foreach (var deposit in fallout.Deposits.Take(MostShown))
        {
            var called = SolidOwners.Of(deposit.Solid)?.Called ?? deposit.Solid.Name;
            var moles = work.Given($"{called} that settles until the product is back at its limit", deposit.Amount.MolesPerLitre, "mol/L", Saturation.Engine);
            var mass = work.Given($"molar mass of {deposit.Solid.Formula}", deposit.Solid.MolarMassGramsPerMole, "g/mol", "atomic weights");
            grams.Add(work.Result($"{called} that settles", "moles × molar mass", moles * mass, "g/L"));
        }

        if (fallout.Deposits.Count > MostShown)
        {
            grams.Add(work.Given("further solids together", fallout.Deposits.Skip(MostShown).Sum(d => d.Mass.GramsPerLitre), "g/L", Saturation.Engine));
        }

        return grams.Count == 1 ? grams[0] : work.Result("deposit", "sum of the solids", Term.Sum(grams), "g/L");
    }

    /// <summary>Writes the share of a metal that leaves with a fallout.</summary>
    /// <returns>Per cent, as printed.</returns>
    public static Term Lost(WorkingBuilder work, Fallout fallout, string metal)
    {
        var ion = IonWords.Of(metal);
        var lost = work.Given(
            $"{ion} in the deposit", fallout.Deposits.Sum(d => d.Amount.MolesPerLitre * d.Solid.Composition.Where(c => c.Key == metal).Sum(c => c.Value)), "mol/L", Saturation.Engine);
        var left = work.Given($"{ion} that stays dissolved", fallout.State.Metals.FirstOrDefault(m => m.Metal == metal)?.Dissolved.MolesPerLitre ?? 0, "mol/L", Saturation.Engine);
        return work.Result($"{ion} that is lost", "100 × lost / (lost + dissolved)", 100 * lost / (lost + left), "%");
    }

    /// <summary>Where the model's doubt puts the verdict, as a sentence.</summary>
    public static string Doubt(Fallout fallout, double modelError) => fallout.HowSure(modelError) switch
    {
        Sureness.Clear => $"The index is known to ±{Say.Number(fallout.Doubt(modelError))}; it is past the limit by more than that.",
        Sureness.NearTheLimit => $"The index is known to ±{Say.Number(fallout.Doubt(modelError))}, so the limit lies within the doubt and the finding is a warning.",
        _ => $"This solid usually needs an index of {Say.Number(fallout.Owned.StartsAt)} to start without crystals already there, so the finding is a note.",
    };

    /// <summary>The first solids of a rule at the moment they are nearest to falling out; null when their ions are not all there.</summary>
    public static (SolutionState State, Solid Solid, double Index)? Nearest(
        IEnumerable<SolutionState> states, Func<Solid, bool> isOwn) =>
        states
            .Where(s => s.Clear is not null)
            .SelectMany(s => s.Clear!.Solids.Where(x => isOwn(x.Solid)).Select(x => ((SolutionState, Solid, double)?)(s, x.Solid, x.Index)))
            .OrderByDescending(x => Rounding.SixDigits(x!.Value.Item3))
            .FirstOrDefault();
}
