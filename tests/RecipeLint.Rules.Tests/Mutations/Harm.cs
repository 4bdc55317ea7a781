using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>
/// Whether a mistake does any harm, by a criterion that was written down before the mutants were judged and that asks no rule. A mutant is
/// harmless when every point of <see cref="Criterion"/> holds; harmless ones are listed and leave the score.
/// </summary>
internal sealed class Harm
{
    /// <summary>The criterion in words, for the table.</summary>
    internal static readonly string[] Criterion =
    [
        "every file can still be read in full, and nothing that a person reads (label, dose on a stock, crop, target) contradicts what is mixed;",
        "no element of the final solution changes by its own expanded uncertainty (k = 2) or more; sodium and chloride may change by 5 mg/L, and an element that was not there stays under 0.01 mg/L;",
        "the expanded uncertainty of no element grows by more than half, or it stays under 10 %; no scale carries more than its capacity, no vessel more than it holds;",
        "no solid comes nearer in any state of any stock or of the feed: its saturation index does not rise by more than 0.1, or it stays below -0.5; no soluble salt gets a graver verdict;",
        "the pH of the feed does not change by more than 0.3, and no stock leaves pH 2 to 9;",
        "a stock with 0.5 g/L of food for moulds keeps at least half of its undissociated preservative, and one without preservative gets no such food; the plants do not get ten times the preservative;",
        "the iron that no agent holds does not grow by more than 5 % of all iron; an iron chelate is not moved into light;",
        "while it is mixed nothing falls out (0.01 g/L) that does not in the clean order, every solid finds the water to dissolve it before the mark, and the vessel ends within 2 % of its volume.",
    ];

    /// <summary>How many times the uncertainty of an element may grow, and below which it does not matter.</summary>
    private const double UncertaintyGrowth = 1.5, UncertaintyThatMatters = 0.1;

    /// <summary>mg/L of sodium or chloride that no crop notices, and from which any other element counts that was not there before.</summary>
    private const double Ballast = 5, NewElement = 0.01;

    /// <summary>A dose on a stock may be rounded this far from the dose in the recipe.</summary>
    private const double DoseRounding = 0.02;

    private static readonly string[] _notNutrients = ["C", "H", "O", "organic-N"];

    private readonly CleanShop _shop;
    private readonly UncertaintyFacts _known;
    private readonly HarmInSolution _solutions;
    private readonly HarmAtTheBench _bench;

    internal Harm(CleanShop shop)
    {
        _shop = shop;
        _known = ElementUncertainty.Of(shop.Recipe, shop.Facts.FindStock);
        _solutions = new HarmInSolution(shop.Facts);
        _bench = new HarmAtTheBench(shop.Facts);
    }

    /// <summary>Why the mutant does harm, the first reason found; null when it is harmless.</summary>
    internal string? Of(Mutant mutant, Facts facts) =>
        mutant.Misinforms
        ?? Reading(facts)
        ?? Information(facts)
        ?? Elements(facts)
        ?? _solutions.Of(facts)
        ?? _bench.Of(facts);

    private string? Reading(Facts facts)
    {
        if (facts.Workspace.Problems.FirstOrDefault(p => LevelOf(p) >= Level.Warning) is { } problem)
        {
            return $"{problem.Kind} at {problem.Place}";
        }

        return facts.Stocks.Count != _shop.Facts.Stocks.Count || facts.Recipes.Count != 1 || facts.Stocks.Any(s => !s.IsComplete) || !facts.Recipes[0].IsComplete
            ? "a file is not read in full"
            : null;
    }

    private static Level LevelOf(Problem problem) =>
        RuleBook.Of(RuleList.All.OfType<ProblemRule>().Single(r => r.Kinds.Contains(problem.Kind))).Level;

    /// <summary>What a person reads: the doses on the stocks, the crop, the targets.</summary>
    private string? Information(Facts facts)
    {
        var (before, after) = (_shop.Recipe, facts.Recipes[0]);
        foreach (var dose in after.Doses)
        {
            if (dose is { Stock.Stock.Dose.Value: var stated, Dose: { } given } && Math.Abs((stated.LitresPerLitre / given.LitresPerLitre) - 1) > DoseRounding)
            {
                return $"'{dose.Stock!.Stock.Name}' states another dose than it is given at";
            }
        }

        foreach (var (old, now) in before.Recipe.Targets.Zip(after.Recipe.Targets))
        {
            if (old.Concentration is { } wanted && now.Concentration is { } read && Math.Abs(wanted.MilligramsPerLitre - read.MilligramsPerLitre) > (old.Tolerance?.HalfWidth(wanted.MilligramsPerLitre) ?? 0))
            {
                return $"the target of {now.Key.Value} is another";
            }
        }

        var outside = after.Profile.Name == before.Profile.Name ? null : after.Profile.Elements
            .FirstOrDefault(r => after.MilligramsPerLitre(r.Key) is var found && (found < r.SufficientLow * 0.995 || found > (r.Upper ?? r.SufficientHigh) * 1.005));
        return outside is null ? null : $"{outside.Key} is outside the range of the other crop";
    }

    private string? Elements(Facts facts)
    {
        var recipe = facts.Recipes[0];
        foreach (var key in _shop.Recipe.Elements.Keys.Union(recipe.Elements.Keys).Except(_notNutrients).Order(StringComparer.Ordinal))
        {
            var (before, after) = (_shop.Recipe.MilligramsPerLitre(key), recipe.MilligramsPerLitre(key));
            var uncertain = before > 0 && _known.Elements.TryGetValue(key, out var known) ? known.RelativeExpanded * before : NewElement;
            var allowed = key is "Na" or "Cl" ? Math.Max(uncertain, Ballast) : uncertain;
            if (Rounding.SixDigits(Math.Abs(after - before)) >= allowed)
            {
                return $"{key} {Say.Number(before)} to {Say.Number(after)} mg/L";
            }
        }

        var now = ElementUncertainty.Of(recipe, facts.FindStock);
        foreach (var (key, known) in now.Elements.Where(e => !_notNutrients.Contains(e.Key)))
        {
            var before = _known.Elements.TryGetValue(key, out var old) ? old.RelativeExpanded : 0;
            if (known.RelativeExpanded > UncertaintyThatMatters && known.RelativeExpanded > before * UncertaintyGrowth && recipe.MilligramsPerLitre(key) > NewElement)
            {
                return $"{key} is known to ±{Say.Percent(known.RelativeExpanded)} only, ±{Say.Percent(before)} before";
            }
        }

        return null;
    }
}
