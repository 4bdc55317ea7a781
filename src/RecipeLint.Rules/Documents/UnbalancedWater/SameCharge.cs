using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using Digits = RecipeLint.Chemistry.Quantities.Rounding;

namespace RecipeLint.Rules.Documents;

/// <summary>Two figures for one charge, of which one may not be more than the other. A range counts by the end that fits best.</summary>
/// <param name="What">Both of them as they stand in the analysis, a full sentence.</param>
/// <param name="Total">The figure that was stated as a total, where a finding stands.</param>
/// <param name="Ions">What the single ions come to.</param>
/// <param name="IonsAreMore">True to ask whether the ions are more than the total, false for the other way round.</param>
internal sealed record SameCharge(WaterDocument Water, Place Place, string What, StatedCharge Total, StatedCharge Ions, bool IonsAreMore)
    : WaterComparison(Water, Place)
{
    private const double Slack = 1 + (SlackPercent / 100);

    internal override string Message => What + Advice;

    internal override IReadOnlyList<NamedValue> Values => [new("stated", Total.Middle, Unit), new("from the others", Ions.Middle, Unit)];

    protected override double Off => Math.Abs(Larger.Low - Smaller.High);

    private StatedCharge Larger => IonsAreMore ? Ions : Total;

    private StatedCharge Smaller => IonsAreMore ? Total : Ions;

    internal static IEnumerable<SameCharge> Of(WaterDocument water, WaterFigures stated)
    {
        var (hardness, hard) = (StatedCharge.Of("hardness", stated.Hardness), Sum("calcium and magnesium", stated, "Ca", "Mg"));
        if (stated.Hardness is { Place: var at } && hard.IsStated)
        {
            var statesBoth = hard.Parts.Count == 2;
            var which = statesBoth ? "calcium and magnesium come" : "the one of calcium and magnesium that is stated comes";
            var what = $"The hardness is {Number(hardness.Middle)} meq/L, but {which} to {Number(hard.Middle)} meq/L: "
                + "hardness is the sum of the two.";
            yield return Asked(new(water, at, what, hardness, hard, true) { Checks = [] });
            if (statesBoth)
            {
                yield return Asked(new(water, at, what, hardness, hard, false) { Checks = [] });
            }
        }

        var alkalinity = StatedCharge.Of("alkalinity", stated.Alkalinity);
        var carbonate = Sum("bicarbonate and carbonate", stated, "HCO3", "CO3");
        if (stated.Alkalinity is { Place: var place } && carbonate.IsStated)
        {
            var what = $"The alkalinity is {Number(alkalinity.Middle)} meq/L, "
                + $"but bicarbonate and carbonate come to {Number(carbonate.Middle)} meq/L: "
                + "in such a water they are the same.";
            yield return Asked(new(water, place, what, alkalinity, carbonate, true) { Checks = [] });
            yield return Asked(new(water, place, what, alkalinity, carbonate, false) { Checks = [] });
        }
    }

    internal override Working Work()
    {
        var work = new WorkingBuilder($"{Total.Name} of the water '{Water.Name}' against {Ions.Name}");
        var larger = Larger.Write(work, p => p.Low, Lowest);
        var smaller = Smaller.Write(work, p => p.High, Highest);
        var most = work.Result(
            $"the most that {Larger.Name} can be", $"{Smaller.Name} × {Number(Slack)} + {Number(Rounding)}",
            (smaller * Slack) + Rounding, Unit);
        return work.Check(Checks[0], larger, most).Done(larger);
    }

    private static SameCharge Asked(SameCharge pair) => pair with
    {
        Checks =
        [
            new(
                pair.IonsAreMore ? "the ions are more than the total" : "the total is more than the ions",
                Digits.SixDigits(pair.Larger.Low),
                Relation.Over,
                Digits.SixDigits((pair.Smaller.High * Slack) + Rounding),
                Unit),
        ],
    };

    private static StatedCharge Sum(string name, WaterFigures stated, params string[] keys) =>
        StatedCharge.Of(name, stated.Ions.Where(i => keys.Contains(i.Key, StringComparer.Ordinal)));
}
