using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>Sentences on saving a bottle and on changing its recipe, with the engine's numbers.</summary>
internal static class DiagnosisWording
{
    /// <summary>Weaker than this nobody would make a stock.</summary>
    private const double LeastFactor = 0.1;

    public static string Rescue(Cause cause, RankedCause ranked, BottleAdvice advice)
    {
        if (advice.Trial is { Helps: false } trial)
        {
            var by = cause.Rescue switch
            {
                Advice.Diagnosis.Rescue.Acid => "Acid",
                Advice.Diagnosis.Rescue.Alkali => "Alkali",
                _ =>
                "Warmth"
            };
            return trial.Instead is { } instead
                ? $"No. {by} is of no use in this stock: {Say.Grams(trial.Mass.GramsPerLitre)}/L of {SolidWords.Called(instead)} falls "
                    + "out instead."
                : $"No. {by} does not bring it back in this stock, as computed.";
        }

        var verdict = cause.Rescue switch
        {
            Advice.Diagnosis.Rescue.Discard => "No.",
            Advice.Diagnosis.Rescue.None => "Hardly.",
            Advice.Diagnosis.Rescue.Keep => "Nothing to save.",
            _ => "Yes.",
        };
        var text = $"{verdict} {cause.RescueSay}";
        if (cause.Rescue == Advice.Diagnosis.Rescue.Warm
            && advice.Nearest?.Temperature is { } clear
            && ranked.Solid.State is { } cold
            && clear.Celsius > cold.Temperature.Celsius)
        {
            text += $" It is all dissolved at {Say.Number(Math.Ceiling(clear.Celsius))} °C.";
        }

        if (cause.Rescue == Advice.Diagnosis.Rescue.Acid
            && advice.Nearest?.Ph is { } ph
            && ranked.Solid.State is { } state
            && ph < state.PhBeforeDeposit)
        {
            text += $" It stays dissolved at pH {Say.Number(Math.Floor(ph * 10) / 10)} or below.";
        }

        if (cause.Rescue == Advice.Diagnosis.Rescue.Filter && advice.Losses.Count == 0 && ranked.Solid.Deposits.Count == 0)
        {
            text += " Nothing of the recipe goes with it, as computed.";
        }

        if (cause.Rescue is not Advice.Diagnosis.Rescue.Discard && advice.Losses.Count > 0)
        {
            var lost = advice.Losses.Take(3).Select(l => $"{Say.Grams(l.PerLitre.GramsPerLitre)}/L {l.Key} ({Say.Percent(l.Share)} of it)");
            text += $" Filtered off, it takes {Say.List(lost)} with it.";
        }

        return text;
    }

    public static string Change(Cause cause, RankedCause ranked, BottleAdvice advice, BottleChemistry chemistry)
    {
        var text = cause.Change;
        if (advice.Suppliers.Count == 2 && ranked.Solid.Solid?.Role != SolidRole.SolubleSalt)
        {
            text += $" Here {Printable.Show(advice.Suppliers[0].Name)} and {Printable.Show(advice.Suppliers[1].Name)} bring it together.";
        }

        if (advice.ChangeTrial is { Helps: false, Instead: { } instead } trial)
        {
            text += $" Not by more acid in this stock, though: {Say.Grams(trial.Mass.GramsPerLitre)}/L of {SolidWords.Called(instead)} "
                + "would fall out.";
        }

        var ways = Ways(advice, ranked, chemistry);
        return ways.Length > 0 ? $"{text} {ways}" : text;
    }

    private static string Ways(BottleAdvice advice, RankedCause ranked, BottleChemistry chemistry)
    {
        var dose = chemistry.Stock.Stock.Dose?.Value;
        if (advice.Highest is { Factor: { } most } && most < HighestConcentration.MostFactor)
        {
            return dose is { } now
                ? $"The strongest that stays clear at {Celsius(ranked.Solid.State!)} is about "
                    + $"1:{Say.Number(Math.Floor(now.Dilution * most))} (now 1:{Say.Number(Math.Round(now.Dilution))})."
                : $"The strongest that stays clear at {Celsius(ranked.Solid.State!)} is {Say.Percent(most)} of this strength.";
        }

        if (advice.Nearest is not { } nearest || ranked.Solid.State is not { } state)
        {
            return "";
        }

        var ways = new List<string>();
        if (nearest.Factor is >= LeastFactor and var factor)
        {
            ways.Add(dose is { } now && nearest.Dilution is { } usual
                ? $"at 1:{Say.Number(usual)} instead of 1:{Say.Number(Math.Round(now.Dilution))}"
                : $"at {Say.Percent(factor)} of this strength");
        }

        if (nearest.Temperature is { } clear && Math.Abs(clear.Celsius - state.Temperature.Celsius) >= 0.5)
        {
            ways.Add(clear.Celsius > state.Temperature.Celsius
                ? $"kept at {Say.Number(Math.Ceiling(clear.Celsius))} °C or warmer"
                : $"kept at {Say.Number(Math.Floor(clear.Celsius))} °C or colder");
        }

        if (nearest.Ph is { } ph && Math.Abs(ph - state.PhBeforeDeposit) >= 0.05)
        {
            ways.Add(ph < state.PhBeforeDeposit
                ? $"at pH {Say.Number(Math.Floor(ph * 10) / 10)} or below"
                : $"at pH {Say.Number(Math.Ceiling(ph * 10) / 10)} or above");
        }

        return ways.Count == 0 ? "" : $"It would stay clear {string.Join(" or ", ways)}.";
    }

    private static string Celsius(SolutionState state) => $"{Say.Number(Math.Round(state.Temperature.Celsius, 1))} °C";
}
