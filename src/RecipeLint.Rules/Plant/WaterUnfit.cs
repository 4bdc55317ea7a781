using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A source water past a published limit for irrigation water; said once, however many recipes use it.</summary>
public sealed class WaterUnfit : WorkspaceRule
{
    public override string Name => "water-unfit";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var water in facts.Workspace.Waters.Where(w => w.File.Length > 0))
        {
            foreach (var (limit, found, place) in WaterLimits.Breaches(water))
            {
                yield return context.Find(
                    place,
                    $"The water '{water.Name}' has {limit.Name} of up to {Say.Number(found)} {limit.Unit}; the limit of {limit.Source} is {Say.Number(limit.Value)} {limit.Unit}. "
                    + $"So much {limit.Harm}. {limit.Remedy}",
                    limit.Level,
                    limit.Recalled ? Certainty.Practice : Certainty.Computed) with
                {
                    Measured = new Measured(limit.Name, found, limit.Value, limit.Unit),
                    Values = [new NamedValue(limit.Name, found, limit.Unit), new NamedValue("limit", limit.Value, limit.Unit)],
                };
            }
        }
    }
}
