using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>Sentences on saving a bottle and on changing its recipe, with the engine's numbers.</summary>
internal static class DiagnosisWording
{
    /// <summary>Weaker than this nobody would make a stock.</summary>
    private const double LeastFactor = 0.1;

    /// <summary>Part of the strength above which a change is no advice: nobody weighs and doses so exactly.</summary>
    private const double MostFactor = 0.9;

    public static string Rescue(Cause cause, RankedCause ranked, BottleAdvice advice, HazardReport hazards)
    {
        if (advice.Trial is { Helps: false } trial && cause.RescueWarm.Length == 0)
        {
            return $"No. {Useless(cause, trial)}";
        }

        var verdict = cause.Rescue switch
        {
            Advice.Diagnosis.Rescue.Discard => "No.",
            Advice.Diagnosis.Rescue.None => advice.Water?.Trial.Helps == true ? "Only with water." : "Hardly.",
            Advice.Diagnosis.Rescue.Water => advice.Water switch
            {
                null => "How much water it takes cannot be computed: by the recipe it stays dissolved.",
                { Trial.Helps: true } => "Yes.",
                _ => "No.",
            },
            Advice.Diagnosis.Rescue.Keep => "Nothing to save.",
            _ => "Yes.",
        };
        var text = $"{verdict} {cause.RescueSay}";
        if (cause.RescueWarm.Length > 0 && advice.Trial is { Helps: true } && BottleHazards.Refuses(["heat"], hazards) is null)
        {
            text += " " + cause.RescueWarm;
        }

        if (cause.Rescue == Advice.Diagnosis.Rescue.Warm
            && advice.Nearest?.Temperature is { } clear
            && ranked.Solid.State is { } cold
            && clear.Celsius > cold.Temperature.Celsius)
        {
            text += $" It is all dissolved at {Say.Number(Math.Ceiling(clear.Celsius))} °C.";
        }

        if (advice.Trial is { Ph: { } ph } && advice.Nearest is not null && ranked.Solid.State is { } state)
        {
            text += $" It stays dissolved at pH {Say.Number(ph)} or {(ph < state.PhBeforeDeposit ? "below" : "above")}.";
        }

        if (advice.Trial is { Stays: { Count: > 0 } stays })
        {
            text += $" {Say.Capital(Say.List(stays.Select(SolidWords.Called)))} {(stays.Count > 1 ? "stay" : "stays")} as "
                + $"{(stays.Count > 1 ? "they are" : "it is")}, as computed.";
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

    /// <summary>Why a rescue that was tried is none in this stock.</summary>
    private static string Useless(Cause cause, StateTrial trial)
    {
        var by = cause.Rescue switch
        {
            Advice.Diagnosis.Rescue.Acid => "Acid",
            Advice.Diagnosis.Rescue.Alkali => "Alkali",
            _ => "Warmth",
        };
        if (trial.LetsGo is { } window)
        {
            return $"{by} is of no use in this stock: above about pH {Say.Number(window.Highest)} Fe-{window.Agent} lets its iron go.";
        }

        return (trial.Harm, trial.Instead) switch
        {
            ({ BelowPh: { } below } harm, _) => $"{by} is of no use in this stock: {Printable.Show(harm.Name)} falls out below about pH "
                + $"{Say.Number(below)}.",
            ({ } harm, _) => $"{by} is of no use in this stock: it gels the silicate of {Printable.Show(harm.Name)}.",
            (_, { } instead) => $"{by} is of no use in this stock: {Say.Grams(trial.Mass.GramsPerLitre)}/L of "
                + $"{SolidWords.Called(instead)} falls out instead.",
            _ => $"{by} does not bring it back in this stock, as computed.",
        };
    }

    /// <summary>What water does to it, and what follows from it; empty where it was not tried.</summary>
    public static string Water(RankedCause ranked, WaterAdvice? water, Dose? dose)
    {
        if (water is null || ranked.Solid.State is not { } state)
        {
            return "";
        }

        if (water.Trial is not { Helps: true, LitresPerLitre: { } litres })
        {
            return water.Trial.Instead is { } instead
                ? $"Water is of no use: {Say.Grams(water.Trial.Mass.GramsPerLitre)} of {SolidWords.Called(instead)} falls out of "
                    + "each litre instead."
                : $"Water is of no use: more than {Say.Number(WaterTrial.MostLitres)} L to each litre would be needed.";
        }

        var stays = water.Trial.Stays is { Count: > 0 } left ? $"; {Say.List(left.Select(SolidWords.Called))} stays" : "";
        var dosed = dose is { } now
            ? $"Dose {Say.Number((1 + litres) * now.MillilitresPerLitre)} mL/L then instead of {Say.Number(now.MillilitresPerLitre)} mL/L"
            : $"Dose {Say.Number(1 + litres)} times as much then";
        return $"With {Say.Litres(litres)} of distilled water to each litre, stirred in by portions, it is all dissolved at "
            + $"{Celsius(state)}, as computed{stays}. {dosed}, and write that on the label. {Room(water)}{Kept(water)}";
    }

    private static string Room(WaterAdvice water)
    {
        var grows = $"It comes to {Say.Litres(water.After.Litres)}";
        return (water.Vessel, water.Holds) switch
        {
            ({ } vessel, { } holds) when holds < water.After =>
                $"{grows}, more than the {Say.Litres(holds.Litres)} that '{Printable.Show(vessel)}' holds: part it first.",
            ({ } vessel, { } holds) => $"{grows}; '{Printable.Show(vessel)}' holds {Say.Litres(holds.Litres)}.",
            _ => $"{grows}: take a vessel that holds it.",
        };
    }

    private static string Kept(WaterAdvice water) => !water.Weakened ? ""
        : water.Preservative is var (name, grams)
            ? $" What keeps it is too weak then: bring {Printable.Show(name)} to {Say.Number(grams)} g/L in all, or use it up "
                + "within a week."
            : " What keeps it is too weak then: use it up within a week.";

    public static string Change(
        Cause cause, RankedCause ranked, BottleAdvice advice, BottleChemistry chemistry, HazardReport hazards)
    {
        var text = cause.Change;
        if (cause.ChangeAcid.Length > 0 && advice.ChangeTrial is { Helps: true } && BottleHazards.Refuses(["acid"], hazards) is null)
        {
            text += " " + cause.ChangeAcid;
        }

        if (advice.Suppliers.Count == 2 && ranked.Solid.Solid?.Role != SolidRole.SolubleSalt)
        {
            text += $" Here {Printable.Show(advice.Suppliers[0].Name)} and {Printable.Show(advice.Suppliers[1].Name)} bring it together.";
        }

        if (cause.ChangePh is not null && advice.ChangeTrial is { Helps: false } trial)
        {
            text += NotByAcid(trial);
        }

        var ways = Ways(advice, ranked, chemistry, hazards);
        return ways.Length > 0 ? $"{text} {ways}" : text;
    }

    /// <summary>Acid is what people reach for against these: they are told what it would do.</summary>
    private static string NotByAcid(StateTrial trial) => trial switch
    {
        { Instead: { } instead } => $" Not by more acid in this stock, though: {Say.Grams(trial.Mass.GramsPerLitre)}/L of "
            + $"{SolidWords.Called(instead)} would fall out.",
        { Harm: { BelowPh: { } below } harm } =>
            $" Not by more acid in this stock, though: {Printable.Show(harm.Name)} falls out below about pH {Say.Number(below)}.",
        { Harm: { FallsOut: null } harm } => $" Not by acid in this stock, though: it gels the silicate of {Printable.Show(harm.Name)}.",
        _ => "",
    };

    private static string Ways(BottleAdvice advice, RankedCause ranked, BottleChemistry chemistry, HazardReport hazards)
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
        if (nearest.Factor is >= LeastFactor and <= MostFactor and var factor)
        {
            ways.Add(dose is { } now && nearest.ToldDilution(now) is { } told
                ? $"at 1:{Say.Number(told)} instead of 1:{Say.Number(Math.Round(now.Dilution))}"
                : $"at {Say.Percent(factor)} of this strength");
        }

        var warms = nearest.Temperature is { } there && there.Celsius > state.Temperature.Celsius;
        if (nearest.Temperature is { } clear && Math.Abs(clear.Celsius - state.Temperature.Celsius) >= 0.5
            && !(warms && BottleHazards.Refuses(["heat"], hazards) is not null))
        {
            ways.Add(clear.Celsius > state.Temperature.Celsius
                ? $"kept at {Say.Number(Math.Ceiling(clear.Celsius))} °C or warmer"
                : $"kept at {Say.Number(Math.Floor(clear.Celsius))} °C or colder");
        }

        if (nearest.Ph is { } ph && Math.Abs(ph - state.PhBeforeDeposit) >= 0.05
            && BottleHazards.Refuses([ph < state.PhBeforeDeposit ? "acid" : "alkali"], hazards) is null)
        {
            ways.Add(ph < state.PhBeforeDeposit
                ? $"at pH {Say.Number(Math.Floor(ph * 10) / 10)} or below"
                : $"at pH {Say.Number(Math.Ceiling(ph * 10) / 10)} or above");
        }

        return ways.Count == 0 ? "" : $"It would stay clear {string.Join(" or ", ways)}.";
    }

    private static string Celsius(SolutionState state) => $"{Say.Number(Math.Round(state.Temperature.Celsius, 1))} °C";
}
