using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>Food for moulds and bacteria in a kept stock, and nothing that stops them.</summary>
internal sealed class CarbonWithoutPreservative : StockRule<UnguardedFood>, IProposesRepairs
{
    public const string RuleName = "carbon-without-preservative";

    /// <summary>What is sold for it, the one that works up to the higher pH first.</summary>
    private static readonly string[] _usual = ["potassium-sorbate", "sodium-benzoate"];

    /// <summary>For what has a pH that nobody can compute.</summary>
    private static readonly Way _measured = new(
        $"measure its pH and add potassium sorbate where that is below about {Say.Number(PreservativeJudgement.SorbateTo)}, or sodium "
            + $"benzoate where it is below about {Say.Number(PreservativeJudgement.BenzoateTo)}",
        Puts.Preservative);

    private static readonly string[] _sterile =
        ["steril", "autoclav", "0.2 µm", "0.22 µm", "0.2 um", "0.22 um", "0.2 micron", "0.22 micron", "0.2 μm", "0.22 μm"];

    private static readonly string[] _not = ["not steril", "non-steril", "unsteril"];

    public override string Name => RuleName;

    protected override IEnumerable<UnguardedFood> Judge(StockFacts stock, RuleContext context)
    {
        var needs = PreservationNeeds.Of(stock.Settings);
        var judged = PreservativeJudgement.Of(stock, needs);
        var food = new Check("enough to live on", judged.FoodGramsPerLitre, Relation.AtLeast, needs.MinimumFood, "g/L");
        var kept = KeptLong.Check(stock, needs.FreshDays);
        yield return new UnguardedFood(stock, judged, food, kept)
        {
            Checks =
            [
                food,
                .. kept is null ? [] : new[] { kept },
                Check.That("no preservative is in it", judged.Dosed.Count == 0),
                Check.That("it does not keep itself by acid, salt, vinegar, bleach, peroxide or copper", judged.KeptBy == SelfKeeping.None),
            ],
        };
    }

    protected override Finding Describe(UnguardedFood verdict, RuleContext context)
    {
        var (stock, food) = (verdict.Stock, verdict.Judged.Food);
        var total = verdict.Food.Value;
        var advice = context.AdviceFor(stock);
        var doses = Doses(verdict.Judged, context.Facts).ToList();
        var kept = verdict.Judged.Days is { } days ? $"kept for {Say.Days(days)}" : "that is kept";
        var names = Say.List(food.Select(f => f.Addition.Substance.Name).Distinct(StringComparer.Ordinal));
        return context.Find(
            food[0].Addition.Place,
            $"'{stock.Stock.Name}' holds {Say.Number(total)} g/L of {verdict.Judged.FoodCalled} ({names}) and no preservative. "
            + (IsMadeSterile(stock) ? "Made sterile it keeps until a bottle is first opened, not longer. " : "")
            + $"Moulds and bacteria live on it: a stock {kept} grows slime that eats the acid or chelate and clogs drippers. "
            + advice.Sentence(
                [.. Ways(verdict, doses, advice, context), new($"mix it fresh within {Fresh(context)} days", Puts.Keeping)]),
            Harm.Damage,
            IsMadeSterile(stock) ? Odds.Possible : Odds.Certain) with
        {
            Related = [.. food.Skip(1).Select(f => new RelatedPlace(f.Addition.Place, "also feeds microbes"))],
            Measured = new Measured(verdict.Judged.FoodCalled, total, verdict.Food.Limit, "g/L"),
            Values =
            [
                new NamedValue(verdict.Judged.FoodCalled, total, "g/L"),
                .. doses.Select(d =>
                    new NamedValue($"{d.Preservative.Name} that guards it", d.GramsPerLitre, "g/L")),
            ],
        };
    }

    /// <summary>
    /// A step says so: boiled in an autoclave or filtered through 0.2 µm, which holds bacteria and moulds back (common practice, no
    /// source).
    /// </summary>
    private static bool IsMadeSterile(StockFacts stock) => stock.Stock.Steps.OfType<HandlingStep>().Any(s =>
        _sterile.Any(w => s.How.Value.Contains(w, StringComparison.OrdinalIgnoreCase)) && !_not.Any(w =>
            s.How.Value.Contains(w, StringComparison.OrdinalIgnoreCase)));

