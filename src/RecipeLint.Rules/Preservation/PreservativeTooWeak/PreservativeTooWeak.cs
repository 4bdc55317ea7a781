using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A preservative of which too little is undissociated acid for the food, the time and the pH of the stock.</summary>
internal sealed partial class PreservativeTooWeak : StockRule<WeakPreservative>, IProposesRepairs
{
    public const string RuleName = "preservative-too-weak";

    /// <summary>No stock is soured further than this for a preservative.</summary>
    private const double LowestUsualPh = 2.5;

    public override string Name => RuleName;

    protected override IEnumerable<WeakPreservative> Judge(StockFacts stock, RuleContext context)
    {
        var needs = PreservationNeeds.Of(stock.Settings);
        var judged = PreservativeJudgement.Of(stock, needs);
        if (judged.HangsOnAnUnknownPh && judged.Dosed.Count > 0)
        {
            return [Untold(stock, judged, needs)];
        }

        var strength = new Check("less than holds yeasts and moulds", judged.Strength, Relation.Under, 1);
        var kept = KeptLong.Check(stock, needs.FreshDays);
        return
        [
            new WeakPreservative(stock, judged, needs, strength, kept)
            {
                Checks =
                [
                    strength,
                    .. kept is null ? [] : new[] { kept },
                    Check.That("a preservative is in it whose undissociated part can be told", judged.Dosed.Count > 0
                        && judged.Acids.Count > 0),
                    KeepsNotItself(judged),
                ],
            },
        ];
    }

    private static Check KeepsNotItself(PreservativeJudgement judged) => Check.That(
        "it does not keep itself by acid, salt, vinegar, bleach, peroxide or copper", judged.KeptBy == SelfKeeping.None);

    /// <summary>Where nobody knows the pH nobody knows how much of the preservative works.</summary>
    private static WeakPreservative Untold(StockFacts stock, PreservativeJudgement judged, PreservativeNeeds needs)
    {
        var kept = KeptLong.Check(stock, needs.FreshDays);
        return new WeakPreservative(stock, judged, needs, null, kept)
        {
            Checks =
            [
                .. kept is null ? [] : new[] { kept },
                Check.That("there is something in it to live on", judged.HasFood),
                Check.That("its pH, on which it hangs how much of the preservative works, is not known", true),
                KeepsNotItself(judged),
            ],
        };
    }

    protected override Finding Describe(WeakPreservative verdict, RuleContext context)
    {
        var (stock, judged) = (verdict.Stock, verdict.Judged);
        if (verdict.Strength is null)
        {
            return DescribeUntold(verdict, context);
        }

        var ph = stock.Chemistry.Mixing.Ph;
        var guess = GuessedPh.Of(stock);
        var what = string.Join(" and ", judged.Acids.Select(a =>
            $"only {Say.Number(a.WholeMilligramsPerLitre)} of the {Say.Number(a.TotalMilligramsPerLitre)} mg/L {a.Name} as "
                + $"undissociated acid, where {Say.Number(a.LeastMilligramsPerLitre)} mg/L is the least that works"));
        var message = $"At pH {Say.Ph(Math.Round(ph, 2))} '{stock.Stock.Name}' holds {what}. {PhGuess.Sentence(guess)}"
            + (judged.HasFood
                ? $"Only that form enters the cells of moulds and yeasts, which live on the {Say.Number(judged.FoodGramsPerLitre)} g/L "
                    + $"of {judged.FoodCalled} as if nothing had been added. "
                : "Only that form enters the cells of moulds and yeasts, so this much protects nothing. ")
            + context.AdviceFor(stock).Sentence(Ways(judged));
        return context.Find(judged.Dosed[0].Place, message, verdict.LosesTheBatch
            ? Harm.Loss
            : Harm.Damage, PhGuess.Weaken(judged.HasFood ? Odds.Certain : Odds.Possible, guess)) with
        {
            Related = [.. judged.Dosed.Skip(1).Select(a => new RelatedPlace(a.Place, "also counted"))],
            Measured = new Measured("undissociated acid over the least that works", judged.Strength, 1, ""),
            Values =
            [
                new NamedValue("pH", ph, ""),
                .. judged.Acids.Select(a => new NamedValue("undissociated " + a.Name, a.WholeMilligramsPerLitre, "mg/L")),
                new NamedValue(judged.FoodCalled, judged.FoodGramsPerLitre, "g/L"),
            ],
        };
    }

