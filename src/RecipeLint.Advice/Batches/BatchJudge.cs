using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Procedure;

namespace RecipeLint.Advice.Batches;

/// <summary>
/// Judges a recorded batch: the same analysis and the same rules as for any file, over the plan, over what was made and over what mending
/// would make of it; the hazard gate before any of it.
/// </summary>
public sealed class BatchJudge
{
    /// <summary>The family of rules that speak of what is written, not of what is in the bottle.</summary>
    private const string AboutFiles = "documents";

    private readonly Workspace _workspace;
    private readonly BatchDocument _batch;
    private readonly EngineOptions _options;
    private readonly IReadOnlyList<SightReading> _sights;
    private readonly State _planned;
    private readonly double _allowed;

    private BatchJudge(Workspace workspace, StockDocument stock, BatchDocument batch, EngineOptions options)
    {
        // What other records tell belongs to bottles that were mixed from the file as it stands, not from this one.
        _workspace = workspace with { Batches = [] };
        _batch = batch;
        _sights = [.. batch.Seen.Select(SightReading.Of)];
        _options = options;
        _allowed = BatchOptions.Allowed(workspace.SettingsFor(batch.File));
        _planned = Look(RecordedStock.Planned(stock, batch));
    }

    /// <summary>Null where the volume of the stock cannot be read.</summary>
    public static BatchJudgement? Of(Workspace workspace, StockDocument stock, BatchDocument batch, EngineOptions options)
    {
        var judge = new BatchJudge(workspace, stock, batch, options);
        var actual = judge.Look(RecordedStock.Actual(stock, batch));
        return judge._planned.Stock is { } planned && actual.Stock is { } made ? judge.Of(planned, made, actual) : null;
    }

    private BatchJudgement Of(StockFacts planned, StockFacts made, State actual)
    {
        var judgement = new BatchJudgement
        {
            Batch = _batch,
            Planned = planned,
            Actual = made,
            Allowed = _allowed,
            Fate = BatchFate.Discard,
            Brought = Brought(actual),
            Stock = [.. Shifts(planned, made, null)],
            Seen = [.. _sights.Where(s => !s.IsClear).Select(s => s.Sight)],
            Feeds = [.. Feeds(actual, null)],
        };
        var hazards = Hazards(made);

        // What was planned must not be mixed either, whatever was left out this time: nothing is called right or missing by it.
        if ((BottleHazards.Stops(hazards) ?? HazardGate.Of(planned).Forbids(VesselAction.Order)) is { } refusal)
        {
            return judgement with { Refusal = refusal };
        }

        judgement = judgement with { Readings = Readings(made) };
        if (judgement.Readings.Any(r => !r.Fits) || judgement.Seen.Count > 0)
        {
            return judgement with { Fate = BatchFate.FindOut };
        }

        return IsRight(judgement.Stock, judgement.Brought) ? judgement with { Fate = BatchFate.Use } : Mended(judgement, actual);
    }

    /// <summary>From what went in, and from what was seen afterwards, whatever the record says.</summary>
    private HazardReport Hazards(StockFacts made) =>
        BottleHazards.Of(made, _sights.Aggregate(Observation.Nothing, (all, s) => all.With(s.Told)));

    private bool IsRight(IEnumerable<NutrientShift> shifts, IReadOnlyCollection<Finding> brought) =>
        brought.Count == 0 && shifts.All(s => s.Off <= _allowed);

    private BatchJudgement Mended(BatchJudgement judgement, State actual)
    {
        if (BatchMend.Of(judgement.Planned, judgement.Actual) is not { } mend)
        {
            return judgement with { NotMended = ["Nothing is missing that could be put in; what is too much cannot be taken out."] };
        }

        var gate = Hazards(judgement.Actual);
        foreach (var part in mend.Parts)
        {
            if (gate.Forbids(part.Substance, part.Grams / judgement.Actual.Volume.Litres) is { } refused)
            {
                return judgement with { Refusal = refused };
            }
        }

        var state = Look(mend.PutInto(actual.Document));
        if (state.Stock is not { } mended)
        {
            return judgement with { NotMended = ["What mending would make of it cannot be computed."] };
        }

        if (HazardGate.Of(mended).Forbids(VesselAction.Order) is { } hazard)
        {
            return judgement with { Refusal = hazard };
        }

        var shifts = Shifts(judgement.Planned, mended, null).ToList();
        var brought = Brought(state);
        if (!IsRight(shifts, brought))
        {
            return judgement with { NotMended = [.. WhyNot(shifts, brought)] };
        }

        return judgement with
        {
            Fate = BatchFate.Mend,
            Mend = mend,
            Stock = [.. Shifts(judgement.Planned, judgement.Actual, mended)],
            Feeds = [.. Feeds(actual, state)],
        };
    }

