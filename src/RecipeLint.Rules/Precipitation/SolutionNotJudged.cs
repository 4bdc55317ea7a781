using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A stock or tank of which it could not be told what falls out.</summary>
public sealed class SolutionNotJudged : WorkspaceRule, IProposesRepairs
{
    public override string Name => "solution-not-judged";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var stock in facts.Stocks.Where(s => s.IsComplete && s.ComponentMoles.Any(c => c.Value > 0)))
        {
            if (Find("stock", stock.Stock.Name, stock.Stock.Place, stock.Chemistry.States, context) is { } finding)
            {
                yield return finding;
            }
        }

        foreach (var recipe in facts.Recipes.Where(r => r.IsComplete && r.ComponentMoles.Any(c => c.Value > 0)))
        {
            if (Find("tank of", recipe.Recipe.Name, recipe.Recipe.Place, recipe.Chemistry.States, context) is { } finding)
            {
                yield return finding;
            }
        }
    }

    private static Finding? Find(string kind, string name, Place place, IReadOnlyList<SolutionState> states, RuleContext context)
    {
        if (states.FirstOrDefault(s => !s.IsSolved) is { } failed)
        {
            return context.Find(
                place,
                $"What falls out of the {kind} '{name}' at {Wording.Celsius(failed.Temperature)} could not be computed: {Reason(failed.Failure!)} "
                + "No rule on deposits has judged it there, so silence means nothing. "
                + "Check its amounts, and try it in a glass before a batch is made.");
        }

        // Strong solutions: soluble salts are compared with handbook tables; anything else near its limit was passed over.
        var beyond = states.FirstOrDefault(s => s.Validity.Trust == Trust.OutOfRange && Passed(s).Count > 0);
        return beyond is null
            ? null
            : context.Find(
                place,
                $"The {kind} '{name}' is stronger than the model covers: {Reason(beyond.Validity.Reasons[0])} "
                + $"Soluble salts were compared with handbook tables; whether {Say.List(Passed(beyond))} stays dissolved cannot be told. "
                + "Make it weaker, or try it in a glass at the coldest storage temperature.");
    }

    /// <summary>Sparingly soluble solids near or a little past saturation, by what they are called.</summary>
    internal static List<string> Passed(SolutionState state) =>
    [
        .. state.NearSaturation
            .Where(n => n.Solid.Role == SolidRole.FormsReadily && n.Index <= 1 && state.Salts.All(v => v.Solid != n.Solid))
            .Select(n => SolidOwners.Of(n.Solid)?.Called)
            .OfType<string>()
            .Distinct(StringComparer.Ordinal)
            .Take(3),
    ];

    /// <summary>Reasons of the engine are sentences; here they stand inside one.</summary>
    private static string Reason(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    /// <summary>As weak as the model covers.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        context.StockOf(finding) is { } stock && Strength.Weaker(context, stock) is { } weaker ? [weaker] : [];
}
