using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Parts of sentences that all findings on deposits share.</summary>
internal static class Wording
{
    private const double MostTimes = 1000;

    /// <summary>Weaker than this nobody would make a stock: keeping two things apart is the way out then.</summary>
    private const double LeastFactor = 0.1;

    /// <summary>Components whose ion changes with the pH, so that a pH can be the way out.</summary>
    private static readonly string[] FollowPh =
        [
            Component.Hydrogen, Component.Phosphate, Component.Carbonate, Component.Citrate, Component.Oxalate, Component.Edta,
            Component.Benzoate,
            Component.Sorbate, Component.Pyrophosphate, Component.Gluconate, Component.Lactate, Component.Malate,
        ];

    /// <summary>"at 5 °C, the coldest it is kept at".</summary>
    /// <param name="stock">What is kept; null for a tank.</param>
    public static string When(StockFacts? stock, SolutionState state)
    {
        var at = $"at {Celsius(state.Temperature)}";
        return state.Moment switch
        {
            StateMoment.Coldest when stock is not null => $"{at}, {KeptWords.Coldest(stock)}",
            StateMoment.Warmest when stock is not null => $"{at}, {KeptWords.Warmest(stock)}",
            StateMoment.Coldest or StateMoment.Warmest => at,
            StateMoment.Turned when stock?.Stock.Keep?.For is { } shelf =>
                $"within the {Say.Days(shelf.Value.Days)} it is kept {at}, in which {Turned(state.Mix)}",
            StateMoment.Tank => "as it is poured together",
            StateMoment.TankInAir => "once it has come to rest with the air",
            StateMoment.TankAdjusted => "after the pH is adjusted",
            _ => $"as it is mixed ({Celsius(state.Temperature)})",
        };
    }

    /// <summary>
    /// As <see cref="When(StockFacts?, SolutionState)"/>; of a solid of which nothing tells how it changes with temperature neither the
    /// coldest nor the warmest moment is named.
    /// </summary>
    public static string When(StockFacts? stock, SolutionState state, Solid solid) =>
        state.Moment is not (StateMoment.Coldest or StateMoment.Warmest) ? When(stock, state)
            : !solid.TemperatureKnown ? $"at {Celsius(state.Temperature)} (how it changes with temperature is not known)"
            : UntoldHold.Of(state, solid) is { } agent ? Held(state, agent)
            : When(stock, state);

    /// <summary>"about 40 % of its pyrophosphate turns to orthophosphate".</summary>
    private static string Turned(SolutionMix mix)
    {
        (double Share, string From, string To)[] all =
            [
                (mix.PyrophosphateTurned, "pyrophosphate", "orthophosphate"),
                (mix.SulfamateTurned, "sulfamic acid", "ammonium and sulfate"),
            ];
        var turned = all.Where(t => t.Share > 0).Select(t => $"about {Say.Percent(t.Share)} of its {t.From} turns to {t.To}");
        return string.Join(" and ", turned);
    }

    private static string Held(SolutionState state, string agent) =>
        $"at {Celsius(state.Temperature)} (how firmly {agent} holds metals at other temperatures is not known)";

