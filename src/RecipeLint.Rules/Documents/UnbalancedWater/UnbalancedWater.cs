using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>
/// A water analysis whose figures cannot all be right: cations against anions, hardness against calcium and magnesium, alkalinity against
/// bicarbonate, conductivity against what is dissolved, and pH against bicarbonate.
/// </summary>
internal sealed class UnbalancedWater : WaterRule<WaterComparison>
{
    public const string RuleName = "unbalanced-water";

    public override string Name => RuleName;

    /// <summary>Whether this rule, as the shop has set it, speaks of a water; for a rule that leaves it to this one.</summary>
    internal static bool Reports(RuleContext context, WaterDocument water) =>
        Of(water).Any(c => c.Fires) && context.Neighbour(RuleName, water.File) is not null;

    protected override IEnumerable<WaterComparison> Judge(WaterDocument water, RuleContext context) => Of(water);

    protected override Finding Describe(WaterComparison verdict, RuleContext context) =>
        context.Find(
            verdict.Place, verdict.Message, verdict.IsFarOff ? Harm.Loss : Harm.Damage, Odds.Certain) with
        { Values = verdict.Values };

    protected override Working Work(WaterComparison verdict, RuleContext context) => verdict.Work();

    /// <summary>Nothing for an analysis that could not be read whole.</summary>
    private static List<WaterComparison> Of(WaterDocument water) => water.Stated is { } stated
        ?
        [
            .. IonBalance.Of(water, stated), .. SameCharge.Of(water, stated), .. ConductivityRoom.Of(water, stated),
            .. PhOfBicarbonate.Of(water),
        ]
        : [];
}
