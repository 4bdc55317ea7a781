using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A source water past a published limit for irrigation water; said once, however many recipes use it.</summary>
internal sealed class WaterUnfit : WaterRule<WaterAgainstLimit>
{
    public const string RuleName = "water-unfit";

    public override string Name => RuleName;

    /// <summary>For each figure of the analysis the gravest limit that it passes, else the one it would pass first.</summary>
    protected override IEnumerable<WaterAgainstLimit> Judge(WaterDocument water, RuleContext context)
    {
        foreach (var (limit, found, place) in WaterLimits.Nearest(water))
        {
            var over = new Check("over the limit", found, Relation.Over, limit.Value, limit.Unit);
            yield return new WaterAgainstLimit(water, limit, place, over) { Checks = [over] };
        }
    }

    protected override Finding Describe(WaterAgainstLimit verdict, RuleContext context)
    {
        var (limit, found) = (verdict.Limit, verdict.Over.Value);
        return context.Find(
            verdict.Place,
            $"The water '{verdict.Water.Name}' has {limit.Name} of up to {Say.Number(found)} {limit.Unit}; the limit of {limit.Source} "
                + $"is {Say.Number(limit.Value)} {limit.Unit}. "
            + $"So much {limit.Harm}. {limit.Remedy}",
            limit.Level == Level.Note ? Harm.Habit : verdict.IsFarPast ? Harm.Loss : Harm.Damage,
            Odds.Certain,
            limit.Recalled ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured(limit.Name, found, limit.Value, limit.Unit),
            Values = [new NamedValue(limit.Name, found, limit.Unit), new NamedValue("limit", limit.Value, limit.Unit)],
        };
    }

    protected override Working Work(WaterAgainstLimit verdict, RuleContext context)
    {
        var (limit, found) = (verdict.Limit, verdict.Over.Value);
        var work = new WorkingBuilder($"{limit.Name} of '{verdict.Water.Name}'");
        var value = limit switch
        {
            { Unit: "meq/L" } => ByCharge(work, limit, found),
            { Key: "hardness" } => work.Result(
                "as CaCO3", "meq/L × 50.04",
                work.Given("hardness, highest of the year", found / FeedAlkalinity.CaCO3MilligramsPerMilliequivalent, "meq/L", From.File)
                    * FeedAlkalinity.CaCO3MilligramsPerMilliequivalent,
                limit.Unit),
            _ => work.Given($"{limit.Name}, highest of the year", found, limit.Unit, From.File),
        };
        return work.Check(verdict.Over, value, work.Given("limit", limit.Value, limit.Unit, limit.Source.TrimEnd(','))).Done(value);
    }

    private static Term ByCharge(WorkingBuilder work, WaterLimit limit, double found)
    {
        var weight = AtomicWeights.Of(new Element(limit.Key));
        return work.Result(
            $"{limit.Name} by charge", $"mg/L / {((Term)weight).Text}",
                work.Given($"{limit.Name}, highest of the year", found * weight, "mg/L", From.File) / weight, "meq/L");
    }
}

/// <summary>A figure of a water analysis against a published limit.</summary>
internal sealed record WaterAgainstLimit(WaterDocument Water, WaterLimit Limit, Place Place, Check Over) : Verdict
{
    /// <summary>Twice a published limit or more: not a matter of an uncertain analysis any more.</summary>
    public bool IsFarPast => Over.Value >= 2 * Limit.Value;
}