    private static Finding DescribeUntold(WeakPreservative verdict, RuleContext context)
    {
        var (stock, judged) = (verdict.Stock, verdict.Judged);
        var names = Say.List(judged.Dosed.Select(d => d.Substance.Name).Distinct(StringComparer.Ordinal));
        return context.Find(
            judged.Dosed[0].Place,
            $"Whether {names} guards the {Say.Number(judged.FoodGramsPerLitre)} g/L of {judged.FoodCalled} in '{stock.Stock.Name}' cannot "
                + "be told: only undissociated acid works, and how much of it there is hangs on the pH, which is "
                + $"{PhDoubt.Why(stock.Chemistry.Mixing.Mix)}. "
            + context.AdviceFor(stock).Sentence(
                new Way(
                    $"measure the pH: sorbate works below about {Say.Number(PreservativeJudgement.SorbateTo)}, benzoate below about "
                        + Say.Number(PreservativeJudgement.BenzoateTo), Puts.Keeping),
                new Way(
                    $"bring it to pH {Say.Number(PreservativeJudgement.WorkingPh)} with a mineral acid, by a meter", Puts.Acid,
                    PreservativeJudgement.WorkingPh),
                new Way($"mix it fresh within {Say.Number(verdict.Needs.FreshDays)} days", Puts.Keeping)),
            Harm.Damage,
            Odds.NearTheLimit,
            Certainty.Practice) with
        {
            Values = [new NamedValue(judged.FoodCalled, judged.FoodGramsPerLitre, "g/L")],
        };
    }

    /// <summary>As much of it as the message says, more acid, or a short life.</summary>
    protected override IEnumerable<RepairProposal> Repair(WeakPreservative verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        foreach (var preservative in verdict.Judged.Dosed.Select(d => context.AdditionAt(stock, d.Place)).OfType<AdditionFacts>())
        {
            if (verdict.Judged.DoseOf(preservative.Substance) is { } grams
                && Additions.Times(context, preservative, grams * stock.Volume.Litres / preservative.Mass.Grams, "more",
                Round.Up) is { } more)
            {
                yield return more;
            }
        }

        foreach (var acid in Additions.Acid(context, stock))
        {
            yield return acid;
        }

        yield return Keep.For(context, stock, verdict.Needs.FreshDays);
    }

    private static List<Way> Ways(PreservativeJudgement judged)
    {
        var ways = new List<Way>();
        var acid = judged.Acids[0];
        var share = acid.LeastMilligramsPerLitre / acid.TotalMilligramsPerLitre;
        if (judged.Acids.Count == 1 && share < 0.95 && acid.ApparentPk + Math.Log10((1 - share) / share) is >= LowestUsualPh and var ph)
        {
            // A tenth lower, because the acid itself and the topping up move it a little.
            var to = Math.Floor((ph - 0.1) * 10) / 10;
            ways.Add(new($"acidify to pH {Say.Number(to)}, where the same dose is enough", Puts.Acid, to));
        }

        var main = judged.Dosed[0].Substance;
        if (judged.DoseOf(main) is { } grams)
        {
            ways.Add(new($"raise the dose to {Say.Number(grams)} g/L", Puts.Preservative));
        }

        if (ways.Count == 0)
        {
            if (judged.DoseOf(main, PreservativeJudgement.WorkingPh) is { } there)
            {
                ways.Add(new(
                    $"acidify to pH {Say.Number(PreservativeJudgement.WorkingPh)} and give {Say.Number(there)} g/L", Puts.Acid,
                    PreservativeJudgement.WorkingPh));
            }

            ways.Add(new("mix it fresh within a week", Puts.Keeping));
        }

        return ways;
    }
}

/// <summary>How much of a preservative works in a stock.</summary>
/// <param name="Kept">Null where the file does not say for how long.</param>
/// <param name="Strength">Null where nobody knows the pH.</param>
internal sealed record WeakPreservative(
    StockFacts Stock, PreservativeJudgement Judged, PreservativeNeeds Needs, Check? Strength, Check? Kept) : Verdict
{
    /// <summary>Food in plenty, and not half of what holds moulds back: the batch is lost before it is used up.</summary>
    public bool LosesTheBatch => Judged.HasFood && Strength?.IsTwice == true;
}