    /// <summary>As <see cref="When(StockFacts?, SolutionState, Solid)"/>, of everything that falls out together.</summary>
    public static string When(StockFacts? stock, JudgedDeposit deposit) =>
        deposit.State.Moment is not (StateMoment.Coldest or StateMoment.Warmest) ? When(stock, deposit.State)
            : deposit.Untold is not { } untold || untold == deposit.Solid
            ? deposit.Solid.TemperatureKnown && deposit.UntoldHolder is { } agent
                ? Held(deposit.State, agent)
                : When(stock, deposit.State, deposit.Solid)
            : $"at {Celsius(deposit.State.Temperature)} (how {untold.Called.Split(" (")[0]} changes with temperature is not known)";

    public static string Celsius(Temperature temperature) => $"{Say.Number(Math.Round(temperature.Celsius, 1))} °C";

    /// <summary>
    /// "4.3 times the ion product that stays dissolved"; of a solid of neutral molecules, "1.5 times what stays dissolved".
    /// </summary>
    public static string Times(double index, Solid solid)
    {
        var times = Math.Pow(10, index);
        var what = Saturation.HasIons(solid) ? "the ion product that stays dissolved" : "what stays dissolved";
        return times < 1 ? $"{Say.Number(100 * times)} % of {what}"
            : times <= MostTimes ? $"{Say.Number(times)} times {what}" : "far more than stays dissolved";
    }

    /// <summary>"X brings the calcium, Y the sulfate".</summary>
    public static string Brings(IReadOnlyList<Supplier> suppliers) => suppliers.Count switch
    {
        0 => "its ions are there",
        1 => $"{suppliers[0].Name} brings the {suppliers[0].Brings}",
        _ => $"{suppliers[0].Name} brings the {suppliers[0].Brings}, {suppliers[1].Name} the {suppliers[1].Brings}",
    };

    /// <summary>"X brings the calcium, Y the sulfate, together 4.3 times the ion product that stays dissolved".</summary>
    /// <param name="fallsOut">
    /// True where it falls out: then what is below saturation in the clear solution says how it gets there.
    /// </param>
    public static string BringsTimes(IReadOnlyList<Supplier> suppliers, double index, Solid solid, bool fallsOut) =>
        $"{Brings(suppliers)}, {(suppliers.Count > 1 ? "together" : "in all")} {Times(index, solid)}"
            + (fallsOut && index < 0 ? ", and past it once the rest of the deposit has fallen out" : "");

    /// <summary>The nearest changes at which it would stay clear, as the end of a sentence; empty when none was found.</summary>
    public static string NearestClear(DepositVerdict verdict, VesselAdvice advice)
    {
        var (nearest, stock, solid, state) = (verdict.Nearest, verdict.Stock, verdict.Deposit.Solid, verdict.Deposit.State);
        var ways = new List<string>();
        if (nearest.Factor is >= LeastFactor and var factor)
        {
            ways.Add(stock.Stock.Dose?.Value is { } now
                ? $"at 1:{Say.Number(nearest.ToldDilution(now)!.Value)} instead of 1:{Say.Number(Math.Round(now.Dilution))}"
                : $"at {Say.Percent(factor)} of this strength");
        }

        if (nearest.Temperature is { } clear && Math.Abs(clear.Celsius - state.Temperature.Celsius) >= 0.5)
        {
            if (clear.Celsius < state.Temperature.Celsius)
            {
                // Colder than the coldest it is kept at now is another place, and not one that anybody named.
                if (Math.Floor(clear.Celsius) > stock.StorageTemperature.Low.Celsius)
                {
                    ways.Add($"kept at {Say.Number(Math.Floor(clear.Celsius))} °C or colder");
                }
            }
            else if (advice.Allows(Puts.Warmth))
            {
                ways.Add($"kept at {Say.Number(Math.Ceiling(clear.Celsius))} °C or warmer");
            }
        }

        if (nearest.Ph is { } ph && FollowsPh(solid))
        {
            var (sour, alkaline) = (Math.Floor(ph * 10) / 10, Math.Ceiling(ph * 10) / 10);
            if (ph >= state.PhBeforeDeposit && advice.Allows(Puts.Alkali, alkaline))
            {
                ways.Add($"at pH {Say.Number(alkaline)} or above");
            }
            else if (ph < state.PhBeforeDeposit && advice.Allows(Puts.Acid, sour)
                && AcidTrial.StaysClear(stock, solid, sour, DepositLimits.Default.With(verdict.Deposit.Owner.Name, verdict.Limits)))
            {
                ways.Add($"at pH {Say.Number(sour)} or below");
            }
        }

        return ways.Count == 0 ? "" : $"it would stay clear {Or(ways)}";
    }

    /// <summary>False for silicates: at the pH that dissolves calcium silicate, silica gel sets instead.</summary>
    public static bool FollowsPh(Solid solid) =>
        solid.Composition.Any(c => FollowPh.Contains(c.Key)) && solid.Composition.All(c => c.Key != Component.Silicate);

    private static string Or(List<string> ways) =>
        ways.Count == 1 ? ways[0] : string.Join(", ", ways.Take(ways.Count - 1)) + " or " + ways[^1];
}
