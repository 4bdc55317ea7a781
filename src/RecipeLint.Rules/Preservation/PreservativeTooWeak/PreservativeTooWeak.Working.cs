using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>What is undissociated, and what it takes for this food and this time.</summary>
internal sealed partial class PreservativeTooWeak
{
    protected override Working Work(WeakPreservative verdict, RuleContext context)
    {
        var judged = verdict.Judged;
        var work = new WorkingBuilder($"undissociated preservative in '{verdict.Stock.Stock.Name}'");
        if (verdict.Strength is not { } check)
        {
            KeptLong.Write(work, verdict.Kept, PreservationNeeds.Food(verdict.Stock.Settings).FreshDays);
            return work.Statements(verdict).Done();
        }

        Term strength = 0;
        if (judged.Acids.Count == 0)
        {
            strength = work.Given("undissociated preservative", 0, "", From.Engine);
        }
        else
        {
            var pH = work.Given("pH of the stock", verdict.Stock.Chemistry.Mixing.Ph, "", From.Engine);
            var times = Times(work, verdict, context);
            var strengths = judged.Acids.Select(a => Strength(work, a, pH, times, context)).ToList();
            strength = strengths.Count == 1 ? strengths[0] : work.Result("all together", "sum", Term.Sum(strengths));
        }

        work.Check(check, strength, 1);
        KeptLong.Write(work, verdict.Kept, PreservationNeeds.Food(verdict.Stock.Settings).FreshDays);
        return work.Statements(verdict).Done(strength);
    }

    private static Term Strength(WorkingBuilder work, PreservativeAcids acid, Term pH, Term times, RuleContext context)
    {
        var total = work.Given($"{acid.Name}, with its salt counted as acid", acid.TotalMilligramsPerLitre, "mg/L", From.Amounts);
        var pKa = work.Given("pH at which half of it is whole in this stock (its pKa, shifted by the "
            + "salts)", acid.ApparentPk, "", From.Engine);
        var whole = work.Result($"undissociated {acid.Name}", "total / (1 + 10^(pH - pKa))", total / (1 + Term.TenTo(pH - pKa)), "mg/L");
        var options = context.Options<PreservativeTooWeakOptions>();
        var option = acid.Name switch
        {
            "benzoic acid" => options.LeastBenzoic,
            "sorbic acid" => options.LeastSorbic,
            _ => options.LeastPropionic,
        };
        var least = work.Result("least that works here", "least × times",
            work.Option("least where there is little to live on", option) * times, "mg/L");
        return work.Result("of the least that works", "undissociated / least", whole / least);
    }

    /// <summary>How many times the least it takes for this food and this time.</summary>
    private static Term Times(WorkingBuilder work, WeakPreservative verdict, RuleContext context)
    {
        var (food, needs) = (verdict.Judged.FoodGramsPerLitre, verdict.Needs);
        var rich = Part(
            work, "how rich it is", work.Given(verdict.Judged.FoodCalled, food, "g/L", From.Amounts),
            work.Option("little", PreservationNeeds.Food(verdict.Stock.Settings).MinimumFood),
                work.Option("rich", context.Options<PreservativeTooWeakOptions>().RichFood), food, needs.MinimumFood, needs.RichFood);
        var kept = verdict.Judged.Days is { } days
            ? Part(
                work, "how long it is kept", work.Given("kept for", days, "days", From.File),
                work.Option("short", PreservationNeeds.Food(verdict.Stock.Settings).FreshDays),
                    work.Option("long", context.Options<PreservativeTooWeakOptions>().LongDays), days, needs.FreshDays, needs.LongDays)
            : work.Given("how long it is kept, nobody says: long", 1, "", "rule");
        return work.Result(
            "times the least", "1 + (most - 1) × how rich × how long",
            1 + ((work.Option("most", context.Options<PreservativeTooWeakOptions>().RichTimes) - 1) * rich * kept));
    }

    private static Term Part(WorkingBuilder work, string what, Term value, Term low, Term high, double exact, double from, double to) =>
        exact <= from ? work.Given($"{what}, 0 to 1", 0, "", "at the lower end")
        : exact >= to ? work.Given($"{what}, 0 to 1", 1, "", "at the upper end")
        : work.Result($"{what}, 0 to 1", "log10(value / low) / log10(high / low)", Term.Log10(value / low) / Term.Log10(high / low));
}
