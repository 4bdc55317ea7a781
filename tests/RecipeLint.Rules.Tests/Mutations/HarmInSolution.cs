using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>The part of the criterion that looks at stocks and feed as solutions, before and after the mistake.</summary>
internal sealed class HarmInSolution(Facts clean)
{
    /// <summary>A rise of the saturation index that counts, and the index below which a solid is too far away to matter.</summary>
    internal const double Nearer = 0.1, FarAway = -0.5;

    private const double PhChange = 0.3, LowestStock = 2, HighestStock = 9, PreservativeLost = 0.5, PreservativeGrowth = 10, LooseIron = 0.05;

    /// <summary>g/L of food for moulds that counts.</summary>
    private const double Food = 0.5;

    private static readonly string[] _fading = ["EDTA-4", "DTPA-5", "HEDTA-3", "Citrate-3"];

    internal string? Of(Facts facts)
    {
        foreach (var (before, after) in clean.Stocks.Zip(facts.Stocks))
        {
            var reason = States(before.Chemistry.States, after.Chemistry.States, isFeed: false) ?? Preservation(before, after) ?? Light(before, after);
            if (reason is not null)
            {
                return $"{after.Stock.Name}: {reason}";
            }
        }

        return States(clean.Recipes[0].Chemistry.States, facts.Recipes[0].Chemistry.States, isFeed: true) is { } feed ? $"feed: {feed}" : null;
    }

    /// <summary>Why a solid counts as nearer than before; null when it is not.</summary>
    internal static string? NearerSolid(IEnumerable<SolidIndex> before, IEnumerable<SolidIndex> after)
    {
        var old = before.Where(s => s.Solid.Role == SolidRole.FormsReadily).ToDictionary(s => s.Solid.Name, s => s.Index);
        foreach (var (solid, index) in after.Where(s => s.Solid.Role == SolidRole.FormsReadily && s.Index > FarAway))
        {
            var was = old.GetValueOrDefault(solid.Name, double.NegativeInfinity);
            if (index > was + Nearer)
            {
                return $"{solid.Name} from {(double.IsFinite(was) ? Say.Number(Math.Round(was, 2)) : "nowhere")} to {Say.Number(Math.Round(index, 2))}";
            }
        }

        return null;
    }

    private static string? States(IReadOnlyList<SolutionState> before, IReadOnlyList<SolutionState> after, bool isFeed)
    {
        foreach (var now in after)
        {
            var old = before.FirstOrDefault(s => s.Moment == now.Moment) ?? before[0];
            if (!now.IsSolved || now.Clear is null || old.Clear is null)
            {
                return "no state is found";
            }

            var moved = Math.Abs(now.PhBeforeDeposit - old.PhBeforeDeposit);
            if (isFeed ? moved > PhChange : moved > PhChange && now.PhBeforeDeposit is < LowestStock or > HighestStock)
            {
                return $"pH from {Say.Number(Math.Round(old.PhBeforeDeposit, 1))} to {Say.Number(Math.Round(now.PhBeforeDeposit, 1))}";
            }

            var salt = now.Salts.FirstOrDefault(s => s.State > (old.Salts.Where(o => o.Solid.Name == s.Solid.Name).Select(o => (SaltState?)o.State).FirstOrDefault() ?? SaltState.Clear));
            if ((NearerSolid(old.Clear.Solids, now.Clear.Solids) ?? (salt.Solid is null ? null : $"{salt.Solid.Name} {salt.State}")) is { } solid)
            {
                return $"{solid} at {Say.Number(now.Temperature.Celsius)} °C";
            }

            if (Loose(now) > Loose(old) + LooseIron)
            {
                return $"{Say.Percent(Loose(now))} of the iron has no holder";
            }
        }

        return null;
    }

    private static double Loose(SolutionState state)
    {
        var iron = state.Metals.Where(m => m.Metal is Iron.Ferrous or Iron.Ferric).ToList();
        var all = iron.Sum(m => m.Dissolved.MolesPerLitre);
        return all > 0 ? iron.Sum(m => m.Unchelated.MolesPerLitre) / all : 0;
    }

    private static string? Preservation(StockFacts before, StockFacts after)
    {
        var (old, now) = (Acting(before), Acting(after));
        var food = MicrobialFood.In(after).Sum(f => f.GramsPerLitre);
        if (food >= Food && now < old * PreservativeLost)
        {
            return $"undissociated preservative falls to {Say.Percent(now / old)}";
        }

        if (Total(before) > 0 && Total(after) > PreservativeGrowth * 0.999 * Total(before))
        {
            return "the plants get ten times the preservative";
        }

        return old <= 0 && food >= Food && food > 2 * MicrobialFood.In(before).Sum(f => f.GramsPerLitre) ? "food for moulds and nothing against them" : null;

        static double Acting(StockFacts stock) => stock.Chemistry.Mixing.Preservatives.Sum(p => p.Undissociated.GramsPerLitre);
        static double Total(StockFacts stock) => stock.Concentration("Benzoate-").MolesPerLitre + stock.Concentration("Sorbate-").MolesPerLitre;
    }

    private static string? Light(StockFacts before, StockFacts after) =>
        (after.Stock.Keep?.Light?.Value ?? LightExposure.Dark) is var light and not LightExposure.Dark
        && light != before.Stock.Keep?.Light?.Value
        && Iron.Moles(after.ComponentMoles) > 0
        && _fading.Any(a => after.ComponentMoles.GetValueOrDefault(a) > 0)
            ? "an iron chelate that fades stands in light"
            : null;
}
