using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Way = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.People;

/// <summary>Water poured onto an acid that is still strong enough to boil or burn.</summary>
internal sealed class WaterOntoAcid : StockRule<WaterOntoAcid.Pour>, IProposesRepairs
{
    public const string RuleName = "water-onto-acid";

    /// <summary>The acids sold as liquids, with their options.</summary>
    private static readonly (Formula Acid, Func<WaterOntoAcidOptions, NumberOption> Limit)[] _acids =
    [
        (FormulaParser.Parse("H2SO4"), o => o.SulfuricFrom), (FormulaParser.Parse("HNO3"), o => o.NitricFrom), (FormulaParser.Parse("HCl"), o => o.HydrochloricFrom),
        (FormulaParser.Parse("H3PO4"), o => o.PhosphoricFrom), (FormulaParser.Parse("C2H4O2"), o => o.AceticFrom),
    ];

    public override string Name => RuleName;

    protected override IEnumerable<Pour> Judge(StockFacts stock, RuleContext context)
    {
        var options = context.Options<WaterOntoAcidOptions>();
        var any = false;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.BringsWater && m.After.FreeWaterGrams > m.Before.FreeWaterGrams))
        {
            foreach (var (acid, limit) in _acids)
            {
                var acids = moment.Before.Additions.Where(a => !a.ThroughAliquot && Reactants.IsLiquidAcid(a.Substance, acid)).ToList();
                var pure = acids.Sum(VesselContents.PureGrams);
                if (pure <= 0)
                {
                    continue;
                }

                any = true;
                var strength = pure / (pure + moment.Before.FreeWaterGrams) * 100;
                var strong = new Check("strong enough to boil or burn", Rounding.SixDigits(strength), Relation.AtLeast, limit(options), "%");
                yield return new Pour(stock, moment, acids[^1], acid, pure, strength, limit(options)) { Checks = [strong] };
                if (strong.Holds)
                {
                    yield break;
                }
            }
        }

        if (!any)
        {
            yield return new Pour(stock, null, null, null, 0, 0, default) { Checks = [Check.That("water is poured after a liquid acid", false)] };
        }
    }

    protected override Finding Describe(Pour verdict, RuleContext context)
    {
        var (moment, last, acid, pure, strength) = (verdict.Moment!, verdict.Last!, verdict.Acid!, verdict.PureGrams, verdict.Strength);
        var limit = verdict.Limit.Value;
        var heat = HeatOfSolution.Find(acid.Text) is { KilojoulesPerMol: < 0 } known && strength >= 90
            ? $"Diluting it sets free up to {Say.Number(-known.KilojoulesPerMol * pure / known.GramsPerMol)} kJ: the"
            : "";
        return context.Find(
            last.Place,
            $"Water is poured onto acid: when '{moment.Step.Id}' begins, the acid in the vessel ({last.Substance.Name}) is still {Say.Number(strength)} % strong, past the {Say.Number(limit)} % from which that is dangerous. "
            + $"{(heat.Length > 0 ? heat : "The")} first water {(heat.Length > 0 ? "boils" : "heats up")} on the surface and can throw acid at face and hands. "
            + "Pour most of the water first, then the acid into it, slowly and stirring, with goggles, gloves and apron, as the safety data sheet says.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured("acid when water comes onto it", strength, limit, "%"),
            Values = [new NamedValue("acid when water comes onto it", strength, "%"), new NamedValue("limit", limit, "%")],
            Related = [new RelatedPlace(moment.Step.Place, "this water comes after the acid")],
        };
    }

    protected override Working Work(Pour verdict, RuleContext context)
    {
        if (verdict is not { Moment: { } moment, Last: { } last })
        {
            return new WorkingBuilder($"the order of '{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"the acid in the vessel when step '{moment.Step.Id}' pours water onto it");
        var pure = work.Given($"{last.Substance.Name}, counted as pure acid", verdict.PureGrams, "g", "file and strength");
        var water = work.Given("water already in the vessel, that of the acid included", moment.Before.FreeWaterGrams, "g", "file");
        var strength = work.Result("strength it still has", "100 × acid / (acid + water)", 100 * pure / (pure + water), "%");
        return work.Check(verdict.Checks[0], strength, work.Option("limit", verdict.Limit)).Done(strength);
    }

    /// <summary>The acid behind the water.</summary>
    protected override IEnumerable<RepairProposal> Repair(Pour verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (verdict.Moment is { Step.Place: var poured } && RepairContext.StepAt(stock, poured) is { } water && RepairContext.StepAt(stock, finding.Place) is { } acid)
        {
            if (water is PourStep && Steps.Move(stock, context, water, acid) is { } first)
            {
                yield return Way.Chemistry("water-first", $"Pour the water of '{water.Id}' before the acid.", first);
            }

            if (water is PourStep && Steps.Move(stock, context, acid, water, behind: true) is { } later)
            {
                yield return Way.Chemistry("acid-later", $"Put '{acid.Id}' in after '{water.Id}', slowly and stirring.", later);
            }

            // Only a top-up: most of the water has to be in the vessel before the acid.
            foreach (var most in Pours.MostWaterFirst(context, stock))
            {
                yield return most;
            }
        }
    }

    /// <summary>Water that comes after an acid.</summary>
    /// <param name="Moment">The water; null where none comes after an acid.</param>
    /// <param name="Last">The acid that went in last.</param>
    /// <param name="PureGrams">Of the acid in the vessel, counted as pure.</param>
    /// <param name="Strength">% that it still has.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Pour(
        StockFacts Stock, MixingStep? Moment, AdditionFacts? Last, Formula? Acid, double PureGrams, double Strength, NumberOption Limit) : Verdict;
}