    protected override Working Work(UnguardedFood verdict, RuleContext context)
    {
        var stock = verdict.Stock;
        var work = new WorkingBuilder($"food for microbes in '{stock.Stock.Name}'");
        var volume = work.Given("the batch", stock.Volume.Litres, "L", From.File);
        var parts = new List<Term>();
        foreach (var food in verdict.Judged.Food)
        {
            var mass = work.Given(food.Addition.Substance.Name, food.Addition.Mass.Grams, "g", From.File);
            var strength = food.Share == food.Addition.Substance.Strength.Value
                ? work.Given("its strength", food.Share, "g/g", "catalogue")
                : work.Given("dry matter in it, by its carbon", food.Share, "g/g", From.File);
            parts.Add(work.Result("of it in a litre", "weight × strength / batch", mass * strength / volume, "g/L"));
        }

        var total = parts.Count switch
        {
            0 => work.Given(verdict.Judged.FoodCalled, 0, "g/L", From.File),
            1 => parts[0],
            _ => work.Result(verdict.Judged.FoodCalled, "sum", Term.Sum(parts), "g/L"),
        };
        work.Check(verdict.Food, total, work.Option("least", context.Options<CarbonWithoutPreservativeOptions>().MinimumFood));
        KeptLong.Write(work, verdict.Kept, context.Options<CarbonWithoutPreservativeOptions>().FreshDays);
        if (verdict.Judged.KeptBy != SelfKeeping.None)
        {
            var pH = work.Given("its pH", stock.Chemistry.Mixing.Ph, "", From.Engine);
            work.Remark(
                $"Up to pH {Say.Number(context.Options<CarbonWithoutPreservativeOptions>().SafeBelowPh)}, in very strong salt, bleach "
                    + $"or vinegar, or beside much free copper nothing grows (pH here {pH.Text}).");
        }

        return work.Statements(verdict).Done(total);
    }

    /// <summary>As much of a preservative as the message says, or a short life.</summary>
    protected override IEnumerable<RepairProposal> Repair(UnguardedFood verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        foreach (var (preservative, grams) in Doses(verdict.Judged, context.Facts))
        {
            if (Additions.New(context, stock, preservative.Id, grams * stock.Volume.Litres, Steps.AfterFirstWater(stock),
                "to the first water") is { } added)
            {
                yield return added;
            }
        }

        yield return Keep.For(context, stock, context.Rule.Options<CarbonWithoutPreservativeOptions>().FreshDays);
    }

    private static NumberOption Fresh(RuleContext context) => context.Options<CarbonWithoutPreservativeOptions>().FreshDays;

    private static List<Way> Ways(
        UnguardedFood verdict, List<(Substance Preservative, double GramsPerLitre)> found, VesselAdvice advice, RuleContext context)
    {
        var judged = verdict.Judged;
        if (found.Count > 0)
        {
            return With(verdict, string.Join(" or ", found.Select(d => $"{Say.Number(d.GramsPerLitre)} g/L of {d.Preservative.Name}")));
        }

        var (name, grams) = Preservatives(context.Facts)
            .Select(p => (p.Name, Grams: judged.DoseOf(p, PreservativeJudgement.WorkingPh)))
            .FirstOrDefault(d => d.Grams is not null);
        var working = Say.Number(PreservativeJudgement.WorkingPh);
        var sour = new Way(
            grams is { } dose ? $"acidify it to pH {working} with a mineral acid and give {Say.Number(dose)} g/L of {name}"
                : $"acidify it to pH {working} with a mineral acid and preserve it",
            Puts.Acid,
            PreservativeJudgement.WorkingPh);

        // Where acid is no way out the advice says why, whether or not the dose can be reckoned.
        return !advice.Allows(sour.Puts, sour.ToPh) ? [sour]
            : !IsReckoned(verdict)
                ? verdict.Stock.Additions.Any(IsAcid) ? With(verdict, "potassium sorbate or sodium benzoate") : [_measured]
            : grams is not null ? [sour]
            : [new("leave the organic matter out of a stock that is kept")];
    }

    /// <summary>A preservative, and what feeds nothing where all there is to live on are acids.</summary>
    private static List<Way> With(UnguardedFood verdict, string preservative)
    {
        var first = verdict.Stock.Additions.Any(IsAcid) ? " before the acid" : "";
        List<Way> ways = [new($"add {preservative}{first}", Puts.Preservative)];
        List<AdditionFacts> food = [.. verdict.Judged.Food.Select(f => f.Addition)];
        if (food.TrueForAll(IsAcid)
            && AcidTrial.MayReplace(verdict.Stock, food, AcidTrial.MineralAcids, DepositOptions.Of(verdict.Stock.Settings)))
        {
            ways.Add(new("use a mineral acid instead", Puts.Acid, verdict.Stock.Chemistry.Mixing.PhBeforeDeposit) { Replaces = true });
        }

        return ways;
    }

    private static bool IsAcid(AdditionFacts addition) => addition.Substance.Kind == SubstanceKind.Acid;

    /// <summary>The pH is known, and nothing whose composition nobody states moves it.</summary>
    private static bool IsReckoned(UnguardedFood verdict) =>
        verdict.Judged.IsComputed && !HazardGate.Of(verdict.Stock).Holding.HasUnknown;

    private static IEnumerable<(Substance Preservative, double GramsPerLitre)> Doses(
        PreservativeJudgement judged, Facts facts) =>
        Preservatives(facts).Select(p => (p, Grams: judged.DoseOf(p))).Where(d => d.Grams is not null).Select(d => (d.p, d.Grams!.Value));

    private static IEnumerable<Substance> Preservatives(Facts facts) =>
        _usual.Select(facts.Workspace.Catalogue.ById).OfType<Substance>();
}

/// <summary>What microbes live on in a stock, and what stops them.</summary>
/// <param name="Kept">Null where the file does not say for how long.</param>
internal sealed record UnguardedFood(StockFacts Stock, PreservativeJudgement Judged, Check Food, Check? Kept) : Verdict;
