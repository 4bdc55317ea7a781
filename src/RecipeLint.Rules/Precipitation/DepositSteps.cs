using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>From what settles in moles to the grams a finding names and the share of a metal that goes with it.</summary>
internal static class DepositSteps
{
    private const int MostShown = 3;

    /// <summary>Writes the bars that a deposit has to pass, with the amounts they rest on.</summary>
    /// <param name="times">How far it is past the limit, as worked out above; null where that is no bar.</param>
    /// <returns>What the verdict turns on.</returns>
    public static Term Write(WorkingBuilder work, Verdict verdict, JudgedDeposit deposit, Term? times, RuleContext context)
    {
        Term? weight = null, share = null;
        foreach (var (test, check) in deposit.Tests.Zip(verdict.Checks))
        {
            switch (test.Bar)
            {
                case DepositBar.EnoughToSee:
                    weight = Weight(work, deposit);
                    work.Check(check, weight, work.Option("deposit from which a finding is given", DepositOptions.Visible, context));
                    break;
                case DepositBar.EnoughOfTheMetal:
                    share = Lost(work, deposit, deposit.Loss!.Value.Metal);
                    work.Check(check, share, work.Option("share that counts", DepositOptions.MetalShare, context));
                    break;
                default:
                    work.Check(check, times ?? Term.Of(test.Value), test.Limit);
                    break;
            }
        }

        return weight ?? share ?? times ?? Term.Of(deposit.GramsPerLitre);
    }

    /// <summary>Where the model's doubt puts the verdict, as a sentence.</summary>
    public static string Doubt(JudgedDeposit deposit) => deposit.Sureness switch
    {
        Sureness.Clear when deposit.InWeaker is { } weaker && deposit.Index <= deposit.Solid.StartsInStorage + deposit.Doubt =>
            $"The index is known to ±{Say.Number(deposit.Doubt)} in so strong a solution; diluted to an ionic strength of "
                + $"{Say.Number(Math.Round(weaker.State.Clear!.IonicStrength, 1))} mol/kg it is {Say.Number(weaker.Index)}, past the "
                + $"limit by more than the ±{Say.Number(weaker.Doubt)} it is known to there, and less water does not dissolve "
                + "what falls out.",
        Sureness.Clear => $"The index is known to ±{Say.Number(deposit.Doubt)}; it is past the limit by more than that.",
        Sureness.NearTheLimit =>
            $"The index is known to ±{Say.Number(deposit.Doubt)}, so the limit lies within the doubt and the finding is a warning.",
        _ => $"This solid usually needs an index of {Say.Number(deposit.Solid.StartsInStorage)} to start without crystals already there, "
            + "so the finding is a note.",
    };

    /// <summary>Writes the weight of a deposit.</summary>
    /// <returns>g/L of all of it, as printed.</returns>
    public static Term Weight(WorkingBuilder work, JudgedDeposit fallen)
    {
        var grams = new List<Term>();
        foreach (var deposit in fallen.Deposits.Take(MostShown))
        {
            var called = deposit.Solid.Called;
            var moles = work.Given(
                $"{called} that settles until the product is back at its limit", deposit.Amount.MolesPerLitre, "mol/L", Saturation.Engine);
            var mass = work.Given($"molar mass of {deposit.Solid.Formula}", deposit.Solid.MolarMassGramsPerMole, "g/mol", "atomic weights");
            grams.Add(work.Result($"{called} that settles", "moles × molar mass", moles * mass, "g/L"));
        }

        if (fallen.Deposits.Count > MostShown)
        {
            grams.Add(work.Given(
                "further solids together", fallen.Deposits.Skip(MostShown).Sum(d => d.Mass.GramsPerLitre), "g/L", Saturation.Engine));
        }

        return grams.Count == 1 ? grams[0] : work.Result("deposit", "sum of the solids", Term.Sum(grams), "g/L");
    }

    /// <summary>Writes the share of a metal that leaves with a deposit.</summary>
    /// <returns>Per cent, as printed.</returns>
    private static Term Lost(WorkingBuilder work, JudgedDeposit fallen, string metal)
    {
        var ion = IonWords.Of(metal);
        var lost = work.Given(
            $"{ion} in the deposit",
            fallen.Deposits.Sum(d => d.Amount.MolesPerLitre * d.Solid.Composition.Where(c => c.Key == metal).Sum(c => c.Value)),
            "mol/L",
            Saturation.Engine);
        var left = work.Given(
            $"{ion} that stays dissolved", fallen.State.Metals.FirstOrDefault(m => m.Metal == metal)?.Dissolved.MolesPerLitre ?? 0,
            "mol/L", Saturation.Engine);
        return work.Result($"{ion} that is lost", "100 × lost / (lost + dissolved)", 100 * lost / (lost + left), "%");
    }
}