    private IEnumerable<string> WhyNot(List<NutrientShift> shifts, List<Finding> brought)
    {
        if (shifts.Where(s => s.Off > _allowed).MaxBy(s => s.Off) is { } far)
        {
            yield return $"With what is missing put in, {far.Key} is still off by {Say.Percent(far.Off)}.";
        }

        if (brought.Count > 0)
        {
            yield return $"With what is missing put in, {brought[0].Rule.Id} {brought[0].Rule.Name} speaks: {brought[0].Message}";
        }
    }

    /// <summary>Findings from a warning on that are not there as planned; repeats of one rule in one file count as often as they are.
    /// </summary>
    private List<Finding> Brought(State state)
    {
        var known = _planned.Findings.GroupBy(Key, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        var left = new List<Finding>();
        foreach (var finding in state.Findings)
        {
            if (known.GetValueOrDefault(Key(finding)) is > 0 and var count)
            {
                known[Key(finding)] = count - 1;
            }
            else
            {
                left.Add(finding);
            }
        }

        return [.. left.OrderByDescending(f => f.Level)];

        static string Key(Finding finding) => $"{finding.Rule.Id} {finding.Level} {finding.Place.File}";
    }

    private static IEnumerable<NutrientShift> Shifts(StockFacts planned, StockFacts actual, StockFacts? mended)
    {
        var (plan, made, after) = (PerLitre(planned), PerLitre(actual), mended is null ? null : PerLitre(mended));
        var all = plan.Where(p => !p.Key.EndsWith("-N", StringComparison.Ordinal)).Sum(p => p.Value);

        // What only water or impurities bring is not planned: a share of next to nothing says nothing.
        var meant = NutrientKeys.Grams(ElementTotals.Sum(planned.Additions.Select(a => a.Elements))).Where(g => g.Grams > 0)
            .Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var key in plan.Keys.Union(made.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var (was, now) = (plan.GetValueOrDefault(key), made.GetValueOrDefault(key));
            var isMeant = was > 0 && meant.Contains(key);
            var against = isMeant ? was : all;
            yield return new NutrientShift(
                key, was, now, after?.GetValueOrDefault(key), isMeant, against > 0 ? Math.Abs(now - was) / against : 0);
        }
    }

    private static Dictionary<string, double> PerLitre(StockFacts stock) =>
        NutrientKeys.Grams(stock.Totals).ToDictionary(g => g.Key, g => g.Grams / stock.Volume.Litres, StringComparer.Ordinal);

    private IEnumerable<FeedShift> Feeds(State actual, State? mended)
    {
        foreach (var recipe in _planned.Facts.RecipesWith(_planned.Document.File))
        {
            var (now, after) = (actual.Facts.FindRecipe(recipe.Recipe.File), mended?.Facts.FindRecipe(recipe.Recipe.File));
            foreach (var key in recipe.Elements.Keys.Union(now?.Elements.Keys ?? [], StringComparer.Ordinal).Order(StringComparer.Ordinal))
            {
                var (plan, made) = (recipe.MilligramsPerLitre(key), now?.MilligramsPerLitre(key) ?? 0);
                if (Math.Abs(made - plan) > 1e-6 * Math.Max(made, plan))
                {
                    yield return new FeedShift(recipe.Recipe.Name, key, plan, made, after?.MilligramsPerLitre(key));
                }
            }
        }
    }

    private List<ReadingCheck> Readings(StockFacts made) =>
        [.. BatchReadings.Of(_batch, made).Select(r => new ReadingCheck(r.Entry, r.Value, r.Expected))];

    private State Look(StockDocument document)
    {
        var facts = Analyzer.Analyse(_workspace.With(document));

        // How a file is written is no matter here: what is mended has its substances in two steps, for one.
        var findings = LintEngine.Judge(facts, _options).Findings
            .Where(f => f.Level >= Level.Warning && f.Rule.Family != AboutFiles)
            .ToList();
        return new State(document, facts, facts.FindStock(document.File), findings);
    }

    /// <param name="Findings">From a warning on.</param>
    private sealed record State(StockDocument Document, Facts Facts, StockFacts? Stock, IReadOnlyList<Finding> Findings);
}
