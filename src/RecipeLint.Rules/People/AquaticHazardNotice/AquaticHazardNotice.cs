using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A concentrate that must not reach a drain or ditch, unless its bench label already names the hazard.</summary>
internal sealed class AquaticHazardNotice : StockRule<AquaticHazardNotice.Mixed>, IProposesRepairs
{
    public const string RuleName = "aquatic-hazard-notice";

    private static readonly (Element Element, string Name)[] _metals =
        [(Element.Cu, "copper"), (Element.Zn, "zinc"), (new("Co"), "cobalt"), (new("Ni"), "nickel"), (Element.Mn, "manganese")];

    public override string Name => RuleName;

    /// <summary>Whether this rule reports the stock, with the limit its shop set.</summary>
    internal static bool Reports(RuleContext context, StockFacts stock) =>
        context.Neighbour(RuleName, stock.Stock.File) is { } own && Of(stock, own).Fires;

    protected override IEnumerable<Mixed> Judge(StockFacts stock, RuleContext context) => [Of(stock, context)];

    protected override Finding Describe(Mixed verdict, RuleContext context)
    {
        var (stock, hazard) = (verdict.Stock, verdict.Mixture.Water(verdict.Limit)!);
        var first = hazard.Substances[0];
        var metals = _metals.Select(m => (m.Name, Grams: stock.Totals[m.Element].Grams)).Where(m => m.Grams > 0).Take(2).ToList();
        var holds = metals.Count == 0 ? "" : $" A batch holds {Say.List(metals.Select(m => $"{Say.Grams(m.Grams)} of {m.Name}"))}.";
        return context.Find(
            first.Place,
            $"'{stock.Stock.Name}' counts as {hazard.Words} to water life with long lasting effects ({hazard.Code}), through "
                + $"{Say.List(hazard.Substances.Select(a => a.Substance.Name).Distinct().Take(3))}: "
            + $"by the factors of the regulation they add up to {Say.Number(hazard.Percent)} %, limit {Say.Number(hazard.Limit)} %.{holds} "
            + "Concentrate, rinsings and left-overs do not belong in a drain, ditch or pond: say so on the label and hand left-overs to "
                + "licensed waste collection; the safety data sheets and local rules decide.",
            stock.Stock.ForBench ? Harm.Person : Harm.Damage,
            Odds.Possible) with
        {
            Measured = new Measured("weighted share", hazard.Percent, hazard.Limit, "%"),
            Values = [new NamedValue("weighted share", hazard.Percent, "%"), .. metals.Select(m => new NamedValue(m.Name, m.Grams, "g"))],
            Related = [.. hazard.Substances
                .Skip(1)
                .Select(a => a.Place)
                .Distinct()
                .Where(p => p != first.Place)
                .Take(4)
                .Select(p => new RelatedPlace(p, "counts with it"))],
        };
    }

    protected override Working Work(Mixed verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"hazard of '{verdict.Stock.Stock.Name}' to water life");
        var (veryToxic, toxic) = (verdict.VeryToxic, verdict.Toxic);
        if (veryToxic.Count + toxic.Count == 0)
        {
            return work.Statements(verdict).Done();
        }

        var first = veryToxic.Count == 0
            ? []
            : MixtureSteps.Shares(work, verdict.Mixture, veryToxic.Select(a => (a, MixtureHazards.LastingWeight(a))));
        var weighted = first.Count switch
        {
            0 =>
            null,
            1 => first[0],
            _ => work.Result("very toxic, with their factors", "sum", Term.Sum(first), "%")
        };
        Term value;
        if (weighted is not null && verdict.IsVery)
        {
            value = weighted;
        }
        else if (weighted is not null && toxic.Count == 0)
        {
            value = work.Result("counted ten times as toxic", "10 × very toxic", 10 * weighted, "%");
        }
        else
        {
            var terms = MixtureSteps.Shares(work, verdict.Mixture, toxic.Select(a => (a, MixtureHazards.LastingWeight(a))));
            value = weighted is null && terms.Count == 1
                ? terms[0]
                : work.Result(
                    "toxic with lasting effects",
                    "10 × very toxic + toxic",
                    Term.Sum(weighted is null ? terms : [10 * weighted, .. terms]),
                    "%");
        }

        return work.Check(verdict.Checks[0], value, work.Option("limit", verdict.Limit)).Statements(verdict).Done(value);
    }

    /// <summary>The hazards on the label.</summary>
    protected override IEnumerable<RepairProposal> Repair(Mixed verdict, Finding finding, RepairContext context) =>
        HazardLabel.Repairs(finding, context);

    private static Mixed Of(StockFacts stock, RuleContext context)
    {
        var mixture = new MixtureHazards(stock);
        var limit = context.Options<AquaticHazardNoticeOptions>().From;
        var (veryToxic, toxic) = (mixture.VeryToxic(), mixture.Toxic());
        var weighted = veryToxic.Sum(a => mixture.Percent(a) * MixtureHazards.LastingWeight(a));
        var isVery = Rounding.SixDigits(weighted) >= limit;
        var mixed = new Mixed(stock, mixture, veryToxic, toxic, isVery, limit)
        {
            Checks =
            [Check.That("it holds a substance that is toxic to water life", false)]
        };
        if (veryToxic.Count + toxic.Count == 0)
        {
            return mixed;
        }

        var share = isVery ? weighted : (10 * weighted) + toxic.Sum(a => mixture.Percent(a) * MixtureHazards.LastingWeight(a));
        var enough = new Check("enough to carry the statement", Rounding.SixDigits(share), Relation.AtLeast, limit, "%");
        return mixed with { Checks = [enough, .. MixtureSteps.Silencers(stock, context)] };
    }

    /// <summary>One stock as a mixture.</summary>
    /// <param name="IsVery">True where what is very toxic is enough by itself.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Mixed(
        StockFacts Stock, MixtureHazards Mixture, IReadOnlyList<AdditionFacts> VeryToxic, IReadOnlyList<AdditionFacts> Toxic, bool IsVery,
        NumberOption Limit) : Verdict;
}
